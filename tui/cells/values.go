package cells

import (
	"math"

	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/results"
	"trivet/tui/theme"
	"trivet/units"
)

// magnitude is a line's value, or the range of it.
func (b Builder) magnitude(i int) string {
	if v, ok := b.Solution.Magnitude(i); ok {
		return results.Bare(b.Problem, v, units.Force)
	}
	if terms := b.Problem.Lines[i].Magnitude.Terms; len(terms) == 1 && terms[0].Coef == 1 {
		return b.found(int(terms[0].Unknown))
	}
	return "free"
}

// found is an unknown's value or the range of it, a force in the unit of the head.
func (b Builder) found(i int) string {
	if b.Problem.Unknowns[i].Dim == units.Force {
		return results.FoundBare(&b.Result, i)
	}
	return results.Found(&b.Result, i)
}

// worth is a value, a force in the unit of the head.
func (b Builder) worth(v float64, d units.Dim) string {
	if d == units.Force {
		return results.Bare(b.Problem, v, d)
	}
	return results.Format(b.Problem, v, d)
}

// sense is T or C, push or pull, with a mark where the line cannot have it.
func (b Builder) sense(i int) Slot {
	s := Slot{look: b.result()}
	v, ok := b.Solution.Magnitude(i)
	if !ok || v == 0 {
		return s
	}
	info := b.Problem.Lines[i].Kind.Info()
	word := info.Positive
	if v < 0 {
		word = info.Negative
	}
	switch word {
	case "tension":
		s.Text, s.look = "T", b.or(theme.Cable)
	case "compression":
		s.Text, s.look = "C", b.or(theme.Strut)
	case "push", "pull":
		s.Text = word
	default:
		s.Text = map[bool]string{true: "+", false: "-"}[v > 0]
	}
	for _, k := range b.Solution.Broken {
		s.Bad = s.Bad || k.Line == i
	}
	return s
}

// use is the share of a limit in per cent; blank where there is none.
func (b Builder) use(c statics.Check) Slot {
	s := Slot{look: b.result()}
	if c.Bound > 0 {
		s.Text, s.Bad = "none", !c.OK
		switch {
		case c.Open:
			s.Text = "open"
		case results.Finite(c.Value):
			s.Text = units.Figures(100*math.Abs(c.Value)/c.Bound, b.Problem.Figures) + "%"
		}
	}
	return s
}

// answer is the reader's own or the source's answer, and whether it is met.
func (b Builder) answer(name string) (answer, met Slot) {
	row, ok := b.answerRow(name)
	answer = b.value("answers", row, "printed")
	if b.Solution != nil && ok {
		for _, a := range b.Solution.Answers {
			if a.Query.Name == name {
				met = Slot{Text: "ok", look: theme.Good}
				if !a.OK {
					met = Slot{Text: "no", look: theme.Bad}
				}
				if b.Stale {
					met.look = theme.Stale
				}
			}
		}
	}
	return answer, met
}

// answerRow is the row of a result's answer, which may be called as a text prints it,
// A_y for Ay.
func (b Builder) answerRow(name string) (sheet.Row, bool) {
	rows := b.Typed.Table("answers")
	if row, ok := rows.Row(name); ok {
		return row, true
	}
	if b.Problem != nil {
		for _, a := range b.Problem.Answers {
			if a.Query.Name == name {
				return rows.Row(a.Ref.Row)
			}
		}
	}
	return sheet.Row{Name: name}, false
}

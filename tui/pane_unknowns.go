package tui

import (
	"math"
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/theme"
	"trivet/units"
)

// unknowns is the pane of the magnitudes to be found: each member with its
// value, sense and use, then other unknowns, then the results asked for.
func (b builder) unknowns() table {
	t := table{columns: []column{
		{head: "unknown", width: 8, most: 14}, {head: "size", width: 5, grow: 1}, {head: "value", width: 9, grow: 1, right: true}, {head: "sense", width: 5},
		{head: "limit", width: 6, grow: 1}, {head: "use", width: 5, right: true}, {head: "own answer", width: 10, grow: 1}, {head: "met", width: 4},
	}}
	shown := map[string]bool{}
	for _, row := range b.rows("lines") {
		if b.isUnknown(row) {
			shown[row.Name] = true
			t.records = append(t.records, b.member(row))
		}
	}
	if b.problem != nil {
		for _, u := range b.problem.Unknowns {
			if !shown[u.Name] {
				shown[u.Name] = true
				t.records = append(t.records, b.other(u.Name))
			}
		}
	}
	asked := b.asked()
	for i, word := range asked {
		if !shown[word.text] {
			t.records = append(t.records, b.asks(word.text, i))
		}
	}
	b.insert(&t, "")
	return t
}

// isUnknown tells whether a line has its row here: what holds, and each force
// whose magnitude is asked for.
func (b builder) isUnknown(row sheet.Row) bool {
	kind, _ := row.Cell("kind")
	for _, k := range problem.Kinds() {
		if k.Name == kind.Text && (k.Path || k.Sense == problem.PressOnly) {
			return true
		}
	}
	size, ok := row.Cell("magnitude")
	_, parts := row.Cell("components")
	return kind.Text != "" && !parts && (!ok || strings.TrimSpace(size.Text) == "?" || strings.TrimSpace(size.Text) == "")
}

// member is the row of a line.
func (b builder) member(row sheet.Row) record {
	size := b.cell("lines", row, "magnitude")
	if _, sprung := row.Cell("stiffness"); size.text == "" && !sprung {
		size.text, size.look = "?", theme.Dim
	}
	name := slot{text: row.Name, look: theme.Name}
	value, sense, use := slot{look: b.result()}, slot{look: b.result()}, slot{look: b.result()}
	if b.solution != nil {
		if i, ok := b.resultAt[row.Name]; ok && b.problem.Lines[i].OK {
			value.text = b.magnitude(i)
			sense = b.sense(i)
			use = b.use(i)
		}
	}
	answer, met := b.answer(row.Name)
	return record{row: sheet.Ref{Table: "lines", Row: row.Name}, slots: []slot{name, size, value, sense, b.cell("lines", row, "limit"), use, answer, met}}
}

// other is the row of an unknown that is no line's own magnitude.
func (b builder) other(name string) record {
	value := slot{look: b.result()}
	if b.solution != nil {
		for _, x := range b.solution.X {
			if x.Name == name {
				value.text = b.found(x)
			}
		}
	}
	answer, met := b.answer(name)
	return record{row: sheet.Ref{}, slots: []slot{{text: name, look: theme.Name}, {text: "tied", look: theme.Dim}, value, {}, {}, {}, answer, met}}
}

// asks is the row of a result that the sheet asks for.
func (b builder) asks(name string, word int) record {
	n := slot{text: name, does: setAsked, word: word, ref: sheet.Ref{Table: "", Row: "asked"}, look: theme.Name}
	value := slot{look: b.result()}
	if p := b.latest; p != nil {
		if _, err := problem.ParseQuery(p, name); err != nil && len(b.errs) > 0 {
			n.bad = true
		}
	}
	if p := b.problem; p != nil && b.solution != nil && b.solution.Verdict != statics.Unreadable {
		if q, err := problem.ParseQuery(p, name); err == nil {
			if v, err := b.solution.Evaluate(q); err != nil {
				value.text = "none"
			} else {
				value.text = format(p, v, q.Dim)
			}
		}
	}
	answer, met := b.answer(name)
	return record{row: sheet.Ref{Table: "", Row: "asked"}, slots: []slot{n, {}, value, {}, {}, {}, answer, met}}
}

// magnitude is a line's value, or the range of it.
func (b builder) magnitude(i int) string {
	if v, ok := b.solution.Magnitude(i); ok {
		return format(b.problem, v, units.Force)
	}
	if terms := b.problem.Lines[i].Magnitude.Terms; len(terms) == 1 && terms[0].Coef == 1 {
		return b.found(b.solution.X[terms[0].Unknown])
	}
	return "free"
}

// found is an unknown's value, or the range it may lie in.
func (b builder) found(x statics.Unknown) string {
	p := b.problem
	switch {
	case x.Fixed:
		return format(p, x.Value, units.Force)
	case finite(x.Low) && finite(x.High):
		return bare(p, x.Low, units.Force) + ".." + bare(p, x.High, units.Force)
	case finite(x.Low):
		return ">= " + bare(p, x.Low, units.Force)
	case finite(x.High):
		return "<= " + bare(p, x.High, units.Force)
	}
	return "free"
}

// sense is T or C, push or pull, with a mark where the line cannot have it.
func (b builder) sense(i int) slot {
	s := slot{look: b.result()}
	v, ok := b.solution.Magnitude(i)
	if !ok || v == 0 {
		return s
	}
	info := b.problem.Lines[i].Kind.Info()
	word := info.Positive
	if v < 0 {
		word = info.Negative
	}
	switch word {
	case "tension":
		s.text = "T"
	case "compression":
		s.text = "C"
	case "push", "pull":
		s.text = word
	default:
		s.text = map[bool]string{true: "+", false: "-"}[v > 0]
	}
	for _, k := range b.solution.Broken {
		s.bad = s.bad || k == i
	}
	return s
}

// use is the share of the limit in per cent.
func (b builder) use(i int) slot {
	s := slot{look: b.result()}
	for _, c := range b.solution.Checks {
		if c.Kind == statics.CheckLimit && c.Line == i && c.Bound > 0 {
			s.text, s.bad = "none", !c.OK
			if finite(c.Value) {
				s.text = units.Figures(100*math.Abs(c.Value)/c.Bound, b.problem.Figures) + "%"
			}
		}
	}
	return s
}

// answer is the reader's own or the source's answer, and whether it is met.
func (b builder) answer(name string) (answer, met slot) {
	row, ok := b.s.Table("answers").Row(name)
	if !ok {
		row = sheet.Row{Name: name}
	}
	answer = b.value("answers", row, "printed")
	if b.solution != nil && ok {
		for _, a := range b.solution.Answers {
			if a.Query.Name == name {
				met = slot{text: "ok", look: theme.Good}
				if !a.OK {
					met = slot{text: "no", look: theme.Bad}
				}
				if b.stale {
					met.look = theme.Stale
				}
			}
		}
	}
	return answer, met
}

// word is one of the results asked for, and where it stands in the cell.
type word struct {
	text       string
	start, end int
}

// asked splits the cell at blanks and commas outside parentheses.
func (b builder) asked() []word {
	row, _ := b.s.Table("").Row("asked")
	cell, _ := row.Cell("")
	return words(cell.Text)
}

func words(text string) (out []word) {
	start, depth := -1, 0
	for i := 0; i <= len(text); i++ {
		gap := i == len(text)
		if !gap {
			switch c := text[i]; c {
			case '(':
				depth++
			case ')':
				depth = max(depth-1, 0)
			case ' ', ',', '\t', '\n', '\r':
				gap = depth == 0
			}
		}
		switch {
		case gap && start >= 0:
			out = append(out, word{text[start:i], start, i})
			start = -1
		case !gap && start < 0:
			start = i
		}
	}
	return out
}

package origin

import (
	"strings"

	"trivet/mechanics/report"
	"trivet/mechanics/statics"
	"trivet/mechanics/working"
)

// Step says where number k of a block of a step comes from; see Numbers. Where a
// step speaks of a line, an equation or an unknown it is what the system says of
// the same number, else what the number is set equal to.
func Step(w *working.Working, step, block, k int) string {
	s, of := w.Solution, &w.Steps[step]
	b := &of.Body[block]
	if b.OK != nil {
		return held(s, b)
	}
	f, m := number(b, k)
	if m == nil {
		return ""
	}
	if says := ofStep(w, of, b, f); says != "" {
		return says
	}
	return equals(of, f)
}

// held finds the check, or the answer, that a sentence says.
func held(s *statics.Solution, b *working.Block) string {
	text := ""
	for _, x := range b.Text {
		text += x.Words
	}
	for k := range s.Checks {
		if s.Checks[k].Says(s.Problem) == text {
			return Check(s, k)
		}
	}
	for k := range s.Answers {
		if s.Answers[k].Says(s.Problem) == text {
			return Answer(s, k)
		}
	}
	return ""
}

// ofStep says what the system says of a number.
func ofStep(w *working.Working, of *working.Step, b *working.Block, f found) string {
	s := w.Solution
	switch of.Kind {
	case working.Position, working.Unit:
		return ofLine(s, of, b, f)
	case working.Equations:
		return ofEquation(s, of, f)
	case working.Matrix:
		return ofMatrix(s, f)
	case working.Solve, working.Answers, working.Route:
		if of.Hand != nil {
			if says := ofHand(w, of, b, f); says != "" {
				return says
			}
		}
		return ofValue(s, of, f)
	}
	return ""
}

// ofLine is a number of a position vector r = B - A = (..) - (..) = (..), of its
// length |r| = √(..) = L, or of u = r/|r| = (..)/L = ..
func ofLine(s *statics.Solution, of *working.Step, b *working.Block, f found) string {
	if len(of.About.Lines) != 1 || b.Formula == nil || b.Formula.Op != working.Relate || len(f.way) == 0 {
		return ""
	}
	line := of.About.Lines[0]
	leg := -1
	for k, g := range s.Problem.Lines[line].Legs {
		ends := of.About.Points
		if len(ends) > 0 && g.From == ends[0] && (len(ends) < 2 || g.To == ends[1]) {
			leg = k
		}
	}
	if leg < 0 {
		return ""
	}
	at, last, first := f.way[0], f.way[0] == len(f.formula.Of)-1, f.formula.Of[0].Op
	axis := axisIn(f)
	switch {
	case of.Kind == working.Position && first == working.Vec && !last && axis >= 0:
		g := s.Problem.Lines[line].Legs[leg]
		point := g.To
		if len(f.way) > 1 && f.way[1] == 1 { // subtracted
			point = g.From
		}
		return axes[axis:axis+1] + " of " + s.Problem.Points[point].Name + ", from its place in the sheet"
	case first == working.Vec && axis >= 0:
		return Leg(s, line, leg, R, axis)
	case of.Kind == working.Position && last:
		return Leg(s, line, leg, Length, 0)
	case of.Kind == working.Unit && first == working.Size && last:
		return Leg(s, line, leg, Size, 0)
	case of.Kind == working.Unit && first == working.UnitVec && !last && at == 2 && axis >= 0:
		return Leg(s, line, leg, R, axis)
	case of.Kind == working.Unit && first == working.UnitVec && !last && at == 2:
		return Leg(s, line, leg, Length, 0)
	case of.Kind == working.Unit && first == working.UnitVec && last && axis >= 0:
		return Leg(s, line, leg, U, axis)
	}
	return ""
}

// axisIn is the component that a number is: its place in a tuple, or the unit vector
// that it stands before; -1 for none.
func axisIn(f found) int {
	on := f.on()
	for k, m := range on {
		switch {
		case m.Op == working.Paren && len(m.Of) > 1:
			return f.way[k]
		case m.Op == working.Product:
			for _, x := range m.Of {
				if x.Op == working.UnitVec && len(x.Text) == 1 {
					return strings.Index("ijk", x.Text)
				}
			}
		}
	}
	return -1
}

// ofEquation is a number of a sum of forces or moments on one body: a coefficient, or
// a known term.
func ofEquation(s *statics.Solution, of *working.Step, f found) string {
	if len(of.About.Bodies) != 1 || f.formula.Op != working.Relate {
		return ""
	}
	row := rowOf(s, of.About.Bodies[0], &f.formula.Of[0])
	if row < 0 || len(f.way) == 0 || f.way[0] == len(f.formula.Of)-1 {
		return ""
	}
	if j := unknownIn(s, f); j >= 0 {
		return Entry(s, row, j)
	}
	return Known(s, row)
}

// rowOf finds the row that a heading ΣF_x or ΣM_A names; -1 where there is none.
func rowOf(s *statics.Solution, body int, head *working.Math) int {
	if head.Op != working.BigSum || len(head.Of) == 0 {
		return -1
	}
	for i := s.System.Start[body]; i < s.System.Start[body+1]; i++ {
		r := &s.System.Rows[i]
		if name := head.Of[0].Name; name == r.Axis || r.Moment && s.Problem.Planar && name == "M"+r.About {
			return i
		}
	}
	return -1
}

// unknownIn is the unknown that a number is multiplied by; -1 for none.
func unknownIn(s *statics.Solution, f found) int {
	on := f.on()
	for k := len(on) - 1; k >= 0; k-- {
		if on[k].Op != working.Product {
			continue
		}
		for _, x := range on[k].Of {
			if j := unknown(s, &x); j >= 0 {
				return j
			}
		}
	}
	return -1
}

func unknown(s *statics.Solution, m *working.Math) int {
	if m.Op == working.Symbol && m.Name != "" {
		for j := range s.X {
			if s.X[j].Name == m.Name {
				return j
			}
		}
	}
	return -1
}

// ofMatrix is an entry of A, or of b.
func ofMatrix(s *statics.Solution, f found) string {
	for k, m := range f.on() {
		switch {
		case m.Op == working.Grid && k+1 < len(f.way) && f.way[k] < len(s.System.Rows) && f.way[k+1] < len(s.System.Cols):
			return Entry(s, f.way[k], f.way[k+1])
		case m.Op == working.Column && k < len(f.way) && f.way[k] < len(s.System.Rows):
			return Known(s, f.way[k])
		}
	}
	return ""
}

// ofValue is the value of an unknown, x = .. = value.
func ofValue(s *statics.Solution, of *working.Step, f found) string {
	m := f.formula
	for _, x := range f.on() { // an answer stands in a row, with its sense
		if x.Op == working.Relate {
			m = x
			break
		}
	}
	if m.Op != working.Relate || len(m.Of) < 2 {
		return ""
	}
	j := unknown(s, &m.Of[0])
	switch {
	case j < 0:
		return ""
	case of.Hand != nil && len(of.Hand.Equations) > 0:
		return report.TextMath(*m) + ": from the equation above with the numbers put in"
	case of.Hand != nil:
		return report.TextMath(*m) + ": its share of the force along the member"
	}
	return Value(s, j)
}

// equals says what a number is set equal to, or what it is a part of.
func equals(of *working.Step, f found) string {
	if f.row != nil {
		return ofTable(of, f)
	}
	on := f.on()
	for k := len(on) - 1; k >= 0; k-- {
		m := on[k]
		if m.Op != working.Relate || k >= len(f.way) {
			continue
		}
		text := func(n int) string { return strings.ReplaceAll(report.TextMath(m.Of[n]), "\n", " ") }
		at, last := f.way[k], f.way[k] == len(m.Of)-1
		switch {
		case last && m.Of[0].Op == working.BigSum && m.Text == "=" && k == len(on)-2:
			return text(0) + " = 0: the body is in equilibrium"
		case !last && m.Of[0].Op == working.Size:
			return "a component of " + report.TextMath(m.Of[0].Of[0]) + ", squared and added up"
		case at >= 2:
			return text(0) + " = " + text(at-1)
		case at == 1 && of.Kind == working.Moment && len(m.Of) > 2:
			return "in " + text(0) + ": the arm from the point of moments and the force, r × F"
		case at == 1:
			return "in " + text(0) + behindSymbol(on[k:])
		}
	}
	return "in " + lower(of.Title)
}

// ofTable names the row and the column of a number.
func ofTable(of *working.Step, f found) string {
	name := f.row[0].Words
	if f.row[0].Math != nil {
		name = strings.TrimSpace(report.TextMath(*f.row[0].Math))
	}
	switch of.Kind {
	case working.Forces:
		return name + ": its " + strings.ToLower(f.head) + ", as the sheet gives it"
	case working.Checks:
		if name == "Σ" {
			return "the sum of " + f.head + ": 0 where the body is in equilibrium"
		}
		return f.head + " of " + name + ", in the solution"
	}
	return f.head + " of " + name + " (" + lower(of.Title) + ")"
}

// behindSymbol names the symbol that a number is multiplied by.
func behindSymbol(on []*working.Math) string {
	for k := len(on) - 1; k >= 0; k-- {
		if on[k].Op != working.Product {
			continue
		}
		for _, x := range on[k].Of {
			if x.Op == working.Symbol {
				return ": what stands before " + report.TextMath(x)
			}
		}
	}
	return ""
}

// lower begins a title with a small letter, unless a name begins it.
func lower(title string) string {
	first, rest, _ := strings.Cut(title, " ")
	if rest == "" || strings.ToLower(first[1:]) != first[1:] || len(first) < 3 {
		return title
	}
	return strings.ToLower(first[:1]) + first[1:] + " " + rest
}

package origin

import (
	"trivet/mechanics/doc"
	"trivet/mechanics/statics"
	"trivet/mechanics/working"
)

// Step says where number k of a block of a step comes from; see Numbers. Where a
// step speaks of a line, an equation or an unknown it is what the system says of
// the same number, else what the number is set equal to.
func Step(w *working.Working, step, block, k int) string {
	s, of := w.Solution, &w.Steps[step]
	b := of.Body[block]
	if c, ok := b.(*doc.Check); ok {
		return held(s, c)
	}
	f, m := number(b, k)
	if m == nil {
		return ""
	}
	if says := ofStep(w, of, block, f); says != "" {
		return says
	}
	if says := ofSpread(s, of, m.Num); says != "" {
		return says
	}
	return equals(of, f)
}

// held finds the check, or the answer, that a sentence says.
func held(s *statics.Solution, b *doc.Check) string {
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
func ofStep(w *working.Working, of *working.Step, block int, f found) string {
	s, b := w.Solution, of.Body[block]
	switch of.Kind {
	case working.Position, working.Unit:
		return ofLine(s, of, b, f)
	case working.Equations:
		return ofEquation(s, of, f)
	case working.Matrix:
		return ofMatrix(s, f)
	case working.Solve, working.Answers, working.Route:
		if of.Hand != nil {
			if says := ofHand(w, of.Hand[block], b, f); says != "" {
				return says
			}
		}
		return ofValue(s, of, block, f)
	}
	return ""
}

// ofEquation is a number of a sum of forces or moments on one body: a coefficient, or
// a known term.
func ofEquation(s *statics.Solution, of *working.Step, f found) string {
	if len(of.About.Bodies) != 1 || f.formula.Op != doc.Relate {
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
func rowOf(s *statics.Solution, body int, head *doc.Math) int {
	if head.Op != doc.BigSum || len(head.Of) == 0 {
		return -1
	}
	for i := s.System.Start[body]; i < s.System.Start[body+1]; i++ {
		r := &s.System.Rows[i]
		if name := head.Of[0].Name; name == r.Axis || r.Moment && s.Problem.Planar && len(head.Of[0].Of) > 0 && head.Of[0].Of[0].Text == r.About {
			return i
		}
	}
	return -1
}

// unknownIn is the unknown that a number is multiplied by; -1 for none.
func unknownIn(s *statics.Solution, f found) int {
	on := f.on()
	for k := len(on) - 1; k >= 0; k-- {
		if on[k].Op != doc.Product {
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

func unknown(s *statics.Solution, m *doc.Math) int {
	if m.Op == doc.Symbol && m.Name != "" {
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
		case m.Op == doc.Grid && k+1 < len(f.way) && f.way[k] < len(s.System.Rows) && f.way[k+1] < len(s.System.Cols):
			return Entry(s, f.way[k], f.way[k+1])
		case m.Op == doc.Column && k < len(f.way) && f.way[k] < len(s.System.Rows):
			return Known(s, f.way[k])
		}
	}
	return ""
}

// ofValue is the value of an unknown, x = .. = value.
func ofValue(s *statics.Solution, of *working.Step, block int, f found) string {
	m := f.formula
	for _, x := range f.on() { // an answer stands in a row, with its sense
		if x.Op == doc.Relate {
			m = x
			break
		}
	}
	if m.Op != doc.Relate || len(m.Of) < 2 {
		return ""
	}
	j := unknown(s, &m.Of[0])
	switch {
	case j < 0:
		return ""
	case of.Hand != nil && len(of.Hand[block].Equations) > 0:
		return doc.TextMath(*m) + ": from the equation above with the numbers put in"
	case of.Hand != nil:
		return doc.TextMath(*m) + ": its share of the force along the member"
	}
	return Value(s, j)
}

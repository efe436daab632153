package origin

import (
	"math"
	"strings"

	"trivet/mechanics/statics"
)

// Value says where the value of unknown j comes from: the equation that gave it, or
// those that gave it together with others.
func Value(s *statics.Solution, j int) string {
	p, x := s.Problem, &s.X[j]
	switch {
	case s.Verdict == statics.NoEquilibrium:
		return x.Name + " has no value: no values of the unknowns keep equilibrium"
	case !x.Fixed:
		return End(s, j, false) + "; " + strings.TrimPrefix(End(s, j, true), x.Name+": ")
	}
	is := x.Name + " = " + shown(p, x.Value, p.Unknowns[j].Dim)
	for _, b := range s.Blocks() {
		for _, k := range b.Cols {
			if k == j && len(b.Cols) == 1 {
				return x.Name + " from " + Row(p, s.System.Rows[b.Rows[0]]) + ": " + alone(s, b.Rows[0], j)
			}
			if k == j {
				return is + ": " + together(s, b.Rows, b.Cols)
			}
		}
	}
	if s.Degree > 0 {
		return is + ": fixed all the same, what is free leaves it as it is"
	}
	return is + ": from all equations together"
}

// alone is (b - Σ A x of the others) / A with the numbers put in.
func alone(s *statics.Solution, i, j int) string {
	p, r := s.Problem, &s.System.Rows[i]
	u := rowUnit(p, r)
	top, n := in(u, s.System.B[i], p.Figures), 0
	for _, t := range s.System.Terms[i] {
		if t.Col == j || t.Value == 0 || s.X[t.Col].Value == 0 {
			continue
		}
		if n++; n > most-1 {
			continue
		}
		unit := p.Units.For(p.Unknowns[t.Col].Dim)
		top += " - " + behind(cosine(s.Coefficient(i, t.Col))) + "·" + behind(in(unit, s.X[t.Col].Value, p.Figures))
	}
	if n >= most {
		top += " - ..."
	}
	if n > 0 {
		top = "(" + top + ")"
	}
	below := behind(cosine(s.Coefficient(i, j)))
	if d := p.Unknowns[j].Dim; r.Moment && d != r.Dim() {
		below += " " + p.Units.Length.Symbol
	}
	return "(b - the others) / its coefficient = " + top + " " + u.Symbol + " / " + below + " = " + shown(p, s.X[j].Value, p.Unknowns[j].Dim)
}

// together names what is solved at once.
func together(s *statics.Solution, rows, cols []int) string {
	var names, equations []string
	for _, k := range cols {
		names = append(names, s.System.Cols[k].Name)
	}
	for _, i := range rows {
		equations = append(equations, Row(s.Problem, s.System.Rows[i]))
	}
	return list(names) + " together from " + list(equations)
}

// End says what holds the low or the high end of an unknown's range: what would
// have to push or pull beyond it.
func End(s *statics.Solution, j int, high bool) string {
	p, x := s.Problem, &s.X[j]
	end, by, side := x.Low, x.LowBy, "least"
	if high {
		end, by, side = x.High, x.HighBy, "greatest"
	}
	head := x.Name + ": "
	switch {
	case x.Fixed:
		return Value(s, j)
	case !x.Ranged:
		return head + "its admissible range was not computed"
	case math.IsInf(end, 0):
		return head + "no " + side + " value: no cable, contact or friction limit ends it"
	}
	head += side + " value " + shown(p, end, p.Unknowns[j].Dim)
	if len(by) == 0 {
		return head + ", the end of its admissible range"
	}
	return head + ", where " + s.Ends(by)
}

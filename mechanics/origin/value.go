package origin

import (
	"math"

	"trivet/mechanics/doc"
	"trivet/mechanics/say"
	"trivet/mechanics/statics"
)

type value struct{ col int }

// Value is the value of unknown j: from the equation that gave it, or from those
// that gave it together with others.
func Value(s *statics.Solution, j int) doc.Origin { return of(s, value{j}) }

func (v value) says(s *statics.Solution) string {
	p, x := s.Problem, &s.X[v.col]
	switch {
	case s.Verdict == statics.NoEquilibrium:
		return x.Name + " has no value: no values of the unknowns satisfy equilibrium"
	case !x.Fixed:
		return x.Name + ": " + end{v.col, false}.words(s) + "; " + end{v.col, true}.words(s)
	}
	is := x.Name + " = " + shown(p, x.Value, p.Unknowns[v.col].Dim)
	for _, b := range s.Blocks() {
		for _, k := range b.Cols {
			if k == v.col && len(b.Cols) == 1 {
				return x.Name + " from " + Row(p, &s.System.Rows[b.Rows[0]]) + ": " + alone(s, b.Rows[0], v.col)
			}
			if k == v.col {
				return is + ": " + together(s, b.Rows, b.Cols)
			}
		}
	}
	if s.Degree > 0 {
		return is + ": nevertheless determinate, whatever the free unknowns are"
	}
	return is + ": from all equations together"
}

// alone is (b - Σ A x of the others) / A with the numbers put in.
func alone(s *statics.Solution, i, j int) string {
	p, r := s.Problem, &s.System.Rows[i]
	u := p.Units.For(r.Dim())
	top, n := in(p, u)(s.System.B[i]), 0
	for _, t := range s.System.Terms[i] {
		if t.Col == j || t.Value == 0 || s.X[t.Col].Value == 0 {
			continue
		}
		if n++; n >= limit {
			continue
		}
		unit := p.Units.For(p.Unknowns[t.Col].Dim)
		top += " - " + print(cosine).behind(s.Coefficient(i, t.Col)) + "·" + in(p, unit).behind(s.X[t.Col].Value)
	}
	if n >= limit {
		top += " - ..."
	}
	if n > 0 {
		top = "(" + top + ")"
	}
	below := print(cosine).behind(s.Coefficient(i, j))
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
		equations = append(equations, Row(s.Problem, &s.System.Rows[i]))
	}
	return say.AndMore(names, limit) + " together from " + say.AndMore(equations, limit)
}

type end struct {
	col  int
	high bool
}

// End is the low or the high end of an unknown's range.
func End(s *statics.Solution, j int, high bool) doc.Origin { return of(s, end{j, high}) }

func (e end) says(s *statics.Solution) string {
	if s.X[e.col].Fixed {
		return value{e.col}.says(s)
	}
	return s.X[e.col].Name + ": " + e.words(s)
}

// words say what the end of a range is determined by.
func (e end) words(s *statics.Solution) string {
	p, x := s.Problem, &s.X[e.col]
	at, by, side := x.Low, x.LowBy, "least"
	if e.high {
		at, by, side = x.High, x.HighBy, "greatest"
	}
	switch {
	case !x.Ranged:
		return "its admissible range was not computed"
	case math.IsInf(at, 0):
		return "no " + side + " value: no cable, contact or friction limit ends it"
	}
	says := side + " value " + shown(p, at, p.Unknowns[e.col].Dim)
	if len(by) == 0 {
		return says + ", the end of its admissible range"
	}
	return says + ", where " + s.Ends(by)
}

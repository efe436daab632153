package origin

import (
	"math"
	"slices"

	"trivet/mechanics/doc"
	"trivet/mechanics/say"
	"trivet/mechanics/statics"
)

// Value is the value of unknown j: from the equation that gave it, or from those
// that gave it together with others.
func Value(s *statics.Solution, j int) doc.Origin {
	return of(func() string {
		p, x := s.Problem, &s.X[j]
		switch {
		case s.Verdict == statics.NoEquilibrium:
			return x.Name + " has no value: no values of the unknowns satisfy equilibrium"
		case !x.Fixed:
			return x.Name + ": " + end(s, j, false) + "; " + end(s, j, true)
		}
		is := x.Name + " = " + p.Format(x.Value, p.Unknowns[j].Dim)
		for _, b := range s.Blocks() {
			switch {
			case !slices.Contains(b.Cols, j):
			case len(b.Cols) == 1:
				return x.Name + " from " + Row(p, &s.System.Rows[b.Rows[0]]) + ": " + alone(s, b.Rows[0], j)
			default:
				return is + ": " + together(s, b.Rows, b.Cols)
			}
		}
		if s.Degree > 0 {
			return is + ": nevertheless determinate, whatever the free unknowns are"
		}
		return is + ": from all equations together"
	}, "value", j)
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
	return "(b - the others) / its coefficient = " + top + " " + u.Symbol + " / " + below + " = " + p.Format(s.X[j].Value, p.Unknowns[j].Dim)
}

// together names what is solved at once.
func together(s *statics.Solution, rows, cols []int) string {
	names := say.Each(cols, func(k int) string { return s.System.Cols[k] })
	equations := say.Each(rows, func(i int) string { return Row(s.Problem, &s.System.Rows[i]) })
	return say.AndMore(names, limit) + " together from " + say.AndMore(equations, limit)
}

// End is the low or the high end of an unknown's range.
func End(s *statics.Solution, j int, high bool) doc.Origin {
	return of(func() string { return s.X[j].Name + ": " + end(s, j, high) }, "end", j, high)
}

// end says what the end of a range is determined by.
func end(s *statics.Solution, j int, high bool) string {
	p, x := s.Problem, &s.X[j]
	at, by, side := x.Low, x.LowBy, "least"
	if high {
		at, by, side = x.High, x.HighBy, "greatest"
	}
	switch {
	case !x.Ranged:
		return "its admissible range was not computed"
	case math.IsInf(at, 0):
		return "no " + side + " value: no cable, contact or friction limit ends it"
	}
	says := side + " value " + p.Format(at, p.Unknowns[j].Dim)
	if len(by) == 0 {
		return says + ", the end of its admissible range"
	}
	return says + ", where " + s.Ends(by)
}

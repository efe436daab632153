package origin

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/statics"
)

// Known says where b[i] comes from: minus the known forces, or moments, of the row.
func Known(s *statics.Solution, i int) string {
	p, r := s.Problem, &s.System.Rows[i]
	head := "b in " + Row(p, *r) + ": "
	u := rowUnit(p, r)
	var of []string
	for a := range sources(p, r.Body) {
		if v := part(p, r, a.Act, a.Const, a.Couple); v != 0 {
			of = append(of, a.name+" "+in(u, v, p.Figures))
		}
	}
	what := "the known " + sum(r) + " " + along(p, r) + " on " + r.Name
	switch len(of) {
	case 0:
		return head + "no known " + map[bool]string{true: "moment", false: "force"}[r.Moment] + " " + along(p, r) + " on " + r.Name
	case 1:
		return head + "minus " + what + ", " + terms(of, u.Symbol)
	}
	return head + "minus the sum of " + what + ", " + terms(of, u.Symbol)
}

// Left says what is left of a row: Σ A x - b, from the forces themselves.
func Left(s *statics.Solution, i int) string {
	p, r := s.Problem, &s.System.Rows[i]
	u := rowUnit(p, r)
	var of []string
	for a := range sources(p, r.Body) {
		if v := part(p, r, a.Act, value(s, a.Const, a.Terms), value(s, a.Couple, a.CoupleTerms)); v != 0 {
			of = append(of, a.name+" "+in(u, v, p.Figures))
		}
	}
	return "A x - b of " + Row(p, *r) + ", the " + sum(r) + " added up: " + terms(of, u.Symbol) + " leave " + left(s, i)
}

func left(s *statics.Solution, i int) string {
	u := rowUnit(s.Problem, &s.System.Rows[i])
	return Tiny(s.Residuals[i].Value/u.Factor) + " " + u.Symbol
}

// Share says what is left of a row beside the largest force.
func Share(s *statics.Solution, i int) string {
	p, r, left1 := s.Problem, &s.System.Rows[i], s.Residuals[i]
	head := "of " + Row(p, *r) + ": "
	if left1.Relative == 0 {
		return head + "nothing is left"
	}
	over := " left, over the largest force, "
	if r.Moment {
		over = " left, over the largest force times the longest arm, "
	}
	return head + left(s, i) + over + shown(p, math.Abs(left1.Value)/left1.Relative, r.Dim())
}

// norm2 is √(x² + y² + z²) with its numbers put in.
func norm2(v r3.Vec, planar bool, number func(float64) string) string {
	s := "√(" + behind(number(v.X)) + "² + " + behind(number(v.Y)) + "²"
	if !planar {
		s += " + " + behind(number(v.Z)) + "²"
	}
	return s + ")"
}

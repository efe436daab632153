package results

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/origin"
	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/tui/session"
	"trivet/tui/text"
	"trivet/tui/theme"
	"trivet/units"
)

// Format prints a value in the sheet's unit for its dimension.
func Format(p *problem.Problem, v float64, d units.Dim) string {
	return p.Units.For(d).Format(v, p.Figures)
}

// Bare is Format without the unit, for columns whose unit is in the head.
func Bare(p *problem.Problem, v float64, d units.Dim) string {
	return p.Units.For(d).Number(v, p.Figures)
}

// Vector prints a vector in the sheet's unit: (1.5, 2, -3).
func Vector(p *problem.Problem, v r3.Vec, d units.Dim) string {
	return Tuple(Components(p, v, d))
}

// Unit prints a unit vector to a few decimals, so that its columns align.
func Unit(p *problem.Problem, v r3.Vec) string {
	return Tuple(components(p, v, cosine))
}

// cosine prints a component of a unit vector to as many decimals as textbooks do.
func cosine(x float64) string { return units.Decimals(x, 4) }

// Tuple writes components as a vector.
func Tuple(parts []string) string { return "(" + strings.Join(parts, ", ") + ")" }

// Components are those of a vector in the sheet's unit, two in a plane.
func Components(p *problem.Problem, v r3.Vec, d units.Dim) []string {
	return components(p, v, func(x float64) string { return Bare(p, x, d) })
}

func components(p *problem.Problem, v r3.Vec, print func(float64) string) []string {
	if p.Planar {
		return []string{print(v.X), print(v.Y)}
	}
	return []string{print(v.X), print(v.Y), print(v.Z)}
}

// Finite tells a number from what is none, or without bounds.
func Finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// Found is an unknown's value, or the range it may lie in.
func Found(r *session.Result, i int) (s string) {
	for _, piece := range found(r, nil, i, "..") {
		s += piece.Text
	}
	return s
}

// FoundBare is Found without the unit of a single value, for columns whose unit is in the head.
func FoundBare(r *session.Result, i int) string {
	if x := r.Solution.X[i]; x.Fixed {
		return Bare(r.Problem, x.Value, r.Problem.Unknowns[i].Dim)
	}
	return Found(r, i)
}

// found adds the same in pieces, its numbers with their origins; to stands between the ends of a range.
func found(r *session.Result, out []text.Span, i int, to string) []text.Span {
	p, s, x, d := r.Problem, r.Solution, &r.Solution.X[i], r.Problem.Unknowns[i].Dim
	words := func(s string) text.Span { return text.Span{Text: s, Look: theme.Computed} }
	end := func(v float64, high bool) text.Span {
		return text.Numeral(Bare(p, v, d), theme.Computed, origin.End(s, i, high))
	}
	switch {
	case x.Fixed:
		return append(out, text.Numeral(Format(p, x.Value, d), theme.Computed, origin.Value(s, i)))
	case !x.Ranged && (s.Verdict == statics.Inadmissible || s.Verdict == statics.NoEquilibrium):
		return append(out, words("none"))
	case !x.Ranged:
		return append(out, words("open"))
	case Finite(x.Low) && Finite(x.High):
		return append(out, end(x.Low, false), words(to), end(x.High, true))
	case Finite(x.Low):
		return append(out, words(">= "), end(x.Low, false))
	case Finite(x.High):
		return append(out, words("<= "), end(x.High, true))
	}
	return append(out, words("free"))
}

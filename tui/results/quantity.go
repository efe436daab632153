package results

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/tui/session"
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
	return tuple(p, v, func(x float64) string { return Bare(p, x, d) })
}

// Unit prints a unit vector to a few decimals, so that its columns align.
func Unit(p *problem.Problem, v r3.Vec) string {
	return tuple(p, v, func(x float64) string { return units.Decimals(x, cosines) })
}

// cosines is how many decimals a unit vector shows: as many as textbooks print.
const cosines = 4

func tuple(p *problem.Problem, v r3.Vec, print func(float64) string) string {
	return "(" + strings.Join(components(p, v, print), ", ") + ")"
}

// Components are those of a vector in the sheet's unit, two in a plane.
func Components(p *problem.Problem, v r3.Vec, d units.Dim) []string {
	return components(p, v, func(x float64) string { return Bare(p, x, d) })
}

func components(p *problem.Problem, v r3.Vec, print func(float64) string) []string {
	parts := []string{print(v.X), print(v.Y), print(v.Z)}
	if p.Planar {
		parts = parts[:2]
	}
	return parts
}

// Finite tells a number from what is none, or without bounds.
func Finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// Found is an unknown's value, or the range it may lie in.
func Found(r *session.Result, i int) string { return between(r, i, "..") }

// FoundBare is Found without the unit of a single value, for columns whose unit is in the head.
func FoundBare(r *session.Result, i int) string {
	if x := r.Solution.X[i]; x.Fixed {
		return Bare(r.Problem, x.Value, r.Problem.Unknowns[i].Dim)
	}
	return Found(r, i)
}

// between is the same, with what stands between the ends of a range.
func between(r *session.Result, i int, to string) string {
	p, x, d := r.Problem, r.Solution.X[i], r.Problem.Unknowns[i].Dim
	switch {
	case x.Fixed:
		return Format(p, x.Value, d)
	case !x.Ranged && (r.Solution.Verdict == statics.Inadmissible || r.Solution.Verdict == statics.NoEquilibrium):
		return "none"
	case !x.Ranged:
		return "open"
	case Finite(x.Low) && Finite(x.High):
		return Bare(p, x.Low, d) + to + Bare(p, x.High, d)
	case Finite(x.Low):
		return ">= " + Bare(p, x.Low, d)
	case Finite(x.High):
		return "<= " + Bare(p, x.High, d)
	}
	return "free"
}

package linear

import (
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// basic gives one x with A x = b, for a b that the columns of A can make.
func (g *General) basic(b []float64) []float64 {
	rows, cols := g.f.border()
	g.f.forward(b)
	x := make([]float64, g.a.Cols)
	g.across(g.u, g.v, b, x, rows, cols)
	g.f.back(b, x)
	return x
}

func (g *General) basicTrans(c []float64) []float64 {
	rows, cols := g.f.border()
	g.f.forwardTrans(c)
	y := make([]float64, len(g.a.Rows))
	g.across(g.v, g.u, c, y, cols, rows)
	g.f.backTrans(c, y)
	return y
}

// across solves with what is kept of S, or with its transpose: x = V Σ⁻¹ Uᵀ b, with
// the entries of b and x at the places of the border.
func (g *General) across(u, v *mat.Dense, b, x []float64, from, to []int) {
	for k := range g.kept {
		c := 0.0
		for i, r := range from {
			c += u.At(i, k) * b[r]
		}
		c /= g.s[k]
		for i, j := range to {
			x[j] += v.At(i, k) * c
		}
	}
}

// Solve gives the shortest of the x that make A x come nearest to b, x = A⁺ b.
func (g *General) Solve(b []float64) []float64 {
	reach := g.perp(g.Left, slices.Clone(b))
	x := g.perp(g.Right, g.basic(slices.Clone(reach)))
	floats.Sub(reach, g.a.Mul(x)) // refined once
	floats.Add(x, g.perp(g.Right, g.basic(g.perp(g.Left, reach))))
	return g.perp(g.Right, x) // a basic solution can be long, and leaves rounding of its length
}

// SolveTrans gives y = (Aᵀ)⁺ c.
func (g *General) SolveTrans(c []float64) []float64 {
	return g.perp(g.Left, g.basicTrans(g.perp(g.Right, slices.Clone(c))))
}

// perp takes from x, in place, what lies along an orthonormal basis.
func (g *General) perp(basis [][]float64, x []float64) []float64 {
	for _, b := range basis {
		floats.AddScaled(x, -floats.Dot(b, x), b)
	}
	return x
}

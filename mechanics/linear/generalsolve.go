package linear

// basic gives one x with A x = b, for a b that the columns of A can make.
func (g *General) basic(b []float64) []float64 {
	rows, cols := g.f.border()
	g.f.forward(b)
	x := make([]float64, g.a.Cols)
	for k := range g.kept {
		c := 0.0
		for i, r := range rows {
			c += g.u.At(i, k) * b[r]
		}
		c /= g.s[k]
		for i, j := range cols {
			x[j] += g.v.At(i, k) * c
		}
	}
	g.f.back(b, x)
	return x
}

func (g *General) basicTrans(c []float64) []float64 {
	rows, cols := g.f.border()
	g.f.forwardTrans(c)
	y := make([]float64, len(g.a.Rows))
	for k := range g.kept {
		z := 0.0
		for i, j := range cols {
			z += g.v.At(i, k) * c[j]
		}
		z /= g.s[k]
		for i, r := range rows {
			y[r] += g.u.At(i, k) * z
		}
	}
	g.f.backTrans(c, y)
	return y
}

// Solve gives the shortest of the x that make A x come nearest to b, x = A⁺ b.
func (g *General) Solve(b []float64) []float64 {
	reach := g.perp(g.Left, append([]float64(nil), b...))
	x := g.perp(g.Right, g.basic(append([]float64(nil), reach...)))
	sub(reach, g.a.Mul(x)) // refined once
	more := g.perp(g.Right, g.basic(g.perp(g.Left, reach)))
	for j := range x {
		x[j] += more[j]
	}
	return g.perp(g.Right, x) // a basic solution can be long, and leaves rounding of its length
}

// SolveTrans gives y = (Aᵀ)⁺ c.
func (g *General) SolveTrans(c []float64) []float64 {
	return g.perp(g.Left, g.basicTrans(g.perp(g.Right, append([]float64(nil), c...))))
}

// perp takes from x, in place, what lies along an orthonormal basis.
func (g *General) perp(basis [][]float64, x []float64) []float64 {
	for _, b := range basis {
		f := inner(b, x)
		for j := range x {
			x[j] -= f * b[j]
		}
	}
	return x
}

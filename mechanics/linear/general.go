package linear

import (
	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

const (
	// goodCond is the condition number that the factored part may have. Its null
	// vectors then carry rounding of some 1e-10, which one step of refinement takes
	// to 1e-16.
	goodCond = 1e6
	// doubtful is the singular value of S below which a combination is looked at as
	// one of A: S has none that is smaller than A's by more than the condition of
	// the factored part, and rank is judged at 1e-12 or so.
	doubtful = 1e-5
	// rounds bounds how often a row and a column are put off until the factored part
	// is well conditioned. A structure that needs more is dense to the bone.
	rounds = 500
)

// General is a system of any shape and rank. With the singular values σ of A, all
// those up to tol·σ₁ count as none.
type General struct {
	Rank    int
	Right   [][]float64 // an orthonormal basis of the x with A x = 0
	Left    [][]float64 // an orthonormal basis of the y with Aᵀ y = 0
	Largest float64     // σ₁
	Least   float64     // the least σ that counts, 0 where the rank is 0

	a    *Matrix
	f    *Factors
	u, v *mat.Dense // S = u diag(s) vᵀ
	s    []float64
	kept int // how many of s count
}

// NewGeneral finds rank and null spaces of A. Most of it is eliminated with good
// pivots; a row and a column that make the eliminated part poorly conditioned are
// put off to the border, where each takes one small singular value with it. The
// null vectors of the little that is left, S z = 0, give those of A,
//
//	x = (-A₁₁⁻¹ A₁₂ z, z)
//
// and where singular values of S are small without being nothing, those of A on
// the space that they span decide.
func NewGeneral(a *Matrix, tol float64) (*General, bool) {
	g := &General{a: a, f: factorWell(a)}
	g.Largest = largestSingular(a)
	if !g.leftOver() {
		return nil, false
	}
	sure := 0
	for sure < len(g.s) && g.s[sure] > doubtful {
		sure++
	}
	g.kept = sure
	right, left := g.candidates(sure)
	more, ok := g.judge(&right, &left, tol*g.Largest)
	if !ok {
		return nil, false
	}
	g.kept = sure + more
	g.Right, g.Left = right, left
	g.Rank = g.f.Rank() + g.kept
	if g.Rank > 0 {
		g.Least = g.leastSingular()
	}
	return g, true
}

// factorWell factors A such that the factored part is well conditioned.
func factorWell(a *Matrix) *Factors {
	lateRows, lateCols := make([]bool, len(a.Rows)), make([]bool, a.Cols)
	for round := 0; ; round++ {
		f := factor(a, lateRows, lateCols)
		if f.Rank() == 0 || round == rounds {
			return f
		}
		// Two steps of inverse iteration show the direction that A₁₁ shrinks most.
		y := Unit(f.SolveTrans(Unit(f.Solve(start(len(a.Rows))))))
		x := f.Solve(y)
		size := floats.Norm(x, 2)
		if size*a.normInf() < goodCond {
			return f
		}
		y = f.SolveTrans(x)
		lateRows[argMax(y)], lateCols[argMax(x)] = true, true
	}
}

// leftOver takes S apart into its singular values.
func (g *General) leftOver() bool {
	rows, cols := g.f.border()
	g.u, g.v = identity(max(1, len(rows))), identity(max(1, len(cols)))
	if len(rows) == 0 || len(cols) == 0 {
		return true
	}
	s := mat.NewDense(len(rows), len(cols), nil)
	for i, row := range g.f.schur() {
		s.SetRow(i, row)
	}
	var svd mat.SVD
	if !svd.Factorize(s, mat.SVDFull) {
		return false
	}
	g.s = svd.Values(nil)
	g.u.Reset()
	g.v.Reset()
	svd.UTo(g.u)
	svd.VTo(g.v)
	return true
}

func identity(n int) *mat.Dense {
	one := mat.NewDense(n, n, nil)
	for i := range n {
		one.Set(i, i, 1)
	}
	return one
}

// candidates gives orthonormal bases of the x and y that A nearly, or wholly,
// makes nothing: those of the singular vectors of S from the first on.
func (g *General) candidates(first int) (right, left [][]float64) {
	rows, cols := g.f.border()
	for k := first; k < len(cols); k++ {
		x := make([]float64, g.a.Cols)
		for i, j := range cols {
			x[j] = g.v.At(i, k)
		}
		g.f.back(make([]float64, len(g.a.Rows)), x)
		right = append(right, x)
	}
	for k := first; k < len(rows); k++ {
		y := make([]float64, len(g.a.Rows))
		for i, r := range rows {
			y[r] = g.u.At(i, k)
		}
		g.f.backTrans(make([]float64, g.a.Cols), y)
		left = append(left, y)
	}
	right, left = orthonormal(right), orthonormal(left)
	// What A still makes of them is rounding of the factors and, for the doubtful,
	// along the others' images: one step of refinement takes it away.
	for _, x := range right {
		floats.Sub(x, g.basic(g.perp(left, g.a.Mul(x))))
	}
	for _, y := range left {
		floats.Sub(y, g.basicTrans(g.perp(right, g.a.mulTrans(y))))
	}
	return orthonormal(right), orthonormal(left)
}

// judge decides which of the candidates A makes nothing: with B = Yᵀ A X, of
// their number, the combinations whose singular values are up to tol.
func (g *General) judge(right, left *[][]float64, tol float64) (more int, ok bool) {
	if len(*right) == 0 || len(*left) == 0 {
		return 0, true
	}
	b := mat.NewDense(len(*left), len(*right), nil)
	for k, x := range *right {
		ax := g.a.Mul(x)
		for i, y := range *left {
			b.Set(i, k, floats.Dot(y, ax))
		}
	}
	var svd mat.SVD
	if !svd.Factorize(b, mat.SVDFull) {
		return 0, false
	}
	for _, s := range svd.Values(nil) {
		if s > tol {
			more++
		}
	}
	if more == 0 {
		return 0, true
	}
	var u, v mat.Dense
	svd.UTo(&u)
	svd.VTo(&v)
	*right, *left = combined(*right, &v, more), combined(*left, &u, more)
	return more, true
}

// combined gives the combinations of a basis that the columns of c from the first
// on name.
func combined(basis [][]float64, c *mat.Dense, first int) [][]float64 {
	var out [][]float64
	for k := first; k < len(basis); k++ {
		x := make([]float64, len(basis[0]))
		for i, b := range basis {
			floats.AddScaled(x, c.At(i, k), b)
		}
		out = append(out, x)
	}
	return out
}

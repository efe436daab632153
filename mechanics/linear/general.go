package linear

import (
	"math"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/lapack"
	"gonum.org/v1/gonum/lapack/lapack64"
	"gonum.org/v1/gonum/mat"
)

const (
	// maxSingular is the rank up to which all singular values are computed: some 20 ms at the most.
	maxSingular = 300
	// maxDense is the number of unknowns beyond which a system is solved by sparse factors of a
	// regular part, where the condition of that is at most soundCond and what it leaves is
	// rounding: dense ones take n³ steps.
	maxDense  = 100
	soundCond = 1e8
	// inverseSteps is how many steps estimate a condition: a few give its order.
	inverseSteps = 10
)

// General is a system of any shape and rank. It is solved by orthogonal factors with the
// columns in an order of their own, in which each next one has the largest part that is
// perpendicular to those before it,
//
//	A Π = Q [R₁₁ R₁₂]
//	        [ 0   0 ]
//
// so that the diagonal of R falls about as the singular values of A do: entries up to tol of the
// first count as none.
type General struct {
	Rank  int
	Cond  float64     // the condition of [R₁₁ R₁₂], 1 where the rank is 0
	Blur  float64     // by how many times the rounding of A the null vectors may be off
	Right [][]float64 // an orthonormal basis of the x with A x = 0
	Left  [][]float64 // an orthonormal basis of the y with Aᵀ y = 0

	order []int             // Π: the column of A in each place
	q     *mat.Dense        // the first columns of Q, of which Left are the others
	r     blas64.Triangular // R₁₁

	regular    *Square // the regular part in place of Q and R, and its rows and columns
	rows, cols []int
}

// NewGeneral finds rank and null spaces of A.
func NewGeneral(a *Matrix, tol float64) *General {
	if a.Cols > maxDense {
		if g, ok := newRegular(a, tol); ok {
			return g
		}
	}
	d := a.Dense()
	m, n := d.Dims()
	g := &General{Cond: 1, order: make([]int, n)}
	for j := range g.order {
		g.order[j] = -1 // free to move
	}
	tau := make([]float64, min(m, n))
	withWork(func(work []float64, size int) { lapack64.Geqp3(d.RawMatrix(), g.order, tau, work, size) })
	for g.Rank < len(tau) && math.Abs(d.At(g.Rank, g.Rank)) > tol*math.Abs(d.At(0, 0)) {
		g.Rank++
	}
	all := mat.NewDense(m, m, nil)
	all.Slice(0, m, 0, len(tau)).(*mat.Dense).Copy(d)
	withWork(func(work []float64, size int) { lapack64.Orgqr(all.RawMatrix(), tau, work, size) })
	for k := g.Rank; k < m; k++ {
		g.Left = append(g.Left, mat.Col(nil, k, all))
	}
	if g.Rank > 0 {
		g.q = all.Slice(0, m, 0, g.Rank).(*mat.Dense)
	}
	raw := d.RawMatrix()
	g.r = blas64.Triangular{Uplo: blas.Upper, Diag: blas.NonUnit, N: g.Rank, Data: raw.Data, Stride: raw.Stride}
	if g.Rank > 0 {
		g.Cond = g.cond(d)
	}
	g.Blur = g.Cond
	for k := g.Rank; k < n; k++ { // x = Π (-R₁₁⁻¹ R₁₂ e, e)
		z := make([]float64, n)
		z[k] = 1
		for i := range g.Rank {
			z[i] = -d.At(i, k)
		}
		g.solveR(blas.NoTrans, z)
		g.Right = append(g.Right, placed(z, g.order, n))
	}
	g.Right = Orthonormal(g.Right)
	return g
}

// newRegular takes the rows and columns that have good pivots for a regular part A₁₁, of
// which all others are combinations:
//
//	A = [A₁₁ A₁₂]     x = (-A₁₁⁻¹ A₁₂ e, e)
//	    [A₂₁ A₂₂]     y = (-A₁₁⁻ᵀ A₂₁ᵀ e, e)
//
// It is false where they are not: where A₂₁ x₁ + A₂₂ x₂ is more than rounding.
func newRegular(a *Matrix, tol float64) (*General, bool) {
	f := Factor(a)
	g := &General{Rank: len(f.pivots), rows: f.PivotRows()}
	for _, p := range f.pivots {
		g.cols = append(g.cols, p.col)
	}
	var ok bool
	if g.regular, ok = NewSquare(a.Part(g.rows, g.cols)); !ok {
		return nil, false
	}
	if g.Blur = g.regular.Cond(); !(g.Blur <= soundCond) {
		return nil, false
	}
	m, n := len(a.Rows), a.Cols
	right := func(x []float64) {
		floats.Sub(x, placed(g.regular.Solve(picked(a.times(x), g.rows)), g.cols, n))
	}
	left := func(y []float64) {
		floats.Sub(y, placed(g.regular.SolveTrans(picked(a.timesTrans(y), g.cols)), g.rows, m))
	}
	g.Right, g.Left = basis(others(g.cols, n), n, right), basis(others(g.rows, m), m, left)
	for _, x := range g.Right {
		if floats.Norm(a.times(x), math.Inf(1)) > tol {
			return nil, false
		}
	}
	g.Cond = max(1, a.normInf()*g.inverseNorm(n))
	return g, true
}

// basis is an orthonormal basis of what solve makes of unit vectors; once more it takes away
// what is left of rounding.
func basis(of []int, n int, solve func(x []float64)) [][]float64 {
	out := make([][]float64, len(of))
	for k, i := range of {
		out[k] = make([]float64, n)
		out[k][i] = 1
		solve(out[k])
	}
	out = Orthonormal(out)
	for _, x := range out {
		solve(x)
	}
	return Orthonormal(out)
}

// inverseNorm estimates ‖A⁺‖₂ from below, by power iteration with A⁺A⁺ᵀ.
func (g *General) inverseNorm(n int) float64 {
	x, square := make([]float64, n), 0.0
	for j := range x {
		x[j] = 1 + float64(j%7)/7 // no symmetry makes it orthogonal to what is sought
	}
	for range inverseSteps {
		x = g.Solve(g.SolveTrans(Unit(x)))
		square = floats.Norm(x, 2)
	}
	return math.Sqrt(square)
}

// others lists what of 0 … n-1 is not in a list.
func others(list []int, n int) (out []int) {
	in := make([]bool, n)
	for _, i := range list {
		in[i] = true
	}
	for i := range in {
		if !in[i] {
			out = append(out, i)
		}
	}
	return out
}

// cond is the ratio of the largest and the least singular value of [R₁₁ R₁₂]; of many
// equations ‖R₁₁‖₁·‖R₁₁⁻¹‖₁ by an estimate.
func (g *General) cond(r *mat.Dense) float64 {
	_, n := r.Dims()
	if g.Rank > maxSingular {
		return 1 / lapack64.Trcon(lapack.MaxColumnSum, g.r, make([]float64, 3*g.Rank), make([]int, g.Rank))
	}
	upper := mat.NewDense(g.Rank, n, nil)
	for i := range g.Rank {
		copy(upper.RawRowView(i)[i:], r.RawRowView(i)[i:])
	}
	return mat.Cond(upper, 2)
}

// withWork calls a routine of LAPACK twice: for the work space that it wants, and with it.
func withWork(call func(work []float64, size int)) {
	want := make([]float64, 1)
	call(want, -1)
	call(make([]float64, int(want[0])), int(want[0]))
}

// solveR solves with R₁₁, or with its transpose, in place.
func (g *General) solveR(t blas.Transpose, z []float64) {
	if g.Rank > 0 {
		blas64.Trsv(t, g.r, blas64.Vector{N: g.Rank, Data: z, Inc: 1})
	}
}

// placed puts values at their places among n, and picked takes them from there.
func placed(z []float64, at []int, n int) []float64 {
	x := make([]float64, n)
	for k, v := range z {
		x[at[k]] = v
	}
	return x
}

func picked(x []float64, at []int) []float64 {
	z := make([]float64, len(at))
	for k, i := range at {
		z[k] = x[i]
	}
	return z
}

// Solve gives the shortest of the x that make A x come nearest to b, x = A⁺ b.
func (g *General) Solve(b []float64) []float64 {
	if g.regular != nil {
		x := g.regular.Solve(picked(Perp(b, g.Left), g.rows))
		return Perp(placed(x, g.cols, g.Rank+len(g.Right)), g.Right)
	}
	z := make([]float64, g.Rank)
	if g.Rank > 0 {
		mat.NewVecDense(g.Rank, z).MulVec(g.q.T(), mat.NewVecDense(len(b), b))
	}
	g.solveR(blas.NoTrans, z)
	return Perp(placed(z, g.order, len(g.order)), g.Right)
}

// SolveTrans gives y = (Aᵀ)⁺ c.
func (g *General) SolveTrans(c []float64) []float64 {
	c = Perp(c, g.Right)
	y := make([]float64, g.Rank+len(g.Left))
	if g.regular != nil {
		return Perp(placed(g.regular.SolveTrans(picked(c, g.cols)), g.rows, len(y)), g.Left)
	}
	z := picked(c, g.order[:g.Rank])
	g.solveR(blas.Trans, z)
	if g.Rank > 0 {
		mat.NewVecDense(len(y), y).MulVec(g.q, mat.NewVecDense(g.Rank, z))
	}
	return y
}

// Perp is v without what lies along q, which are orthonormal. What the
// first pass leaves along q is rounding of the part taken away; the second takes that
// away to rounding of what is left.
func Perp(v []float64, q [][]float64) []float64 {
	rest := append([]float64{}, v...)
	for range 2 {
		for _, b := range q {
			floats.AddScaled(rest, -floats.Dot(b, rest), b)
		}
	}
	return rest
}

// Orthonormal makes rows that span the same, each perpendicular to the others and of
// length one. It leaves its argument as it is.
func Orthonormal(rows [][]float64) [][]float64 {
	out := make([][]float64, 0, len(rows))
	for _, row := range rows {
		out = append(out, Unit(Perp(row, out)))
	}
	return out
}

// Unit makes a vector one of length one, in place.
func Unit(v []float64) []float64 {
	if size := floats.Norm(v, 2); size > 0 {
		floats.Scale(1/size, v)
	}
	return v
}

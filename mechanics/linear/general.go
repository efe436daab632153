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

// maxSingular is the rank up to which all singular values are computed: some 20 ms at the most.
const maxSingular = 300

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
	Right [][]float64 // an orthonormal basis of the x with A x = 0
	Left  [][]float64 // an orthonormal basis of the y with Aᵀ y = 0

	order []int             // Π: the column of A in each place
	q     *mat.Dense        // the first columns of Q, of which Left are the others
	r     blas64.Triangular // R₁₁
}

// NewGeneral finds rank and null spaces of A.
func NewGeneral(a *Matrix, tol float64) *General {
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
	for k := g.Rank; k < n; k++ { // x = Π (-R₁₁⁻¹ R₁₂ e, e)
		z := make([]float64, n)
		z[k] = 1
		for i := range g.Rank {
			z[i] = -d.At(i, k)
		}
		g.solveR(blas.NoTrans, z)
		g.Right = append(g.Right, g.ordered(z))
	}
	g.Right = Orthonormal(g.Right)
	return g
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

// ordered puts what belongs to the columns of A Π at the columns of A.
func (g *General) ordered(z []float64) []float64 {
	x := make([]float64, len(g.order))
	for k, v := range z {
		x[g.order[k]] = v
	}
	return x
}

// Solve gives the shortest of the x that make A x come nearest to b, x = A⁺ b.
func (g *General) Solve(b []float64) []float64 {
	z := make([]float64, g.Rank)
	if g.Rank > 0 {
		mat.NewVecDense(g.Rank, z).MulVec(g.q.T(), mat.NewVecDense(len(b), b))
	}
	g.solveR(blas.NoTrans, z)
	return Perp(g.ordered(z), g.Right)
}

// SolveTrans gives y = (Aᵀ)⁺ c.
func (g *General) SolveTrans(c []float64) []float64 {
	c = Perp(c, g.Right)
	z := make([]float64, g.Rank)
	for k := range z {
		z[k] = c[g.order[k]]
	}
	g.solveR(blas.Trans, z)
	y := make([]float64, g.Rank+len(g.Left))
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

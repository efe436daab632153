package linear

import (
	"math"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/lapack"
	"gonum.org/v1/gonum/lapack/lapack64"
	"gonum.org/v1/gonum/mat"
)

// maxSingular is the rank up to which all singular values are computed: some 20 ms at the most.
const maxSingular = 300

// orthogonal are factors with the columns in an order of their own, in which each next one
// has the largest part that is perpendicular to those before it,
//
//	A Π = Q [R₁₁ R₁₂]
//	        [ 0   0 ]
//
// so that the diagonal of R falls about as the singular values of A do: entries up to a
// tolerance of the first count as none.
type orthogonal struct {
	rows  int
	order []int             // Π: the column of A in each place
	q     *mat.Dense        // the first columns of Q, of which the left null vectors are the others
	r     blas64.Triangular // R₁₁
}

func newOrthogonal(a *Matrix, tol float64) *General {
	d := a.Dense()
	m, n := d.Dims()
	f := &orthogonal{rows: m, order: make([]int, n)}
	g := &General{Cond: 1, part: f}
	for j := range f.order {
		f.order[j] = -1 // free to move
	}
	tau := make([]float64, min(m, n))
	withWork(func(work []float64, size int) { lapack64.Geqp3(d.RawMatrix(), f.order, tau, work, size) })
	for g.Rank < len(tau) && math.Abs(d.At(g.Rank, g.Rank)) > tol*math.Abs(d.At(0, 0)) {
		g.Rank++
	}
	all := mat.NewDense(m, m, nil)
	all.Slice(0, m, 0, len(tau)).(*mat.Dense).Copy(d)
	withWork(func(work []float64, size int) { lapack64.Orgqr(all.RawMatrix(), tau, work, size) })
	for k := g.Rank; k < m; k++ {
		g.Left = append(g.Left, mat.Col(nil, k, all))
	}
	raw := d.RawMatrix()
	f.r = blas64.Triangular{Uplo: blas.Upper, Diag: blas.NonUnit, N: g.Rank, Data: raw.Data, Stride: raw.Stride}
	if g.Rank > 0 {
		f.q = all.Slice(0, m, 0, g.Rank).(*mat.Dense)
		g.Cond = f.cond(d)
	}
	g.Blur = g.Cond
	for k := g.Rank; k < n; k++ { // x = Π (-R₁₁⁻¹ R₁₂ e, e)
		z := make([]float64, n)
		z[k] = 1
		for i := range g.Rank {
			z[i] = -d.At(i, k)
		}
		f.solveR(blas.NoTrans, z)
		g.Right = append(g.Right, f.placed(z))
	}
	g.Right = Orthonormal(g.Right)
	return g
}

// cond is the ratio of the largest and the least singular value of [R₁₁ R₁₂]; of many
// equations ‖R₁₁‖₁·‖R₁₁⁻¹‖₁ by an estimate.
func (f *orthogonal) cond(r *mat.Dense) float64 {
	_, n := r.Dims()
	if f.r.N > maxSingular {
		return 1 / lapack64.Trcon(lapack.MaxColumnSum, f.r, make([]float64, 3*f.r.N), make([]int, f.r.N))
	}
	upper := mat.NewDense(f.r.N, n, nil)
	for i := range f.r.N {
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
func (f *orthogonal) solveR(t blas.Transpose, z []float64) {
	if f.r.N > 0 {
		blas64.Trsv(t, f.r, blas64.Vector{N: f.r.N, Data: z, Inc: 1})
	}
}

// placed puts values at the places of their columns.
func (f *orthogonal) placed(z []float64) []float64 {
	x := make([]float64, len(f.order))
	for k, v := range z {
		x[f.order[k]] = v
	}
	return x
}

// Solve gives x = Π (R₁₁⁻¹ Q₁ᵀ b, 0).
func (f *orthogonal) Solve(b []float64) []float64 {
	z := make([]float64, f.r.N)
	if f.r.N > 0 {
		mat.NewVecDense(f.r.N, z).MulVec(f.q.T(), mat.NewVecDense(len(b), b))
	}
	f.solveR(blas.NoTrans, z)
	return f.placed(z)
}

// SolveTrans gives y = Q₁ R₁₁⁻ᵀ c₁.
func (f *orthogonal) SolveTrans(c []float64) []float64 {
	z := make([]float64, f.r.N)
	for k := range z {
		z[k] = c[f.order[k]]
	}
	f.solveR(blas.Trans, z)
	y := make([]float64, f.rows)
	if f.r.N > 0 {
		mat.NewVecDense(len(y), y).MulVec(f.q, mat.NewVecDense(f.r.N, z))
	}
	return y
}

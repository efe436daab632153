package linear

import (
	"math"

	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/lapack/lapack64"
)

// The iterations for the largest and the least singular value stop when they
// change by less than settled; a condition number needs one figure, and a
// tolerance of rank relative to the largest no more.
const (
	settled    = 1e-5
	iterations = 100
)

// start is a vector that no symmetry of a structure makes orthogonal to what is
// sought: the fractional parts of the multiples of the golden ratio.
func start(n int) []float64 {
	v := make([]float64, n)
	for i := range v {
		_, f := math.Modf(float64(i+1) * math.Phi)
		v[i] = f - 0.5
	}
	return v
}

// largestSingular is σ₁ by power iteration on AᵀA.
func largestSingular(a *Matrix) float64 {
	x, y := Unit(start(a.Cols)), make([]float64, len(a.Rows))
	last := 0.0
	for range iterations {
		a.mulTo(y, x)
		size := floats.Norm(y, 2)
		a.mulTransTo(x, y)
		x = Unit(x)
		if math.Abs(size-last) <= settled*size {
			return size
		}
		last = size
	}
	return last
}

// leastSingular is the least singular value that counts, by power iteration on
// A⁺(A⁺)ᵀ.
func (g *General) leastSingular() float64 {
	x := Unit(g.perp(g.Right, start(g.a.Cols)))
	last := 0.0
	for range iterations {
		y := g.SolveTrans(x)
		size := floats.Norm(y, 2)
		if !(size > 0) || math.IsInf(size, 1) {
			break
		}
		x = Unit(g.perp(g.Right, g.basic(g.perp(g.Left, y))))
		if math.Abs(size-last) <= settled*size {
			last = size
			break
		}
		last = size
	}
	if last == 0 {
		return g.Largest
	}
	return 1 / last
}

// orthonormal gives an orthonormal basis of what independent vectors span, by
// Householder reflections.
func orthonormal(vectors [][]float64) [][]float64 {
	k := len(vectors)
	if k == 0 {
		return nil
	}
	n := len(vectors[0])
	q := blas64.General{Rows: n, Cols: k, Stride: k, Data: make([]float64, n*k)}
	for c, v := range vectors {
		for i, x := range v {
			q.Data[i*k+c] = x
		}
	}
	tau := make([]float64, k)
	work := make([]float64, 1)
	lapack64.Geqrf(q, tau, work, -1)
	work = make([]float64, int(work[0]))
	lapack64.Geqrf(q, tau, work, len(work))
	work = make([]float64, 1)
	lapack64.Orgqr(q, tau, work, -1)
	work = make([]float64, int(work[0]))
	lapack64.Orgqr(q, tau, work, len(work))
	out := make([][]float64, k)
	for c := range out {
		out[c] = make([]float64, n)
		for i := range out[c] {
			out[c][i] = q.Data[i*k+c]
		}
	}
	return out
}

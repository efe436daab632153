package linear

import (
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

const (
	// maxDense is the number of unknowns beyond which a system is solved by sparse factors:
	// dense ones take n³ steps; below it the bookkeeping of sparse ones costs more than the zeros.
	maxDense = 60
	// soundCond is the condition number up to which the factors of a regular part alone
	// show the rank; beyond it orthogonal ones are looked at. It lies far from where rank ends.
	soundCond = 1e8
	// inverseSteps is how many steps estimate a condition: a few give its order.
	inverseSteps = 10
)

// General is a system of any shape and rank, with the shortest x that makes A x come nearest
// to b.
type General struct {
	Rank  int
	Cond  float64     // the condition of what is not null, 1 where the rank is 0
	Blur  float64     // by how many times the rounding of A the null vectors may be off
	Right [][]float64 // an orthonormal basis of the x with A x = 0
	Left  [][]float64 // an orthonormal basis of the y with Aᵀ y = 0

	part Solver
}

// Solver gives some x with A x = b where there is one, and the same of Aᵀ.
type Solver interface {
	Solve(b []float64) []float64
	SolveTrans(c []float64) []float64
}

// NewGeneral factors A and finds its rank and null spaces: a small square matrix as it is,
// a large matrix by sparse factors of a regular part, all others by orthogonal factors.
func NewGeneral(a *Matrix, tol float64) *General {
	if g, ok := newSquare(a); ok {
		return g
	}
	if a.Cols > maxDense || a.Cols == 0 || len(a.Rows) == 0 {
		if g, ok := newRegular(a, tol); ok {
			return g
		}
	}
	return newOrthogonal(a, tol)
}

// newSquare takes LU factors with partial pivoting of a small square matrix. It is false where
// they do not show full rank.
func newSquare(a *Matrix) (*General, bool) {
	n := a.Cols
	if n == 0 || len(a.Rows) != n || n > maxDense {
		return nil, false
	}
	var f dense
	f.lu.Factorize(a.Dense())
	g := &General{Rank: n, Cond: f.lu.Cond(), part: &f}
	return g, g.Cond < soundCond
}

// dense are LU factors of a regular matrix.
type dense struct{ lu mat.LU }

func (d *dense) Solve(b []float64) []float64      { return d.solve(false, b) }
func (d *dense) SolveTrans(c []float64) []float64 { return d.solve(true, c) }

func (d *dense) solve(trans bool, b []float64) []float64 {
	x := mat.NewVecDense(len(b), nil)
	_ = d.lu.SolveVecTo(x, trans, mat.NewVecDense(len(b), b)) // the condition is sound: there is no error
	return x.RawVector().Data
}

// Solve gives the shortest of the x that make A x come nearest to b, x = A⁺ b.
func (g *General) Solve(b []float64) []float64 {
	return Perp(g.part.Solve(Perp(b, g.Left)), g.Right)
}

// SolveTrans gives y = (Aᵀ)⁺ c.
func (g *General) SolveTrans(c []float64) []float64 {
	return Perp(g.part.SolveTrans(Perp(c, g.Right)), g.Left)
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
	g := &General{Rank: len(f.pivots), part: f}
	rows, cols := f.PivotRows(), make([]int, len(f.pivots))
	for k, p := range f.pivots {
		cols[k] = p.col
	}
	m, n := len(a.Rows), a.Cols
	norm := a.normInf()
	_, inverse := Weakest(f, m, inverseSteps)
	if g.Blur = max(1, norm*inverse); !(g.Blur <= soundCond) {
		return nil, false
	}
	right := func(x []float64) { floats.Sub(x, f.Solve(a.times(x))) }
	left := func(y []float64) { floats.Sub(y, f.SolveTrans(a.timesTrans(y))) }
	g.Right, g.Left = basis(others(cols, n), n, right), basis(others(rows, m), m, left)
	for _, x := range g.Right {
		if floats.Norm(a.times(x), math.Inf(1)) > tol {
			return nil, false
		}
	}
	_, inverse = Weakest(g, m, inverseSteps)
	g.Cond = max(1, norm*inverse)
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

// Weakest is the left singular vector of the least singular value of a matrix of m rows, by
// inverse iteration, and the inverse of that value, ‖A⁺‖₂, from below.
func Weakest(a Solver, m, steps int) (y []float64, inverse float64) {
	y = make([]float64, m)
	for i := range y {
		y[i] = 1 + float64(i%7)/7 // no symmetry makes it orthogonal to what is sought
	}
	for range steps {
		y = a.SolveTrans(a.Solve(Unit(y)))
		inverse = math.Sqrt(floats.Norm(y, 2))
	}
	return Unit(y), inverse
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

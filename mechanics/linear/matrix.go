// Package linear solves sparse systems of linear equations A x = b: the order in
// which blocks of them can be solved, their factors, condition, and rank with
// the null spaces of what has no single solution; and linear programmes, with proofs.
//
// The matrices of equilibrium have a handful of entries a row however many bodies
// there are, and scaled entries of about one. All tolerances here are absolute
// and made for matrices so scaled: columns of length one.
package linear

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// Term is an entry of a sparse row: Value in column Col.
type Term struct {
	Col   int
	Value float64
}

// Matrix is an m × n matrix by rows. A row names each column at most once, in any
// order; what it does not name is zero.
type Matrix struct {
	Rows [][]Term
	Cols int
}

// Dense is the same with its zeros.
func (a *Matrix) Dense() *mat.Dense {
	d := mat.NewDense(len(a.Rows), a.Cols, nil)
	for i, row := range a.Rows {
		for _, t := range row {
			d.Set(i, t.Col, t.Value)
		}
	}
	return d
}

// times is A x.
func (a *Matrix) times(x []float64) []float64 {
	out := make([]float64, len(a.Rows))
	for i, row := range a.Rows {
		for _, t := range row {
			out[i] += t.Value * x[t.Col]
		}
	}
	return out
}

// timesTrans is Aᵀ y.
func (a *Matrix) timesTrans(y []float64) []float64 {
	out := make([]float64, a.Cols)
	for i, row := range a.Rows {
		for _, t := range row {
			out[t.Col] += t.Value * y[i]
		}
	}
	return out
}

// normInf is the largest sum of the magnitudes of a row, ‖A‖∞ = max Σ |a[i][j]|.
func (a *Matrix) normInf() float64 {
	norm := 0.0
	for _, row := range a.Rows {
		sum := 0.0
		for _, t := range row {
			sum += math.Abs(t.Value)
		}
		norm = max(norm, sum)
	}
	return norm
}

// columns lists the rows in which each column has an entry that is not zero.
func (a *Matrix) columns() [][]int {
	in := make([][]int, a.Cols)
	for i, row := range a.Rows {
		for _, t := range row {
			if t.Value != 0 {
				in[t.Col] = append(in[t.Col], i)
			}
		}
	}
	return in
}

// Part is the matrix of some of the rows and columns, in the order given; what
// lies in other columns is left out.
func (a *Matrix) Part(rows, cols []int) *Matrix {
	at := make([]int, a.Cols)
	for k, j := range cols {
		at[j] = k + 1
	}
	p := &Matrix{Rows: make([][]Term, len(rows)), Cols: len(cols)}
	for k, i := range rows {
		p.Rows[k] = make([]Term, 0, len(a.Rows[i]))
		for _, t := range a.Rows[i] {
			if at[t.Col] > 0 {
				p.Rows[k] = append(p.Rows[k], Term{at[t.Col] - 1, t.Value})
			}
		}
	}
	return p
}

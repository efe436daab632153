// Package linear solves sparse systems of linear equations A x = b: the order in
// which blocks of them can be solved, sparse LU factors, condition, and rank with
// the null spaces of what has no single solution.
//
// The matrices of equilibrium have a handful of entries a row however many bodies
// there are, and scaled entries of about one. All tolerances here are absolute
// and made for matrices so scaled: columns of length one.
package linear

import "math"

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

// Mul gives A x, of length m.
func (a *Matrix) Mul(x []float64) []float64 {
	y := make([]float64, len(a.Rows))
	a.mulTo(y, x)
	return y
}

// mulTo is Mul into y, whatever that holds.
func (a *Matrix) mulTo(y, x []float64) {
	for i, row := range a.Rows {
		sum := 0.0
		for _, t := range row {
			sum += t.Value * x[t.Col]
		}
		y[i] = sum
	}
}

// mulTrans gives Aᵀ y, of length n.
func (a *Matrix) mulTrans(y []float64) []float64 {
	x := make([]float64, a.Cols)
	a.mulTransTo(x, y)
	return x
}

// mulTransTo is mulTrans into x, whatever that holds.
func (a *Matrix) mulTransTo(x, y []float64) {
	clear(x)
	for i, row := range a.Rows {
		for _, t := range row {
			x[t.Col] += t.Value * y[i]
		}
	}
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

// Part is the matrix of some of the rows and columns, in the order given; what
// lies in other columns is left out.
func (a *Matrix) Part(rows, cols []int) *Matrix {
	at := make([]int, a.Cols)
	for k, j := range cols {
		at[j] = k + 1
	}
	p := &Matrix{Rows: make([][]Term, len(rows)), Cols: len(cols)}
	entries := 0
	for _, i := range rows {
		entries += len(a.Rows[i])
	}
	store := make([]Term, 0, entries)
	for k, i := range rows {
		first := len(store)
		for _, t := range a.Rows[i] {
			if at[t.Col] > 0 {
				store = append(store, Term{at[t.Col] - 1, t.Value})
			}
		}
		p.Rows[k] = store[first:len(store):len(store)]
	}
	return p
}

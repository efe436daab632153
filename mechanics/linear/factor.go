package linear

import (
	"math"
	"slices"
)

// The choice of pivots.
const (
	// rowShare is how large a pivot is at least beside the largest entry of its row.
	// An elimination step multiplies rounding by at most 1 + 1/rowShare; a larger share
	// leaves fewer pivots to choose from, and so more fill-in.
	rowShare = 0.1
	// faint is the size below which no entry becomes a pivot: in a matrix scaled to
	// columns of length one an entry that small is either the trace of a dependence
	// or the cause of a poor condition, and what is left then is judged by singular
	// values.
	faint = 1e-5
	// lists is how many lists of rows or columns with a candidate are searched for a
	// pivot with the least fill-in; more lists cost more time than the fill-in they save.
	lists = 4
)

// Factors are sparse LU factors of the part of a matrix that has good pivots:
//
//	A = [A₁₁ A₁₂]   A₁₁ = P L U Q,   S = A₂₂ - A₂₁ A₁₁⁻¹ A₁₂
//	    [A₂₁ A₂₂]
//
// Rows and columns without a pivot are the border; S is what is left of it.
type Factors struct {
	m, n   int
	pivots []pivot
	rows   []int // the border's rows, ascending
	cols   []int // the border's columns, ascending
	work   *active
}

// pivot is a step of the elimination: the row and column, the pivot's value, the
// rest of its row (U) and the multiples of it that other rows lost (L).
type pivot struct {
	row, col int
	value    float64
	right    []Term
	below    []Term // Col is a row here
}

// Factor eliminates as far as good pivots go.
func Factor(a *Matrix) *Factors {
	return factor(a, make([]bool, len(a.Rows)), make([]bool, a.Cols))
}

// factor eliminates as far as good pivots go, each chosen for the least fill-in:
// the Markowitz cost (r - 1)(c - 1) of an entry in a row of r and a column of c
// entries, the most new entries that the step can make. Rows and columns that lateRows and lateCols mark stay in the border.
func factor(a *Matrix, lateRows, lateCols []bool) *Factors {
	w := newActive(a, lateRows, lateCols)
	f := &Factors{m: len(a.Rows), n: a.Cols, work: w, pivots: make([]pivot, 0, min(len(a.Rows), a.Cols))}
	for {
		i, j, ok := w.choose()
		if !ok {
			break
		}
		f.pivots = append(f.pivots, w.eliminate(i, j))
	}
	f.rows, f.cols = left(w.gone), left(w.goneCol)
	return f
}

// left lists what is not gone.
func left(gone []bool) (out []int) {
	for i, is := range gone {
		if !is {
			out = append(out, i)
		}
	}
	return out
}

// Rank is the number of pivots.
func (f *Factors) Rank() int { return len(f.pivots) }

// border gives the rows and columns without a pivot.
func (f *Factors) border() (rows, cols []int) { return f.rows, f.cols }

// PivotRows gives the rows with a pivot, in the order of elimination.
func (f *Factors) PivotRows() []int {
	out := make([]int, len(f.pivots))
	for k, p := range f.pivots {
		out[k] = p.row
	}
	return out
}

// schur gives S, by the border's rows and columns.
func (f *Factors) schur() [][]float64 {
	at := make([]int, f.n)
	for k, j := range f.cols {
		at[j] = k
	}
	s := make([][]float64, len(f.rows))
	for k, i := range f.rows {
		s[k] = make([]float64, len(f.cols))
		for _, t := range f.work.rows[i] {
			s[k][at[t.Col]] = t.Value
		}
	}
	return s
}

// forward carries the elimination out on b, in place: the entries of the border's
// rows become b₂ - A₂₁ A₁₁⁻¹ b₁.
func (f *Factors) forward(b []float64) {
	for k := range f.pivots {
		p := &f.pivots[k]
		if y := b[p.row]; y != 0 {
			for _, t := range p.below {
				b[t.Col] -= t.Value * y
			}
		}
	}
}

// back gives the x that goes with b after forward; x holds the values of the
// border's columns.
func (f *Factors) back(b, x []float64) {
	for k := len(f.pivots) - 1; k >= 0; k-- {
		p := &f.pivots[k]
		sum := b[p.row]
		for _, t := range p.right {
			sum -= t.Value * x[t.Col]
		}
		x[p.col] = sum / p.value
	}
}

// forwardTrans and backTrans do the same for Aᵀ y = c: c is changed in place, and
// its entries of the border's columns become c₂ - A₁₂ᵀ A₁₁⁻ᵀ c₁; y holds the
// values of the border's rows.
func (f *Factors) forwardTrans(c []float64) {
	for k := range f.pivots {
		p := &f.pivots[k]
		v := c[p.col] / p.value
		if c[p.col] = v; v != 0 {
			for _, t := range p.right {
				c[t.Col] -= t.Value * v
			}
		}
	}
}

func (f *Factors) backTrans(c, y []float64) {
	for k := len(f.pivots) - 1; k >= 0; k-- {
		p := &f.pivots[k]
		sum := c[p.col]
		for _, t := range p.below {
			sum -= t.Value * y[t.Col]
		}
		y[p.row] = sum
	}
}

// Solve gives x with A₁₁ x₁ = b₁ and nothing in the border: the solution of A x =
// b where every row and column has its pivot.
func (f *Factors) Solve(b []float64) []float64 {
	b = slices.Clone(b)
	f.forward(b)
	x := make([]float64, f.n)
	f.back(b, x)
	return x
}

// SolveTrans gives y with A₁₁ᵀ y₁ = c₁ and nothing in the border.
func (f *Factors) SolveTrans(c []float64) []float64 {
	c = slices.Clone(c)
	f.forwardTrans(c)
	y := make([]float64, f.m)
	f.backTrans(c, y)
	return y
}

// largest is the largest size in a row.
func largest(row []Term) float64 {
	size := 0.0
	for _, t := range row {
		size = max(size, math.Abs(t.Value))
	}
	return size
}

package linear

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
)

// The choice of pivots.
const (
	// rowShare is how large a pivot is at least beside the largest entry of its row.
	// An elimination step multiplies rounding by at most 1 + 1/rowShare; a larger share
	// leaves fewer pivots to choose from, and so more fill-in.
	rowShare = 0.1
	// faint is the size below which no entry becomes a pivot: in a matrix scaled to
	// columns of length one an entry that small is either the trace of a dependence
	// or the cause of a poor condition, and singular values judge those.
	faint = 1e-5
)

// Factors are sparse LU factors of the part of a matrix that has good pivots.
type Factors struct {
	a      *Matrix
	pivots []pivot
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
	w := active{rows: make([][]Term, len(a.Rows)), in: a.columns(), place: make([]int, a.Cols)}
	for i, row := range a.Rows {
		w.rows[i] = slices.DeleteFunc(slices.Clone(row), func(t Term) bool { return t.Value == 0 })
	}
	f := &Factors{a: a}
	for {
		i, j, ok := w.choose()
		if !ok {
			return f
		}
		f.pivots = append(f.pivots, w.eliminate(i, j))
	}
}

// PivotRows gives the rows with a pivot, in the order of elimination.
func (f *Factors) PivotRows() []int {
	out := make([]int, len(f.pivots))
	for k, p := range f.pivots {
		out[k] = p.row
	}
	return out
}

// Solve gives x with A₁₁ x₁ = b₁, of the rows and columns that have a pivot; x is zero in
// the others.
func (f *Factors) Solve(b []float64) []float64 { return refined(f.solve, f.a.times, b) }

// SolveTrans does the same for A₁₁ᵀ y₁ = c₁.
func (f *Factors) SolveTrans(c []float64) []float64 {
	return refined(f.solveTrans, f.a.timesTrans, c)
}

// refined is a solution improved once, by that of what it leaves: pivots chosen for little
// fill-in let rounding grow.
func refined(solve, times func([]float64) []float64, b []float64) []float64 {
	x := solve(b)
	floats.Add(x, solve(floats.SubTo(make([]float64, len(b)), b, times(x))))
	return x
}

func (f *Factors) solve(b []float64) []float64 {
	b = slices.Clone(b)
	for _, p := range f.pivots {
		for _, t := range p.below {
			b[t.Col] -= t.Value * b[p.row]
		}
	}
	x := make([]float64, f.a.Cols)
	for _, p := range slices.Backward(f.pivots) {
		sum := b[p.row]
		for _, t := range p.right {
			sum -= t.Value * x[t.Col]
		}
		x[p.col] = sum / p.value
	}
	return x
}

func (f *Factors) solveTrans(c []float64) []float64 {
	c = slices.Clone(c)
	for _, p := range f.pivots {
		c[p.col] /= p.value
		for _, t := range p.right {
			c[t.Col] -= t.Value * c[p.col]
		}
	}
	y := make([]float64, len(f.a.Rows))
	for _, p := range slices.Backward(f.pivots) {
		sum := c[p.col]
		for _, t := range p.below {
			sum -= t.Value * y[t.Col]
		}
		y[p.row] = sum
	}
	return y
}

// active is what is left to eliminate: rows with values, and columns with the rows
// that have an entry there. Both are nil once they have had their pivot.
type active struct {
	rows  [][]Term
	in    [][]int
	place []int // the place of a column in the pivot row, plus one, while it is eliminated
}

// choose finds a pivot with little fill-in: in the column with the fewest entries that
// has a good one, the row with the fewest. It is false where there is none left.
func (w *active) choose() (row, col int, ok bool) {
	fewest := math.MaxInt
	for j, in := range w.in {
		if len(in) >= fewest {
			continue
		}
		for _, i := range in {
			if !good(w.rows[i], j) {
				continue
			}
			if len(in) < fewest || len(w.rows[i]) < len(w.rows[row]) {
				row, col, ok, fewest = i, j, true, len(in)
			}
		}
	}
	return row, col, ok
}

// good tells that the entry of a column in a row can be its pivot.
func good(row []Term, col int) bool {
	size, largest := 0.0, 0.0
	for _, t := range row {
		largest = max(largest, math.Abs(t.Value))
		if t.Col == col {
			size = math.Abs(t.Value)
		}
	}
	return size >= rowShare*largest && size >= faint
}

// eliminate takes the row and column of a pivot out, and its multiples from the
// other rows of the column.
func (w *active) eliminate(row, col int) pivot {
	out := pivot{row: row, col: col}
	for _, t := range w.rows[row] {
		if t.Col == col {
			out.value = t.Value
			continue
		}
		out.right = append(out.right, t)
		w.place[t.Col] = len(out.right)
		w.in[t.Col] = slices.DeleteFunc(w.in[t.Col], func(i int) bool { return i == row })
	}
	for _, i := range w.in[col] {
		if i != row {
			out.below = append(out.below, Term{i, w.reduce(i, &out)})
		}
	}
	for _, t := range out.right {
		w.place[t.Col] = 0
	}
	w.rows[row], w.in[col] = nil, nil
	return out
}

// reduce takes the multiple of the pivot's row from row i that makes its entry in
// the pivot's column zero, and gives the multiple.
func (w *active) reduce(i int, p *pivot) float64 {
	at := slices.IndexFunc(w.rows[i], func(t Term) bool { return t.Col == p.col })
	times := w.rows[i][at].Value / p.value
	row := slices.Delete(w.rows[i], at, at+1)
	met := make([]bool, len(p.right))
	for k := range row {
		if place := w.place[row[k].Col]; place > 0 {
			row[k].Value -= times * p.right[place-1].Value
			met[place-1] = true
		}
	}
	for k, t := range p.right {
		if !met[k] {
			row = append(row, Term{t.Col, -times * t.Value})
			w.in[t.Col] = append(w.in[t.Col], i)
		}
	}
	w.rows[i] = row
	return times
}

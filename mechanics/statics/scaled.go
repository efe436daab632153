package statics

import (
	"math"

	"trivet/mechanics/linear"
)

// scaledSparse is A with rows of moments divided by their length and columns
// scaled to length one.
func scaledSparse(s *System, scale []float64) *linear.Matrix {
	a := &linear.Matrix{Rows: make([][]linear.Term, len(s.Rows)), Cols: len(s.Cols)}
	entries := 0
	for _, row := range s.Terms {
		entries += len(row)
	}
	store := make([]linear.Term, 0, entries)
	for i, row := range s.Terms {
		first := len(store)
		for _, t := range row {
			store = append(store, linear.Term{Col: t.Col, Value: t.Value / (s.Rows[i].Scale * scale[t.Col])})
		}
		a.Rows[i] = store[first:len(store):len(store)]
	}
	return a
}

// scaledLoads is b with rows of moments divided by their length.
func (s *System) scaledLoads() []float64 {
	b := make([]float64, len(s.B))
	for i := range b {
		b[i] = s.B[i] / s.Rows[i].Scale
	}
	return b
}

// spread adds the vectors of a part to those of the whole, of length n.
func spread(all, part [][]float64, at []int, n int) [][]float64 {
	for _, v := range part {
		w := make([]float64, n)
		for k, x := range v {
			w[at[k]] = x
		}
		all = append(all, w)
	}
	return all
}

// Blocks gives the order in which the system can be solved by hand: groups of
// rows, each for as many columns, that need only columns of groups before, and
// none that falls into smaller ones. Rows that only repeat others are left out. It
// is nil where some unknown has no single value.
func (s *Solution) Blocks() []linear.Block {
	n := len(s.X)
	if n == 0 || s.Rank < n || s.Verdict == NoEquilibrium {
		return nil
	}
	a := scaledSparse(&s.System, columnScale(&s.System))
	for _, row := range a.Rows {
		for k := range row {
			if math.Abs(row[k].Value) < nothingThere {
				row[k].Value = 0
			}
		}
	}
	all := make([]int, n)
	for j := range all {
		all[j] = j
	}
	rows := make([]int, len(a.Rows))
	for i := range rows {
		rows[i] = i
	}
	if len(rows) > n {
		rows = linear.Factor(a).PivotRows()
		if len(rows) < n {
			return nil // only singular values tell which rows are independent
		}
	}
	blocks, ok := a.Part(rows, all).Blocks()
	if !ok {
		return nil
	}
	for _, b := range blocks {
		for k := range b.Rows {
			b.Rows[k] = rows[b.Rows[k]]
		}
	}
	return blocks
}

// nothingThere is the size of a scaled entry that is rounding only, such as the
// cosine of a right angle: nobody writes it into an equation.
const nothingThere = 1e-14

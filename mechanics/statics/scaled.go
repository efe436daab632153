package statics

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"trivet/mechanics/linear"
)

// scaled is A with rows of moments divided by their length and columns scaled to length
// one, b divided by the same lengths, and the length of each column, 1 for an empty one.
func (s *System) scaled() (a *linear.Matrix, b, scale []float64) {
	a, b, scale = &linear.Matrix{Rows: make([][]linear.Term, len(s.Rows)), Cols: len(s.Cols)}, slices.Clone(s.B), make([]float64, len(s.Cols))
	for i, row := range s.Terms {
		b[i] /= s.Rows[i].Scale
		for _, t := range row {
			x := t.Value / s.Rows[i].Scale
			scale[t.Col] += x * x
		}
	}
	for j := range scale {
		scale[j] = cmp.Or(math.Sqrt(scale[j]), 1)
	}
	for i, row := range s.Terms {
		a.Rows[i] = slices.Clone(row)
		for k, t := range row {
			a.Rows[i][k].Value /= s.Rows[i].Scale * scale[t.Col]
		}
	}
	return a, b, scale
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
	if len(s.X) == 0 || s.Rank < len(s.X) || s.Verdict == NoEquilibrium {
		return nil
	}
	a, _, _ := s.System.scaled()
	for i, row := range a.Rows {
		a.Rows[i] = slices.DeleteFunc(row, func(t linear.Term) bool { return math.Abs(t.Value) < nothingThere })
	}
	return a.Blocks()
}

// nothingThere is the size of a scaled entry that is rounding only, such as the
// cosine of a right angle: nobody writes it into an equation.
const nothingThere = 1e-14

// maxSide is the order up to which a determinant is worked out with every change of a given.
const maxSide = 60

// Side is the sign of the determinant of A, by which it is told that a geometry
// and another one lie on two sides of one that has no single solution: det A
// varies continuously with a length. It is 0 where A is not square, has not full
// rank, or is of an order above maxSide.
func (s *Solution) Side() int {
	n := len(s.System.Cols)
	if n == 0 || n != len(s.System.Rows) || s.Rank < n || n > maxSide {
		return 0
	}
	var lu mat.LU
	a, _, _ := s.System.scaled()
	lu.Factorize(a.Dense())
	_, sign := lu.LogDet()
	if math.IsNaN(sign) {
		return 0
	}
	return int(sign)
}

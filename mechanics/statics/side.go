package statics

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// Side is the sign of the determinant of A, by which it is told that a geometry
// and another one lie on two sides of one that has no single solution: det A
// varies continuously with a length. It is 0 where A is not square, has not full
// rank, or is larger than what is solved as a dense matrix.
func (s *Solution) Side() int {
	n := len(s.System.Cols)
	if n == 0 || n != len(s.System.Rows) || s.Rank < n || n > smallSystem {
		return 0
	}
	var lu mat.LU
	lu.Factorize(dense(scaledSparse(&s.System, columnScale(&s.System))))
	_, sign := lu.LogDet()
	if math.IsNaN(sign) {
		return 0
	}
	return int(sign)
}

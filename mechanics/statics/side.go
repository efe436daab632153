package statics

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

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
	lu.Factorize(scaledSparse(&s.System, columnScale(&s.System)).Dense())
	_, sign := lu.LogDet()
	if math.IsNaN(sign) {
		return 0
	}
	return int(sign)
}

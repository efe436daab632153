package statics

import (
	"slices"

	"gonum.org/v1/gonum/floats"

	"trivet/mechanics/linear"
)

// orthogonal takes away from v what lies along q, which are orthonormal. What the
// first pass leaves along q is rounding of the part taken away; the second takes that
// away to rounding of what is left.
func orthogonal(v []float64, q [][]float64) []float64 {
	rest := slices.Clone(v)
	for range 2 {
		for _, b := range q {
			floats.AddScaled(rest, -floats.Dot(b, rest), b)
		}
	}
	return rest
}

// orthonormal makes rows that span the same, each perpendicular to the others and of
// length one. It leaves its argument as it is.
func orthonormal(rows [][]float64) [][]float64 {
	out := make([][]float64, 0, len(rows))
	for _, row := range rows {
		out = append(out, linear.Unit(orthogonal(row, out)))
	}
	return out
}

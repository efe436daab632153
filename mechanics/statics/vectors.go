package statics

import "gonum.org/v1/gonum/floats"

// orthogonal takes away from v what lies along q, which are orthonormal. What the
// first pass leaves along q is rounding of the part taken away; the second takes that
// away to rounding of what is left.
func orthogonal(v []float64, q [][]float64) []float64 {
	rest := append([]float64{}, v...)
	for range 2 {
		for _, b := range q {
			part := floats.Dot(b, rest)
			for k := range rest {
				rest[k] -= part * b[k]
			}
		}
	}
	return rest
}

// orthonormal makes rows that span the same, each perpendicular to the others and of
// length one. It leaves its argument as it is.
func orthonormal(rows [][]float64) [][]float64 {
	out := make([][]float64, 0, len(rows))
	for _, row := range rows {
		r := orthogonal(row, out)
		size := floats.Norm(r, 2)
		for i := range r {
			r[i] /= size
		}
		out = append(out, r)
	}
	return out
}

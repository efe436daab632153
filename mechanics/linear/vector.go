package linear

import "gonum.org/v1/gonum/floats"

// Unit makes a vector one of length one, in place.
func Unit(v []float64) []float64 {
	if size := floats.Norm(v, 2); size > 0 {
		for i := range v {
			v[i] /= size
		}
	}
	return v
}

package linear

import "math"

func sub(x, by []float64) {
	for i := range x {
		x[i] -= by[i]
	}
}

func inner(a, b []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}

func norm(v []float64) float64 { return math.Sqrt(inner(v, v)) }

func unit(v []float64) []float64 {
	if size := norm(v); size > 0 {
		for i := range v {
			v[i] /= size
		}
	}
	return v
}

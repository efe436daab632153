package handsolve

import (
	"slices"

	"gonum.org/v1/gonum/floats"
)

// basis spans vectors by orthonormal ones.
type basis [][]float64

// rest is what a vector has beside the basis, and its size; twice, so that rounding goes as well.
func (b basis) rest(v []float64) ([]float64, float64) {
	v = slices.Clone(v)
	for range 2 {
		for _, u := range b {
			floats.AddScaled(v, -floats.Dot(u, v), u)
		}
	}
	return v, floats.Norm(v, 2)
}

// put adds a vector, of length one, of which the basis leaves more than tol.
func (b *basis) put(v []float64, tol float64) bool {
	rest, size := b.rest(v)
	if size <= tol {
		return false
	}
	floats.Scale(1/size, rest)
	*b = append(*b, rest)
	return true
}

// complement spans what is orthogonal to some vectors of n components and length one.
func complement(n int, vectors [][]float64, tol float64) [][]float64 {
	var b basis
	for _, v := range vectors {
		b.put(v, tol)
	}
	rank := len(b)
	for len(b) < n {
		var most []float64
		largest := 0.0
		for k := range n {
			e := make([]float64, n)
			e[k] = 1
			if _, size := b.rest(e); size > largest {
				most, largest = e, size
			}
		}
		b.put(most, 0)
	}
	return b[rank:]
}

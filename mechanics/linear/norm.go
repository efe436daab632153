package linear

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
)

// steps is how many times the estimate of a norm is improved at most: on the systems
// of the tests it settles after two or three.
const steps = 5

// invNormInf estimates ‖A⁻¹‖∞ = ‖A⁻ᵀ‖₁ of a square matrix of order n from
// solutions with A and with Aᵀ: the largest of some ‖A⁻ᵀ v‖₁ with ‖v‖₁ = 1. That is a
// convex function of v, so it is largest at a unit vector: with y = A⁻ᵀ v its slope is
// z = A⁻¹ sign(y), and v moves to the unit vector along which z is largest. A vector of
// alternating signs, with ‖v‖₁ = 3n/2, guards against a walk that is led astray.
// Each value is one that ‖A⁻ᵀ‖₁ cannot be less than, so the estimate is from below.
func invNormInf(n int, solve, solveTrans func([]float64) []float64) float64 {
	if n == 0 {
		return 0
	}
	v := slices.Repeat([]float64{1 / float64(n)}, n)
	largest, last := 0.0, -1
	for range steps {
		y := solveTrans(v)
		size := floats.Norm(y, 1)
		if !(size > largest) { // a NaN ends it too
			break
		}
		largest = size
		for i := range y {
			y[i] = math.Copysign(1, y[i])
		}
		z := solve(y)
		j := argMax(z)
		if j == last {
			break
		}
		clear(v)
		v[j], last = 1, j
	}
	for i := range v {
		v[i] = 1
		if n > 1 {
			v[i] += float64(i) / float64(n-1)
		}
		if i%2 == 1 {
			v[i] = -v[i]
		}
	}
	return max(largest, 2*floats.Norm(solveTrans(v), 1)/(3*float64(n)))
}

func argMax(v []float64) int {
	best := 0
	for i, x := range v {
		if math.Abs(x) > math.Abs(v[best]) {
			best = i
		}
	}
	return best
}

package statics

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"
)

const (
	// simplexTol is the tolerance of the linear programme, whose data are scaled.
	simplexTol = 1e-10
	// gap is how far the programme and its dual may be apart, relative to their value.
	gap = 1e-7
)

// leastByProgramme finds the least of cost·y by linear programming,
//
//	min s·w,  g[i]·w >= -c[i]
//
// and believes it only where the dual programme
//
//	max -c·λ,  Σ λ[i]·g[i] = s,  λ >= 0
//
// gives the same value (weak duality then proves both), or the counterpart of
// endless or empty: a simplex on degenerate bounds can go wrong.
func (r *region) leastByProgramme(cost []float64) (value float64, y []float64, what extent) {
	n, m := len(r.basis), len(r.g)
	seen := r.seen(cost)
	if r.unseen(cost) {
		clear(seen) // endless, if there is any point at all
	}

	a := mat.NewDense(m, 2*n+m, nil)
	right := make([]float64, m)
	price := make([]float64, 2*n+m)
	dual := mat.NewDense(n, m, nil)
	for i, g := range r.g {
		sign := 1.0
		if r.c[i] > 0 {
			sign = -1 // the simplex wants right sides that are not negative
		}
		for k := range n {
			a.Set(i, k, sign*g[k])
			a.Set(i, n+k, -sign*g[k])
			dual.Set(k, i, g[k])
		}
		a.Set(i, 2*n+i, -sign)
		right[i] = -sign * r.c[i]
	}
	for k := range n {
		price[k], price[n+k] = seen[k], -seen[k]
	}
	value, x, err := simplex(price, a, right)
	for k, s := range seen { // right sides that are not negative, again
		if s < 0 {
			for i := range m {
				dual.Set(k, i, -dual.At(k, i))
			}
			seen[k] = -s
		}
	}
	opposite, _, dualErr := simplex(r.c, dual, seen)
	switch {
	case err == nil && dualErr == nil:
		w := make([]float64, n)
		for k := range w {
			w[k] = x[k] - x[n+k]
		}
		if !r.keeps(w) || math.Abs(value+opposite) > gap*(1+math.Abs(value)) {
			return 0, nil, unknowable
		}
		if r.unseen(cost) {
			return math.Inf(-1), nil, endless
		}
		return value, r.full(w), found
	case errors.Is(err, lp.ErrUnbounded) && errors.Is(dualErr, lp.ErrInfeasible):
		return math.Inf(-1), nil, endless
	case errors.Is(err, lp.ErrInfeasible) && errors.Is(dualErr, lp.ErrUnbounded):
		return 0, nil, empty
	}
	return 0, nil, unknowable
}

// simplex is gonum's, whose panics on shapes it does not like become errors.
func simplex(c []float64, a mat.Matrix, b []float64) (value float64, x []float64, err error) {
	defer func() {
		if p := recover(); p != nil {
			err = errors.New("the simplex does not take this")
		}
	}()
	return lp.Simplex(c, a, b, simplexTol, nil)
}

package statics

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"

	"trivet/mechanics/problem"
)

// simplexTol is the tolerance of the linear programme, whose data are scaled to
// the largest load.
const simplexTol = 1e-10

// bound is a sense written over the free parameters y: c + Σ g[k]·y[k] >= 0.
type bound struct {
	c float64
	g []float64
}

// free treats an indeterminate system: all solutions are
//
//	x = x₀ + Z y
//
// with Z = D⁻¹ V₂ from the null space of the scaled system. An unknown whose row
// of V₂ is nothing keeps its value; the others get the range that the senses
// (cables pull, struts push, contacts press) leave, by a linear programme over y.
func (s *Solution) free(v *mat.Dense, scale []float64) {
	n, rank := len(s.X), s.Rank
	s.Verdict, s.Degree = Indeterminate, n-rank
	load := largestLoad(s.Problem)
	if load == 0 {
		load = 1
	}
	z := make([][]float64, n) // in units of the largest load
	for j := range n {
		z[j] = make([]float64, s.Degree)
		size := 0.0
		for k := range s.Degree {
			z[j][k] = v.At(j, rank+k) / scale[j]
			size = math.Hypot(size, v.At(j, rank+k))
		}
		if s.X[j].Fixed = size <= max(fixedTol, s.blur); s.X[j].Fixed {
			clear(z[j])
		}
	}
	bounds := s.senseBounds(z, load)
	var kept [][]float64 // points y at which some unknown is least or greatest
	feasible := true
	for j := range s.X {
		if s.X[j].Fixed {
			s.X[j].Low, s.X[j].High = s.X[j].Value, s.X[j].Value
			continue
		}
		low, yLow, ok := least(z[j], bounds, s.Degree)
		negative := make([]float64, s.Degree)
		for k := range negative {
			negative[k] = -z[j][k]
		}
		high, yHigh, ok2 := least(negative, bounds, s.Degree)
		feasible = feasible && ok && ok2
		s.X[j].Low = s.X[j].Value + low*load
		s.X[j].High = s.X[j].Value - high*load
		for _, y := range [][]float64{yLow, yHigh} {
			if y != nil {
				kept = append(kept, y)
			}
		}
	}
	s.sensesMet = feasible
	if feasible && len(kept) > 0 { // a mean of points that keep the senses keeps them too
		for j := range s.X {
			for _, y := range kept {
				for k := range y {
					s.X[j].Value += z[j][k] * y[k] * load / float64(len(kept))
				}
			}
		}
	}
	if !feasible {
		for j := range s.X {
			if !s.X[j].Fixed {
				s.X[j].Low, s.X[j].High = math.Inf(-1), math.Inf(1)
			}
		}
	}
}

// senseBounds writes every sense of a line over the parameters y.
func (s *Solution) senseBounds(z [][]float64, load float64) []bound {
	var out []bound
	for i := range s.Problem.Lines {
		l := &s.Problem.Lines[i]
		if !oneWay(l.Kind.Info().Sense) {
			continue
		}
		b := bound{c: l.Magnitude.Const / load, g: make([]float64, s.Degree)}
		size := 0.0
		for _, t := range l.Magnitude.Terms {
			b.c += t.Coef * s.X[t.Unknown].Value / load
			for k := range b.g {
				b.g[k] += t.Coef * z[t.Unknown][k]
			}
		}
		for _, g := range b.g {
			size = math.Hypot(size, g)
		}
		if size > fixedTol {
			out = append(out, b)
		}
	}
	return out
}

func oneWay(s problem.Sense) bool {
	return s == problem.PullOnly || s == problem.PushOnly || s == problem.PressOnly
}

// least finds min cᵀy over all y that keep the bounds: -Inf where there is no
// least, ok false where no y keeps them. One parameter is an interval; more are
// a linear programme in standard form with y = y⁺ - y⁻ and a slack a bound.
func least(c []float64, bounds []bound, degree int) (value float64, y []float64, ok bool) {
	if degree == 1 {
		return leastOnInterval(c[0], bounds)
	}
	if len(bounds) == 0 {
		return math.Inf(-1), nil, true
	}
	cols := 2*degree + len(bounds)
	a := mat.NewDense(len(bounds), cols, nil)
	rhs := make([]float64, len(bounds))
	for i, b := range bounds {
		sign := 1.0
		if b.c > 0 {
			sign = -1 // the simplex wants right sides that are not negative
		}
		for k, g := range b.g {
			a.Set(i, k, sign*g)
			a.Set(i, degree+k, -sign*g)
		}
		a.Set(i, 2*degree+i, -sign)
		rhs[i] = -sign * b.c
	}
	cost := make([]float64, cols)
	for k := range degree {
		cost[k], cost[degree+k] = c[k], -c[k]
	}
	value, x, err := lp.Simplex(cost, a, rhs, simplexTol, nil)
	switch err {
	case nil:
		y = make([]float64, degree)
		for k := range y {
			y[k] = x[k] - x[degree+k]
		}
		return value, y, true
	case lp.ErrInfeasible:
		return 0, nil, false
	default: // unbounded; a basis that went wrong is no proof of a bound either
		return math.Inf(-1), nil, true
	}
}

func leastOnInterval(c float64, bounds []bound) (float64, []float64, bool) {
	low, high := math.Inf(-1), math.Inf(1)
	for _, b := range bounds {
		at := -b.c / b.g[0]
		if b.g[0] > 0 {
			low = max(low, at)
		} else {
			high = min(high, at)
		}
	}
	if low > high+simplexTol*(1+math.Abs(low)) {
		return 0, nil, false
	}
	at := low
	if c < 0 {
		at = high
	}
	if math.IsInf(at, 0) {
		return math.Inf(-1), nil, true
	}
	return c * at, []float64{at}, true
}

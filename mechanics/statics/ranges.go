package statics

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

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
// (cables pull, struts push, contacts press) leave over all y.
func (s *Solution) free(v *mat.Dense, scale []float64) {
	n, rank := len(s.X), s.Rank
	s.Verdict, s.Degree = Indeterminate, n-rank
	load := s.System.load(s.Problem)
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
	r := newRegion(s.senseBounds(z, load), s.Degree)
	s.sensesMet, s.rangesKnown = true, true
	var kept [][]float64 // points y at which some unknown is least or greatest
	for j := range s.X {
		x := &s.X[j]
		if x.Fixed {
			x.Low, x.High = x.Value, x.Value
			continue
		}
		x.Low, x.High = math.Inf(-1), math.Inf(1)
		for _, sign := range []float64{1, -1} {
			cost := make([]float64, s.Degree)
			for k := range cost {
				cost[k] = sign * z[j][k]
			}
			value, y, what := r.least(cost)
			switch what {
			case empty:
				s.sensesMet = false
			case unknowable:
				s.rangesKnown = false
			case found:
				end := x.Value + sign*value*load
				if math.Abs(end) <= onBound*load {
					end = 0 // a cable that just goes slack
				}
				if sign > 0 {
					x.Low = end
				} else {
					x.High = end
				}
				if y != nil {
					kept = append(kept, y)
				}
			}
		}
	}
	if !s.sensesMet || !s.rangesKnown { // nothing is claimed of any of them
		for j := range s.X {
			if !s.X[j].Fixed {
				s.X[j].Low, s.X[j].High = math.Inf(-1), math.Inf(1)
			}
		}
		return
	}
	for j := range s.X { // a mean of points that keep the senses keeps them too
		for _, y := range kept {
			for k := range y {
				s.X[j].Value += z[j][k] * y[k] * load / float64(len(kept))
			}
		}
	}
}

// senseBounds writes every sense over the parameters y.
func (s *Solution) senseBounds(z [][]float64, load float64) []bound {
	var out []bound
	for _, q := range s.sensed {
		b := bound{c: q.Magnitude.Const / load, g: make([]float64, s.Degree)}
		size := 0.0
		for _, t := range q.Magnitude.Terms {
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

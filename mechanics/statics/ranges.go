package statics

import "math"

// bound is a sense written over the free parameters y: c + Σ g[k]·y[k] >= 0.
type bound struct {
	c  float64
	g  []float64
	of string // whose sense it is
}

// free treats an indeterminate system: all solutions are
//
//	x = x₀ + Z y
//
// with Z = D⁻¹ V₂, V₂ an orthonormal basis of the null space of the scaled system
// whose entries null gives. An unknown whose row of V₂ is nothing keeps its value;
// the others get the range that the senses (cables pull, struts push, contacts
// press) leave over all y.
func (s *Solution) free(null func(j, k int) float64, scale []float64) {
	n := len(s.X)
	s.Verdict, s.Degree = Indeterminate, n-s.Rank
	z := make([][]float64, n) // in units of the largest load of each part
	for j := range n {
		z[j] = make([]float64, s.Degree)
		size := 0.0
		for k := range s.Degree {
			z[j][k] = null(j, k) / scale[j]
			size = math.Hypot(size, null(j, k))
		}
		if s.X[j].Fixed = size <= max(fixedTol, s.parts[s.partOf[j]].blur); s.X[j].Fixed {
			clear(z[j])
		}
	}
	bounds := s.senseBounds(z)
	s.sensesMet, s.rangesKnown = true, true
	if s.alone || float64(len(bounds))*float64(s.Degree)*float64(s.Degree) > mostSpread {
		s.rangesKnown = false
		s.unbind()
		return
	}
	r := newRegion(bounds, s.Degree)
	var kept [][]float64 // points y at which some unknown is least or greatest
	for j := range s.X {
		x := &s.X[j]
		if x.Fixed {
			x.Low, x.High = x.Value, x.Value
			continue
		}
		x.Low, x.High = math.Inf(-1), math.Inf(1)
		load := s.unitOf(j)
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
				by := r.holders(cost, value, bounds)
				if sign > 0 {
					x.Low, x.LowBy = end, by
				} else {
					x.High, x.HighBy = end, by
				}
				if y != nil {
					kept = append(kept, y)
				}
			}
		}
	}
	if !s.sensesMet || !s.rangesKnown { // nothing is claimed of any of them
		s.unbind()
		return
	}
	for j := range s.X { // a mean of points that keep the senses keeps them too
		for _, y := range kept {
			for k := range y {
				s.X[j].Value += z[j][k] * y[k] * s.unitOf(j) / float64(len(kept))
			}
		}
	}
}

// unbind claims nothing of what is free.
func (s *Solution) unbind() {
	for j := range s.X {
		if x := &s.X[j]; x.Fixed {
			x.Low, x.High = x.Value, x.Value
		} else {
			x.Low, x.High = math.Inf(-1), math.Inf(1)
			x.LowBy, x.HighBy = nil, nil
		}
	}
}

// mostSpread bounds the work of finding out what bounds see of the free
// parameters, bounds × degree²: 1e8 take about half a second. Beyond it no range
// would be found in reasonable time, and none is claimed.
const mostSpread = 1e8

// unitOf is the largest load that hangs together with an unknown, 1 without one. The
// free parameters of a part are in this unit, so that they are about one in each.
func (s *Solution) unitOf(unknown int) float64 {
	if load := s.parts[s.partOf[unknown]].load; load > 0 {
		return load
	}
	return 1
}

// senseBounds writes every sense over the parameters y.
func (s *Solution) senseBounds(z [][]float64) []bound {
	var out []bound
	for _, q := range s.sensed {
		if len(q.Magnitude.Terms) == 0 {
			continue // known: no free parameter changes it
		}
		load := s.unitOf(q.Magnitude.Terms[0].Unknown)
		b := bound{c: q.Magnitude.Const / load, g: make([]float64, s.Degree), of: q.Name}
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

package plate

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/figure"
	"trivet/mechanics/ink"
	"trivet/mechanics/problem"
)

// away is the way from a body into the wall that it is built into: back along
// the body's bar.
func (s *sketch) away(j *problem.Joint) ink.Vec {
	o := s.p.Points[j.Point].At
	var sum ink.Vec
	for _, l := range figure.Legs(s.p, j.First) {
		for k := range 2 {
			if r3.Norm(r3.Sub(l[k], o)) <= flat*s.size {
				if v := s.dir(r3.Unit(r3.Sub(l[1-k], l[k]))); v.Len() > endOn {
					sum = sum.Sub(v.Unit())
				}
			}
		}
	}
	if sum.Len() < endOn {
		return ink.Vec{Y: 1}
	}
	return sum
}

// free is the side of a point that members leave free for a support: below
// where it may be.
func (s *sketch) free(_ *problem.Joint, o ink.Vec) ink.Vec {
	best, least := ink.Vec{Y: 1}, math.Inf(1)
	for i, down := range []ink.Vec{{Y: 1}, {X: -1}, {X: 1}, {Y: -1}} {
		f := newFrame(o, down)
		cost := 0.1 * float64(i)
		for _, depth := range []float64{7, 11, 16} {
			for _, x := range []float64{-7, 0, 7} {
				cost += s.crowd(f.to(x, depth), 3)
			}
		}
		if cost < least {
			best, least = down, cost
		}
	}
	return best
}

// crowd counts the members within r of a place.
func (s *sketch) crowd(q ink.Vec, r float64) float64 {
	n := 0.0
	for _, g := range s.segs {
		if g.hard && distance(q, g.a, g.b) < r {
			n++
		}
	}
	return n
}

// distance is that of q from the segment a b.
func distance(q, a, b ink.Vec) float64 {
	d := b.Sub(a)
	t := 0.0
	if n := d.Dot(d); n > 0 {
		t = math.Max(0, math.Min(1, q.Sub(a).Dot(d)/n))
	}
	return q.Sub(a.Add(d.Scale(t))).Len()
}

package problem

import (
	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/spatial/r3"
)

// Gauss-Legendre points for ∫ q ds: exact for polynomials up to degree 2n-1 a
// piece; pieces make kinks and roots converge too.
const (
	gaussPoints = 12
	gaussPieces = 16
)

// intensity is q(s), from a at the first end to b at the last where it is linear.
type intensity struct {
	at     func(s float64) (float64, bool)
	linear bool
	a, b   float64
}

func linear(a, b, length float64) intensity {
	return intensity{func(s float64) (float64, bool) { return a + (b-a)*s/length, true }, true, a, b}
}

// integrate gives ∫ q ds, ∫ q s ds and ∫ |q| ds by Gauss-Legendre quadrature.
func (q intensity) integrate(length float64) (force, moment, size float64, good bool) {
	var at, weight [gaussPoints]float64
	quad.Legendre{}.FixedLocations(at[:], weight[:], 0, 1)
	piece := length / gaussPieces
	good = true
	for k := range gaussPieces {
		for i := range at {
			s := piece * (float64(k) + at[i])
			v, ok := q.at(s)
			good = good && ok
			w := weight[i] * piece * v
			force, moment, size = force+w, moment+w*s, size+abs(w)
		}
	}
	return force, moment, size, good
}

// spread integrates the intensity and places the resultant.
func (r *reading) spread(d *Distributed, along r3.Vec, q intensity) bool {
	for k := range d.Intensity {
		v, ok := q.at(d.Length * float64(k) / (loadSamples - 1))
		if !ok {
			return false
		}
		d.Intensity[k] = v
	}
	good := true
	var force, moment, size float64
	if q.linear {
		force = (q.a + q.b) / 2 * d.Length
		moment = (q.a + 2*q.b) / 6 * d.Length * d.Length
		size = (abs(q.a) + abs(q.b)) / 2 * d.Length
	} else {
		force, moment, size, good = q.integrate(d.Length)
	}
	if !good {
		return false
	}
	a := r.p.Points[d.From].At
	d.Total = force
	act := Act{Body: d.Body, Point: -1, Const: r3.Scale(force, d.Direction)}
	if abs(force) > nothingOf*size {
		d.Distance = moment / force
		act.At = r3.Add(a, r3.Scale(d.Distance, along))
	} else { // it only turns: a couple
		d.Total, act.Const, act.At = 0, r3.Vec{}, a
		act.Couple = r3.Scale(moment, r3.Cross(along, d.Direction))
	}
	act.At = snapped(act.At, max(largest(a), largest(r.p.Points[d.To].At)))
	d.At = act.At
	d.Acts = []Act{act}
	return true
}

// nothingOf is the part of ∫|q| below which ∫q is rounding of the quadrature.
const nothingOf = 1e-12

package problem

import (
	"cmp"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// Ordinate is the intensity Q of a distributed load, N/m, at the distance S along it, m.
type Ordinate struct{ S, Q float64 }

// IntensityAt gives q(s), N/m, at the distance s along the load, m, as its diagram has it.
func (d *Distributed) IntensityAt(s float64) float64 {
	k := slices.IndexFunc(d.Diagram, func(o Ordinate) bool { return o.S >= s })
	switch {
	case k < 0:
		return d.Diagram[len(d.Diagram)-1].Q
	case k == 0 || d.Diagram[k].S == s:
		return d.Diagram[k].Q
	}
	a, b := d.Diagram[k-1], d.Diagram[k]
	return a.Q + (b.Q-a.Q)*(s-a.S)/(b.S-a.S)
}

// Loaded gives the stretch of the load, m from its first end, outside which its
// diagram is zero: of water on a gate, the wet part. It is empty where all is.
func (d *Distributed) Loaded() (from, to float64) {
	n := len(d.Diagram)
	first := slices.IndexFunc(d.Diagram, func(o Ordinate) bool { return o.Q != 0 })
	if first < 0 {
		return 0, 0
	}
	last := n - 1
	for d.Diagram[last].Q == 0 {
		last--
	}
	return d.Diagram[max(first-1, 0)].S, d.Diagram[min(last+1, n-1)].S
}

// Nothing tells that the load exerts neither a force nor a couple: a dry gate.
func (d *Distributed) Nothing() bool { return d.Total == 0 && d.Couple() == 0 }

// Couple is the magnitude of the couple, N·m, that a load without a resultant exerts.
func (d *Distributed) Couple() float64 {
	m := 0.0
	for k := range d.Acts {
		m += r3.Norm(d.Acts[k].Couple.Const)
	}
	return m
}

// area is that of a load diagram and its moment about the load's first end, both
// also of |q|:
//
//	force = ∫ q ds   moment = ∫ q s ds   size = ∫ |q| ds   lever = ∫ |q| s ds
//
// in N and N·m, with the estimated errors of force and moment.
type area struct{ force, moment, size, lever, forceErr, momentErr float64 }

func (a area) plus(b area) area {
	return area{a.force + b.force, a.moment + b.moment, a.size + b.size, a.lever + b.lever, a.forceErr + b.forceErr, a.momentErr + b.momentErr}
}

// errorOf is the error of force over size, or of moment over lever where that is more,
// of the area that this one is a part of.
func (a area) errorOf(of area) float64 {
	if a.forceErr == 0 && a.momentErr == 0 {
		return 0
	}
	return max(a.forceErr/of.size, a.momentErr/of.lever)
}

// trapezoids is the area under a diagram that is straight between knots, in closed form.
func trapezoids(knots []Ordinate) (sum area) {
	for k := 1; k < len(knots); k++ {
		a, b := knots[k-1], knots[k]
		w := b.S - a.S
		f := (a.Q + b.Q) / 2 * w
		sum.force += f
		sum.moment += a.S*f + (a.Q+2*b.Q)/6*w*w
		sum.size += (abs(a.Q) + abs(b.Q)) / 2 * w
	}
	return sum
}

// spread integrates the intensity and places the resultant.
func (r *reading) spread(d *Distributed, magnitude cell, q intensity) bool {
	a, b := r.p.Points[d.From].At, r.p.Points[d.To].At
	along, _ := unit(between(a, b))
	sum := trapezoids(d.Knots)
	if d.Diagram = d.Knots; d.Knots != nil {
		d.Diagram = diagram(d.Knots, d.Length, d.IntensityAt)
	} else {
		c := curve{at: q, length: d.Length}
		sum = c.integrate()
		d.Diagram = c.diagram()
		d.Error = max(sum.errorOf(sum), roundingOfSums)
		if c.failed() {
			return magnitude.failCurve(&c)
		}
	}
	d.Total = sum.force
	act := Act{Body: d.Body, Point: -1, Force: Vector{Const: r3.Scale(sum.force, d.Direction)}}
	if abs(sum.force) > max(nothingOf, d.Error)*sum.size {
		d.Distance = sum.moment / sum.force
		act.At = r3.Add(a, r3.Scale(d.Distance, along))
	} else { // no resultant: a couple
		d.Total, act.Force, act.At = 0, Vector{}, a
		act.Couple.Const = r3.Scale(sum.moment, r3.Cross(along, d.Direction))
	}
	act.At = snapped(act.At, max(largest(a), largest(b)))
	d.At = act.At
	d.Acts = []Act{act}
	return true
}

// loadSamples is how many intensities at equal steps a diagram has at least, for drawing.
const loadSamples = 9

// beside is how near to a corner a diagram's ordinates on its two sides are, of the load's
// length: far below what a picture shows.
const beside = 1e-9

// diagram adds ordinates at equal steps to those that are fixed.
func diagram(fixed []Ordinate, length float64, at func(s float64) float64) []Ordinate {
	out := slices.Clone(fixed)
	for k := range loadSamples {
		s := length * float64(k) / (loadSamples - 1)
		if !slices.ContainsFunc(fixed, func(o Ordinate) bool { return abs(o.S-s) <= 2*beside*length }) {
			out = append(out, Ordinate{s, at(s)})
		}
	}
	slices.SortStableFunc(out, func(a, b Ordinate) int { return cmp.Compare(a.S, b.S) })
	return out
}

// nothingOf is the part of ∫|q| below which ∫q is rounding of the sums.
const nothingOf = 1e-12

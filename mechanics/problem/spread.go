package problem

import (
	"cmp"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
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
		m += r3.Norm(d.Acts[k].Couple)
	}
	return m
}

// intensity is q(s) of a load: straight from knot to knot, or else a function of s
// that also gathers the numbers whose zeros are its corners.
type intensity struct {
	knots []Ordinate
	at    func(s float64, corners *[]float64) (float64, *diag.Error)
}

func linear(a, b, length float64) intensity {
	return intensity{knots: []Ordinate{{0, a}, {length, b}}}
}

// area is that of a load diagram and its moment about the load's first end, both
// also of |q|:
//
//	force = ∫ q ds   moment = ∫ q s ds   size = ∫ |q| ds   lever = ∫ |q| s ds
//
// in N and N·m. err is the estimated error of force over size, or of moment over
// lever where that is more; 0 in closed form.
type area struct{ force, moment, size, lever, err float64 }

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

// loadSamples is how many intensities at equal steps a diagram has at least, for drawing.
const loadSamples = 9

// spread integrates the intensity and places the resultant.
func (r *reading) spread(d *Distributed, ref sheet.Ref, along r3.Vec, q intensity) bool {
	var sum area
	if q.knots != nil {
		sum, d.Knots = trapezoids(q.knots), q.knots
		d.Diagram = sampled(q.knots, d.Length)
	} else {
		c := curve{intensity: q, length: d.Length}
		c.findCorners()
		c.integrate()
		c.draw()
		if c.failed() {
			return r.failCurve(ref, &c)
		}
		sum, d.Diagram = c.area, c.diagram
	}
	a := r.p.Points[d.From].At
	d.Total, d.Error = sum.force, sum.err
	act := Act{Body: d.Body, Point: -1, Const: r3.Scale(sum.force, d.Direction)}
	if abs(sum.force) > max(nothingOf, sum.err)*sum.size {
		d.Distance = sum.moment / sum.force
		act.At = r3.Add(a, r3.Scale(d.Distance, along))
	} else { // no resultant: a couple
		d.Total, act.Const, act.At = 0, r3.Vec{}, a
		act.Couple = r3.Scale(sum.moment, r3.Cross(along, d.Direction))
	}
	act.At = snapped(act.At, max(largest(a), largest(r.p.Points[d.To].At)))
	d.At = act.At
	d.Acts = []Act{act}
	return true
}

// sampled is a diagram with ordinates at equal steps beside its knots.
func sampled(knots []Ordinate, length float64) []Ordinate {
	d := Distributed{Diagram: knots}
	out := slices.Clone(knots)
	for k := range loadSamples {
		s := length * float64(k) / (loadSamples - 1)
		if !slices.ContainsFunc(knots, func(o Ordinate) bool { return abs(o.S-s) <= samePlace*length }) {
			out = append(out, Ordinate{s, d.IntensityAt(s)})
		}
	}
	slices.SortStableFunc(out, func(a, b Ordinate) int { return cmp.Compare(a.S, b.S) })
	return out
}

// nothingOf is the part of ∫|q| below which ∫q is rounding of the sums.
const nothingOf = 1e-12

package problem

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/diag"
	"trivet/units"
)

// Distributed is a load spread along a line from A to B, q(s) per length at the
// distance s from A. Its resultant is
//
//	R = ∫ q ds along Direction, at s̄ = ∫ q s ds / R from A
//
// and where R is nothing though q is not, a couple of ∫ q s ds. A diagram of straight
// pieces, as that of water on a gate, is integrated in closed form, a function of s by
// adaptive quadrature.
type Distributed struct {
	Entry
	Body      int
	From, To  int
	Direction r3.Vec
	Length    float64
	along     r3.Vec     // unit vector from A to B
	Diagram   []Ordinate // q from A to B, straight between the ordinates
	Knots     []Ordinate // of a diagram of straight pieces: where they meet
	Water     *Water     // of the pressure of water
	Total     float64    // R, N
	Distance  float64    // s̄, m; 0 where R is nothing
	Error     float64    // the estimated error of R relative to ∫|q| ds, or of its moment about A to ∫|q| s ds; 0 in closed form
}

// Water is what the pressure of water on a gate follows from: density in kg/m³, width
// and the depths of the gate's two ends in m, negative above the surface.
type Water struct{ Density, Width, From, To float64 }

func (r *reading) readDistributed() {
	rows := r.rowsOf(ALoad)
	r.p.Loads = make([]Distributed, len(rows))
	for i, w := range rows {
		d := &r.p.Loads[i]
		d.Entry = w.entry(ALoad, i)
		d.OK = r.distributed(d, w)
	}
}

func (r *reading) distributed(d *Distributed, w row) bool {
	path, along := w.cell("path"), w.cell("along")
	var q intensity
	return r.unlike(d.Ref, d.Name, "a distributed load", AJoint, ALine) && // q.size would be a part of either
		w.needs(path, "the load "+d.Name+" has no path", "a path such as A B") &&
		d.ends(path) &&
		r.loadBody(d, w) &&
		w.needs(along, "the load "+d.Name+" has no direction", "along -y, the direction in which it pushes") &&
		along.direction(&d.Direction) &&
		r.intensity(d, w, &q) &&
		r.spread(d, w.cell("magnitude"), q)
}

// ends reads the points between which a load is distributed.
func (d *Distributed) ends(path cell) bool {
	words := Fields(path.text)
	if len(words) != 2 {
		return path.fail("a distributed load extends from one point to another", "a path such as A B")
	}
	ends, ok := path.pointsNamed(words)
	if !ok {
		return false
	}
	d.From, d.To = ends[0], ends[1]
	leg, ok := path.leg(diag.Whole(path.text), d.From, d.To, "the load "+d.Name+" has no length")
	d.Length, d.along = leg.Length, leg.U
	return ok
}

// loadBody finds the body that a load lies on: as on says, or the one that both its ends
// share.
func (r *reading) loadBody(d *Distributed, w row) bool {
	if on := w.cell("on"); on.has {
		return on.body(&d.Body) && (!r.p.Bodies[d.Body].Particle || on.fail("a distributed load acts on a body, but "+on.text+" is a particle", "put it on a body"))
	}
	for _, x := range r.p.Points[d.From].Bodies {
		if onBody(&r.p.Points[d.To], x) && !r.p.Bodies[x].Particle {
			d.Body = x
			return true
		}
	}
	return w.fail("the load "+d.Name+" is not on a body", "put it on a body")
}

// intensity is q(s) of a load; it also gathers the numbers whose zeros are its corners.
type intensity func(s float64, corners *[]float64) (float64, *diag.Error)

// intensity reads q(s): one value, two values from end to end, or the pressure of water on
// a gate, as knots with straight pieces between; or else an expression in s.
func (r *reading) intensity(d *Distributed, w row, q *intensity) bool {
	kind, c := w.cell("kind"), w.cell("magnitude")
	switch {
	case kind.has && kind.word() != "hydrostatic":
		return kind.fail(strconv.Quote(kind.text)+" is not a kind of load", "hydrostatic, or no kind")
	case kind.has && c.has:
		return c.fail("the magnitude of the load "+d.Name+" follows from the depth of the water", "remove the magnitude or the kind")
	case kind.has:
		return r.hydrostatic(d, w)
	}
	for _, key := range []string{"surface", "density", "width"} {
		if c := w.cell(key); c.has {
			return c.fail("the "+key+" is used for water on a gate only", "the kind hydrostatic, or remove the "+key)
		}
	}
	if !c.has {
		return w.fail("the load "+d.Name+" has no magnitude", "a magnitude such as 2 kN/m, or 0 kN/m .. 4 kN/m from end to end")
	}
	knot := func(s float64, e *units.Expr) bool {
		v, ok := c.part(e, env{r: r, scope: inGiven}, units.LineLoad)
		d.Knots = append(d.Knots, Ordinate{s, v.V[0]})
		return ok
	}
	if strings.Contains(c.text, "..") {
		low, high, ok := c.ends()
		if !ok {
			return false
		}
		okLow, okHigh := knot(0, low), knot(d.Length, high)
		return okLow && okHigh
	}
	expr, ok := c.expr(r.parseOne)
	if !ok {
		return false
	}
	c.grouped(expr)
	varies := false
	at := func(s float64, corners *[]float64) (float64, *diag.Error) {
		v, err := expr.Eval(env{r: r, scope: inLoad, cell: c.ref, s: s, varies: &varies, corners: corners})
		if err == nil {
			v, err = units.Want(v, units.LineLoad, r.p.Units.For(units.LineLoad), diag.Whole(c.text))
		}
		if err == nil && abs(v.V[0]) > greatest {
			err = diag.At(diag.Whole(c.text), "the value is too large for a problem", "check the exponent")
		}
		return v.V[0], err
	}
	if at(d.Length/math.E, nil); !varies { // the same all along
		ok := knot(0, expr)
		d.Knots = append(d.Knots, Ordinate{d.Length, d.Knots[0].Q})
		return ok
	}
	*q = at
	return true
}

// waterDensity is that of fresh water in hydrostatic exercises, common practice.
const waterDensity = 1000 // kg/m³

// hydrostatic is the pressure on a plane gate of given width, as a load per
// length of the gate: q(s) = ρ g h(s) width, h the depth below the surface, zero
// above it. It is straight over the wet part and over the dry one.
func (r *reading) hydrostatic(d *Distributed, w row) bool {
	width, surface, density := w.quantity("width"), w.quantity("surface"), w.quantity("density")
	if !density.has {
		density.value, density.ok = waterDensity, true
	}
	reads := w.needs(width.cell, "the gate of the load "+d.Name+" has no width", "a width such as 2 m") &&
		w.needs(surface.cell, "the water of the load "+d.Name+" has no surface", "a surface such as 3 m, its level") &&
		surface.ok &&
		width.positive("a width", "the form 2 m") &&
		density.positive("a density", "the form 1000 kg/m^3")
	if !reads {
		return false
	}
	depth := func(point int) float64 { return surface.value - r3.Dot(r.p.Points[point].At, r.p.Up) }
	from, to := depth(d.From), depth(d.To)
	d.Water = &Water{Density: density.value, Width: width.value, From: from, To: to}
	by := density.value * r.p.G * width.value
	d.Knots = []Ordinate{{0, by * max(0, from)}, {d.Length, by * max(0, to)}}
	if from < 0 && to > 0 || from > 0 && to < 0 { // the waterline lies on the gate
		d.Knots = slices.Insert(d.Knots, 1, Ordinate{d.Length * from / (from - to), 0})
	}
	return true
}

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
		act.At = r3.Add(a, r3.Scale(d.Distance, d.along))
	} else { // no resultant: a couple
		d.Total, act.Force, act.At = 0, Vector{}, a
		act.Couple.Const = r3.Scale(sum.moment, r3.Cross(d.along, d.Direction))
	}
	act.At = snapped(act.At, max(largest(a), largest(b)))
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

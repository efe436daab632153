package problem

import (
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
	Diagram   []Ordinate // q from A to B, straight between the ordinates
	Knots     []Ordinate // of a diagram of straight pieces: where they meet
	Water     *Water     // of the pressure of water
	Total     float64    // R, N
	Distance  float64    // s̄, m; 0 where R is nothing
	Error     float64    // the estimated error of R relative to ∫|q| ds, or of its moment about A to ∫|q| s ds; 0 in closed form
	At        r3.Vec
}

// Water is what the pressure of water on a gate follows from: density in kg/m³, width
// and the depths of the gate's two ends in m, negative above the surface.
type Water struct{ Density, Width, From, To float64 }

func (r *reading) readDistributed() {
	rows := r.rowsOf(ALoad)
	r.p.Loads = make([]Distributed, len(rows))
	for i, w := range rows {
		d := &r.p.Loads[i]
		d.Entry = w.entry()
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
	a, b := &path.r.p.Points[d.From], &path.r.p.Points[d.To]
	d.Length = r3.Norm(r3.Sub(b.At, a.At))
	_, hasLength := unit(between(a.At, b.At))
	return hasLength || path.fail("the points "+a.Name+" and "+b.Name+" coincide, so the load "+d.Name+" has no length", "move one of them")
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
	expr, err := r.parseOne(c.text)
	if err != nil {
		return r.failCell(c.ref, err)
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

package problem

import (
	"strconv"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/say"
	"trivet/units"
)

// Couple is a moment on a body: magnitude × unit vector, counter-clockwise about
// it, or a vector of components.
type Couple struct {
	Entry
	Body      int
	U         r3.Vec // unit vector it turns about
	Magnitude Affine // N·m
	Spring    *TorsionSpring
}

// TorsionSpring is the data of a torsional spring: its moment is -Stiffness·Turn.
type TorsionSpring struct {
	Stiffness, Turn float64 // N·m/rad, rad
}

// indexCouples notes the names of couples, so that magnitudes may be tied to
// the moment of one further down.
func (r *reading) indexCouples() {
	for i, w := range r.rowsOf(ACouple) {
		r.p.Couples = append(r.p.Couples, Couple{Entry: w.entry(ACouple, i)})
	}
}

// coupleOf reads a couple when first asked for, and tells whether it has a moment.
func (r *reading) coupleOf(i int) bool {
	c, w := &r.p.Couples[i], r.rows[r.p.Couples[i].Ref]
	c.OK = r.magnitudeOnce(c.Ref, c.Name, func() bool { return r.coupleName(c, w.cell("magnitude")) && r.couple(c, w) })
	return c.OK
}

// coupleName refuses a name that means something else already: M0 asks for the
// moment of a couple, be it known or not. A given may bear the name of a couple
// that it is the moment of.
func (r *reading) coupleName(c *Couple, magnitude cell) bool {
	others := []Thing{ALine, AnUnknown}
	if !magnitude.has || magnitude.word() == "?" {
		others = []Thing{AGiven, ALine, AnUnknown}
	}
	return r.unlike(c.Ref, c.Name, "a couple", others...)
}

func (r *reading) couple(c *Couple, w row) bool {
	on, components := w.cell("on"), w.cell("components")
	ok := w.needs(on, "the couple "+c.Name+" is not on a body", "put it on a body") && on.body(&c.Body) && r.rotates(c, on)
	if components.has {
		ok = ok && r.coupleComponents(c, w, components)
	} else {
		ok = ok && r.coupleAxis(c, w) && r.coupleMagnitude(c, w)
	}
	if ok {
		c.Acts = []Act{{Body: c.Body, Point: -1, At: r.p.Points[r.p.Bodies[c.Body].Points[0]].At, Couple: c.Magnitude.Along(c.U)}}
	}
	return ok
}

// rotates refuses a body that a couple has no effect on.
func (r *reading) rotates(c *Couple, on cell) bool {
	switch body := &r.p.Bodies[c.Body]; {
	case body.Particle:
		return on.fail("the couple "+c.Name+" acts on the particle "+on.text+", which has no rotation", "put the couple on a body")
	case len(body.Points) == 1:
		return on.fail("the couple "+c.Name+" acts on the body "+on.text+", which has one point only, so nothing prevents its rotation", "a second point that is on "+on.text)
	}
	return true
}

// coupleAxis reads what a couple turns about: in the plane the z that stands on it.
func (r *reading) coupleAxis(c *Couple, w row) (ok bool) {
	about := w.cell("about")
	switch {
	case about.has && r.p.Planar:
		c.U, ok = axes[about.text]
		return ok && c.U.Z != 0 || about.fail("in the plane the axis of a couple is z", "+z for counter-clockwise or -z for clockwise")
	case about.has:
		return about.direction(&c.U)
	}
	c.U = r3.Vec{Z: 1}
	return r.p.Planar || w.fail("the couple "+c.Name+" has no axis", "about +z")
}

// coupleMagnitude reads a known moment, an unknown one named after the couple,
// or the moment of a torsional spring, -stiffness × turn.
func (r *reading) coupleMagnitude(c *Couple, w row) bool {
	magnitude, k, turn := w.cell("magnitude"), w.cell("stiffness"), w.quantity("turn")
	switch {
	case turn.has && !k.has:
		return w.fail("the couple "+c.Name+" has a turn but no stiffness", "a stiffness such as 20 N m/rad, or remove the turn")
	case k.has && magnitude.has:
		return magnitude.fail("the moment of the couple "+c.Name+" is given by its stiffness and by its magnitude", "remove one of them")
	case k.has && !turn.has:
		return w.fail("the torsional spring "+c.Name+" has a stiffness but no turn", "a turn such as 20 deg, counter-clockwise about its axis")
	case k.has:
		stiffness, ok := k.torsion()
		c.Spring = &TorsionSpring{Stiffness: stiffness, Turn: turn.value}
		c.Magnitude = Affine{Const: -stiffness * turn.value}
		return ok && turn.ok
	case magnitude.open(c.Name):
		u := r.addUnknown(Unknown{Entry: Entry{Name: c.Name}, Dim: units.Moment, Line: -1, Joint: -1})
		c.Magnitude = Affine{Terms: []Term{{Unknown: u, Coef: 1}}}
		return true
	}
	v, ok := magnitude.value(env{r: r, scope: inMagnitude, line: -1}, units.Moment)
	c.Magnitude = r.affine(v)
	return ok
}

// torsion reads a torsional stiffness, in N m/rad; N m is read as that.
func (c cell) torsion() (stiffness float64, ok bool) {
	k, ok := c.one(env{r: c.r, scope: inGiven})
	if !ok {
		return 0, false
	}
	key, _ := CellKey("couples", "", "stiffness")
	switch k.Dim {
	case key.Dim, units.Number:
	case units.Moment:
		k.Dim = key.Dim
	default:
		return 0, c.fail("expected a torsional stiffness, a moment per angle, but "+c.word()+" is "+k.Dim.Name(), "the form 20 N m/rad")
	}
	k, ok = c.want(k, key.Dim)
	return k.V[0], quantity{c, k.V[0], ok}.positive("a stiffness", "the form 20 N m/rad")
}

func (r *reading) coupleComponents(c *Couple, w row, components cell) bool {
	for _, key := range []string{"magnitude", "stiffness", "about"} {
		if other := w.cell(key); other.has {
			return other.fail("the couple "+c.Name+" has both components and "+strconv.Quote(key), "remove one of them")
		}
	}
	v, ok := components.eval()
	if ok && v.N != 3 {
		ok = components.fail("a couple has three components", "the form (0, 0, 50) N m")
	}
	if !ok {
		return false
	}
	if v, ok = components.wantVector(v, units.Moment); !ok {
		return false
	}
	m := vec(v.V)
	c.U, _ = unit(m)
	c.Magnitude = Affine{Const: r3.Norm(m)}
	return !r.p.Planar || m.X == 0 && m.Y == 0 || components.fail("in the plane a couple has a component about z only", "the form (0, 0, 50) N m")
}

// affine turns a value's terms into indices.
func (r *reading) affine(v units.Value) Affine {
	return Affine{v.V[0], say.Each(v.Terms, func(t units.Term) Term {
		u, _ := r.find(AnUnknown, t.Name)
		return Term{u, t.Coef}
	})}
}

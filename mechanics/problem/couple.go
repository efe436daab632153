package problem

import (
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// Couple is a moment on a body: magnitude × unit vector, counter-clockwise about
// it, or a vector of components.
type Couple struct {
	Name      string
	Ref       sheet.Ref
	OK        bool
	Body      int
	U         r3.Vec // unit vector it turns about
	Magnitude Affine // N·m
	Spring    *TorsionSpring
	Acts      []Act
}

// TorsionSpring is the data of a torsional spring: its moment is -Stiffness·Turn.
type TorsionSpring struct {
	Stiffness, Turn float64 // N·m/rad, rad
}

// indexCouples notes the names of couples, so that magnitudes may be tied to
// the moment of one further down.
func (r *reading) indexCouples() {
	r.coupleRows = Rows(r.s, "couples")
	r.p.Couples = make([]Couple, len(r.coupleRows))
	r.coupleAt = make([]progress, len(r.coupleRows))
	r.couples = make(map[string]int, len(r.coupleRows))
	for i, row := range r.coupleRows {
		r.p.Couples[i] = Couple{Name: row.Name, Ref: sheet.Ref{Table: "couples", Row: row.Name}}
		r.couples[row.Name] = i
	}
}

// coupleOf reads a couple when first asked for, and tells whether it has a moment.
func (r *reading) coupleOf(i int) bool {
	c, row := &r.p.Couples[i], r.coupleRows[i]
	ref := c.Ref
	ref.Key = "magnitude"
	c.OK = r.once(&r.coupleAt[i], ref, c.Name, func() bool { return r.coupleName(c, row) && r.couple(c, row) }, loopOfMagnitudes)
	return c.OK
}

// coupleName refuses a name that means something else already: M0 asks for the
// moment of a couple, be it known or not. A given may bear the name of a couple
// that it is the moment of.
func (r *reading) coupleName(c *Couple, row sheet.Row) bool {
	text, _, known := r.text("couples", row, "magnitude")
	other := ""
	switch {
	case r.isGiven(c.Name) && (!known || strings.TrimSpace(text) == "?"):
		other = "a given"
	case r.isLine(c.Name):
		other = "a line"
	case r.hasUnknown(c.Name) && !r.isJointUnknown(c.Name):
		other = "an unknown"
	default:
		k, ok := r.jointOf[c.Name] // it may not have its number yet
		if !ok {
			return true
		}
		other = "an unknown of the joint " + r.p.Joints[k].Name
	}
	return r.usedTwice(c.Ref, c.Name, other, "a couple")
}

func (r *reading) couple(c *Couple, row sheet.Row) bool {
	on, ref, ok := r.text("couples", row, "on")
	if !ok {
		return r.fail(c.Ref, diag.Span{}, "the couple "+c.Name+" is not on a body", "put it on a body")
	}
	if c.Body, ok = r.bodyNamed(ref, on); !ok {
		return false
	}
	body := &r.p.Bodies[c.Body]
	switch {
	case body.Particle:
		return r.fail(ref, whole(on), "the couple "+c.Name+" acts on the particle "+on+", which has no rotation", "put the couple on a body")
	case len(body.Points) == 1:
		return r.fail(ref, whole(on), "the couple "+c.Name+" acts on the body "+on+", which has one point only, so nothing prevents its rotation", "a second point that is on "+on)
	}
	if text, ref, ok := r.text("couples", row, "components"); ok {
		for _, key := range []string{"magnitude", "stiffness", "about"} {
			if _, again, twice := r.text("couples", row, key); twice {
				return r.fail(again, diag.Span{}, "the couple "+c.Name+" has both components and "+strconv.Quote(key), "remove one of them")
			}
		}
		return r.coupleComponents(c, ref, text)
	}
	if text, ref, ok := r.text("couples", row, "about"); ok {
		// In the plane a moment turns about the z that stands on it.
		if r.p.Planar {
			v, ok := axes[text]
			if !ok || v.Z == 0 {
				return r.fail(ref, whole(text), "in the plane the axis of a couple is z", "+z for counter-clockwise or -z for clockwise")
			}
			c.U = v
		} else if c.U, ok = r.direction(ref, text, env{r: r, scope: inGeometry}); !ok {
			return false
		}
	} else if r.p.Planar {
		c.U = r3.Vec{Z: 1}
	} else {
		return r.fail(c.Ref, diag.Span{}, "the couple "+c.Name+" has no axis", "about +z")
	}
	return r.coupleMagnitude(c, row)
}

// coupleMagnitude reads a known moment, an unknown one named after the couple,
// or the moment of a torsional spring, -stiffness × turn.
func (r *reading) coupleMagnitude(c *Couple, row sheet.Row) bool {
	kText, kRef, sprung := r.text("couples", row, "stiffness")
	text, ref, ok := r.text("couples", row, "magnitude")
	_, _, hasTurn := r.text("couples", row, "turn")
	if hasTurn && !sprung {
		return r.fail(c.Ref, diag.Span{}, "the couple "+c.Name+" has a turn but no stiffness", "a stiffness such as 20 N m/rad, or remove the turn")
	}
	if sprung {
		switch {
		case ok:
			return r.fail(ref, whole(text), "the moment of the couple "+c.Name+" is given by its stiffness and by its magnitude", "remove one of them")
		case !hasTurn:
			return r.fail(c.Ref, diag.Span{}, "the torsional spring "+c.Name+" has a stiffness but no turn", "a turn such as 20 deg, counter-clockwise about its axis")
		}
		k, ok1 := r.one(kRef, kText, env{r: r, scope: inGiven})
		if !ok1 {
			return false
		}
		perAngle := units.Moment
		perAngle.A = -1
		switch k.Dim {
		case perAngle, units.Number:
		case units.Moment:
			k.Dim = perAngle // N m is read as N m/rad
		default:
			return r.fail(kRef, whole(kText), "expected a torsional stiffness, a moment per angle, but "+strings.TrimSpace(kText)+" is "+k.Dim.Name(), "the form 20 N m/rad")
		}
		k, ok1 = r.want(kRef, kText, k, perAngle)
		turn := r.quantity("couples", row, "turn")
		if !ok1 || !turn.ok {
			return false
		}
		if k.V[0] <= 0 {
			return r.fail(kRef, whole(kText), "a stiffness must be greater than zero", "the form 20 N m/rad")
		}
		c.Spring = &TorsionSpring{Stiffness: k.V[0], Turn: turn.value}
		c.Magnitude = Affine{Const: -k.V[0] * turn.value}
		return r.coupleActs(c)
	}
	if word := strings.TrimSpace(text); !ok || word == "?" || word == c.Name && !r.isGiven(c.Name) {
		u := r.addUnknown(Unknown{Name: c.Name, Dim: units.Moment, Line: -1, Joint: -1})
		c.Magnitude = Affine{Terms: []Term{{Unknown: u, Coef: 1}}}
		return r.coupleActs(c)
	}
	v, ok := r.one(ref, text, env{r: r, scope: inMagnitude, line: -1})
	if !ok {
		return false
	}
	if v, ok = r.want(ref, text, v, units.Moment); !ok {
		return false
	}
	c.Magnitude = r.affine(v)
	return r.coupleActs(c)
}

func (r *reading) coupleActs(c *Couple) bool {
	known, terms := c.Magnitude.along(c.U)
	c.Acts = []Act{{Body: c.Body, Point: -1, At: r.p.Points[r.p.Bodies[c.Body].Points[0]].At, Couple: known, CoupleTerms: terms}}
	return true
}

func (r *reading) coupleComponents(c *Couple, ref sheet.Ref, text string) bool {
	v, ok := r.eval(ref, text, env{r: r, scope: inGeometry})
	if !ok {
		return false
	}
	if v.N != 3 {
		return r.fail(ref, whole(text), "a couple has three components", "the form (0, 0, 50) N m")
	}
	if v, ok = r.wantVector(ref, text, v, units.Moment); !ok {
		return false
	}
	if r.p.Planar && (v.V[0] != 0 || v.V[1] != 0) {
		return r.fail(ref, whole(text), "in the plane a couple has a component about z only", "the form (0, 0, 50) N m")
	}
	m := r3.Vec{X: v.V[0], Y: v.V[1], Z: v.V[2]}
	c.U, _ = unit(m)
	c.Magnitude = Affine{Const: r3.Norm(m)}
	return r.coupleActs(c)
}

// affine turns a value's terms into indices.
func (r *reading) affine(v units.Value) Affine {
	a := Affine{Const: v.V[0]}
	for _, t := range v.Terms {
		a.Terms = append(a.Terms, Term{Unknown: r.unknowns[t.Name], Coef: t.Coef})
	}
	return a
}

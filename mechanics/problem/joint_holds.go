package problem

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/sheet"
	"trivet/units"
)

// jointHolds names the unknowns of a joint and gives each its direction. Forces
// are named after the joint with the axis they lie along (Ox Oy Oz), or like the
// joint where there is one; moments have an M before (MOx). Directions across a
// skew axis are numbered: O1 O2. A rough surface has AN and AF (AF1 AF2 in space).
func (r *reading) jointHolds(j *Joint, w row, holds Holds) bool {
	moments := holds.Moments
	if c := w.cell("moments"); c.has {
		switch {
		case c.text != "none":
			return c.fail("moments can only be \"none\"", "none, or leave it blank")
		case moments != HoldNone && !j.Kind.Info().MayLack:
			return c.fail("the moments of a "+j.Kind.String()+" joint cannot be released", "the kind pin or ball-and-socket for one without")
		}
		moments = HoldNone
	}
	switch {
	case r.joinsParticle(j):
		moments = HoldNone
	case j.HasFace:
		moments = HoldAll
	}
	j.Held = slices.Concat(r.held(holds.Forces, j, false), r.held(moments, j, true))
	return true
}

// Held is a direction that a joint holds, with what its unknown has behind the joint's
// name: nothing where it is the only one.
type Held struct {
	Suffix string
	D      r3.Vec
	Moment bool
}

// unknown is the name of a joint's unknown: Ax, and MA of a moment.
func (c Held) unknown(j *Joint) string {
	if c.Moment {
		return "M" + j.Name + c.Suffix
	}
	return j.Name + c.Suffix
}

// held lists the components that a joint holds. A rough surface has a normal force and
// friction along the surface; where slipping impends the friction is not an unknown of its
// own but μ times the normal force, against the slip.
func (r *reading) held(h Hold, j *Joint, moment bool) []Held {
	all := []Held{{"x", r3.Vec{X: 1}, moment}, {"y", r3.Vec{Y: 1}, moment}, {"z", r3.Vec{Z: 1}, moment}}
	switch {
	case h == HoldNone:
		return nil
	case h == HoldNormal:
		return []Held{{"", j.Normal, moment}}
	case h == HoldRough && j.Impending:
		return []Held{{"N", snapped(r3.Sub(j.Normal, r3.Scale(j.Friction, j.Slip)), 1), moment}}
	case h == HoldRough && r.p.Planar: // the tangent is the normal turned clockwise, +x where the normal is +y
		return []Held{{"N", j.Normal, moment}, {"F", r3.Vec{X: j.Normal.Y, Y: -j.Normal.X}, moment}}
	case h == HoldRough:
		first, second := acrossOf(j.Normal)
		return []Held{{"N", j.Normal, moment}, {"F1", first, moment}, {"F2", second, moment}}
	case r.p.Planar && moment:
		return all[2:]
	case r.p.Planar && h == HoldAll:
		return all[:2]
	case h == HoldAll:
		return all
	case r.p.Planar: // across an axis in the plane: the axis turned counter-clockwise
		return []Held{{"", r3.Vec{X: -j.Axis.Y, Y: j.Axis.X}, moment}}
	}
	if k := slices.IndexFunc(all, func(c Held) bool { return abs(abs(r3.Dot(j.Axis, c.D))-1) < onAxis }); k >= 0 {
		return slices.Delete(all, k, k+1)
	}
	first, second := acrossOf(j.Axis)
	return []Held{{"1", first, moment}, {"2", second, moment}}
}

// onAxis is how near a unit vector must be to a coordinate axis to be named by it:
// rounding of a typed direction is 1e-16.
const onAxis = 1e-12

// acrossOf gives two unit vectors across n and each other: the first level with
// the coordinate axis that n leans on least.
func acrossOf(n r3.Vec) (r3.Vec, r3.Vec) {
	e := r3.Vec{X: 1}
	switch {
	case abs(n.Z) <= abs(n.X) && abs(n.Z) <= abs(n.Y):
		e = r3.Vec{Z: 1}
	case abs(n.Y) <= abs(n.X):
		e = r3.Vec{Y: 1}
	}
	first, _ := unit(r3.Cross(e, n))
	return first, r3.Cross(n, first)
}

// jointUnknowns numbers a joint's unknowns, once, and writes its acts.
func (r *reading) jointUnknowns(i int) {
	j := &r.p.Joints[i]
	if len(j.Acts) > 0 || !j.OK {
		return
	}
	for _, c := range j.Held {
		u := Unknown{Entry: Entry{Name: c.unknown(j)}, Dim: units.Force, Line: -1, Joint: i, Part: c.Suffix}
		what := "an unknown of the joint " + j.Name
		j.OK = r.unlike(j.Ref, u.Name, what, AGiven, ALine) && (!r.has(AnUnknown, u.Name) || r.usedTwice(j.Ref, u.Name, "a line", what))
		if !j.OK {
			return
		}
		to := &j.Forces.Terms
		if c.Moment {
			u.Dim, to = units.Moment, &j.Moments.Terms
		}
		*to = append(*to, ActTerm{Unknown: r.addUnknown(u), D: c.D})
	}
	act := func(b int, force, couple Vector) {
		at := r.placeOn(j, b)
		j.Acts = append(j.Acts, Act{Body: b, Point: at, At: r.p.Points[at].At, Force: force, Couple: couple})
	}
	act(j.First, j.Forces, j.Moments)
	if j.Second != Ground {
		act(j.Second, j.Forces.Opposite(), j.Moments.Opposite())
	}
}

// unlike refuses a name that other things bear: two would answer to it. An unknown that
// has no number yet is one by the joint that will have it.
func (r *reading) unlike(ref sheet.Ref, name, what string, others ...Thing) bool {
	for _, other := range others {
		joint, ofJoint := r.find(ofAJoint, name)
		switch {
		case other == AnUnknown && ofJoint:
			return r.usedTwice(ref, name, "an unknown of the joint "+r.p.Joints[joint].Name, what)
		case r.has(other, name):
			return r.usedTwice(ref, name, other.One(), what)
		}
	}
	return true
}

func has[K comparable, V any](in map[K]V, key K) bool {
	_, ok := in[key]
	return ok
}

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
func (r *reading) jointHolds(j *Joint, row sheet.Row, holds Holds) bool {
	moments := holds.Moments
	if text, ref, ok := r.text("joints", row, "moments"); ok {
		if text != "none" {
			return r.fail(ref, whole(text), "moments can only be \"none\"", "none, or leave it blank")
		}
		if moments != HoldNone && !j.Kind.Info().MayLack {
			return r.fail(ref, whole(text), "the moments of a "+j.Kind.String()+" joint cannot be released", "the kind pin or ball-and-socket for one without")
		}
		moments = HoldNone
	}
	if r.p.Bodies[j.First].Particle || j.Second >= 0 && r.p.Bodies[j.Second].Particle {
		moments = HoldNone // a particle takes no moment
	}
	add := func(list *[]ActTerm, part string, d r3.Vec) {
		*list = append(*list, ActTerm{Unknown: len(j.parts), D: d})
		j.parts = append(j.parts, part)
	}
	switch holds.Forces {
	case HoldNormal:
		add(&j.Forces, "", j.Normal)
	case HoldRough:
		r.roughSurface(j, add)
	default:
		for _, c := range r.held(holds.Forces, j.Axis, false) {
			add(&j.Forces, c.suffix, c.d)
		}
	}
	if j.HasFace {
		moments = HoldAll
	}
	for _, c := range r.held(moments, j.Axis, true) {
		add(&j.Moments, c.suffix, c.d)
	}
	return true
}

// roughSurface has a normal force and friction along the surface; where slipping
// impends the friction is not an unknown of its own but μ times the normal
// force, against the slip.
func (r *reading) roughSurface(j *Joint, add func(*[]ActTerm, string, r3.Vec)) {
	if j.Impending {
		add(&j.Forces, "N", snapped(r3.Sub(j.Normal, r3.Scale(j.Friction, j.Slip)), 1))
		return
	}
	add(&j.Forces, "N", j.Normal)
	first, second := acrossOf(j.Normal)
	if r.p.Planar {
		// The tangent is the normal turned clockwise, +x where the normal is +y.
		add(&j.Forces, "F", r3.Vec{X: j.Normal.Y, Y: -j.Normal.X})
		return
	}
	add(&j.Forces, "F1", first)
	add(&j.Forces, "F2", second)
}

// heldComponent is a direction that a joint holds, with what its unknown has behind the
// joint's name: nothing where it is the only one.
type heldComponent struct {
	suffix string
	d      r3.Vec
}

// held lists the components that a joint holds.
func (r *reading) held(h Hold, axis r3.Vec, moment bool) []heldComponent {
	all := []heldComponent{{"x", r3.Vec{X: 1}}, {"y", r3.Vec{Y: 1}}, {"z", r3.Vec{Z: 1}}}
	switch {
	case h == HoldNone:
		return nil
	case r.p.Planar && moment:
		return all[2:]
	case r.p.Planar && h == HoldAll:
		return all[:2]
	case h == HoldAll:
		return all
	case r.p.Planar: // across an axis in the plane: the axis turned counter-clockwise
		return []heldComponent{{"", r3.Vec{X: -axis.Y, Y: axis.X}}}
	}
	if k := slices.IndexFunc(all, func(c heldComponent) bool { return abs(abs(r3.Dot(axis, c.d))-1) < onAxis }); k >= 0 {
		return slices.Delete(all, k, k+1)
	}
	first, second := acrossOf(axis)
	return []heldComponent{{"1", first}, {"2", second}}
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

// unknownName is the name of a joint's unknown: Ax, and MA of a moment.
func (j *Joint) unknownName(k int) string {
	if k >= len(j.Forces) {
		return "M" + j.Name + j.parts[k]
	}
	return j.Name + j.parts[k]
}

// jointUnknowns numbers a joint's unknowns, once, and writes its acts.
func (r *reading) jointUnknowns(i int) {
	j := &r.p.Joints[i]
	if r.jointDone[i] || !j.OK {
		return
	}
	r.jointDone[i] = true
	index := make([]int, len(j.parts))
	for k, part := range j.parts {
		name := j.unknownName(k)
		dim := units.Force
		if k >= len(j.Forces) {
			dim = units.Moment
		}
		other := ""
		switch {
		case r.isGiven(name):
			other = "a given"
		case r.hasUnknown(name) || r.isLine(name):
			other = "a line"
		}
		if other != "" {
			j.OK = r.usedTwice(j.Ref, name, other, "an unknown of the joint "+j.Name)
			return
		}
		index[k] = r.addUnknown(Unknown{Name: name, Dim: dim, Line: -1, Joint: i, Part: part})
	}
	for _, terms := range [][]ActTerm{j.Forces, j.Moments} {
		for k := range terms {
			terms[k].Unknown = index[terms[k].Unknown]
		}
	}
	act := func(b int, forces, moments []ActTerm) {
		at := r.placeOn(j, b)
		j.Acts = append(j.Acts, Act{Body: b, Point: at, At: r.p.Points[at].At, Terms: forces, CoupleTerms: moments})
	}
	act(j.First, j.Forces, j.Moments)
	if j.Second != Ground {
		act(j.Second, opposite(j.Forces), opposite(j.Moments))
	}
}

func opposite(terms []ActTerm) []ActTerm {
	out := make([]ActTerm, len(terms))
	for k, t := range terms {
		out[k] = ActTerm{Unknown: t.Unknown, D: r3.Scale(-1, t.D)}
	}
	return out
}

func (r *reading) isGiven(name string) bool        { return has(r.givens, name) }
func (r *reading) hasUnknown(name string) bool     { return has(r.unknowns, name) }
func (r *reading) isJointUnknown(name string) bool { return has(r.jointOf, name) }
func (r *reading) isLine(name string) bool         { return has(r.lines, name) || r.isBelt(name) }

func has[V any](named map[string]V, name string) bool {
	_, ok := named[name]
	return ok
}

package problem

import (
	"math"

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
	add := func(list *[]ActTerm, name string, d r3.Vec) {
		*list = append(*list, ActTerm{Unknown: len(j.names), D: d})
		j.names = append(j.names, name)
	}
	switch holds.Forces {
	case HoldNormal:
		add(&j.Forces, j.Name, j.Normal)
	case HoldRough:
		r.roughSurface(j, add)
	default:
		for _, c := range r.held(holds.Forces, j.Axis, false) {
			name := j.Name + c.suffix
			if c.only {
				name = j.Name
			}
			add(&j.Forces, name, c.d)
		}
	}
	if j.HasFace {
		moments = HoldAll
	}
	for _, c := range r.held(moments, j.Axis, true) {
		add(&j.Moments, "M"+j.Name+c.suffix, c.d)
	}
	return true
}

// roughSurface has a normal force and friction along the surface; where slipping
// impends the friction is not an unknown of its own but μ times the normal
// force, against the slip.
func (r *reading) roughSurface(j *Joint, add func(*[]ActTerm, string, r3.Vec)) {
	if j.Impending {
		add(&j.Forces, j.Name+"N", snapped(r3.Sub(j.Normal, r3.Scale(j.Friction, j.Slip)), 1))
		return
	}
	add(&j.Forces, j.Name+"N", j.Normal)
	first, second := acrossOf(j.Normal)
	if r.p.Planar {
		// The tangent is the normal turned clockwise, +x where the normal is +y.
		add(&j.Forces, j.Name+"F", r3.Vec{X: j.Normal.Y, Y: -j.Normal.X})
		return
	}
	add(&j.Forces, j.Name+"F1", first)
	add(&j.Forces, j.Name+"F2", second)
}

type heldComponent struct {
	suffix string
	d      r3.Vec
	only   bool
}

// held lists the components that a joint holds.
func (r *reading) held(h Hold, axis r3.Vec, moment bool) []heldComponent {
	names := [3]string{"x", "y", "z"}
	unit := [3]r3.Vec{{X: 1}, {Y: 1}, {Z: 1}}
	var out []heldComponent
	switch {
	case h == HoldNone:
	case r.p.Planar && moment:
		out = append(out, heldComponent{"z", unit[2], false})
	case h == HoldAll:
		n := 3
		if r.p.Planar {
			n = 2
		}
		for k := range n {
			out = append(out, heldComponent{names[k], unit[k], false})
		}
	case r.p.Planar: // across an axis in the plane: the axis turned counter-clockwise
		out = append(out, heldComponent{"", r3.Vec{X: -axis.Y, Y: axis.X}, true})
	default:
		for k := range 3 {
			if math.Abs(math.Abs(r3.Dot(axis, unit[k]))-1) < onAxis {
				for i := range 3 {
					if i != k {
						out = append(out, heldComponent{names[i], unit[i], false})
					}
				}
				return out
			}
		}
		first, second := acrossOf(axis)
		out = append(out, heldComponent{"1", first, false}, heldComponent{"2", second, false})
	}
	return out
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
	if r.jointDone[i] || !j.OK {
		return
	}
	r.jointDone[i] = true
	index := make([]int, len(j.names))
	for k, name := range j.names {
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
		index[k] = r.addUnknown(Unknown{Name: name, Dim: dim, Line: -1, Joint: i})
	}
	for k := range j.Forces {
		j.Forces[k].Unknown = index[j.Forces[k].Unknown]
	}
	for k := range j.Moments {
		j.Moments[k].Unknown = index[j.Moments[k].Unknown]
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

func (r *reading) hasUnknown(name string) bool { _, ok := r.unknowns[name]; return ok }
func (r *reading) isLine(name string) bool     { _, ok := r.lines[name]; return ok || r.isBelt(name) }

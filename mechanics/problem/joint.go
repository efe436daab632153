package problem

import (
	"slices"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/say"
)

// Joint is a support or a connection at a point. It exerts F = Σ unknown·D and
// M = Σ unknown·D on its first body and the opposite on its second, which is
// Ground at a support.
type Joint struct {
	Entry
	Kind          JointKind
	Point         int
	First, Second int
	Normal, Axis  r3.Vec         // unit vectors; zero where the kind has none
	Typed         TypedDirection // how the normal was typed
	Forces        Vector
	Moments       Vector
	Friction      float64 // static coefficient
	HasFriction   bool
	Impending     bool // friction is at its most, Slip is the way the first body would go
	Slip          r3.Vec
	Limit         float64 // capacity of the resultant force, N; 0 where none
	Face          [2]int  // the points between which a face rests on the surface
	HasFace       bool

	Held []Held // forces before moments
}

// Words is what a joint is in a sentence: "rough surface", "fixed support".
func (j *Joint) Words() string {
	switch plane := j.Kind.Where(true); {
	case plane.Moments != HoldAll || plane.Forces != HoldAll:
		return strings.ReplaceAll(j.Kind.String(), "-", " ")
	case j.Second == Ground:
		return "fixed support"
	}
	return "fixed joint"
}

// readJoints reads what each joint is and which unknowns it will have; the
// unknowns themselves are numbered in the order of first use.
func (r *reading) readJoints() {
	rows := r.rowsOf(AJoint)
	r.p.Joints = make([]Joint, len(rows))
	for i, w := range rows {
		j := &r.p.Joints[i]
		*j = Joint{Entry: w.entry(AJoint, i), First: Ground, Second: Ground}
		j.OK = r.joint(j, w)
		j.OK = r.unlike(j.Ref, j.Name, "a joint", ALine) && j.OK // C.x would be a part of either
		for k := 0; j.OK && k < len(j.Held); k++ {
			name := j.Held[k].unknown(j)
			if other, taken := r.find(ofAJoint, name); taken {
				j.OK = w.fail("the joints "+r.p.Joints[other].Name+" and "+j.Name+" both have an unknown "+name, "rename one of them")
			} else {
				r.note(ofAJoint, name, i)
			}
		}
	}
}

func (r *reading) joint(j *Joint, w row) bool {
	offered := jointNames(r.p.Planar)
	kind, ok := w.kind("joint", jointWords, offered)
	j.Kind = JointKind(kind)
	holds := j.Kind.Where(r.p.Planar)
	if ok && !holds.Stands {
		ok = w.cell("kind").fail("a "+j.Kind.String()+" is used in space only", say.Or(offered...))
	}
	if !ok {
		return false
	}
	return r.jointPlace(j, w) &&
		r.jointDirection(j, w, holds) &&
		(holds.Forces != HoldRough || r.roughness(j, w)) && // else the keys are unread, and noted
		w.limit(&j.Limit) &&
		r.jointFace(j, w) &&
		r.jointHolds(j, w, holds)
}

func jointNames(planar bool) []string {
	return jointsThat(func(k JointInfo) bool { return planar && k.Plane.Stands || !planar && k.Space.Stands })
}

// jointPlace finds a joint's point (at, or the point of its own name) and the
// bodies it joins: those of the point, or those that on names; one body alone
// is joined to the ground.
func (r *reading) jointPlace(j *Joint, w row) bool {
	at, on := w.cell("at"), w.cell("on")
	if !at.has {
		at.ref, at.text = j.Ref, j.Name
		if first := Fields(on.text); len(first) > 0 && !r.isPoint(at.text) && r.isParticle(first[0].Text) {
			at.text = first[0].Text // the joint of two particles needs no point of its own
		}
		if !r.isPoint(at.text) {
			return w.fail("there is no point "+strconv.Quote(at.text)+" for the joint "+j.Name, "name the joint after its point, or state its point")
		}
	}
	if !at.point(&j.Point) {
		return false
	}
	pt := &r.p.Points[j.Point]
	bodies := pt.Bodies
	if on.has && !(on.bodies(j, &bodies) && r.meet(j, on, bodies)) {
		return false
	}
	switch len(bodies) {
	case 0:
		return w.fail("the joint "+j.Name+" is at the point "+pt.Name+", which is not on a body", "put "+pt.Name+" on a body")
	case 1:
		j.First = bodies[0]
	case 2:
		j.First, j.Second = bodies[0], bodies[1]
	default:
		a, b, c := r.p.Bodies[bodies[0]].Name, r.p.Bodies[bodies[1]].Name, r.p.Bodies[bodies[2]].Name
		return w.fail("the point "+pt.Name+" is on "+say.Number(len(bodies))+" bodies, but a joint connects two",
			"two joints at "+pt.Name+", "+j.Name+"1 on "+a+" "+b+" and "+j.Name+"2 on "+a+" "+c)
	}
	return true
}

// bodies finds the bodies that a cell names for a joint, which connects each once.
func (c cell) bodies(j *Joint, to *[]int) bool {
	*to = nil
	for _, w := range Fields(c.text) {
		if w.Text == GroundWord {
			continue
		}
		b, ok := c.bodyNamed(w.Text)
		if ok && slices.Contains(*to, b) {
			ok = c.failAt(w.Span, "the joint "+j.Name+" connects "+w.Text+" to itself", "two bodies, or one to connect it to the ground")
		}
		if !ok {
			return false
		}
		*to = append(*to, b)
	}
	return true
}

// meet tells whether bodies can be joined at the joint's point. Rigid bodies are where
// the point is theirs. A particle has no size: it meets another one across a surface
// wherever they are, and a body where it is at a point of it.
func (r *reading) meet(j *Joint, on cell, bodies []int) bool {
	pt := &r.p.Points[j.Point]
	if len(bodies) == 2 && (r.p.Bodies[bodies[0]].Particle || r.p.Bodies[bodies[1]].Particle) && (onBody(pt, bodies[0]) || onBody(pt, bodies[1])) {
		return r.meetParticle(j, on, bodies[0], bodies[1])
	}
	for _, b := range bodies {
		name := r.p.Bodies[b].Name
		switch {
		case onBody(pt, b):
		case r.p.Bodies[b].Particle:
			return on.failAt(wordIn(on.text, name), "the point "+pt.Name+" is not the particle "+name, "at "+name)
		default:
			return on.failAt(wordIn(on.text, name), "the point "+pt.Name+" is not on "+name, "put "+pt.Name+" on "+name+" too")
		}
	}
	return true
}

// meetParticle is meet for two of which one is a particle.
func (r *reading) meetParticle(j *Joint, on cell, a, b int) bool {
	one, other := &r.p.Bodies[a], &r.p.Bodies[b]
	p, q := &r.p.Points[r.placeOn(j, a)], &r.p.Points[r.placeOn(j, b)]
	stand := p.OK && onBody(p, a) && q.OK && onBody(q, b) // else a point may not read, which says so itself
	apart := r3.Norm(r3.Sub(p.At, q.At)) > coincident*max(largest(p.At), largest(q.At))
	if one.Particle && other.Particle {
		if j.Kind.Where(r.p.Planar).Needs == "normal" {
			return stand
		}
		return !apart || on.fail("the particles "+one.Name+" and "+other.Name+" are at different places, but a "+j.Kind.String()+" connects bodies at one point",
			"both at one place, or a line between them")
	}
	if stand && !apart {
		return true
	}
	if !one.Particle {
		one, other = other, one
	}
	name := r.p.Points[j.Point].Name
	if name == one.Name {
		return on.fail(one.Name+" is a particle, not a point of "+other.Name, "put the point "+name+" on "+one.Name+" "+other.Name+", which makes it a point of two bodies")
	}
	return on.fail(one.Name+" is a particle, but the point "+name+" of "+other.Name+" is at another place",
		"put the point "+one.Name+" on "+one.Name+", which makes it a body, and the point "+name+" on "+other.Name+" "+one.Name)
}

// placeOn is where a joint acts on a body: at its point, on a particle at its own.
func (r *reading) placeOn(j *Joint, b int) int {
	if r.p.Bodies[b].Particle {
		return r.p.Bodies[b].Points[0]
	}
	return j.Point
}

func onBody(pt *Point, b int) bool { return slices.Contains(pt.Bodies, b) }

func (r *reading) isParticle(name string) bool {
	b, ok := r.find(ABody, name)
	return ok && r.p.Bodies[b].Particle
}

// joinsParticle tells that a joint, whose bodies are known, is one of a particle: it takes
// no moment and has no face.
func (r *reading) joinsParticle(j *Joint) bool {
	return r.p.Bodies[j.First].Particle || j.Second != Ground && r.p.Bodies[j.Second].Particle
}

// jointDirection reads the normal or the axis that a kind needs; a key that it does not
// need is unread, and noted.
func (r *reading) jointDirection(j *Joint, w row, holds Holds) (ok bool) {
	needs := holds.Needs
	if r.p.Planar && needs != "axis" && j.Kind.Info().Space.Needs == "axis" { // it stands on the plane
		axis := w.cell("axis")
		v, known := axes[axis.word()]
		return !axis.has || known && v.Z != 0 || axis.fail("in the plane the axis of a "+j.Kind.String()+" is z", "leave its axis blank")
	}
	c := w.cell(needs)
	switch {
	case needs == "":
		return true
	case c.has && needs == "normal":
		ok = c.direction(&j.Normal)
		j.Typed = c.typedDirection()
		return ok
	case c.has:
		return c.direction(&j.Axis)
	case needs == "normal":
		return w.fail("the "+j.Kind.String()+" "+j.Name+" has no normal", "normal +y, the direction in which it pushes the body")
	}
	// a particle takes no moments, so the axis of all forces decides nothing
	return r.p.Bodies[j.First].Particle && holds.Forces == HoldAll || w.fail("the "+j.Kind.String()+" "+j.Name+" has no axis", "axis +x")
}

// roughness reads the static coefficient, and impending = "+x": the way the
// body is about to slip, against which friction is then at its most.
func (r *reading) roughness(j *Joint, w row) bool {
	q, impending := w.quantity("friction"), w.cell("impending")
	switch {
	case !q.has:
	case q.value < 0:
		return q.fail("the coefficient of friction cannot be negative", "the opposite direction of impending slip, which reverses the friction")
	case !q.friction():
		return false
	}
	j.Friction, j.HasFriction = q.value, q.has
	if !impending.has {
		return true
	}
	var v r3.Vec
	switch {
	case !impending.direction(&v):
		return false
	case !j.HasFriction:
		return impending.fail("slip is impending at "+j.Name+", but it has no coefficient of friction", "add its friction, such as 0.3")
	}
	if j.Slip, j.Impending = unit(r3.Sub(v, r3.Scale(r3.Dot(v, j.Normal), j.Normal))); !j.Impending {
		return impending.fail("the direction of impending slip is along the normal", "a direction along the surface")
	}
	return true
}

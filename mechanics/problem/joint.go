package problem

import (
	"slices"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/diag"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// Joint is a support or a connection at a point. It exerts F = Σ unknown·D and
// M = Σ unknown·D on its first body and the opposite on its second, which is
// Ground at a support.
type Joint struct {
	Name          string
	Kind          JointKind
	Ref           sheet.Ref
	OK            bool
	Point         int
	First, Second int
	Normal, Axis  r3.Vec         // unit vectors; zero where the kind has none
	Typed         TypedDirection // how the normal was typed
	Forces        []ActTerm
	Moments       []ActTerm
	Friction      float64 // static coefficient
	HasFriction   bool
	Impending     bool // friction is at its most, Slip is the way the first body would go
	Slip          r3.Vec
	Limit         float64 // capacity of the resultant force, N; 0 where none
	Face          [2]int  // the points between which a face rests on the surface
	HasFace       bool
	Acts          []Act

	parts []string // of its unknowns' names, forces before moments
}

// Words is what a joint is in a sentence: "rough surface", "fixed support".
func (j *Joint) Words() string {
	if j.Kind.Where(true).Moments == HoldAll && j.Kind.Where(true).Forces == HoldAll {
		if j.Second == Ground {
			return "fixed support"
		}
		return "fixed joint"
	}
	return strings.ReplaceAll(j.Kind.String(), "-", " ")
}

// maxFriction is the largest static coefficient that is taken for one: rubber
// on dry concrete has about 1 (common practice), and 2 leaves room.
const maxFriction = 2

// readJoints reads what each joint is and which unknowns it will have; the
// unknowns themselves are numbered in the order of first use.
func (r *reading) readJoints() {
	rows := Rows(r.s, "joints")
	r.p.Joints = make([]Joint, len(rows))
	r.jointDone = make([]bool, len(rows))
	for i, row := range rows {
		j := &r.p.Joints[i]
		*j = Joint{Name: row.Name, Ref: sheet.Ref{Table: "joints", Row: row.Name}, First: Ground, Second: Ground}
		j.OK = r.joint(j, row)
		if r.isLine(j.Name) { // C.x would be a part of either
			j.OK = r.usedTwice(j.Ref, j.Name, "a line", "a joint")
		}
		if j.OK {
			for k := range j.parts {
				name := j.unknownName(k)
				if k, taken := r.jointOf[name]; taken {
					j.OK = r.fail(j.Ref, diag.Span{}, "the joints "+r.p.Joints[k].Name+" and "+j.Name+" both have an unknown "+name, "rename one of them")
					break
				}
				r.jointOf[name] = i
			}
		}
	}
}

func (r *reading) joint(j *Joint, row sheet.Row) bool {
	text, ref, ok := r.text("joints", row, "kind")
	if !ok {
		return r.fail(j.Ref, diag.Span{}, "the joint "+j.Name+" has no kind", say.Or(jointNames(r.p.Planar)...))
	}
	if j.Kind, ok = jointKindOf(strings.TrimSpace(text)); !ok {
		return r.fail(ref, whole(text), strconv.Quote(text)+" is not a kind of joint", suggestion(text, jointNames(r.p.Planar), say.Or(jointNames(r.p.Planar)...)))
	}
	holds := j.Kind.Where(r.p.Planar)
	if !holds.Stands {
		return r.fail(ref, whole(text), "a "+j.Kind.String()+" is used in space only", say.Or(jointNames(true)...))
	}
	return r.jointPlace(j, row) && r.jointDirection(j, row, holds) && r.jointFriction(j, row, holds) && r.jointFace(j, row) && r.jointHolds(j, row, holds)
}

func jointKindOf(s string) (JointKind, bool) {
	i := wordOf(jointWords, s)
	return JointKind(max(i, 0)), i >= 0
}

func jointNames(planar bool) []string {
	return jointsThat(func(k JointInfo) bool { return planar && k.Plane.Stands || !planar && k.Space.Stands })
}

// jointPlace finds a joint's point (at, or the point of its own name) and the
// bodies it joins: those of the point, or those that on names; one body alone
// is joined to the ground.
func (r *reading) jointPlace(j *Joint, row sheet.Row) bool {
	at, ref, ok := r.text("joints", row, "at")
	if !ok {
		at, ref = j.Name, j.Ref
		if p, found := r.firstParticle(row); found && !has(r.points, at) {
			at = p
		}
		if !has(r.points, at) {
			return r.fail(ref, diag.Span{}, "there is no point "+strconv.Quote(at)+" for the joint "+j.Name, "name the joint after its point, or say at which point it is")
		}
	}
	i, ok := r.pointNamed(ref, word{whole(at), at})
	if !ok {
		return false
	}
	j.Point = i
	pt := &r.p.Points[i]
	bodies := pt.Bodies
	if on, oref, ok := r.text("joints", row, "on"); ok {
		bodies = nil
		for _, w := range fields(on) {
			if w.text == groundWord {
				continue
			}
			b, ok := r.bodyNamed(oref, w.text)
			switch {
			case !ok:
				return false
			case slices.Contains(bodies, b):
				return r.fail(oref, w.Span, "the joint "+j.Name+" connects "+w.text+" to itself", "two bodies, or one to connect it to the ground")
			}
			bodies = append(bodies, b)
		}
		if !r.meet(j, oref, on, bodies) {
			return false
		}
	}
	switch len(bodies) {
	case 0:
		return r.fail(j.Ref, diag.Span{}, "the joint "+j.Name+" is at the point "+pt.Name+", which is not on a body", "put "+pt.Name+" on a body")
	case 1:
		j.First = bodies[0]
	case 2:
		j.First, j.Second = bodies[0], bodies[1]
	default:
		a, b, c := r.p.Bodies[bodies[0]].Name, r.p.Bodies[bodies[1]].Name, r.p.Bodies[bodies[2]].Name
		return r.fail(j.Ref, diag.Span{}, "the point "+pt.Name+" is on "+say.Number(len(bodies))+" bodies, but a joint connects two",
			"two joints at "+pt.Name+", "+j.Name+"1 on "+a+" "+b+" and "+j.Name+"2 on "+a+" "+c)
	}
	return true
}

// firstParticle is the first word of a joint's on, where it is a particle: the joint
// of two particles needs no point of its own.
func (r *reading) firstParticle(row sheet.Row) (string, bool) {
	on, _, _ := r.text("joints", row, "on")
	words := fields(on)
	if len(words) == 0 {
		return "", false
	}
	b, ok := r.bodies[words[0].text]
	return words[0].text, ok && r.p.Bodies[b].Particle
}

// meet tells whether bodies can be joined at the joint's point. Rigid bodies are where
// the point is theirs. A particle has no size: it meets another one across a surface
// wherever they are, and a body where it is at a point of it.
func (r *reading) meet(j *Joint, ref sheet.Ref, on string, bodies []int) bool {
	pt := &r.p.Points[j.Point]
	particle := func(b int) bool { return r.p.Bodies[b].Particle }
	if len(bodies) == 2 && (particle(bodies[0]) || particle(bodies[1])) && (onBody(pt, bodies[0]) || onBody(pt, bodies[1])) {
		return r.meetParticle(j, ref, on, bodies[0], bodies[1])
	}
	for _, b := range bodies {
		if onBody(pt, b) {
			continue
		}
		name := r.p.Bodies[b].Name
		if particle(b) {
			r.fail(ref, wordIn(on, name), "the point "+pt.Name+" is not the particle "+name, "at "+name)
		} else {
			r.fail(ref, wordIn(on, name), "the point "+pt.Name+" is not on "+name, "put "+pt.Name+" on "+name+" too")
		}
		return false
	}
	return true
}

// meetParticle is meet for two of which one is a particle.
func (r *reading) meetParticle(j *Joint, ref sheet.Ref, on string, a, b int) bool {
	one, other := &r.p.Bodies[a], &r.p.Bodies[b]
	place := func(b int) (at r3.Vec, ok bool) {
		if k := r.placeOn(j, b); r.pointAt[k] == done {
			return r.p.Points[k].At, onBody(&r.p.Points[k], b)
		}
		return at, false
	}
	p, onA := place(a)
	q, onB := place(b)
	both := one.Particle && other.Particle
	apart := r3.Norm(r3.Sub(p, q)) > coincident*max(largest(p), largest(q))
	switch {
	case both && j.Kind.Where(r.p.Planar).Needs == "normal":
		return onA && onB // false where a point does not read, which says so itself
	case both && apart:
		r.fail(ref, whole(on), "the particles "+one.Name+" and "+other.Name+" are at different places, but a "+j.Kind.String()+" connects bodies at one point",
			"both at one place, or a line between them")
	case !both && (!onA || !onB || apart):
		if !one.Particle {
			one, other = other, one
		}
		at := j.Point
		if name := r.p.Points[at].Name; name == one.Name {
			r.fail(ref, whole(on), one.Name+" is a particle, not a point of "+other.Name, "put the point "+name+" on "+one.Name+" "+other.Name+", which makes it a point of two bodies")
		} else {
			r.fail(ref, whole(on), one.Name+" is a particle, but the point "+name+" of "+other.Name+" is at another place",
				"put the point "+one.Name+" on "+one.Name+", which makes it a body, and the point "+name+" on "+other.Name+" "+one.Name)
		}
	default:
		return true
	}
	return false
}

// placeOn is where a joint acts on a body: at its point, on a particle at its own.
func (r *reading) placeOn(j *Joint, b int) int {
	if r.p.Bodies[b].Particle {
		return r.p.Bodies[b].Points[0]
	}
	return j.Point
}

func onBody(pt *Point, b int) bool { return slices.Contains(pt.Bodies, b) }

// jointDirection reads the normal or the axis that a kind needs.
func (r *reading) jointDirection(j *Joint, row sheet.Row, holds Holds) bool {
	for _, key := range []string{"normal", "axis"} {
		text, ref, ok := r.text("joints", row, key)
		if !ok {
			if holds.Needs != key {
				continue
			}
			if key == "axis" && r.p.Bodies[j.First].Particle && holds.Forces == HoldAll {
				continue // a particle takes no moments, so the axis decides nothing
			}
			hint := key + " +y, the direction in which it pushes the body"
			if key == "axis" {
				hint = "axis +x"
			}
			return r.fail(j.Ref, diag.Span{}, "the "+j.Kind.String()+" "+j.Name+" has no "+key, hint)
		}
		if key == "axis" && r.p.Planar && holds.Needs != key && j.Kind.Info().Space.Needs == key { // it stands on the plane
			if v, ok := axes[strings.TrimSpace(text)]; !ok || v.Z == 0 {
				return r.fail(ref, whole(text), "in the plane the axis of a "+j.Kind.String()+" is z", "leave its axis blank")
			}
			continue
		}
		if holds.Needs != key {
			continue // unread, and noted
		}
		v, ok := r.direction(ref, text, env{r: r, scope: inGeometry})
		if !ok {
			return false
		}
		if key == "normal" {
			j.Normal, j.Typed = v, r.typedDirection(ref, text)
		} else {
			j.Axis = v
		}
	}
	return true
}

// jointFriction reads the static coefficient, and impending = "+x": the way the
// body is about to slip, against which friction is then at its most.
func (r *reading) jointFriction(j *Joint, row sheet.Row, holds Holds) bool {
	rough := holds.Forces == HoldRough // else the keys are unread, and noted
	if _, _, has := r.text("joints", row, "friction"); has && rough {
		switch q := r.quantity("joints", row, "friction"); {
		case !q.ok:
			return false
		case q.value < 0:
			return r.fail(q.ref, whole(q.text), "the coefficient of friction cannot be negative", "the opposite direction of impending slip, which reverses the friction")
		case q.value > maxFriction:
			return r.fail(q.ref, whole(q.text), "a coefficient of friction of "+units.Figures(q.value, 3)+" is too large for any surface", "a decimal such as 0.3")
		default:
			j.Friction, j.HasFriction = q.value, true
		}
	}
	if text, ref, ok := r.text("joints", row, "impending"); ok && rough {
		v, ok := r.direction(ref, text, env{r: r, scope: inGeometry})
		if !ok {
			return false
		}
		if !j.HasFriction {
			return r.fail(ref, whole(text), "slip is impending at "+j.Name+", but it has no coefficient of friction", "add its friction, such as 0.3")
		}
		along, ok := unit(r3.Sub(v, r3.Scale(r3.Dot(v, j.Normal), j.Normal)))
		if !ok {
			return r.fail(ref, whole(text), "the direction of impending slip is along the normal", "a direction along the surface")
		}
		j.Impending, j.Slip = true, along
	}
	var ok bool
	j.Limit, ok = r.limit("joints", row)
	return ok
}

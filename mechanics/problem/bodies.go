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

// particleWord is what `on` says of a point that is a free particle of its own;
// groundWord says what leaving it out says too.
const (
	particleWord = "particle"
	groundWord   = "ground"
)

// readBodies gathers what is cut free from what the points are on: a particle
// is named after its point, a rigid body has its name from the points on it.
func (r *reading) readBodies() {
	r.bodies = map[string]int{}
	for i := range r.p.Points {
		pt := &r.p.Points[i]
		on, ref, ok := r.text("points", r.pointRows[i], "on")
		if !ok {
			continue
		}
		words := fields(on)
		for _, w := range words {
			name := w.text
			switch {
			case name == groundWord:
			case Private(name):
				r.fail(ref, w.Span, "the body "+name+" is ignored because its name begins with x-", "another name")
			case name == particleWord && len(words) > 1:
				r.fail(ref, w.Span, "the point "+pt.Name+" cannot be both a particle and a point of a body", "a joint or a line between the particle and the body")
			default:
				r.putOn(pt, i, name, ref, w.Span)
			}
		}
		if len(pt.Bodies) > 0 {
			pt.Body = pt.Bodies[0]
		}
	}
	for _, row := range Rows(r.s, "bodies") {
		if _, ok := r.bodies[row.Name]; !ok {
			r.fail(sheet.Ref{Table: "bodies", Row: row.Name}, diag.Span{}, "the body "+row.Name+" has no points", "points that are on "+row.Name)
		}
	}
}

func (r *reading) putOn(pt *Point, i int, name string, ref sheet.Ref, span diag.Span) {
	particle := name == particleWord
	if particle {
		name = pt.Name
	}
	b, known := r.bodies[name]
	switch {
	case known && r.p.Bodies[b].Particle != particle:
		r.fail(ref, span, "the name "+name+" is used for a particle and for a body", "another name for one of them; to join two particles, a joint at one of them that is on both")
		return
	case !known:
		b = len(r.p.Bodies)
		r.bodies[name] = b
		r.p.Bodies = append(r.p.Bodies, Body{Name: name, Particle: particle, Ref: sheet.Ref{Table: "points", Row: pt.Name}})
		if _, own := r.s.Table("bodies").Row(name); own && !particle {
			r.p.Bodies[b].Ref = sheet.Ref{Table: "bodies", Row: name}
		}
	}
	if !onBody(pt, b) {
		pt.Bodies = append(pt.Bodies, b)
		r.p.Bodies[b].Points = append(r.p.Bodies[b].Points, i)
	}
}

// finishBodies reads what bodies have beyond their points: the point that
// moments are taken about, and the weight at a centre.
func (r *reading) finishBodies() {
	rows := r.s.Table("bodies")
	for b := range r.p.Bodies {
		body := &r.p.Bodies[b]
		if body.Particle {
			body.About, body.AboutName = r.p.Points[body.Points[0]].At, body.Name
			continue
		}
		row, _ := rows.Row(body.Name)
		r.about(b, row)
		r.bodyWeight(b, row)
	}
}

// about is the point that a body's moments are taken about: as given, else that
// of its first joint, where the most unknowns drop out, else its first point.
func (r *reading) about(b int, row sheet.Row) {
	body := &r.p.Bodies[b]
	at := body.Points[0]
	for i := range r.p.Joints {
		if j := &r.p.Joints[i]; j.OK && (j.First == b || j.Second == b) {
			at = j.Point
			break
		}
	}
	if text, ref, ok := r.text("bodies", row, "about"); ok {
		i, found := r.pointNamed(ref, word{whole(text), text})
		if !found {
			return
		}
		at = i
	}
	body.About, body.AboutName = r.p.Points[at].At, r.p.Points[at].Name
}

func (r *reading) bodyWeight(b int, row sheet.Row) {
	body := &r.p.Bodies[b]
	text, ref, ok := r.text("bodies", row, "weight")
	centre, cref, hasCentre := r.text("bodies", row, "centre")
	if !ok {
		return
	}
	v, ok := r.one(ref, text, env{r: r, scope: inGiven})
	if !ok {
		return
	}
	v, mass := r.weighed(v)
	if v, ok = r.want(ref, text, v, units.Force); !ok {
		return
	}
	if !hasCentre {
		r.fail(body.Ref, diag.Span{}, "the body "+body.Name+" has a weight but no centre", "a centre such as M or (A + B)/2")
		return
	}
	c, ok := r.vectorOf(cref, centre, env{r: r, scope: inGeometry}, units.Length)
	if !ok {
		return
	}
	body.Weight, body.Mass = v.V[0], mass
	body.Centre = r3.Vec{X: c.V[0], Y: c.V[1], Z: c.V[2]}
	body.Acts = []Act{{Body: b, Point: -1, At: body.Centre, Const: r3.Scale(-body.Weight, r.p.Up)}}
}

// weighed takes a mass times g, and gives the mass too.
func (r *reading) weighed(v units.Value) (weight units.Value, mass float64) {
	if v.N == 1 && v.Dim == units.Mass && len(v.Terms) == 0 {
		v.Dim, mass = units.Force, v.V[0]
		v.V[0] *= r.p.G
		v.Plus[0] *= r.p.G
	}
	return v, mass
}

// bodyAt chooses the body of a point that a force acts on: its only one, or the
// one that on names. It reports what is not settled.
func (r *reading) bodyAt(ref sheet.Ref, pt *Point, on string, l *Line) (int, bool) {
	switch len(pt.Bodies) {
	case 0:
		return Ground, true
	case 1:
		return pt.Bodies[0], true
	}
	var names []string
	for _, b := range pt.Bodies {
		names = append(names, r.p.Bodies[b].Name)
	}
	found := r.namedAt(pt, on)
	if len(found) != 1 {
		what, hint := "acts on one of them", "on "+names[0]
		if l.Kind == Force || l.Kind == Contact {
			what = "acts on one of them or between two"
			hint += ", or on " + names[0] + " " + names[1] + " if it acts between them"
		}
		return Ground, r.fail(ref, diag.Span{}, "the point "+pt.Name+" is on "+say.And(names...)+", but the line "+l.Name+" "+what, hint)
	}
	return found[0], true
}

// namedAt gives the bodies of a point that on names, in its order.
func (r *reading) namedAt(pt *Point, on string) []int {
	var out []int
	for _, w := range fields(on) {
		for _, b := range pt.Bodies {
			if r.p.Bodies[b].Name == w.text && !slices.Contains(out, b) {
				out = append(out, b)
			}
		}
	}
	return out
}

// bodyNamed finds the body that a cell names.
func (r *reading) bodyNamed(ref sheet.Ref, text string) (int, bool) {
	name := strings.TrimSpace(text)
	b, ok := r.bodies[name]
	switch {
	case ok:
	case name == groundWord:
		r.fail(ref, whole(text), "the ground is not a free body", "the name of a body")
	default:
		r.fail(ref, whole(text), "unknown body "+strconv.Quote(name), suggestion(name, namesOf(r.p.Bodies), "points that are on "+name))
	}
	return b, ok
}

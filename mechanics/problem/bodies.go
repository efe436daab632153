package problem

import (
	"slices"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// ParticleWord is what `on` says of a point that is a free particle of its own;
// GroundWord says what leaving it out says too.
const (
	ParticleWord = "particle"
	GroundWord   = "ground"
)

// readBodies gathers what is cut free from what the points are on: a particle
// is named after its point, a rigid body has its name from the points on it.
func (r *reading) readBodies() {
	for i := range r.p.Points {
		pt, on := &r.p.Points[i], r.rows[r.p.Points[i].Ref].cell("on")
		words := Fields(on.text)
		for _, w := range words {
			switch name := w.Text; {
			case name == GroundWord:
			case Private(name):
				on.failAt(w.Span, "the body "+name+" is ignored because its name begins with x-", "another name")
			case name == ParticleWord && len(words) > 1:
				on.failAt(w.Span, "the point "+pt.Name+" cannot be both a particle and a point of a body", "a joint or a line between the particle and the body")
			default:
				r.putOn(i, on, w)
			}
		}
		if len(pt.Bodies) > 0 {
			pt.Body = pt.Bodies[0]
		}
	}
	for _, w := range r.rowsOf(ABody) {
		if !r.has(ABody, w.Name) {
			w.fail("the body "+w.Name+" has no points", "points that are on "+w.Name)
		}
	}
}

// putOn puts a point on the body that a word of its cell names.
func (r *reading) putOn(i int, on cell, w Token) {
	pt, name := &r.p.Points[i], w.Text
	particle := name == ParticleWord
	if particle {
		name = pt.Name
	}
	b, known := r.find(ABody, name)
	switch {
	case known && r.p.Bodies[b].Particle != particle:
		on.failAt(w.Span, "the name "+name+" is used for a particle and for a body", "another name for one of them; to join two particles, a joint at one of them that is on both")
		return
	case !known:
		b = r.note(ABody, name, len(r.p.Bodies))
		body := Body{Entry: Entry{Name: name, Ref: sheet.Ref{Table: "points", Row: pt.Name}}, Particle: particle}
		if _, own := r.s.Table("bodies").Row(name); own && !particle {
			body.Ref = sheet.Ref{Table: "bodies", Row: name}
		}
		r.p.Bodies = append(r.p.Bodies, body)
	}
	if !onBody(pt, b) {
		pt.Bodies = append(pt.Bodies, b)
		r.p.Bodies[b].Points = append(r.p.Bodies[b].Points, i)
	}
}

// finishBodies reads what bodies have beyond their points: the point that
// moments are taken about, the weight at a centre, and the outline.
func (r *reading) finishBodies() {
	for b := range r.p.Bodies {
		body := &r.p.Bodies[b]
		about := body.Points[0]
		if !body.Particle {
			w := r.rows[sheet.Ref{Table: "bodies", Row: body.Name}]
			w.r = r
			about = r.about(b, w)
			r.bodyWeight(b, w)
			r.outline(b, w)
		}
		if about >= 0 {
			body.About, body.AboutName = r.p.Points[about].At, r.p.Points[about].Name
		}
	}
}

// about is the point that a body's moments are taken about: as given, else that
// of its first joint, where the most unknowns drop out, else its first point. It is -1
// where its cell does not read.
func (r *reading) about(b int, w row) int {
	if c := w.cell("about"); c.has {
		at := -1
		c.point(&at)
		return at
	}
	joins := func(j Joint) bool { return j.OK && (j.First == b || j.Second == b) }
	if k := slices.IndexFunc(r.p.Joints, joins); k >= 0 {
		return r.p.Joints[k].Point
	}
	return r.p.Bodies[b].Points[0]
}

// outline reads the corners of a body in a figure.
func (r *reading) outline(b int, w row) {
	const corners = 3 // fewer enclose nothing
	c := w.cell("outline")
	words := Fields(c.text)
	switch {
	case !c.has:
	case len(words) < corners:
		c.fail("an outline needs at least three points", "the form A B C")
	default:
		if corners, ok := c.pointsNamed(words); ok {
			r.p.Bodies[b].Outline = corners
		}
	}
}

func (r *reading) bodyWeight(b int, w row) {
	body, c, centre := &r.p.Bodies[b], w.cell("weight"), w.cell("centre")
	if !c.has {
		return
	}
	v, mass, ok := r.weight(c, env{r: r, scope: inGiven})
	if ok && !centre.has {
		ok = r.fail(body.Ref, diag.Span{}, "the body "+body.Name+" has a weight but no centre", "a centre such as M or (A + B)/2")
	}
	if !ok {
		return
	}
	at, ok := centre.vector(units.Length)
	if !ok {
		return
	}
	body.Weight, body.Mass, body.Centre = v.V[0], mass, vec(at.V)
	body.Acts = []Act{{Body: b, Point: -1, At: body.Centre, Force: Vector{Const: r3.Scale(-body.Weight, r.p.Up)}}}
}

// weight reads a force; of a mass it takes that times g, and gives the mass too.
func (r *reading) weight(c cell, e env) (v units.Value, mass float64, ok bool) {
	if v, ok = c.one(e); !ok {
		return v, 0, false
	}
	if v.N == 1 && v.Dim == units.Mass && len(v.Terms) == 0 {
		v.Dim, mass = units.Force, v.V[0]
		v.V[0] *= r.p.G
		v.Plus[0] *= r.p.G
	}
	v, ok = c.want(v, units.Force)
	return v, mass, ok
}

// namedAt gives the bodies of a point that on names, in its order.
func (r *reading) namedAt(pt *Point, on string) (named []int) {
	for _, w := range Fields(on) {
		if b, ok := r.find(ABody, w.Text); ok && onBody(pt, b) && !slices.Contains(named, b) {
			named = append(named, b)
		}
	}
	return named
}

// body finds the body that a cell names.
func (c cell) body(to *int) (ok bool) {
	*to, ok = c.bodyNamed(c.text)
	return ok
}

func (c cell) bodyNamed(text string) (int, bool) {
	name := strings.TrimSpace(text)
	b, ok := c.r.find(ABody, name)
	switch at := wordIn(c.text, name); {
	case ok:
	case name == GroundWord:
		c.failAt(at, "the ground is not a free body", "the name of a body")
	default:
		c.failAt(at, "unknown body "+strconv.Quote(name), suggestion(name, c.r.p.Names(ABody), "points that are on "+name))
	}
	return b, ok
}

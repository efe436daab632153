package figure

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/ink"
	"trivet/mechanics/scene"
)

// Widths and sizes, in points.
const (
	barWidth   = 6.5
	strutWidth = 5
	edge       = 0.8 // the outline of bars and bodies
	linkWidth  = 2.2
	cableWidth = 0.9
	halo       = 2.2 // kept free beside what passes in front of something
	ringRadius = 2.2
	markRadius = 4.2 // of a force seen end on
)

// long draws an outline, a wheel, a member, or the bars of a body.
func (t *setter) long(group []int) {
	s := &t.scene.Things[group[0]]
	t.of = group[0] + 1
	switch s.Kind {
	case scene.Outline:
		var pts []ink.Vec
		for _, q := range s.At {
			pts = append(pts, t.at(q))
		}
		t.area(ink.Fill, ink.Dark, 1.1, pts...)
		return
	case scene.Disc:
		t.disc(s)
		return
	case scene.Bar:
		var legs []segment
		for _, i := range group {
			legs = append(legs, segment{t.at(t.scene.Things[i].At[0]), t.at(t.scene.Things[i].At[1])})
		}
		t.bar(barWidth, ink.Fill, legs)
		return
	}
	a, b := t.at(s.At[0]), t.at(s.At[1])
	if b.Sub(a).Len() < t.m.Fine { // seen end on
		t.endOn(s, a, t.view.Toward())
		return
	}
	switch s.Kind {
	case scene.Strut:
		t.bar(strutWidth, ink.Paper, []segment{{a, b}})
	case scene.Spring:
		t.line(ink.Dark, 1, t.coil(a, b)...)
	case scene.Link:
		t.halo(linkWidth, a, b)
		t.line(ink.Dark, linkWidth, a, b)
	default:
		t.halo(cableWidth, a, b)
		t.line(ink.Dark, cableWidth, a, b)
	}
	if s.Open {
		t.d.Shapes[len(t.d.Shapes)-1].Dashed = true
	}
	t.beside(s, a, b)
}

// halo breaks what lies behind a member in space, away from its ends.
func (t *setter) halo(width float64, a, b ink.Vec) {
	short := t.pt(8)
	if u := b.Sub(a); !t.scene.Planar && u.Len() > 2.5*short {
		in := u.Unit().Scale(short)
		t.d.Shapes = append(t.d.Shapes, ink.Shape{Pts: []ink.Vec{a.Add(in), b.Sub(in)}, Line: ink.Paper, Width: t.pt(width) + 2*math.Max(t.pt(halo), t.m.Fine), Of: t.of})
	}
}

// bar draws thick lines with an outline: first all dark, then the inside, so that the
// legs of one body join without a seam.
func (t *setter) bar(width float64, inside ink.Tone, legs []segment) {
	outer := math.Max(t.pt(width), 2*t.m.Fine)
	inner := outer - 2*math.Max(t.pt(edge), math.Min(t.m.Fine, 1))
	for _, l := range legs {
		t.halo(width, l.a, l.b)
	}
	for _, l := range legs {
		t.shape(ink.Shape{Pts: []ink.Vec{l.a, l.b}, Line: ink.Dark, Width: outer})
		n := l.b.Sub(l.a).Unit().Across().Scale(outer / 2)
		t.solid(l.a.Add(n), l.b.Add(n))
		t.solid(l.a.Sub(n), l.b.Sub(n))
	}
	for _, l := range legs {
		t.shape(ink.Shape{Pts: []ink.Vec{l.a, l.b}, Line: inside, Width: inner})
	}
}

// coil is a spring: straight ends and teeth between them.
func (t *setter) coil(a, b ink.Vec) []ink.Vec {
	d := b.Sub(a)
	length, u := d.Len(), d.Unit()
	lead := math.Max(0.15*length, t.pt(6))
	if length < t.pt(30) {
		lead = 0.2 * length
	}
	height := math.Max(t.pt(4.5), t.m.Fine)
	teeth := 2 * t.count((length-2*lead)/(4*height))
	pts := []ink.Vec{a, a.Add(u.Scale(lead))}
	for i := range teeth {
		off := height
		if i%2 == 1 {
			off = -height
		}
		x := lead + (length-2*lead)*(float64(i)+0.5)/float64(teeth)
		pts = append(pts, a.Add(u.Scale(x)).Add(u.Across().Scale(off)))
	}
	return append(pts, b.Sub(u.Scale(lead)), b)
}

// disc draws a wheel or drum: a circle about its axis, an ellipse where that is seen at
// an angle.
func (t *setter) disc(s *scene.Thing) {
	const drum = 9 // points: of one whose size is not known
	c, radius := t.at(s.At[0]), s.Radius*t.scale
	e1, e2 := perpendicular(s.Along)
	if s.Radius == 0 {
		radius = t.pt(drum)
		t.circle(ink.Fill, ink.Dark, edge, c, radius)
	} else {
		t.area(ink.Fill, ink.Dark, edge, ink.Arc(c, t.dir(e1).Scale(radius), t.dir(e2).Scale(radius), 0, 2*math.Pi, 40)...)
	}
	t.want(s, spot{ink.Vec{X: c.X, Y: c.Y - radius}, ink.Vec{Y: -1}})
}

// perpendicular gives two unit vectors perpendicular to u and to each other, such that
// from the first to the second is counter-clockwise about it.
func perpendicular(u r3.Vec) (e1, e2 r3.Vec) {
	e1 = r3.Cross(u, r3.Vec{X: 0.36, Y: 0.48, Z: 0.8})
	if math.Abs(u.Z) > 1-endOn/10 {
		e1 = r3.Vec{X: 1}
	}
	e1 = r3.Unit(r3.Sub(e1, r3.Scale(r3.Dot(e1, u), u)))
	return e1, r3.Cross(u, e1)
}

// thing draws what lies on members and bodies.
func (t *setter) thing(s *scene.Thing) {
	o := t.at(s.At[0])
	switch s.Kind {
	case scene.Support:
		t.support(s, o)
	case scene.Pin:
		t.circle(ink.Paper, ink.Dark, 0.9, o, math.Max(t.pt(ringRadius), t.m.Fine))
	case scene.Dot:
		r := 1.2
		if s.Radius > 0 {
			r = 2.2
		}
		t.circle(max(s.Tone, ink.Dark), ink.None, 0, o, t.pt(r))
	case scene.Force:
		t.force(s, o)
	case scene.Couple:
		t.couple(s, o)
	case scene.Load:
		t.load(s)
	case scene.Water:
		t.water(s, o)
	case scene.Vector:
		to := t.at(s.At[1])
		if to.Sub(o).Len() < t.m.Fine {
			t.endOn(s, o, r3.Sub(s.At[1], s.At[0]))
			return
		}
		if s.Open {
			t.shape(ink.Shape{Pts: []ink.Vec{o, to}, Line: ink.Dark, Width: t.pt(arrowWidth), Dashed: true})
		} else {
			t.shaft(max(s.Tone, ink.Dark), o, to, false)
		}
		t.beside(s, o, to)
	case scene.Section:
		t.section(s)
	case scene.Centre:
		t.centreOf(s, o)
	case scene.Name:
		t.want(s, spot{o, ink.Vec{X: -1, Y: -1}})
	}
}

// section draws a dashed line across the members that a section goes through, a little
// beyond the first and the last.
func (t *setter) section(s *scene.Thing) {
	const beyond = 14
	var pts []ink.Vec
	for _, q := range s.At {
		pts = append(pts, t.at(q))
	}
	last := len(pts) - 1
	from, to := pts[0].Sub(pts[1]).Unit(), pts[last].Sub(pts[last-1]).Unit()
	pts[0], pts[last] = pts[0].Add(from.Scale(t.pt(beyond))), pts[last].Add(to.Scale(t.pt(beyond)))
	t.shape(ink.Shape{Pts: pts, Line: ink.Found, Width: t.pt(1), Dashed: true})
}

// centreOf draws what moments are taken about: a ring with a cross where it is a point or
// an axis seen end on, else a dashed line through the figure.
func (t *setter) centreOf(s *scene.Thing, o ink.Vec) {
	if v := t.dir(s.Along); v.Len() > endOn {
		half := v.Scale(0.7 * t.scene.Size * t.scale) // to either side
		t.shape(ink.Shape{Pts: []ink.Vec{o.Sub(half), o.Add(half)}, Line: ink.Found, Width: t.pt(0.8), Dashed: true})
		return
	}
	r := t.pt(5)
	t.circle(ink.None, ink.Found, 1, o, r)
	t.line(ink.Found, 1, ink.Vec{X: o.X - 1.6*r, Y: o.Y}, ink.Vec{X: o.X + 1.6*r, Y: o.Y})
	t.line(ink.Found, 1, ink.Vec{X: o.X, Y: o.Y - 1.6*r}, ink.Vec{X: o.X, Y: o.Y + 1.6*r})
}

package figure

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/drawing"
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
func (t *setter) long(s *scene.Thing) {
	switch s.Kind {
	case scene.Outline:
		corners := t.all(s.At)
		t.area(drawing.Fill, drawing.Dark, 1.1, corners...)
		t.hidden(s, corners)
		return
	case scene.Disc:
		t.disc(s)
		return
	case scene.Bar:
		t.bar(barWidth, drawing.Fill, t.all(s.At))
		return
	}
	a, b := t.at(s.At[0]), t.at(s.At[1])
	if b.Sub(a).Len() < t.m.Fine { // seen end on
		t.endOn(s, a, t.view.Toward())
		return
	}
	t.members = append(t.members, t.of-1)
	switch s.Kind {
	case scene.Strut:
		t.bar(strutWidth, drawing.Paper, []drawing.Vec{a, b})
	case scene.Spring:
		t.line(drawing.Dark, 1, t.coil(a, b)...)
	default:
		width := map[scene.Kind]float64{scene.Link: linkWidth, scene.Cable: cableWidth}[s.Kind]
		t.halo(width, a, b)
		t.line(drawing.Dark, width, a, b)
	}
	if s.Open {
		t.d.Shapes[len(t.d.Shapes)-1].Dashed = true
	}
	t.beside(s, a, b)
}

// halo breaks what lies behind a member in space, away from its ends.
func (t *setter) halo(width float64, a, b drawing.Vec) {
	short := t.pt(8)
	if u := b.Sub(a); !t.scene.Planar && u.Len() > 2.5*short {
		in := u.Unit().Scale(short)
		t.d.Shapes = append(t.d.Shapes, drawing.Shape{Pts: []drawing.Vec{a.Add(in), b.Sub(in)}, Line: drawing.Paper, Width: t.pt(width) + 2*math.Max(t.pt(halo), t.m.Fine), Of: t.of})
	}
}

// bar draws thick lines with an outline, by their ends: first all dark, then the inside, so
// that the bars of one body join without a seam.
func (t *setter) bar(width float64, inside drawing.Tone, ends []drawing.Vec) {
	outer := t.thick(width)
	inner := outer - 2*math.Max(t.pt(edge), math.Min(t.m.Fine, 1))
	for bar := range slices.Chunk(ends, 2) {
		t.halo(width, bar[0], bar[1])
	}
	for bar := range slices.Chunk(ends, 2) {
		t.shape(drawing.Shape{Pts: bar, Line: drawing.Dark, Width: outer})
		n := bar[1].Sub(bar[0]).Unit().Perp().Scale(outer / 2)
		t.solid(bar[0].Add(n), bar[1].Add(n))
		t.solid(bar[0].Sub(n), bar[1].Sub(n))
	}
	for bar := range slices.Chunk(slices.Clone(ends), 2) { // no two shapes share their places
		t.shape(drawing.Shape{Pts: bar, Line: inside, Width: inner})
	}
}

// thick is the width of a thick line: one that shows.
func (t *setter) thick(width float64) float64 { return math.Max(t.pt(width), 2*t.m.Fine) }

// coil is a spring: straight ends and teeth between them.
func (t *setter) coil(a, b drawing.Vec) []drawing.Vec {
	d := b.Sub(a)
	length, u := d.Len(), d.Unit()
	lead := math.Max(0.15*length, t.pt(6))
	if length < t.pt(30) {
		lead = 0.2 * length
	}
	height := math.Max(t.pt(4.5), t.m.Fine)
	teeth := 2 * t.count((length-2*lead)/(4*height))
	pts := []drawing.Vec{a, a.Add(u.Scale(lead))}
	for i := range teeth {
		off := height
		if i%2 == 1 {
			off = -height
		}
		x := lead + (length-2*lead)*(float64(i)+0.5)/float64(teeth)
		pts = append(pts, a.Add(u.Scale(x)).Add(u.Perp().Scale(off)))
	}
	return append(pts, b.Sub(u.Scale(lead)), b)
}

// disc draws a wheel or drum: a circle about its axis, an ellipse where that is seen at
// an angle.
func (t *setter) disc(s *scene.Thing) {
	const drum = 9 // points: of one whose size is not known
	c, radius := t.at(s.At[0]), s.Radius*t.scale
	if s.Radius == 0 {
		radius = t.pt(drum)
		t.circle(drawing.Fill, drawing.Dark, edge, c, radius)
	} else {
		t.area(drawing.Fill, drawing.Dark, edge, t.view.rim(s, t.scale, 40)...)
	}
	t.want(s, spot{drawing.Vec{X: c.X, Y: c.Y - radius}, drawing.Vec{Y: -1}})
}

// rim gives the circle of a disc, at so many units a metre.
func (v View) rim(s *scene.Thing, scale, pieces float64) []drawing.Vec {
	e1, e2 := perpendicular(s.Along)
	return drawing.Arc(v.project(s.At[0]).Scale(scale), v.project(e1).Scale(s.Radius*scale), v.project(e2).Scale(s.Radius*scale), 0, 2*math.Pi, pieces)
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
		t.circle(drawing.Paper, drawing.Dark, 0.9, o, math.Max(t.pt(ringRadius), t.m.Fine))
	case scene.Dot:
		r := 1.2
		if s.Radius > 0 {
			r = 2.2
		}
		t.circle(max(s.Tone, drawing.Dark), drawing.None, 0, o, t.pt(r))
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
			t.dashed(drawing.Dark, arrowWidth, o, to)
		} else {
			t.shaft(max(s.Tone, drawing.Dark), o, to, false)
		}
		t.beside(s, o, to)
	case scene.Section:
		t.section(t.all(s.At))
	case scene.Centre:
		t.centreOf(s, o)
	case scene.Name:
		t.want(s, spot{o, drawing.Vec{X: -1, Y: -1}})
	}
}

// section draws a dashed line across the places where a section cuts members, a little beyond
// the first and the last.
func (t *setter) section(cut []drawing.Vec) {
	const beyond = 14
	last := len(cut) - 1
	from, to := cut[0].Sub(cut[1]).Unit(), cut[last].Sub(cut[last-1]).Unit()
	cut[0], cut[last] = cut[0].Add(from.Scale(t.pt(beyond))), cut[last].Add(to.Scale(t.pt(beyond)))
	t.dashed(drawing.Found, 1, cut...)
}

// centreOf draws what moments are taken about: a ring with a cross where it is a point or
// an axis seen end on, else a dashed line through the figure.
func (t *setter) centreOf(s *scene.Thing, o drawing.Vec) {
	if v := t.dir(s.Along); v.Len() > endOn {
		half := v.Scale(0.7 * t.scene.Size * t.scale) // to either side
		t.dashed(drawing.Found, 0.8, o.Sub(half), o.Add(half))
		return
	}
	r := t.pt(5)
	t.circle(drawing.None, drawing.Found, 1, o, r)
	t.line(drawing.Found, 1, drawing.Vec{X: o.X - 1.6*r, Y: o.Y}, drawing.Vec{X: o.X + 1.6*r, Y: o.Y})
	t.line(drawing.Found, 1, drawing.Vec{X: o.X, Y: o.Y - 1.6*r}, drawing.Vec{X: o.X, Y: o.Y + 1.6*r})
}

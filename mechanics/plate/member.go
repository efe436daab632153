package plate

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/figure"
	"trivet/mechanics/ink"
	"trivet/mechanics/problem"
	"trivet/units"
)

// Widths on paper, in points.
const (
	barWidth   = 6.5
	strutWidth = 5
	edge       = 0.8 // the outline of bars and bodies
	linkWidth  = 2.2
	cableWidth = 0.9
	pinRadius  = 2.2
	drumRadius = 9
)

// bar draws thick lines with an outline: first all dark, then the inside, so
// that the legs of one body join without a seam.
func (s *sketch) bar(width float64, inside ink.Tone, legs [][2]ink.Vec) {
	for _, l := range legs {
		s.d.Line(ink.Dark, width, l[0], l[1])
		s.block(true, l[0], l[1])
		n := l[1].Sub(l[0]).Unit().Across().Scale(width / 2)
		s.block(false, l[0].Add(n), l[1].Add(n))
		s.block(false, l[0].Sub(n), l[1].Sub(n))
	}
	for _, l := range legs {
		s.d.Line(inside, width-2*edge, l[0], l[1])
	}
}

func (s *sketch) bodies() {
	for i := range s.p.Bodies {
		s.body(i)
	}
}

// body draws a rigid body: a block on its face, a plate by its outline, else
// bars through its points.
func (s *sketch) body(i int) {
	b := &s.p.Bodies[i]
	if b.Particle {
		return
	}
	if corners := s.slab(i); corners != nil {
		s.outline(corners)
		return
	}
	if corners := s.standing(i); corners != nil {
		s.outline(corners)
		return
	}
	if corners := s.plateOf(i); corners != nil {
		s.outline(corners)
		return
	}
	var legs [][2]ink.Vec
	for _, l := range figure.Legs(s.p, i) {
		legs = append(legs, [2]ink.Vec{s.at(l[0]), s.at(l[1])})
	}
	s.bar(barWidth, ink.Fill, legs)
}

func (s *sketch) outline(corners []r3.Vec) {
	var pts []ink.Vec
	for _, q := range corners {
		pts = append(pts, s.at(q))
	}
	s.area(ink.Fill, ink.Dark, 1.1, pts...)
}

// members draws the lines of action that are members: cables, struts, links and
// springs.
func (s *sketch) members() {
	for i := range s.p.Lines {
		l := &s.p.Lines[i]
		if !l.OK || !l.Kind.Info().Path {
			continue
		}
		for k, leg := range l.Legs {
			a, b, ok := s.leg(leg)
			if !ok || b.Sub(a).Len() < 1 {
				continue
			}
			s.member(l.Kind, a, b)
			if k == 0 {
				s.wants = append(s.wants, beside(a, b, Symbol(l.Name), memberFirst))
			}
		}
	}
}

// drums draws the drum of each belt, with the friction and the angle of contact.
func (s *sketch) drums() {
	for b := range s.p.Belts() {
		before, behind := &s.p.Lines[b.Lines[0]], &s.p.Lines[b.Lines[1]]
		first, last := before.Path[1], behind.Path[0]
		if !s.placed(first) || !s.placed(last) {
			continue
		}
		u, v := s.dir(before.Legs[0].U), s.dir(behind.Legs[0].U)
		at, radius := drum(s.point(first), s.point(last), u, v)
		if radius > 0 {
			s.area(ink.Fill, ink.Dark, edge, circle(at, radius)...)
		}
		away := u.Sub(v) // from the two ends to the drum
		if away.Len() < endOn {
			away = ink.Vec{Y: -1}
		}
		data := append(with(italic("μ"), " = "+units.Compact(b.Friction)+", "), with(italic("β"), " = "+units.Compact(s.p.Units.Angle.In(b.Wrap))+" "+s.p.Units.Angle.Symbol)...)
		w := near(at.Add(away.Unit().Scale(radius)), away, data, ink.Dark, memberFirst)
		w.size = textSize - 1
		s.wants = append(s.wants, w)
	}
}

// touching is how far a part of a belt may be off a right angle with the radius where it
// leaves the drum, or the two radii apart, before there is no circle to draw.
const touching = 0.02

// drum is the circle that a belt touches where its parts along u and v leave it, at p and
// q; where they meet it is drawn in a size of its own, and where there is none the radius is 0.
func drum(p, q, u, v ink.Vec) (centre ink.Vec, radius float64) {
	d := q.Sub(p)
	if d.Len() < 1 {
		return p, drumRadius
	}
	centre = p.Add(d.Scale(0.5))
	m, n := u.Across(), v.Across()
	if cross := m.X*n.Y - m.Y*n.X; math.Abs(cross) > touching { // p + t m = q + w n
		centre = p.Add(m.Scale((d.X*n.Y - d.Y*n.X) / cross))
	}
	one, two := centre.Sub(p), centre.Sub(q)
	square := func(a, b ink.Vec) bool { return math.Abs(a.X*b.X+a.Y*b.Y) <= touching*a.Len()*b.Len() }
	if math.Abs(one.Len()-two.Len()) > touching*one.Len() || !square(one, u) || !square(two, v) {
		return centre, 0
	}
	return centre, one.Len()
}

func (s *sketch) leg(leg problem.Leg) (a, b ink.Vec, ok bool) {
	if !s.placed(leg.From) {
		return a, b, false
	}
	a = s.point(leg.From)
	if leg.To >= 0 {
		return a, s.point(leg.To), s.placed(leg.To)
	}
	return a, a.Add(s.dir(leg.U).Scale(45)), true
}

func (s *sketch) member(kind problem.Kind, a, b ink.Vec) {
	switch kind {
	case problem.Strut:
		s.bar(strutWidth, ink.Paper, [][2]ink.Vec{{a, b}})
	case problem.Link:
		s.line(ink.Dark, linkWidth, a, b)
		s.block(true, a, b)
	case problem.SpringKind:
		s.line(ink.Dark, 1, coil(a, b)...)
		s.block(true, a, b)
	default:
		s.line(ink.Dark, cableWidth, a, b)
		s.block(true, a, b)
	}
}

// coil is a spring: straight ends and teeth between them.
func coil(a, b ink.Vec) []ink.Vec {
	d := b.Sub(a)
	length := d.Len()
	u := d.Unit()
	lead := math.Max(0.15*length, 6)
	if length < 30 {
		lead = 0.2 * length
	}
	const height = 4.5
	teeth := max(4, 2*int((length-2*lead)/9))
	pts := []ink.Vec{a, a.Add(u.Scale(lead))}
	for i := range teeth {
		off := height
		if i%2 == 1 {
			off = -height
		}
		t := lead + (length-2*lead)*(float64(i)+0.5)/float64(teeth)
		pts = append(pts, a.Add(u.Scale(t)).Add(u.Across().Scale(off)))
	}
	return append(pts, b.Sub(u.Scale(lead)), b)
}

// pins draws a ring where bodies or links are pinned together, and a dot for a
// particle.
func (s *sketch) pins() {
	linked := map[int]bool{}
	for _, l := range s.p.Lines {
		if l.OK && (l.Kind == problem.Link || l.Kind == problem.Strut) {
			for _, i := range l.Path {
				linked[i] = true
			}
		}
	}
	for _, j := range s.p.Joints {
		linked[j.Point] = linked[j.Point] || j.OK && j.First >= 0 && j.Second >= 0 && !j.HasFace
	}
	for i, q := range s.p.Points {
		switch {
		case !q.OK:
		case linked[i]:
			s.area(ink.Paper, ink.Dark, 0.9, circle(s.point(i), pinRadius)...)
		case q.Body >= 0 && s.p.Bodies[q.Body].Particle:
			s.area(ink.Dark, ink.None, 0, circle(s.point(i), 2)...)
		case q.Body >= 0:
			s.area(ink.Dark, ink.None, 0, circle(s.point(i), 1.1)...)
		}
	}
}

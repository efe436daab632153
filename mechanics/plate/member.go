package plate

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/figure"
	"trivet/mechanics/ink"
	"trivet/mechanics/problem"
)

// Widths on paper, in points.
const (
	barWidth   = 6.5
	strutWidth = 5
	edge       = 0.8 // the outline of bars and bodies
	linkWidth  = 2.2
	cableWidth = 0.9
	pinRadius  = 2.2
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
	if corners := s.block4(i); corners != nil {
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

// block4 gives the corners of a body that rests on a face: a rectangle on that
// face, as high as its points reach and centred on its centre of gravity.
func (s *sketch) block4(i int) []r3.Vec {
	if !s.p.Planar {
		return nil
	}
	b := &s.p.Bodies[i]
	for _, j := range s.p.Joints {
		if !j.OK || !j.HasFace || j.First != i && j.Second != i {
			continue
		}
		a, c := s.p.Points[j.Face[0]].At, s.p.Points[j.Face[1]].At
		if j.First != i && !slices.Contains(b.Points, j.Face[0]) {
			continue
		}
		along, up := r3.Unit(r3.Sub(c, a)), j.Normal
		if j.First != i {
			up = r3.Scale(-1, up)
		}
		low, high, top := 0.0, r3.Dot(r3.Sub(c, a), along), 0.0
		for _, k := range b.Points {
			q := r3.Sub(s.p.Points[k].At, a)
			low, high, top = math.Min(low, r3.Dot(q, along)), math.Max(high, r3.Dot(q, along)), math.Max(top, r3.Dot(q, up))
		}
		if b.Weight > 0 {
			top = math.Max(top, 2*r3.Dot(r3.Sub(b.Centre, a), up))
		}
		if top <= 0 {
			return nil
		}
		at := func(x, y float64) r3.Vec { return r3.Add(a, r3.Add(r3.Scale(x, along), r3.Scale(y, up))) }
		return []r3.Vec{at(low, 0), at(high, 0), at(high, top), at(low, top)}
	}
	return nil
}

// offLine is the distance of q from the line through a and b.
func offLine(q, a, b r3.Vec) float64 {
	return r3.Norm(r3.Cross(r3.Sub(q, a), unit(r3.Sub(b, a))))
}

// slab gives the corners of a body in the plane whose points lie on a line and
// whose centre of gravity lies well off it: a block that reaches as far on the
// other side of its centre.
func (s *sketch) slab(i int) []r3.Vec {
	b := &s.p.Bodies[i]
	if !s.p.Planar || b.Weight == 0 {
		return nil
	}
	legs := figure.Legs(s.p, i)
	if len(legs) == 0 {
		return nil
	}
	along := unit(r3.Sub(legs[0][1], legs[0][0]))
	low, high := 0.0, 0.0
	for _, k := range b.Points {
		q := r3.Sub(s.p.Points[k].At, legs[0][0])
		if s.placed(k) && r3.Norm(r3.Cross(q, along)) > flat*s.size {
			return nil
		}
		low, high = math.Min(low, r3.Dot(q, along)), math.Max(high, r3.Dot(q, along))
	}
	off := r3.Sub(b.Centre, legs[0][0])
	off = r3.Sub(off, r3.Scale(r3.Dot(off, along), along))
	const well = 0.15 // of its length: less is a bar whose weight is not drawn on it
	if r3.Norm(off) < well*(high-low) {
		return nil
	}
	at := func(x, k float64) r3.Vec {
		return r3.Add(legs[0][0], r3.Add(r3.Scale(x, along), r3.Scale(k, off)))
	}
	return []r3.Vec{at(low, 0), at(high, 0), at(high, 2), at(low, 2)}
}

// plateOf gives the outline of a body in space that is a plate: its points lie
// in one plane and its centre of gravity off the bars between them, or four of
// them are corners.
func (s *sketch) plateOf(i int) []r3.Vec {
	b := &s.p.Bodies[i]
	var pts []r3.Vec
	for _, k := range b.Points {
		if s.placed(k) {
			pts = append(pts, s.p.Points[k].At)
		}
	}
	corners := hull(pts)
	if len(corners) < 3 || b.Weight == 0 && (s.p.Planar || len(corners) < 4) {
		return nil // a bent bar, as far as anyone can tell
	}
	if b.Weight > 0 {
		pts = slices.DeleteFunc(pts, func(q r3.Vec) bool { return r3.Norm(r3.Sub(q, b.Centre)) <= flat*s.size })
		for _, l := range figure.Tree(pts) {
			if offLine(b.Centre, l[0], l[1]) <= flat*s.size {
				return nil
			}
		}
	}
	return corners
}

// flat is how far from a plane or a line a point may lie and count as on it, as
// a share of the problem's size: less than a picture shows.
const flat = 1e-3

// hull gives the corners of the convex hull of points of one plane, in order;
// nothing where they lie on a line or not in a plane.
func hull(pts []r3.Vec) []r3.Vec {
	if len(pts) < 3 {
		return nil
	}
	o := pts[0]
	size := 0.0
	var along, normal r3.Vec
	for _, q := range pts {
		if n := r3.Norm(r3.Sub(q, o)); n > size {
			size, along = n, r3.Scale(1/n, r3.Sub(q, o))
		}
	}
	for _, q := range pts {
		if c := r3.Cross(along, r3.Sub(q, o)); r3.Norm(c) > r3.Norm(normal) {
			normal = c
		}
	}
	if r3.Norm(normal) <= flat*size {
		return nil
	}
	normal = r3.Unit(normal)
	across := r3.Cross(normal, along)
	type flatPoint struct {
		x, y float64
		q    r3.Vec
	}
	var all []flatPoint
	for _, q := range pts {
		r := r3.Sub(q, o)
		if math.Abs(r3.Dot(r, normal)) > flat*size {
			return nil
		}
		all = append(all, flatPoint{r3.Dot(r, along), r3.Dot(r, across), q})
	}
	// Andrew's monotone chain.
	slices.SortFunc(all, func(a, b flatPoint) int {
		if a.x < b.x || a.x == b.x && a.y < b.y {
			return -1
		}
		return 1
	})
	half := func(pts []flatPoint) (out []flatPoint) {
		for _, q := range pts {
			for len(out) > 1 {
				a, b := out[len(out)-2], out[len(out)-1]
				if (b.x-a.x)*(q.y-a.y)-(b.y-a.y)*(q.x-a.x) > flat*flat*size*size {
					break
				}
				out = out[:len(out)-1]
			}
			out = append(out, q)
		}
		return out[:len(out)-1]
	}
	lower := half(all)
	slices.Reverse(all)
	var corners []r3.Vec
	for _, c := range append(lower, half(all)...) {
		corners = append(corners, c.q)
	}
	return corners
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
				s.wants = append(s.wants, beside(a, b, symbol(l.Name), memberFirst))
			}
		}
	}
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

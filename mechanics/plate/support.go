package plate

import (
	"math"

	"trivet/mechanics/figure"
	"trivet/mechanics/ink"
	"trivet/mechanics/problem"
	"trivet/units"
)

// endOn is the share of a direction that must show for it to be drawn along
// the paper rather than as a mark that points at the reader.
const endOn = 0.2

// frame is a place on paper with the way to the ground and the way along it.
type frame struct{ o, down, along ink.Vec }

func newFrame(o, down ink.Vec) frame { return frame{o, down.Unit(), down.Unit().Across().Scale(-1)} }

// to gives the place so far along the ground and so far down to it.
func (f frame) to(along, down float64) ink.Vec {
	return f.o.Add(f.along.Scale(along)).Add(f.down.Scale(down))
}

// hatch draws ground: a line at a depth, and strokes behind it.
func (s *sketch) hatch(f frame, depth, half float64) {
	s.line(ink.Dark, 1, f.to(-half, depth), f.to(half, depth))
	const step, long = 3.2, 4.5
	n := int(2*half/step) + 1
	first := -float64(n-1) / 2 * step
	for i := range n {
		x := first + float64(i)*step
		s.d.Line(ink.Faint, 0.6, f.to(x+1.6, depth), f.to(x-1.6, depth+long))
	}
	s.block(false, f.to(-half, depth+long), f.to(half, depth+long))
}

// anchors hatches behind the fixed points that members end at.
func (s *sketch) anchors() {
	toward := map[int]ink.Vec{}
	for _, l := range s.p.Lines {
		if !l.OK || !l.Kind.Info().Path {
			continue
		}
		for _, leg := range l.Legs {
			if leg.To < 0 {
				continue
			}
			a, b, ok := s.leg(leg)
			if !ok {
				continue
			}
			if s.p.Points[leg.From].Body == problem.Ground {
				toward[leg.From] = toward[leg.From].Add(b.Sub(a).Unit())
			}
			if s.p.Points[leg.To].Body == problem.Ground {
				toward[leg.To] = toward[leg.To].Add(a.Sub(b).Unit())
			}
		}
	}
	for i := range s.p.Points {
		way, ok := toward[i]
		if !ok {
			continue
		}
		down := ink.Vec{Y: math.Copysign(1, -way.Y)}
		if math.Abs(way.X) > math.Abs(way.Y) {
			down = ink.Vec{X: math.Copysign(1, -way.X)}
		}
		s.hatch(newFrame(s.point(i), down), 0, 8)
	}
}

// supports draws what holds each body, and the surfaces that particles touch.
func (s *sketch) supports() {
	for i := range s.p.Joints {
		if j := &s.p.Joints[i]; j.OK {
			s.support(j)
		}
	}
	for i := range s.p.Lines {
		l := &s.p.Lines[i]
		if !l.OK || l.Kind != problem.Contact || l.Between() || len(l.Legs) == 0 || !s.placed(l.Legs[0].From) {
			continue
		}
		if n := s.dir(l.Legs[0].U); n.Len() > endOn {
			s.hatch(newFrame(s.point(l.Legs[0].From), n.Scale(-1)), 2.4, 20)
		}
	}
}

func (s *sketch) support(j *problem.Joint) {
	o := s.point(j.Point)
	ground := j.Second == problem.Ground
	kind := j.Kind.String()
	switch kind {
	case "roller", "rocker", "smooth-surface", "rough-surface":
		n := s.dir(j.Normal)
		switch {
		case n.Len() < endOn:
			s.area(ink.Paper, ink.Dark, 0.9, circle(o, 4.5)...)
			s.d.Area(ink.Dark, ink.None, 0, circle(o, 1.3)...)
		case ground || kind == "roller" || kind == "rocker":
			s.pressed(j, newFrame(o, n.Scale(-1)), ground)
		}
		if j.HasFriction && n.Len() >= endOn {
			mu := with([]ink.Run{{Text: "μ", Style: ink.Italic}}, " = "+units.Compact(j.Friction))
			w := near(newFrame(o, n.Scale(-1)).to(14, 6), n.Scale(-1), mu, ink.Dark, memberFirst)
			w.size = textSize - 1
			s.wants = append(s.wants, w)
		}
	case "slider", "collar":
		s.guided(j, o, kind == "collar")
	case "fixed":
		if ground {
			s.hatch(newFrame(o, s.away(j)), 0, 15)
		} else {
			s.area(ink.Dark, ink.None, 0, square(o, 3)...)
		}
	case "ball-and-socket":
		f := newFrame(o, s.free(j, o))
		if ground {
			a := math.Atan2(f.down.Y, f.down.X)
			s.line(ink.Dark, 1.4, ring(o, 6, a-1.5, a+1.5)...)
			s.hatch(f, 7.5, 9)
		}
		s.area(ink.Paper, ink.Dark, 1, circle(o, 4)...)
	case "pin":
		if ground && s.p.Planar {
			f := newFrame(o, s.free(j, o))
			s.area(ink.Paper, ink.Dark, 1, o, f.to(7, 12), f.to(-7, 12))
			s.hatch(f, 12, 12)
			s.area(ink.Paper, ink.Dark, 0.9, circle(o, pinRadius)...)
			return
		}
		s.bearing(j, o, kind)
	default:
		s.bearing(j, o, kind)
	}
}

// pressed draws what can only push, with the ground below it.
func (s *sketch) pressed(j *problem.Joint, f frame, ground bool) {
	switch j.Kind.String() {
	case "roller":
		s.area(ink.Paper, ink.Dark, 1, f.o, f.to(6.5, 10), f.to(-6.5, 10))
		for _, x := range []float64{-4, 4} {
			s.area(ink.Paper, ink.Dark, 0.9, circle(f.to(x, 12.4), 2.3)...)
		}
		if ground {
			s.hatch(f, 14.9, 12)
		}
		s.area(ink.Paper, ink.Dark, 0.9, circle(f.o, pinRadius)...)
	case "rocker":
		pts := []ink.Vec{f.o}
		for i := range 13 {
			x := -1 + float64(i)/6
			pts = append(pts, f.to(9*x, 14-4*x*x))
		}
		s.area(ink.Paper, ink.Dark, 1, pts...)
		if ground {
			s.hatch(f, 14.5, 12)
		}
		s.area(ink.Paper, ink.Dark, 0.9, circle(f.o, pinRadius)...)
	case "rough-surface":
		half := s.surface(j)
		var teeth []ink.Vec
		for i := range 2*int(half) + 1 {
			y := 0.6
			if i%2 == 1 {
				y = 2
			}
			teeth = append(teeth, f.to(-half+float64(i), s.under0(j)+y))
		}
		s.d.Line(ink.Dark, 0.7, teeth...)
		s.hatch(f, s.under0(j)+2, half)
	default:
		s.hatch(f, s.under0(j)+0.5, s.surface(j))
	}
}

// under0 is how far below the point a surface lies: half a bar, or nothing under
// a face.
func (s *sketch) under0(j *problem.Joint) float64 {
	if j.HasFace {
		return 0
	}
	for _, l := range figure.Legs(s.p, j.First) { // the end of a bar that stands on the surface touches it
		a, b := s.at(l[0]), s.at(l[1])
		if n := s.dir(j.Normal).Unit(); math.Abs(b.Sub(a).Unit().Dot(n)) < 0.3 {
			return barWidth / 2
		}
	}
	return 1
}

// surface is half the length of a surface: a little more than the face on it.
func (s *sketch) surface(j *problem.Joint) float64 {
	if !j.HasFace {
		return 18
	}
	return s.point(j.Face[0]).Sub(s.point(j.Face[1])).Len()/2 + 12
}

// guided draws the rod of a slider, and the sleeve of a collar on it.
func (s *sketch) guided(j *problem.Joint, o ink.Vec, sleeve bool) {
	u := s.dir(j.Axis)
	if u.Len() < endOn {
		s.area(ink.Paper, ink.Dark, 0.9, circle(o, 4.5)...)
		return
	}
	f := newFrame(o, u.Unit().Across())
	for _, y := range []float64{-1.6, 1.6} {
		s.line(ink.Dark, 0.8, f.to(-22, y), f.to(22, y))
	}
	if sleeve {
		s.area(ink.Fill, ink.Dark, 1, f.to(-7, -4.5), f.to(7, -4.5), f.to(7, 4.5), f.to(-7, 4.5))
		return
	}
	s.area(ink.Paper, ink.Dark, 0.9, circle(o, pinRadius+0.8)...)
}

// bearing draws what holds an axle: a pair of hatched walls along the axis, or
// a ring where the axis points at the reader; a collar shows that it takes
// thrust.
func (s *sketch) bearing(j *problem.Joint, o ink.Vec, kind string) {
	if j.Second != problem.Ground {
		s.area(ink.Paper, ink.Dark, 0.9, circle(o, pinRadius+0.6)...)
		return
	}
	u := s.dir(j.Axis)
	if u.Len() < endOn {
		s.area(ink.Paper, ink.Dark, 1.2, circle(o, 6)...)
		s.area(ink.Fill, ink.Dark, 0.8, circle(o, 3)...)
		return
	}
	for _, side := range []float64{1, -1} {
		f := newFrame(o, u.Unit().Across().Scale(side))
		s.hatch(f, barWidth/2+1, 7)
		if kind == "thrust-bearing" || kind == "hinge" {
			s.line(ink.Dark, 1.6, f.to(-8.5, 0), f.to(-8.5, barWidth/2+3))
			if kind == "hinge" {
				s.line(ink.Dark, 1.6, f.to(8.5, 0), f.to(8.5, barWidth/2+3))
			}
		}
	}
}

func square(c ink.Vec, h float64) []ink.Vec {
	return []ink.Vec{{X: c.X - h, Y: c.Y - h}, {X: c.X + h, Y: c.Y - h}, {X: c.X + h, Y: c.Y + h}, {X: c.X - h, Y: c.Y + h}}
}

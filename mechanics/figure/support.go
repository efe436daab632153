package figure

import (
	"math"

	"trivet/mechanics/ink"
	"trivet/mechanics/scene"
)

// frame is a place with the way to the ground and the way along it.
type frame struct{ o, down, along ink.Vec }

func newFrame(o, down ink.Vec) frame {
	return frame{o, down.Unit(), down.Unit().Across().Scale(-1)}
}

// to gives the place so far along the ground and so far down to it.
func (f frame) to(along, down float64) ink.Vec {
	return f.o.Add(f.along.Scale(along)).Add(f.down.Scale(down))
}

// support draws a symbol at a place.
func (t *setter) support(s *scene.Thing, o ink.Vec) {
	v, symbol := t.dir(s.Along), s.Symbol
	switch {
	case v.Len() < endOn && symbol.Ground == 0 && symbol.Strokes == nil:
		return // a wall seen from the front
	case v.Len() < endOn && symbol.Half > 0 || v.Len() < endOn && symbol.Axis:
		symbol, v = scene.EndOn, ink.Vec{Y: -1}
	case v.Len() < endOn:
		v = ink.Vec{Y: -1}
	}
	f := newFrame(o, v.Scale(-1))
	if symbol.Axis {
		f = newFrame(o, v.Across())
	}
	for _, stroke := range symbol.Strokes {
		pts := make([]ink.Vec, len(stroke.Pts))
		for i, q := range stroke.Pts {
			pts[i] = f.to(t.pt(q.X), t.pt(q.Y))
		}
		switch {
		case stroke.Closed:
			t.area(ink.Paper, ink.Dark, 0.9, pts...)
		case stroke.Heavy:
			t.line(ink.Dark, 1.6, pts...)
		default:
			t.line(ink.Dark, 0.9, pts...)
		}
	}
	if symbol.Half > 0 && !s.Hanging {
		t.ground(s, symbol, f)
	}
	if symbol.Half > 0 && symbol.Axis && !s.Hanging {
		t.ground(s, symbol, newFrame(o, f.down.Scale(-1)))
	}
	t.want(s, spot{f.to(t.pt(symbol.Half), t.pt(symbol.Ground+4)), f.down})
}

// ground draws a surface, hatched behind.
func (t *setter) ground(s *scene.Thing, symbol *scene.Symbol, f frame) {
	left, right, depth := -t.pt(symbol.Half), t.pt(symbol.Half), t.pt(symbol.Ground)
	if len(s.At) == 3 { // under a face: a little more than that
		depth = 0
		for _, q := range s.At[1:] {
			d := t.at(q).Sub(f.o)
			x := d.X*f.along.X + d.Y*f.along.Y
			left, right = math.Min(left, x-t.pt(12)), math.Max(right, x+t.pt(12))
		}
	}
	most := t.pt(maxGround)
	left, right = math.Max(left, -most), math.Min(right, most)
	if symbol.Rough {
		step := math.Max(t.pt(1.6), t.m.Fine)
		pts := []ink.Vec{f.to(left, depth)}
		for x, up := left+step, true; x < right; x, up = x+step, !up {
			if up {
				pts = append(pts, f.to(x, depth-step))
			} else {
				pts = append(pts, f.to(x, depth))
			}
		}
		t.line(ink.Dark, 0.7, pts...)
	}
	t.line(ink.Dark, 1, f.to(left, depth), f.to(right, depth))
	step, long := math.Max(t.pt(3.2), 1.6*t.m.Fine), math.Max(t.pt(4.5), t.m.Fine)
	for x := left + step/2; x <= right; x += step {
		t.d.Shapes = append(t.d.Shapes, ink.Shape{Pts: []ink.Vec{f.to(x+step/2, depth), f.to(x-step/2, depth+long)}, Line: ink.Faint, Width: t.pt(0.6), Of: t.of})
	}
	t.solid(f.to(left, depth+long), f.to(right, depth+long))
	if s.Slope != nil {
		t.slope(s, f, left, right, depth)
	}
}

// slope draws the angle between a surface and the horizontal, at its lower end.
func (t *setter) slope(s *scene.Thing, f frame, left, right, depth float64) {
	low, u := f.to(right, depth), f.along.Scale(-1)
	if other := f.to(left, depth); other.Y > low.Y {
		low, u = other, f.along
	}
	level := ink.Vec{X: math.Copysign(1, u.X)}
	r := t.pt(22)
	t.hair(low, low.Add(level.Scale(1.3*r)))
	from, to := math.Atan2(level.Y, level.X), math.Atan2(u.Y, u.X)
	if to-from > math.Pi {
		from += 2 * math.Pi
	} else if from-to > math.Pi {
		to += 2 * math.Pi
	}
	t.line(ink.Faint, 0.5, t.ring(low, r, from, to)...)
	sin, cos := math.Sincos((from + to) / 2)
	way := ink.Vec{X: cos, Y: sin}
	t.wants = append(t.wants, want{spots: []spot{{low.Add(way.Scale(r)), way}}, full: s.Slope, small: true, tone: ink.Dark, rank: scene.OfSize, of: t.of})
}

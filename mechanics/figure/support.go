package figure

import (
	"math"

	"trivet/mechanics/drawing"
	"trivet/mechanics/scene"
)

// frame is a place with the way to the ground and the way along it.
type frame struct{ o, down, along drawing.Vec }

func newFrame(o, down drawing.Vec) frame {
	return frame{o, down.Unit(), down.Unit().Perp().Scale(-1)}
}

// to gives the place so far along the ground and so far down to it.
func (f frame) to(along, down float64) drawing.Vec {
	return f.o.Add(f.along.Scale(along)).Add(f.down.Scale(down))
}

// support draws a symbol at a place.
func (t *setter) support(s *scene.Thing, o drawing.Vec) {
	v, symbol := t.dir(s.Along), s.Symbol
	switch {
	case v.Len() < endOn && symbol.Ground == 0 && symbol.Strokes == nil:
		return // a wall seen from the front
	case v.Len() < endOn && symbol.Half > 0 || v.Len() < endOn && symbol.Axis:
		symbol, v = scene.EndOn, drawing.Vec{Y: -1}
	case v.Len() < endOn:
		v = drawing.Vec{Y: -1}
	}
	if s.Under && symbol != scene.EndOn {
		o = o.Sub(v.Unit().Scale(t.thick(barWidth) / 2))
	}
	f := newFrame(o, v.Scale(-1))
	if symbol.Axis {
		f = newFrame(o, v.Perp())
	}
	for _, stroke := range symbol.Strokes {
		pts := make([]drawing.Vec, len(stroke.Pts))
		for i, q := range stroke.Pts {
			pts[i] = f.to(t.pt(q.X), t.pt(q.Y))
		}
		switch {
		case stroke.Closed:
			t.area(drawing.Paper, drawing.Dark, 0.9, pts...)
		case stroke.Heavy:
			t.line(drawing.Dark, 1.6, pts...)
		default:
			t.line(drawing.Dark, 0.9, pts...)
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
	limit := t.pt(maxGround)
	left, right = math.Max(left, -limit), math.Min(right, limit)
	if symbol.Rough {
		step := math.Max(t.pt(1.6), t.m.Fine)
		pts := []drawing.Vec{f.to(left, depth)}
		for x, up := left+step, true; x < right; x, up = x+step, !up {
			if up {
				pts = append(pts, f.to(x, depth-step))
			} else {
				pts = append(pts, f.to(x, depth))
			}
		}
		t.line(drawing.Dark, 0.7, pts...)
	}
	t.line(drawing.Dark, 1, f.to(left, depth), f.to(right, depth))
	step, long := math.Max(t.pt(3.2), 1.6*t.m.Fine), math.Max(t.pt(4.5), t.m.Fine)
	ends := make([]drawing.Vec, 0, 2*int(math.Max((right-left)/step+1, 0))) // of all strokes, in one piece of memory
	for x := left + step/2; x <= right; x += step {
		n := len(ends)
		ends = append(ends, f.to(x+step/2, depth), f.to(x-step/2, depth+long))
		t.d.Shapes = append(t.d.Shapes, drawing.Shape{Pts: ends[n:len(ends):len(ends)], Line: drawing.Faint, Width: t.pt(0.6), Of: t.of})
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
	level := drawing.Vec{X: math.Copysign(1, u.X)}
	r := t.pt(22)
	t.hair(low, low.Add(level.Scale(1.3*r)))
	from, to := math.Atan2(level.Y, level.X), math.Atan2(u.Y, u.X)
	to = from + math.Remainder(to-from, 2*math.Pi)
	t.line(drawing.Faint, 0.5, t.ring(low, r, from, to)...)
	sin, cos := math.Sincos((from + to) / 2)
	way := drawing.Vec{X: cos, Y: sin}
	t.wants = append(t.wants, want{spots: []spot{{low.Add(way.Scale(r)), way}}, forms: worded(s.Slope), small: true, tone: drawing.Dark, rank: scene.OfSize, of: t.of})
}

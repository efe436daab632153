package drawing

import "math"

// Box is an upright rectangle.
type Box struct{ Low, High Vec }

// Around is the box round places; at the origin where there are none.
func Around(places ...Vec) (b Box) {
	for i, q := range places {
		if i == 0 {
			b = Box{q, q}
		}
		b = b.With(q)
	}
	return b
}

// With is the box that holds q too.
func (b Box) With(q Vec) Box {
	return Box{Vec{min(b.Low.X, q.X), min(b.Low.Y, q.Y)}, Vec{max(b.High.X, q.X), max(b.High.Y, q.Y)}}
}

// Grow is the box with a margin m round it.
func (b Box) Grow(m float64) Box {
	return Box{Vec{b.Low.X - m, b.Low.Y - m}, Vec{b.High.X + m, b.High.Y + m}}
}

// Meets tells that two boxes share more than an edge.
func (b Box) Meets(o Box) bool {
	return b.Low.X < o.High.X && o.Low.X < b.High.X && b.Low.Y < o.High.Y && o.Low.Y < b.High.Y
}

// Size is the width and the height of the box.
func (b Box) Size() Vec { return b.High.Sub(b.Low) }

// Nearest is the place of the box that is nearest to q.
func (b Box) Nearest(q Vec) Vec {
	return Vec{max(b.Low.X, min(q.X, b.High.X)), max(b.Low.Y, min(q.Y, b.High.Y))}
}

// Centre is the middle of the box.
func (b Box) Centre() Vec { return b.Low.Add(b.High).Scale(0.5) }

// Holds tells that a place lies in the box.
func (b Box) Holds(q Vec) bool {
	return b.Nearest(q) == q
}

// Clip gives the shares of the segment from p to q between which it lies in the box (Liang
// and Barsky's clipping); ok is false where none does, or an end is no number.
func (b Box) Clip(p, q Vec) (from, to float64, ok bool) {
	d := q.Sub(p)
	if n := d.Len(); math.IsNaN(n) || math.IsInf(n, 0) {
		return 0, 0, false
	}
	from, to = 0.0, 1.0
	for _, side := range [4][2]float64{{-d.X, p.X - b.Low.X}, {d.X, b.High.X - p.X}, {-d.Y, p.Y - b.Low.Y}, {d.Y, b.High.Y - p.Y}} {
		switch t := side[1] / side[0]; {
		case side[0] == 0 && side[1] < 0:
			return 0, 0, false
		case side[0] < 0:
			from = math.Max(from, t)
		case side[0] > 0:
			to = math.Min(to, t)
		}
	}
	return from, to, from <= to
}

// Distance is that of q from the segment from a to b.
func Distance(q, a, b Vec) float64 {
	d := b.Sub(a)
	t := 0.0
	if n := d.Dot(d); n > 0 {
		t = math.Max(0, math.Min(1, q.Sub(a).Dot(d)/n))
	}
	return q.Sub(a.Add(d.Scale(t))).Len()
}

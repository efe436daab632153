package ink

import "math"

// Box is an upright rectangle.
type Box struct{ Low, High Vec }

// With is the box that holds q too.
func (b Box) With(q Vec) Box {
	return Box{Vec{math.Min(b.Low.X, q.X), math.Min(b.Low.Y, q.Y)}, Vec{math.Max(b.High.X, q.X), math.Max(b.High.Y, q.Y)}}
}

// Grow is the box with a margin m round it.
func (b Box) Grow(m float64) Box {
	return Box{Vec{b.Low.X - m, b.Low.Y - m}, Vec{b.High.X + m, b.High.Y + m}}
}

// Meets tells that two boxes share more than an edge.
func (b Box) Meets(o Box) bool {
	return b.Low.X < o.High.X && o.Low.X < b.High.X && b.Low.Y < o.High.Y && o.Low.Y < b.High.Y
}

// Centre is the middle of the box.
func (b Box) Centre() Vec { return b.Low.Add(b.High).Scale(0.5) }

// Crossed gives how much of the segment from p to q lies in the box (Liang and
// Barsky's clipping).
func (b Box) Crossed(p, q Vec) float64 {
	if max(p.X, q.X) < b.Low.X || min(p.X, q.X) > b.High.X || max(p.Y, q.Y) < b.Low.Y || min(p.Y, q.Y) > b.High.Y {
		return 0 // as most are that the labels of a figure ask of
	}
	d := q.Sub(p)
	from, to := 0.0, 1.0
	for _, side := range [4][2]float64{{-d.X, p.X - b.Low.X}, {d.X, b.High.X - p.X}, {-d.Y, p.Y - b.Low.Y}, {d.Y, b.High.Y - p.Y}} {
		switch t := side[1] / side[0]; {
		case side[0] == 0 && side[1] < 0:
			return 0
		case side[0] < 0:
			from = math.Max(from, t)
		case side[0] > 0:
			to = math.Min(to, t)
		}
	}
	if from > to {
		return 0
	}
	// A touch counts a little, so that a point in the box is not nothing.
	return math.Max((to-from)*d.Len(), 0.1)
}

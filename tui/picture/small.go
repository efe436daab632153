package picture

import (
	"math"

	"trivet/mechanics/figure"
)

// sign tells whether a stroke is one that lines of characters cannot show.
func sign(s figure.Stroke) bool {
	switch s.Kind {
	case figure.Support, figure.Particle, figure.Ground:
		return true
	case figure.Center:
		return !s.Open
	case figure.Couple, figure.Load:
		return len(s.Pts) == 3 && s.Near[0] == s.Near[1] || s.Kind == figure.Couple && len(s.Pts) > 3
	case figure.Arrow:
		return len(s.Pts) != 2
	}
	return len(s.Pts) == 0
}

// small draws those strokes over the lines.
func (p *pen) small(f figure.Figure, order []int) {
	for _, i := range order {
		s := f.Strokes[i]
		if !sign(s) || len(s.Pts) == 0 || s.Kind == figure.Support {
			continue
		}
		at, char := middle(s.Pts), uint8(0)
		switch {
		case s.Kind == figure.Couple && len(s.Pts) > 3:
			p.turning(s, p.look(s))
			continue
		case s.Kind == figure.Couple && i > 0 && f.Strokes[i-1].Kind == figure.Couple && len(f.Strokes[i-1].Pts) > 3:
			continue // the head of a turning arrow is among its characters
		case s.Kind == figure.Center && len(s.Pts) > 2:
			char = '+'
		case s.Kind == figure.Center:
			continue // the arms of that cross
		case s.Kind == figure.Particle:
			char = 'o'
		case s.Kind == figure.Ground:
			p.hatch(s)
			continue
		case len(s.Pts) == 3:
			at = s.Pts[1]
			back := middle([]figure.Vec{s.Pts[0], s.Pts[2]})
			char = head(at.X-back.X, at.Y-back.Y)
		default:
			char = '@' // an arrow seen end on
		}
		if x, y, ok := p.cell(at); ok {
			k := y*p.c.W() + x
			p.owned(k, whole)
			p.bits[k], p.looks[k] = char, p.look(s)
		}
	}
}

// hatch draws fixed ground at a point: of its strokes the first, which is level.
func (p *pen) hatch(s figure.Stroke) {
	if s.Pts[0].Y != s.Pts[len(s.Pts)-1].Y {
		return
	}
	if x, y, ok := p.cell(middle(s.Pts)); ok {
		for dx := -1; dx <= 1; dx++ {
			p.set(x+dx, y, '#', p.look(s))
		}
	}
}

func head(dx, dy float64) uint8 {
	if math.Abs(dx) > math.Abs(dy) {
		if dx > 0 {
			return '>'
		}
		return '<'
	}
	if dy > 0 {
		return '^'
	}
	return 'v'
}

func middle(pts []figure.Vec) (m figure.Vec) {
	low, high := pts[0], pts[0]
	for _, q := range pts {
		low = figure.Vec{X: math.Min(low.X, q.X), Y: math.Min(low.Y, q.Y)}
		high = figure.Vec{X: math.Max(high.X, q.X), Y: math.Max(high.Y, q.Y)}
	}
	return figure.Vec{X: (low.X + high.X) / 2, Y: (low.Y + high.Y) / 2}
}

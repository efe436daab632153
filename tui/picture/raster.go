package picture

import (
	"math"

	"trivet/mechanics/figure"
	"trivet/tui/grid"
)

// The bit of each dot in U+2800 and following, by row and column.
var braille = [dotsY][dotsX]uint8{{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}}

// line draws between two places in dots, dashed where open.
func (p *pen) line(x0, y0, x1, y1 float64, open bool, look grid.Style) {
	x0, y0, x1, y1, ok := clip(x0, y0, x1, y1, float64(p.c.W()*dotsX)-0.01, float64(p.c.H()*dotsY)-0.01)
	if !ok {
		return
	}
	steps := int(math.Ceil(math.Max(math.Abs(x1-x0), math.Abs(y1-y0))))
	const dash, gap = 4, 3
	for i := range steps + 1 {
		if open && i%(dash+gap) >= dash {
			continue
		}
		t := 0.0
		if steps > 0 {
			t = float64(i) / float64(steps)
		}
		p.plot(x0+t*(x1-x0), y0+t*(y1-y0), x1-x0, y1-y0, look)
	}
}

// plot sets one dot; in plain characters it chooses one that runs the line's way.
func (p *pen) plot(x, y, dx, dy float64, look grid.Style) {
	ix, iy := int(x), int(y)
	cx, cy := ix/dotsX, iy/dotsY
	if ix < 0 || iy < 0 || cx >= p.c.W() || cy >= p.c.H() {
		return
	}
	i := cy*p.c.W() + cx
	p.looks[i] = look
	if p.o.ASCII {
		p.bits[i] = slope(dx, dy)
		return
	}
	p.bits[i] |= braille[iy%dotsY][ix%dotsX]
}

// slope gives the character for a line that runs dx, dy (downwards) in dots.
func slope(dx, dy float64) uint8 {
	const flat, steep = 0.4, 2.5
	switch r := math.Abs(dy) / math.Max(math.Abs(dx), 1e-9); {
	case r < flat:
		return '-'
	case r > steep:
		return '|'
	}
	if dx*dy < 0 {
		return '/'
	}
	return '\\'
}

// mark draws the small things that lines of plain characters cannot show, and
// tells whether it has.
func (p *pen) mark(s figure.Stroke, look grid.Style) bool {
	if len(s.Pts) == 0 {
		return true
	}
	at, char := s.Pts[0], uint8(0)
	switch {
	case s.Kind == figure.Support:
		return true // its sign stands for it
	case s.Kind == figure.Couple && len(s.Pts) > 3:
		p.turning(s, look)
		return true
	case s.Kind == figure.Couple && len(s.Pts) == 3 && p.curved:
		return true // the head of a turning arrow is among its characters
	case s.Kind == figure.Center && len(s.Pts) > 2:
		char, at = '+', middle(s.Pts)
	case s.Kind == figure.Center && !s.Open:
		return true // the arms of that cross
	case s.Kind == figure.Particle:
		char, at = 'o', middle(s.Pts)
	case s.Kind == figure.Ground:
		char, at = '#', middle(s.Pts)
	case len(s.Pts) == 3 && (s.Kind == figure.Arrow || s.Kind == figure.Load || s.Kind == figure.Couple):
		at = s.Pts[1]
		back := middle([]figure.Vec{s.Pts[0], s.Pts[2]})
		char = head(at.X-back.X, at.Y-back.Y)
	case s.Kind == figure.Arrow && len(s.Pts) > 3:
		char, at = '@', middle(s.Pts)
	default:
		return false
	}
	x, y := p.dot(at)
	if x >= 0 && y >= 0 && x < float64(p.c.W()*dotsX) && y < float64(p.c.H()*dotsY) {
		i := int(y)/dotsY*p.c.W() + int(x)/dotsX
		p.bits[i], p.looks[i] = char, look
	}
	return true
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

// flush puts the dots on the canvas.
func (p *pen) flush() {
	for y := range p.c.H() {
		for x := range p.c.W() {
			i := y*p.c.W() + x
			switch {
			case p.bits[i] == 0:
			case p.o.ASCII:
				p.c.Set(x, y, rune(p.bits[i]), p.looks[i])
			default:
				p.c.Set(x, y, 0x2800+rune(p.bits[i]), p.looks[i])
			}
		}
	}
	p.letters()
}

// clip cuts a segment to 0..w, 0..h (Liang and Barsky's parametric clipping);
// ok is false where nothing is left or an end is no number.
func clip(x0, y0, x1, y1, w, h float64) (_, _, _, _ float64, ok bool) {
	for _, v := range []float64{x0, y0, x1, y1} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return 0, 0, 0, 0, false
		}
	}
	dx, dy := x1-x0, y1-y0
	t0, t1 := 0.0, 1.0
	for _, e := range [4][2]float64{{-dx, x0}, {dx, w - x0}, {-dy, y0}, {dy, h - y0}} {
		p, q := e[0], e[1]
		switch {
		case p == 0:
			if q < 0 {
				return 0, 0, 0, 0, false
			}
		case p < 0:
			t0 = math.Max(t0, q/p)
		default:
			t1 = math.Min(t1, q/p)
		}
	}
	if t0 > t1 {
		return 0, 0, 0, 0, false
	}
	return x0 + t0*dx, y0 + t0*dy, x0 + t1*dx, y0 + t1*dy, true
}

package picture

import (
	"math"

	"trivet/mechanics/figure"
	"trivet/tui/grid"
)

// The bit of each dot in U+2800 and following, by row and column.
var braille = [dotsY][dotsX]uint8{{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}}

// brush is how a line is drawn.
type brush struct {
	look  grid.Style
	owner int32
	open  bool // dashed
	lit   bool
	wide  int        // lines beside each other
	near  [2]float64 // at the ends, from 0 (the farthest) to 1
	fades bool       // dotted where it is far
	short bool       // too short for the fine steps of characters
	gaps  []gap      // where it passes behind another
	part  int        // which piece of its polyline
}

// heavy strokes are drawn with a second line beside the first.
func heavy(k figure.StrokeKind) bool { return k == figure.Strut || k == figure.Body }

// long strokes break what they pass in front of; the rest are signs.
func long(k figure.StrokeKind) bool {
	return k != figure.Ground && k != figure.Particle && k != figure.Support && k != figure.Center
}

func (p *pen) stroke(s figure.Stroke, owner int32, gaps []gap) {
	if p.o.ASCII && sign(s) {
		return
	}
	b := brush{
		look: p.look(s), owner: owner, open: s.Open, lit: p.lit(s.Ref) && long(s.Kind), wide: 1,
		fades: s.Kind <= figure.Spring || s.Kind == figure.Body, gaps: gaps,
	}
	if heavy(s.Kind) {
		b.wide++
	}
	if b.lit && !p.o.ASCII {
		b.wide++
	}
	from, to := p.deep.share(s.Near[0]), p.deep.share(s.Near[1])
	for i := 1; i < len(s.Pts); i++ {
		x0, y0 := p.dot(s.Pts[i-1])
		x1, y1 := p.dot(s.Pts[i])
		n := float64(len(s.Pts) - 1)
		b.near, b.part = [2]float64{from + (to-from)*float64(i-1)/n, from + (to-from)*float64(i)/n}, i-1
		if p.o.ASCII {
			p.characters(x0, y0, x1, y1, b)
			continue
		}
		for k := range b.wide {
			// The next line beside the first, across the steeper way.
			side := float64((k+1)/2) * float64(1-2*(k%2)) * -1
			if math.Abs(x1-x0) > math.Abs(y1-y0) {
				p.line(x0, y0+side, x1, y1+side, b)
			} else {
				p.line(x0+side, y0, x1+side, y1, b)
			}
		}
	}
}

// line draws between two places in dots.
func (p *pen) line(x0, y0, x1, y1 float64, b brush) {
	c, ok := clip(x0, y0, x1, y1, float64(p.c.W()*dotsX)-0.01, float64(p.c.H()*dotsY)-0.01)
	if !ok {
		return
	}
	dx, dy := c.x1-c.x0, c.y1-c.y0
	steps := int(math.Ceil(math.Max(math.Abs(dx), math.Abs(dy))))
	from := b.near[0] + c.t0*(b.near[1]-b.near[0])
	to := b.near[0] + c.t1*(b.near[1]-b.near[0])
	for i := range steps + 1 {
		t := 0.0
		if steps > 0 {
			t = float64(i) / float64(steps)
		}
		near := from + t*(to-from)
		x, y := int(c.x0+t*dx), int(c.y0+t*dy)
		switch {
		case x < 0 || y < 0 || x >= p.c.W()*dotsX || y >= p.c.H()*dotsY:
		case b.blank(i, b.fades && p.far(near)) || b.behind(c.t0+t*(c.t1-c.t0)):
		default:
			p.plot(x, y, b)
		}
	}
}

// blank tells whether a dashed or a dotted line leaves its i-th dot out. A dash of
// dots is longer, so that it shows as one.
func (b brush) blank(i int, far bool) bool {
	switch {
	case far && b.open:
		const dash, period = 7, 10
		return i%2 == 1 || i%period >= dash
	case far:
		return i%2 == 1
	}
	const dash, period = 4, 7
	return b.open && i%period >= dash
}

// plot sets one dot.
func (p *pen) plot(x, y int, b brush) {
	i := y/dotsY*p.c.W() + x/dotsX
	p.owned(i, b.owner)
	p.bits[i] |= braille[y%dotsY][x%dotsX]
	p.looks[i] = b.look
}

func (p *pen) owned(cell int, owner int32) {
	switch was := p.own[cell]; {
	case was == 0 || owner == whole:
		p.own[cell] = owner
	case was != owner && was != whole:
		p.own[cell] = several
	}
}

// flush puts the dots on the canvas.
func (p *pen) flush() {
	for y := range p.c.H() {
		for x := range p.c.W() {
			p.show(x, y)
		}
	}
	p.letters()
}

func (p *pen) show(x, y int) {
	i := y*p.c.W() + x
	switch {
	case p.bits[i] == 0:
	case p.o.ASCII:
		p.c.Set(x, y, rune(p.bits[i]), p.looks[i])
	default:
		p.c.Set(x, y, 0x2800+rune(p.bits[i]), p.looks[i])
	}
}

// clipped is what of a segment lies inside, and which shares of it those are.
type clipped struct{ x0, y0, x1, y1, t0, t1 float64 }

// clip cuts a segment to 0..w, 0..h (Liang and Barsky's parametric clipping);
// ok is false where nothing is left or an end is no number.
func clip(x0, y0, x1, y1, w, h float64) (c clipped, ok bool) {
	for _, v := range []float64{x0, y0, x1, y1} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return c, false
		}
	}
	dx, dy := x1-x0, y1-y0
	t0, t1 := 0.0, 1.0
	for _, e := range [4][2]float64{{-dx, x0}, {dx, w - x0}, {-dy, y0}, {dy, h - y0}} {
		p, q := e[0], e[1]
		switch {
		case p == 0:
			if q < 0 {
				return c, false
			}
		case p < 0:
			t0 = math.Max(t0, q/p)
		default:
			t1 = math.Min(t1, q/p)
		}
	}
	if t0 > t1 {
		return c, false
	}
	return clipped{x0 + t0*dx, y0 + t0*dy, x0 + t1*dx, y0 + t1*dy, t0, t1}, true
}

package picture

import (
	"math"
	"slices"

	"trivet/mechanics/drawing"
	"trivet/tui/grid"
)

// The bit of each dot in U+2800 and following, by row and column.
var braille = [dotsY][dotsX]uint8{{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}}

// stroke is how a line is drawn.
type stroke struct {
	look   grid.Style
	clears bool // takes dots away
	dashed bool
	lit    bool
	plain  bool // without the fine steps of characters
}

// thickFrom is the width in dots from which a line is an area.
const thickFrom = 1.8

// braille draws the shapes in dots.
func (p *pen) braille() {
	for i := range p.d.Shapes {
		s := &p.d.Shapes[i]
		if s.Fill != drawing.None {
			p.fill(s.Pts, stroke{look: p.look(s.Of, s.Fill), clears: s.Fill == drawing.Paper || s.Fill == drawing.Fill})
		}
		if s.Line == drawing.None || s.Width <= 0 {
			continue
		}
		b := stroke{look: p.look(s.Of, s.Line), clears: s.Line == drawing.Paper || s.Line == drawing.Fill, dashed: s.Dashed}
		width := s.Width
		if t := p.thing(s.Of); t != nil && p.lit(t.Ref) && t.Kind.Member() && !b.clears {
			width = math.Max(width, thickFrom) // the selected row is heavier
		}
		for from, to := range s.Sides() {
			if width < thickFrom {
				p.thin(from, to, b)
			} else {
				n := to.Sub(from).Unit().Perp().Scale(width / 2)
				p.fill([]drawing.Vec{from.Add(n), to.Add(n), to.Sub(n), from.Sub(n)}, b)
			}
		}
	}
}

// size is the canvas in dots.
func (p *pen) size() drawing.Box {
	const inside = 0.01 // the last dot ends before the edge
	return drawing.Box{High: drawing.Vec{X: float64(p.c.W()*dotsX) - inside, Y: float64(p.c.H()*dotsY) - inside}}
}

// clip is what of a line lies on the canvas.
func (p *pen) clip(from, to drawing.Vec) (a, b drawing.Vec, ok bool) {
	t0, t1, ok := p.size().Clip(from, to)
	d := to.Sub(from)
	return from.Add(d.Scale(t0)), from.Add(d.Scale(t1)), ok
}

// plot sets or clears one dot.
func (p *pen) plot(x, y int, b stroke) {
	if x < 0 || y < 0 || x >= p.c.W()*dotsX || y >= p.c.H()*dotsY {
		return
	}
	i := y/dotsY*p.c.W() + x/dotsX
	if bit := braille[y%dotsY][x%dotsX]; b.clears {
		p.dots[i] &^= bit
	} else {
		p.dots[i] |= bit
		p.looks[i] = b.look
	}
}

// thin draws a line one dot wide.
func (p *pen) thin(from, to drawing.Vec, b stroke) {
	a, c, ok := p.clip(from, to)
	if !ok {
		return
	}
	step := c.Sub(a)
	n := int(math.Ceil(math.Max(math.Abs(step.X), math.Abs(step.Y))))
	const dash, period = 4, 7
	for i := range n + 1 {
		if b.dashed && i%period >= dash {
			continue
		}
		q := a
		if n > 0 {
			q = a.Add(step.Scale(float64(i) / float64(n)))
		}
		p.plot(int(q.X), int(q.Y), b)
	}
}

// fill draws the dots whose middle lies in a polygon (even-odd rule).
func (p *pen) fill(pts []drawing.Vec, b stroke) {
	low, high := math.Inf(1), math.Inf(-1)
	for _, q := range pts {
		if math.IsNaN(q.X) || math.IsNaN(q.Y) || math.IsInf(q.X, 0) || math.IsInf(q.Y, 0) {
			return
		}
		low, high = math.Min(low, q.Y), math.Max(high, q.Y)
	}
	width := float64(p.c.W() * dotsX)
	var xs []float64
	for y := max(0, int(low)); y <= min(p.c.H()*dotsY-1, int(math.Min(high, 1e6))); y++ {
		xs = xs[:0]
		mid := float64(y) + 0.5
		for i, a := range pts {
			c := pts[(i+1)%len(pts)]
			if (a.Y <= mid) != (c.Y <= mid) {
				xs = append(xs, a.X+(mid-a.Y)/(c.Y-a.Y)*(c.X-a.X))
			}
		}
		slices.Sort(xs)
		for k := 1; k < len(xs); k += 2 {
			for x := int(math.Ceil(math.Max(xs[k-1], 0) - 0.5)); float64(x)+0.5 <= math.Min(xs[k], width); x++ {
				p.plot(x, y, b)
			}
		}
	}
}

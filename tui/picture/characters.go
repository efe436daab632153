package picture

import "math"

// characters draws between two places in dots with one character a column, or
// a row where the line is steep.
func (p *pen) characters(x0, y0, x1, y1 float64, b brush) {
	c, ok := clip(x0, y0, x1, y1, float64(p.c.W()*dotsX)-0.01, float64(p.c.H()*dotsY)-0.01)
	if !ok {
		return
	}
	from := b.near[0] + c.t0*(b.near[1]-b.near[0])
	to := b.near[0] + c.t1*(b.near[1]-b.near[0])
	// In cells from here on.
	ax, ay, bx, by := c.x0/dotsX, c.y0/dotsY, c.x1/dotsX, c.y1/dotsY
	columns := math.Abs(bx-ax) >= math.Abs(by-ay)
	first, last := ay, by
	if columns {
		first, last = ax, bx
	}
	n, way := int(math.Abs(math.Floor(last)-math.Floor(first))), 1.0
	if last < first {
		way = -1
	}
	const dash, gap = 2, 1
	for i := range n + 1 {
		if b.open && i%(dash+gap) >= dash {
			continue
		}
		t := 0.0
		if last != first {
			middle := math.Floor(first) + way*float64(i) + 0.5
			t = math.Max(0, math.Min(1, (middle-first)/(last-first)))
		}
		x, y, near := ax+t*(bx-ax), ay+t*(by-ay), from+t*(to-from)
		if b.behind(c.t0 + t*(c.t1-c.t0)) {
			continue
		}
		in := y - math.Floor(y)
		if b.short {
			in = 0.5
		}
		char := slope(bx-ax, by-ay, in)
		p.char(int(x), int(y), char, near, b)
		if b.wide > 1 && char != '=' && char != '-' {
			p.char(int(x)+1, int(y), char, near, b)
		}
	}
}

// slope gives the character for a line that runs dx, dy (downwards) in cells
// through the height y of its cell.
func slope(dx, dy, y float64) uint8 {
	// Slopes in rows a column: a cell is twice as high as wide.
	const level, flat, steep = 0.04, 0.4, 2.0
	r := math.Abs(dy) / math.Max(math.Abs(dx), 1e-9)
	falls := dx*dy > 0
	switch {
	case r > steep:
		return '|'
	case r > flat && falls:
		return '\\'
	case r > flat:
		return '/'
	case r < level:
		return '-'
	case y < 0.25 && falls:
		return '`'
	case y < 0.25:
		return '\''
	case y < 0.6:
		return '-'
	case y < 0.8:
		return '.'
	}
	return '_'
}

// char sets a line's character.
func (p *pen) char(x, y int, c uint8, near float64, b brush) {
	if x < 0 || y < 0 || x >= p.c.W() || y >= p.c.H() {
		return
	}
	upright := c == '|' || c == '/' || c == '\\'
	i := y*p.c.W() + x
	far := b.fades && p.far(near)
	switch {
	case b.lit:
		c = '*'
	case far && (c == '|' || b.wide > 1):
		c = ':'
	case far:
		c = '.'
	case b.wide > 1 && !upright:
		c = '='
	}
	p.owned(i, b.owner)
	p.bits[i], p.looks[i] = c, b.look
}

package picture

import (
	"image"

	"trivet/tui/theme"
)

// way gives the cells between a label and its thing, without either, into the
// room of cells.
func way(thing image.Point, box image.Rectangle, cells []image.Point) []image.Point {
	from := image.Pt(max(box.Min.X, min(box.Max.X-1, thing.X)), box.Min.Y)
	d := thing.Sub(from)
	n := max(d.X, -d.X, d.Y, -d.Y)
	cells = cells[:0]
	for i := 1; i < n; i++ {
		cells = append(cells, from.Add(image.Pt(round(d.X*i, n), round(d.Y*i, n))))
	}
	return cells
}

// round gives a/n, n positive, to the nearest whole number.
func round(a, n int) int {
	if a < 0 {
		return -((-2*a + n) / (2 * n))
	}
	return (2*a + n) / (2 * n)
}

// reach tells what a leader from a label to its thing costs, and whether it
// comes there past no other thing.
func (s *setting) reach(t *tag, box image.Rectangle) (cost int, clear bool) {
	s.path = way(t.at, box, s.path)
	for _, at := range s.path {
		k := at.Y*s.c.W() + at.X
		if s.names[k] != 0 || s.bits[k] != 0 && s.own[k] != t.own {
			return 0, false
		}
		if s.bits[k] == 0 {
			cost++
		}
	}
	// Less than two cells are a speck, not a line.
	return cost, cost >= 2
}

// lead draws the leader of a label, dotted, up to the cell before its thing.
func (p *pen) lead(l placed) {
	for _, at := range way(l.at, l.box, nil) {
		k := at.Y*p.c.W() + at.X
		if p.bits[k] != 0 {
			continue
		}
		p.bits[k], p.looks[k] = 0x10|0x04, theme.Dim
		if p.o.ASCII {
			p.bits[k] = ','
		}
		p.show(at.X, at.Y)
	}
}

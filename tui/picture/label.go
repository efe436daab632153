package picture

import (
	"strings"

	"trivet/mechanics/figure"
	"trivet/tui/grid"
	"trivet/tui/theme"
)

var plainMarks = strings.NewReplacer("⊙", "(.)", "⊗", "(x)")

// label writes a label beside its place, where it hides least.
func (p *pen) label(l figure.Label) {
	text := l.Text
	if l.Mark != "" {
		text += " " + l.Mark
	}
	if p.o.ASCII {
		text = plainMarks.Replace(text)
	}
	fx, fy := p.dot(l.At)
	if !(fx > -1e6 && fx < 1e6 && fy > -1e6 && fy < 1e6) { // also what is no number
		return
	}
	cx, cy, n := int(fx)/dotsX, int(fy)/dotsY, grid.Width(text)
	if fx < 0 || fy < 0 || cx >= p.c.W() || cy >= p.c.H() {
		return
	}
	best, bx, by := -1, 0, 0
	for _, o := range [...][2]int{{2, 0}, {-n - 1, 0}, {1, -1}, {1, 1}, {-n, -1}, {-n, 1}, {-n / 2, -1}, {-n / 2, 1}, {-n / 2, -2}, {-n / 2, 2}, {3, 0}, {-n - 2, 0}} {
		x, y := cx+o[0], cy+o[1]
		if x < 0 || y < 0 || x+n > p.c.W() || y >= p.c.H() {
			continue
		}
		if cost := p.cost(x, y, n); best < 0 || cost < best {
			best, bx, by = cost, x, y
		}
	}
	if best < 0 || best >= hidden {
		return // no room: a label over another would read as neither
	}
	look := theme.Point
	if l.Ref.Table != "points" {
		look = theme.Computed
	}
	if l.Ref == p.o.On {
		look = theme.Emphasis
	}
	if p.o.Stale {
		look = theme.Stale
	}
	p.c.Text(bx, by, look, text)
	for i := range n {
		p.taken[by*p.c.W()+bx+i] = true
	}
}

// hidden is the cost of covering another label: more than any stroke.
const hidden = 1000

func (p *pen) cost(x, y, n int) (cost int) {
	for i := range n {
		k := y*p.c.W() + x + i
		if p.taken[k] {
			return hidden
		}
		if p.bits[k] != 0 {
			cost++
		}
	}
	return cost
}

package picture

import (
	"math"

	"trivet/tui/theme"
)

// The axes stand in a corner of this many cells; a picture that is smaller than
// the least goes without.
const (
	triadW, triadH = 9, 5
	leastW, leastH = 30, 10
)

// triad draws the axes in the corner where they hide least, the lower left one
// where that is free.
func (p *pen) triad() {
	if p.c.W() < leastW || p.c.H() < leastH {
		return
	}
	right, low := p.c.W()-triadW, p.c.H()-triadH
	best := -1
	for _, corner := range [][2]int{{0, low}, {right, low}, {0, 0}, {right, 0}} {
		hides := 0
		for y := range triadH {
			for x := range triadW {
				if p.bits[(corner[1]+y)*p.c.W()+corner[0]+x] != 0 {
					hides++
				}
			}
		}
		if best < 0 || hides < best {
			best, p.corner = hides, corner
		}
	}
	for y := range triadH {
		for x := range triadW {
			p.taken[(p.corner[1]+y)*p.c.W()+p.corner[0]+x] = true
		}
	}
	const length = 7
	ox, oy := float64((p.corner[0]+4)*dotsX), float64((p.corner[1]+2)*dotsY)
	for _, a := range p.o.Axes {
		if a.Toward == 0 {
			b := brush{look: theme.Dim, wide: 1, short: true, near: [2]float64{1, 1}}
			if p.o.ASCII {
				p.characters(ox, oy, ox+length*a.At.X, oy-length*a.At.Y, b)
			} else {
				p.line(ox, oy, ox+length*a.At.X, oy-length*a.At.Y, b)
			}
		}
	}
}

// letters names the axes once the lines are drawn.
func (p *pen) letters() {
	if p.c.W() < leastW || p.c.H() < leastH {
		return
	}
	const reach = 8.5
	for _, a := range p.o.Axes {
		if a.Toward == 0 {
			x := p.corner[0] + 4 + int(math.Round(reach*a.At.X/dotsX))
			y := p.corner[1] + 2 - int(math.Round(reach*a.At.Y/dotsY))
			p.c.Text(x, y, theme.Dim, a.Name)
		}
	}
}

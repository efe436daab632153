package picture

import (
	"math"

	"trivet/mechanics/figure"
	"trivet/tui/grid"
	"trivet/tui/theme"
)

// A support in plain characters: beside the point on the side it is held from,
// one text where that is above or below, one character a row where it is to the
// left or the right.
var signs = map[figure.Sign]struct{ flat, steep []string }{
	figure.PinSign:     {[]string{`/_\`, `///`}, []string{"<", "|"}},
	figure.RollerSign:  {[]string{`(_)`, `///`}, []string{"O", "|"}},
	figure.SmoothSign:  {[]string{`===`}, []string{"|"}},
	figure.RoughSign:   {[]string{`^^^`, `///`}, []string{"}", "|"}},
	figure.BallSign:    {[]string{`(@)`, `///`}, []string{"@", "|"}},
	figure.FixedSign:   {[]string{`###`}, []string{"#"}},
	figure.BearingSign: {[]string{`[=]`}, []string{"H"}},
	figure.SliderSign:  {[]string{`[+]`}, []string{"+"}},
}

// sign puts a support's characters beside its point.
func (p *pen) sign(m figure.Mark) {
	x, y, ok := p.cell(m.At)
	if !ok {
		return
	}
	look := theme.Ground
	switch {
	case p.o.Stale:
		look = theme.Stale
	case p.lit(m.Ref):
		look = theme.Emphasis
	}
	set := func(x, y int, c byte) { p.set(x, y, c, look) }
	s := signs[m.Sign]
	along := m.Sign == figure.BearingSign || m.Sign == figure.SliderSign
	switch {
	case m.Toward == (figure.Vec{}):
		set(x-1, y, '(')
		set(x+1, y, ')')
	case along:
		for i := range 3 {
			set(x-1+i, y+1, s.flat[0][i])
		}
	case math.Abs(m.Toward.X) > math.Abs(m.Toward.Y):
		side := -1
		if m.Toward.X < 0 {
			side = 1
		}
		for i, c := range s.steep {
			if c == "<" && side > 0 {
				c = ">"
			}
			rows := 1
			if c == "|" || c == "#" {
				rows = 3
			}
			for r := range rows {
				set(x+side*(i+1), y+r-rows/2, c[0])
			}
		}
	default:
		side := 1
		if m.Toward.Y < 0 {
			side = -1
		}
		for i, text := range s.flat {
			for k := range len(text) {
				set(x-1+k, y+side*(i+1), text[k])
			}
		}
	}
}

func (p *pen) set(x, y int, c byte, look grid.Style) {
	if x >= 0 && y >= 0 && x < p.c.W() && y < p.c.H() {
		i := y*p.c.W() + x
		p.owned(i, whole)
		p.bits[i], p.looks[i] = c, look
	}
}

// turning draws a couple seen along its axis: over the top to the left where it
// turns counter-clockwise.
func (p *pen) turning(s figure.Stroke, look grid.Style) {
	c := middle(s.Pts)
	x, y, ok := p.cell(c)
	if !ok {
		return
	}
	a, b := s.Pts[0], s.Pts[1]
	rows := [3]string{".->", "|  ", "'--"}
	if (a.X-c.X)*(b.Y-c.Y)-(a.Y-c.Y)*(b.X-c.X) > 0 {
		rows = [3]string{"<-.", "  |", "--'"}
	}
	for dy, row := range rows {
		for dx := range len(row) {
			if row[dx] != ' ' {
				p.set(x+dx-1, y+dy-1, row[dx], look)
			}
		}
	}
}

// Package picture draws a figure on a canvas of cells: in braille dots, two by
// four to a cell, or in plain characters where a terminal has no braille.
package picture

import (
	"math"

	"trivet/mechanics/figure"
	"trivet/mechanics/sheet"
	"trivet/tui/grid"
	"trivet/tui/theme"
)

// Options are what a picture depends on beside its figure.
type Options struct {
	ASCII bool
	Zoom  float64   // 1 fits the pane
	On    sheet.Ref // the row to emphasise
	Axes  []figure.Axis
	Stale bool
}

// Dots of a cell. A cell is about twice as high as wide, so dots are square.
const dotsX, dotsY = 2, 4

// Cells kept free round the geometry for labels.
const marginX, marginY = 5, 1

// Draw fits the figure into the canvas.
func Draw(c grid.Canvas, f figure.Figure, o Options) {
	if c.W() < 4 || c.H() < 3 {
		return
	}
	p := &pen{c: c, o: o, bits: make([]uint8, c.W()*c.H()), looks: make([]grid.Style, c.W()*c.H()), taken: make([]bool, c.W()*c.H())}
	p.fit(f)
	for _, s := range f.Strokes {
		p.stroke(s)
		p.curved = s.Kind == figure.Couple && len(s.Pts) > 3
	}
	for _, m := range f.Marks {
		if o.ASCII {
			p.sign(m)
		}
	}
	p.triad()
	p.flush()
	for _, l := range f.Labels {
		p.label(l)
	}
}

type pen struct {
	c      grid.Canvas
	o      Options
	bits   []uint8
	looks  []grid.Style
	taken  []bool // by labels and the axes
	corner [2]int // of the axes
	curved bool   // the stroke before was a turning arrow
	scale  float64
	mid    figure.Vec
}

func (p *pen) fit(f figure.Figure) {
	w := float64(max(p.c.W()-2*marginX, 2)*dotsX - 1)
	h := float64(max(p.c.H()-2*marginY, 1)*dotsY - 1)
	dx, dy := f.High.X-f.Low.X, f.High.Y-f.Low.Y
	p.mid = figure.Vec{X: f.Low.X + dx/2, Y: f.Low.Y + dy/2}
	p.scale = math.Inf(1)
	if dx > 0 {
		p.scale = w / dx
	}
	if dy > 0 {
		p.scale = math.Min(p.scale, h/dy)
	}
	if math.IsInf(p.scale, 0) || math.IsNaN(p.scale) {
		p.scale = 1
	}
	if p.o.Zoom > 0 {
		p.scale *= p.o.Zoom
	}
}

// dot gives the place of v in dots, from the upper left.
func (p *pen) dot(v figure.Vec) (x, y float64) {
	return float64(p.c.W()*dotsX)/2 + (v.X-p.mid.X)*p.scale, float64(p.c.H()*dotsY)/2 - (v.Y-p.mid.Y)*p.scale
}

func (p *pen) look(s figure.Stroke) grid.Style {
	switch {
	case p.o.Stale:
		return theme.Stale
	case s.Ref == p.o.On && s.Ref.Row != "":
		return theme.Emphasis
	}
	return [...]grid.Style{
		figure.Cable: theme.Cable, figure.Strut: theme.Strut, figure.Link: theme.Link, figure.Spring: theme.Spring,
		figure.Arrow: theme.Force, figure.Ground: theme.Ground, figure.Particle: theme.Point,
		figure.Body: theme.Plain, figure.Load: theme.Force, figure.Couple: theme.Force, figure.Support: theme.Ground, figure.Center: theme.Emphasis,
	}[s.Kind]
}

func (p *pen) stroke(s figure.Stroke) {
	look := p.look(s)
	thick := s.Kind == figure.Strut || s.Kind == figure.Body || s.Ref == p.o.On && s.Ref.Row != "" && s.Kind != figure.Ground && s.Kind != figure.Particle
	if p.o.ASCII && p.mark(s, look) {
		return
	}
	for i := 1; i < len(s.Pts); i++ {
		x0, y0 := p.dot(s.Pts[i-1])
		x1, y1 := p.dot(s.Pts[i])
		p.line(x0, y0, x1, y1, s.Open, look)
		if thick && !p.o.ASCII {
			// A second line beside the first, across the steeper way.
			if math.Abs(x1-x0) > math.Abs(y1-y0) {
				p.line(x0, y0+1, x1, y1+1, s.Open, look)
			} else {
				p.line(x0+1, y0, x1+1, y1, s.Open, look)
			}
		}
	}
}

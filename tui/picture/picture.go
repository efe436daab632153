// Package picture draws a figure on a canvas of cells: in braille dots, two by
// four to a cell, or in plain characters where a terminal has no braille. What
// stands in front breaks the lines behind it, and what is far is dotted.
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
	On    sheet.Ref // the row to emphasise: heavier, its label in brackets
	Axes  []figure.Axis
	Stale bool
}

// Dots of a cell. A cell is about twice as high as wide, so dots are square.
const dotsX, dotsY = 2, 4

// Cells kept free round the geometry for labels.
const marginX, marginY = 5, 1

// Draw fits the figure into the canvas. Labels that have no room are left out,
// the least important first, and the picture says how many.
func Draw(c grid.Canvas, f figure.Figure, o Options) {
	if c.W() >= 4 && c.H() >= 3 {
		drawn(c, f, o)
	}
}

func drawn(c grid.Canvas, f figure.Figure, o Options) *pen {
	cells := c.W() * c.H()
	p := &pen{c: c, o: o, bits: make([]uint8, cells), looks: make([]grid.Style, cells), own: make([]int32, cells), taken: make([]bool, cells)}
	p.fit(f)
	p.deepen(f)
	order := p.order(f)
	gaps := p.gaps(f)
	for _, i := range order {
		p.stroke(f.Strokes[i], p.strokes[i], gaps[i])
	}
	if o.ASCII {
		p.small(f, order)
		for _, m := range f.Marks {
			p.sign(m)
		}
	}
	p.triad()
	p.flush()
	p.label(f)
	return p
}

type pen struct {
	c       grid.Canvas
	o       Options
	bits    []uint8
	looks   []grid.Style
	own     []int32 // whose stroke a cell shows: its number, or several
	taken   []bool  // by labels and the axes
	corner  [2]int  // of the axes
	scale   float64
	mid     figure.Vec
	numbers map[sheet.Ref]int32 // of the rows, from 1
	strokes []int32             // the number of each stroke's row
	deep    depth
	placed  []placed
	left    int // labels that have no room
}

// Owners of cells in which strokes of more rows than one meet, and of those that
// show a sign or the head of an arrow in plain characters.
const (
	several = -1
	whole   = -2
)

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

// cell gives the cell of v; ok is false outside the canvas and for what is no number.
func (p *pen) cell(v figure.Vec) (x, y int, ok bool) {
	fx, fy := p.dot(v)
	if !(fx >= 0 && fy >= 0 && fx < float64(p.c.W()*dotsX) && fy < float64(p.c.H()*dotsY)) {
		return 0, 0, false
	}
	return int(fx) / dotsX, int(fy) / dotsY, true
}

// lit tells whether a row is the selected one. A support is named after its point.
func (p *pen) lit(r sheet.Ref) bool {
	on := p.o.On
	return on.Row != "" && (r == on || on.Table == "joints" && r.Table == "points" && r.Row == on.Row)
}

func (p *pen) look(s figure.Stroke) grid.Style {
	switch {
	case p.o.Stale:
		return theme.Stale
	case p.lit(s.Ref):
		return theme.Emphasis
	}
	return [...]grid.Style{
		figure.Cable: theme.Cable, figure.Strut: theme.Strut, figure.Link: theme.Link, figure.Spring: theme.Spring,
		figure.Arrow: theme.Force, figure.Ground: theme.Ground, figure.Particle: theme.Point,
		figure.Body: theme.Plain, figure.Load: theme.Force, figure.Couple: theme.Force, figure.Support: theme.Ground, figure.Center: theme.Emphasis,
	}[s.Kind]
}

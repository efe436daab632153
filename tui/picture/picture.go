// Package picture shows a scene on a canvas of cells: in braille dots, two by four to a
// cell, or in plain characters where a terminal has no braille.
package picture

import (
	"math"

	"trivet/mechanics/drawing"
	"trivet/mechanics/figure"
	"trivet/mechanics/scene"
	"trivet/mechanics/sheet"
	"trivet/tui/grid"
	"trivet/tui/theme"
)

// Options are what a picture depends on beside its scene and view.
type Options struct {
	ASCII  bool
	Zoom   float64   // 1 fits the pane
	On     sheet.Ref // the row to emphasise
	Arrows figure.Arrows
	Stale  bool
}

// Dots of a cell. A cell is about twice as high as wide, so dots are square.
const dotsX, dotsY = 2, 4

// Cells kept free round the figure for labels.
const marginX, marginY = 4, 1

// The smallest canvas that shows anything.
const minW, minH = 4, 3

// The smallest one with room for the axes.
const axesW, axesH = 30, 10

// Draw fits the scene into the canvas. Labels that have no room are left out, the least
// important first, and the picture says how many.
func Draw(c grid.Canvas, s *scene.Scene, v figure.View, o Options) {
	if c.W() < minW || c.H() < minH {
		return
	}
	p := newPen(c, s, o)
	p.d = figure.Set(s, v, p.medium())
	p.shapes()
	p.show()
}

func newPen(c grid.Canvas, s *scene.Scene, o Options) *pen {
	return &pen{c: c, o: o, scene: s, dots: make([]uint8, c.W()*c.H()), looks: make([]grid.Style, c.W()*c.H())}
}

// shapes draws what is set in dots or characters.
func (p *pen) shapes() {
	if p.o.ASCII {
		p.characters()
	} else {
		p.braille()
	}
}

// show puts what is drawn on the canvas, and the labels over it.
func (p *pen) show() {
	p.flush()
	for _, t := range p.d.Texts {
		p.c.Text(int(t.At.X/dotsX+0.5), int(t.At.Y/dotsY+0.5), p.look(t.Of, t.Tone), p.text(t.Runs))
	}
}

// DrawPlot draws curves into the canvas.
func DrawPlot(c grid.Canvas, plot *figure.Plot, ascii bool) {
	p := newPen(c, &scene.Scene{}, Options{ASCII: ascii})
	p.d = figure.SetPlot(plot, p.medium())
	p.shapes()
	p.show()
}

// medium is the canvas in dots.
func (p *pen) medium() figure.Medium {
	w, h := float64(p.c.W()*dotsX), float64(p.c.H()*dotsY)
	// A symbol is as large as on paper, as a share of the picture, within what shows.
	const share, minPoint, maxPoint = 1.0 / 200, 0.35, 0.7
	m := figure.Medium{
		Width: w, Height: h, Zoom: p.o.Zoom, Bounded: true, Fine: 1.5, Arrows: p.o.Arrows, Doubt: "?",
		Selected: func(t *scene.Thing) bool { return p.lit(t.Ref) },
		Point:    math.Max(minPoint, math.Min(maxPoint, share*math.Sqrt(w*h))),
		Measure: func(runs []drawing.Run, _ bool) (float64, float64, float64) {
			return float64(dotsX * grid.Width(p.text(runs))), dotsY, 0
		},
		Cell: drawing.Vec{X: dotsX, Y: dotsY}, Triad: p.c.W() >= axesW && p.c.H() >= axesH && len(p.scene.Things) > 0,
	}
	if room := (drawing.Vec{X: dotsX * marginX, Y: dotsY * marginY}); w > 4*room.X && h > 4*room.Y {
		m.Beside = room
	}
	return m
}

// pen draws one picture.
type pen struct {
	c     grid.Canvas
	o     Options
	scene *scene.Scene
	d     figure.Drawing
	dots  []uint8 // of each cell: braille dots, or a character
	looks []grid.Style
}

// thing is what a shape or a text stands for; nil for none.
func (p *pen) thing(of int) *scene.Thing {
	if of < 1 || of > len(p.scene.Things) {
		return nil
	}
	return &p.scene.Things[of-1]
}

// lit tells whether a row is the selected one. A support is named after its point.
func (p *pen) lit(r sheet.Ref) bool {
	on := p.o.On
	return on.Row != "" && (r == on || on.Table == "joints" && r.Table == "points" && r.Row == on.Row)
}

// look is the style of what stands for a thing.
func (p *pen) look(of int, tone drawing.Tone) grid.Style {
	t := p.thing(of)
	switch {
	case p.o.Stale:
		return theme.Stale
	case t == nil:
		return theme.Dim
	case p.lit(t.Ref):
		return theme.Emphasis
	}
	if styles[t.Kind] == theme.Found && tone == drawing.Load {
		return theme.Force
	}
	return styles[t.Kind]
}

// styles are those of the kinds of things, of a force that is not given.
var styles = [scene.Name + 1]grid.Style{
	scene.Cable: theme.Cable, scene.Strut: theme.Strut, scene.Link: theme.Link, scene.Spring: theme.Spring,
	scene.Support: theme.Ground, scene.Water: theme.Ground, scene.Pin: theme.Point, scene.Dot: theme.Point, scene.Name: theme.Point,
	scene.Centre: theme.Ground, scene.Force: theme.Found, scene.Couple: theme.Found, scene.Load: theme.Found, scene.Vector: theme.Found,
}

// text is that of a label, in the characters that the terminal has.
func (p *pen) text(runs []drawing.Run) string {
	if p.o.ASCII {
		return plainMarks.Replace(drawing.Plain(runs))
	}
	return drawing.Plain(runs)
}

// box is the one that a label fills.
func (p *pen) box(t drawing.Text) drawing.Box {
	return drawing.Box{Low: t.At, High: t.At.Add(drawing.Vec{X: float64(dotsX * grid.Width(p.text(t.Runs))), Y: dotsY})}
}

// flush puts the dots on the canvas.
func (p *pen) flush() {
	blank := rune(0x2800) // no dot
	if p.o.ASCII {
		blank = 0
	}
	for y := range p.c.H() {
		for x := range p.c.W() {
			if i := y*p.c.W() + x; p.dots[i] != 0 {
				p.c.Set(x, y, blank+rune(p.dots[i]), p.looks[i])
			}
		}
	}
}

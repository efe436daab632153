// Package frame draws what stands round the panes, from plain data: the head, the foot, and the
// heads of panes.
package frame

import (
	"image"

	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// Foot is what stands at the bottom of the screen: the cell in full or what is asked, what is wrong
// with it or what it takes, and what can be done here.
type Foot struct {
	First []text.Span // empty: what it says begins the foot, unless Bare
	Types bool        // behind it a line is typed
	Typed text.Line
	Bare  bool // the first line stays blank
	Says  text.Lines
	Hints []keys.Hint
}

// Draw shows the foot. A message is never cut: one of two lines has that of the keys too, and a
// longer one covers what stands above.
func (f Foot) Draw(all grid.Canvas) {
	first := 0
	if f.Bare || len(f.First) > 0 {
		first = 1
	}
	rows := max(layout.Foot, first+len(f.Says))
	c := all.In(image.Rect(0, max(all.H()-rows, 0), all.W(), all.H()))
	c.Fill(' ', theme.Plain)
	x := 1
	for _, s := range f.First {
		x = c.Text(x, 0, s.Look, grid.Fit(s.Text, max(min(grid.Width(s.Text), c.W()-x-1), 0)))
	}
	if f.Types {
		shown, skip := grid.Window(f.Typed.Text, f.Typed.Column(), c.W()-x-1)
		c.Text(x, 0, theme.Plain, shown)
		c.Paint(x+f.Typed.Column()-skip, 0, 1, theme.Caret)
	}
	w := all.W() - 2
	f.Says.Draw(c.In(image.Rect(1, first, all.W(), c.H())), text.Offset{}, w, false)
	if first+len(f.Says) < rows {
		drawHints(c.In(image.Rect(0, rows-1, c.W(), rows)), f.Hints)
	}
}

// drawHints says what can be done here, in a few words.
func drawHints(c grid.Canvas, hints []keys.Hint) {
	x := 1
	for _, h := range hints {
		if x+grid.Width(h.Key)+2+grid.Width(h.Does) < c.W() {
			x = c.Text(x, 0, theme.Key, h.Key)
			x = c.Text(x, 0, theme.Dim, ": "+h.Does) + 3
		}
	}
}

// Note is a word on the bottom line.
type Note struct {
	Text string
	Bad  bool
}

// Look is the look of a note.
func (n Note) Look() grid.Style {
	if n.Bad {
		return theme.Bad
	}
	return theme.Plain
}

// End draws the last two lines of a screen without a foot, set in: a word, and the keys.
func End(c grid.Canvas, in int, n Note, hints []keys.Hint) {
	if n.Text != "" {
		c.Text(in, c.H()-2, n.Look(), grid.Fit(n.Text, c.W()-2*in))
	}
	drawHints(c.In(image.Rect(in-1, c.H()-1, c.W(), c.H())), hints)
}

package overlay

import (
	"image"

	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// Place is where a box of so many rows under its title stands at the lower end of a rectangle.
func Place(in image.Rectangle, w, rows int) image.Rectangle {
	w, rows = min(in.Dx(), w), min(rows, max(in.Dy()-1, 1))
	x, y := in.Min.X+(in.Dx()-w)/2, max(in.Max.Y-rows-1, 0)
	return image.Rect(x, y, x+w, y+rows+1)
}

// Box clears a canvas, rules its title, and gives what is below.
func Box(c grid.Canvas, rule rune, title string) grid.Canvas {
	c.Fill(' ', theme.Plain)
	c.In(image.Rect(0, 0, c.W(), 1)).Fill(rule, theme.Rule)
	c.Text(1, 0, theme.Head, grid.Fit(title, min(grid.Width(title), c.W()-2)))
	return c.In(image.Rect(0, 1, c.W(), c.H()))
}

// Scrolled moves in a text of which so much shows, and stays in it.
func Scrolled(o text.Offset, i keys.Intent, d text.Lines, w, h int) (_ text.Offset, ok bool) {
	ok = text.Scroll(&o, i, h)
	return Within(o, d, w, h), ok
}

// Within is the nearest offset at which the text fills what shows of it.
func Within(o text.Offset, d text.Lines, w, h int) text.Offset {
	return text.Offset{X: max(min(o.X, d.Width()-w), 0), Y: max(min(o.Y, len(d)-h), 0)}
}

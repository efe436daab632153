package cells

import (
	"image"

	"trivet/tui/grid"
	"trivet/tui/theme"
)

// tableView is how a table shows: where its cursor is, and whether it has the keys.
type View struct {
	At     Place
	Live   bool // it has the keys
	Typing *Edit
	Marked func(row, col int) bool
	Row    rune // marks the row under the cursor
}

// Draw draws the column heads and the rows that fit.
func (t Table) Draw(c grid.Canvas, v View) {
	at := v.At
	widths := t.Widths(c.W()-1, at.Col)
	x := 1
	for i, w := range widths {
		if w > 0 {
			x = c.Fit(x, 0, theme.Head, t.Head(at.Row, i), w, t.Columns[i].right) + 1
		}
	}
	for y := range c.H() - 1 {
		if i := at.Top + y; i < len(t.Records) {
			t.drawRecord(c.In(image.Rect(0, y+1, c.W(), y+2)), v, i, widths)
		}
	}
	if len(t.Records) == 0 {
		c.Text(1, 1, theme.Dim, grid.Fit(t.None(), c.W()-2))
	}
}

// None says how to make the first row.
func (t Table) None() string {
	if t.empty != "" {
		return t.empty
	}
	return "empty: ctrl+n adds a row"
}

// Head is what a column holds in the row under the cursor.
func (t Table) Head(row, col int) string {
	if row < len(t.Records) && col < len(t.Records[row].heads) {
		return t.Records[row].heads[col]
	}
	return t.Columns[col].Head
}

// Hidden tells which way a table goes on: columns to the left and right, rows
// above and below.
func (t Table) Hidden(at Place, w, h int) (left, right, above, below bool) {
	widths := t.Widths(w-1, at.Col)
	n := len(widths)
	return n > 1 && widths[1] == 0, n > 1 && widths[n-1] == 0, at.Top > 0, at.Top+h-1 < len(t.Records)
}

func (t Table) drawRecord(c grid.Canvas, v View, i int, widths []int) {
	here := i == v.At.Row
	if here {
		look := theme.Dim
		if v.Live {
			look = theme.RuleFocus
		}
		c.Set(0, 0, v.Row, look)
	}
	x := 1
	for k, w := range widths {
		if w == 0 || k >= len(t.Records[i].Slots) {
			continue
		}
		s := t.Records[i].Slots[k]
		on := here && k == v.At.Col && v.Live
		switch {
		case on && v.Typing != nil:
			v.Typing.draw(c.In(image.Rect(x, 0, x+w, 1)))
		default:
			look, text := s.look, s.Text
			if s.Bad {
				// The mark says it where colour does not.
				look, text = theme.Bad, text+"!"
				if grid.Width(text) > w {
					text = "!" + s.Text
				}
			}
			if on || v.Live && v.Marked(i, k) {
				look = theme.Selected
			}
			c.Fit(x, 0, look, text, w, t.Columns[k].right)
		}
		x += w + 1
	}
}

// draw shows the text being typed, scrolled under its cursor.
func (e *Edit) draw(c grid.Canvas) {
	text, skip := grid.Window(e.Text, e.Column(), c.W())
	look := theme.Typing
	if e.Replaces() && e.List == nil && e.Text != "" {
		look = theme.Selected
	}
	c.Text(0, 0, look, grid.Fit(text, c.W()))
	c.Paint(e.Column()-skip, 0, 1, theme.Caret)
}

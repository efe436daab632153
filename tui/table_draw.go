package tui

import (
	"image"

	"trivet/tui/grid"
	"trivet/tui/layout"
	"trivet/tui/theme"
)

// drawTable draws the column heads and the rows that fit.
func (m Model) drawTable(c grid.Canvas, p layout.Pane) {
	t, at := m.tables[p], m.at[p]
	widths := t.widths(c.W()-1, at.col)
	x := 1
	for i, w := range widths {
		if w > 0 {
			x = c.Text(x, 0, theme.Head, fit(t.head(at.row, i), w, t.columns[i].right)) + 1
		}
	}
	for y := range c.H() - 1 {
		if i := at.top + y; i < len(t.records) {
			m.drawRecord(c.In(image.Rect(0, y+1, c.W(), y+2)), p, i, widths)
		}
	}
	if len(t.records) == 0 {
		c.Text(1, 1, theme.Dim, grid.Fit(t.none(), c.W()-2))
	}
}

// none says how to make the first row.
func (t table) none() string {
	if t.empty != "" {
		return t.empty
	}
	return "empty: ctrl+n adds a row"
}

// head is what a column holds in the row under the cursor.
func (t table) head(row, col int) string {
	if row < len(t.records) && col < len(t.records[row].heads) {
		return t.records[row].heads[col]
	}
	return t.columns[col].head
}

// hidden tells which way a table goes on: columns to the left and right, rows
// above and below.
func (m Model) hidden(p layout.Pane, w, h int) (left, right, above, below bool) {
	t, at := m.tables[p], m.at[p]
	widths := t.widths(w-1, at.col)
	n := len(widths)
	return n > 1 && widths[1] == 0, n > 1 && widths[n-1] == 0, at.top > 0, at.top+h-1 < len(t.records)
}

func fit(s string, w int, right bool) string {
	if right {
		return grid.FitRight(s, w)
	}
	return grid.Fit(s, w)
}

func (m Model) drawRecord(c grid.Canvas, p layout.Pane, i int, widths []int) {
	t, at := m.tables[p], m.at[p]
	here := i == at.row
	if here {
		look := theme.Dim
		if p == m.focus {
			look = theme.RuleFocus
		}
		c.Set(0, 0, m.theme.Glyphs.Row, look)
	}
	x := 1
	for k, w := range widths {
		if w == 0 || k >= len(t.records[i].slots) {
			continue
		}
		s := t.records[i].slots[k]
		on := here && k == at.col && p == m.focus
		switch {
		case on && m.edit != nil:
			m.drawTyping(c.In(image.Rect(x, 0, x+w, 1)))
		default:
			look, text := s.look, s.text
			if s.bad {
				// The mark says it where colour does not.
				look, text = theme.Bad, text+"!"
				if grid.Width(text) > w {
					text = "!" + s.text
				}
			}
			if on || p == m.focus && m.marked(i, k) {
				look = theme.Selected
			}
			c.Text(x, 0, look, fit(text, w, t.columns[k].right))
		}
		x += w + 1
	}
}

// drawTyping shows the text being typed, scrolled under its cursor.
func (m Model) drawTyping(c grid.Canvas) {
	text, skip := grid.Window(m.edit.Text, m.edit.Column(), c.W())
	c.Text(0, 0, theme.Typing, grid.Fit(text, c.W()))
	c.Paint(m.edit.Column()-skip, 0, 1, theme.Caret)
}

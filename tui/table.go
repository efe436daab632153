package tui

import (
	"image"

	"trivet/mechanics/sheet"
	"trivet/tui/grid"
	"trivet/tui/layout"
	"trivet/tui/theme"
)

// table is what a pane of cells shows.
type table struct {
	columns []column
	records []record
	empty   string // what stands where there are no rows
}

type column struct {
	head  string
	width int  // the least
	grow  int  // share of the room left over
	most  int  // how wide the first column may grow for the names in it
	right bool // numbers
}

// record is a row on screen.
type record struct {
	row   sheet.Ref // the row of the sheet it shows, without a key
	slots []slot
	heads []string // what its cells are, where rows differ
}

// slot is a cell on screen.
type slot struct {
	text string
	does does
	ref  sheet.Ref // the cell it edits
	word int       // which word of the asked results it edits
	bad  bool      // the cell does not read
	need bool      // the row is not whole while this is blank
	look grid.Style
}

// does is what typing into a slot changes.
type does int

const (
	nothing does = iota
	setCell
	setName
	setAsked
)

// place is a cursor in a table, and the rows scrolled past.
type place struct{ row, col, top int }

// widths shares out w columns from column first on; what does not fit is 0. The
// name stays in view at the left.
func (t table) widths(w, col int) []int {
	out := make([]int, len(t.columns))
	if len(out) == 0 {
		return out
	}
	out[0] = min(t.columns[0].width, w)
	name := out[0]
	for _, r := range t.records {
		name = max(name, min(grid.Width(r.slots[0].text), t.columns[0].most))
	}
	for first := 1; first <= len(out); first++ {
		clear(out[1:])
		left, grow := w-out[0], 0
		fits := col < 1
		for i := first; i < len(out); i++ {
			need := t.columns[i].width + 1
			if need > left {
				if i == first && left > 4 {
					out[i], left = left-1, 0
					fits = fits || i == col
				}
				break
			}
			out[i] = t.columns[i].width
			left -= need
			grow += t.columns[i].grow
			fits = fits || i == col
		}
		if !fits && first < len(out)-1 {
			continue
		}
		// Names come first in what is left over.
		more := max(min(name-out[0], left), 0)
		out[0], left = out[0]+more, left-more
		for i := first; i < len(out) && grow > 0; i++ {
			if out[i] > 0 && t.columns[i].grow > 0 {
				more := left * t.columns[i].grow / grow
				out[i] += more
				left -= more
				grow -= t.columns[i].grow
			}
		}
		break
	}
	return out
}

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
	return "nothing yet: ctrl+n makes a row"
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
			if on {
				look = theme.Selected
			}
			c.Text(x, 0, look, fit(text, w, t.columns[k].right))
		}
		x += w + 1
	}
}

// drawTyping shows the text being typed, scrolled under its cursor.
func (m Model) drawTyping(c grid.Canvas) {
	text, skip := grid.Window(m.edit.text, m.edit.column(), c.W())
	c.Text(0, 0, theme.Typing, grid.Fit(text, c.W()))
	c.Paint(m.edit.column()-skip, 0, 1, theme.Caret)
}

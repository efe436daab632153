package cells

import (
	"image"
	"slices"
	"strings"

	"trivet/tui/grid"
	"trivet/tui/theme"
)

// View is how a table shows: its title, where its cursor is, and whether it has the keys.
type View struct {
	Title, Short string // the second where the first has no room
	More         string // which way it goes on
	At           Place
	Live         bool // it has the keys
	Typing       *Edit
	Marked       image.Rectangle // columns and rows
	Row          rune            // marks the row under the cursor
}

// Draw draws the title with the column heads behind it, and the rows that fit.
func (t Table) Draw(c grid.Canvas, v View) {
	at := v.At
	if !v.Live {
		at.Col = 0
	}
	widths := t.Widths(c.W(), at.Col)
	t.drawHeads(c, v, widths)
	for y := range c.H() - 1 {
		if i := at.Top + y; i < len(t.Records) {
			t.drawRecord(c.In(image.Rect(0, y+1, c.W(), y+2)), v, i, widths)
		}
	}
	if len(t.Records) == 0 {
		c.Text(1, 1, theme.Dim, grid.Fit(t.None(), c.W()-2))
	}
}

// drawHeads draws the first line: the title in place of the head of the names, then the
// heads that it and the word of what is hidden leave room for.
func (t Table) drawHeads(c grid.Canvas, v View, widths Widths) {
	look, title := theme.Head, v.Title
	if v.Live {
		look = theme.RuleFocus
	}
	if grid.Width(title) > widths[0] {
		title = v.Short
	}
	from, to := c.Text(1, 0, look, title), c.W()
	if v.More != "" {
		to -= grid.Width(v.More)
		c.Text(to, 0, theme.Dim, v.More)
	}
	x := 1
	for i, w := range widths {
		if w > 0 && i > 0 && x > from && x+w <= to {
			head := t.Columns[i].Head
			if v.Live {
				head = t.Head(v.At.Row, i)
			}
			if k := t.Columns[i].Comes; k > 0 && widths[k] == 0 && len(t.Columns[k].parts) > 0 {
				c.Text(x, 0, theme.Head, t.Columns[k].headed(w))
			} else if len(t.Columns[i].parts) > 0 {
				c.Text(x, 0, theme.Head, t.Columns[i].headed(w))
			} else {
				c.Fit(x, 0, theme.Head, head, w, t.Columns[i].right)
			}
		}
		if w > 0 {
			x += w + 1
		}
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

// Hidden tells which way a table goes on: columns to the left and right, and how many
// rows above and below.
func (t Table) Hidden(at Place, w, h int) (left, right bool, above, below int) {
	widths := t.Widths(w, at.Col)
	for i := 1; i < len(t.Columns); i++ {
		switch {
		case widths[i] > 0:
		case !t.Columns[i].Late && slices.IndexFunc(widths[i:], func(w int) bool { return w > 0 }) >= 0:
			left = true
		default:
			right = true
		}
	}
	return left, right, at.Top, max(len(t.Records)-at.Top-h+1, 0)
}

func (t Table) drawRecord(c grid.Canvas, v View, i int, widths Widths) {
	here := i == v.At.Row && v.Live
	if here {
		c.Set(0, 0, v.Row, theme.RuleFocus)
	}
	x := 1
	for k, w := range widths {
		if w == 0 || k >= len(t.Records[i].Slots) {
			continue
		}
		s, of := t.Records[i].Slots[k], t.Columns[k]
		if to := of.Comes; to > 0 && widths[to] == 0 && !here && !s.Bad && t.Records[i].Slots[to].Text != "" {
			s, of = t.Records[i].Slots[to], t.Columns[to]
		}
		on := here && k == v.At.Col
		switch {
		case on && v.Typing != nil:
			v.Typing.draw(c.In(image.Rect(x, 0, x+w, 1)))
		default:
			look, text := s.look, of.aligned(s, w)
			if s.Bad {
				// The mark says it where colour does not.
				look, text = theme.Bad, s.Text+"!"
				if grid.Width(text) > w {
					text = "!" + s.Text
				}
			}
			if on || v.Live && image.Pt(k, i).In(v.Marked) {
				look = theme.Selected
			}
			c.Fit(x, 0, look, text, w, of.right)
		}
		x += w + 1
	}
}

// apart is what stands between the numbers of a cell.
const apart = 2

// align measures the numbers of each column, so that they stand with their decimal points
// one below the other, and gives those of several numbers the width that this takes.
func (t *Table) align() {
	for k := range t.Columns {
		of := &t.Columns[k]
		if !of.right {
			continue
		}
		n := max(len(of.parts), 1)
		of.whole, of.frac = make([]int, n), make([]int, n)
		for _, r := range t.Records {
			if k >= len(r.Slots) {
				continue
			}
			s := r.Slots[k]
			for j := range n {
				text := s.Text
				if len(of.parts) > 0 {
					if j >= len(s.parts) {
						break
					}
					text = s.parts[j]
				}
				whole, frac, ok := point(text)
				if ok || len(of.parts) > 0 {
					of.whole[j], of.frac[j] = max(of.whole[j], whole), max(of.frac[j], frac)
				}
			}
		}
		if len(of.parts) > 0 {
			of.Width = (n - 1) * apart
			for j := range n {
				of.Width += of.part(j)
			}
		}
	}
}

// part is the width of one of the numbers of a cell, and of its head.
func (c Column) part(j int) int { return max(c.whole[j]+c.frac[j], grid.Width(c.parts[j])) }

// point tells how many columns a number has before its decimal point, and from it on;
// ok is false for what is no plain number.
func point(s string) (whole, frac int, ok bool) {
	at := len(s)
	for i := range len(s) {
		switch {
		case s[i] == '.' && at == len(s):
			at = i
		case s[i] != '-' && (s[i] < '0' || s[i] > '9'):
			return grid.Width(s), 0, false
		}
	}
	return at, len(s) - at, true
}

// aligned is a cell's text with its decimal points where those of its column are.
func (c Column) aligned(s Slot, w int) string {
	if len(c.frac) == 0 || s.Text == "" {
		return s.Text
	}
	if len(c.parts) == 0 {
		_, frac, ok := point(s.Text)
		if text := s.Text + strings.Repeat(" ", max(c.frac[0]-frac, 0)); ok && grid.Width(text) <= w {
			return text
		}
		return s.Text
	}
	if len(s.parts) != len(c.parts) || c.Width > w {
		return s.Text
	}
	var b strings.Builder
	b.Grow(c.Width)
	for j, part := range s.parts {
		if j > 0 {
			b.WriteString(strings.Repeat(" ", apart))
		}
		_, frac, _ := point(part)
		behind := max(c.frac[j]-frac, 0)
		b.WriteString(grid.FitRight(part, c.part(j)-behind))
		b.WriteString(strings.Repeat(" ", behind))
	}
	return b.String()
}

// headed are the heads over the numbers of a column's cells, in a width.
func (c Column) headed(w int) string {
	if len(c.frac) == 0 || c.Width > w {
		return grid.FitRight(strings.Join(c.parts, ", "), w)
	}
	heads := make([]string, len(c.parts))
	for j, head := range c.parts {
		heads[j] = grid.FitRight(head, c.part(j))
	}
	return grid.FitRight(strings.Join(heads, strings.Repeat(" ", apart)), w)
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

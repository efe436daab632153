// Package overlay is what stands over the rest of the screen: a list to choose from, narrowed by
// what is typed, and a text to scroll.
package overlay

import (
	"image"
	"strings"

	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// List is where a list to choose from stands: the text that narrows it, and the row picked among
// those that show.
type List struct {
	text.Line
	Pick int
}

// Row is a row of a list, a text for each column, and all of it in words. Rows of one family stand
// one below the other, under its name.
type Row struct {
	Family string
	Cells  []string
	Says   string
}

// Column is how the cells of a column show, from a place on; no wider than
// Width where that is given. The cell
// of the row picked shows as selected where the column Picks.
type Column struct {
	At, Width int
	Look      grid.Style
	Picks     bool
}

// Narrowed gives what has every word that is typed in what is said of it; capitals count for
// nothing.
func Narrowed[T any](l List, all []T, says func(T) string) (list []T) {
	words := strings.Fields(strings.ToLower(l.Text))
rows:
	for _, x := range all {
		in := strings.ToLower(says(x))
		for _, w := range words {
			if !strings.Contains(in, w) {
				continue rows
			}
		}
		list = append(list, x)
	}
	return list
}

// Typed adds to what narrows the list.
func (l List) Typed(chars string) List {
	l.Insert(chars)
	l.Pick = 0
	return l
}

// Do moves in a list of n rows, some of which are a page, or edits what narrows it.
func (l List) Do(i keys.Intent, n, page int) (_ List, ok bool) {
	switch i {
	case keys.Up, keys.PickUp, keys.CommitUp:
		l.Pick--
	case keys.Down, keys.PickDown, keys.CommitDown:
		l.Pick++
	case keys.PageUp:
		l.Pick -= page
	case keys.PageDown:
		l.Pick += page
	case keys.First:
		l.Pick = 0
	case keys.Last:
		l.Pick = n - 1
	default:
		was := l.Text
		if !l.Handle(i) {
			return l, false
		}
		if l.Text != was {
			l.Pick = 0
		}
		return l, true
	}
	l.Pick = max(min(l.Pick, n-1), 0)
	return l, true
}

// heading is the item of a line with a family's name.
const heading = -1

// items gives the lines of the list: the row of each, or heading.
func items(rows []Row) (items []int) {
	family := ""
	for i, r := range rows {
		if r.Family != family {
			family, items = r.Family, append(items, heading)
		}
		items = append(items, i)
	}
	return items
}

// top is the first of the lines that show in a height: the row picked stands in the middle, where
// the ends of the list let it.
func (l List) top(items []int, h int) int {
	at := l.Pick
	for y, i := range items {
		if i == l.Pick {
			at = y
		}
	}
	return max(min(at-h/2, len(items)-h), 0)
}

// At gives the row that stands at a line of a list so high.
func (l List) At(rows []Row, h, y int) (row int, ok bool) {
	items := items(rows)
	if y += l.top(items, h); y < 0 || y >= len(items) || items[y] == heading {
		return 0, false
	}
	return items[y], true
}

// Draw shows the rows, as many as there is room for, with a mark before the one picked.
func (l List) Draw(c grid.Canvas, mark rune, columns []Column, rows []Row) {
	items := items(rows)
	top := l.top(items, c.H())
	for y := range min(c.H(), len(items)-top) {
		at := items[top+y]
		if at == heading {
			family := rows[items[top+y+1]].Family
			c.Text(0, y, theme.Head, grid.Fit(family, min(grid.Width(family), c.W())))
			continue
		}
		if at == l.Pick {
			c.Set(0, y, mark, theme.RuleFocus)
		}
		for k, col := range columns {
			look, w := col.Look, max(c.W()-col.At-1, 0)
			if col.Picks && at == l.Pick {
				look = theme.Selected
			}
			if col.Width > 0 {
				w = min(w, col.Width)
			}
			c.Text(col.At, y, look, grid.Fit(rows[at].Cells[k], w))
		}
	}
}

// Place is where a box of so many rows under its title stands at the lower end of a rectangle.
func Place(in image.Rectangle, w, rows int) image.Rectangle {
	w, rows = min(in.Dx(), w), min(rows, max(in.Dy()-1, 1))
	x, y := in.Min.X+(in.Dx()-w)/2, max(in.Max.Y-rows-1, 0)
	return image.Rect(x, y, x+w, y+rows+1)
}

// Box clears a canvas, rules its title, and gives what is below.
func Box(c grid.Canvas, rule rune, title string) grid.Canvas {
	c.Fill(' ', theme.Plain)
	c.In(image.Rect(0, 0, c.W(), 1)).Fill(rule, theme.RuleFocus)
	c.Text(1, 0, theme.RuleFocus, grid.Fit(title, min(grid.Width(title), c.W()-2)))
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

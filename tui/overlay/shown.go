package overlay

import (
	"fmt"
	"slices"
	"strings"

	"trivet/tui/grid"
	"trivet/tui/theme"
)

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

// Shown is a list as it shows: the same rows are drawn and said.
type Shown struct {
	List
	Title   string // over the rows
	Intro   string // where one listens, said as the list opens
	Noun    string // of a row, where it is said
	None    string // in place of rows
	Columns []Column
	Rows    []Row
}

// heading is the item of a line with a family's name.
const heading = -1

// lines gives the item of each line, a row or heading, and the first of the lines that show in a
// height: the row picked stands in the middle, where the ends of the list let it.
func (s Shown) lines(h int) (items []int, top int) {
	family, at := "", 0
	for i, r := range s.Rows {
		if r.Family != family {
			family, items = r.Family, append(items, heading)
		}
		if i == s.Pick {
			at = len(items)
		}
		items = append(items, i)
	}
	return items, max(min(at-h/2, len(items)-h), 0)
}

// At gives the row that stands at a line of a list so high.
func (s Shown) At(h, y int) (row int, ok bool) {
	items, top := s.lines(h)
	if y += top; y < 0 || y >= len(items) || items[y] == heading {
		return 0, false
	}
	return items[y], true
}

// Draw shows the rows, as many as there is room for, with a mark before the one picked, or that
// there are none.
func (s Shown) Draw(c grid.Canvas, mark rune) {
	if len(s.Rows) == 0 {
		c.Text(1, 0, theme.Dim, grid.Fit(s.None, c.W()-2))
		return
	}
	items, top := s.lines(c.H())
	for y := range min(c.H(), len(items)-top) {
		at := items[top+y]
		if at == heading {
			family := s.Rows[items[top+y+1]].Family
			c.Text(0, y, theme.Head, grid.Fit(family, min(grid.Width(family), c.W())))
			continue
		}
		if at == s.Pick {
			c.Set(0, y, mark, theme.RuleFocus)
		}
		for k, col := range s.Columns {
			look, w := col.Look, max(c.W()-col.At-1, 0)
			if col.Picks && at == s.Pick {
				look = theme.Selected
			}
			if col.Width > 0 {
				w = min(w, col.Width)
			}
			c.Text(col.At, y, look, grid.Fit(s.Rows[at].Cells[k], w))
		}
	}
}

// Says tells which row is picked, in words.
func (s Shown) Says() string {
	if s.Pick >= len(s.Rows) {
		return s.None
	}
	r := s.Rows[s.Pick]
	where := fmt.Sprintf("%s%d of %d", s.Noun, s.Pick+1, len(s.Rows))
	if r.Family != "" {
		where += ", " + r.Family
	}
	return where + ": " + r.Says
}

// All are the rows in words, one after the other.
func (s Shown) All() string {
	says := make([]string, len(s.Rows))
	for i, r := range s.Rows {
		says[i] = r.Says
	}
	return strings.Join(says, "; ")
}

// Same tells that two lists say the same: as many rows, and the same of them picked.
func (s Shown) Same(as Shown) bool {
	picked := func(s Shown) []string {
		if s.Pick >= len(s.Rows) {
			return nil
		}
		return s.Rows[s.Pick].Cells
	}
	return s.Pick == as.Pick && len(s.Rows) == len(as.Rows) && slices.Equal(picked(s), picked(as))
}

package tui

import (
	"trivet/mechanics/sheet"
	"trivet/tui/grid"
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
	limit int  // how wide the first column may grow for the names in it
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
	ref  sheet.Ref // the cell it edits
	word int       // which word of the asked results it edits
	does does
	bad  bool // the cell does not read
	need bool // the row is not whole while this is blank
	look grid.Style
}

// does is what typing into a slot changes.
type does uint8

const (
	nothing does = iota
	setCell
	setName
	setAsked
)

// place is a cursor in a table, and the rows scrolled past.
type place struct{ row, col, top int }

// room makes place for so many rows at once, and gives the cells of the row that
// is asked for.
func (t *table) room(rows int) func(row int) []slot {
	n := len(t.columns)
	t.records = make([]record, 0, rows)
	store := make([]slot, rows*n)
	return func(row int) []slot { return store[row*n : (row+1)*n : (row+1)*n] }
}

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
		name = max(name, min(grid.Width(r.slots[0].text), t.columns[0].limit))
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

// Package cells is the panes of cells: their rows and columns as data, made from the sheet and its result,
// and the cell that is typed in.
package cells

import (
	"slices"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/tui/grid"
)

// Table is what a pane of cells shows.
type Table struct {
	Columns []Column
	Records []Record
	empty   string // what stands where there are no rows
}

type Column struct {
	Head  string
	Width int      // the least
	Grow  int      // share of the room left over
	Limit int      // how wide the first column may grow for the names in it
	Late  bool     // it gives way to the others where there is no room for all
	Comes int      // the column of what its cells come to, which stands in their place where that has no room; 0: none
	right bool     // numbers
	parts []string // heads of the numbers of a cell, where each has several

	whole, frac []int // columns before the decimal point, of each number of a cell, and from it on
}

// Record is a row on screen.
type Record struct {
	Row   sheet.Ref // the row of the sheet it shows, without a key
	Slots []Slot
	heads []string // what its cells are, where rows differ
}

// Slot is a cell on screen.
type Slot struct {
	Text string
	Ref  sheet.Ref // the cell it edits
	Word int       // which word of the asked results it edits
	Does does
	Bad  bool // the cell does not read
	Need bool // the row is not whole while this is blank
	Rare bool // few rows have it: enter passes it over while it is blank
	look grid.Style

	parts []string // its numbers, where it has several
}

// does is what typing into a slot changes.
type does uint8

const (
	Nothing does = iota
	SetCell
	SetName
	SetAsked
	SetReaction // of a support that a force is to take the place of
)

// Label names the cell that a slot edits: "T1 through".
func (s Slot) Label() string {
	switch {
	case s.Does == SetName:
		if s.Ref.Row == "" {
			return "new in " + s.Ref.Table
		}
		return "name of " + s.Ref.Row
	case s.Does == SetAsked:
		return "result"
	case s.Does == SetReaction:
		return "reaction " + s.Ref.Row
	case s.Ref.Table == "answers":
		return "your answer " + s.Ref.Row
	case s.Ref.Key == "":
		return s.Ref.Row
	}
	return s.Ref.Row + " " + Called(s.Ref)
}

// LabelOf names a cell of the sheet.
func LabelOf(ref sheet.Ref) string { return Slot{Ref: ref, Does: SetCell}.Label() }

// called is what the keys of a table are called at the head of their column, where that is another
// word.
var called = map[string]map[string]string{
	"lines":   {"path": "through", "at": "through", "along": "direction", "components": "direction"},
	"answers": {"printed": "your answer", "": "your answer"},
}

// Called is what a cell is called in its pane.
func Called(ref sheet.Ref) string {
	if word, ok := called[ref.Table][ref.Key]; ok {
		return word
	}
	return ref.Key
}

// Said is what is wrong, with the keys that it names as their panes call them.
func Said(e problem.Error) *diag.Error {
	return e.Called(func(table, key string) string { return Called(sheet.Ref{Table: table, Key: key}) })
}

// Located says where an error is, in the words of the panes, and what to try, on one line.
func Located(e problem.Error) string {
	at := e.Ref.Row
	for _, t := range problem.Tables() {
		if t.Name == e.Ref.Table && !t.Fixed && at != "" {
			at = t.Row + " " + at
		}
	}
	if !e.InName { // else it is in what is said
		if head := Called(e.Ref); head != "" && at != "" {
			at += " " + head
		}
	} else if e.Ref.Key == "" {
		at = ""
	}
	if at == "" {
		return Said(e).Text()
	}
	return at + ": " + Said(e).Text()
}

// RowOf is where a row of the sheet shows; -1: nowhere.
func (t Table) RowOf(ref sheet.Ref) int {
	return slices.IndexFunc(t.Records, func(r Record) bool { return r.Row == sheet.Ref{Table: ref.Table, Row: ref.Row} })
}

// Next is the next cell of a row behind a column that is typed in; ok is false behind
// the last.
func (r Record) Next(col int) (next int, ok bool) {
	for next = col + 1; next < len(r.Slots); next++ {
		if s := r.Slots[next]; s.Does == SetCell && !s.Rare {
			return next, true
		}
	}
	return col, false
}

// Place is a cursor in a table, and the rows scrolled past.
type Place struct{ Row, Col, Top int }

// room makes place for so many rows at once, and gives the cells of the row that
// is asked for.
func (t *Table) room(rows int) func(row int) []Slot {
	n := len(t.Columns)
	t.Records = make([]Record, 0, rows)
	store := make([]Slot, rows*n)
	return func(row int) []Slot { return store[row*n : (row+1)*n : (row+1)*n] }
}

// Widths are how wide the columns of a table show; those that do not, and what lies behind the
// last, are 0.
type Widths [maxColumns]int

// maxColumns is how many columns a table has at most: the lines' with their belts'.
const maxColumns = 13

// Widths shares out the columns of a pane that is w wide, the first and the last of which
// stay free; what does not fit is 0. The name stays in view at the
// left, and behind it the first columns, those that may wait last; else, where that
// leaves the one under the cursor out, those from a later one on. In a pane that does
// not have the keys that is column 0.
func (t Table) Widths(w, col int) (out Widths) {
	n := len(t.Columns)
	if n == 0 {
		return out
	}
	w = max(w-2, 0)
	out[0] = min(t.Columns[0].Width, w)
	name := out[0]
	for _, r := range t.Records {
		name = max(name, min(grid.Width(r.Slots[0].Text), t.Columns[0].Limit))
	}
	var store Widths
	order := store[:0]
	for _, late := range [...]bool{false, true} {
		for i := 1; i < n; i++ {
			if t.Columns[i].Late == late {
				order = append(order, i)
			}
		}
	}
	left, ok := t.share(&out, order, w-out[0], col)
	if !ok && t.Columns[col].Late {
		at := slices.Index(order, col)
		copy(order[1:at+1], order[:at])
		order[0] = col
		left, ok = t.share(&out, order, w-out[0], col)
	}
	for first := 2; !ok && first < n; first++ {
		for i := range order {
			order[i] = i + 1
		}
		left, ok = t.share(&out, order[first-1:], w-out[0], col)
	}
	// Names come first in what is left over.
	more := max(min(name-out[0], left), 0)
	out[0], left = out[0]+more, left-more
	grow := 0
	for i, c := range t.Columns[1:] {
		if out[i+1] > 0 {
			grow += c.Grow
		}
	}
	for i := 1; i < n && grow > 0; i++ {
		if out[i] > 0 && t.Columns[i].Grow > 0 {
			more := left * t.Columns[i].Grow / grow
			out[i] += more
			left -= more
			grow -= t.Columns[i].Grow
		}
	}
	return out
}

// CellAt is the row and the column at a place of a pane that is w wide, the column -1 beside them;
// col is that of the cursor, 0 where the pane does not have the keys.
func (t Table) CellAt(at Place, w, col, x, y int) (row, column int) {
	column, left := -1, 1
	for i, w := range t.Widths(w, col) {
		if w > 0 {
			if x >= left && x < left+w {
				column = i
			}
			left += w + 1
		}
	}
	return at.Top + y, column
}

// share gives columns their least widths in an order, as far as they fit, and tells how
// much is left and whether the one under the cursor has room.
func (t Table) share(out *Widths, order []int, left, col int) (int, bool) {
	clear(out[1:])
	for n, i := range order {
		need := t.Columns[i].Width + 1
		if need > left {
			if n == 0 && left > 4 {
				out[i], left = left-1, 0
			}
			break
		}
		out[i] = t.Columns[i].Width
		left -= need
	}
	return left, col < 1 || out[col] > 0
}

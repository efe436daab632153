package edit

import (
	"strings"

	"trivet/mechanics/names"
	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/layout"
)

// shown is the text of a cell: what is typed there, or what follows from others.
func shown(s *sheet.Sheet, slot cells.Slot) string {
	if slot.Does == cells.Nothing {
		return slot.Text
	}
	return Raw(s, slot)
}

// Find goes to the next cell that holds a text, from the cell under the cursor on or, with skip 1,
// from the one behind it, and gives its pane; capitals count for nothing.
func (e *Editor) Find(w Where, text string, skip int) (layout.Pane, bool) {
	want := strings.ToLower(text)
	p, row, col := w.Pane, e.At[w.Pane].Row, e.At[w.Pane].Col+skip
	for range int(layout.System) + 1 {
		for records := e.Tables[p].Records; row < len(records); row, col = row+1, 0 {
			for ; col < len(records[row].Slots); col++ {
				if strings.Contains(strings.ToLower(shown(w.Sheet, records[row].Slots[col])), want) {
					e.At[p].Row, e.At[p].Col = row, col
					return p, true
				}
			}
		}
		p, row, col = (p+1)%layout.System, 0, 0
	}
	return w.Pane, false
}

// Defined is the row that defines the name under the cursor: of the cell being typed in, or the
// first name in the cell under the cursor. Else it says why there is none.
func (e *Editor) Defined(w Where) (ref sheet.Ref, why string) {
	s, ok := e.Slot(w.Pane)
	text, first := Raw(w.Sheet, s), 0
	last := len(text)
	if c := e.Cell; c != nil {
		s, text, first, last = c.Slot, c.Text, c.At, c.At
	}
	if !ok || s.Does != cells.SetCell && s.Does != cells.SetAsked {
		return ref, "this cell contains no name"
	}
	for at := first; at <= last; at++ {
		if ref, ok := names.Definition(w.Sheet, s.Ref, text, at); ok {
			return ref, ""
		}
	}
	return ref, "there is no name here that the sheet defines"
}

// homes are the panes that the rows of a table have their home in.
var homes = map[string]layout.Pane{
	"": layout.Sheet, "units": layout.Sheet, "given": layout.Given, "points": layout.Points, "lines": layout.Lines,
	"joints": layout.Supports, "bodies": layout.Supports, "couples": layout.Supports, "distributed": layout.Supports,
}

// Show goes to a row in the pane that is its home, on the cell of a key where the row shows it.
func (e *Editor) Show(ref sheet.Ref) (home layout.Pane, ok bool) {
	home, ok = homes[ref.Table]
	k := e.Tables[home].RowOf(ref)
	if !ok || k < 0 {
		return home, false
	}
	e.At[home].Row, e.At[home].Col = k, 0
	for col, s := range e.Tables[home].Records[k].Slots {
		if s.Does == cells.SetCell && s.Ref == ref {
			e.At[home].Col = col
		}
	}
	return home, true
}

package edit

import (
	"strings"

	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/text"
)

// Search is a text looked for in the cells.
type Search struct {
	text.Line
	On   bool // it is being typed
	from Spot // where it began
}

// Spot is a pane of cells with the cursor in it.
type Spot struct {
	Pane layout.Pane
	At   cells.Place
}

// Spot is where the cursor of a pane is; of one that is read, that of the last of the cells.
func (e *Editor) Spot(p layout.Pane) Spot { return Spot{p, e.At[min(p, layout.System-1)]} }

// Seek begins to look for a text, goes on to the next cell that holds it, or goes back to where a
// definition was asked for.
func (e *Editor) Seek(w Where, i keys.Intent) Outcome {
	switch {
	case i == keys.GoBack:
		return e.goBack()
	case i == keys.Search || e.Search.Text == "":
		e.Search = Search{On: true, from: e.Spot(w.Pane)}
		return Outcome{}
	}
	return e.seek(w, 1)
}

// InSearch does the intents of the line that is looked for; ok tells that it was one.
func (e *Editor) InSearch(w Where, i keys.Intent) (o Outcome, ok bool) {
	switch i {
	case keys.Cancel:
		e.Search.On = false
		return o, true
	case keys.SearchNext:
		return e.seek(w, 1), true
	}
	was := e.Search.Text
	if ok = e.Search.Handle(i); e.Search.Text != was {
		o = e.seek(w, 0)
	}
	return o, ok
}

// seek goes to the next cell that holds the text, from the one where the search began on or, with
// skip 1, from the one behind the cursor; capitals count for nothing.
func (e *Editor) seek(w Where, skip int) Outcome {
	from := e.Spot(w.Pane)
	if skip == 0 { // each character typed looks from there
		from = e.Search.from
	}
	if e.Search.Text == "" {
		return Outcome{}
	}
	want := strings.ToLower(e.Search.Text)
	p, row, col := from.Pane, from.At.Row, from.At.Col+skip
	for range int(layout.System) + 1 {
		for records := e.Tables[p].Records; row < len(records); row, col = row+1, 0 {
			for ; col < len(records[row].Slots); col++ {
				if strings.Contains(strings.ToLower(shown(w.Sheet, records[row].Slots[col])), want) {
					e.Mark = Mark{}
					return Outcome{Go: ToSpot, Spot: Spot{p, cells.Place{Row: row, Col: col, Top: e.At[p].Top}}}
				}
			}
		}
		p, row, col = (p+1)%layout.System, 0, 0
	}
	return Outcome{Go: ToSpot, Spot: from, Says: "no cell contains " + e.Search.Text}
}

// shown is the text of a cell: what is typed there, or what follows from others.
func shown(s *sheet.Sheet, slot cells.Slot) string {
	if slot.Does == cells.Nothing {
		return slot.Text
	}
	return Raw(s, slot)
}

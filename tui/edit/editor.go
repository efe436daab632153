// Package edit changes the sheet from its panes of cells: the cursors there, the one cell that is typed
// in, rows made, moved and deleted, blocks copied and pasted,
// texts and definitions looked for. What a key comes to is an Outcome, which
// the workbench carries out; nothing here solves or draws.
package edit

import (
	"fmt"
	"math"

	"trivet/mechanics/names"
	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/journal"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/session"
)

// Editor is the panes of cells as they show, where their cursors are, and what is being typed, marked
// and copied there.
type Editor struct {
	Tables [layout.System]cells.Table
	Made   cells.Builder // what they were built by
	At     [layout.System]cells.Place

	Cell   *cells.Edit  // being typed in; nil: none
	Fresh  *cells.Fresh // a row that has no name yet
	Newest sheet.Ref    // the row made last, while the next may follow it
	Mark   Mark
	Search Search
	clip   clip   // copied last
	jumps  []Spot // where definitions were asked for
}

// Where is what is edited: the sheet as it was kept last, and the pane that has the keys.
type Where struct {
	Sheet *sheet.Sheet
	Pane  layout.Pane
	Shown [layout.System]bool // the panes of cells that show
	Page  int                 // how many rows of that pane show
}

// Outcome is what is to follow from a key.
type Outcome struct {
	Sheet *sheet.Sheet  // as it is from now on, as one step of its history; nil: nothing changed
	Kept  sheet.Ref     // the cell whose text it was that changed; zero: more than one, or none
	Draft *sheet.Sheet  // the sheet with the cell as it is being typed, to be solved
	Typed session.Draft // how far that has come

	Go   Way       // where the cursor goes once the tables show the sheet
	Row  sheet.Ref // for the ways to a row
	Spot Spot      // for the way to a spot

	Choose bool   // ask which kind of row to make
	Copied string // for the clipboard
	Says   string
	Bad    bool // what it says is an error
}

// Way is where the cursor goes.
type Way uint8

// The ways. Onward is to the next cell of the row, behind its last to the row below, and behind
// the last row to a new one.
const (
	Stay Way = iota
	Onward
	Down
	Up
	Next // cell that can be typed in, on into the next pane
	Prev
	ToRow
	ToFirst // cell of a row behind its name, which opens
	ToHome  // of a row
	ToSpot
)

func saying(format string, a ...any) Outcome { return Outcome{Says: fmt.Sprintf(format, a...)} }

// do makes edits of the sheet as one step.
func (w Where) do(edits ...sheet.Edit) Outcome {
	next, err := w.Sheet.Apply(edits...)
	if err != nil {
		return Outcome{Says: err.Error(), Bad: true}
	}
	return Outcome{Sheet: next}
}

// Slot is the cell under the cursor of a pane.
func (e *Editor) Slot(p layout.Pane) (cells.Slot, bool) {
	if p >= layout.System {
		return cells.Slot{}, false
	}
	t, at := e.Tables[p], e.At[p]
	if at.Row >= len(t.Records) || at.Col >= len(t.Records[at.Row].Slots) {
		return cells.Slot{}, false
	}
	return t.Records[at.Row].Slots[at.Col], true
}

// record is the row under the cursor of a pane.
func (e *Editor) record(p layout.Pane) (cells.Record, bool) {
	if t, at := e.Tables[p], e.At[p]; at.Row < len(t.Records) {
		return t.Records[at.Row], true
	}
	return cells.Record{}, false
}

// Raw is the text that an edit of a slot begins with: the cell's own, where the
// slot shows a mark instead.
func Raw(s *sheet.Sheet, slot cells.Slot) string {
	switch slot.Does {
	case cells.SetName:
		return slot.Ref.Row
	case cells.SetAsked:
		return slot.Text
	}
	c, _ := s.Cell(slot.Ref)
	return c.Text
}

// Unknown is what a magnitude says that is to be found.
const Unknown = "?"

// TakesUnknown tells whether it says something in the cell under the cursor.
func (e *Editor) TakesUnknown(p layout.Pane) bool {
	s, ok := e.Slot(p)
	key := s.Ref.Key
	return ok && s.Does == cells.SetCell && (s.Ref.Table == "lines" || s.Ref.Table == "couples") && (key == "magnitude" || key == "components")
}

// open begins to edit the cell under the cursor from the text it has, or says why not.
func (e *Editor) open(w Where) (refused string) {
	s, ok := e.Slot(w.Pane)
	r, _ := e.record(w.Pane)
	switch {
	case ok && s.Does == cells.Nothing && w.Pane == layout.Supports && s.Text == "":
		return "a row of this kind has no such cell"
	case w.Pane == layout.Unknowns && e.At[w.Pane].Col == 1 && r.Row.Table == "joints" && e.openReaction(w):
		return ""
	case w.Pane == layout.Unknowns && e.At[w.Pane].Col == 1 && r.Row.Table == "joints":
		return "the reaction of this support is found. Try: a force of that magnitude in its place"
	case !ok || s.Does == cells.Nothing:
		return "this cell is derived and cannot be edited"
	}
	if s.Does == cells.SetName && s.Ref.Table == "" {
		if what, owner, owned := names.OwnerOf(w.Sheet, s.Ref.Row); owned {
			return fmt.Sprintf("%s is named after the %s %s: rename that", s.Ref.Row, what, owner)
		}
	}
	e.Cell = e.Made.Open(s, Raw(w.Sheet, s), false)
	return ""
}

// openNext opens the cell come to in a row that is being made: a list shows, and what is typed
// replaces what stands there.
func (e *Editor) openNext(w Where) {
	if s, ok := e.Slot(w.Pane); ok && s.Does == cells.SetCell {
		e.Cell = e.Made.Open(s, Raw(w.Sheet, s), true)
	}
}

// BeginRow begins a row of a table with its name: behind the row under the
// cursor, or behind the table's last where that is of another table.
func (e *Editor) BeginRow(p layout.Pane, table string) {
	f := &cells.Fresh{Table: table}
	records, at := e.Tables[p].Records, e.At[p].Row
	same := at < len(records) && records[at].Row.Table == table
	for i, r := range records {
		if r.Row.Table == table && (!same || i <= at) {
			f.At, f.After = i+1, r.Row.Row
		}
	}
	if table == "" || f.After == "" && f.At == 0 {
		f.At = len(records)
	}
	slot := cells.Slot{Does: cells.SetName, Ref: sheet.Ref{Table: table}}
	if table == "" {
		slot.Does, slot.Word = cells.SetAsked, behindAll
	}
	e.Fresh, e.At[p].Row, e.At[p].Col = f, f.At, 0
	e.Cell = &cells.Edit{Slot: slot, Pick: cells.Unpicked}
}

// behindAll is the place of a result that is asked for behind all others.
const behindAll = math.MaxInt

// newRow begins a row behind the one under the cursor; among the supports it is asked first which
// kind it is to be.
func (e *Editor) newRow(p layout.Pane) Outcome {
	switch p {
	case layout.Supports:
		return Outcome{Choose: true}
	case layout.Sheet:
		return saying("the rows of the sheet are fixed. Try: f7 g, for a given")
	}
	e.BeginRow(p, [...]string{layout.Given: "given", layout.Points: "points", layout.Lines: "lines", layout.Unknowns: ""}[p])
	return Outcome{}
}

// Drop ends what is being typed, and keeps nothing of it.
func (e *Editor) Drop() { e.Cell, e.Fresh = nil, nil }

// Typing tells that the text of the cell being typed in is not what it was.
func (e *Editor) Typing() bool { return e.Cell != nil && e.Cell.Text != e.Cell.Was }

// Unkept tells that there is something in it, or a new row, to be lost.
func (e *Editor) Unkept() bool { return e.Typing() || e.Cell != nil && e.Fresh != nil }

// Typed is what is being typed, for the journal; nil: nothing. The name of a row that is there
// already is given without the row: it is no cell that could be written.
func (e *Editor) Typed(s *sheet.Sheet) *journal.Typed {
	if !e.Typing() {
		return nil
	}
	slot := e.Cell.Slot
	if slot.Does == cells.SetName || slot.Does == cells.SetReaction {
		return &journal.Typed{Ref: sheet.Ref{Table: slot.Ref.Table}, Text: e.Cell.Text}
	}
	ref, text := CellOf(s, slot, e.Cell.Text)
	return &journal.Typed{Ref: ref, Text: text}
}

// Rest is an editor at the first cells, with what was copied and looked for last.
func (e *Editor) Rest() Editor { return Editor{clip: e.clip, Search: e.Search} }

// blank tells that a row without a name is open, with nothing typed.
func (e *Editor) blank() bool { return e.Fresh != nil && e.Cell != nil && e.Cell.Text == "" }

// DropBlank leaves the row that began by itself, while it is blank, for a key that
// means something on the cells alone.
func (e *Editor) DropBlank(mode keys.Mode, key string) bool {
	_, typing := keys.Find(mode, key)
	_, moves := keys.Find(keys.OnCells, key)
	if !e.blank() || e.Newest == (sheet.Ref{}) || e.Newest.Table != e.Fresh.Table || typing || !moves {
		return false
	}
	e.Drop()
	e.Newest = sheet.Ref{}
	return true
}

package speech

import (
	"fmt"
	"strings"

	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/grid"
	"trivet/tui/layout"
	"trivet/tui/text"
)

// Where is a place of the cells.
type Where struct {
	On       bool // there is one; else what is said names all of it
	Pane     layout.Pane
	Row      sheet.Ref
	N        int // which row of the pane it is
	Col      int
	Marked   bool // a block is, from a cell on
	From, To int  // that cell, by row and column
}

// Place is where the cursor of the cells is.
type Place struct {
	At      Where
	Pane    string // its title within a sentence
	Table   cells.Table
	Follows []cells.Fact // from the row
	Marked  [2]int       // how many rows and columns are
	Wrong   string       // with the cell
}

// PlaceOf is the place of a cursor in the table of a pane.
func PlaceOf(p layout.Pane, title string, t cells.Table, at cells.Place) Place {
	out := Place{Pane: title, Table: t, At: Where{On: true, Pane: p, N: at.Row, Col: at.Col}}
	if at.Row < len(t.Records) {
		out.At.Row = t.Records[at.Row].Row
	}
	return out
}

// slot is the cell under the cursor, and the slots of its row.
func (p Place) slot() (s cells.Slot, row []cells.Slot, ok bool) {
	if p.At.N < len(p.Table.Records) {
		row = p.Table.Records[p.At.N].Slots
	}
	if p.At.Col < len(row) {
		return row[p.At.Col], row, true
	}
	return s, row, false
}

// words name the row and the column of the cell; the column is empty where the row has no such cell.
func (p Place) words() (row, column string) {
	s, slots, ok := p.slot()
	row = "without a name"
	if len(slots) > 0 && strings.TrimSpace(slots[0].Text) != "" {
		row = slots[0].Text
	}
	if ok && s.Does == cells.SetName {
		return row, "name"
	}
	if p.At.N < len(p.Table.Records) {
		column = p.Table.Head(p.At.N, p.At.Col)
	}
	return row, column
}

// prompt stands on the last line, before what the cell holds.
func (p Place) prompt() (string, text.Line) {
	if s, _, ok := p.slot(); ok {
		row, column := p.words()
		return p.Pane + ", " + row + ", " + column + ": ", text.Line{Text: grid.Clean(s.Text)}
	}
	return p.Pane + ": ", text.Line{}
}

// since says where the cursor has come to, as far as it differs from where it was: pane, row,
// column, what is there and what follows from it.
func (p Place) since(was Where) []string {
	if len(p.Table.Records) == 0 {
		return []string{p.Pane + ": " + p.Table.None()}
	}
	samePane := was.On && was.Pane == p.At.Pane
	sameRow := samePane && was.Row == p.At.Row && was.N == p.At.N
	row, column := p.words()
	s, _, _ := p.slot()
	var parts []string
	if !samePane {
		parts = append(parts, p.Pane)
	}
	if !sameRow {
		parts = append(parts, fmt.Sprintf("row %s, %d of %d", row, p.At.N+1, len(p.Table.Records)))
	}
	cell := strings.TrimSpace(s.Text)
	switch {
	case cell != "":
	case s.Need:
		cell = "blank, needed"
	default:
		cell = "blank"
	}
	switch {
	case !sameRow && s.Does == cells.SetName:
	case column == "":
		parts = append(parts, "a row of this kind has no such cell")
	default:
		parts = append(parts, column+": "+cell)
	}
	line := strings.Join(parts, ", ")
	if len(p.Follows) > 0 && !sameRow {
		line += "; " + cells.SaidFacts(p.Follows)
	}
	if p.At.Marked {
		line += "; marked: " + say.Count(p.Marked[0], "row") + ", " + say.Count(p.Marked[1], "column")
	}
	return []string{line, p.Wrong}
}

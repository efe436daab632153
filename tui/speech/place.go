package speech

import (
	"fmt"
	"strings"

	"trivet/mechanics/sheet"
	"trivet/tui/layout"
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

// Place is where the cursor of the cells is, in words.
type Place struct {
	At        Where
	Pane, Row string
	Rows      int    // of the pane
	None      string // said of a pane without rows
	Column    string // what the cell is; empty where the row has no such cell
	Name      bool   // it is the row's name
	Cell      string // what it holds
	Follows   string // from the row
	Marked    string // how much is
	Wrong     string // with the cell
}

// since says where the cursor has come to, as far as it differs from where it was: pane, row,
// column, what is there and what follows from it.
func (p Place) since(was Where) []string {
	if p.Rows == 0 {
		return []string{p.Pane + ": " + p.None}
	}
	samePane := was.On && was.Pane == p.At.Pane
	sameRow := samePane && was.Row == p.At.Row && was.N == p.At.N
	var parts []string
	if !samePane {
		parts = append(parts, p.Pane)
	}
	if !sameRow {
		parts = append(parts, fmt.Sprintf("row %s, %d of %d", p.Row, p.At.N+1, p.Rows))
	}
	switch {
	case !sameRow && p.Name:
	case p.Column == "":
		parts = append(parts, "a row of this kind has no such cell")
	default:
		parts = append(parts, p.Column+": "+p.Cell)
	}
	line := strings.Join(parts, ", ")
	if p.Follows != "" && !sameRow {
		line += "; " + p.Follows
	}
	if p.Marked != "" {
		line += "; marked: " + p.Marked
	}
	return []string{line, p.Wrong}
}

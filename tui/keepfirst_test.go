package tui

import (
	"testing"

	"trivet/mechanics/sheet"
	"trivet/tui/layout"
)

// A key of the workbench pressed within a cell keeps what is typed there first.
func TestKeysOfTheWorkbenchKeepTheCell(t *testing.T) {
	r := startRig(t, 120, 36)
	r.keys("esc")
	r.text("P")
	r.keys("enter")
	r.text("0,0,0")
	r.keys("f7 f")
	r.holds(sheet.Ref{Table: "points", Row: "P", Key: "at"}, "0,0,0")
	if r.m.Focus != layout.Lines || r.m.cells.Cell != nil {
		t.Errorf("f7 f within a cell leads to pane %v, editing %v", r.m.Focus, r.m.cells.Cell != nil)
	}
	r.keys("alt+p")
	r.text("1,2,3")
	r.keys("ctrl+n")
	r.holds(sheet.Ref{Table: "points", Row: "P", Key: "at"}, "1,2,3")
	r.text("A")
	r.keys("enter")
	r.text("4,0,0")
	r.keys("ctrl+n")
	r.holds(sheet.Ref{Table: "points", Row: "A"}, "4,0,0")
	if r.m.cells.Fresh == nil {
		t.Error("ctrl+n within a cell makes no row")
	}
}

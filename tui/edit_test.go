package tui

import (
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/layout"
)

var (
	pointA = sheet.Ref{Table: "points", Row: "A"}
	pointD = sheet.Ref{Table: "points", Row: "D", Key: "at"}
)

func TestTheLampIsSolved(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.sees("determinate", "37.5 N", "75.0%", "lamp.toml", "T1 (T)")
	if strings.Contains(r.screen(), "stale") || strings.Contains(r.screen(), "unsaved") {
		t.Errorf("a sheet just opened is stale or unsaved:\n%s", r.screen())
	}
}

func TestTypingReplacesAndIsLive(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("down", "right") // A's place
	r.text("-3, 0")
	// Both cables at work, T1 now level: T1 = 0.6/0.8 * 60 = 45, T2 = 75 N.
	r.sees("45.0 N", "75.0 N", "A: -3, 0")
	r.holds(pointA, "-3, 4") // nothing is written before it is kept
	r.keys("enter")
	r.holds(pointA, "-3, 0")
	r.sees("unsaved", "45.0 N")
	if at := r.m.cells.At[layout.Points]; at.Row != 1 || at.Col != 2 {
		t.Errorf("enter leads to row %d, column %d, and not to the next cell", at.Row, at.Col)
	}
	r.keys("enter", "enter") // on is opened, and kept as it is
	if at := r.m.cells.At[layout.Points]; at.Row != 2 || at.Col != 0 {
		t.Errorf("enter leads to row %d, column %d, and not to the first cell of the row below", at.Row, at.Col)
	}
}

func TestHalfTypedKeepsTheLastResultStale(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("down", "right")
	r.text("-3,")
	r.sees("stale: statically determinate", "System (stale)", "Unknowns (stale)", "37.5", "^")
	if r.m.live.Solution == nil || len(r.m.live.Errs) == 0 {
		t.Fatal("the last result is gone")
	}
	r.sees(r.m.live.Errs[0].Msg)
	r.text(" 4")
	if strings.Contains(r.screen(), "stale") {
		t.Errorf("still stale:\n%s", r.screen())
	}
}

func TestTheCaretStandsUnderThePlace(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("down", "right")
	r.text("-3, zz")
	lines := strings.Split(r.screen(), "\n")
	typed, below := lines[33], lines[34]
	if i := strings.Index(typed, "zz"); i < 0 || strings.Index(below, "^") != i {
		t.Errorf("the caret is not under zz:\n%s\n%s", typed, below)
	}
}

func TestBadTextCanBeKeptAndIsMarked(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("down", "right")
	r.text("zz")
	r.keys("enter")
	r.holds(pointA, "zz")
	r.sees("zz!", "! point A:", "stale")
	r.keys("ctrl+z")
	r.holds(pointA, "-3, 4")
	if strings.Contains(r.screen(), "stale") {
		t.Errorf("stale after undo:\n%s", r.screen())
	}
}

func TestEscLeavesTheCellAsItWas(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	before := r.screen()
	r.keys("down", "right")
	r.text("9, 9")
	r.keys("esc", "left", "up")
	if got := r.screen(); got != before {
		t.Errorf("after esc:\n%s\nwant\n%s", got, before)
	}
	if r.m.history.Modified() {
		t.Error("esc has changed the sheet")
	}
}

func TestEditingInTheLine(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("down", "right", "f2", "home", "delete", "end", "backspace")
	r.text("5")
	r.keys("left", "left", "right")
	if got := r.m.cells.Cell.Text; got != "3, 5" {
		t.Errorf("the line is %q", got)
	}
	r.keys("ctrl+u")
	r.text("?")
	r.send(tea.PasteMsg{Content: "1,\n2"})
	if got := r.m.cells.Cell.Text; got != "?1, 2" {
		t.Errorf("the line is %q", got)
	}
}

func TestTabGoesThroughTheCellsOfAllPanes(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	seen := map[layout.Pane]int{}
	first := r.m.cells.At
	for range 300 {
		seen[r.m.Focus]++
		if s, _ := r.m.slot(); s.Does == cells.Nothing {
			t.Fatalf("tab rests on %v", r.m.cells.At[r.m.Focus])
		}
		r.keys("tab")
		if r.m.Focus == layout.Points && r.m.cells.At[layout.Points] == first[layout.Points] {
			break
		}
	}
	for p := layout.Given; p < layout.System; p++ {
		if p != layout.Supports && p != layout.Sheet && seen[p] < 3 {
			t.Errorf("tab finds %d cells in pane %d", seen[p], p)
		}
	}
	at := r.m.cells.At
	r.keys("tab", "shift+tab")
	if r.m.cells.At[r.m.Focus] != at[r.m.Focus] {
		t.Errorf("there and back leads to %v, want %v", r.m.cells.At[r.m.Focus], at[r.m.Focus])
	}
}

func TestTabKeepsWhatIsTyped(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("down", "right")
	r.text("-3, 0")
	r.keys("tab")
	r.holds(pointA, "-3, 0")
	if got := r.m.cells.At[layout.Points]; got.Row != 1 || got.Col != 2 {
		t.Errorf("tab leads to %v", got)
	}
}

func TestUndoAndRedo(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("right")
	r.text("0, 1")
	r.keys("enter", "ctrl+z")
	r.holds(pointD, "0, 0")
	r.keys("ctrl+y")
	r.holds(pointD, "0, 1")
	r.keys("ctrl+z", "ctrl+z")
	r.sees("nothing to undo")
	r.keys("ctrl+r", "ctrl+r")
	r.sees("nothing to redo")
}

func TestAddARow(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("ctrl+n")
	r.text("Q")
	r.keys("enter")
	r.text("1, 1")
	r.keys("enter")
	r.holds(sheet.Ref{Table: "points", Row: "Q"}, "1, 1")
	if rows := r.m.history.Current().Table("points").Rows; rows[1].Name != "Q" {
		t.Errorf("Q is not behind D: %v", rows)
	}
	r.keys("ctrl+n", "esc", "ctrl+n", "enter")
	if n := len(r.m.history.Current().Table("points").Rows); n != 4 {
		t.Errorf("a row without a name leaves %d rows", n)
	}
	r.keys("ctrl+n")
	r.text("A")
	r.keys("enter")
	if r.m.cells.Cell == nil || !r.m.note.Bad {
		t.Errorf("a name twice is taken: %+v", r.m.note)
	}
}

func TestDeleteARow(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("down", "ctrl+d")
	r.sees("deleted A", "which T1 uses", "stale")
	r.keys("ctrl+z")
	r.holds(pointA, "-3, 4")
	r.sees("determinate")
}

func TestRenameGoesEverywhereInOneStep(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	before := r.m.history.Current().Text()
	r.keys("down")
	r.text("wall")
	r.keys("enter")
	r.holds(sheet.Ref{Table: "points", Row: "wall"}, "-3, 4")
	r.holds(sheet.Ref{Table: "lines", Row: "T1", Key: "path"}, "D wall")
	r.sees("A is now wall everywhere: in T1", "determinate", "37.5 N")
	r.keys("ctrl+z")
	if got := r.m.history.Current().Text(); got != before {
		t.Errorf("one undo leaves\n%s", got)
	}
	// The name of a force line is its unknown too: asked for, and answered.
	r.keys("f7 f")
	r.text("left")
	r.keys("enter")
	r.holds(sheet.Ref{Row: "asked"}, "left T2")
	r.holds(sheet.Ref{Table: "answers", Row: "left"}, "37.5 N")
}

func TestRenameIsRefusedInWords(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	before := r.m.history.Current().Text()
	for _, c := range []struct{ name, says string }{
		{"B", "there is a point B already"},
		{"a b", "a name"},
	} {
		r.keys("home", "f2", "ctrl+u")
		r.text(c.name)
		r.keys("enter")
		if r.m.cells.Cell == nil || !r.m.note.Bad {
			t.Errorf("%q is taken: %+v", c.name, r.m.note)
		}
		t.Log(r.m.note.Text)
		r.keys("esc")
	}
	if got := r.m.history.Current().Text(); got != before {
		t.Errorf("a refused name leaves\n%s", got)
	}
}

func TestUnknownMadeKnownAndBack(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	size := sheet.Ref{Table: "lines", Row: "T1", Key: "magnitude"}
	r.keys("alt+m")
	r.text("20 N")
	r.keys("enter")
	r.holds(size, "20 N")
	r.sees("no equilibrium")
	r.keys("up", "delete")
	r.holds(size, "")
	r.sees("determinate", "37.5 N")
}

func TestAskForAResult(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("alt+m", "ctrl+n")
	r.text("angle(T1, T2)")
	r.keys("enter")
	r.holds(sheet.Ref{Row: "asked"}, "T1 T2 angle(T1, T2)")
	// atan2 of (±3, 4): 2 * 36.8699 deg.
	r.sees("73.7 deg")
	r.keys("ctrl+d")
	r.holds(sheet.Ref{Row: "asked"}, "T1 T2")
}

func TestOwnAnswerIsMetOrNot(t *testing.T) {
	r := newRig(t, hanging, 200, 60)
	r.keys("alt+m", "down")
	for range 5 {
		r.keys("right")
	}
	r.text("40 N")
	r.keys("enter")
	r.holds(sheet.Ref{Table: "answers", Row: "T2"}, "40 N")
	r.sees("ok", "no", "differs from")
	r.keys("delete")
	r.holds(sheet.Ref{Table: "answers", Row: "T2"}, "")
}

func TestLimitsSettingsAndGivens(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("f7 g")
	r.text("80 N")
	r.keys("enter")
	r.holds(sheet.Ref{Table: "given", Row: "W"}, "80 N")
	r.sees("100%")
	r.keys("ctrl+n")
	r.text("h")
	r.keys("enter")
	r.text("2 m")
	r.keys("enter")
	r.holds(sheet.Ref{Table: "given", Row: "h"}, "2 m")
	r.keys("esc")
	r.keys("alt+e")
	for range 9 {
		r.keys("down")
	}
	r.text("kN")
	r.keys("enter")
	r.holds(sheet.Ref{Table: "units", Row: "force"}, "kN")
	r.sees("kN")
}

func TestComputedCellsSayThatTheyFollow(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("end", "x")
	r.sees("cannot be edited")
	if r.m.cells.Cell != nil {
		t.Error("a computed cell is edited")
	}
}

package tui

import (
	"testing"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/layout"
)

func point(name string) sheet.Ref { return sheet.Ref{Table: "points", Row: name} }

func TestCopyCutAndPasteARow(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	before := r.m.history.Current().Text()
	r.keys("alt+3", "alt+c")
	r.sees("copied 1 row")
	r.keys("down", "ctrl+v")
	r.rows("lines", "T1 T2 T3 F")
	r.holds(sheet.Ref{Table: "lines", Row: "T3", Key: "limit"}, "50 N")
	r.sees("pasted T3; ctrl+z takes it back")
	r.keys("ctrl+z")
	if got := r.m.history.Current().Text(); got != before {
		t.Errorf("one undo leaves\n%s", got)
	}
	r.keys("alt+2", "shift+down", "ctrl+x")
	r.rows("points", "B")
	r.sees("cut 2 rows")
	r.keys("alt+v")
	r.rows("points", "B D A")
	r.sees("pasted D and A", "determinate")
	r.keys("ctrl+z", "ctrl+z")
	if got := r.m.history.Current().Text(); got != before {
		t.Errorf("two undos leave\n%s", got)
	}
}

func TestCopyAndPasteABlockOfCells(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("right", "shift+down", "alt+c")
	r.sees("copied 2 by 1 cells")
	if r.m.clip.text != "0, 0\n-3, 4\n" {
		t.Errorf("copied %q", r.m.clip.text)
	}
	r.keys("up", "down", "ctrl+v")
	r.holds(point("A"), "0, 0")
	r.holds(point("B"), "-3, 4")
	r.keys("ctrl+z")
	r.holds(point("A"), "-3, 4")
	r.holds(point("B"), "3, 4")
	r.keys("alt+x")
	r.sees("cut 1 cell")
	if c, _ := r.m.history.Current().Cell(point("A")); c.Text != "" {
		t.Errorf("what was cut is still %q", c.Text)
	}
	r.keys("left", "right", "shift+right", "alt+c")
	r.sees("copied 1 by 2 cells")
}

func TestASpreadsheetsBlock(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	before := r.m.history.Current().Text()
	// At the names: rows of these names, wherever they are, and new ones.
	r.send(tea.PasteMsg{Content: "B\t3, 5\r\nC\t1, 1\r\nE\t2, 2\tparticle\r\n"})
	r.rows("points", "D A B C E")
	r.holds(point("B"), "3, 5")
	r.holds(point("D"), "")
	r.holds(pointD, "0, 0")
	r.holds(point("C"), "1, 1")
	r.holds(sheet.Ref{Table: "points", Row: "E", Key: "on"}, "particle")
	r.sees("pasted 1 cell and 2 new rows; ctrl+z takes it back")
	r.keys("ctrl+z")
	if got := r.m.history.Current().Text(); got != before {
		t.Errorf("one undo leaves\n%s", got)
	}
	// At a cell: downwards, and on behind the last row.
	r.keys("pgdown", "right")
	r.send(tea.PasteMsg{Content: "3, 6\n4, 4\n"})
	r.rows("points", "D A B P1")
	r.holds(point("B"), "3, 6")
	r.holds(point("P1"), "4, 4")
	// Lines get a kind, givens go before the settings.
	r.keys("alt+3")
	r.send(tea.PasteMsg{Content: "N1\t\tD B\nN2\tstrut\tD B"})
	r.holds(sheet.Ref{Table: "lines", Row: "N1", Key: "kind"}, "cable")
	r.holds(sheet.Ref{Table: "lines", Row: "N2", Key: "path"}, "D B")
	r.keys("alt+1")
	r.send(tea.PasteMsg{Content: "61 N\n2 m"})
	r.holds(sheet.Ref{Table: "given", Row: "W"}, "61 N")
	r.holds(sheet.Ref{Table: "given", Row: "v1"}, "2 m")
	checkFrame(t, r.m)
}

func TestWhatCannotBePasted(t *testing.T) {
	r := newRig(t, beam, 120, 36)
	before := r.m.history.Current().Text()
	r.keys("ctrl+v")
	r.sees("nothing was copied here")
	r.keys("alt+4", "end")
	r.send(tea.PasteMsg{Content: "a\nb\nc\nd\ne\nf\ng\nh\ni\nj\nk"})
	r.sees("none can be added by pasting")
	r.keys("alt+2")
	r.send(tea.PasteMsg{Content: "a\xff\t1, 1\nC\t2, 2"})
	if !r.m.note.bad {
		t.Errorf("what is no text is taken: %q", r.m.note.text)
	}
	if got := r.m.history.Current().Text(); got != before {
		t.Errorf("what is refused leaves\n%s", got)
	}
	// One line for one cell is typed, as before.
	r.keys("right")
	r.send(tea.PasteMsg{Content: "1, 1\n"})
	if r.m.edit == nil || r.m.focus != layout.Points {
		t.Error("a text is not typed")
	}
}

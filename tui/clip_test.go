package tui

import (
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/layout"
)

func point(name string) sheet.Ref { return sheet.Ref{Table: "points", Row: name} }

func TestCopyCutAndPasteARow(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	before := r.m.history.Current().Text()
	r.keys("f7 f", "alt+c")
	r.sees("copied 1 row")
	r.keys("down", "ctrl+v")
	r.rows("lines", "T1 T2 T3 F")
	r.holds(sheet.Ref{Table: "lines", Row: "T3", Key: "limit"}, "50 N")
	r.sees("pasted T3; ctrl+z undoes it")
	r.keys("ctrl+z")
	if got := r.m.history.Current().Text(); got != before {
		t.Errorf("one undo leaves\n%s", got)
	}
	r.keys("alt+p", "shift+down", "ctrl+x")
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
	if r.m.cells.Copied() != "0, 0\n-3, 4\n" {
		t.Errorf("copied %q", r.m.cells.Copied())
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
	r.sees("pasted 1 cell and 2 new rows; ctrl+z undoes it")
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
	r.keys("f7 f")
	r.send(tea.PasteMsg{Content: "N1\t\tD B\nN2\tstrut\tD B"})
	r.holds(sheet.Ref{Table: "lines", Row: "N1", Key: "kind"}, "cable")
	r.holds(sheet.Ref{Table: "lines", Row: "N2", Key: "path"}, "D B")
	r.keys("f7 g")
	r.send(tea.PasteMsg{Content: "61 N\n2 m"})
	r.holds(sheet.Ref{Table: "given", Row: "W"}, "61 N")
	r.holds(sheet.Ref{Table: "given", Row: "v1"}, "2 m")
	checkFrame(t, r.m)
}

// Among the supports the kind says of which table a new row is.
func TestABlockOfSupports(t *testing.T) {
	r := newRig(t, beam, 120, 40)
	before := r.m.history.Current().Text()
	r.keys("f7 s")
	r.send(tea.PasteMsg{Content: "B\troller\tB\t-y\r\nC\trough\tC\t+y\t0.3\nD\tpin\n" +
		"q2\tload\tA C\t-y\t2 kN/m\nM1\tcouple\tbeam\t\t5 N m\nw\tload\tA B\t\t\t\t\t\thydrostatic\t3 m\t2 m\n"})
	r.sees("pasted 2 cells and 5 new rows; ctrl+z undoes it")
	for ref, want := range map[sheet.Ref]string{
		{Table: "joints", Row: "B", Key: "normal"}: "-y", {Table: "joints", Row: "C", Key: "kind"}: "rough",
		{Table: "joints", Row: "C", Key: "friction"}: "0.3", {Table: "joints", Row: "D", Key: "kind"}: "pin",
		{Table: "distributed", Row: "q2", Key: "path"}: "A C", {Table: "distributed", Row: "q2", Key: "magnitude"}: "2 kN/m",
		{Table: "couples", Row: "M1", Key: "on"}: "beam", {Table: "couples", Row: "M1", Key: "magnitude"}: "5 N m",
		{Table: "distributed", Row: "w", Key: "kind"}: "hydrostatic", {Table: "distributed", Row: "w", Key: "surface"}: "3 m",
		{Table: "distributed", Row: "w", Key: "width"}: "2 m",
	} {
		r.holds(ref, want)
	}
	r.keys("ctrl+z")
	if got := r.m.history.Current().Text(); got != before {
		t.Errorf("one undo leaves\n%s", got)
	}
	// The row of a body takes what is pasted for it.
	r.send(tea.PasteMsg{Content: "beam\tbody\t(A + C)/2\t\t700 N\nbeam\tbody\t\tB"})
	r.holds(sheet.Ref{Table: "bodies", Row: "beam", Key: "weight"}, "700 N")
	r.holds(sheet.Ref{Table: "bodies", Row: "beam", Key: "about"}, "B")
	checkFrame(t, r.m)
}

// What was copied whole is pasted whole elsewhere, as a spreadsheet has it.
func TestSupportsGoThroughASpreadsheet(t *testing.T) {
	r := newRig(t, beam, 120, 40)
	r.keys("f7 s", "shift+down", "shift+down", "shift+down", "shift+down", "alt+c")
	r.sees("copied 5 rows")
	text := r.m.cells.Copied()
	bare := newRig(t, beam[:strings.Index(beam, "[bodies]")]+beam[strings.Index(beam, "[lines]"):strings.Index(beam, "[joints]")], 120, 40)
	bare.keys("f7 s")
	bare.send(tea.PasteMsg{Content: text})
	bare.sees("pasted 5 new rows", "determinate", "1880 N")
	for _, table := range []string{"bodies", "joints", "couples", "distributed"} {
		want, got := r.m.history.Current().Table(table), bare.m.history.Current().Table(table)
		for _, row := range want.Rows {
			for _, c := range row.Cells {
				bare.holds(sheet.Ref{Table: table, Row: row.Name, Key: c.Key}, c.Text)
			}
		}
		if len(got.Rows) != len(want.Rows) {
			t.Errorf("[%s] has %d rows, want %d", table, len(got.Rows), len(want.Rows))
		}
	}
}

func TestABlockOfResults(t *testing.T) {
	r := newRig(t, hanging, 120, 40)
	r.keys("alt+m", "home")
	r.send(tea.PasteMsg{Content: "T1\t\t\t\t60 N\nT2.x\nangle(T1, T2)\t\t\t\t\t\t73.7 deg\n"})
	r.holds(sheet.Ref{Row: "asked"}, "T1 T2 T2.x angle(T1, T2)")
	r.holds(sheet.Ref{Table: "lines", Row: "T1", Key: "limit"}, "60 N")
	r.holds(sheet.Ref{Table: "answers", Row: "angle(T1, T2)"}, "73.7 deg")
	r.sees("pasted 1 cell and 2 new rows")
}

// A line's kind says what its columns are.
func TestABlockOfForces(t *testing.T) {
	r := newRig(t, hanging, 120, 40)
	r.keys("f7 f")
	r.send(tea.PasteMsg{Content: "P\tforce\tD\t+x\t5 N\nS\tcable\tD A\n"})
	r.holds(sheet.Ref{Table: "lines", Row: "P", Key: "at"}, "D")
	r.holds(sheet.Ref{Table: "lines", Row: "P", Key: "along"}, "+x")
	r.holds(sheet.Ref{Table: "lines", Row: "S", Key: "path"}, "D A")
}

func TestWhatCannotBePasted(t *testing.T) {
	r := newRig(t, beam, 120, 36)
	before := r.m.history.Current().Text()
	r.keys("ctrl+v")
	r.sees("nothing has been copied here")
	r.keys("f7 s", "end")
	r.send(tea.PasteMsg{Content: "a\nb\nc\nd\ne\nf\ng\nh\ni\nj\nk"})
	r.sees("a new row here needs its name and kind: paste from the first column on")
	r.keys("home")
	for _, c := range []struct{ text, says string }{
		{"Q\nR", "a new row here needs its kind behind its name: a joint's, such as pin, or body, couple, load"},
		{"Q\troler\t\t", `not pasted: "roler" is not a kind of row here. Try: roller`},
		{"Q\tspoke\t\t", "a new row here needs its kind behind its name"},
	} {
		r.send(tea.PasteMsg{Content: c.text})
		r.sees(c.says)
	}
	r.keys("alt+m", "end")
	r.send(tea.PasteMsg{Content: strings.Repeat("1 N\n", 9)})
	r.sees("a new row here names a result: paste from the first column on")
	r.keys("home")
	r.send(tea.PasteMsg{Content: "Q.x\nAx"})
	r.sees(`not pasted: there is no line, joint or load "Q"`)
	r.send(tea.PasteMsg{Content: "A.x A.y\nAx"})
	r.sees("a new row here needs a result, such as T1.x, in its first column")
	r.keys("alt+e", "end", "left")
	r.send(tea.PasteMsg{Content: strings.Repeat("3\n", 30)})
	r.sees("the rows of the sheet are fixed")
	r.keys("alt+p")
	r.send(tea.PasteMsg{Content: "a\xff\t1, 1\nC\t2, 2"})
	if !r.m.note.Bad {
		t.Errorf("what is no text is taken: %q", r.m.note.Text)
	}
	if got := r.m.history.Current().Text(); got != before {
		t.Errorf("what is refused leaves\n%s", got)
	}
	// One line for one cell is typed, as before.
	r.keys("right")
	r.send(tea.PasteMsg{Content: "1, 1\n"})
	if r.m.cells.Cell == nil || r.m.Focus != layout.Points {
		t.Error("a text is not typed")
	}
}

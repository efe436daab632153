package tui

import (
	"regexp"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/overlay"
)

func (r *rig) rows(table, want string) {
	r.t.Helper()
	var names []string
	for _, row := range r.m.history.Current().Table(table).Rows {
		names = append(names, row.Name)
	}
	if got := strings.Join(names, " "); got != want {
		r.t.Errorf("the rows of %s are %q, want %q", table, got, want)
	}
}

func TestMoveARow(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("ctrl+down")
	r.rows("points", "A D B")
	if r.m.cells.At[layout.Points].Row != 1 {
		t.Error("the cursor stays behind")
	}
	r.keys("alt+j", "ctrl+down")
	r.rows("points", "A B D")
	r.sees("D is the last of its table", "37.5 N")
	r.keys("alt+u", "ctrl+up", "ctrl+up")
	r.rows("points", "D A B")
	r.sees("D is the first of its table")
	r.keys("ctrl+z")
	r.rows("points", "A D B")
	r.keys("alt+m", "ctrl+up")
	r.sees("change them there")
}

func TestDuplicateARow(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("f7 f", "alt+d")
	r.rows("lines", "T1 T3 T2 F")
	r.holds(sheet.Ref{Table: "lines", Row: "T3", Key: "path"}, "D A")
	r.sees("T3 is T1 once more")
	if s, _ := r.m.slot(); s.Ref.Row != "T3" {
		t.Errorf("the cursor is on %v", s.Ref)
	}
	r.keys("ctrl+z")
	r.rows("lines", "T1 T2 F")
}

func TestNudge(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("down", "right", "alt+up")
	r.holds(pointA, "-3, 5")
	r.keys("alt+-", "alt+down")
	r.holds(pointA, "-3, 3")
	r.keys("ctrl+z", "ctrl+z")
	r.holds(pointA, "-3, 5")
	r.keys("f2", "home", "right", "alt+=")
	if r.m.cells.Cell.Text != "-2, 5" {
		t.Errorf("the cell is %q", r.m.cells.Cell.Text)
	}
	r.holds(pointA, "-3, 5") // not before it is kept
	r.keys("esc", "left", "alt+up")
	r.sees("no number")
	r.keys("f7 g", "alt+up")
	r.holds(sheet.Ref{Table: "given", Row: "W"}, "61 N")
}

func TestDefinitionAndBack(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("f7 f", "down")
	for s, _ := r.m.slot(); s.Ref.Key != "path"; s, _ = r.m.slot() {
		r.keys("right")
	}
	from := r.m.cells.Spot(r.m.Focus)
	r.keys("alt+g")
	if s, _ := r.m.slot(); r.m.Focus != layout.Points || s.Ref != pointD {
		t.Errorf("the cursor is on %v", s.Ref)
	}
	r.keys("alt+r")
	if r.m.cells.Spot(r.m.Focus) != from {
		t.Errorf("back is %v, want %v", r.m.cells.Spot(r.m.Focus), from)
	}
	r.keys("alt+g", "alt+i", "alt+r")
	if r.m.cells.Spot(r.m.Focus) != from {
		t.Errorf("back from the picture is %v, want %v", r.m.cells.Spot(r.m.Focus), from)
	}
	r.keys("f2", "alt+g")
	if s, _ := r.m.slot(); r.m.cells.Cell != nil || s.Ref.Row != "B" {
		t.Errorf("the cursor is on %v", s.Ref)
	}
	r.keys("alt+g")
	r.sees("no name here")
	r.keys("alt+r", "alt+r")
	r.sees("nowhere to go back to")
}

func TestSearch(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("ctrl+f")
	r.text("t1")
	if r.m.Focus != layout.Lines || r.m.cells.At[layout.Lines].Row != 0 {
		t.Errorf("found %v", r.m.cells.Spot(r.m.Focus))
	}
	r.sees("find: t1")
	first := r.m.cells.Spot(r.m.Focus)
	r.keys("enter")
	if r.m.cells.Spot(r.m.Focus) == first {
		t.Error("there is no next")
	}
	r.keys("esc")
	for range 10 {
		if r.keys("ctrl+g"); r.m.cells.Spot(r.m.Focus) == first {
			break
		}
	}
	if r.m.cells.Spot(r.m.Focus) != first {
		t.Error("the search does not come round")
	}
	r.keys("ctrl+f")
	r.text("xyzzy")
	r.sees("no cell contains xyzzy")
	if r.m.cells.Spot(r.m.Focus) != first {
		t.Error("what is not found moves the cursor")
	}
	r.send(tea.PasteMsg{Content: "!"})
	r.sees("find: xyzzy!")
}

func TestThePaletteNamesEveryCommand(t *testing.T) {
	listed := map[keys.Intent]bool{}
	for _, b := range overlay.Commands(overlay.List{}) {
		listed[b.Intent] = true
	}
	for _, b := range keys.Table() {
		if (b.Scope == keys.Cells || b.Scope == keys.Workbench || b.Scope == keys.Always || b.Scope == keys.Picture) && !listed[b.Intent] && b.Intent != keys.Commands {
			t.Errorf("%s is not listed", b.Help)
		}
	}
	r := newRig(t, hanging, 80, 24)
	r.keys("ctrl+k")
	r.sees("commands: type to narrow")
	r.text("new row")
	r.sees("1 command", "ctrl+n")
	r.keys("enter")
	if r.m.cells.Fresh == nil || r.m.palette != nil {
		t.Error("enter does not make a row")
	}
	r.keys("esc", "ctrl+k")
	r.text("qqq")
	r.sees("no command matches")
	r.keys("enter", "esc", "ctrl+k")
	r.text("plain characters")
	r.keys("enter")
	if r.m.Focus != layout.Picture {
		t.Error("a command of the picture runs elsewhere")
	}
}

// Every command of the palette runs from any pane.
func TestThePaletteRunsEverything(t *testing.T) {
	for _, from := range []string{"alt+p", "alt+y", "alt+i"} {
		for i := range overlay.Commands(overlay.List{}) {
			r := newRig(t, hanging, 80, 24)
			r.keys(from, "ctrl+k")
			b := overlay.Commands(*r.m.palette)[i]
			if b.Intent == keys.Save {
				continue // it would write a file
			}
			for range i {
				r.keys("down")
			}
			r.keys("enter")
			if r.m.palette != nil {
				t.Errorf("%s leaves the list open", b.Help)
			}
			checkFrame(t, r.m)
		}
	}
}

// tied is a load of 60 N on two cables that share the unknown P, and a couple on a
// body that is sought.
const tied = `plane = "xy"
asked = "P T2.x"

[points]
D = { at = "0, 0", on = "particle" }
A = "-3, 4"
B = "3, 4"
O = { at = "9, 0", on = "arm" }
R = { at = "9, 1", on = "arm" }

[lines]
T1 = { kind = "cable", path = "D A", magnitude = "P" }
T2 = { kind = "cable", path = "D B", magnitude = "2*P/2" }
F = { kind = "force", at = "D", along = "-y", magnitude = "60 N" }

[joints]
O = { kind = "pin" }

[couples]
M0 = { on = "arm" }

[answers]
P = "37.5 N"
`

func TestRenameInTheUnknowns(t *testing.T) {
	at := func(r *rig, name string) {
		t.Helper()
		r.keys("alt+m", "home")
		for k, rec := range r.m.cells.Tables[layout.Unknowns].Records {
			if rec.Slots[0].Text == name {
				for r.m.cells.At[layout.Unknowns].Row < k {
					r.keys("down")
				}
				for r.m.cells.At[layout.Unknowns].Row > k {
					r.keys("up")
				}
				return
			}
		}
		t.Fatalf("there is no unknown %s:\n%s", name, r.screen())
	}
	for _, c := range []struct{ from, to, says string }{
		{"P", "Q", "P is now Q everywhere: in asked, T1, T2 and 1 more"},
		{"T2", "T7", "T2 is now T7 everywhere: in asked"},
		{"M0", "Mx", ""},
		{"P", "T1", `the name "T1" is already used for a line. Try: another name`},
		{"P", "N", `"N" cannot be the name of an unknown. Try: letters, digits and _, beginning with a letter`},
	} {
		r := newRig(t, tied, 120, 40)
		before := r.m.history.Current().Text()
		at(r, c.from)
		r.keys("f2")
		r.sees("name of " + c.from)
		r.keys("ctrl+u")
		r.text(c.to)
		r.keys("enter")
		if c.says != "" {
			r.sees(c.says)
		}
		text := r.m.history.Current().Text()
		if r.m.note.Bad {
			if text != before {
				t.Errorf("%s to %s is refused and leaves\n%s", c.from, c.to, text)
			}
			continue
		}
		want := regexp.MustCompile(`\b`+c.from+`\b`).ReplaceAllString(before, c.to)
		if text != want {
			t.Errorf("%s to %s gives\n%s", c.from, c.to, text)
		}
		r.keys("ctrl+z")
		if got := r.m.history.Current().Text(); got != before {
			t.Errorf("one undo leaves\n%s", got)
		}
	}
	r := newRig(t, tied, 120, 40)
	at(r, "Ox")
	r.keys("f2")
	r.sees("Ox is named after the joint O: rename that")
	at(r, "P")
	r.keys("ctrl+d")
	r.sees("P appears only in magnitudes; it disappears when no magnitude names it")
}

// The name of a new row is refused where it stands, and the sheet is as before.
func TestTheNameOfANewRow(t *testing.T) {
	for _, c := range []struct{ pane, name, says string }{
		{"alt+p", "B C", `"B C" cannot be the name of a point. Try: one word without , ( ) . ? or quotes`},
		{"alt+p", "W", `the name "W" is already used for a given. Try: another name`},
		{"alt+p", "A", `the name "A" is already used for a point. Try: another name`},
		{"f7 f", "W", `the name "W" is already used for a given. Try: another name`},
		{"f7 f", "T1", `the name "T1" is already used for a line. Try: another name`},
		{"f7 g", "N", "a given cannot be named N, which is a unit. Try: N1"},
		{"f7 g", "2a", `"2a" cannot be used as a name in a cell. Try: letters, digits and _, beginning with a letter`},
	} {
		r := newRig(t, hanging, 120, 36)
		before := r.m.history.Current().Text()
		r.keys(c.pane, "ctrl+n")
		r.text(c.name)
		r.keys("enter")
		r.sees(c.says)
		if r.m.cells.Cell == nil || r.m.cells.Cell.Text != c.name || r.m.history.Current().Text() != before {
			t.Errorf("%s is taken, or lost", c.name)
		}
		r.keys("esc")
		checkFrame(t, r.m)
	}
	// What a magnitude names already may come after it.
	r := newRig(t, strings.Replace(hanging, `magnitude = "W"`, `magnitude = "2*V"`, 1), 120, 36)
	r.keys("f7 g", "ctrl+n")
	r.text("V")
	r.keys("enter")
	r.rows("given", "W V")
}

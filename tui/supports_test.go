package tui

import (
	"slices"
	"strings"
	"testing"

	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/help"
	"trivet/tui/layout"
)

// TestABeamFromNothing makes everything that a body needs in an empty sheet, by
// keys alone: the first joint, body, couple and load among them.
func TestABeamFromNothing(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
		r := rigOf(t, Options{Width: size[0], Height: size[1]})
		line := func(keys ...string) {
			for _, k := range keys {
				if _, special := named[k]; special || strings.HasPrefix(k, "ctrl+") || strings.HasPrefix(k, "alt+") || strings.HasPrefix(k, "f7 ") {
					r.keys(k)
				} else {
					r.text(k)
				}
			}
		}
		line("alt+e", "pgup", "down", "down", "xy", "enter")
		line("alt+p", "ctrl+n", "A", "enter", "0, 0", "tab", "beam", "enter")
		line("ctrl+n", "C", "enter", "2, 0", "tab", "beam", "enter")
		line("ctrl+n", "B", "enter", "6, 0", "tab", "beam", "enter")
		// The list of kinds opens by itself; a joint that needs a normal asks for it.
		line("f7 s", "ctrl+n", "j", "A", "enter", "pi", "enter")
		line("ctrl+n", "j", "B", "enter", "rol", "enter", "+y", "enter")
		line("ctrl+n", "b", "beam", "enter", "(A + B)/2", "enter", "600 N", "enter")
		line("ctrl+n", "l", "q", "enter", "C B", "enter", "-y", "enter", "1 kN/m", "enter")
		line("ctrl+n", "c", "M0", "enter", "be", "enter", "800 N m", "enter")
		line("f7 f", "ctrl+n", "P", "enter", "force", "enter", "C", "enter", "-y", "enter", "900 N", "enter")
		// Moments about A: 6 B + 800 = 600*3 + 4000*4 + 900*2, B = 3133 N.
		r.sees("determinate", "B 3130", "push")
		for ref, want := range map[sheet.Ref]string{
			{Table: "joints", Row: "A", Key: "kind"}: "pin", {Table: "joints", Row: "B", Key: "normal"}: "+y",
			{Table: "couples", Row: "M0", Key: "on"}: "beam", {Table: "bodies", Row: "beam", Key: "weight"}: "600 N",
			{Table: "lines", Row: "P", Key: "at"}: "C", {Table: "distributed", Row: "q", Key: "along"}: "-y",
		} {
			r.holds(ref, want)
		}
		if len(r.m.live.Errs) != 0 {
			t.Errorf("%v: %v", size, r.m.live.Errs)
		}
		checkFrame(t, r.m)
	}
}

func TestTheListOfKinds(t *testing.T) {
	kind := sheet.Ref{Table: "joints", Row: "A", Key: "kind"}
	for _, c := range []struct {
		typed []string
		want  string
	}{
		{[]string{"f", "enter"}, "fixed"},
		{[]string{"bal", "enter"}, "ball-and-socket"},
		{[]string{"clamp", "enter"}, "fixed"},                          // another name of it
		{[]string{"sur", "down", "enter"}, "rough-surface"},            // a word of it, and the second of two
		{[]string{"f2", "down", "enter"}, "ball-and-socket"},           // the next in the table
		{[]string{"f2", "enter"}, "pin"},                               // untouched
		{[]string{"f2", "down", "esc"}, "pin"},                         // left as it was
		{[]string{"zz", "enter"}, "zz"},                                // nothing fits: kept and marked
		{[]string{"r", "up", "down", "down", "up", "enter"}, "rocker"}, // clamped at the top
	} {
		r := newRig(t, beam, 120, 36)
		r.keys("f7 s", "down", "right")
		for _, k := range c.typed {
			if _, special := named[k]; special {
				r.keys(k)
			} else {
				r.text(k)
			}
		}
		r.holds(kind, c.want)
		checkFrame(t, r.m)
	}
	// What would be taken is solved while it is chosen.
	r := newRig(t, beam, 120, 36)
	r.keys("f7 s", "down", "right", "f")
	r.sees("statically indeterminate to the first degree", "MAz", "all forces and all moments")
}

func TestEveryCellOfSupportsAndLoadsCanBeTyped(t *testing.T) {
	text := strings.Replace(beam, "[couples]", `wall = { at = "D", kind = "rough-surface", on = "beam", normal = "+x", friction = "0.3", impending = "+y", face = "B D", moments = "none" }
[couples]
M1 = { on = "beam", components = "(0, 0, 5) N m" }
M2 = { on = "beam", about = "+z", stiffness = "5 N m", turn = "2 deg" }`, 1) +
		`gate = { path = "A C", on = "beam", along = "-y", kind = "hydrostatic", surface = "1 m", width = "1 m", density = "1000 kg/m^3" }
`
	r := newRig(t, text, 200, 60)
	found := map[sheet.Ref]bool{}
	for _, rec := range r.m.cells.Tables[layout.Supports].Records {
		for _, s := range rec.Slots {
			if s.Does == cells.SetCell {
				found[s.Ref] = true
			}
		}
	}
	s := r.m.history.Current()
	for _, table := range []string{"joints", "bodies", "couples", "distributed"} {
		for _, row := range s.Table(table).Rows {
			for _, c := range row.Cells {
				if ref := (sheet.Ref{Table: table, Row: row.Name, Key: c.Key}); !found[ref] {
					t.Errorf("no cell of the pane holds %v", ref)
				}
			}
		}
	}
}

func TestHeadsFollowTheRow(t *testing.T) {
	r := newRig(t, beam, 80, 24)
	r.keys("f7 s")
	for _, want := range []string{"Supports             centre  ΣM about", "Supports kind        at", "Supports kind        at      normal", "Supports             on      about", "Supports             path    along"} {
		r.sees(want)
		r.keys("down")
	}
	r.keys("up", "up", "right", "right", "right")
	r.sees("B normal: +y", "one force along the normal")
	r.keys("up", "x")
	r.sees("a row of this kind has no such cell")
}

func TestJointsLimitsStandWithTheirUnknowns(t *testing.T) {
	r := newRig(t, beam, 120, 36)
	r.sees("1880 push", "1.5 kN", "126%!", "beam ΣM about A")
	r.keys("alt+m", "down", "down", "right", "right", "right")
	r.text("2 kN")
	r.keys("enter")
	r.holds(sheet.Ref{Table: "joints", Row: "B", Key: "limit"}, "2 kN")
	r.sees("94.2%")
	r.keys("ctrl+d")
	r.sees("delete it there (f7 s)")
}

func TestTheSystemSaysItsOrder(t *testing.T) {
	r := newRig(t, beam, 200, 60)
	r.sees("Order in which it can be solved", "B from ΣM about A on the beam")
	// Of cables that must be solved together there is no order.
	if r = newRig(t, hanging, 200, 60); strings.Contains(r.screen(), "Order in which") {
		t.Error("one block has an order")
	}
}

func TestDeleteASupport(t *testing.T) {
	r := newRig(t, beam, 120, 36)
	r.keys("f7 s", "down", "down", "ctrl+d")
	r.sees("deleted B", "no equilibrium")
	r.keys("ctrl+z")
	r.sees("1880 push")
	r.keys("ctrl+n", "esc", "ctrl+n", "j", "esc", "ctrl+n", "x", "c", "enter")
	if n := len(r.m.cells.Tables[layout.Supports].Records); n != 5 || r.m.history.Modified() {
		t.Errorf("%d rows after making none", n)
	}
}

// Wide tables of the help are read on a small screen too: every row of each is found by
// scrolling, and no line is cut.
func TestHelpShowsEveryTopicOnASmallScreen(t *testing.T) {
	r := newRig(t, beam, 80, 24)
	r.keys("?")
	for _, name := range help.Pages()[1:] {
		r.keys("right")
		r.sees(" Help: " + name + ", ")
		seen := map[string]bool{}
		for range 20 {
			for _, line := range strings.Split(r.screen(), "\n") {
				seen[strings.TrimSpace(line)] = true
			}
			r.keys("pgdown")
		}
		for _, line := range r.m.help.Lines(r.m.helpFor(), 77) {
			var text strings.Builder
			for _, s := range line {
				text.WriteString(s.Text)
			}
			if l := strings.TrimSpace(text.String()); !seen[l] && l != "" {
				t.Errorf("%s: scrolling never shows %q", name, l)
			}
		}
	}
	r.keys("right")
	r.sees("Keys: Anywhere")
}

// A screen reader is told the page, and each row of a table with its cells.
func TestHelpIsReadByTopic(t *testing.T) {
	r := newRig(t, beam, 80, 24)
	r.m.linear = true
	r.keys("?", "right", "right", "right", "right")
	text, _ := r.m.readText()
	lines := text.Lines
	if lines[0] != "Supports and connections" || !slices.Contains(lines, "support fixed; in the plane 2 forces, 1 moment; in space 3 forces, 3 moments") {
		t.Errorf("what is read of the topic is %q", lines)
	}
}

// Water asks for its surface and the gate's width, one after the other.
func TestWaterAsksForWhatItNeeds(t *testing.T) {
	r := newRig(t, beam, 200, 60)
	r.keys("f7 s", "down", "down", "down", "down", "end", "left", "left", "left", "h", "enter")
	for _, c := range []struct{ key, text string }{{"surface", "3 m"}, {"width", "2 m"}} {
		if s, _ := r.m.slot(); s.Ref != (sheet.Ref{Table: "distributed", Row: "q", Key: c.key}) {
			t.Fatalf("the cursor is on %v, want %s", s.Ref, c.key)
		}
		r.text(c.text)
		r.keys("enter")
	}
	r.holds(sheet.Ref{Table: "distributed", Row: "q", Key: "width"}, "2 m")
}

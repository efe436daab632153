package tui

import (
	"strings"
	"testing"

	"trivet/mechanics/sheet"
	"trivet/tui/layout"
)

// TestTheHangingLoadFromABlankSheet builds the load on three cables from the start
// screen by what the screen says, and counts the keys: 90, 180 and 250 N by hand
// (the lengths are 3, 3 and 5 m).
func TestTheHangingLoadFromABlankSheet(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
		r := startRig(t, size[0], size[1])
		n := 0
		keys := func(names ...string) { r.keys(names...); n += len(names) }
		text := func(s string) { r.text(s); n += len(s) }
		keys("esc") // the blank sheet
		r.sees("next: type a name for a point where forces act, such as P, and enter")
		for _, row := range [][2]string{{"R", "0,0,0"}, {"A", "2,1,2"}, {"B", "-1,2,2"}, {"C", "0,-3,4"}} {
			text(row[0])
			keys("enter")
			text(row[1])
			keys("enter", "enter") // on the ground, the first but for that it is free
		}
		keys("enter") // a blank name ends the points
		r.sees("next: f7 f, then type a name for a rope or a force")
		keys("f7", "f")
		for _, row := range [][2]string{{"TA", "R A"}, {"TB", "R B"}, {"TC", "R C"}} {
			text(row[0])
			keys("enter", "enter") // a cable
			text(row[1])
			keys("enter", "enter") // of unknown magnitude
		}
		text("W")
		keys("enter")
		text("we")
		keys("enter")
		text("R")
		keys("enter")
		text("380N")
		keys("enter", "enter")
		r.sees("TA 90.0 T", "TB 180 T", "TC 250 T", "determinate")
		if limit := 85; n > limit {
			t.Errorf("%d keys; at most %d are expected", n, limit)
		}
		t.Logf("%d keys", n)
		r.holds(sheet.Ref{Table: "points", Row: "R", Key: "on"}, "particle")
		r.holds(sheet.Ref{Table: "points", Row: "A"}, "2,1,2")
		r.holds(sheet.Ref{Table: "lines", Row: "W", Key: "magnitude"}, "380N")
	}
}

func TestWhatComesNextIsSaid(t *testing.T) {
	const p = "[points]\nP = { at = \"0, 0\", on = \"particle\" }\n"
	for _, c := range []struct{ text, want string }{
		{"plane = \"xy\"\n" + p, "next: ctrl+n for each point that a rope or strut runs to"},
		{"plane = \"xy\"\n" + p + "A = \"1, 1\"\n", "next: f7 f, then type a name for a rope or a force, such as T1, and enter"},
		{"plane = \"xy\"\n" + p + "A = \"1, 1\"\n[lines]\nT = { kind = \"cable\", path = \"P A\" }\n", "next: f7 f, then ctrl+n for the load"},
		{"plane = \"xy\"\n" + p + "A = \"1, 1\"\n[lines]\nT = { kind = \"cable\", path = \"P A\" }\nF = { kind = \"force\", at = \"P\", along = \"-y\" }\n",
			"next: f7 f, then type the magnitude of F, such as 2 kN, or ? to find it"},
		{"plane = \"xy\"\n" + p + "A = \"1, 1\"\n[lines]\nT = { kind = \"cable\", path = \"P A\" }\nF = { kind = \"force\", at = \"P\", along = \"-y\", magnitude = \"?\" }\n",
			"next: f7 f, then ctrl+n for the load"},
	} {
		newRig(t, c.text, 120, 36).sees(c.want)
	}
	for _, text := range []string{crane, beam, hanging, p + "A = \"1, x\"\n"} {
		if r := newRig(t, text, 120, 36); strings.Contains(r.screen(), "next: ") {
			t.Errorf("a sheet that needs nothing, or has a fault, is told what is next:\n%s", r.screen())
		}
	}
}

func TestRowsFollowEachOther(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	rows := func() int { return len(r.m.history.Current().Table("points").Rows) }
	r.keys("ctrl+n")
	r.text("E")
	r.keys("enter")
	r.text("1, 1")
	r.keys("enter", "enter")
	if r.m.cells.Fresh == nil {
		t.Fatal("no row follows the one just made")
	}
	r.keys("esc")
	if r.m.cells.Fresh != nil || rows() != 4 {
		t.Errorf("esc leaves %d points", rows())
	}
	r.keys("up", "home", "right", "enter", "enter") // an older row is kept without a new one
	if r.m.cells.Fresh != nil || r.m.cells.Cell != nil {
		t.Error("a row follows one that was there before")
	}
}

// TestTheGuideOfABeam follows what comes next of a beam: its body is asked for at its points, then
// its supports, then its load.
func TestTheGuideOfABeam(t *testing.T) {
	r := startRig(t, 120, 36)
	r.keys("home", "down", "enter")
	r.sees("next: type a name for a point")
	r.text("A")
	r.keys("enter")
	r.text("0,0")
	r.keys("enter")
	r.sees("no body: it is fixed to the ground", "a free particle") // what on may be
	r.text("b")
	r.sees("a new body")
	r.text("eam")
	r.keys("enter", "esc")
	r.sees("next: ctrl+n for each point of beam with a support or a load, beam under on", "1 body not connected yet")
	r.keys("ctrl+n")
	r.text("B")
	r.keys("enter")
	r.text("6,0")
	r.keys("enter")
	r.text("b")
	r.sees("the body beam")
	r.keys("enter", "enter")
	r.holds(sheet.Ref{Table: "points", Row: "B", Key: "on"}, "beam")
	r.sees("next: f7 s, then ctrl+n and j for a support")
	r.keys("f7 s", "ctrl+n", "j")
	r.text("A")
	r.keys("enter")
	r.text("p")
	r.keys("enter")
	r.text("B")
	r.keys("enter")
	r.text("ro")
	r.keys("enter")
	r.text("+y")
	r.keys("enter", "enter")
	r.sees("next: f7 f, then a name for the load")
	if strings.Contains(r.screen(), "FAILS") || strings.Contains(r.screen(), "failed") {
		t.Errorf("what is half built is called wrong:\n%s", r.screen())
	}
}

// p and enter takes the word highlighted, and makes no body called p.
func TestEnterTakesTheWordHighlighted(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("down", "right", "right")
	r.text("p")
	r.keys("enter")
	r.holds(sheet.Ref{Table: "points", Row: "A", Key: "on"}, "particle")
	r.keys("up", "right", "right")
	r.text("p")
	r.keys("down", "enter") // the last of the list
	r.holds(sheet.Ref{Table: "points", Row: "A", Key: "on"}, "p")
}

// What a half-typed number gives is never shown: 560 on the way to 560 kg is no force of 560 N.
func TestAHalfTypedNumberGivesNoResult(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("f7 f", "down", "down", "right", "right", "right", "right")
	r.text("560")
	r.sees("stale", "37.5 N")
	r.text(" k")
	r.sees("stale", "37.5 N")
	r.text("N")
	r.sees("350 000 N") // 560 kN / 1.6
	r.keys("ctrl+u")
	r.text("zz(")
	r.sees("stale", "37.5 N") // as it was kept last
}

func TestTheFirstForceSetsTheUnit(t *testing.T) {
	r := newRig(t, strings.Replace(hanging, "[given]\nW = \"60 N\"\n", "", 1), 120, 36)
	force := sheet.Ref{Table: "units", Row: "force"}
	r.holds(force, "")
	r.keys("f7 f", "down", "down", "right", "right", "right", "right")
	r.text("2 kN")
	r.keys("enter")
	r.holds(force, "") // a limit in newtons stands there already
	r = newRig(t, strings.Replace(strings.Replace(hanging, "[given]\nW = \"60 N\"\n", "", 1), `, limit = "50 N"`, "", 1), 120, 36)
	r.keys("f7 f", "down", "down", "right", "right", "right", "right")
	r.text("2 kN")
	r.keys("enter")
	r.holds(force, "kN")
	r.keys("ctrl+z")
	r.holds(force, "")
}

// A reaction that is known is no longer a support's: what it can be is offered.
func TestAKnownReaction(t *testing.T) {
	r := newRig(t, beam, 120, 36)
	r.keys("alt+m", "home", "right")
	for s, _ := r.m.slot(); s.Text != "pin"; s, _ = r.m.slot() {
		r.keys("down")
	}
	r.text("1.2 kN")
	r.sees("known: forces Ax and Ay replace the support")
	r.keys("enter")
	r.sees("in place of the support A: Ax and Ay, among the force lines (f7 f); ctrl+z undoes it")
	for _, c := range []struct{ name, along, magnitude string }{{"Ax", "+x", "1.2 kN"}, {"Ay", "+y", "?"}} {
		r.holds(sheet.Ref{Table: "lines", Row: c.name, Key: "along"}, c.along)
		r.holds(sheet.Ref{Table: "lines", Row: c.name, Key: "magnitude"}, c.magnitude)
	}
	if _, there := r.m.history.Current().Table("joints").Row("A"); there {
		t.Error("the support is still there")
	}
	before := newRig(t, beam, 120, 36)
	r.keys("ctrl+z")
	if got, want := r.m.history.Current().Text(), before.m.history.Current().Text(); got != want {
		t.Errorf("one undo leaves\n%s", got)
	}
	// A reaction that is to be found stays the support's.
	r.keys("enter", "enter")
	if got, want := r.m.history.Current().Text(), before.m.history.Current().Text(); got != want {
		t.Errorf("a reaction to be found makes\n%s", got)
	}
}

// What exerts a moment too is a support, and no force takes its place.
func TestAKnownReactionOfAFixedSupport(t *testing.T) {
	r := newRig(t, strings.Replace(beam, `kind = "pin"`, `kind = "fixed"`, 1), 120, 36)
	r.keys("alt+m", "home", "right")
	for s, _ := r.m.slot(); s.Text != "fixed"; s, _ = r.m.slot() {
		r.keys("down")
	}
	r.text("5")
	r.sees("the reaction of this support is found. Try: a force of that magnitude in its place")
}

// The utilisation of a pin is that of its resultant, in a row of its own.
func TestTheUtilisationOfAResultant(t *testing.T) {
	r := newRig(t, strings.Replace(beam, `{ kind = "pin" }`, `{ kind = "pin", limit = "2 kN" }`, 1), 120, 36)
	r.sees("45.8%")
	for _, row := range r.m.cells.Tables[layout.Unknowns].Records {
		if name := row.Slots[0].Text; (name == "Ax" || name == "Ay") && row.Slots[5].Text != "" {
			t.Errorf("the component %s has the utilisation %s", name, row.Slots[5].Text)
		}
	}
}

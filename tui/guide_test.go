package tui

import (
	"strings"
	"testing"

	"trivet/mechanics/sheet"
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
		r.sees("next: type a name for the point where the forces meet, such as P, and enter")
		for _, row := range [][2]string{{"R", "0,0,0"}, {"A", "2,1,2"}, {"B", "-1,2,2"}, {"C", "0,-3,4"}} {
			text(row[0])
			keys("enter")
			text(row[1])
			keys("enter")
		}
		keys("enter") // a blank name ends the points
		r.sees("next: f7 f, then type a name for a rope or a force")
		keys("f7", "f")
		for _, row := range [][2]string{{"TA", "R A"}, {"TB", "R B"}, {"TC", "R C"}} {
			text(row[0])
			keys("enter", "enter") // a cable
			text(row[1])
			keys("enter")
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
		if limit := 80; n > limit {
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
	r.keys("enter")
	if r.m.fresh == nil {
		t.Fatal("no row follows the one just made")
	}
	r.keys("esc")
	if r.m.fresh != nil || rows() != 4 {
		t.Errorf("esc leaves %d points", rows())
	}
	r.keys("up", "right", "enter", "enter") // an older row is kept without a new one
	if r.m.fresh != nil || r.m.edit != nil {
		t.Error("a row follows one that was there before")
	}
}

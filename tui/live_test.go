package tui

import (
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/session"
)

func TestOnlyTheNewestSheetIsShown(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("down", "right")
	var first tea.Cmd
	// Three keys before the first reply: one command runs, one snapshot waits.
	for i, k := range []string{"1", "2", "3"} {
		next, cmd := r.m.Update(press(k))
		r.m = next.(Model)
		switch {
		case i == 0:
			first = cmd
		case cmd != nil:
			t.Errorf("key %d starts another solve", i+1)
		}
	}
	if first == nil {
		t.Fatal("the first key starts nothing")
	}
	before := r.m.live.Solution
	next, second := r.m.Update(first())
	r.m = next.(Model)
	if r.m.live.Solution != before {
		t.Error("an overtaken result is shown")
	}
	if second == nil {
		t.Fatal("the newest snapshot is forgotten")
	}
	if got := second().(session.Solved); got.Of != r.m.live.Sheet {
		t.Errorf("solved %v, want the newest sheet", got.Of)
	}
}

func TestAnAnswerThatDoesNotReadLeavesTheResult(t *testing.T) {
	r := newRig(t, hanging+"T2 = \"zz\"\n", 120, 36)
	r.sees("determinate", "37.5 N", "answer T2")
	if r.m.live.Stale {
		t.Error("stale for an answer's sake")
	}
}

func TestASheetThatNeverReadShowsWhatDoes(t *testing.T) {
	r := newRig(t, "[points]\nA = \"1, 1, 1\"\nB = \"zz\"\n", 120, 36)
	r.sees("no result yet", "No result yet.", "zz!", "1.00  1.00   1.00", "A")
}

// Where several results show, the error of a sheet without one stands once among them.
func TestTheErrorOfASheetWithoutAResultStandsOnce(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
		r := newRig(t, "[points]\nP = { at = \"0, 0, 0\", on = \"particle\" }\nB = \"zz\"\n", size[0], size[1])
		if size[0] == 80 {
			r.keys("ctrl+t") // the result in place of the picture
		}
		r.sees("No result yet.", "! point B")
		if n := strings.Count(r.screen(), "│ ! point B"); n > 1 {
			t.Errorf("%dx%d: the error stands in %d results:\n%s", size[0], size[1], n, r.screen())
		}
	}
}

// A second particle typed before its lines leaves the result of the first standing.
func TestAParticleWithoutForcesLeavesTheResult(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("alt+p", "ctrl+n")
	r.text("E")
	r.keys("enter")
	r.text("1, 1")
	r.keys("enter")
	r.text("particle")
	r.keys("enter", "esc")
	r.holds(sheet.Ref{Table: "points", Row: "E", Key: "on"}, "particle")
	r.sees("determinate, 1 joint not connected yet", "37.5 N", "no force acts on E, so it is left out. Try: add a line at E", "? ")
	if r.m.live.Stale {
		t.Error("stale for the sake of a particle without forces")
	}
	r.keys("f7 c")
	r.sees("not yet, no force acts on E, so it is left out")
}

func TestAnEmptySheet(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {200, 60}} {
		r := rigOf(t, Options{Width: size[0], Height: size[1]})
		r.sees("untitled", "empty: ctrl+n adds a row")
		r.keys("ctrl+n")
		r.text("A")
		r.keys("enter")
		r.text("0, 0, 1")
		r.keys("enter")
		r.holds(sheet.Ref{Table: "points", Row: "A", Key: "at"}, "0, 0, 1")
		if size[0] == 200 {
			r.sees("0  0   1.00")
		}
	}
}

func TestTwoSessionsShareNothing(t *testing.T) {
	done := make(chan bool)
	for range 2 {
		go func() {
			defer func() { done <- true }()
			s, err := sheet.Parse([]byte(hanging))
			if err != nil {
				t.Error(err)
				return
			}
			r := rigOf(t, Options{Sheet: s, Width: 120, Height: 36})
			for _, k := range []string{"down", "right", "1", ",", "2", "tab", "alt+i", "left", "?", "esc", "ctrl+z"} {
				r.send(press(k))
				r.screen()
			}
		}()
	}
	<-done
	<-done
}

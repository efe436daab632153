package tui

import (
	"strings"
	"testing"

	"trivet/mechanics/sheet"
	"trivet/tui/layout"
)

// bottom gives the line of the cell and what is said of it.
func (r *rig) bottom() string {
	lines := strings.Split(r.screen(), "\n")
	return strings.TrimSpace(lines[len(lines)-layout.Foot])
}

func (r *rig) says(want string) {
	r.t.Helper()
	if got := r.bottom(); got != want {
		r.t.Errorf("the bottom says %q, want %q", got, want)
	}
}

func TestAQuestionMarkIsTypedWhereAMagnitudeTakesIt(t *testing.T) {
	size := sheet.Ref{Table: "lines", Row: "F", Key: "magnitude"}
	r := newRig(t, hanging, 120, 36)
	r.keys("alt+3", "down", "down", "right", "right", "right", "right")
	r.sees("F magnitude: W", "f1 help")
	r.keys("?")
	if r.m.help != nil || r.m.edit == nil {
		t.Fatal("? opens the help on a magnitude")
	}
	r.keys("enter")
	r.holds(size, "?")
	r.keys("f1")
	r.sees("Keys: Anywhere", "on the size of a force ? is typed")
	r.keys("f1", "left", "?")
	if r.m.help == nil {
		t.Error("? does not open the help on a direction")
	}
	r.keys("?", "alt+5", "?")
	if r.m.edit == nil || r.m.edit.slot.ref != (sheet.Ref{Table: "lines", Row: "T1", Key: "magnitude"}) {
		t.Error("? is not typed on the size of an unknown")
	}
	r = newRig(t, beam, 120, 40)
	r.keys("alt+4", "down", "down", "down", "right", "right", "right", "right")
	r.sees("M0 magnitude: 900 N m")
	r.keys("?", "enter")
	r.holds(sheet.Ref{Table: "couples", Row: "M0", Key: "magnitude"}, "?")
}

// What stands in a cell that is left out is not what was typed.
func TestACellLeftOutSaysSo(t *testing.T) {
	r := newRig(t, beam, 200, 60)
	r.keys("alt+4", "down", "right", "right")
	r.says("A at: A (left out)   all forces; in space also the moments across its axis")
	r.keys("f2")
	if r.m.edit.text != "" {
		t.Errorf("editing begins with %q", r.m.edit.text)
	}
	r.text("C")
	r.keys("enter", "up")
	r.says("A at: C   all forces; in space also the moments across its axis")
	r.keys("up", "right")
	r.says("beam about: C (left out)   moments about C (2.00, 0)")
}

// A cell that a row has no more is called by its row.
func TestACellThatTheRowDoesNotHave(t *testing.T) {
	r := newRig(t, strings.Replace(beam, `{ kind = "pin" }`, `{ kind = "pin", axis = "+z" }`, 1), 200, 60)
	r.keys("alt+4", "down", "right", "right", "right")
	r.says("A axis: +z   all forces; in space also the moments across its axis")
	r.keys("delete")
	r.says("A: all forces; in space also the moments across its axis")
	r.keys("f2")
	r.sees("a row of this kind has no such cell")
}

func TestWhatFollowsShowsOnce(t *testing.T) {
	r := newRig(t, beam, 200, 60)
	r.keys("alt+4", "down", "down", "down", "down", "right", "right", "right", "right")
	r.says("q magnitude: 600 N/m   resultant 1200 N at 1.00 m")
	r.keys("right", "right")
	r.says("resultant: 1200 N at 1.00 m")
	r.keys("alt+2", "down", "right", "right")
	r.says("C on: beam   = (2.00, 0) m")
	r.keys("right")
	r.says("x, y (m): (2.00, 0)")
}

func TestWhatIsDoubtfulIsSaid(t *testing.T) {
	r := newRig(t, strings.Replace(hanging, `on = "particle"`, `on = "pa"`, 1), 120, 36)
	const says = `points D on: "pa" is a body of its own here, with D as its one point: was "particle" meant`
	r.sees("determinate", "? "+says)
	r.keys("right", "right")
	r.text("particle")
	r.keys("enter")
	if strings.Contains(r.screen(), "meant") {
		t.Errorf("it is said still:\n%s", r.screen())
	}
}

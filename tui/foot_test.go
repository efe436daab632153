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
	r.keys("f7 f", "down", "down", "right", "right", "right", "right")
	r.sees("F magnitude: W", "f1: help")
	r.keys("?")
	if r.m.help != nil || r.m.cells.Cell == nil {
		t.Fatal("? opens the help on a magnitude")
	}
	r.keys("enter")
	r.holds(size, "?")
	r.keys("f1")
	r.sees("Keys: Anywhere", "in the magnitude of a force, ? types")
	r.keys("f1", "left", "?")
	if r.m.help == nil {
		t.Error("? does not open the help on a direction")
	}
	r.keys("?", "alt+m", "?")
	if r.m.cells.Cell == nil || r.m.cells.Cell.Slot.Ref != (sheet.Ref{Table: "lines", Row: "T1", Key: "magnitude"}) {
		t.Error("? is not typed on the size of an unknown")
	}
	r = newRig(t, beam, 120, 40)
	r.keys("f7 s", "down", "down", "down", "right", "right", "right", "right")
	r.sees("M0 magnitude: 900 N m")
	r.keys("?", "enter")
	r.holds(sheet.Ref{Table: "couples", Row: "M0", Key: "magnitude"}, "?")
}

// What stands in a cell that is left out is not what was typed.
func TestACellLeftOutSaysSo(t *testing.T) {
	r := newRig(t, beam, 200, 60)
	r.keys("f7 s", "down", "right", "right")
	r.says("A at: A (left out)   all forces; in space also the moments perpendicular to its axis")
	r.keys("f2")
	if r.m.cells.Cell.Text != "" {
		t.Errorf("editing begins with %q", r.m.cells.Cell.Text)
	}
	r.text("C")
	r.keys("enter", "up", "right", "right")
	r.says("A at: C   all forces; in space also the moments perpendicular to its axis")
	r.keys("up", "right")
	r.says("beam about: C (left out)   moments about C (2.00, 0)")
}

// A cell that a row has no more is called by its row.
func TestACellThatTheRowDoesNotHave(t *testing.T) {
	r := newRig(t, strings.Replace(beam, `{ kind = "pin" }`, `{ kind = "pin", axis = "+z" }`, 1), 200, 60)
	r.keys("f7 s", "down", "right", "right", "right")
	r.says("A axis: +z   all forces; in space also the moments perpendicular to its axis")
	r.keys("delete")
	r.says("A: all forces; in space also the moments perpendicular to its axis")
	r.keys("f2")
	r.sees("a row of this kind has no such cell")
}

func TestWhatFollowsShowsOnce(t *testing.T) {
	r := newRig(t, beam, 200, 60)
	r.keys("f7 s", "down", "down", "down", "down", "right", "right", "right", "right")
	r.says("q magnitude: 600 N/m   resultant 1200 N at 1.00 m")
	r.keys("right", "right")
	r.says("resultant: 1200 N at 1.00 m")
	r.keys("alt+p", "down", "right", "right")
	r.says("C on: beam   = (2.00, 0) m")
	r.keys("right")
	r.says("x, y (m): (2.00, 0)")
}

// What is read by nothing is said in the foot, that of the row under the cursor first.
func TestWhatIsUnreadIsSaid(t *testing.T) {
	text := strings.Replace(hanging, `[points]`, "[loads]\nP = { kind = \"force\" }\n[points]", 1)
	for _, size := range [][2]int{{80, 24}, {120, 36}} {
		r := newRig(t, text, size[0], size[1])
		r.sees("determinate", "? unknown table [loads]. Try: [lines]")
		r = newRig(t, strings.Replace(text, `on = "particle"`, `on = "particle", colour = "red"`, 1), size[0], size[1])
		r.sees("determinate", "? 1 of 2: point D: unknown key \"colour\". Try: x-colour")
		r.keys("f7 f")
		r.sees("? 1 of 2: unknown table [loads]. Try: [lines]")
	}
	r := newRig(t, strings.Replace(hanging, `title`, "x-office = \"north\"\ntitle", 1), 80, 24)
	if strings.Contains(r.screen(), "x-office") {
		t.Errorf("a name that begins with x- is said:\n%s", r.screen())
	}
}

// Where something is missing that stands in an unknown table, the table is said.
func TestWhatIsMissingStandsInAnUnknownTable(t *testing.T) {
	r := newRig(t, strings.Replace(hanging, "[lines]", "[line]", 1), 80, 24)
	r.sees("? unknown table [line]. Try: [lines]")
	r = newRig(t, strings.Replace(hanging, `T2 = { kind`, `T2 = { knid`, 1), 80, 24)
	r.sees(`? line T2: unknown key "knid". Try: kind`)
}

// A key that a kind has no use for stays in the file, and is said as soon as the kind is typed.
func TestAKeyThatAKindDoesNotUseIsSaid(t *testing.T) {
	r := newRig(t, strings.Replace(beam, "asked = \"Ax Ay B\"\n", "", 1), 120, 36)
	if strings.Contains(r.screen(), "does not use") {
		t.Errorf("a roller uses its normal:\n%s", r.screen())
	}
	r.keys("f7 s", "down", "down", "right")
	r.text("pin")
	r.keys("enter")
	r.holds(sheet.Ref{Table: "joints", Row: "B", Key: "normal"}, "+y")
	r.sees(`? joint B: a pin does not use "normal". Try: remove it`)
}

// Names that are easily taken for something else are said as other doubts are.
func TestAnUnknownBesideAGivenIsSaid(t *testing.T) {
	r := newRig(t, "plane = \"xy\"\n[given]\nW = \"400 N\"\n[points]\nP = { at = \"0, 0\", on = \"particle\" }\nA = \"0, 3\"\n[lines]\nT = { kind = \"cable\", path = \"P A\" }\n"+
		"F = { kind = \"force\", at = \"P\", along = \"-y\", magnitude = \"w\" }\n", 120, 36)
	r.sees("? line F magnitude: w is a new unknown here, different from the given W. Try: W, if that is meant")
}

func TestWhatIsDoubtfulIsSaid(t *testing.T) {
	r := newRig(t, strings.Replace(hanging, `on = "particle"`, `on = "pa"`, 1), 120, 36)
	const says = `point D on: "pa" is a body with the one point D. Try: particle, if that is meant`
	r.sees("determinate", "? "+says)
	r.keys("right", "right")
	r.text("particle")
	r.keys("enter")
	if strings.Contains(r.screen(), "meant") {
		t.Errorf("it is said still:\n%s", r.screen())
	}
}

// A row whose name begins with x- is in its pane and in the file, and is read by nothing.
func TestARowSetAside(t *testing.T) {
	text := strings.Replace(hanging, "[lines]", "[lines]\nx-N = { kind = \"force\", at = \"D\", along = \"+x\", magnitude = \"5 kN\" }", 1)
	r := newRig(t, text, 120, 36)
	r.sees("determinate")
	r.keys("f7 f")
	r.says("line: x-N   kept but ignored, because its name begins with x-")
	if got := len(r.m.live.Problem.Lines); got != 3 {
		t.Errorf("%d lines", got)
	}
	r.text("N1")
	r.keys("enter")
	if _, ok := r.m.history.Current().Table("lines").Row("N1"); !ok || len(r.m.live.Problem.Lines) != 4 {
		t.Errorf("x-N did not come back:\n%s", r.screen())
	}
	r.keys("ctrl+z")
	if got := r.m.history.Current().Text(); got != text {
		t.Errorf("the sheet is another one:\n%s", got)
	}
}

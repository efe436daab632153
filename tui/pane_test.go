package tui

import (
	"strings"
	"testing"

	"trivet/tui/layout"
)

func TestTheSystemScrollsBothWays(t *testing.T) {
	r := newRig(t, crane, 80, 24)
	r.keys("alt+y")
	r.sees("A x = b")
	if strings.Contains(r.screen(), "residual") {
		t.Error("the whole matrix fits, so nothing is tested here")
	}
	r.keys("right", "right", "right", "right", "right")
	r.sees("residual")
	r.keys("end")
	r.sees("decides.")
	for range 50 {
		r.keys("down", "right", "pgdown")
	}
	if o, text := r.m.read[layout.System].Scroll, r.m.texts[layout.System]; o.Y > len(text.paneText) || o.X > text.wide {
		t.Errorf("scrolled to %v", o)
	}
	r.keys("home")
	r.sees("determinate: every")
	r.keys("esc")
	if r.m.focus != layout.Points {
		t.Errorf("esc leads to pane %d", r.m.focus)
	}
}

func TestPanesShareAPlaceOnASmallScreen(t *testing.T) {
	r := newRig(t, crane, 80, 24)
	r.sees("System")
	r.keys("ctrl+t")
	r.sees("Picture")
	r.keys("ctrl+t")
	r.sees("Supports and loads", "empty: ctrl+n adds a joint")
	r.keys("f3")
	r.sees("Givens", "load")
	if r.m.focus != layout.Points {
		t.Error("the keys have gone to another pane")
	}
	r.keys("ctrl+t")
	r.sees("System")
	r.keys("f7 w")
	r.sees("Working")
	r.keys("alt+p", "ctrl+t", "ctrl+t", "ctrl+t", "ctrl+t")
	r.sees("Working") // the result that showed last
}

func TestThePaneOfSupportsStandsWhereItIsOfUse(t *testing.T) {
	r := newRig(t, crane, 120, 36)
	if strings.Contains(r.screen(), "Supports and loads") {
		t.Error("a sheet without supports gives room to their pane")
	}
	r.keys("f7 s")
	r.sees("Supports and loads")
	r.keys("alt+p")
	if strings.Contains(r.screen(), "Supports and loads") {
		t.Error("the empty pane stays")
	}
	newRig(t, crane, 200, 60).sees("Supports and loads")
	newRig(t, boom, 120, 36).sees("Supports and loads")
}

func TestEnlargeAndHop(t *testing.T) {
	r := newRig(t, crane, 80, 24)
	for _, want := range []string{"Force lines", "Supports", "Unknown", "System", "Picture", "Checks", "Working", "Hand solution", "Ranges", "Limits", "Givens", "Points"} {
		r.keys("ctrl+w", "ctrl+e")
		r.sees("━ " + want)
		if n := strings.Count(r.screen(), "│"); n > 10 {
			t.Errorf("%s shares the screen", want)
		}
		r.keys("ctrl+e")
	}
	r.keys("alt+y", "3")
	if r.m.focus != layout.Lines {
		t.Errorf("3 leads from the system to pane %d", r.m.focus)
	}
	r.keys("shift+f6")
	if r.m.focus != layout.Points {
		t.Errorf("the pane before is %d", r.m.focus)
	}
}

func TestWhatIsWrongShowsWhenABadCellIsOpened(t *testing.T) {
	r := newRig(t, strings.Replace(crane, `"0, 1, 3"`, `"0, zz, 3"`, 1), 80, 24)
	r.keys("down", "right", "f2")
	lines := strings.Split(r.screen(), "\n")
	if i := strings.Index(lines[21], "zz"); i < 0 || strings.Index(lines[22], "^^") != i {
		t.Errorf("no caret under zz:\n%s\n%s", lines[21], lines[22])
	}
}

func TestAnUnknownResultIsPointedAt(t *testing.T) {
	r := newRig(t, crane, 120, 36)
	r.keys("alt+m", "home", "down", "down", "down", "f2", "backspace")
	r.text("q")
	lines := strings.Split(r.screen(), "\n")
	if i := strings.Index(lines[33], "TA.q"); i < 0 || strings.Index(lines[34], "^") != i {
		t.Errorf("no caret under TA.q:\n%s\n%s", lines[33], lines[34])
	}
	if r.m.live.Stale {
		t.Error("a result that does not read makes the solution stale")
	}
}

func TestKindsOfSheets(t *testing.T) {
	for _, c := range []struct {
		name, from, to string
		sees           []string
	}{
		{"a fourth wire makes it indeterminate", "[answers]", "TC = { kind = \"cable\", path = \"D Z\" }\n[answers]", []string{"statically indeterminate to the first degree", ".."}},
		{"without a cable the tip swings", `TB = { kind = "cable", path = "D B" }`, "", []string{"no equilibrium", "D is unsupported"}},
		{"a load upwards slackens the cables", `along = "-z"`, `along = "+z"`, []string{"inadmissible", "C!", "T!", "in compression"}},
		{"a tie", `path = "D B" }`, `path = "D B", magnitude = "2*TA" }`, []string{"2*TA"}},
	} {
		text := strings.Replace(crane, c.from, c.to, 1)
		text = strings.Replace(text, "[lines]", "Z = \"0, 0, 4\"\n[lines]", 1)
		t.Run(c.name, func(t *testing.T) {
			r := newRig(t, text, 200, 60)
			r.sees(c.sees...)
		})
	}
}

// boom is a rigid body: 100 kg at T, held by a cable and a pin; with 5 kN m on it.
const boom = `plane = "xy"
[points]
A = { at = "0, 0", on = "boom" }
T = { at = "4, 0", on = "boom" }
W = "0, 3"
[lines]
cable = { kind = "cable", path = "T W" }
load = { kind = "weight", at = "T", magnitude = "100 kg" }
[joints]
A = { kind = "pin" }
[couples]
M0 = { on = "boom", magnitude = "5000 N m" }
`

func TestAScreenThatIsTooSmallStillAnswers(t *testing.T) {
	r := newRig(t, crane, 40, 10)
	r.sees("needs 60 by 16")
	r.keys("ctrl+o", "x")
	r.sees("save as: lamp.tomlx")
	r.keys("esc", "right", "delete", "ctrl+q")
	r.sees("y / n / esc: lamp.toml has unsaved")
	if r.keys("n"); !r.quit {
		t.Error("n does not leave")
	}
}

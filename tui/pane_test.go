package tui

import (
	"strings"
	"testing"

	"trivet/tui/layout"
)

// A matrix that a pane has no room for is written as sums: nothing of it is cut.
func TestTheSystemIsNeverCut(t *testing.T) {
	for _, c := range []struct {
		w, h int
		want []string
	}{
		{80, 24, []string{"D ΣFz 0.6667 TA +0.6667 TB +0.4472 S", "= 300  residual 0"}},
		{120, 36, []string{"D ΣFz  0.6667  0.6667  0.4472 │       300           0"}},
		{240, 60, []string{"of largest", "D ΣFz  0.6667  0.6667  0.4472 │       300           0           0"}},
	} {
		r := newRig(t, crane, c.w, c.h)
		r.keys("alt+y")
		r.sees(append(c.want, "A x = b")...)
	}
	r := newRig(t, crane, 80, 24)
	r.keys("alt+y", "end")
	r.sees("decides.")
	for range 50 {
		r.keys("down", "right", "pgdown")
	}
	if o, text := r.m.read[layout.System].Scroll, r.m.texts[layout.System]; o.Y > len(text.Lines) || o.X > text.Wide {
		t.Errorf("scrolled to %v", o)
	}
	r.keys("home")
	r.sees("determinate: every")
	r.keys("esc")
	if r.m.Focus != layout.Points {
		t.Errorf("esc leads to pane %d", r.m.Focus)
	}
}

func TestPictureAndResultsShareAPlaceOnASmallScreen(t *testing.T) {
	r := newRig(t, crane, 80, 24)
	r.sees("Picture in space")
	r.keys("ctrl+t")
	r.sees("System", "A x = b")
	r.keys("f3")
	r.sees("Picture in space")
	r.live("Points") // the keys stay
	r.keys("f7 w")
	r.live("Working")
	r.keys("alt+p", "ctrl+t", "ctrl+t")
	r.sees("Working") // the result that showed last
}

// Givens and supports stand where there are any, and where they are asked for; the
// sheet's own settings where they are.
func TestPanesStandWhereTheyAreOfUse(t *testing.T) {
	bare := strings.Replace(strings.Replace(crane, "[given]\nload = { value = \"300 N\", range = \"100 N .. 500 N\" }\n", "", 1), "magnitude = \"load\"", "magnitude = \"300 N\"", 1)
	for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
		for _, c := range []struct{ keys, title, sees string }{
			{"f7 s", "Supports", "empty: ctrl+n adds a joint"}, {"f7 g", "Givens", "empty: ctrl+n adds a given"}, {"alt+e", "Sheet", "force in"},
		} {
			r := newRig(t, bare, size[0], size[1])
			if strings.Contains(r.screen(), c.title) {
				t.Errorf("%v: an empty pane of %s stands", size, c.title)
			}
			r.keys(c.keys)
			r.live(c.title)
			r.sees(c.sees)
			r.keys("alt+p")
			if strings.Contains(r.screen(), c.title) {
				t.Errorf("%v: the pane of %s stays", size, c.title)
			}
		}
		newRig(t, boom, size[0], size[1]).sees("Supports", "M0")
		newRig(t, crane, size[0], size[1]).sees("Givens", "load")
	}
}

func TestEnlargeAndHop(t *testing.T) {
	r := newRig(t, crane, 80, 24)
	for _, want := range []string{"Force lines", "Supports", "Unknown", "Sheet", "System", "Picture", "Checks", "Working", "Hand solution", "Ranges", "Limits", "Givens", "Points"} {
		r.keys("ctrl+w", "ctrl+e")
		r.live(want)
		if n := strings.Count(r.screen(), "│"); n > 10 {
			t.Errorf("%s shares the screen", want)
		}
		r.keys("ctrl+e")
	}
	r.keys("alt+y", "f7 f")
	r.live("Force lines")
	r.keys("shift+f6")
	r.live("Points")
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

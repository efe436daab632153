package tui

import (
	"fmt"
	"image"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"

	"trivet/mechanics/origin"
	"trivet/tui/layout"
	"trivet/tui/results"
	"trivet/tui/theme"
)

// foot is the line below that tells where the number under the cursor comes from.
func (r *rig) foot() string {
	lines := strings.Split(r.screen(), "\n")
	return strings.TrimSpace(lines[len(lines)-layout.Foot])
}

func (r *rig) tells(want string) {
	r.t.Helper()
	if got := r.foot(); got != want {
		r.t.Errorf("the line below is\n%s\nwant\n%s", got, want)
	}
}

// The numbers are those of crane and beam (golden_test.go), worked there by hand.
func TestTheNumberUnderTheCursorExplainsItself(t *testing.T) {
	for _, c := range []struct {
		sheet string
		keys  string
		want  string
	}{
		{crane, "alt+y", "TA in ΣFx on D: x of u from D to A = (0 - 2.00) m / 3.00 m = -0.6667"},
		{crane, "alt+y right right", "S in ΣFx on D: x of u from C to D = (2.00 - 0) m / 2.24 m = 0.8944"},
		{crane, "alt+y down left", "the residual A x - b of ΣFx on D, the sum of TA -100 N, TB -100 N and S 200 N: 0 N"},
		{crane, "alt+y down down right right right", "b in ΣFz on D: minus the known force, load1 -300 N"},
		{crane, "alt+y down down down", "TA = 150 N: TA, TB and S together from ΣFx on D, ΣFy on D and ΣFz on D"},
		{crane, "f7 c", "150 N of 120 N (limit of TA) = 125 %"},
		{crane, "f7 r", "TA = 150 N"},
		{crane, "alt+l", "150 N of 120 N (limit of TA) = 125 %"},
		{crane, "alt+l right", "the limit of TA, from its cell"},
		{beam, "alt+h", "B in ΣM about A on the beam: the moment of one unit of it, its arm with its sign ="},
		{beam, "f7 w end", "B from ΣM about A on the beam: (b - the others) / its coefficient = 11 300 N m / 6.0000 m = 1880 N"},
		{beam, "alt+y down down down", "Ax from ΣFx on the beam: (b - the others) / its coefficient = 0 N / 1 = 0 N"},
		{beam, "alt+l", "1880 N of 1500 N (limit of B) = 126 %"},
	} {
		r := newRig(t, c.sheet, 120, 36)
		r.keys(strings.Fields(c.keys)...)
		if got := r.foot(); !strings.HasPrefix(got, c.want) {
			t.Errorf("%s: the line below is\n%s\nwant\n%s", c.keys, got, c.want)
		}
	}
}

func TestTheCursorFollowsItsNumberAndShowsWithoutColour(t *testing.T) {
	r := newRig(t, crane, 120, 36)
	r.keys("alt+y", "down", "down", "right", "right", "right")
	r.sees("▸300           0") // b of ΣFz, with the mark before it
	at := r.m.read[layout.System].At
	r.keys("f7 g", "4", "0", "0", "space", "N", "enter", "alt+y")
	if got := r.m.read[layout.System].At; !origin.Same(got, at) {
		t.Errorf("the cursor went from %q to %q", at.Says(), got.Says())
	}
	r.tells("b in ΣFz on D: minus the known force, load1 -400 N")
}

func TestTheCursorStaysInView(t *testing.T) {
	for _, pane := range []string{"alt+y", "f7 c", "f7 w", "alt+h", "f7 r", "alt+l"} {
		for _, text := range []string{crane, beam, hanging} {
			r := newRig(t, text, 80, 24)
			r.keys(pane)
			for n := range 200 {
				r.keys([]string{"down", "right", "down", "left", "pgdown", "up", "end", "right", "home"}[n%9])
				p := r.m.Focus
				v, rect := r.m.read[p], r.m.screen().Panes[p]
				d := r.m.texts[p].Lines
				if !v.InView(d, rect.Dy()-1) {
					continue
				}
				if x := d.Number(v.Line, v.Span); x.To-x.From < rect.Dx()-2 && (x.From < v.Scroll.X || x.To > v.Scroll.X+rect.Dx()-2) {
					t.Fatalf("%s: columns %d to %d are out of view at %d", pane, x.From, x.To, v.Scroll.X)
				}
				if r.m.says == "" {
					t.Fatalf("%s: %v is not explained", pane, v.At)
				}
			}
		}
	}
}

func TestATextWithoutNumbersScrolls(t *testing.T) {
	var many strings.Builder
	for i := range 40 {
		fmt.Fprintf(&many, "word%c ", 'a'+i%26)
	}
	r := newRig(t, strings.Replace(hanging, "plane", "statement = \""+strings.Repeat(many.String(), 3)+"\"\nplane", 1), 80, 24)
	r.keys("alt+y", "end")
	r.sees("decides.")
	was := r.m.read[layout.System].Scroll.Y
	r.keys("up")
	if got := r.m.read[layout.System].Scroll.Y; got != was-1 {
		t.Errorf("up scrolls from %d to %d", was, got)
	}
	r.tells(fmt.Sprintf("line %d of %d", was, len(r.m.texts[layout.System].Lines)))
}

func TestAClickPutsTheCursorOnANumber(t *testing.T) {
	r := newRig(t, crane, 120, 36)
	for y, line := range strings.Split(r.screen(), "\n") {
		if before, _, ok := strings.Cut(line, "-0.6667  0.8944"); ok {
			x := ansi.StringWidth(before)
			r.send(tea.MouseClickMsg{X: x + 10, Y: y, Button: tea.MouseLeft})
		}
	}
	r.tells("S in ΣFx on D: x of u from C to D = (2.00 - 0) m / 2.24 m = 0.8944")
	at := r.m.read[layout.System]
	r.send(tea.MouseClickMsg{X: r.m.screen().Panes[layout.System].Min.X + 1, Y: r.m.screen().Panes[layout.System].Min.Y + 2, Button: tea.MouseLeft})
	if got := r.m.read[layout.System]; got != at {
		t.Errorf("a click beside a number goes to %v", got)
	}
}

func TestAStaleNumberIsOfTheEarlierSheet(t *testing.T) {
	r := newRig(t, crane, 120, 36)
	r.keys("f7 c", "f7 g", "z", "z", "enter", "f7 c")
	r.sees("Checks (stale)")
	r.tells("of the earlier sheet: 150 N of 120 N (limit of TA) = 125 %")
}

func TestOnlyWhatShowsIsWritten(t *testing.T) {
	r := newRig(t, crane, 80, 24)
	r.keys("ctrl+t")
	for p := range layout.Panes {
		if shows := p == layout.System; p.Result() && (len(r.m.texts[p].Lines) > 0) != shows {
			t.Errorf("pane %d has %d lines", p, len(r.m.texts[p].Lines))
		}
	}
	if r.m.worked.Of != nil {
		t.Error("the working was laid out though nothing shows it")
	}
	r.keys("f7 w")
	r.sees("Free body")
	r.keys("alt+y", "alt+p", "down", "right", "0", ",", "2", ",", "3", "enter")
	if r.m.worked.Of == r.m.live.Solution {
		t.Error("the working follows though it does not show any more")
	}
}

func TestLargeResultsAreBounded(t *testing.T) {
	r := newRig(t, longTruss(150), 120, 36)
	r.keys("alt+y")
	r.sees("P0 ΣFx", "residual", " a1")
	r.tells("a1 in ΣFx on P0: x of u from P0 to P1 = (1.00 - 0) m / 1.41 m = 0.7071")
	r.keys("f7 w", "end")
	if n := len(r.m.texts[layout.Working].Lines); n > results.MaxLines+200 {
		t.Errorf("the working has %d lines", n)
	}
	r.keys("alt+h")
	r.sees("A hand solution is sought for up to 150 unknowns;", "has 300.")
}

func TestTheHandRouteSaysWhyThereIsNone(t *testing.T) {
	r := newRig(t, strings.Replace(hanging, "[answers]", "T3 = { kind = \"cable\", path = \"D C\" }\n[answers]", 1), 120, 36)
	r.keys("alt+h")
	r.sees("No result yet") // there is no point C
	text := strings.Replace(hanging, "[lines]", "C = \"0, 4\"\n[lines]\nT3 = { kind = \"cable\", path = \"D C\" }", 1)
	r = newRig(t, text, 120, 36)
	r.keys("alt+h")
	r.sees("No unknown that is asked for has a single value.")
	r.keys("f7 r", "right")
	// T1 = T2 along (±3, 4)/5, so 1.6 T1 + T3 = 60 N: T3 is at most 60 N, T1 60/1.6 = 37.5 N.
	r.tells("T3: greatest value 60.0 N, where T1 and T2 go slack")
	r.sees("0 .. 37.5 N", "smallest: T1 and T2 go slack")
}

func TestOneKeyGoesThroughTheResults(t *testing.T) {
	heads := []string{"Checks", "Working", "Hand solution", "Ranges", "Limits", "System"}
	for _, size := range []image.Point{{80, 24}, {120, 36}} {
		r := newRig(t, crane, size.X, size.Y)
		if size.X == 80 {
			r.keys("alt+t") // in place of the picture
		}
		for _, h := range heads {
			r.keys("alt+t")
			r.sees(h)
		}
		r.keys("alt+y")
		for _, h := range heads {
			r.keys(".")
			r.live(h)
		}
		r.keys(",")
		r.sees("Limits")
	}
	r := newRig(t, crane, 120, 36)
	for _, h := range heads {
		r.keys("ctrl+t")
		r.sees(h, "Picture", "Points")
	}
	r = newRig(t, crane, 200, 60)
	r.sees("System", "Picture", "Checks", "Limits")
	for _, h := range []string{"Working", "Hand solution", "Ranges", "Limits"} {
		r.keys("ctrl+t")
		r.sees(h, "System", "Checks")
	}
	r = newRig(t, crane, 80, 24)
	r.keys("alt+t")
	r.sees("System") // in place of the picture, before the next follows
	r.keys("alt+i", ".")
	r.sees("System")
}

func TestOthersSeeTheWorkingThatTheirScreenHasRoomFor(t *testing.T) {
	r := newRig(t, crane, 120, 36)
	r.keys("f7 w", "alt+y", "right")
	wide := ansi.Strip(r.m.Look().On(200, 60, theme.Unicode).String())
	for _, piece := range []string{"Working", "Free body", "TB in ΣFx on D: x of u from D to B"} {
		if !strings.Contains(wide, piece) {
			t.Errorf("%q does not show in\n%s", piece, wide)
		}
	}
	reader := r.m.Look().Reader(120, 36, theme.Unicode)
	reader, _ = reader.Key(press("right"))
	if s := ansi.Strip(reader.Frame().String()); !strings.Contains(s, "S in ΣFx on D") {
		t.Errorf("a reader's own cursor stays:\n%s", s)
	}
	r.tells("TB in ΣFx on D: x of u from D to B = (0 - 2.00) m / 3.00 m = -0.6667")
	reader, _ = reader.Key(press("f7"))
	reader, _ = reader.Key(press("w"))
	if s := ansi.Strip(reader.Take(r.m.Look()).Frame().String()); !strings.Contains(s, "Free body") {
		t.Errorf("a reader's own working stays:\n%s", s)
	}
}

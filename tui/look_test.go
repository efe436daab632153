package tui

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"trivet/tui/board"
	"trivet/tui/frame"
	"trivet/tui/keys"
	"trivet/tui/results"
	"trivet/tui/theme"
)

// looked is what a follower sees of a session.
func looked(m Model, w, h int) string { return ansi.Strip(m.Look().On(w, h, theme.Unicode).String()) }

// butKeys is a screen without its last line: a follower has fewer keys.
func butKeys(screen string) string { return screen[:strings.LastIndexByte(screen, '\n')] }

// One who watches is offered no key that would change the sheet, whatever the
// presenter does.
func TestWhoWatchesIsOfferedNoKeysThatEdit(t *testing.T) {
	last := func(screen string) string { return strings.TrimSpace(screen[strings.LastIndexByte(screen, '\n')+1:]) }
	r := newRig(t, hanging, 120, 36)
	const cells = "f5: board   ctrl w: next pane   f7: panes   ctrl t: results   f1: help"
	for _, c := range []struct {
		keys []string
		want string
	}{
		{nil, cells}, {[]string{"down", "right"}, cells}, {[]string{"1", ",", "2"}, "f1: help"}, {[]string{"esc", "ctrl+k"}, ""},
		{[]string{"esc", "f5"}, "space: next   left: back   l: list   esc: workbench   f1: help"},
	} {
		r.keys(c.keys...)
		if got := last(looked(r.m, 120, 36)); got != c.want {
			t.Errorf("after %v a follower has %q, want %q", c.keys, got, c.want)
		}
	}
	r.keys("esc")
	v := r.m.Look().Reader(120, 36, theme.Unicode)
	if got := last(ansi.Strip(v.Frame().String())); got != cells {
		t.Errorf("a reader has %q", got)
	}
	v, _ = v.Key(press("?"))
	help := ansi.Strip(v.Frame().String())
	if !strings.Contains(help, "You watch: what you press moves your own view and changes nothing in the sheet.") {
		t.Errorf("the help is not a reader's:\n%s", help)
	}
	for _, b := range keys.Table() {
		if l := strings.Join(b.Keys, ", "); b.Intent == keys.Save || b.Intent == keys.Quit || b.Scope == keys.Writing {
			for row := range strings.Lines(help) {
				if strings.HasPrefix(strings.TrimSpace(row), l+"  ") {
					t.Errorf("a reader is told of %s", l)
				}
			}
		}
	}
}

func TestALookInTheSameSizeIsTheSameScreen(t *testing.T) {
	for _, typed := range [][]string{nil, {"down", "right"}, {"down", "right", "f2"}, {"alt+y", "down"}, {"alt+i", "right"}, {"f5", "space"}, {"?"}} {
		r := newRig(t, hanging, 120, 36)
		r.keys(typed...)
		r.m.note = frame.Note{}
		if got := looked(r.m, 120, 36); butKeys(got) != butKeys(r.screen()) {
			t.Errorf("after %v:\n%s\nwant\n%s", typed, got, r.screen())
		}
	}
}

func TestALookInAnotherSizeIsThatOfASessionOfThatSize(t *testing.T) {
	typed := []string{"down", "right", "1", ",", "2"}
	for _, size := range [][2]int{{80, 24}, {200, 60}, {60, 16}, {40, 10}} {
		large, own := newRig(t, hanging, 120, 36), newRig(t, hanging, size[0], size[1])
		large.keys(typed...)
		own.keys(typed...)
		if got := looked(large.m, size[0], size[1]); butKeys(got) != butKeys(own.screen()) {
			t.Errorf("%v:\n%s\nwant\n%s", size, got, own.screen())
		}
	}
}

func TestALookStaysAndTellsNoFileNames(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	l := r.m.Look()
	before := l.Own().String()
	r.keys("down", "right")
	r.text("9, 9")
	r.keys("enter")
	if l.Own().String() != before {
		t.Error("a look has changed with the session")
	}
	r.keys("ctrl+o")
	if s := looked(r.m, 120, 36); !strings.Contains(r.screen(), "save as:") || strings.Contains(s, "save as:") {
		t.Errorf("a follower sees where it is saved:\n%s", s)
	}
}

func TestUnsavedTakesTheCellBeingTyped(t *testing.T) {
	r, path := onDisk(t, hanging)
	if _, _, _, any := r.m.Unsaved(); any {
		t.Error("nothing has been changed")
	}
	moveA(r)
	name, s, _, any := r.m.Unsaved()
	if !any || name != path || s.Text() != moved {
		t.Errorf("%v, %s:\n%s", any, name, s.Text())
	}
	if r.m.cells.Cell == nil || r.m.history.Modified() {
		t.Error("asking has changed the session")
	}
}

func TestAReaderChangesNothing(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	text := r.m.history.Current().Text()
	modes := []string{"f7 g", "alt+y", "alt+i", "f5", "?", "f1"}
	for _, to := range append(modes, "down") {
		there, _ := r.m.Look().Reader(120, 36, theme.Unicode).Key(press(to))
		for _, b := range keys.Table() {
			for _, k := range b.Keys {
				v, _ := there.Key(press(k))
				m := v.m
				if m.history.Current().Text() != text || m.cells.Cell != nil || m.naming != nil || m.ask != nil || m.choosing || m.cells.Fresh != nil || m.file.Saving {
					t.Errorf("%s, %s (%s) does more than look", to, k, b.Help)
				}
			}
		}
	}
	if r.m.history.Current().Text() != text {
		t.Error("a reader's key has reached the sheet")
	}
}

func TestAReaderKeepsItsPlaceWhileTheSheetChanges(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	v, ok := r.m.Look().Reader(100, 30, theme.Unicode).Key(press("alt+i"))
	if !ok || !strings.Contains(ansi.Strip(v.Frame().String()), "Picture") {
		t.Fatalf("not at the picture:\n%s", ansi.Strip(v.Frame().String()))
	}
	v, _ = v.Key(press("b"))
	v, _ = v.Key(press("3"))
	if s := ansi.Strip(v.Frame().String()); !strings.Contains(s, "step 3 of") {
		t.Fatalf("not at the third step:\n%s", s)
	}
	r.keys("down", "right")
	r.text("-3, 0")
	v = v.Take(r.m.Look())
	if s := ansi.Strip(v.Frame().String()); !strings.Contains(s, "step 3 of") {
		t.Errorf("the step is lost:\n%s", s)
	}
	v, _ = v.Key(press("esc"))
	if s := ansi.Strip(v.Frame().String()); !strings.Contains(s, "45.0") || !strings.Contains(s, "Picture") {
		t.Errorf("not the newest result, or another pane:\n%s", s)
	}
	// What the presenter hides stays hidden.
	r.keys("esc", "f5", "h")
	v = v.Take(r.m.Look())
	v, _ = v.Key(press("b"))
	for _, k := range []string{"h", "r"} {
		if _, ok := v.Key(press(k)); ok || v.m.board.Hides == board.HidesNothing {
			t.Errorf("%s shows what the presenter hides", k)
		}
	}
}

func TestLooksAreDrawnSideBySide(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("f5", "esc", "down", "right")
	var drawn sync.WaitGroup
	for i := range 12 {
		r.text("1")
		l := r.m.Look()
		drawn.Go(func() {
			l.On(60+10*i, 16+2*i, theme.Set(i%3))
			v := l.Reader(80, 24, theme.Unicode)
			v, _ = v.Key(press("alt+y"))
			v.Take(l).Frame()
		})
	}
	r.keys("enter", "ctrl+z")
	drawn.Wait()
}

// While the presenter hides the answers, one who watches sees none of them: on no pane, on
// the board or off it, in no size, by no key that means anything there.
func TestWatchersSeeNoHiddenAnswers(t *testing.T) {
	looks := []string{"esc", "alt+p", "alt+m", "alt+e", "alt+y", "alt+i", "alt+h", "alt+l", "f7 c", "f7 w", "f7 r", "f7 g", ".", ",", "+", "pgdown", "end", "down", "right", "tab", "ctrl+w", "f5", "end", "esc", "f1", "esc", "v", "g"}
	for _, name := range []string{"mast-top.toml", "beam-on-supports.toml", "frame-of-two-members.toml", "crate-tips-or-slips.toml"} {
		text, err := os.ReadFile(filepath.Join("..", "fixtures", "start", name))
		if err != nil {
			t.Fatal(err)
		}
		answers := "[answers]\n"
		r := newRig(t, string(text), 120, 36)
		for i, x := range r.m.live.Solution.X {
			answers += x.Name + ` = "` + results.Format(r.m.live.Problem, x.Value, r.m.live.Problem.Unknowns[i].Dim) + "\"\n"
		}
		r = newRig(t, string(text)+answers, 120, 36)
		r.keys("f5")
		values := slices.DeleteFunc(answersOf(r), func(v string) bool {
			digits, _, _ := strings.Cut(v, " ")
			return len(digits) < 4 || strings.Contains(string(text), digits) // what is given shows
		})
		if len(values) == 0 {
			t.Errorf("%s has no answer to look for", name)
		}
		r.keys("h")
		check := func(at, screen string) {
			for _, v := range values {
				digits, _, _ := strings.Cut(v, " ")
				if strings.Contains(screen, digits) {
					t.Errorf("%s, %s: %s shows in\n%s", name, at, v, screen)
				}
			}
		}
		for _, presenting := range []string{"on the board", "off the board"} {
			for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
				w, h := size[0], size[1]
				check(presenting, ansi.Strip(r.m.Look().On(w, h, theme.Unicode).String()))
				v := r.m.Look().Reader(w, h, theme.Unicode)
				for _, k := range looks {
					for _, one := range strings.Fields(k) {
						v, _ = v.Key(press(one))
						check(presenting+", after "+one, ansi.Strip(v.Frame().String()))
						check(presenting+", drawn anew after "+one, ansi.Strip(v.On(w, h, theme.Unicode).Take(r.m.Look()).Frame().String()))
					}
				}
			}
			r.keys("esc")
		}
		if screen := ansi.Strip(r.m.Look().On(120, 36, theme.Unicode).String()); !strings.Contains(screen, "answers hidden") || !strings.Contains(screen, "The presenter hides the answers.") {
			t.Errorf("%s: nothing says that answers are hidden:\n%s", name, screen)
		}
		r.keys("f5", "h", "esc")
		if screen := ansi.Strip(r.m.Look().On(120, 36, theme.Unicode).String()); strings.Contains(screen, "answers hidden") {
			t.Errorf("%s: they stay hidden:\n%s", name, screen)
		}
	}
}

// The help over a board that hides answers has no verdict at its head.
func TestTheHelpOverAHiddenBoardTellsNothing(t *testing.T) {
	r := newRig(t, hanging, 120, 36)
	r.keys("f5", "h")
	v, _ := r.m.Look().Reader(120, 36, theme.Unicode).Key(press("f1"))
	if s := ansi.Strip(v.Frame().String()); !strings.Contains(s, "answers hidden") || strings.Contains(s, "statically determinate") {
		t.Errorf("it shows\n%s", s)
	}
}

package tui

import (
	"fmt"
	"io"
	"math/rand/v2"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"
	"unicode"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/vt"

	"trivet/fixtures/long"
	"trivet/mechanics/sheet"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/settings"
	"trivet/tui/speech"
)

// listener drives a session on the linear screen and keeps what it says.
type listener struct {
	*rig
	lines   []string
	written strings.Builder
}

func listen(t testing.TB, o Options) *listener {
	t.Helper()
	l := &listener{rig: &rig{t: t}}
	o.Linear, o.tell = true, func(text string) { l.written.WriteString(text) }
	l.m = New(o)
	l.hear(l.m.Init())
	return l
}

func (l *listener) send(msg tea.Msg) {
	next, cmd := l.m.Update(msg)
	l.m = next.(Model)
	l.lines = append(l.lines, l.m.speech.Lines...)
	l.hear(cmd)
}

func (l *listener) hear(cmd tea.Cmd) {
	if cmd == nil {
		return
	}
	switch msg := cmd().(type) {
	case nil:
	case tea.QuitMsg:
		l.quit = true
	case tea.BatchMsg:
		for _, c := range msg {
			l.hear(c)
		}
	default:
		l.send(msg)
	}
}

func (l *listener) keys(names ...string) {
	for _, n := range names {
		l.send(press(n))
	}
}

func TestASessionInLines(t *testing.T) {
	s, err := sheet.Parse([]byte(hanging))
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	l := listen(t, Options{Sheet: s, Path: filepath.Join(folder, "lamp.toml"), Width: 100, Height: 24})
	var out strings.Builder
	heard := func(did string) {
		fmt.Fprintf(&out, "# %s\n", did)
		for _, line := range l.lines {
			out.WriteString(line + "\n")
		}
		last := l.m.speech.Last
		r := []rune(last.Text + strings.Repeat(" ", max(last.Column-len([]rune(last.Text)), 0)))
		out.WriteString("> " + string(r[:last.Column]) + "[]" + string(r[last.Column:]) + "\n\n")
		l.lines = nil
	}
	heard("open")
	for _, step := range [][]string{
		{"down"}, {"right"}, {"up"}, {"down", "down", "down", "down"}, {"enter"}, {"left", "left", "backspace"}, {"5", "x"}, {"enter"},
		{"left", "f2", "left", "left", "backspace", "backspace", ",", "enter"}, {"tab"}, {"f7 f"}, {"right", "f2"}, {"down"}, {"esc"}, {"alt+m", "right"},
		{"alt+y"}, {"down", "down"}, {"pgdown"}, {"home"}, {"right", "right"}, {"f7 c", "down", "down"}, {"f7 w", "pgdown"}, {"alt+h", "down"}, {"f7 r", "down"}, {"alt+l", "down"}, {"alt+i", "down"}, {"n"}, {"up"}, {"pgdown"}, {"home"}, {"f5"}, {"space"}, {"space", "space"}, {"down"}, {"h"}, {"esc"},
		{"ctrl+k"}, {"r", "e", "d", "o"}, {"esc"}, {"ctrl+f"}, {"6", "0"}, {"esc"}, {"alt+s"}, {"right"}, {"esc"},
		{"alt+p", "ctrl+n"}, {"E", "enter"}, {"1", ",", "1", "enter"}, {"enter"}, {"esc"}, {"ctrl+d"}, {"ctrl+z"}, {"ctrl+z", "ctrl+z"}, {"f1"}, {"pgdown"}, {"esc"},
		{"f7 s"}, {"ctrl+n"}, {"esc"}, {"ctrl+x"}, {"ctrl+s"}, {"alt+p", "home", "ctrl+up"}, {"delete"}, {"ctrl+q"}, {"esc"}, {"ctrl+q", "y"},
	} {
		l.keys(step...)
		heard(strings.Join(step, " "))
	}
	if !l.quit {
		t.Error("it does not leave")
	}
	// How many lines the help has, and the list of commands, is not held here.
	long := regexp.MustCompile(`(help, line \d+|narrow; 1|\n1) of \d{2,}`)
	rounding := regexp.MustCompile(`\d\.\de-1\d`) // which differs between machines
	text := long.ReplaceAllString(strings.ReplaceAll(out.String(), folder, "/FOLDER"), "$1 of many")
	golden(t, "linear", rounding.ReplaceAllString(text, "~"))
}

// checkLines holds every line to what a screen reader can read.
func checkLines(t testing.TB, l *listener) {
	t.Helper()
	last := l.m.speech.Last
	for _, line := range append(l.lines, last.Text) {
		if strings.TrimSpace(line) == "" || strings.ContainsFunc(line, func(r rune) bool { return unicode.IsControl(r) || speech.Drawn(r) }) {
			t.Fatalf("it prints %q in mode %d: %q", line, l.m.mode(), l.lines)
		}
	}
	if strings.Contains(strings.Join(l.lines, "\n"), "  ") {
		t.Fatalf("blanks set columns in %q", l.lines)
	}
	if last.Column >= linearW || grid.Width(last.Text) >= linearW {
		t.Fatalf("the last line is %+v", last)
	}
	l.lines = nil
}

func TestRandomKeysInLinesAreSaidAndDoTheSame(t *testing.T) {
	// A save writes files, and a session that was left is no more.
	not := map[keys.Intent]bool{keys.Save: true, keys.SaveAs: true, keys.WritePage: true, keys.WriteField: true, keys.WriteTask: true, keys.Yes: true, keys.Quit: true}
	var bound []string
	for _, b := range keys.Table() {
		for _, k := range b.Keys {
			if always, _ := keys.Find(keys.OnCells, k); !not[b.Intent] && !not[always.Intent] {
				bound = append(bound, k)
			}
		}
	}
	const letters = "ABT012.,-+ ()kNm"
	for seed, text := range []string{hanging, crane, beam, boom, "plane = \"xy\"\n"} {
		s, err := sheet.Parse([]byte(text))
		if err != nil {
			t.Fatal(err)
		}
		l := listen(t, Options{Sheet: s, Path: filepath.Join("/nowhere", "x.toml"), Width: linearW, Height: linearH})
		r := rigOf(t, Options{Sheet: s, Path: filepath.Join("/nowhere", "x.toml"), Width: linearW, Height: linearH})
		random := rand.New(rand.NewPCG(7, uint64(seed)))
		for n := range long.Of(4000, 4000) {
			k := strings.Replace(letters[random.IntN(len(letters)):][:1], " ", "space", 1)
			if random.IntN(3) > 0 {
				k = bound[random.IntN(len(bound))]
			}
			l.keys(k)
			r.keys(k)
			checkLines(t, l)
			if a, b := l.m.history.Current().Text(), r.m.history.Current().Text(); a != b {
				t.Fatalf("key %d, %s, does another thing in lines: mode %d and %d\n%s\n%s", n, k, l.m.mode(), r.m.mode(), a, b)
			}
		}
	}
}

// TestWhatIsWrittenStandsOnTheTerminal plays random keys on an emulated terminal:
// the last line and the cursor are where they are thought to be.
func TestWhatIsWrittenStandsOnTheTerminal(t *testing.T) {
	s, err := sheet.Parse([]byte(hanging))
	if err != nil {
		t.Fatal(err)
	}
	term := &terminal{e: vt.NewEmulator(60, 20)}
	l := &listener{rig: &rig{t: t}}
	l.m = New(Options{Sheet: s, Path: "lamp.toml", Linear: true, Width: 60, Height: 20, tell: func(text string) {
		if _, err := term.e.Write([]byte(text)); err != nil {
			t.Fatal(err)
		}
	}})
	l.hear(l.m.Init())
	all := []string{"left", "right", "up", "down", "enter", "backspace", "delete", "home", "end", "1", ",", "A", "°", "世", "tab", "esc", "f7 f", "alt+y", "f5", "space", "alt+p", "ctrl+k"}
	random := rand.New(rand.NewPCG(3, 3))
	for range 2000 {
		k := all[random.IntN(len(all))]
		l.keys(k)
		screen := strings.Split(term.screen(), "\n")
		at, last := term.e.CursorPosition(), l.m.speech.Last
		if got := strings.ReplaceAll(strings.TrimRight(screen[at.Y], " "), "世 ", "世"); at.X != last.Column || got != last.Text {
			t.Fatalf("after %s the cursor is at %d in %q, want %+v", k, at.X, got, last)
		}
	}
}

func TestTheProgramInLines(t *testing.T) {
	s, err := sheet.Parse([]byte(crane))
	if err != nil {
		t.Fatal(err)
	}
	likes := settings.Defaults()
	likes.Screen = "linear"
	for _, opt := range []Options{{Linear: true}, {Settings: &likes}} {
		opt.Sheet, opt.Path, opt.Width, opt.Height = s, "crane.toml", 100, 60 // nothing scrolls away
		runsInLines(t, opt)
	}
}

// runsInLines plays a short session of the real program on an emulated terminal.
func runsInLines(t *testing.T, opt Options) {
	t.Helper()
	term := &terminal{e: vt.NewEmulator(100, 60)}
	go io.Copy(io.Discard, term.e) // the emulator's replies; unread they block it
	t.Cleanup(term.hangUp)
	in, keyboard := io.Pipe()
	ended := make(chan error, 1)
	go func() {
		opt.In, opt.Out, opt.Env = in, term, []string{"TERM=xterm-256color", "HOME=" + t.TempDir()}
		ended <- Run(t.Context(), opt)
	}()
	typed := func(s string) {
		if _, err := io.WriteString(keyboard, s); err != nil {
			t.Fatal(err)
		}
	}
	term.wait(t, "TA 150 N tension; TB 150 N tension; S 224 N compression")
	typed("\x1b[B") // down
	term.wait(t, "row A, 2 of 4; reads (0, 1.00, 3.00) m")
	typed("\x1b[15~") // F5
	term.wait(t, "step 1 of ")
	term.wait(t, "unknowns: TA, TB and S") // the whole step: a key in between would cut it short
	typed(" ")
	term.wait(t, "step 2 of ")
	typed("\x11") // ctrl+q
	select {
	case err := <-ended:
		if err != nil {
			t.Error(err)
		}
	case <-time.After(patience):
		t.Fatalf("ctrl+q does not leave:\n%s", term.screen())
	}
	coloured, reversed := term.looks()
	for _, piece := range []string{"sheet crane.toml", "row A, 2 of 4", "step 1 of", "left trivet"} {
		if !strings.Contains(term.screen(), piece) || coloured+reversed > 0 {
			t.Errorf("%q is gone, or not plain (%d, %d):\n%s", piece, coloured, reversed, term.screen())
		}
	}
}

//go:build unix

package host

import (
	"io"
	"os"
	"strings"
	"testing"

	"github.com/creack/pty"
	"golang.org/x/term"
)

// A class is taught from the host's own terminal: what is typed there is seen, its
// size is followed, and after the end the terminal is what it was.
func TestPresentingInTheHostsOwnTerminal(t *testing.T) {
	r := start(t, Settings{}, nil)
	in, out := terminalHere(t)
	before, err := term.GetState(int(out.Fd()))
	if err != nil {
		t.Fatal(err)
	}
	ended := make(chan error, 1)
	go func() { ended <- r.present(out, out, []string{"TERM=xterm-256color"}) }()
	screen := newEmulator(t, 80, 24)
	go func() { _, _ = io.Copy(screen, in) }()
	sees := func(pieces ...string) {
		t.Helper()
		for _, p := range pieces {
			waitFor(t, "the presenter sees "+p, func() bool { return strings.Contains(screen.screen(), p) })
		}
	}
	types := func(text string) {
		t.Helper()
		if _, err := in.WriteString(text); err != nil {
			t.Fatal(err)
		}
	}
	sees("live: 0 watch", "37.5 T")
	w := r.visit(nil, 100, 30)
	sees("live: 1 watches")
	types(down + right + "-3, 0\r")
	w.sees("45.0 T")
	screen.mu.Lock()
	screen.e.Resize(120, 36)
	screen.mu.Unlock()
	if err := pty.Setsize(out, &pty.Winsize{Rows: 36, Cols: 120}); err != nil {
		t.Fatal(err)
	}
	waitFor(t, "the last line is on the 36th", func() bool {
		return strings.Contains(strings.Split(screen.screen(), "\n")[35], "live: 1 watches")
	})
	types(live)
	sees("d: close the door, h: hand over, k: host key, e: end for all, esc: back")
	types("h")
	sees("no other presenter is here")
	types(live + "k")
	sees("host key " + r.Fingerprint()[:20])
	types(live + "e")
	sees("end it for everybody? it is saved: y: yes, any other key: no")
	types("y")
	w.leaves()
	w.sees("trivet: the presenter has ended it")
	if err := <-ended; err != nil {
		t.Error(err)
	}
	sees("trivet: the presenter has ended it; what was not saved is in lamp.toml")
	if text, err := os.ReadFile(r.file); err != nil || !strings.Contains(string(text), `"-3, 0"`) {
		t.Errorf("not saved: %v\n%s", err, text)
	}
	after, err := term.GetState(int(out.Fd()))
	if err != nil {
		t.Fatal(err)
	}
	if *after != *before {
		t.Errorf("the terminal is left otherwise: %+v, was %+v", after, before)
	}
}

// Who has handed the sheet over and leaves the host's own terminal is told that the
// host goes on.
func TestLeavingTheHostsOwnTerminalAfterAHandOver(t *testing.T) {
	k := key(t)
	r := start(t, Settings{Presenters: keys(t, k)}, nil)
	in, out := terminalHere(t)
	ended := make(chan error, 1)
	go func() { ended <- r.present(out, out, []string{"TERM=xterm-256color"}) }()
	screen := newEmulator(t, 80, 24)
	go func() { _, _ = io.Copy(screen, in) }()
	step := func(text, piece string) {
		t.Helper()
		if _, err := in.WriteString(text); err != nil {
			t.Fatal(err)
		}
		waitFor(t, "the terminal shows "+piece, func() bool { return strings.Contains(screen.screen(), piece) })
	}
	step("", "live: 0 watch")
	p := r.visit(k, 100, 30)
	p.sees("following the presenter")
	step(live+"h", "hand over to: 1")
	step("1", "following the presenter")
	p.sees("live: the sheet is yours now, all see what you type")
	step("\x11", "you have left; the host goes on, and ctrl+c ends it")
	if err := <-ended; err != nil {
		t.Fatal(err)
	}
	p.keys(down)
	p.sees("live: 0 watch")
}

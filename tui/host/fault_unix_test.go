//go:build unix

package host

import (
	"io"
	"os"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/creack/pty"
)

// terminalHere is a terminal of 80 by 24: the person's end, and the host's.
func terminalHere(t *testing.T) (person, host *os.File) {
	t.Helper()
	person, host, err := pty.Open()
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = host.Close(); _ = person.Close() })
	if err := pty.Setsize(host, &pty.Winsize{Rows: 24, Cols: 80}); err != nil {
		t.Fatal(err)
	}
	return person, host
}

// A fault at the presenter's own terminal, with everything locked that it locks,
// ends that visit alone: another takes the sheet up and goes on.
func TestAFaultAtTheHostsOwnTerminal(t *testing.T) {
	k := key(t)
	r := start(t, Settings{Presenters: keys(t, k)}, nil)
	r.ill = true
	in, out := terminalHere(t)
	ended := make(chan error, 1)
	go func() { ended <- r.present(out, out, []string{"TERM=xterm"}) }()
	screen := newEmulator(t, 80, 24)
	go func() { _, _ = io.Copy(screen, in) }()
	waitFor(t, "it presents here", func() bool { return strings.Contains(screen.screen(), "live: 0 watch") })
	w := r.visit(nil, 80, 24)
	p := r.visit(k, 100, 30)
	p.sees("following the presenter")
	v := r.seated(true)
	r.breaks(v)
	r.says("a frame could not be drawn")
	if _, err := in.WriteString(down + right + "-3, 0"); err != nil { // typed blindly
		t.Fatal(err)
	}
	w.sees("45.0 T")
	r.unseats(v)
	v.event(tea.WindowSizeMsg{Width: 80, Height: 24})
	if err := <-ended; err == nil || !strings.HasPrefix(err.Error(), "a fault of ours has ended the visit at this terminal: ") {
		t.Errorf("%v", err)
	}
	r.says("the visit here failed")
	w.sees("nobody presents now")
	p.keys(live)
	p.sees("live: 1 watches")
	p.keys("\x15-3, 9")
	w.sees("-3, 9")
}

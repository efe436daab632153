package tui

import (
	"bytes"
	"context"
	"io"
	"strings"
	"sync"
	"testing"
	"time"

	uv "github.com/charmbracelet/ultraviolet"
	"github.com/charmbracelet/x/vt"

	"trivet/mechanics/sheet"
)

// terminal is an emulator that the real program writes to. One mutex guards it:
// the emulator's own safe wrapper deadlocks when it answers while written to.
type terminal struct {
	mu sync.Mutex
	e  *vt.Emulator

	clip string // what was copied
}

func (t *terminal) Write(p []byte) (int, error) {
	t.mu.Lock()
	defer t.mu.Unlock()
	if t.e == nil {
		return len(p), nil // nobody looks any more
	}
	// A terminal in raw mode would not need the carriage returns.
	if _, err := t.e.Write(bytes.ReplaceAll(p, []byte("\n"), []byte("\r\n"))); err != nil {
		return 0, err
	}
	return len(p), nil
}

func (t *terminal) screen() string {
	t.mu.Lock()
	defer t.mu.Unlock()
	var b strings.Builder
	for y := range t.e.Height() {
		for x := range t.e.Width() {
			if c := t.e.CellAt(x, y); c != nil && c.Content != "" {
				b.WriteString(c.Content)
			} else {
				b.WriteByte(' ')
			}
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// wait polls until the screen holds a piece.
func (t *terminal) wait(tb testing.TB, piece string) {
	tb.Helper()
	tick := time.NewTicker(5 * time.Millisecond)
	defer tick.Stop()
	for deadline := time.After(patience); ; {
		if strings.Contains(t.screen(), piece) {
			return
		}
		select {
		case <-deadline:
			tb.Fatalf("the screen never held %q:\n%s", piece, t.screen())
		case <-tick.C:
		}
	}
}

// run starts the real program on an emulated terminal; typed sends it bytes, and
// ended tells with what it was left.
func run(t *testing.T, env ...string) (term *terminal, typed func(string), ended chan error) {
	t.Helper()
	s, err := sheet.Parse([]byte(crane))
	if err != nil {
		t.Fatal(err)
	}
	term = &terminal{e: vt.NewEmulator(120, 36)}
	go io.Copy(io.Discard, term.e) // the emulator's replies; unread they block it
	in, keyboard := io.Pipe()
	ended = make(chan error, 1)
	ctx, cancel := context.WithCancel(t.Context())
	t.Cleanup(func() {
		cancel()
		term.hangUp()
	})
	go func() {
		ended <- Run(ctx, Options{Sheet: s, Path: "crane.toml", In: in, Out: term, Env: env, Width: 120, Height: 36})
	}()
	return term, func(s string) {
		if _, err := io.WriteString(keyboard, s); err != nil {
			t.Fatal(err)
		}
	}, ended
}

// hangUp lets go of the emulator and its several megabytes. Else the reading of its
// replies keeps it for as long as the tests run, and a command of the program that
// waits for its time for some seconds more.
func (t *terminal) hangUp() {
	if replies, ok := t.e.InputPipe().(io.Closer); ok {
		_ = replies.Close()
	}
	t.mu.Lock()
	defer t.mu.Unlock()
	t.e = nil
}

// looks counts the cells that have a colour, and those that are reversed.
func (t *terminal) looks() (coloured, reversed int) {
	t.mu.Lock()
	defer t.mu.Unlock()
	for y := range t.e.Height() {
		for x := range t.e.Width() {
			c := t.e.CellAt(x, y)
			if c == nil {
				continue
			}
			if c.Style.Fg != nil || c.Style.Bg != nil {
				coloured++
			}
			if c.Style.Attrs&uv.AttrReverse != 0 {
				reversed++
			}
		}
	}
	return coloured, reversed
}

func TestColourIsLeftOutWhereItIsNotWanted(t *testing.T) {
	for _, c := range []struct {
		env  []string
		want bool
	}{{[]string{"TERM=xterm-256color"}, true}, {[]string{"TERM=xterm-256color", "NO_COLOR=1"}, false}} {
		term, typed, ended := run(t, c.env...)
		term.wait(t, "224 C")
		coloured, reversed := term.looks()
		if (coloured > 0) != c.want || reversed == 0 {
			t.Errorf("%v: %d cells have a colour, %d are reversed", c.env, coloured, reversed)
		}
		typed("\x11")
		<-ended
	}
}

func TestTheProgramOnATerminal(t *testing.T) {
	term, typed, ended := run(t, "TERM=xterm-256color")
	term.wait(t, "224 C") // S
	typed("\x1b[B\x1b[C") // down, right: A's place
	term.wait(t, "A: 0, 1, 3")
	typed("0, 1,")
	term.wait(t, "stale: statically determinate")
	typed(" 3")
	term.wait(t, "A: 0, 1, 3")
	typed("\r")
	typed("?")
	term.wait(t, "Keys: Anywhere")
	typed("\x1b")
	term.wait(t, "Points")
	typed("\x11") // ctrl+q; the text is what it was, so nothing is unsaved
	select {
	case err := <-ended:
		if err != nil {
			t.Errorf("left with %v", err)
		}
	case <-time.After(patience):
		t.Fatalf("ctrl+q does not leave:\n%s", term.screen())
	}
}

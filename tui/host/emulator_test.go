package host

import (
	"io"
	"log/slog"
	"strings"
	"sync"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/vt"
)

func strip(s string) string { return ansi.Strip(s) }

func testLog(w io.Writer) *slog.Logger { return slog.New(slog.NewTextHandler(w, nil)) }

// emulator is a terminal that may be written and looked at side by side.
type emulator struct {
	mu sync.Mutex
	e  *vt.Emulator
}

// newEmulator ends with the test, and gives its several megabytes back.
func newEmulator(t testing.TB, w, h int) *emulator {
	e := &emulator{e: vt.NewEmulator(w, h)}
	go io.Copy(io.Discard, e.e) // its replies; unread they block it
	t.Cleanup(func() { hangUp(e.e) })
	return e
}

// hangUp ends the reading of an emulator's replies, which keeps the emulator for
// as long as it goes on.
func hangUp(e *vt.Emulator) {
	if replies, ok := e.InputPipe().(io.Closer); ok {
		_ = replies.Close()
	}
}

func (e *emulator) Write(p []byte) (int, error) {
	e.mu.Lock()
	defer e.mu.Unlock()
	return e.e.Write(p)
}

func (e *emulator) screen() string {
	e.mu.Lock()
	defer e.mu.Unlock()
	return shown(e.e)
}

// shown is the text of an emulator's screen.
func shown(e *vt.Emulator) string {
	var b strings.Builder
	for y := range e.Height() {
		var l strings.Builder
		for x := range e.Width() {
			if c := e.CellAt(x, y); c != nil && c.Content != "" {
				l.WriteString(c.Content)
			} else {
				l.WriteByte(' ')
			}
		}
		b.WriteString(strings.TrimRight(l.String(), " ") + "\n")
	}
	return b.String()
}

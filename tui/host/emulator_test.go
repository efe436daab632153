package host

import (
	"io"
	"log/slog"
	"strings"
	"sync"

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

func newEmulator(w, h int) *emulator {
	e := &emulator{e: vt.NewEmulator(w, h)}
	go io.Copy(io.Discard, e.e) // its replies; unread they block it
	return e
}

func (e *emulator) Write(p []byte) (int, error) {
	e.mu.Lock()
	defer e.mu.Unlock()
	return e.e.Write(p)
}

func (e *emulator) screen() string {
	e.mu.Lock()
	defer e.mu.Unlock()
	var b strings.Builder
	for y := range e.e.Height() {
		var l strings.Builder
		for x := range e.e.Width() {
			if c := e.e.CellAt(x, y); c != nil && c.Content != "" {
				l.WriteString(c.Content)
			} else {
				l.WriteByte(' ')
			}
		}
		b.WriteString(strings.TrimRight(l.String(), " ") + "\n")
	}
	return b.String()
}

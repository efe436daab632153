package line

import (
	"bytes"
	"io"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/charmbracelet/x/vt"

	"trivet/tui/grid"
)

// waitFor waits as long as a loaded machine may take; it is not a measure.
func waitFor(t testing.TB, what string, ok func() bool) {
	t.Helper()
	for deadline := time.Now().Add(time.Minute); !ok(); runtime.Gosched() {
		if time.Now().After(deadline) {
			t.Fatalf("never: %s", what)
		}
	}
}

// page is a frame with a text at its top.
func page(w, h int, text string) grid.Frame {
	g := grid.New(w, h)
	g.All().Text(0, 0, 0, text)
	return grid.Frame{Grid: g, Styles: make([]grid.Sequences, 1)}
}

// emulator is a terminal that may be written and looked at side by side.
type emulator struct {
	mu sync.Mutex
	e  *vt.Emulator
}

func newEmulator(t testing.TB, w, h int) *emulator {
	e := &emulator{e: vt.NewEmulator(w, h)}
	go io.Copy(io.Discard, e.e) // its replies; unread they block it
	t.Cleanup(func() {
		if replies, ok := e.e.InputPipe().(io.Closer); ok {
			_ = replies.Close()
		}
	})
	return e
}

func (e *emulator) Write(p []byte) (int, error) {
	e.mu.Lock()
	defer e.mu.Unlock()
	return e.e.Write(p)
}

// screen is the text that it shows.
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

// blocked is a terminal that takes bytes only when it is told to.
type blocked struct {
	mu   sync.Mutex
	got  bytes.Buffer
	open chan struct{}
}

func (b *blocked) Write(p []byte) (int, error) {
	<-b.open
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.got.Write(p)
}

const lamp = `[points]
D = { at = "0, 0", on = "particle" }
A = "-3, 4"
B = "3, 4"

[lines]
T1 = { kind = "cable", path = "D A", limit = "50 N" }
T2 = { kind = "cable", path = "D B" }
F = { kind = "force", at = "D", along = "-y", magnitude = "60 N" }
`

package tui

import (
	"io"
	"testing"

	"trivet/fixtures/long"
	"trivet/tui/keys"
)

// TestNoGarbageIsLeft plays keys, text, pastes, mouse and sizes by chance in the
// real program: after each burst the terminal holds the frame and nothing else.
func TestNoGarbageIsLeft(t *testing.T) {
	bursts := long.Of(40, 160)
	inside, outside := newDice(1), newDice(2)
	s := newRunning(t, 80, 24, func() Model { return New(inside.options("/dev/null")) })
	var seen [keys.Modes]int
	var last exposure
	for burst := range bursts {
		for range 1 + outside.IntN(12) {
			if outside.one(6) {
				size := outside.size()
				s.resize(min(max(size.Width, 20), 300), min(max(size.Height, 5), 100))
			}
			s.program.Send(happen{inside})
		}
		p, differs := s.settle()
		if differs != "" {
			t.Fatalf("burst %d, %d by %d, mode %d: %s\n%s\nthe model draws\n%s", burst, p.w, p.h, p.mode, differs, s.term.screen(), p.frame)
		}
		seen[p.mode]++
		last = p
	}
	t.Logf("screens compared in each mode: %v", seen)
	if io.WriteString(s.term, "\x1b[2;2H¤"); s.term.differs(last) == "" {
		t.Error("a stray character is not noticed")
	}
}

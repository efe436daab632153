package line

import (
	"fmt"
	"strings"
	"sync"
	"testing"
	"time"

	"trivet/tui/grid"
	"trivet/tui/host/pace"
)

// The pace of frames is the screen's own: what comes within it is one frame.
func TestChangesWithinAPaceAreOneFrame(t *testing.T) {
	text := make(chan string, 1)
	text <- "a"
	s := NewScreen(nil, 20, 4, TerminalOf([]string{"TERM=xterm"}), Tempo{after: time.Hour}, func() grid.Frame {
		v := <-text
		text <- v
		return page(20, 4, v)
	}).Begin(pace.AtOnce{}, pace.AtOnce{})
	defer s.Close()
	e := newEmulator(t, 20, 4)
	f := NewSender(e)
	f.Show(s)
	waitFor(t, "the first frame", func() bool { return strings.HasPrefix(e.screen(), "a\n") })
	for range 100 {
		s.Touch()
	}
	s.drawing.Lock()
	painted := s.frames
	s.drawing.Unlock()
	if painted != 1 {
		t.Errorf("%d frames", painted)
	}
	f.Close()
}

func TestTheQueueDropsFramesAndSendsAWholeOne(t *testing.T) {
	text := "first"
	var mu sync.Mutex
	s := NewScreen(nil, 40, 10, TerminalOf([]string{"TERM=xterm"}), Tempo{}, func() grid.Frame {
		mu.Lock()
		defer mu.Unlock()
		return page(40, 10, text)
	}).Begin(pace.AtOnce{}, pace.AtOnce{})
	defer s.Close()
	b := &blocked{open: make(chan struct{})}
	f := NewSender(b)
	f.Show(s)
	waitFor(t, "the terminal is being written to", func() bool { return f.since.Load() != 0 })
	for i := range 3 * queued {
		mu.Lock()
		text = fmt.Sprintf("frame %d", i)
		mu.Unlock()
		s.redraw()
	}
	waitFor(t, "frames are dropped", func() bool { return f.drops.Load() > 0 })
	close(b.open)
	e := newEmulator(t, 40, 10)
	waitFor(t, "the last frame is there", func() bool {
		b.mu.Lock()
		defer b.mu.Unlock()
		_, _ = e.Write(b.got.Bytes())
		b.got.Reset()
		return strings.HasPrefix(e.screen(), fmt.Sprintf("frame %d\n", 3*queued-1))
	})
	f.Close()
}

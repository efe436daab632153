package tui

import (
	"bytes"
	"fmt"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"

	"trivet/mechanics/sheet"
)

// TestAFrameForAnOldSize gives the terminal another size while a frame that scrolls
// lines is on its way to it: once the program knows the size, nothing of that is left.
func TestAFrameForAnOldSize(t *testing.T) {
	for _, c := range []struct{ w, h, width, height int }{
		{106, 29, 239, 37},
		{106, 36, 106, 37},
		{106, 37, 80, 35},
	} {
		t.Run(fmt.Sprintf("%d by %d to %d by %d", c.w, c.h, c.width, c.height), func(t *testing.T) {
			const points = 60 // more than any of the heights
			many, err := sheet.Parse([]byte(rows(points)))
			if err != nil {
				t.Fatal(err)
			}
			s := newRunning(t, c.w, c.h, func() Model { return New(Options{Sheet: many}) })
			scrolls := []byte(ansi.SetTopBottomMargins(1, c.h))
			late := func(frame []byte) {
				if bytes.Contains(frame, scrolls) {
					s.onTheWay.Store(nil)
					s.term.resize(c.width, c.height)
				}
			}
			s.onTheWay.Store(&late)
			for range points {
				s.program.Send(press("down"))
				s.until("a line further down", func() bool { return s.onTheWay.Load() == nil || s.term.differs(s.look()) == "" })
			}
			if s.onTheWay.Load() != nil {
				t.Fatal("no frame scrolls lines")
			}
			s.program.Send(tea.WindowSizeMsg{Width: c.width, Height: c.height})
			if p, differs := s.settle(); differs != "" {
				t.Errorf("%s\n%s\nthe model draws\n%s", differs, s.term.screen(), p.frame)
			}
		})
	}
}

package tui

import (
	"slices"
	"sync/atomic"

	"trivet/mechanics/figure"
	"trivet/tui/grid"
	"trivet/tui/picture"
)

// sketch keeps the last picture drawn of a figure. Most frames change something
// else, and of all that a frame holds the picture takes longest, by its labels.
// Frames of one model may be drawn at the same time, so nothing is locked: at
// worst both draw.
type sketch struct{ last atomic.Pointer[drawing] }

type drawing struct {
	w, h  int
	how   picture.Options
	cells *grid.Grid // never written to again
}

func (s *sketch) draw(c grid.Canvas, f figure.Figure, how picture.Options) {
	if d := s.last.Load(); d != nil && d.w == c.W() && d.h == c.H() && same(d.how, how) {
		c.Copy(d.cells)
		return
	}
	d := &drawing{c.W(), c.H(), how, grid.New(c.W(), c.H())}
	picture.Draw(d.cells.All(), f, how)
	s.last.Store(d)
	c.Copy(d.cells)
}

func same(a, b picture.Options) bool {
	return a.ASCII == b.ASCII && a.Zoom == b.Zoom && a.On == b.On && a.Stale == b.Stale && slices.Equal(a.Axes, b.Axes)
}

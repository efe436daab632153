package picture

import (
	"sync/atomic"

	"trivet/mechanics/figure"
	"trivet/mechanics/scene"
	"trivet/tui/grid"
)

// Kept keeps the last picture drawn of a scene. Most frames change something
// else, and of all that a frame holds the picture takes longest, by its labels.
// Frames of one model may be drawn at the same time, so nothing is locked: at
// worst both draw.
type Kept struct{ last atomic.Pointer[drawn] }

type drawn struct {
	w, h  int
	view  figure.View
	how   Options
	cells *grid.Grid // never written to again
}

// Draw draws the scene, or copies what was drawn of it last.
func (k *Kept) Draw(c grid.Canvas, s *scene.Scene, v figure.View, how Options) {
	if d := k.last.Load(); d != nil && d.w == c.W() && d.h == c.H() && d.view == v && d.how == how {
		c.Copy(d.cells)
		return
	}
	d := &drawn{c.W(), c.H(), v, how, grid.New(c.W(), c.H())}
	Draw(d.cells.All(), s, v, how)
	k.last.Store(d)
	c.Copy(d.cells)
}

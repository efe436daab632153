package picture

import (
	"math"

	"trivet/mechanics/drawing"
	"trivet/mechanics/figure"
	"trivet/mechanics/scene"
	"trivet/mechanics/sheet"
	"trivet/tui/grid"
)

// How near the mouse has to come, in dots: a cell is two wide and four high. A point is
// looked for first, as lines end at it.
const (
	nearPoint  = 5
	nearStroke = 4.5
)

// Hit tells which row is drawn or named at a cell of a picture of w by h cells.
func Hit(w, h int, s *scene.Scene, v figure.View, o Options, x, y int) (sheet.Ref, bool) {
	if w < minW || h < minH {
		return sheet.Ref{}, false
	}
	p := newPen(grid.New(w, h).All(), s, o)
	p.d = figure.Set(s, v, p.medium())
	at := drawing.Vec{X: (float64(x) + 0.5) * dotsX, Y: (float64(y) + 0.5) * dotsY}
	var ref sheet.Ref
	best := math.Inf(1)
	near := func(of int, distance, limit, behind float64) {
		if t := p.thing(of); t != nil && t.Ref.Row != "" && distance <= limit && behind+distance < best {
			best, ref = behind+distance, t.Ref
		}
	}
	for _, t := range p.d.Texts {
		if p.box(t).Holds(at) {
			near(t.Of, 0, 0, 0)
		}
	}
	for i := range s.Things {
		if t := &s.Things[i]; t.Kind == scene.Name {
			near(i+1, p.d.Place(t.At[0]).Sub(at).Len(), nearPoint, 0)
		}
	}
	for _, shape := range p.d.Shapes {
		for from, to := range shape.Sides() {
			near(shape.Of, drawing.Distance(at, from, to), nearStroke, nearPoint)
		}
	}
	return ref, ref.Row != ""
}

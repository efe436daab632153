package tui

import (
	"math"

	"trivet/mechanics/figure"
	"trivet/mechanics/problem"
	"trivet/mechanics/scene"
	"trivet/mechanics/sheet"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/picture"
	"trivet/tui/theme"
)

// camera is where the picture is seen from.
type camera struct {
	from       keys.Intent // ViewFront, ViewSide, ViewTop or ViewSpace
	turn, tilt float64     // of the view in space, rad
	zoom       float64
	plain      bool // characters instead of dots
	arrows     figure.Arrows
	sizes      bool // the lengths of lines are written
	polygon    bool // the force polygon of a particle stands in place of the problem
}

// The view in space starts from where a textbook draws its axes: a little from
// the left and from above. A key turns by fifteen degrees.
const (
	startTurn = -math.Pi / 6
	startTilt = math.Pi / 9
	step      = math.Pi / 12
	zoomStep  = 1.25
	maxZoom   = 64
)

func newCamera() camera {
	return camera{from: keys.ViewSpace, turn: startTurn, tilt: startTilt, zoom: 1}
}

func (c camera) view(s *scene.Scene) figure.View {
	switch c.from {
	case keys.ViewFront:
		return figure.Front(s)
	case keys.ViewSide:
		return figure.Side(s)
	case keys.ViewTop:
		return figure.Top(s)
	}
	return figure.Space(s, c.turn, c.tilt)
}

// name is the view in words.
func (c camera) name(p *problem.Problem) string {
	if p != nil && p.Planar {
		return "in its plane"
	}
	switch c.from {
	case keys.ViewFront:
		return "front"
	case keys.ViewSide:
		return "side"
	case keys.ViewTop:
		return "top"
	}
	return "in space"
}

// handle does an intent of the picture; a turn from a flat view goes on from
// there.
func (c *camera) handle(i keys.Intent) bool {
	turned := map[keys.Intent][2]float64{keys.Left: {-step, 0}, keys.Right: {step, 0}, keys.Up: {0, step}, keys.Down: {0, -step}}
	switch i {
	case keys.ViewFront, keys.ViewSide, keys.ViewTop, keys.ViewSpace:
		c.from = i
	case keys.Left, keys.Right, keys.Up, keys.Down:
		c.turnBy(turned[i][0], turned[i][1])
	case keys.Nearer:
		c.zoom = math.Min(c.zoom*zoomStep, maxZoom)
	case keys.Farther:
		c.zoom = math.Max(c.zoom/zoomStep, 1.0/maxZoom)
	case keys.Fit:
		c.zoom = 1
	case keys.Characters:
		c.plain = !c.plain
	default:
		return false
	}
	return true
}

// turnBy turns and tilts from where the picture is seen, rad.
func (c *camera) turnBy(turn, tilt float64) {
	switch c.from {
	case keys.ViewFront:
		c.turn, c.tilt = 0, 0
	case keys.ViewSide:
		c.turn, c.tilt = math.Pi/2, 0
	case keys.ViewTop:
		c.turn, c.tilt = 0, math.Pi/2
	}
	c.from = keys.ViewSpace
	c.turn = math.Remainder(c.turn+turn, 2*math.Pi)
	c.tilt = math.Max(-math.Pi/2, math.Min(math.Pi/2, c.tilt+tilt))
}

// drawPicture draws the figure, with the row under the cursor emphasised.
func (m Model) drawPicture(c grid.Canvas) {
	p := m.live.Problem
	if p == nil || len(m.drawing.Things) == 0 {
		c.Text(1, 0, theme.Dim, "No point reads yet.")
		return
	}
	m.sketch.draw(c, m.drawing, m.cam.view(m.drawing), m.pictureOptions())
}

// pictureOptions are how the figure shows, and how it is found under the mouse.
func (m Model) pictureOptions() picture.Options {
	return picture.Options{
		ASCII: m.theme.Glyphs.ASCII != m.cam.plain, Zoom: m.cam.zoom, On: m.selected(),
		Arrows: m.cam.arrows, Stale: m.live.Stale,
	}
}

// pickNext selects the row before or after the selected one among all that the
// picture shows.
func (m *Model) pickNext(dir int) {
	var refs []sheet.Ref
	at := 0
	for _, p := range []layout.Pane{layout.Points, layout.Lines, layout.Supports} {
		for _, r := range m.cells.Tables[p].Records {
			if r.Row == m.selected() {
				at = len(refs)
			}
			refs = append(refs, r.Row)
		}
	}
	if n := len(refs); n > 0 {
		m.pick(refs[(at+dir+n)%n])
	}
}

// selected is the row under the cursor of the pane of cells used last.
func (m Model) selected() sheet.Ref {
	if m.back < layout.System && m.cells.At[m.back].Row < len(m.cells.Tables[m.back].Records) {
		return m.cells.Tables[m.back].Records[m.cells.At[m.back].Row].Row
	}
	return sheet.Ref{}
}

package tui

import (
	"trivet/mechanics/sheet"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/picture"
	"trivet/tui/theme"
)

// drawPicture draws the figure, with the row under the cursor emphasised.
func (m Model) drawPicture(c grid.Canvas) {
	p := m.live.Problem
	if p == nil || len(m.drawing.Things) == 0 {
		c.Text(1, 0, theme.Dim, "No point reads yet.")
		return
	}
	m.sketch.Draw(c, m.drawing, m.cam.View(m.drawing), m.pictureOptions())
}

// pictureOptions are how the figure shows, and how it is found under the mouse.
func (m Model) pictureOptions() picture.Options {
	return m.cam.Options(m.theme.Glyphs.ASCII, m.live.Stale, m.selected())
}

// pictured does the intents of the picture.
func (m *Model) pictured(i keys.Intent) bool {
	says, ok := "", true
	switch i {
	case keys.PickNext:
		m.pick(m.cells.Beside(m.selected(), 1))
	case keys.PickPrev:
		m.pick(m.cells.Beside(m.selected(), -1))
	case keys.ForcePolygon:
		says = m.cam.TogglePolygon(m.live.Problem, m.live.Solution, m.selected())
	default:
		says, ok = m.cam.Do(i)
	}
	m.say(says, false)
	return ok
}

// selected is the row under the cursor of the pane of cells used last.
func (m Model) selected() sheet.Ref { return m.cells.Selected(m.back) }

package tui

import (
	"trivet/mechanics/sheet"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/layout"
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
		m.pickNext(1)
	case keys.PickPrev:
		m.pickNext(-1)
	case keys.ForcePolygon:
		says = m.cam.TogglePolygon(m.live.Problem, m.live.Solution, m.selected())
	default:
		says, ok = m.cam.Do(i)
	}
	if says != "" {
		m.say(says, false)
	}
	return ok
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

package tui

import (
	"image"

	"trivet/tui/grid"
	"trivet/tui/layout"
	"trivet/tui/theme"
)

// drawPane draws a pane's rule and what is in it.
func (m Model) drawPane(c grid.Canvas, p layout.Pane) {
	look, rule := theme.Rule, m.theme.Glyphs.Rule
	if p == m.focus {
		look, rule = theme.RuleFocus, m.theme.Glyphs.RuleFocus
	}
	c.In(image.Rect(0, 0, c.W(), 1)).Fill(rule, look)
	c.Text(1, 0, look, " "+string(rune('1'+p))+" "+m.heading(p)+" ")
	in := c.In(image.Rect(0, 1, c.W(), c.H()))
	switch p {
	case layout.System:
		m.system.draw(in.In(image.Rect(1, 0, in.W(), in.H())), m.scroll, m.live.stale)
		m.drawMore(in)
	case layout.Picture:
		m.drawPicture(in)
	default:
		m.drawTable(in, p)
	}
}

// drawMore marks a system that goes on below.
func (m Model) drawMore(c grid.Canvas) {
	if len(m.system) > m.scroll.y+c.H() {
		c.Set(c.W()-1, c.H()-1, m.theme.Glyphs.More, theme.Dim)
	}
}

var headings = [...]string{"Sheet and givens", "Points", "Force lines", "Unknown magnitudes", "System", "Picture"}

func (m Model) heading(p layout.Pane) string {
	s := headings[p]
	if p == layout.Picture {
		s += " " + m.cam.name(m.live.problem)
	}
	if m.live.stale && p >= layout.Unknowns {
		s += " (stale)"
	}
	return s
}

package tui

import (
	"image"

	"trivet/tui/cells"
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
	c.Text(1, 0, look, " "+marks[p:p+1]+" "+m.heading(p)+" ")
	if more := m.more(p, c.W(), c.H()-1); grid.Width(m.heading(p))+len(more)+7 < c.W() {
		c.Text(c.W()-len(more)-1, 0, look, more)
	}
	in := c.In(image.Rect(0, 1, c.W(), c.H()))
	switch p {
	case layout.Picture:
		m.drawPicture(in)
	default:
		if p.Result() {
			m.drawResult(in, p)
			return
		}
		m.tables[p].Draw(in, cells.View{At: m.at[p], Live: p == m.focus, Typing: m.edit, Marked: m.marked, Row: m.theme.Glyphs.Row})
	}
}

// more tells on a pane's rule which way it goes on.
func (m Model) more(p layout.Pane, w, h int) string {
	var left, right, above, below bool
	switch p {
	case layout.Picture:
	default:
		if p.Result() {
			o, t := m.read[p].Scroll, &m.texts[p]
			left, above = o.X > 0, o.Y > 0
			right, below = t.wide > o.X+w-1, len(t.paneText) > o.Y+h
			break
		}
		left, right, above, below = m.tables[p].Hidden(m.at[p], w, h)
	}
	s := ""
	for i, goes := range []bool{left, right, above, below} {
		if goes {
			s += " " + "<>^v"[i:i+1]
		}
	}
	if s == "" {
		return ""
	}
	return " more" + s + " "
}

var headings = [...]string{"Sheet and givens", "Points", "Force lines", "Supports and loads", "Unknown magnitudes", "System", "Picture",
	"Checks", "Working", "Hand solution", "Ranges", "Limits"}

// marks are the keys that lead to the panes: as they are while reading, with alt from
// anywhere.
const marks = "123456789hil"

func (m Model) heading(p layout.Pane) string {
	s := headings[p]
	if p == layout.Picture {
		if m.polygonOf != "" {
			s = "Force polygon of " + m.polygonOf + ","
		}
		s += " " + m.cam.name(m.live.Problem)
	}
	if m.isOld(p) && p >= layout.Unknowns {
		s += " (stale)"
	}
	return s
}

package tui

import (
	"fmt"
	"image"
	"strings"

	"trivet/tui/cells"
	"trivet/tui/grid"
	"trivet/tui/layout"
	"trivet/tui/theme"
)

// drawPane draws a pane's head and what is in it.
func (m Model) drawPane(c grid.Canvas, p layout.Pane) {
	if p < layout.System {
		m.cells.Tables[p].Draw(c, cells.View{
			Title: m.heading(p), Short: headings[p].short + m.aged(p), More: m.more(p, c.W(), c.H()), At: m.cells.At[p],
			Live: p == m.focus, Typing: m.cells.Cell, Marked: m.cells.Marked(p), Row: m.theme.Glyphs.Row,
		})
		return
	}
	look := theme.Head
	if p == m.focus {
		look = theme.RuleFocus
	}
	title := m.heading(p)
	c.Text(1, 0, look, grid.Fit(title, min(grid.Width(title), c.W()-2)))
	if more := m.more(p, c.W(), c.H()-layout.Frame); grid.Width(title)+grid.Width(more)+4 < c.W() {
		c.Text(c.W()-grid.Width(more)-1, 0, theme.Dim, more)
	}
	in := c.In(image.Rect(0, layout.Frame, c.W(), c.H()))
	if p == layout.Picture {
		m.drawPicture(in)
		return
	}
	m.drawResult(in, p)
}

// more tells in a pane's head which way it goes on, and by how many rows or lines.
func (m Model) more(p layout.Pane, w, h int) string {
	var left, right bool
	var above, below int
	switch {
	case p == layout.Picture:
	case p.Result():
		o, t := m.read[p].Scroll, &m.texts[p]
		left, right, above, below = o.X > 0, t.wide > o.X+w-1, o.Y, max(len(t.paneText)-o.Y-h, 0)
	default:
		at := m.cells.At[p]
		if p != m.focus {
			at.Col = 0
		}
		left, right, above, below = m.cells.Tables[p].Hidden(at, w, h)
	}
	var parts []string
	if left {
		parts = append(parts, "<")
	}
	if above > 0 {
		parts = append(parts, fmt.Sprintf("%d above", above))
	}
	if below > 0 {
		parts = append(parts, fmt.Sprintf("%d more", below))
	}
	if right {
		parts = append(parts, ">")
	}
	return strings.Join(parts, " ")
}

// headings are the titles of the panes, and what stands for them over narrow columns.
var headings = [layout.Panes]struct{ long, short string }{
	layout.Given: {"Givens", "Givens"}, layout.Points: {"Points", "Points"}, layout.Lines: {"Force lines", "Lines"},
	layout.Supports: {"Supports and loads", "Supports"}, layout.Unknowns: {"Unknown magnitudes", "Unknowns"}, layout.Sheet: {"Sheet", "Sheet"},
	layout.System: {"System", "System"}, layout.Picture: {"Picture", "Picture"}, layout.Checks: {"Checks", "Checks"},
	layout.Working: {"Working", "Working"}, layout.HandSolution: {"Hand solution", "Hand solution"},
	layout.Ranges: {"Ranges", "Ranges"}, layout.Limits: {"Limits", "Limits"},
}

func (m Model) heading(p layout.Pane) string {
	s := headings[p].long
	if p == layout.Picture {
		if m.polygonOf != "" {
			s = "Force polygon of " + m.polygonOf + ","
		}
		s += " " + m.cam.name(m.live.Problem)
	}
	return s + m.aged(p)
}

// aged says behind a title that what stands below follows from an earlier sheet.
func (m Model) aged(p layout.Pane) string {
	if m.isOld(p) && (p == layout.Unknowns || p >= layout.System) {
		return " (stale)"
	}
	return ""
}

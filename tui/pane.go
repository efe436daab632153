package tui

import (
	"image"

	"trivet/tui/cells"
	"trivet/tui/frame"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/overlay"
	"trivet/tui/results"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// drawTop shows the title and the verdict; below them, quietly, what the sheet says of
// itself, and its file.
func (m Model) drawTop(c grid.Canvas) {
	if m.front.On() {
		m.front.DrawTop(c, m.theme.Glyphs)
		return
	}
	verdict, look := results.Headline(&m.live)
	if m.hides {
		verdict, look = m.board.Hides.String()+" hidden", theme.Dim
	}
	frame.Head{
		Problem: m.live.Latest, Verdict: verdict, Look: look, File: m.title(), Saved: m.file.Path != "", Modified: m.history.Modified(),
	}.Draw(c, m.theme.Glyphs.Between)
}

// drawStrip shows in one line what the sheet comes to.
func (m Model) drawStrip(c grid.Canvas) {
	if m.live.Solution == nil {
		return
	}
	m.strip.Draw(c.In(image.Rect(1, 0, c.W(), 1)), text.Offset{}, c.W()-2, m.live.Stale)
}

// drawPane draws a pane's head and what is in it.
func (m Model) drawPane(c grid.Canvas, p layout.Pane) {
	if p < layout.System {
		m.cells.Tables[p].Draw(c, cells.View{
			Title: m.heading(p), Short: frame.Panes[p].Short + m.aged(p), More: m.more(p, c.W(), c.H()), At: m.cells.At[p],
			Live: p == m.Focus, Typing: m.cells.Cell, Marked: m.cells.Marked(p), Row: m.theme.Glyphs.Row,
		})
		return
	}
	in := frame.Pane{Title: m.heading(p), Live: p == m.Focus, More: m.more(p, c.W(), c.H()-layout.Frame)}.Draw(c)
	if p == layout.Picture {
		m.drawPicture(in)
		return
	}
	m.texts[p].Draw(in, m.read[p], p == m.Focus, m.isOld(p), m.theme.Glyphs.Row)
}

// more tells in a pane's head which way it goes on, and by how many rows or lines.
func (m Model) more(p layout.Pane, w, h int) string {
	switch {
	case p == layout.Picture:
		return ""
	case p.Result():
		o, t := m.read[p].Scroll, &m.texts[p]
		return frame.Hidden(o.X > 0, t.Wide > o.X+w-1, o.Y, max(len(t.Lines)-o.Y-h, 0))
	}
	at := m.cells.At[p]
	if p != m.Focus {
		at.Col = 0
	}
	return frame.Hidden(m.cells.Tables[p].Hidden(at, w, h))
}

func (m Model) heading(p layout.Pane) string {
	s := frame.Panes[p].Long
	if p == layout.Picture {
		if m.polygonOf != "" {
			s = "Force polygon of " + m.polygonOf + ","
		}
		s += " " + m.cam.Name(m.live.Problem)
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

// drawChoices shows what the cell being typed in may hold, under it or above.
func (m Model) drawChoices(c grid.Canvas) {
	r := m.screen().Panes[m.Focus]
	if m.cells.Cell == nil || m.ask != nil || m.naming != nil || r.Empty() {
		return
	}
	list, pick, noun := m.cells.Cell.Offered()
	l := overlay.Choices{Pick: pick, Noun: noun, Rows: make([]overlay.Row, len(list))}
	for i, k := range list {
		l.Rows[i].Cells = []string{k.Text, k.Says}
	}
	l.Draw(c, r.Min.Add(image.Pt(0, layout.Frame+m.cells.At[m.Focus].Row-m.cells.At[m.Focus].Top)), m.theme.Glyphs)
}

// listed is the list that stands over what else shows, how many of its rows show, and whether one
// of them is picked.
func (m Model) listed() (s overlay.Shown, rows int, picks bool) {
	switch m.mode() {
	case keys.OnPalette:
		return overlay.ListedCommands(*m.palette), paletteRows, true
	case keys.OnSettings, keys.InSetting:
		return m.setup.Listed(m.prefs), m.h, m.setup.Typing == nil
	case keys.OnStart:
		return m.opening.Listed(), 0, true
	case keys.OnSteps:
		return m.board.Listed(m.boardOf().Steps()), 0, true
	case keys.OnChoice:
		return overlay.Offered("Make which row?", keys.Choosing), m.h, false
	case keys.OnPanes:
		return overlay.Offered("Go to which pane?", keys.Panes), m.h, false
	}
	return s, 0, false
}

// drawBoxed draws the list, unless it has a screen of its own.
func (m Model) drawBoxed(c grid.Canvas) {
	if s, rows, _ := m.listed(); rows > 0 {
		in := image.Rect(0, 0, c.W(), c.H()-layout.Foot-1)
		s.Draw(overlay.Box(c.In(overlay.Place(in, boxWidth, min(max(len(s.Rows), 1), rows))), m.theme.Glyphs.Rule, s.Title), m.theme.Glyphs.Row)
	}
}

// boxWidth is how wide a list over the workbench gets.
const boxWidth = 84

func (m Model) drawEnd(c grid.Canvas, in int) { frame.End(c, in, m.note, m.hints()) }

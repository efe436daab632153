package tui

import (
	"image"

	"trivet/tui/cells"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/overlay"
	"trivet/tui/theme"
)

// listed is the list that has the keys, if one has.
func (m Model) listed() (s overlay.Shown, ok bool) {
	switch m.mode() {
	case keys.OnPalette:
		return listedCommands(*m.palette), true
	case keys.OnSettings:
		return m.listedSettings(), true
	case keys.OnStart:
		return m.opening.listed(), true
	case keys.OnSteps:
		return m.board.Listed(m.boardOf().Steps()), true
	}
	return s, false
}

// drawEnd draws the last two lines of a screen without a foot: a word, and the keys.
func (m Model) drawEnd(c grid.Canvas, in int) {
	m.drawWord(c.In(image.Rect(0, c.H()-2, c.W(), c.H()-1)), in)
	m.drawHints(c.In(image.Rect(in-1, c.H()-1, c.W(), c.H())))
}

// drawWord draws what is said on the bottom line, if anything is.
func (m Model) drawWord(c grid.Canvas, in int) {
	look := theme.Plain
	if m.note.bad {
		look = theme.Bad
	}
	if m.note.text != "" {
		c.Text(in, 0, look, grid.Fit(m.note.text, c.W()-2*in))
	}
}

// offered are the keys of a scope, each with what it does: one is pressed, none is picked.
func offered(title string, of keys.Scope) overlay.Shown {
	s := overlay.Shown{
		List: overlay.List{Pick: cells.Unpicked}, Title: " " + title + " ",
		Columns: []overlay.Column{{At: 2, Width: 4, Look: theme.Key}, {At: 7, Look: theme.Plain}},
	}
	for _, b := range keys.Table() {
		if b.Scope == of {
			s.Rows = append(s.Rows, overlay.Row{Cells: []string{b.Keys[0], b.Help}, Says: b.Keys[0] + " " + b.Help})
		}
	}
	return s
}

// boxWidth is how wide a list over the workbench gets.
const boxWidth = 84

// drawBoxed draws a list that stands over what else shows.
func (m Model) drawBoxed(c grid.Canvas) {
	var s overlay.Shown
	limit := c.H()
	switch {
	case m.palette != nil:
		s, limit = listedCommands(*m.palette), paletteRows
	case m.setup != nil:
		s = m.listedSettings()
	case m.choosing:
		s = offered("Make which row?", keys.Choosing)
	case m.listing:
		s = offered("Go to which pane?", keys.Panes)
	default:
		return
	}
	at := overlay.Place(image.Rect(0, 0, c.W(), c.H()-layout.Foot-1), boxWidth, min(max(len(s.Rows), 1), limit))
	s.Draw(overlay.Box(c.In(at), m.theme.Glyphs.RuleFocus, s.Title), m.theme.Glyphs.Row)
}

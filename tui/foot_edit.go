package tui

import (
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/tui/cells"
	"trivet/tui/grid"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// drawLine shows a line of text with its cursor and gives where its text starts
// and how much of it is scrolled away.
func (m Model) drawLine(c grid.Canvas, label string, l text.Line) (start, skip int) {
	start = c.Text(1, 0, theme.Name, label)
	text, skip := grid.Window(l.Text, l.Column(), c.W()-start-1)
	c.Text(start, 0, theme.Plain, text)
	c.Paint(start+l.Column()-skip, 0, 1, theme.Caret)
	return start, skip
}

// drawEdit shows the text being typed and, under it, what is missing. It tells
// whether it needed the line of the keys for what to try.
func (m Model) drawEdit(c grid.Canvas) bool {
	start, skip := m.drawLine(c, m.edit.Slot.Label()+": ", m.edit.Line)
	e, own := m.ownError()
	if !own {
		for _, e := range m.live.Faults() {
			if e.Blocks() && m.edit.Slot.Does == cells.SetCell {
				text := "elsewhere: " + located(e)
				if own := m.edit.Slot.Ref; e.Ref.Table == own.Table && e.Ref.Row == own.Row {
					text = e.Text()
				}
				c.Text(1, 1, theme.Warn, grid.Fit(text, c.W()-2))
				break
			}
		}
		return false
	}
	at := max(min(start+grid.Width(m.edit.Text[:bound(e.Span.Start, m.edit.Text)])-skip, c.W()-2), start)
	marks := strings.Repeat("^", max(1, min(grid.Width(m.edit.Text[bound(e.Span.Start, m.edit.Text):bound(e.Span.End, m.edit.Text)]), c.W()-at-1)))
	if room := c.W() - at - len(marks) - 2; grid.Width(e.Msg) <= room || at < grid.Width(e.Msg)+2 {
		c.Text(c.Text(at, 1, theme.Bad, marks)+1, 1, theme.Bad, grid.Fit(e.Msg, max(room, 0)))
	} else {
		c.Text(at-grid.Width(e.Msg)-1, 1, theme.Bad, e.Msg+" "+marks)
	}
	if e.Hint == "" || m.note.text != "" {
		return false
	}
	c.Text(1, 2, theme.Warn, grid.Fit("Try: "+e.Hint, c.W()-2))
	return true
}

// ownError is what is wrong with the text being typed, at its place in it.
func (m Model) ownError() (problem.Error, bool) {
	s := m.edit.Slot
	e, ok := m.live.ErrorOf(s.Ref)
	if !ok || s.Does == cells.SetName || m.fresh != nil {
		return e, false
	}
	if s.Does == cells.SetAsked {
		// The cell holds all results asked for; this is one of them.
		row, _ := m.live.Sheet.Table("").Row("asked")
		cell, _ := row.Cell("")
		all := cells.Words(cell.Text)
		if s.Word >= len(all) || e.Span.Start < all[s.Word].Start || e.Span.End > all[s.Word].End {
			return e, false
		}
		e.Span.Start -= all[s.Word].Start
		e.Span.End -= all[s.Word].Start
	}
	return e, true
}

// bound keeps an offset in a text, at a character's start.
func bound(at int, text string) int { return diag.RuneStart(text, at) }

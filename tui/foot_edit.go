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

// editSays is what is wrong with the text being typed, under the place where it is
// wrong, and what to try; nil where nothing is.
func (m Model) editSays(w int) (says text.Lines) {
	e, own := m.ownError()
	if !own {
		for _, e := range m.live.Faults() {
			if e.Blocks() && m.edit.Slot.Does == cells.SetCell {
				text := "elsewhere: " + located(e)
				if own := m.edit.Slot.Ref; e.Ref.Table == own.Table && e.Ref.Row == own.Row {
					text = e.Text()
				}
				says.Wrapped(theme.Warn, "", text, w)
				return says
			}
		}
		return nil
	}
	start := grid.Width(label(m.edit.Slot)) + 2
	_, skip := grid.Window(m.edit.Text, m.edit.Column(), w-start)
	from, to := bound(e.Span.Start, m.edit.Text), bound(e.Span.End, m.edit.Text)
	at := max(min(start+grid.Width(m.edit.Text[:from])-skip, w-1), start)
	marks := strings.Repeat("^", max(1, min(grid.Width(m.edit.Text[from:to]), w-at)))
	switch n := grid.Width(e.Msg); {
	case at+len(marks)+1+n <= w:
		says.Plain(theme.Bad, grid.Fit("", at)+marks+" "+e.Msg)
	case n+1 <= at:
		says.Plain(theme.Bad, grid.FitRight(e.Msg, at-1)+" "+marks)
	default:
		says.Plain(theme.Bad, grid.Fit("", at)+marks)
		says.Wrapped(theme.Bad, "", e.Msg, w)
	}
	if e.Hint != "" {
		says.Wrapped(theme.Warn, "", "Try: "+e.Hint, w)
	}
	return says
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

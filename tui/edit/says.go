package edit

import (
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/tui/cells"
	"trivet/tui/grid"
	"trivet/tui/session"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// Says is what is wrong with the text being typed, under the place where it is
// wrong, and what to try, in lines of a width; nil where nothing is.
func (e *Editor) Says(r *session.Result, w int) (says text.Lines) {
	c := e.Cell
	typed, own := e.ownError(r)
	if !own {
		for _, err := range r.Faults() {
			if err.Blocks() && c.Slot.Does == cells.SetCell {
				text := "elsewhere: " + cells.Located(err)
				if own := c.Slot.Ref; err.Ref.Table == own.Table && err.Ref.Row == own.Row {
					text = cells.Said(err).Text()
				}
				says.Wrapped(theme.Warn, "", text, w)
				return says
			}
		}
		return nil
	}
	err := cells.Said(typed)
	start := grid.Width(c.Slot.Label()) + 2
	_, skip := grid.Window(c.Text, c.Column(), w-start)
	from, to := diag.RuneStart(c.Text, err.Span.Start), diag.RuneStart(c.Text, err.Span.End)
	at := max(min(start+grid.Width(c.Text[:from])-skip, w-1), start)
	marks := strings.Repeat("^", max(1, min(grid.Width(c.Text[from:to]), w-at)))
	switch n := grid.Width(err.Msg); {
	case at+len(marks)+1+n <= w:
		says.Plain(theme.Bad, grid.Fit("", at)+marks+" "+err.Msg)
	case n+1 <= at:
		says.Plain(theme.Bad, grid.FitRight(err.Msg, at-1)+" "+marks)
	default:
		says.Plain(theme.Bad, grid.Fit("", at)+marks)
		says.Wrapped(theme.Bad, "", err.Msg, w)
	}
	if err.Hint != "" {
		says.Wrapped(theme.Warn, "", "Try: "+err.Hint, w)
	}
	return says
}

// ownError is what is wrong with the text being typed, at its place in it.
func (e *Editor) ownError(r *session.Result) (problem.Error, bool) {
	s := e.Cell.Slot
	err, ok := r.ErrorOf(s.Ref)
	if !ok || s.Does == cells.SetName || e.Fresh != nil {
		return err, false
	}
	if s.Does == cells.SetAsked {
		// The cell holds all results asked for; this is one of them.
		cell, _ := r.Sheet.Cell(askedFor)
		all := problem.ResultNames(cell.Text)
		if s.Word >= len(all) || err.Span.Start < all[s.Word].Start || err.Span.End > all[s.Word].End {
			return err, false
		}
		err.Span.Start -= all[s.Word].Start
		err.Span.End -= all[s.Word].Start
	}
	return err, true
}

package edit

import (
	"fmt"
	"slices"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/grid"
	"trivet/tui/layout"
	"trivet/tui/session"
	"trivet/tui/theme"
)

// Wrong is the first thing that is wrong, of the cell under the cursor of a pane before others', or
// what comes next; empty where all is well. mark stands before it. here is the row selected last.
func (e *Editor) Wrong(r *session.Result, p layout.Pane, here sheet.Ref) (look grid.Style, mark, says string) {
	s, ok := e.Slot(p)
	if next := e.Made.NextStep(p); next != "" && p < layout.System {
		return theme.Warn, "", next
	}
	if says := r.Likeliest(s.Ref); says != "" {
		return theme.Warn, "", says
	}
	errs := r.Faults()
	if len(errs) == 0 {
		return theme.Warn, "? ", doubt(r, here)
	}
	shown := errs[0]
	if err, own := r.ErrorOf(s.Ref); ok && own && s.Bad {
		shown = err
	}
	if shown.Ref.Key == "" && shown.Span == (diag.Span{}) {
		if err, ok := r.Cause(shown); ok {
			return theme.Warn, "? ", cells.Located(err)
		}
	}
	return theme.Bad, "! ", oneOf(len(errs), shown)
}

// oneOf says one of several errors.
func oneOf(n int, e problem.Error) string {
	if n > 1 {
		return fmt.Sprintf("1 of %d: %s", n, cells.Located(e))
	}
	return cells.Located(e)
}

// doubt is what is read by nothing, or reads and is most likely not what was meant, that of a row
// before others'.
func doubt(r *session.Result, here sheet.Ref) string {
	if r.Latest == nil {
		return ""
	}
	notes := r.Latest.Notes()
	if len(notes) == 0 {
		return r.Unconnected()
	}
	return oneOf(len(notes), notes[max(0, slices.IndexFunc(notes, func(e problem.Error) bool { return e.Ref.Table == here.Table && e.Ref.Row == here.Row }))])
}

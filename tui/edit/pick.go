package edit

import (
	"image"

	"trivet/mechanics/sheet"
	"trivet/tui/layout"
)

// Selected is the row under the cursor of a pane.
func (e *Editor) Selected(p layout.Pane) sheet.Ref {
	if p >= layout.System {
		return sheet.Ref{}
	}
	r, _ := e.record(p)
	return r.Row
}

// Pick puts the cursor on a row, in the first pane that shows it but the unknowns, and gives that.
func (e *Editor) Pick(ref sheet.Ref) (layout.Pane, bool) {
	for p, t := range e.Tables {
		if p := layout.Pane(p); p != layout.Unknowns && t.RowOf(ref) >= 0 {
			e.At[p].Row = t.RowOf(ref)
			return p, true
		}
	}
	return 0, false
}

// Beside is the row before or after another among all that the picture shows.
func (e *Editor) Beside(ref sheet.Ref, dir int) sheet.Ref {
	var refs []sheet.Ref
	at := 0
	for _, p := range []layout.Pane{layout.Points, layout.Lines, layout.Supports} {
		for _, r := range e.Tables[p].Records {
			if r.Row == ref {
				at = len(refs)
			}
			refs = append(refs, r.Row)
		}
	}
	if len(refs) == 0 {
		return ref
	}
	return refs[(at+dir+len(refs))%len(refs)]
}

// CellAt is the row and the column at a place in a pane that is w wide, -1 beside them; focused
// tells that it has the keys.
func (e *Editor) CellAt(p layout.Pane, at image.Point, w int, focused bool) (row, col int) {
	if p >= layout.System || at.Y < layout.Frame {
		return -1, -1
	}
	under := 0
	if focused {
		under = e.At[p].Col
	}
	return e.Tables[p].CellAt(e.At[p], w, under, at.X, at.Y-layout.Frame)
}

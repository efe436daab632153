package edit

import (
	"cmp"

	"trivet/mechanics/names"
	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/layout"
)

// define goes to the row that defines the name under the cursor: of the cell being typed in, which
// is kept, or the first name in the cell under the cursor.
func (e *Editor) define(w Where) (o Outcome) {
	s, ok := e.Slot(w.Pane)
	text, first := Raw(w.Sheet, s), 0
	last := len(text)
	if c := e.Cell; c != nil {
		s, text, first, last = c.Slot, c.Text, c.At, c.At
	}
	if !ok || s.Does != cells.SetCell && s.Does != cells.SetAsked {
		return saying("this cell contains no name")
	}
	for at := first; at <= last; at++ {
		ref, ok := names.Definition(w.Sheet, s.Ref, text, at)
		if !ok {
			continue
		}
		if e.Tables[homes[ref.Table]].RowOf(ref) < 0 {
			return saying("%s is in no pane", ref.Row)
		}
		if e.Cell != nil {
			if o = e.Keep(w, Stay); e.Cell != nil {
				return o
			}
		}
		o.Go, o.Row, o.Says = ToHome, ref, cmp.Or(o.Says, "alt+r goes back")
		return o
	}
	return saying("there is no name here that the sheet defines")
}

// goBack goes back to where a definition was asked for.
func (e *Editor) goBack() Outcome {
	n := len(e.jumps) - 1
	if n < 0 {
		return saying("there is nowhere to go back to: alt+g goes to the row of a name")
	}
	to := e.jumps[n]
	e.jumps, e.Mark = e.jumps[:n:n], Mark{}
	return Outcome{Go: ToSpot, Spot: to}
}

// homes are the panes that the rows of a table have their home in.
var homes = map[string]layout.Pane{
	"": layout.Sheet, "units": layout.Sheet, "given": layout.Given, "points": layout.Points, "lines": layout.Lines,
	"joints": layout.Supports, "bodies": layout.Supports, "couples": layout.Supports, "distributed": layout.Supports,
}

// maxJumps is how many places are kept to go back to.
const maxJumps = 100

// show goes to a row in the pane that is its home, on the cell of a key where the row shows it.
func (e *Editor) show(w Where, ref sheet.Ref) layout.Pane {
	home := homes[ref.Table]
	k := e.Tables[home].RowOf(ref)
	if k < 0 {
		return w.Pane // it went as the cell was kept
	}
	e.jumps = append(e.jumps[max(len(e.jumps)-maxJumps, 0):len(e.jumps):len(e.jumps)], e.Spot(w.Pane))
	e.At[home].Row, e.At[home].Col = k, 0
	for col, s := range e.Tables[home].Records[k].Slots {
		if s.Does == cells.SetCell && s.Ref == ref {
			e.At[home].Col = col
		}
	}
	return home
}

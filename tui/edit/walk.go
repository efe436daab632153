package edit

import (
	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/keys"
	"trivet/tui/layout"
)

// OnCells does the intents of a pane of cells; ok tells that it was one.
func (e *Editor) OnCells(w Where, i keys.Intent) (o Outcome, ok bool) {
	at := &e.At[w.Pane]
	if i != keys.Edit {
		e.Newest = sheet.Ref{}
	}
	switch i {
	case keys.MarkUp, keys.MarkDown, keys.MarkLeft, keys.MarkRight:
		if !e.Mark.On {
			e.Mark = Mark{true, at.Row, at.Col}
		}
	case keys.Copy, keys.Cut, keys.Paste:
	default:
		e.Mark = Mark{}
	}
	switch i {
	case keys.Up, keys.MarkUp:
		at.Row--
	case keys.Down, keys.MarkDown:
		at.Row++
	case keys.Left, keys.MarkLeft:
		at.Col--
	case keys.Right, keys.MarkRight:
		at.Col++
	case keys.First:
		at.Col = 0
	case keys.Last:
		at.Col = len(e.Tables[w.Pane].Columns) - 1
	case keys.PageUp:
		at.Row -= w.Page
	case keys.PageDown:
		at.Row += w.Page
	case keys.NextCell:
		o.Go = Next
	case keys.PrevCell:
		o.Go = Prev
	case keys.Edit:
		o.Says = e.open(w)
	case keys.ToDefinition:
		o = e.define(w)
	case keys.NewRow:
		o = e.newRow(w.Pane)
	case keys.DeleteRow:
		o = e.deleteRow(w)
	case keys.ClearCell:
		o = e.clearCell(w)
	case keys.MoveUp, keys.MoveDown:
		o = e.moveRow(w, i)
	case keys.Copy:
		o = e.copy(w)
	case keys.Cut:
		o = e.cut(w)
	case keys.Paste:
		o = e.pasteClip(w)
	case keys.Duplicate:
		o = e.duplicateRow(w)
	case keys.NudgeUp, keys.NudgeDown:
		o = e.nudge(w, i)
	default:
		return o, false
	}
	return o, true
}

// Clamp keeps every cursor on its table and in view, in panes that show so many rows.
func (e *Editor) Clamp(rows [layout.System]int) {
	for p := range e.Tables {
		at, t := &e.At[p], e.Tables[p]
		at.Row = max(min(at.Row, len(t.Records)-1), 0)
		at.Col = max(min(at.Col, len(t.Columns)-1), 0)
		show := max(rows[p], 1)
		at.Top = max(min(at.Top, at.Row, len(t.Records)-show), at.Row-show+1, 0)
	}
}

// Follow moves the cursor as an outcome says, once the tables show its sheet, and gives the pane
// that it comes to.
func (e *Editor) Follow(w Where, o Outcome) layout.Pane {
	if o.Go == ToSpot { // from a pane that is read, too
		e.At[o.Spot.Pane] = o.Spot.At
		return o.Spot.Pane
	}
	at := &e.At[w.Pane]
	switch o.Go {
	case Onward:
		e.onward(w)
	case Down:
		at.Row++
	case Up:
		at.Row--
	case Next:
		return e.step(w, 1)
	case Prev:
		return e.step(w, -1)
	case ToRow, ToFirst:
		t := e.Tables[w.Pane]
		if k := t.RowOf(o.Row); k >= 0 {
			if at.Row = k; o.Go == ToFirst {
				at.Col, _ = t.Records[k].Next(0)
			}
		}
		if o.Go == ToFirst {
			e.openNext(w)
		}
	case ToHome:
		return e.show(w, o.Row)
	}
	return w.Pane
}

// onward goes to the next cell of the row; behind its last, to the first of the row below, and
// behind the last row to a new one. Where rows have a fixed place (the unknowns, the sheet's own
// settings) it goes down the column. The cells of a row that is being made open by themselves.
func (e *Editor) onward(w Where) {
	t, at := e.Tables[w.Pane], &e.At[w.Pane]
	r, ok := e.record(w.Pane)
	switch col, more := r.Next(at.Col); {
	case !ok:
	case !movable(w.Pane, r.Row):
		at.Row++
	case more:
		if at.Col = col; r.Row == e.Newest {
			e.openNext(w)
		}
	case r.Row == e.Newest || at.Row == len(t.Records)-1 || t.Records[at.Row+1].Row.Table == "":
		e.Newest = r.Row
		e.BeginRow(w.Pane, r.Row.Table)
	default:
		at.Row, at.Col = at.Row+1, 0
	}
}

// step goes to the next cell that can be typed in, on into the next pane that
// shows.
func (e *Editor) step(w Where, dir int) layout.Pane {
	e.Mark = Mark{}
	p, at := w.Pane, e.At[w.Pane]
	for range layout.System + 1 {
		t := e.Tables[p]
		row, col := at.Row, at.Col+dir
		for row >= 0 && row < len(t.Records) {
			if col < 0 || col >= len(t.Columns) {
				row += dir
				col = 0
				if dir < 0 {
					col = len(t.Columns) - 1
				}
				continue
			}
			if t.Records[row].Slots[col].Does != cells.Nothing {
				e.At[p].Row, e.At[p].Col = row, col
				return p
			}
			col += dir
		}
		for range layout.System {
			if p = (p + layout.Pane(dir) + layout.System) % layout.System; w.Shown[p] {
				break
			}
		}
		at = cells.Place{Row: 0, Col: -1}
		if dir < 0 {
			at = cells.Place{Row: len(e.Tables[p].Records) - 1, Col: len(e.Tables[p].Columns)}
		}
	}
	return w.Pane
}

// movable tells the rows that have their home in a pane and no fixed place.
func movable(p layout.Pane, ref sheet.Ref) bool {
	return p != layout.Unknowns && ref.Table != "" && ref.Table != "units"
}

// ownRow is the row of the sheet under the cursor, where the pane is its home.
func (e *Editor) ownRow(p layout.Pane) (ref sheet.Ref, why string) {
	r, ok := e.record(p)
	switch {
	case !ok:
		return ref, "there is no row here"
	case p == layout.Unknowns:
		return ref, "the rows here follow from the force lines (f7 f) and the supports (f7 s): change them there"
	case !movable(p, r.Row):
		return ref, "this row has a fixed place"
	}
	return r.Row, ""
}

// moveRow puts the row under the cursor before its neighbour above or behind the
// one below. The cursor goes with it.
func (e *Editor) moveRow(w Where, i keys.Intent) Outcome {
	ref, why := e.ownRow(w.Pane)
	if why != "" {
		return Outcome{Says: why}
	}
	rows := w.Sheet.Table(ref.Table).Rows
	at := 0
	for at < len(rows) && rows[at].Name != ref.Row {
		at++
	}
	after := ""
	switch {
	case i == keys.MoveUp && at == 0:
		return saying("%s is the first of its table", ref.Row)
	case i == keys.MoveDown && at >= len(rows)-1:
		return saying("%s is the last of its table", ref.Row)
	case i == keys.MoveDown:
		after = rows[at+1].Name
	case at > 1:
		after = rows[at-2].Name
	}
	return w.edited(ref, sheet.MoveRow{Table: ref.Table, Row: ref.Row, After: after})
}

// duplicateRow adds the row under the cursor once more under a free name, behind it.
func (e *Editor) duplicateRow(w Where) Outcome {
	ref, why := e.ownRow(w.Pane)
	if why != "" {
		return Outcome{Says: why}
	}
	as := taken(w.Sheet).next(ref.Row)
	o := w.edited(sheet.Ref{Table: ref.Table, Row: as}, sheet.DuplicateRow{Table: ref.Table, Row: ref.Row, As: as})
	if !o.Bad {
		o.Says = as + " is " + ref.Row + " once more"
	}
	return o
}

// edited makes an edit and goes to a row.
func (w Where) edited(to sheet.Ref, edit sheet.Edit) Outcome {
	o := w.do(edit)
	o.Go, o.Row = ToRow, to
	return o
}

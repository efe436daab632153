package edit

import (
	"fmt"
	"slices"
	"strings"

	"trivet/mechanics/names"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/units"
)

// askedFor is the cell of the results that a sheet asks for.
var askedFor = sheet.Ref{Row: "asked"}

// CellOf gives the cell that a slot edits, and all of its text once the slot has one: the results
// asked for stand in one cell, of which a slot is one.
func CellOf(s *sheet.Sheet, slot cells.Slot, text string) (sheet.Ref, string) {
	if slot.Does != cells.SetAsked {
		return slot.Ref, text
	}
	c, _ := s.Cell(askedFor)
	all, text := problem.ResultNames(c.Text), strings.TrimSpace(text)
	switch {
	case slot.Word == behindAll:
		text = c.Text + " " + text
	case slot.Word >= len(all):
		text = c.Text
	default:
		text = c.Text[:all[slot.Word].Start] + text + c.Text[all[slot.Word].End:]
	}
	return askedFor, strings.TrimSpace(text)
}

// change is the edit that gives a cell a text. A blank takes the cell out, so
// that the sheet holds nothing that says nothing; a row that is one plain value
// goes with it where the pane shows it all the same.
func change(s *sheet.Sheet, ref sheet.Ref, text string) sheet.Edit {
	row, has := s.Table(ref.Table).Row(ref.Row)
	blank := strings.TrimSpace(text) == ""
	standing := ref.Table == "" || ref.Table == "units" || ref.Table == "answers"
	switch {
	case blank && standing && has && len(row.Cells) == 1:
		return sheet.DeleteRow{Table: ref.Table, Row: ref.Row}
	case blank && (!has || ref.Key != ""):
		return sheet.DropCell{Ref: ref}
	case !has && ref.Table != "":
		return sheet.AddRow{Table: ref.Table, Name: ref.Row, Cells: []sheet.KeyText{{Key: ref.Key, Text: text}}}
	}
	return sheet.SetCell{Ref: ref, Text: text}
}

// needed is the key of a table's row that is to be filled in first.
var needed = map[string]string{"joints": "kind", "couples": "on", "distributed": "path", "bodies": "centre"}

// addRow adds the row that is being named, with the cells that it needs, to be filled in next.
func (e *Editor) addRow(w Where, name string) Outcome {
	f := e.Fresh
	if err := names.NewName(w.Sheet, problem.ThingOf(f.Table), name); err != nil {
		return Outcome{Says: err.Error(), Bad: true}
	}
	texts := []sheet.KeyText{{Key: needed[f.Table], Text: ""}}
	switch {
	case f.Table == "lines":
		texts = newLine(w.Sheet, f, name)
	case f.Table == "points" && cells.FirstPoint(w.Sheet):
		texts = []sheet.KeyText{{Key: "at", Text: ""}, {Key: "on", Text: "particle"}}
	}
	return w.do(sheet.AddRow{Table: f.Table, Name: name, After: f.After, Cells: texts})
}

// newLine is what a line begins with: the kind of the row above it, and where its name is made
// of the names of two points, as AB is, a path through them.
func newLine(s *sheet.Sheet, f *cells.Fresh, name string) []sheet.KeyText {
	kind := problem.Cable.String()
	above, _ := s.Table("lines").Row(f.After)
	if own := above.Text("kind"); own != "" {
		kind = own
	}
	texts := []sheet.KeyText{{Key: "kind", Text: kind}}
	info, _ := cells.LineNamed(kind)
	points := s.Table("points")
	for i := 1; i < len(name) && info.Path; i++ {
		_, one := points.Row(name[:i])
		_, two := points.Row(name[i:])
		if one && two && name[:i] != name[i:] {
			return append(texts, sheet.KeyText{Key: "path", Text: name[:i] + " " + name[i:]})
		}
	}
	return texts
}

// firstForce is the unit that the first force of a sheet is typed in, where the sheet does not say
// in which unit its forces are: results then are in that unit too.
func firstForce(s *sheet.Sheet, ref sheet.Ref, text string) (symbol string) {
	if _, said := s.Table("units").Row("force"); said || unitOfForce(text) == "" || unitOfForce(text) == units.DefaultSet().Force.Symbol {
		return ""
	}
	for _, t := range problem.Tables() {
		for _, row := range s.Table(t.Name).Rows {
			for _, c := range row.Cells {
				k, _ := t.Key(c.Key)
				typed := strings.TrimSpace(c.Text) != "" && strings.TrimSpace(c.Text) != Unknown
				own := ref == sheet.Ref{Table: t.Name, Row: row.Name, Key: c.Key}
				if !own && typed && (k.Dim == units.Force || t.Name == "given" && unitOfForce(c.Text) != "" || t.Name == "distributed" && k.Reads == problem.ReadsIntensity) {
					return ""
				}
			}
		}
	}
	return unitOfForce(text)
}

// unitOfForce is the unit of the first force in a text.
func unitOfForce(text string) string {
	expr, err := units.Parse(text)
	if err != nil {
		return ""
	}
	for _, q := range expr.Quantities() {
		if u, ok := units.Find(q.Symbol); ok && u.Dim == units.Force {
			return q.Symbol
		}
	}
	return ""
}

// maxNamed is how many rows a message names.
const maxNamed = 3

// thingOf gives what a name belongs to: without a table to an unknown, which has no
// row of its own.
func thingOf(ref sheet.Ref) problem.Thing {
	if ref.Table == "" {
		return problem.AnUnknown
	}
	return problem.ThingOf(ref.Table)
}

// usersOf gives the rows with a cell that uses the name of a row.
func usersOf(s *sheet.Sheet, ref sheet.Ref) (rows []string) {
	for _, u := range names.UsesOf(s, thingOf(ref), ref.Row) {
		if own := u.Ref.Table == ref.Table && u.Ref.Row == ref.Row; !own && !slices.Contains(rows, u.Ref.Row) {
			rows = append(rows, u.Ref.Row)
		}
	}
	return rows
}

func rename(w Where, ref sheet.Ref, to string) Outcome {
	if to == ref.Row {
		return Outcome{Sheet: w.Sheet}
	}
	edits, err := names.Rename(w.Sheet, thingOf(ref), ref.Row, to)
	if err != nil {
		return Outcome{Says: err.Error(), Bad: true}
	}
	o := w.do(edits...)
	if users := usersOf(w.Sheet, ref); o.Sheet != nil && len(users) > 0 {
		o.Says = fmt.Sprintf("%s is now %s everywhere: in %s", ref.Row, to, say.AndMore(users, maxNamed))
	}
	return o
}

// deleteRow takes out the row under the cursor; undo brings it back.
func (e *Editor) deleteRow(w Where) Outcome {
	r, ok := e.record(w.Pane)
	if !ok {
		return saying("there is no row here")
	}
	ref, first, unknown := r.Row, r.Slots[0], w.Pane == layout.Unknowns
	switch {
	case first.Does == cells.SetAsked:
		return e.clearSlot(w, first)
	case unknown && first.Does == cells.SetName && first.Ref.Table == "" && ref.Table == "":
		return saying("%s appears only in magnitudes; it disappears when no magnitude names it", first.Ref.Row)
	case unknown && (ref.Table == "joints" || ref.Table == "couples"):
		return saying("this row belongs to a support or a load: delete it there (f7 s)")
	case unknown:
		return saying("this row belongs to a force line: delete it there (f7 f)")
	case !movable(w.Pane, ref):
		return saying("this row is always there: delete clears its cell")
	}
	o := w.do(sheet.DeleteRow{Table: ref.Table, Row: ref.Row})
	if o.Sheet == nil {
		return o
	}
	users, use := usersOf(w.Sheet, ref), "uses"
	if len(users) > 1 {
		use = "use"
	}
	if o.Says = "deleted " + ref.Row + "; ctrl+z brings it back"; len(users) > 0 {
		o.Says, o.Bad = fmt.Sprintf("deleted %s, which %s %s; ctrl+z brings it back", ref.Row, say.AndMore(users, maxNamed), use), true
	}
	return o
}

// clearCell takes out what the cell under the cursor holds.
func (e *Editor) clearCell(w Where) Outcome {
	s, ok := e.Slot(w.Pane)
	switch {
	case !ok || s.Does == cells.Nothing:
		return saying("this cell is derived from others")
	case s.Does == cells.SetName:
		return saying("ctrl+d deletes the row")
	case Raw(w.Sheet, s) == "":
		return Outcome{}
	}
	return e.clearSlot(w, s)
}

func (e *Editor) clearSlot(w Where, s cells.Slot) Outcome {
	ref, all := CellOf(w.Sheet, s, "")
	return w.do(change(w.Sheet, ref, all))
}

func steps(i keys.Intent) int {
	if i == keys.NudgeDown {
		return -1
	}
	return 1
}

// nudge changes the last number of the cell under the cursor, without
// opening it. Each nudge is a step of its own that undo takes back.
func (e *Editor) nudge(w Where, i keys.Intent) Outcome {
	if s, ok := e.Slot(w.Pane); ok && s.Does == cells.SetCell {
		was := Raw(w.Sheet, s)
		for at := len(was); at >= 0; at-- {
			if text, _, ok := units.Nudge(was, at, steps(i)); ok {
				o := w.do(change(w.Sheet, s.Ref, text))
				o.Kept = s.Ref
				return o
			}
		}
	}
	return saying("this cell contains no number to change")
}

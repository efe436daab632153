package tui

import (
	"fmt"
	"slices"
	"strings"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/names"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/layout"
	"trivet/units"
)

// write makes the edit of a cell that is kept.
func (m *Model) write(e *cells.Edit, f *cells.Fresh) error {
	text := e.Value()
	switch {
	case f != nil && f.Table != "":
		name := strings.TrimSpace(text)
		if err := names.NewName(m.history.Current(), problem.ThingOf(f.Table), name); err != nil {
			return err
		}
		return m.history.Do(newRowEdit(m.history.Current(), f, name))
	case f != nil:
		cell := m.history.Current().Table("")
		row, _ := cell.Row("asked")
		c, _ := row.Cell("")
		return m.history.Do(sheet.SetCell{Ref: sheet.Ref{Row: "asked"}, Text: strings.TrimSpace(c.Text + " " + text)})
	case text == e.Was:
		return nil
	case e.Slot.Does == cells.SetAsked:
		ref, all := m.asking(e.Slot, text)
		return m.history.Do(change(m.history.Current(), ref, all))
	case e.Slot.Does == cells.SetName:
		return m.rename(e.Slot.Ref, strings.TrimSpace(text))
	}
	edits := []sheet.Edit{change(m.history.Current(), e.Slot.Ref, text)}
	if unit := firstForce(m.history.Current(), e.Slot.Ref, text); unit != "" {
		edits = append(edits, change(m.history.Current(), sheet.Ref{Table: "units", Row: "force"}, unit))
		m.say("forces are in "+unit+" from now on, as in this cell; \"force in\" among the givens changes it", false)
	}
	return m.history.Do(edits...)
}

// newRowEdit adds a row with the cells that it needs, to be filled in next.
func newRowEdit(s *sheet.Sheet, f *cells.Fresh, name string) sheet.Edit {
	var texts []sheet.KeyText
	switch f.Table {
	case "lines":
		texts = newLine(s, f, name)
	case "joints":
		texts = []sheet.KeyText{{Key: "kind", Text: ""}}
	case "couples":
		texts = []sheet.KeyText{{Key: "on", Text: ""}}
	case "distributed":
		texts = []sheet.KeyText{{Key: "path", Text: ""}}
	case "bodies":
		texts = []sheet.KeyText{{Key: "centre", Text: ""}}
	default:
		texts = []sheet.KeyText{{Key: "", Text: ""}}
		if f.Table == "points" && cells.FirstPoint(s) {
			texts = []sheet.KeyText{{Key: "at", Text: ""}, {Key: "on", Text: "particle"}}
		}
	}
	return sheet.AddRow{Table: f.Table, Name: name, After: f.After, Cells: texts}
}

// newLine is what a line begins with: the kind of the row above it, and where its name is made
// of the names of two points, as AB is, a path through them.
func newLine(s *sheet.Sheet, f *cells.Fresh, name string) []sheet.KeyText {
	kind := problem.Cable.String()
	above, _ := s.Table("lines").Row(f.After)
	if c, ok := above.Cell("kind"); ok && strings.TrimSpace(c.Text) != "" {
		kind = strings.TrimSpace(c.Text)
	}
	texts := []sheet.KeyText{{Key: "kind", Text: kind}}
	runs := slices.ContainsFunc(problem.Kinds(), func(k problem.KindInfo) bool { return k.Name == kind && k.Path })
	points := s.Table("points")
	for i := 1; i < len(name) && runs; i++ {
		_, one := points.Row(name[:i])
		_, two := points.Row(name[i:])
		if one && two && name[:i] != name[i:] {
			return append(texts, sheet.KeyText{Key: "path", Text: name[:i] + " " + name[i:]})
		}
	}
	return texts
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
	case blank && !has:
		return sheet.DropCell{Ref: ref}
	case blank && ref.Key != "":
		return sheet.DropCell{Ref: ref}
	case !has && ref.Table != "":
		return sheet.AddRow{Table: ref.Table, Name: ref.Row, Cells: []sheet.KeyText{{Key: ref.Key, Text: text}}}
	}
	return sheet.SetCell{Ref: ref, Text: text}
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
				typed := strings.TrimSpace(c.Text) != "" && strings.TrimSpace(c.Text) != unknownMark
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

func (m *Model) rename(ref sheet.Ref, to string) error {
	if to == ref.Row {
		return nil
	}
	s := m.history.Current()
	users := usersOf(s, ref)
	edits, err := names.Rename(s, thingOf(ref), ref.Row, to)
	if err != nil {
		return err
	}
	if err := m.history.Do(edits...); err != nil {
		return err
	}
	if len(users) > 0 {
		m.say(fmt.Sprintf("%s is now %s everywhere: in %s", ref.Row, to, enumerate(users)), false)
	}
	return nil
}

// deleteRow takes out the row under the cursor; undo brings it back.
func (m *Model) deleteRow() tea.Cmd {
	t, at := m.tables[m.focus], m.at[m.focus]
	if at.Row >= len(t.Records) {
		m.say("there is no row here", false)
		return nil
	}
	ref := t.Records[at.Row].Row
	if m.focus == layout.Unknowns {
		if s := t.Records[at.Row].Slots[0]; s.Does == cells.SetAsked {
			return m.dropAsked(s)
		}
		if s := t.Records[at.Row].Slots[0]; s.Does == cells.SetName && s.Ref.Table == "" && ref.Table == "" {
			m.say(s.Ref.Row+" appears only in magnitudes; it disappears when no magnitude names it", false)
			return nil
		}
		where := "a force line: delete it there (f7 f)"
		if ref.Table == "joints" || ref.Table == "couples" {
			where = "a support or a load: delete it there (f7 s)"
		}
		m.say("this row belongs to "+where, false)
		return nil
	}
	if ref.Table == "" || ref.Table == "units" {
		m.say("this row is always there: delete clears its cell", false)
		return nil
	}
	users := usersOf(m.history.Current(), ref)
	if err := m.history.Do(sheet.DeleteRow{Table: ref.Table, Row: ref.Row}); err != nil {
		m.say(err.Error(), true)
		return nil
	}
	m.say("deleted "+ref.Row+"; ctrl+z brings it back", false)
	if len(users) > 0 {
		m.say(fmt.Sprintf("deleted %s, which %s; ctrl+z brings it back", ref.Row, listed(users)), true)
	}
	return m.changed()
}

// clearCell takes out what the cell under the cursor holds.
func (m *Model) clearCell() tea.Cmd {
	s, ok := m.slot()
	switch {
	case !ok || s.Does == cells.Nothing:
		m.say("this cell is derived from others", false)
		return nil
	case s.Does == cells.SetName:
		m.say("ctrl+d deletes the row", false)
		return nil
	case s.Does == cells.SetAsked:
		return m.dropAsked(s)
	case m.raw(s) == "":
		return nil
	}
	if err := m.history.Do(change(m.history.Current(), s.Ref, "")); err != nil {
		m.say(err.Error(), true)
		return nil
	}
	return m.changed()
}

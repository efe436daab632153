package tui

import (
	"errors"
	"fmt"
	"strings"
	"unicode"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/layout"
)

// write makes the edit of a cell that is kept.
func (m *Model) write(e *edit, f *fresh) error {
	text := e.text
	switch {
	case f != nil && f.table != "":
		return m.history.Do(newRowEdit(f, strings.TrimSpace(text)))
	case f != nil:
		cell := m.history.Current().Table("")
		row, _ := cell.Row("asked")
		c, _ := row.Cell("")
		return m.history.Do(sheet.SetCell{Ref: sheet.Ref{Row: "asked"}, Text: strings.TrimSpace(c.Text + " " + text)})
	case text == e.was:
		return nil
	case e.slot.does == setAsked:
		ref, all := m.asking(e.slot, text)
		return m.history.Do(change(m.history.Current(), ref, all))
	case e.slot.does == setName:
		return m.rename(e.slot.ref, strings.TrimSpace(text))
	}
	return m.history.Do(change(m.history.Current(), e.slot.ref, text))
}

// newRowEdit adds a row with the cells that it needs, to be filled in next.
func newRowEdit(f *fresh, name string) sheet.Edit {
	cells := []sheet.KeyText{{Key: "", Text: ""}}
	if f.table == "lines" {
		cells = []sheet.KeyText{{Key: "kind", Text: "cable"}, {Key: "path", Text: ""}}
	}
	return sheet.AddRow{Table: f.table, Name: name, After: f.after, Cells: cells}
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

// asking gives the cell of the results asked for with one of them replaced.
func (m Model) asking(s slot, text string) (sheet.Ref, string) {
	ref := sheet.Ref{Row: "asked"}
	row, _ := m.history.Current().Table("").Row("asked")
	c, _ := row.Cell("")
	all := words(c.Text)
	if s.word >= len(all) {
		return ref, c.Text
	}
	w := all[s.word]
	return ref, strings.TrimSpace(c.Text[:w.start] + strings.TrimSpace(text) + c.Text[w.end:])
}

func (m *Model) rename(ref sheet.Ref, to string) error {
	if to == ref.Row {
		return nil
	}
	users := mentions(m.history.Current(), ref)
	if err := m.history.Do(sheet.RenameRow{Table: ref.Table, Row: ref.Row, To: to}); err != nil {
		return err
	}
	if len(users) > 0 {
		m.say(fmt.Sprintf("%s is now %s; %s still called %s", ref.Row, to, listed(users), ref.Row), true)
	}
	return nil
}

// deleteRow takes out the row under the cursor; undo brings it back.
func (m *Model) deleteRow() tea.Cmd {
	t, at := m.tables[m.focus], m.at[m.focus]
	if at.row >= len(t.records) {
		m.say("there is no row here", false)
		return nil
	}
	ref := t.records[at.row].row
	if m.focus == layout.Unknowns {
		if s := t.records[at.row].slots[0]; s.does == setAsked {
			return m.dropAsked(s)
		}
		m.say("this row belongs to a force line: delete it there (alt+3)", false)
		return nil
	}
	if ref.Table == "" || ref.Table == "units" {
		m.say("this row always stands: delete clears its cell", false)
		return nil
	}
	users := mentions(m.history.Current(), ref)
	if err := m.history.Do(sheet.DeleteRow{Table: ref.Table, Row: ref.Row}); err != nil {
		m.say(words1(err), true)
		return nil
	}
	m.say("deleted "+ref.Row+"; ctrl+z brings it back", false)
	if len(users) > 0 {
		m.say(fmt.Sprintf("deleted %s, which %s; ctrl+z brings it back", ref.Row, listed(users)), true)
	}
	return m.changed()
}

func (m *Model) dropAsked(s slot) tea.Cmd {
	ref, text := m.asking(s, "")
	if err := m.history.Do(change(m.history.Current(), ref, text)); err != nil {
		m.say(words1(err), true)
		return nil
	}
	return m.changed()
}

// clearCell takes out what the cell under the cursor holds.
func (m *Model) clearCell() tea.Cmd {
	s, ok := m.slot()
	switch {
	case !ok || s.does == nothing:
		m.say("this cell follows from others", false)
		return nil
	case s.does == setName:
		m.say("ctrl+d deletes the row", false)
		return nil
	case s.does == setAsked:
		return m.dropAsked(s)
	case m.raw(s) == "":
		return nil
	}
	if err := m.history.Do(change(m.history.Current(), s.ref, "")); err != nil {
		m.say(words1(err), true)
		return nil
	}
	return m.changed()
}

// mentions gives the rows with a cell that uses a name as a word.
func mentions(s *sheet.Sheet, ref sheet.Ref) (rows []string) {
	for _, t := range s.Tables {
		for _, r := range t.Rows {
			if t.Name == ref.Table && r.Name == ref.Row || t.Name == "" && r.Name != "asked" {
				continue
			}
			for _, c := range r.Cells {
				if c.Readable && uses(c.Text, ref.Row) {
					rows = append(rows, r.Name)
					break
				}
			}
		}
	}
	return rows
}

func uses(text, name string) bool {
	isName := func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '_' || r == '\'' }
	for i := 0; ; {
		k := strings.Index(text[i:], name)
		if k < 0 || name == "" {
			return false
		}
		k += i
		before, after := []rune(text[:k]), []rune(text[k+len(name):])
		if (len(before) == 0 || !isName(before[len(before)-1])) && (len(after) == 0 || !isName(after[0])) {
			return true
		}
		i = k + len(name)
	}
}

// listed names a few rows: "T1 and T2 use it".
func listed(rows []string) string {
	const most = 3
	switch n := len(rows); {
	case n == 1:
		return rows[0] + " uses it"
	case n > most:
		return fmt.Sprintf("%s and %d more use it", strings.Join(rows[:most], ", "), n-most)
	}
	return strings.Join(rows[:len(rows)-1], ", ") + " and " + rows[len(rows)-1] + " use it"
}

// words1 puts an error of the sheet on one line, with what would do.
func words1(err error) string {
	var edit *sheet.EditError
	if errors.As(err, &edit) && edit.Hint != "" {
		return edit.Msg + ": " + edit.Hint
	}
	var file *sheet.FileError
	if errors.As(err, &file) && file.Hint != "" {
		return file.Msg + ": " + file.Hint
	}
	return err.Error()
}

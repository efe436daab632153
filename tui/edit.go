package tui

import (
	"strings"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/keys"
	"trivet/tui/layout"
)

// edit is a cell being typed in. It is replaced, never changed, so that a frame
// of an earlier model stays what it was.
type edit struct {
	line
	slot slot
	was  string // the text before
}

// fresh is a row that has no name yet.
type fresh struct {
	table string // "" for a result to be asked for
	after string // the row it follows
	at    int    // where it shows
}

// begin edits the cell under the cursor from the text it has.
func (m *Model) begin() bool {
	s, ok := m.slot()
	if !ok || s.does == nothing {
		m.say("this cell follows from others and cannot be typed in", false)
		return false
	}
	was := m.raw(s)
	m.edit = &edit{newLine(was), s, was}
	return true
}

// raw is the text that an edit of a slot begins with: the cell's own, where the
// slot shows a mark instead.
func (m Model) raw(s slot) string {
	switch s.does {
	case setName:
		return s.ref.Row
	case setAsked:
		return s.text
	}
	c, _ := m.history.Current().Cell(s.ref)
	return c.Text
}

// typed takes characters: into the line being typed, or in place of a cell.
func (m *Model) typed(text string) tea.Cmd {
	switch m.mode() {
	case keys.OnName:
		l := *m.naming
		l.insert(text)
		m.naming = &l
	case keys.InCell:
		e := *m.edit
		e.insert(text)
		m.edit = &e
		return m.preview()
	case keys.OnCells:
		if !m.begin() {
			return nil
		}
		m.edit.line = line{}
		m.edit.insert(text)
		return m.preview()
	}
	return nil
}

func (m *Model) paste(text string) tea.Cmd {
	m.note = note{}
	return m.typed(text)
}

// preview solves the sheet with the cell as it is being typed.
func (m *Model) preview() tea.Cmd {
	s := m.history.Current()
	switch m.edit.slot.does {
	case setCell:
		s = s.With(m.edit.slot.ref, m.edit.text)
	case setAsked:
		if m.fresh == nil {
			ref, text := m.asking(m.edit.slot, m.edit.text)
			s = s.With(ref, text)
		}
	default:
		return nil // a name changes nothing until it is kept
	}
	return m.solve(s)
}

// typing does the intents of a cell being typed in.
func (m *Model) typing(i keys.Intent) (tea.Cmd, bool) {
	switch i {
	case keys.Cancel:
		m.edit, m.fresh = nil, nil
		return m.changed(), true
	case keys.Commit, keys.CommitDown:
		return m.keep(func() { m.at[m.focus].row++ }), true
	case keys.CommitUp:
		return m.keep(func() { m.at[m.focus].row-- }), true
	case keys.CommitNext:
		return m.keep(func() { m.step(1) }), true
	case keys.CommitPrev:
		return m.keep(func() { m.step(-1) }), true
	}
	e := *m.edit
	if !e.handle(i) {
		return nil, false
	}
	changed := e.text != m.edit.text
	m.edit = &e
	if changed {
		return m.preview(), true
	}
	return nil, true
}

// keep writes the cell into the sheet and moves on. Where the sheet refuses
// the text, it stays as it is being typed.
func (m *Model) keep(move func()) tea.Cmd {
	e, f := m.edit, m.fresh
	if f != nil && strings.TrimSpace(e.text) == "" {
		m.edit, m.fresh = nil, nil
		return m.changed()
	}
	if err := m.write(e, f); err != nil {
		m.say(oneLine(err), true)
		return nil
	}
	m.edit, m.fresh = nil, nil
	cmd := m.changed()
	if f != nil && f.table != "" {
		move = func() { m.at[m.focus].col = 1 }
	}
	move()
	m.fit()
	m.project()
	return cmd
}

// changed rebuilds what shows and solves the sheet as it is now.
func (m *Model) changed() tea.Cmd {
	cmd := m.solve(m.history.Current())
	m.rebuild()
	return cmd
}

// newRow begins a row behind the one under the cursor, with its name.
func (m *Model) newRow() tea.Cmd {
	f := &fresh{table: [...]string{layout.Given: "given", layout.Points: "points", layout.Lines: "lines", layout.Unknowns: ""}[m.focus]}
	records, at := m.tables[m.focus].records, m.at[m.focus].row
	if m.focus == layout.Lines && at < len(records) {
		f.table = records[at].row.Table // a joint follows a joint
	}
	// Behind the row under the cursor, or behind the last where that is of
	// another table.
	same := at < len(records) && records[at].row.Table == f.table
	for i, r := range records {
		if r.row.Table == f.table && (!same || i <= at) {
			f.at, f.after = i+1, r.row.Row
		}
	}
	if f.table == "" {
		f.at = len(records)
	}
	m.fresh = f
	m.rebuild()
	m.at[m.focus].row, m.at[m.focus].col = f.at, 0
	m.fit()
	does := setName
	if f.table == "" {
		does = setAsked
	}
	m.edit = &edit{line{}, slot{does: does, ref: sheet.Ref{Table: f.table}}, ""}
	return nil
}

// say puts a word on the bottom line.
func (m *Model) say(text string, bad bool) { m.note = note{text, bad} }

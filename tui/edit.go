package tui

import (
	"fmt"
	"strings"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/names"
	"trivet/mechanics/sheet"
	"trivet/tui/keys"
	"trivet/tui/layout"
)

// edit is a cell being typed in. It is replaced, never changed, so that a frame
// of an earlier model stays what it was.
type edit struct {
	line
	slot slot
	was  string   // the text before
	list []choice // what the cell may hold, where it is one of a list
	pick int      // which of those that fit the text, once an arrow has chosen

	words  []names.Completion // of the word at the cursor
	word   int                // which of them, once an arrow has chosen
	closed bool               // they are not wanted in this cell
}

// begin edits the cell under the cursor from the text it has.
func (m *Model) begin() bool {
	s, ok := m.slot()
	switch {
	case ok && s.does == nothing && m.focus == layout.Supports && s.text == "":
		m.say("a row of this kind has no such cell", false)
		return false
	case !ok || s.does == nothing:
		m.say("this cell is derived and cannot be edited", false)
		return false
	}
	if s.does == setName && s.ref.Table == "" {
		if what, owner, owned := names.OwnerOf(m.history.Current(), s.ref.Row); owned {
			m.say(fmt.Sprintf("%s is named after the %s %s: rename that", s.ref.Row, what, owner), false)
			return false
		}
	}
	was := m.raw(s)
	m.edit = &edit{line: newLine(was), slot: s, was: was, list: m.made.choices(s), pick: unpicked}
	return true
}

// unknownMark is what a magnitude says that is to be found. It opens the help
// where no magnitude takes it.
const unknownMark = "?"

// takesUnknown tells whether ? says something in the cell under the cursor.
func (m Model) takesUnknown() bool {
	s, ok := m.slot()
	key := s.ref.Key
	return ok && s.does == setCell && (s.ref.Table == "lines" || s.ref.Table == "couples") && (key == "magnitude" || key == "components")
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
	case keys.OnSearch:
		m.search.insert(text)
		m.seek(0)
	case keys.OnPalette:
		m.palette = m.palette.typed(text)
	case keys.OnSettings, keys.InSetting:
		m.typedSetting(text)
	case keys.OnName:
		l := *m.naming
		l.insert(text)
		m.naming = &l
	case keys.InCell, keys.InList, keys.InWords:
		e := *m.edit
		if e.list != nil && e.text == e.was {
			e.line = line{} // one of a list is replaced, not added to
		}
		e.insert(text)
		e.pick = unpicked
		m.edit = &e
		m.complete()
		return m.preview()
	case keys.OnBoard:
		m.stepNumber(text)
	case keys.OnStart:
		return m.look(text)
	case keys.OnCells:
		if m.typedRow(text) {
			return nil
		}
		if !m.begin() {
			return nil
		}
		m.edit.line = line{}
		m.edit.insert(text)
		m.complete()
		return m.preview()
	}
	return nil
}

func (m *Model) paste(text string) tea.Cmd {
	m.note = note{}
	if m.mode() == keys.OnCells && isBlock(text) {
		return m.pasteBlock(text)
	}
	return m.typed(text)
}

// preview solves the sheet with the cell as it is being typed.
func (m *Model) preview() tea.Cmd {
	m.noteTyping()
	s := m.history.Current()
	switch m.edit.slot.does {
	case setCell:
		s = s.With(m.edit.slot.ref, m.edit.value())
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
	if cmd, ok := m.inWords(i); ok {
		return cmd, true
	}
	switch i {
	case keys.Cancel:
		m.edit, m.fresh = nil, nil
		return m.changed(), true
	case keys.Commit:
		return m.keep(m.onward), true
	case keys.CommitDown:
		return m.keep(func() { m.at[m.focus].row++ }), true
	case keys.CommitUp:
		return m.keep(func() { m.at[m.focus].row-- }), true
	case keys.CommitNext:
		return m.keep(func() { m.step(1) }), true
	case keys.CommitPrev:
		return m.keep(func() { m.step(-1) }), true
	}
	switch i {
	case keys.NudgeUp, keys.NudgeDown:
		return m.nudgeTyped(i), true
	case keys.ToDefinition:
		return m.define(), true
	}
	e := *m.edit
	if !e.choose(i) && !e.handle(i) {
		return nil, false
	}
	changed := e.text != m.edit.text
	if changed {
		e.pick = unpicked
	}
	changed = changed || e.value() != m.edit.value()
	m.edit = &e
	if e.words != nil || changed {
		m.complete()
	}
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
		m.edit, m.fresh, m.newest = nil, nil, sheet.Ref{}
		return m.changed()
	}
	before := m.history.Current()
	if err := m.write(e, f); err != nil {
		m.say(err.Error(), true)
		return nil
	}
	m.offerRetelling(before, e.slot.ref)
	m.edit, m.fresh = nil, nil
	cmd := m.changed()
	if f != nil && f.table != "" {
		made := sheet.Ref{Table: f.table, Row: strings.TrimSpace(e.text)}
		move = func() { m.firstCell(made) }
		if f.table == "points" || f.table == "lines" {
			m.newest = made
		}
	}
	move()
	m.fit()
	m.project()
	if f != nil && (f.table == "joints" || f.table == "lines") {
		m.begin() // with the list of kinds open
	}
	return cmd
}

// changed rebuilds what shows and solves the sheet as it is now.
func (m *Model) changed() tea.Cmd {
	m.noteCommit()
	cmd := m.solve(m.history.Current())
	m.rebuild()
	return cmd
}

// say puts a word on the bottom line.
func (m *Model) say(text string, bad bool) {
	m.note = note{text, bad}
	m.notes++
}

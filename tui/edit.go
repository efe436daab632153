package tui

import (
	"fmt"
	"strings"
	"unicode"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/names"
	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/frame"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/session"
	"trivet/tui/text"
)

// begin edits the cell under the cursor from the text it has.
func (m *Model) begin() bool {
	s, ok := m.slot()
	switch {
	case ok && s.Does == cells.Nothing && m.focus == layout.Supports && s.Text == "":
		m.say("a row of this kind has no such cell", false)
		return false
	case m.focus == layout.Unknowns && m.at[m.focus].Col == 1 && m.selected().Table == "joints":
		m.say("the reaction of a support is found. Try: a strut, or a force of that magnitude, in its place", false)
		return false
	case !ok || s.Does == cells.Nothing:
		m.say("this cell is derived and cannot be edited", false)
		return false
	}
	if s.Does == cells.SetName && s.Ref.Table == "" {
		if what, owner, owned := names.OwnerOf(m.history.Current(), s.Ref.Row); owned {
			m.say(fmt.Sprintf("%s is named after the %s %s: rename that", s.Ref.Row, what, owner), false)
			return false
		}
	}
	m.edit = m.made.Open(s, m.raw(s), false)
	return true
}

// unknownMark is what a magnitude says that is to be found. It opens the help
// where no magnitude takes it.
const unknownMark = "?"

// takesUnknown tells whether ? says something in the cell under the cursor.
func (m Model) takesUnknown() bool {
	s, ok := m.slot()
	key := s.Ref.Key
	return ok && s.Does == cells.SetCell && (s.Ref.Table == "lines" || s.Ref.Table == "couples") && (key == "magnitude" || key == "components")
}

// raw is the text that an edit of a slot begins with: the cell's own, where the
// slot shows a mark instead.
func (m Model) raw(s cells.Slot) string {
	switch s.Does {
	case cells.SetName:
		return s.Ref.Row
	case cells.SetAsked:
		return s.Text
	}
	c, _ := m.history.Current().Cell(s.Ref)
	return c.Text
}

// typed takes characters: into the line being typed, or in place of a cell.
func (m *Model) typed(chars string) tea.Cmd {
	switch m.mode() {
	case keys.OnSearch:
		m.search.Insert(chars)
		m.seek(0)
	case keys.OnPalette:
		p := m.palette.Typed(chars)
		m.palette = &p
	case keys.OnSettings, keys.InSetting:
		m.setup = m.setup.Typed(chars)
	case keys.OnName:
		l := *m.naming
		l.Insert(chars)
		m.naming = &l
	case keys.InCell, keys.InList, keys.InWords:
		e := *m.edit
		if e.Replaces() {
			e.Line = text.Line{}
		}
		e.Insert(chars)
		e.Pick, e.Over = cells.Unpicked, false
		m.edit = &e
		m.complete()
		return m.preview()
	case keys.OnBoard:
		b, says := m.board.Typed(chars, m.boardOf().Steps())
		if m.board = b; says != "" {
			m.say(says, false)
		}
	case keys.OnStart:
		m.opening = m.opening.Type(chars)
		return m.peek(false)
	case keys.OnCells:
		if m.typedRow(chars) {
			return nil
		}
		if !m.begin() {
			return nil
		}
		m.edit.Line, m.edit.Over = text.Line{}, false
		m.edit.Insert(chars)
		m.complete()
		return m.preview()
	}
	return nil
}

func (m *Model) paste(text string) tea.Cmd {
	m.note = frame.Note{}
	if m.fresh != nil && m.edit != nil && m.edit.Text == "" && isBlock(text) {
		m.edit, m.fresh, m.newest = nil, nil, sheet.Ref{} // rows in place of the blank one
		m.renew()
	}
	if m.mode() == keys.OnCells && isBlock(text) {
		return m.pasteBlock(text)
	}
	return m.typed(text)
}

// preview solves the sheet with the cell as it is being typed.
func (m *Model) preview() tea.Cmd {
	s := m.history.Current()
	switch m.edit.Slot.Does {
	case cells.SetCell:
		s = s.With(m.edit.Slot.Ref, m.edit.Value())
	case cells.SetAsked:
		if m.fresh == nil {
			ref, text := m.asking(m.edit.Slot, m.edit.Text)
			s = s.With(ref, text)
		}
	default:
		return nil // a name changes nothing until it is kept
	}
	return m.live.Solve(s, draftOf(m.edit))
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
		return m.keep(func() { m.at[m.focus].Row++ }), true
	case keys.CommitUp:
		return m.keep(func() { m.at[m.focus].Row-- }), true
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
	if !e.Choose(i) && !e.Handle(i) {
		return nil, false
	}
	changed := e.Text != m.edit.Text
	if changed {
		e.Pick = cells.Unpicked
	}
	changed = changed || e.Value() != m.edit.Value()
	m.edit = &e
	if e.Words != nil || changed {
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
	if f != nil && strings.TrimSpace(e.Text) == "" {
		m.edit, m.fresh, m.newest = nil, nil, sheet.Ref{}
		return m.changed()
	}
	before := m.history.Current()
	if err := m.write(e, f); err != nil {
		m.say(err.Error(), true)
		return nil
	}
	m.offerRetelling(before, e.Slot.Ref)
	m.edit, m.fresh = nil, nil
	cmd := m.changed()
	if f != nil && f.Table != "" {
		made := sheet.Ref{Table: f.Table, Row: strings.TrimSpace(e.Text)}
		move = func() { m.firstCell(made) }
		m.newest = made
	}
	move()
	m.settle()
	if f != nil && f.Table != "" {
		m.openNext()
	}
	return cmd
}

// changed rebuilds what shows and solves the sheet as it is now.
func (m *Model) changed() tea.Cmd {
	cmd := m.live.Solve(m.history.Current(), session.Whole)
	m.renew()
	return cmd
}

// say puts a word on the bottom line.
func (m *Model) say(text string, bad bool) {
	m.note = frame.Note{Text: text, Bad: bad}
	m.notes++
}

// draftOf tells a half-typed number, 560 on the way to 560 kg, from a cell that reads as it would
// once it is kept. A number without a unit is meant where the cell had one before.
func draftOf(e *cells.Edit) session.Draft {
	bare := func(s string) bool {
		s = strings.TrimSpace(s)
		return s != "" && !strings.ContainsFunc(s, unicode.IsLetter) && strings.ContainsRune("0123456789.", rune(s[len(s)-1]))
	}
	if bare(e.Text) && !bare(e.Was) {
		return session.HalfCell
	}
	return session.TypedCell
}

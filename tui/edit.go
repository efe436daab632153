package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/edit"
	"trivet/tui/frame"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/session"
)

// where is what the editor of the cells edits now.
func (m *Model) where() edit.Where {
	s := m.screen()
	w := edit.Where{Sheet: m.history.Current(), Pane: m.Focus, Page: max(s.Panes[m.Focus].Dy()-layout.Frame, 1)}
	for p := range w.Shown {
		w.Shown[p] = m.Large || !s.Panes[p].Empty()
	}
	return w
}

// edited carries out what the editor of the cells asks for.
func (m *Model) edited(o edit.Outcome) (cmd tea.Cmd) {
	m.choosing = m.choosing || o.Choose
	m.say(o.Says, o.Bad)
	switch before := m.history.Current(); {
	case o.Draft != nil:
		cmd = m.live.Solve(o.Draft, o.Typed)
	case o.Sheet != nil:
		m.history.Replace(o.Sheet)
		m.offerRetelling(before, o.Kept)
		cmd = m.changed()
	}
	if o.Go != edit.Stay {
		if p := m.cells.Follow(m.where(), o); p != m.Focus {
			m.goTo(p)
		}
		m.settle()
	}
	if o.Copied != "" {
		cmd = tea.Batch(tea.SetClipboard(o.Copied), cmd)
	}
	return cmd
}

// typed takes characters: into the line being typed, or in place of a cell.
func (m *Model) typed(chars string) (cmd tea.Cmd) {
	switch m.mode() {
	case keys.OnPalette:
		p := m.palette.Typed(chars)
		m.palette = &p
	case keys.OnSettings, keys.InSetting:
		m.setup = m.setup.Typed(chars)
	case keys.OnName:
		l := *m.naming
		l.Insert(chars)
		m.naming = &l
	case keys.OnBoard:
		b, says := m.board.Typed(chars, m.boardOf().Steps())
		m.board = b
		m.say(says, false)
	case keys.OnPractice, keys.OnTask, keys.OnDepicted:
		m.front, cmd = m.front.Type(chars)
	case keys.OnStart:
		m.opening = m.opening.Type(chars)
		return m.peek(false)
	case keys.OnHelpSearch:
		next, says := m.help.Typed(chars, m.helpSight())
		m.help = next
		m.say(says, false)
	case keys.OnSearch, keys.InCell, keys.InList, keys.InWords, keys.OnCells:
		return m.edited(m.cells.Type(m.where(), chars))
	}
	return cmd
}

func (m *Model) paste(text string) tea.Cmd {
	switch m.note = (frame.Note{}); {
	case m.front.Waits():
		return nil // it is for what is being opened, which cannot take it yet
	case m.cells.MakesWay(text):
		m.settle()
	}
	if m.mode() == keys.OnCells && edit.IsBlock(text) {
		return m.edited(m.cells.Paste(m.where(), text))
	}
	return m.typed(text)
}

// typing does the intents of a cell being typed in.
func (m *Model) typing(i keys.Intent) (tea.Cmd, bool) {
	o, ok := m.cells.InCell(m.where(), i)
	return m.edited(o), ok
}

// searching does the intents of the line that is looked for.
func (m *Model) searching(i keys.Intent) (tea.Cmd, bool) {
	o, ok := m.cells.InSearch(m.where(), i)
	return m.edited(o), ok
}

// onCells does the intents of a pane of cells.
func (m *Model) onCells(i keys.Intent) (tea.Cmd, bool) {
	o, ok := m.cells.OnCells(m.where(), i)
	return m.edited(o), ok
}

// keep writes the cell being typed in into the sheet. Where that refuses it the cell stays open,
// and the bottom line says why.
func (m *Model) keep() (cmd tea.Cmd, open bool) {
	if m.cells.Cell != nil {
		cmd = m.edited(m.cells.Keep(m.where(), edit.Stay))
	}
	return cmd, m.cells.Cell != nil
}

// chosen takes the answer to which kind of row to make.
func (m *Model) chosen(i keys.Intent) bool {
	table, ok := map[keys.Intent]string{keys.NewJoint: "joints", keys.NewBody: "bodies", keys.NewCouple: "couples", keys.NewLoad: "distributed"}[i]
	if !ok && i != keys.Cancel {
		return false
	}
	m.choosing = false
	if ok {
		m.cells.BeginRow(m.Focus, table)
	}
	return true
}

// changed rebuilds what shows and solves the sheet as it is now.
func (m *Model) changed() tea.Cmd {
	cmd := m.live.Solve(m.history.Current(), session.Whole)
	m.renew()
	return cmd
}

// say puts a word on the bottom line, where there is one to say.
func (m *Model) say(text string, bad bool) {
	if text == "" {
		return
	}
	m.note = frame.Note{Text: text, Bad: bad}
	m.notes++
}

// slot is the cell under the cursor.
func (m Model) slot() (cells.Slot, bool) { return m.cells.Slot(m.Focus) }

// cell is what it edits; zero where there is none.
func (m Model) cell() sheet.Ref {
	s, _ := m.slot()
	return s.Ref
}

// clamp keeps every cursor on its table and in view, and every scroll in its
// text.
func (m *Model) clamp() {
	var rows [layout.System]int
	for p, r := range m.screen().Panes {
		if p := layout.Pane(p); p < layout.System {
			rows[p] = r.Dy() - layout.Frame
		} else if p.Result() && !r.Empty() {
			o, t := &m.read[p].Scroll, &m.texts[p]
			o.Y = max(min(o.Y, len(t.Lines)-r.Dy()+1), 0)
			o.X = max(min(o.X, t.Wide-r.Dx()+2), 0)
		}
	}
	m.cells.Clamp(rows)
}

// hop goes to the next pane, one that is hidden beside others included.
func (m *Model) hop(dir int) {
	m.goTo((m.Focus + layout.Pane(dir) + layout.Panes) % layout.Panes)
}

// goTo gives a pane the keys and shows it.
func (m *Model) goTo(p layout.Pane) {
	m.cells.Mark = edit.Mark{}
	m.Go(p)
	if p < layout.System {
		m.back = p
	}
	m.settle()
}

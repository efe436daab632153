package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/keys"
	"trivet/tui/practice"
)

// practiseSheet opens the sheet of the session for practice.
func (m *Model) practiseSheet() tea.Cmd {
	s := m.history.Current()
	title, _ := s.Cell(sheet.Ref{Row: "title"})
	return m.front.Begin(practice.Name(m.file.Path, title.Text), s)
}

// practisePicked practises the sheet or the set that is picked on the start screen.
func (m *Model) practisePicked() tea.Cmd {
	of, ok := m.opening.Picked()
	switch {
	case !ok:
		return nil
	case of.Set == "":
		m.front.Expect(true)
		return of.Practise
	}
	return m.front.BuiltIn(of.Set)
}

// takePractice receives a message of practice, and says it where no pane does.
func (m *Model) takePractice(msg tea.Msg) tea.Cmd {
	f, out := m.front.Take(msg)
	m.front = f
	if out.Loud || m.linear {
		m.say(out.Text, out.Bad)
	}
	if out.Far != nil && m.opening != nil {
		m.opening = m.opening.Standing(out.Far)
	}
	if out.Came {
		if waiting := m.ahead.Take(); !out.Bad || f.Desk != nil { // else what was typed is for nothing
			return tea.Batch(out.Cmd, m.release(waiting))
		}
	}
	return out.Cmd
}

// practising does the intents of practice.
func (m *Model) practising(i keys.Intent) (tea.Cmd, bool) {
	if m.linear && m.mode() == keys.OnTask && m.readOn(i) {
		return nil, true
	}
	f, cmd, says, wish := m.front.Do(i, m.w, m.h)
	m.front = f
	m.say(says, false)
	switch {
	case wish == practice.AskShow:
		m.ask = &question{
			Question: asked(practice.Ends),
			yes: func(m *Model) (cmd tea.Cmd) {
				m.front, cmd = m.front.Show()
				return cmd
			},
			no: func(*Model) tea.Cmd { return nil },
		}
		m.note.Text = practice.Ends // where no foot has questions
	case wish == practice.Leave && m.front.Alone():
		return tea.Sequence(cmd, m.quit()), true
	case wish == practice.Leave && m.opening != nil:
		return tea.Sequence(cmd, m.front.Standing(m.opening.Paths())), true
	}
	return cmd, true
}

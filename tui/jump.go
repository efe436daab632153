package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/tui/cells"
	"trivet/tui/layout"
)

// spot is a pane with the cursor in it.
type spot struct {
	pane layout.Pane
	at   cells.Place
}

func (m Model) spot() spot { return spot{m.Focus, m.cells.At[min(m.Focus, layout.System-1)]} }

// define goes to the row that defines the name under the cursor: of the cell
// being typed in, or the first name in the cell under the cursor.
func (m *Model) define() (cmd tea.Cmd) {
	ref, why := m.cells.Defined(m.where())
	if why != "" {
		m.say(why, false)
		return nil
	}
	if m.cells.Cell != nil {
		if cmd = m.keep(); m.cells.Cell != nil {
			return cmd
		}
	}
	from := m.spot()
	home, ok := m.cells.Show(ref)
	if !ok {
		m.say(ref.Row+" is in no pane", false)
		return cmd
	}
	m.goTo(home)
	const limit = 100
	m.jumps = append(m.jumps[max(len(m.jumps)-limit, 0):len(m.jumps):len(m.jumps)], from)
	m.say("alt+r goes back", false)
	return cmd
}

func (m *Model) goBack() {
	n := len(m.jumps) - 1
	if n < 0 {
		m.say("there is nowhere to go back to: alt+g goes to the row of a name", false)
		return
	}
	s := m.jumps[n]
	m.jumps = m.jumps[:n:n]
	if s.pane < layout.System {
		m.cells.At[s.pane] = s.at
	}
	m.goTo(s.pane)
}

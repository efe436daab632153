package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/names"
	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/layout"
)

// spot is a pane with the cursor in it.
type spot struct {
	pane layout.Pane
	at   cells.Place
}

func (m Model) spot() spot { return spot{m.focus, m.cells.At[min(m.focus, layout.System-1)]} }

// define goes to the row that defines the name under the cursor: of the cell
// being typed in, or the first name in the cell under the cursor.
func (m *Model) define() tea.Cmd {
	s, ok := m.slot()
	if m.cells.Cell != nil {
		s = m.cells.Cell.Slot
	}
	if !ok || s.Does != cells.SetCell && s.Does != cells.SetAsked {
		m.say("this cell contains no name", false)
		return nil
	}
	text, first, last := m.raw(s), 0, len(m.raw(s))
	if m.cells.Cell != nil {
		text, first, last = m.cells.Cell.Text, m.cells.Cell.At, m.cells.Cell.At
	}
	for at := first; at <= last; at++ {
		ref, ok := names.Definition(m.history.Current(), s.Ref, text, at)
		if !ok {
			continue
		}
		var cmd tea.Cmd
		if m.cells.Cell != nil {
			if cmd = m.keep(); m.cells.Cell != nil {
				return cmd
			}
		}
		from := m.spot()
		if !m.showRow(ref) {
			m.say(ref.Row+" is in no pane", false)
			return cmd
		}
		const limit = 100
		m.jumps = append(m.jumps[max(len(m.jumps)-limit, 0):len(m.jumps):len(m.jumps)], from)
		m.say("alt+r goes back", false)
		return cmd
	}
	m.say("there is no name here that the sheet defines", false)
	return nil
}

// showRow goes to a row in the pane that is its home, on the cell of a key where
// the row shows it.
func (m *Model) showRow(ref sheet.Ref) bool {
	home, ok := map[string]layout.Pane{
		"": layout.Sheet, "units": layout.Sheet, "given": layout.Given, "points": layout.Points, "lines": layout.Lines,
		"joints": layout.Supports, "bodies": layout.Supports, "couples": layout.Supports, "distributed": layout.Supports,
	}[ref.Table]
	if !ok {
		return false
	}
	for k, r := range m.cells.Tables[home].Records {
		if r.Row.Table != ref.Table || r.Row.Row != ref.Row {
			continue
		}
		m.cells.At[home].Row, m.cells.At[home].Col = k, 0
		for col, s := range r.Slots {
			if s.Does == cells.SetCell && s.Ref == ref {
				m.cells.At[home].Col = col
			}
		}
		m.goTo(home)
		return true
	}
	return false
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

package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/overlay"
)

// paletteRows is how many commands show at a time.
const paletteRows = 14

// inPalette does the intents of the list of commands.
func (m *Model) inPalette(i keys.Intent) (tea.Cmd, bool) {
	list := overlay.Commands(*m.palette)
	switch {
	case i == keys.Cancel:
		m.palette = nil
		return nil, true
	case i == keys.Commit && len(list) == 0:
		m.say("no command matches", false)
		return nil, true
	case i == keys.Commit:
		b := list[m.palette.Pick]
		m.palette = nil
		return m.run(b), true
	}
	p, ok := m.palette.Do(i, len(list), paletteRows)
	m.palette = &p
	return nil, ok
}

// run does a command, in the pane that it belongs to.
func (m *Model) run(b keys.Binding) (cmd tea.Cmd) {
	switch {
	case b.Scope == keys.Cells && m.Focus >= layout.System:
		m.goTo(m.back)
	case b.Scope == keys.Result && !m.Focus.Result():
		m.goTo(m.Turn)
	case b.Scope == keys.Picture:
		m.goTo(layout.Picture)
	case b.Scope == keys.Board:
		cmd = m.toBoard()
	}
	return tea.Batch(cmd, m.can(b.Intent))
}

package tui

import (
	"trivet/tui/help"
	"trivet/tui/keys"
	"trivet/tui/layout"
)

// helpFor is whom the help is for. Who follows sees the presenter's own.
func (m Model) helpFor() help.For {
	m.watches = m.around
	of := help.For{Now: m.now(), Board: m.board.On}
	if m.Focus < layout.System && !m.board.On && m.opening == nil && !m.front.On() {
		of.Table, of.At = &m.cells.Tables[m.Focus], m.cells.At[m.Focus]
	}
	return of
}

// helpSight is how the help is seen.
func (m Model) helpSight() help.Sight {
	return help.Sight{For: m.helpFor(), Screen: m.screen(), W: m.w}
}

// seekHelp does the intents of the line that is looked for in the help.
func (m *Model) seekHelp(i keys.Intent) bool {
	next, says, ok := m.help.Seek(i, m.helpSight())
	m.help = next
	m.say(says, false)
	return ok
}

// turnHelp does the intents of the help.
func (m *Model) turnHelp(i keys.Intent) bool {
	next, ok := m.help.Do(i, m.screen(), m.w, m.helpFor())
	m.help = next
	return ok || m.linear && m.readOn(i)
}

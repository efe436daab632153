package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/prefs"
	"trivet/tui/results"
)

// dress takes the characters and colours that the settings and the terminal say.
func (m *Model) dress() {
	if t, other := m.prefs.Dress(m.theme); other {
		m.theme, m.texts = t, [layout.Panes]results.Pane{}
	}
}

// settingUp does the intents of the list of settings.
func (m *Model) settingUp(i keys.Intent) (cmd tea.Cmd, ok bool) {
	next, out, ok := m.setup.Do(i, &m.prefs)
	m.setup = next
	return m.hear(out), ok
}

// hear takes what a change of the settings says and needs.
func (m *Model) hear(out prefs.Said) tea.Cmd {
	m.say(out.Text, out.Bad)
	m.dress()
	return out.Cmd
}

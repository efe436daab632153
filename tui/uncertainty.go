package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/tui/layout"
)

// weigh works out what the ± of the inputs does where a pane shows it.
func (m *Model) weigh() tea.Cmd {
	if !m.wantsEffect() {
		return nil
	}
	return m.live.Weigh()
}

// wantsEffect tells that a pane shows what is not known yet.
func (m *Model) wantsEffect() bool {
	if !m.live.Unweighed() {
		return false
	}
	for _, p := range []layout.Pane{layout.Ranges, layout.Limits} {
		if m.linear && m.focus == p || !m.linear && !m.screen().Panes[p].Empty() {
			return true
		}
	}
	return false
}

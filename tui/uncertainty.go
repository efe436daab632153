package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/uncertainty"
	"trivet/tui/layout"
	"trivet/tui/session"
)

// weigh works out what the ± of the inputs does where a pane shows it, for no longer than
// its sheet is the newest.
func (m *Model) weigh() tea.Cmd {
	if m.live.solving.Running() || !m.wantsEffect() {
		return nil
	}
	s, of, newest := m.live.Solution, m.live.Of, m.live.newest
	at := newest.Load()
	return m.live.weighing.Ask(s, func() *uncertainty.Effect {
		return uncertainty.While(of, s, func() bool { return newest.Load() == at })
	})
}

// wantsEffect tells that a pane shows what is not known yet.
func (m Model) wantsEffect() bool {
	if !m.live.Uncertain() || m.live.Weighed.Of == m.live.Solution {
		return false
	}
	for _, p := range []layout.Pane{layout.Ranges, layout.Limits} {
		if m.linear && m.focus == p || !m.linear && !m.screen().Panes[p].Empty() {
			return true
		}
	}
	return false
}

// takeWeighed receives it, unless it was given up for a newer sheet.
func (m *Model) takeWeighed(msg session.Effect) {
	if m.live.weighing.Take(msg, m.live.Solution) && (msg.Value != nil || msg.Fault != "") {
		m.live.Weighed = msg
	}
}

package tui

import (
	"fmt"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
	"trivet/tui/layout"
	"trivet/tui/session"
)

// weigh works out what the ± of the inputs does where a pane shows it: away from the
// screen, one at a time, and for no longer than its sheet is the newest.
func (m *Model) weigh() tea.Cmd {
	if m.weighing != nil || m.live.running || !m.wantsEffect() {
		return nil
	}
	s, of, newest := m.live.Solution, m.live.Of, m.live.newest
	m.weighing = s
	at := newest.Load()
	return func() tea.Msg {
		return effectOf(of, s, func() bool { return newest.Load() == at })
	}
}

func effectOf(of *sheet.Sheet, s *statics.Solution, on func() bool) (out session.Effect) {
	// A fault of ours in here must not cost what was typed and not saved.
	defer func() {
		if r := recover(); r != nil {
			out = session.Effect{Of: s, Fault: fmt.Sprint(r)}
		}
	}()
	t := uncertainty.While(of, s, on)
	return session.Effect{Of: s, Effect: t, Stopped: t == nil && !on()}
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

// takeWeighed receives it.
func (m *Model) takeWeighed(msg session.Effect) {
	m.weighing = nil
	if msg.Of != m.live.Solution || msg.Stopped {
		return // the newer one is on its way
	}
	m.live.Weighed = msg
	m.texts[layout.Ranges].old, m.texts[layout.Limits].old = true, true
	m.fit()
}

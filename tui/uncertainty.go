package tui

import (
	"fmt"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
	"trivet/tui/layout"
)

// weighed is what the ± of the inputs does to a solution.
type weighed struct {
	of      *statics.Solution
	effect  *uncertainty.Effect
	fault   string
	stopped bool // a newer sheet came: it is not known
}

// weigh works out what the ± of the inputs does where a pane shows it: away from the
// screen, one at a time, and for no longer than its sheet is the newest.
func (m *Model) weigh() tea.Cmd {
	if m.weighing != nil || m.live.running || !m.wantsEffect() {
		return nil
	}
	s, of, newest := m.live.solution, m.live.of, m.live.newest
	m.weighing = s
	at := newest.Load()
	return func() tea.Msg {
		return weighUp(of, s, func() bool { return newest.Load() == at })
	}
}

func weighUp(of *sheet.Sheet, s *statics.Solution, on func() bool) (out weighed) {
	// A fault of ours in here must not cost what was typed and not saved.
	defer func() {
		if r := recover(); r != nil {
			out = weighed{of: s, fault: fmt.Sprint(r)}
		}
	}()
	t := uncertainty.While(of, s, on)
	return weighed{of: s, effect: t, stopped: t == nil && !on()}
}

// wantsEffect tells that a pane shows what is not known yet.
func (m Model) wantsEffect() bool {
	if !m.live.uncertain() || m.live.weighed.of == m.live.solution {
		return false
	}
	for _, p := range []layout.Pane{layout.Ranges, layout.Limits} {
		if m.linear && m.focus == p || !m.linear && !m.screen().Panes[p].Empty() {
			return true
		}
	}
	return false
}

// uncertain tells that inputs have a ±.
func (l live) uncertain() bool {
	return l.solution != nil && l.of != nil && len(l.solution.Problem.Measured) > 0
}

// takeWeighed receives it.
func (m *Model) takeWeighed(msg weighed) {
	m.weighing = nil
	if msg.of != m.live.solution || msg.stopped {
		return // the newer one is on its way
	}
	m.live.weighed = msg
	m.texts[layout.Ranges].old, m.texts[layout.Limits].old = true, true
	m.fit()
}

// effect is that of the solution shown, nil where it is not known.
func (l live) effect() *uncertainty.Effect {
	if l.weighed.of != l.solution {
		return nil
	}
	return l.weighed.effect
}

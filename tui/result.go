package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/tui/cells"
	"trivet/tui/layout"
	"trivet/tui/results"
	"trivet/tui/session"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// compose makes the texts of the results that show, where they are old. Only those are
// written: a keystroke waits for it.
func (m *Model) compose() {
	s := m.screen()
	if of := (stripped{m.resulted, s.Strip.Dx() - 2, m.live.Weighed.Of}); of != m.stripped && m.live.Solution != nil && !m.linear {
		m.stripped, m.strip = of, results.Strip(&m.live.Result, of.w)
	}
	a := results.Args{Result: &m.live.Result, Nth: m.resulted, Steps: &m.worked, Glyphs: m.theme.Glyphs, Hidden: m.hides}
	if m.live.Solution == nil {
		a.Missing = m.missing
	}
	for p, r := range s.Panes {
		p := layout.Pane(p)
		if !p.Result() || r.Empty() {
			continue
		}
		if m.texts[p].Write(p, max(r.Dx()-2, 1), a) {
			m.count.texts++
			m.read[p].Find(m.texts[p].Lines)
		}
		a.Missing = nil // the first says it
	}
}

// missing says why there is no result yet.
func (m *Model) missing(w int) (lines text.Lines) {
	if errs := m.live.Faults(); len(errs) > 0 {
		lines.Wrapped(theme.Bad, "! ", cells.Located(errs[0]), w)
	} else if says := m.live.Unconnected(); says != "" {
		lines.Wrapped(theme.Warn, "", says, w)
	}
	return lines
}

// judge looks for the mistakes in the own answers, unless one is being typed.
func (m *Model) judge() tea.Cmd {
	if m.cells.Cell != nil {
		return nil
	}
	return m.live.Judge(m.cell())
}

// isOld tells that a pane shows what followed from an earlier sheet.
func (m Model) isOld(p layout.Pane) bool {
	steps := p == layout.Working || p == layout.HandSolution
	return m.live.Stale || steps && m.worked.Of != nil && m.worked.Of != m.live.Solution
}

// take receives a result.
func (m *Model) take(msg session.Solved) {
	if !m.live.Take(msg) {
		return
	}
	m.resulted++
	m.records++
	if msg.Fault != "" {
		m.say("this sheet could not be solved; the last result is kept (fault: "+msg.Fault+")", true)
	}
}

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
		if m.linear && m.Focus == p || !m.linear && !m.screen().Panes[p].Empty() {
			return true
		}
	}
	return false
}

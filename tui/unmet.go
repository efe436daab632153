package tui

import (
	tea "charm.land/bubbletea/v2"

	marking "trivet/mechanics/grade"
	"trivet/mechanics/statics"
	"trivet/tui/layout"
	"trivet/tui/session"
)

// judged is what is likeliest wrong with the own answers of a solution, by name.
type judged = session.Reply[*statics.Solution, map[string]string]

// unmet is the own answer under the cursor where it is not met, else "".
func (m Model) unmet() string {
	s, ok := m.slot()
	if !ok || m.Focus != layout.Unknowns || s.Ref.Table != "answers" || m.live.Solution == nil || m.live.Stale {
		return ""
	}
	for _, a := range m.live.Solution.Answers {
		if a.Ref.Row == s.Ref.Row && !a.OK && a.Err == "" {
			return a.Query.Name
		}
	}
	return ""
}

// judge looks for the mistakes in the own answers once the cursor is on one that is
// not met. That solves the sheet many times over, and so no key waits for it.
func (m *Model) judge() tea.Cmd {
	s, of := m.live.Solution, m.live.Sheet
	if m.live.Running() || m.cells.Cell != nil || m.unmet() == "" || m.judged.Of == s {
		return nil
	}
	if of == nil {
		of = m.history.Current()
	}
	return m.judging.Ask(s, func() map[string]string { return marking.NewKey(of, s, marking.Rule{}).Unmet() })
}

// takeJudged receives what was found.
func (m *Model) takeJudged(msg judged) {
	if !m.judging.Take(msg, m.live.Solution) {
		return
	}
	m.judged = msg
	if msg.Fault != "" {
		m.say("your answers could not be checked (fault: "+msg.Fault+")", true)
	}
}

// likeliest says what is most likely wrong with the own answer under the cursor.
func (m Model) likeliest() string {
	name := m.unmet()
	if name == "" || m.judged.Of != m.live.Solution || m.judged.Value[name] == "" {
		return ""
	}
	return "your " + name + ": " + m.judged.Value[name]
}

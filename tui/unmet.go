package tui

import (
	"fmt"

	tea "charm.land/bubbletea/v2"

	marking "trivet/mechanics/grade"
	"trivet/mechanics/statics"
	"trivet/tui/layout"
)

// judged is what is likeliest wrong with the own answers of a solution, by name.
type judged struct {
	of    *statics.Solution
	says  map[string]string
	fault string
}

// unmet is the own answer under the cursor where it is not met, else "".
func (m Model) unmet() string {
	s, ok := m.slot()
	if !ok || m.focus != layout.Unknowns || s.Ref.Table != "answers" || m.live.Solution == nil || m.live.Stale {
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
	if m.unmet() == "" || m.edit != nil || m.live.running || m.judging != nil || m.judged.of == s {
		return nil
	}
	if of == nil {
		of = m.history.Current()
	}
	m.judging = s
	return func() (msg tea.Msg) {
		// A fault of ours in here must not cost what was typed and not saved.
		defer func() {
			if r := recover(); r != nil {
				msg = judged{of: s, fault: fmt.Sprint(r)}
			}
		}()
		return judged{of: s, says: marking.NewKey(of, s, marking.Rule{}).Unmet()}
	}
}

// takeJudged receives what was found; where that was overtaken, the newer solution is
// looked at next.
func (m *Model) takeJudged(msg judged) {
	m.judging = nil
	if msg.of != m.live.Solution {
		return
	}
	m.judged = msg
	if msg.fault != "" {
		m.say("your answers could not be checked (fault: "+msg.fault+")", true)
	}
}

// likeliest says what is most likely wrong with the own answer under the cursor.
func (m Model) likeliest() string {
	name := m.unmet()
	if name == "" || m.judged.of != m.live.Solution || m.judged.says[name] == "" {
		return ""
	}
	return "your " + name + ": " + m.judged.says[name]
}

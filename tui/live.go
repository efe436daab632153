package tui

import "trivet/tui/session"

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

package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/session"
)

// onSteps tells that a key now is for steps, and for nothing that stands before them.
func (m Model) onSteps() bool {
	switch m.mode() {
	case keys.OnBoard:
		return true
	case keys.OnResult:
		return m.Focus == layout.Working || m.Focus == layout.HandSolution
	}
	return false
}

// holdBack keeps a key that is meant for steps which are not there yet. One that
// leads away from them is done at once, and what was typed before it is not.
func (m *Model) holdBack(msg tea.KeyPressMsg) bool {
	if m.front.Waits() && !keys.Leaves(msg.String()) {
		m.ahead.Hold(msg)
		return true
	}
	if !m.onSteps() || !m.laying.Running() || m.worked.Of != nil {
		return false
	}
	if b, ok := keys.Find(m.mode(), msg.String()); ok && (b.Intent == keys.Cancel || b.Scope == keys.Always || b.Scope == keys.Workbench) {
		m.ahead = nil
		return false
	}
	m.ahead.Hold(msg)
	return true
}

// release does keys that waited.
func (m *Model) release(waiting session.Ahead) (cmd tea.Cmd) {
	for _, msg := range waiting {
		if m.settle(); !m.holdBack(msg) {
			cmd = tea.Batch(cmd, m.route(msg))
		}
	}
	return cmd
}

// catchUp does the keys that waited, now that the steps are there. Where they are not
// for the steps any more they are not done: a cell would take them as its text, and a
// question as its answer.
func (m *Model) catchUp() (cmd tea.Cmd) {
	s := m.live.Solution
	if s != nil && m.worked.Of == nil {
		return nil // overtaken: the newer one is laid out next
	}
	waiting := m.ahead.Take()
	if s == nil || m.worked.Of != s || m.worked.Fault != "" || !m.onSteps() {
		return nil
	}
	return m.release(waiting)
}

package tui

import (
	"slices"

	tea "charm.land/bubbletea/v2"

	"trivet/tui/keys"
	"trivet/tui/layout"
)

// mostAhead is how many keys wait for a working that is being laid out: more than
// anybody types in that time.
const mostAhead = 64

// waits tells that the keys are where steps show and the first of them are still
// being laid out.
func (m Model) waits() bool {
	there := m.board.on || m.focus == layout.Working || m.focus == layout.Route
	return there && m.laying != nil && m.worked.of == nil
}

// holdBack keeps a key that is meant for steps which are not there yet. One that
// leads away from them is done at once, and what was typed before it is not.
func (m *Model) holdBack(msg tea.KeyPressMsg) bool {
	mode := m.mode()
	if !m.waits() || mode != keys.OnBoard && mode != keys.OnResult {
		return false
	}
	if b, ok := keys.Find(mode, msg.String()); ok && (b.Intent == keys.Cancel || b.Scope == keys.Always || b.Scope == keys.Workbench) {
		m.ahead = nil
		return false
	}
	if len(m.ahead) < mostAhead {
		m.ahead = append(slices.Clip(m.ahead), msg) // a session before this one has the same
	}
	return true
}

// catchUp does the keys that waited, now that the steps are there.
func (m *Model) catchUp() (cmd tea.Cmd) {
	if m.laying != nil || m.worked.of == nil || m.worked.of != m.live.solution {
		return nil
	}
	waiting := m.ahead
	m.ahead = nil
	for _, msg := range waiting {
		cmd = tea.Batch(cmd, m.route(msg))
	}
	return cmd
}

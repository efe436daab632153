package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
)

// offerRetelling notes that a cell was changed, and says where the words or the reference answers
// are still of its old value.
func (m *Model) offerRetelling(before *sheet.Sheet, ref sheet.Ref) {
	next, says := m.outdated.Changed(m.history.Current(), before, ref)
	m.outdated = next
	m.say(says, false)
}

// retell makes the words follow the givens that were changed and removes the old reference
// answers, as one step that undo takes back.
func (m *Model) retell() tea.Cmd {
	edits, says, bad := m.outdated.Retell(m.history.Current())
	if len(edits) == 0 {
		m.say(says, bad)
		return nil
	}
	if err := m.history.Do(edits...); err != nil {
		m.say(err.Error(), true)
		return nil
	}
	m.say(says, false)
	return m.changed()
}

package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/tui/cells"
	"trivet/tui/keys"
	"trivet/units"
)

func steps(i keys.Intent) int {
	if i == keys.NudgeDown {
		return -1
	}
	return 1
}

const noNumber = "there is no number here to change. Try: put the cursor on one"

// nudgeTyped changes the number under the cursor of the cell being typed in.
func (m *Model) nudgeTyped(i keys.Intent) tea.Cmd {
	e := *m.edit
	text, at, ok := units.Nudge(e.Text, e.At, steps(i))
	if !ok || e.Slot.Does == cells.SetName {
		m.say(noNumber, false)
		return nil
	}
	e.Text, e.At = text, at
	m.edit = &e
	return m.preview()
}

// nudgeCell changes the last number of the cell under the cursor, without
// opening it. Each nudge is a step of its own that undo takes back.
func (m *Model) nudgeCell(i keys.Intent) tea.Cmd {
	s, ok := m.slot()
	if !ok || s.Does != cells.SetCell {
		m.say("this cell contains no number to change", false)
		return nil
	}
	was := m.raw(s)
	for at := len(was); at >= 0; at-- {
		text, _, ok := units.Nudge(was, at, steps(i))
		if !ok {
			continue
		}
		before := m.history.Current()
		if err := m.history.Do(change(before, s.Ref, text)); err != nil {
			m.say(err.Error(), true)
			return nil
		}
		m.offerRetelling(before, s.Ref)
		return m.changed()
	}
	m.say("this cell contains no number to change", false)
	return nil
}

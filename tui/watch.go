package tui

import (
	"time"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/overlay"
	"trivet/tui/session"
)

// WatchEvery is how often the file is looked at, and other workbenches are: often
// enough to be told before much is typed, and no work to speak of.
const WatchEvery = 10 * time.Second

// tick asks for a look at the file.
type tick struct{}

// next waits for the next look.
func (m Model) next() tea.Cmd {
	if m.file.Every <= 0 {
		return nil
	}
	return tea.Tick(m.file.Every, func(time.Time) tea.Msg { return tick{} })
}

// lookAtFile looks at the file, unless no sheet is open yet.
func (m *Model) lookAtFile() tea.Cmd {
	if m.opening != nil {
		return nil
	}
	return m.file.Look()
}

// takeSeen tells of other workbenches, and that the file was changed by somebody else.
// While something is typed or asked that waits: the next look finds it again.
func (m *Model) takeSeen(seen session.Seen) tea.Cmd {
	if seen.Beat {
		m.warn(seen.Others)
		m.troubled(session.Trouble(seen.Trouble))
	}
	if seen.Path != m.file.Path || m.file.Saving || m.cells.Cell != nil || m.ask != nil || m.naming != nil || m.opening != nil || m.palette != nil || m.setup != nil {
		return nil
	}
	says, ask := m.file.Heard(seen, m.history)
	m.say(says, true)
	if !ask {
		return nil
	}
	changes, where := sheet.Diff(m.history.Current(), seen.Sheet), "on disk"
	if m.history.Modified() {
		where = "on disk and here"
	}
	m.ask = &question{
		Question: overlay.Question{
			Text: m.title() + " was changed " + where + ": " + overlay.Differ(changes) + ". Read it anew?", More: overlay.Changes(changes, "here", "on disk"),
		},
		yes: func(m *Model) tea.Cmd {
			m.history.Replace(seen.Sheet)
			m.history.MarkSaved()
			reload := m.file.Reload(seen)
			m.say("reloaded; ctrl+z returns to the sheet as it was", false)
			return tea.Batch(m.changed(), reload)
		},
		no: func(m *Model) tea.Cmd {
			m.say("kept as it is here; saving asks before overwriting the other", false)
			return nil
		},
	}
	return nil
}

package tui

import (
	"time"

	tea "charm.land/bubbletea/v2"
)

// settleAfter is when a terminal that has changed its size is drawn anew: longer
// than a hand takes from one size to the next while it draws a window.
const settleAfter = 150 * time.Millisecond

// sizing is what a terminal's size has been through.
type sizing struct {
	settle time.Duration // from a change to all drawn anew; 0: it is not
	times  int           // that one came
}

// sized comes a moment after a change of size.
type sized struct{ times int }

// resized takes a new size. What is on its way to the terminal just then is drawn
// for the old one, and may have moved lines: so all is drawn once more when the
// terminal has settled.
func (m *Model) resized(msg tea.WindowSizeMsg) tea.Cmd {
	m.speech.w, m.speech.h = msg.Width, msg.Height
	if m.linear {
		return nil
	}
	first := m.sizing.times == 0
	m.sizing.times++
	m.resize(msg.Width, msg.Height)
	if first || m.sizing.settle == 0 {
		return nil
	}
	now := sized{m.sizing.times}
	return tea.Tick(m.sizing.settle, func(time.Time) tea.Msg { return now })
}

// settled draws all anew, unless another size has come.
func (m *Model) settled(msg sized) tea.Cmd {
	if msg.times != m.sizing.times {
		return nil
	}
	return tea.ClearScreen
}

package tui

import (
	"time"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"
)

// settleAfter is when a terminal that has changed its size is drawn anew: longer
// than a hand takes from one size to the next while it draws a window.
const settleAfter = 150 * time.Millisecond

// noMargins lets the whole screen scroll again. Bubble Tea sets margins where it
// scrolls lines, and then margins as high as the screen; where those come to a screen
// that has another height by then, they stay, and what is drawn across them moves
// lines, drawn anew or not. Taking them away moves the cursor, so it is put back.
var noMargins = ansi.SaveCursor + ansi.SetTopBottomMargins(0, 0) + ansi.RestoreCursor

// sizing is what a terminal's size has been through.
type sizing struct {
	settle time.Duration // from a change to all drawn anew; 0: it is not
	times  int           // that one came
}

// sized comes a moment after a change of size.
type sized struct{ times int }

// resized takes a new size. What is on its way to the terminal just then is drawn
// for the old one, and may have moved lines or left margins: after it these are taken
// away, and all is drawn once more when the terminal has settled. The two are apart,
// for Bubble Tea has no order between what is sent as it is and what is drawn.
func (m *Model) resized(msg tea.WindowSizeMsg) tea.Cmd {
	m.speech.W = msg.Width
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
	return tea.Sequence(tea.Raw(noMargins), tea.Tick(m.sizing.settle, func(time.Time) tea.Msg { return now }))
}

// settled draws all anew, unless another size has come.
func (m *Model) settled(msg sized) tea.Cmd {
	if msg.times != m.sizing.times {
		return nil
	}
	return tea.ClearScreen
}

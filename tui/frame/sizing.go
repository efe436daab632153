package frame

import (
	"time"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"
)

// SettleAfter is when a terminal that has changed its size is drawn anew: longer
// than a hand takes from one size to the next while it draws a window.
const SettleAfter = 150 * time.Millisecond

// noMargins lets the whole screen scroll again. Bubble Tea sets margins where it
// scrolls lines, and then margins as high as the screen; where those come to a screen
// that has another height by then, they stay, and what is drawn across them moves
// lines, drawn anew or not. Taking them away moves the cursor, so it is put back.
var noMargins = ansi.SaveCursor + ansi.SetTopBottomMargins(0, 0) + ansi.RestoreCursor

// Sizing is what a terminal's size has been through.
type Sizing struct {
	Settle time.Duration // from a change to all drawn anew; 0: it is not
	times  int           // that one came
}

// Sized comes a moment after a change of size.
type Sized struct{ times int }

// Changed takes a change of size. What is on its way to the terminal just then is drawn
// for the old one, and may have moved lines or left margins: after it these are taken
// away, and all is drawn once more when the terminal has settled. The two are apart,
// for Bubble Tea has no order between what is sent as it is and what is drawn.
func (s *Sizing) Changed() tea.Cmd {
	s.times++
	if s.times == 1 || s.Settle == 0 {
		return nil
	}
	now := Sized{s.times}
	return tea.Sequence(tea.Raw(noMargins), tea.Tick(s.Settle, func(time.Time) tea.Msg { return now }))
}

// Settled draws all anew, unless another size has come.
func (s *Sizing) Settled(msg Sized) tea.Cmd {
	if msg.times != s.times {
		return nil
	}
	return tea.ClearScreen
}

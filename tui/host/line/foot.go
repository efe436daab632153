package line

import (
	"github.com/charmbracelet/x/ansi"

	"trivet/tui/grid"
	"trivet/tui/theme"
)

// Under puts the host's own last line under a frame, on a screen of w by h.
func Under(f grid.Frame, w, h int, t Terminal, text string) grid.Frame {
	if f.W != w || f.H != h-1 { // it is drawn for another size still
		g := grid.New(w, h-1)
		g.All().Copy(f.Grid)
		f.Grid = g
	}
	f.Grow(1)
	f.All().Text(0, h-1, theme.Selected, grid.Fit(" "+text, w))
	if t.Set == theme.Seven {
		f.Seven()
	}
	return f
}

// Enter and Depart are what a terminal is told before the first frame and after
// the last: the other screen, no cursor, marks round what is pasted.
const (
	Enter  = ansi.SetModeAltScreenSaveCursor + ansi.ResetModeTextCursorEnable + ansi.SetModeBracketedPaste
	Depart = ansi.ResetStyle + ansi.ResetModeBracketedPaste + ansi.SetModeTextCursorEnable + ansi.ResetModeAltScreenSaveCursor
)

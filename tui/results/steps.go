package results

import (
	"fmt"

	"trivet/mechanics/working"
	"trivet/tui/layout"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// MaxLines is up to how long a working is written out in a pane: whoever needs
// more of it has the board and the page. It bounds what a keystroke may wait for.
const MaxLines = 1500

// Steps are the working of a solution; nil where it is not laid out yet.
type Steps struct {
	Working *working.Working
	written []Pane // as the panes that showed it when it was asked for want it
}

// stepPanes are the panes that show steps.
var stepPanes = [...]layout.Pane{layout.Working, layout.HandSolution}

// Widths are how wide the texts of the panes that show steps are, 0 where one does not show, and
// in which characters.
type Widths struct {
	of    [len(stepPanes)]int
	ascii bool
}

// StepWidths are the widths on a screen.
func StepWidths(s *layout.Screen, ascii bool) Widths {
	w := Widths{ascii: ascii}
	for i, p := range stepPanes {
		w.of[i] = max(s.Panes[p].Dx()-2, 0)
	}
	return w
}

// Any tells that one of them shows.
func (w Widths) Any() bool { return w.of != [len(stepPanes)]int{} }

// Lay writes the texts that are wanted of a working, away from the screen: a long
// one takes longer than a keystroke may.
func Lay(k *working.Working, wanted Widths) Steps {
	s := Steps{Working: k}
	for i, w := range wanted.of {
		if w > 0 {
			of := written{pane: stepPanes[i], w: w, ascii: wanted.ascii}
			s.written = append(s.written, Pane{Lines: s.lines(of), of: of})
		}
	}
	return s
}

// All writes the steps of the working to a width.
func (s *Steps) All(w int, ascii bool) text.Lines {
	return s.lines(written{pane: layout.Working, w: w, ascii: ascii})
}

// on gives the text of a pane, as it was written with the working where that fits.
func (s *Steps) on(p layout.Pane, ascii bool, w int) text.Lines {
	of := written{pane: p, w: w, ascii: ascii}
	for _, t := range s.written {
		if t.of == of {
			return t.Lines
		}
	}
	return s.lines(of)
}

// lines writes the steps of a working one below the other: all of them, or those
// of the hand solution.
func (s *Steps) lines(of written) text.Lines {
	var d text.Lines
	if s.Working == nil {
		d.Plain(theme.Dim, "The working is being written ...")
		return d
	}
	steps := s.Working.Steps
	if of.pane == layout.HandSolution {
		if steps = s.Working.HandSteps(); len(steps) == 0 {
			d.Wrapped(theme.Plain, "", s.Working.NoHandSolution(), of.w)
			return d
		}
	} else {
		d.Wrapped(theme.Dim, "", working.Rounding, of.w)
	}
	for i := range steps {
		if len(d) > MaxLines {
			d.Add()
			d.Wrapped(theme.Dim, "", fmt.Sprintf("... and %d more steps: the board (f5) and the page (ctrl+p) have them all", len(steps)-i), of.w)
			break
		}
		title := steps[i].Title
		if kind := steps[i].Kind; kind != working.Checks && kind != working.Answers { // as on a page
			title = fmt.Sprintf("%d  %s", i+1, title)
		}
		d.Heading(title)
		d.Laid(text.Layout(of.w, 0, of.ascii), steps[i].Body)
	}
	return d
}

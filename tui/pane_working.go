package tui

import (
	"fmt"

	"trivet/mechanics/working"
	"trivet/tui/layout"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// maxLines is up to how long a working is written out in a pane: whoever needs
// more of it has the board and the page. It bounds what a keystroke may wait for.
const maxLines = 1500

// stepPanes is how wide the panes that show steps are, 0 where one does not.
type stepPanes struct {
	working, handSolution int
	plain                 bool
}

func (m Model) stepPanes() stepPanes {
	wide := func(p layout.Pane) int { return max(m.screen().Panes[p].Dx()-2, 0) }
	return stepPanes{wide(layout.Working), wide(layout.HandSolution), m.theme.Glyphs.ASCII}
}

// write writes the texts that are wanted of a working, away from the screen: a long
// one takes longer than a keystroke may.
func (k *stepwise) write(wanted stepPanes) {
	for n, w := range []int{wanted.working, wanted.handSolution} {
		if w > 0 {
			p := []layout.Pane{layout.Working, layout.HandSolution}[n]
			k.written[n] = shownText{paneText: k.document(p, wanted.plain, w), of: textOf{w: w, ascii: wanted.plain}}
		}
	}
}

// on gives the text of a pane, as it was written with the working where that fits.
func (k *stepwise) on(p layout.Pane, plain bool, w int) text.Lines {
	n := 0
	if p == layout.HandSolution {
		n = 1
	}
	if t := k.written[n]; t.of.w == w && t.of.ascii == plain {
		return t.paneText
	}
	return k.document(p, plain, w)
}

// document writes the steps of a working one below the other: all of them, or those
// of the hand solution.
func (k *stepwise) document(p layout.Pane, plain bool, w int) text.Lines {
	var d text.Lines
	switch {
	case k.working == nil:
		d.Plain(theme.Dim, "The working is being written ...")
		return d
	}
	steps := k.working.Steps
	if p == layout.HandSolution {
		if steps = k.working.HandSteps(); len(steps) == 0 {
			d.Wrapped(theme.Plain, "", k.working.NoHandSolution(), w)
			return d
		}
	} else {
		d.Wrapped(theme.Dim, "", working.Rounding, w)
	}
	for i := range steps {
		if len(d) > maxLines {
			d.Add()
			d.Wrapped(theme.Dim, "", fmt.Sprintf("... and %d more steps: the board (f5) and the page (ctrl+p) have them all", len(steps)-i), w)
			break
		}
		title := steps[i].Title
		if kind := steps[i].Kind; kind != working.Checks && kind != working.Answers { // as on a page
			title = fmt.Sprintf("%d  %s", i+1, title)
		}
		d.Heading(title)
		d.Laid(text.Layout(w, 0, plain), steps[i].Body)
	}
	return d
}

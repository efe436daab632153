package tui

import (
	"sync/atomic"

	"trivet/tui/layout"
)

// told keeps the lines of the panes of one result once they have been read: a
// message that does not change the result would write some hundred anew to say
// one. It goes with its result, so that it is never of another. Models of one
// result may be read at the same time, so nothing is locked: at worst both write.
type told struct {
	panes [layout.Panes]atomic.Pointer[toldPane]
}

type toldPane struct {
	of    any // the result or the working that the lines are of, by its pointer
	lines []string
}

// of gives a pane's lines; they are never written to.
func (t *told) of(p layout.Pane, of any, write func() []string) []string {
	if t == nil {
		return write()
	}
	if was := t.panes[p].Load(); was != nil && was.of == of {
		return was.lines
	}
	lines := write()
	lines = lines[:len(lines):len(lines)]
	t.panes[p].Store(&toldPane{of, lines})
	return lines
}

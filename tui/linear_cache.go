package tui

import (
	"sync/atomic"

	"trivet/tui/layout"
)

// lineCache keeps the lines of the panes of one result once they have been read: a
// message that does not change the result would write some hundred anew to say
// one. It goes with its result, so that it is never of another. Models of one
// result may be read at the same time, so nothing is locked: at worst both write.
type lineCache struct {
	panes [layout.Panes]atomic.Pointer[cachedPane]
}

type cachedPane struct {
	of    any // the result or the working that the lines are of, by its pointer
	lines []string
}

// of gives a pane's lines; they are never written to.
func (c *lineCache) of(p layout.Pane, of any, write func() []string) []string {
	if c == nil {
		return write()
	}
	if was := c.panes[p].Load(); was != nil && was.of == of {
		return was.lines
	}
	lines := write()
	lines = lines[:len(lines):len(lines)]
	c.panes[p].Store(&cachedPane{of, lines})
	return lines
}

package tui

import (
	"image"

	"trivet/mechanics/statics"
	"trivet/tui/cells"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/results"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// shownText is what a result shows.
type shownText struct {
	paneText text.Lines
	wide     int // its longest line
	of       textOf
}

// textOf is what a text was written of: a result, of which the effect of the ± may come
// later, or the working; to a width, in which characters.
type textOf struct {
	w       int
	ascii   bool
	result  int
	first   bool // of the results that show
	worked  *statics.Solution
	weighed *statics.Solution
}

// compose makes the text of a result where it is old. Only those that show are
// written: a keystroke waits for it.
func (m *Model) compose(p layout.Pane, w int) {
	of := textOf{w: w, ascii: m.theme.Glyphs.ASCII, result: m.resulted}
	switch {
	case m.live.Solution == nil:
		of.first = m.isFirst(p)
	case p == layout.Working || p == layout.HandSolution:
		of.result, of.worked = 0, m.worked.Of
	case p == layout.Ranges || p == layout.Limits:
		of.weighed = m.live.Weighed.Of
	}
	t := &m.texts[p]
	if t.of == of {
		return
	}
	m.count.texts++
	t.of = of
	switch l := m.live; {
	case l.Solution == nil:
		t.paneText = m.noResult(of.first, w)
	case p == layout.System:
		t.paneText = results.System(&l.Result, m.theme.Glyphs, w)
	case p == layout.Checks:
		t.paneText = results.Checks(&l.Result, w)
	case p == layout.Ranges:
		t.paneText = results.Ranges(&l.Result, w)
	case p == layout.Limits:
		t.paneText = results.Limits(&l.Result, w)
	case m.worked.Fault != "":
		t.paneText = nil
		t.paneText.Wrapped(theme.Bad, "! ", "the working could not be written (fault: "+m.worked.Fault+")", w)
	default:
		t.paneText = m.worked.Value.on(p, of.ascii, w)
	}
	t.wide = t.paneText.Width()
	m.read[p].Find(t.paneText)
}

// noResult says that there is none yet; what is wrong stands in the first of the results
// that show, and not in each of them.
func (m *Model) noResult(first bool, w int) (lines text.Lines) {
	lines.Plain(theme.Dim, "No result yet.")
	if errs := m.live.Faults(); first && len(errs) > 0 {
		lines.Wrapped(theme.Bad, "! ", cells.Located(errs[0]), w)
	} else if says := m.live.Unconnected(); first && says != "" {
		lines.Wrapped(theme.Warn, "", says, w)
	}
	return lines
}

// isFirst tells the first of the results that show.
func (m *Model) isFirst(p layout.Pane) bool {
	for q, r := range m.screen().Panes {
		if layout.Pane(q) < p && layout.Pane(q).Result() && !r.Empty() {
			return false
		}
	}
	return true
}

// isOld tells that a pane shows what followed from an earlier sheet.
func (m Model) isOld(p layout.Pane) bool {
	steps := p == layout.Working || p == layout.HandSolution
	return m.live.Stale || steps && m.worked.Of != nil && m.worked.Of != m.live.Solution
}

// drawResult shows a result, and the cursor where it has the keys.
func (m Model) drawResult(c grid.Canvas, p layout.Pane) {
	t, v := &m.texts[p], m.read[p]
	in := c.In(image.Rect(1, 0, c.W(), c.H()))
	w := c.W() - 2
	t.paneText.Draw(in, v.Scroll, w, m.isOld(p))
	y := v.Line - v.Scroll.Y
	if p != m.focus || v.At == nil || y < 0 || y >= c.H() {
		return
	}
	n := t.paneText.Number(v.Line, v.Span)
	x := n.From - t.paneText.Shift(v.Line, v.Scroll.X, w)
	in.Paint(x, y, n.To-n.From, theme.Selected)
	// The mark stands before the number where there is room, else at the line's edge:
	// a terminal that shows no reversed text shows it all the same.
	if n.Blank && x > 0 {
		in.Set(x-1, y, m.theme.Glyphs.Row, theme.RuleFocus)
	} else {
		c.Set(0, y, m.theme.Glyphs.Row, theme.RuleFocus)
	}
}

// turnResult moves the cursor of the result that has the keys.
func (m *Model) turnResult(i keys.Intent) bool {
	p := m.focus
	r := m.screen().Panes[p]
	v := m.read[p]
	ok := v.Turn(m.texts[p].paneText, i, r.Dx()-2, r.Dy()-1)
	m.read[p] = v
	return ok
}

// pointTo puts the cursor of a result on the number at a place of its pane.
func (m *Model) pointTo(p layout.Pane, at image.Point) {
	v, d := &m.read[p], m.texts[p].paneText
	y := at.Y - layout.Frame + v.Scroll.Y
	if at.Y < layout.Frame || y >= len(d) {
		return
	}
	w := m.screen().Panes[p].Dx() - 2
	x := at.X - 1
	if by := d.Shift(y, v.Scroll.X, w); by > 0 && x < d.HeadWidth(y, w) {
		return
	} else {
		x += by
	}
	for _, n := range d.Numbers(y) {
		if x >= n.From && x < n.To {
			v.Set(d, y, n.Span)
		}
	}
}

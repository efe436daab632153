package tui

import (
	"image"

	"trivet/mechanics/statics"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/results"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// text is what a result shows, written to a width.
type shownText struct {
	paneText text.Lines
	w        int
	wide     int               // its longest line
	old      bool              // the sheet or its result has changed since
	of       *statics.Solution // of a working: whose, and in which characters
	plain    bool
}

// compose makes the text of a result where it is old. Only those that show are
// written: a keystroke waits for it.
func (m *Model) compose(p layout.Pane, w int) {
	t := &m.texts[p]
	if m.live.Solution == nil {
		m.composeNone(p, w)
		return
	}
	if p == layout.Working || p == layout.HandSolution {
		if t.w == w && t.of == m.worked.of {
			return
		}
	} else if t.w == w && !t.old {
		return
	}
	*t = shownText{w: w}
	switch l := m.live; {
	case p == layout.System:
		t.paneText = results.System(&l.Result, m.theme.Glyphs, w)
	case p == layout.Checks:
		t.paneText = results.Checks(&l.Result, w)
	case p == layout.Ranges:
		t.paneText = results.Ranges(&l.Result, w)
	case p == layout.Limits:
		t.paneText = results.Limits(&l.Result, w)
	default:
		t.of = m.worked.of
		t.paneText = m.worked.on(p, m.theme.Glyphs.ASCII, w)
	}
	t.wide = t.paneText.Width()
	m.read[p].Find(t.paneText)
}

// composeNone says that there is no result yet; what is wrong stands in the first
// of the results that show, and not in each of them.
func (m *Model) composeNone(p layout.Pane, w int) {
	t := &m.texts[p]
	*t = shownText{w: w, old: true}
	t.paneText.Plain(theme.Dim, "No result yet.")
	first := true
	for q, r := range m.screen().Panes {
		first = first && !(layout.Pane(q) < p && layout.Pane(q).Result() && !r.Empty())
	}
	if errs := m.live.Errs; first && len(errs) > 0 {
		t.paneText.Wrapped(theme.Bad, "! ", m.live.place(errs[0]), w)
	}
	t.wide = t.paneText.Width()
	m.read[p].Find(t.paneText)
}

// isOld tells that a pane shows what followed from an earlier sheet.
func (m Model) isOld(p layout.Pane) bool {
	steps := p == layout.Working || p == layout.HandSolution
	return m.live.Stale || steps && m.worked.of != nil && m.worked.of != m.live.Solution
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
	m.fit()
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
			m.explain()
		}
	}
}

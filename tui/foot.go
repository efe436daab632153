package tui

import (
	"fmt"
	"image"
	"math"
	"slices"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/tui/cells"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/theme"
)

// drawFoot shows the cell in full, what is wrong with it under the place where
// it is wrong, and the keys.
func (m Model) drawFoot(c grid.Canvas) {
	keysLine := c.In(image.Rect(0, 2, c.W(), 3))
	switch {
	case m.ask != nil:
		c.Text(1, 0, theme.Warn, m.ask.text)
	case m.choosing: // the list asks
	case m.naming != nil:
		m.drawLine(c, m.forPage.longPrompt(), *m.naming)
	case m.search.on:
		m.drawLine(c, "find: ", m.search.Line)
	case m.palette != nil:
		m.drawLine(c, "command: ", m.palette.Line)
	case m.help != nil:
	case m.setup != nil:
		m.drawSetting(c)
	case m.edit != nil:
		if m.drawEdit(c) {
			return
		}
	default:
		m.drawCell(c)
	}
	if m.note.text != "" {
		in := c.In(image.Rect(0, 1, c.W(), 2))
		in.Fill(' ', theme.Plain)
		m.drawWord(in, 1)
	}
	m.drawHints(keysLine)
}

// drawCell shows the cell under the cursor and the first thing that is wrong,
// its own before others'.
func (m Model) drawCell(c grid.Canvas) {
	switch m.focus {
	case layout.Picture:
		c.Text(1, 0, theme.Dim, m.cam.words(m.live.Problem))
	default:
		if m.focus.Result() {
			m.drawSays(c)
			break
		}
		if s, ok := m.slot(); ok {
			name := m.tables[m.focus].Head(m.at[m.focus].Row, m.at[m.focus].Col)
			if s.Does == cells.SetCell {
				name = s.Label()
			}
			m.drawSlot(c, name, s)
		}
	}
	if next := m.made.NextStep(m.focus); next != "" && m.focus < layout.System {
		c.Text(1, 1, theme.Warn, grid.Fit(next, c.W()-2))
		return
	}
	if says := m.likeliest(); says != "" {
		c.Text(1, 1, theme.Warn, grid.Fit(says, c.W()-2))
		return
	}
	errs := m.live.Faults()
	if len(errs) == 0 {
		m.drawNote(c)
		return
	}
	shown := errs[0]
	if s, ok := m.slot(); ok {
		if e, own := m.live.ErrorOf(s.Ref); own && s.Bad {
			shown = e
		}
	}
	if shown.Ref.Key == "" && shown.Span == (diag.Span{}) && m.drawCause(c, shown) {
		return
	}
	text := located(shown)
	if n := len(errs); n > 1 {
		text = fmt.Sprintf("1 of %d: %s", n, text)
	}
	c.Text(1, 1, theme.Bad, grid.Fit("! "+text, c.W()-2))
}

// drawCause shows what is typed and read by nothing in place of an error that something
// is missing: it most likely stands there, in a table or under a key that is unknown.
func (m Model) drawCause(c grid.Canvas, missing problem.Error) bool {
	if m.live.Latest == nil {
		return false
	}
	unread := m.live.Latest.Unread
	i := slices.IndexFunc(unread, func(e problem.Error) bool {
		return e.Ref.Row == "" || e.Ref.Table == missing.Ref.Table && e.Ref.Row == missing.Ref.Row
	})
	if i >= 0 {
		c.Text(1, 1, theme.Warn, grid.Fit("? "+located(unread[i]), c.W()-2))
	}
	return i >= 0
}

// drawNote shows what is read by nothing, or reads and is most likely not what was
// meant, that of the row under the cursor before others'.
func (m Model) drawNote(c grid.Canvas) {
	if m.live.Latest == nil {
		return
	}
	notes := m.live.Latest.Notes()
	if len(notes) == 0 {
		c.Text(1, 1, theme.Warn, grid.Fit(m.live.Unconnected(), c.W()-2))
		return
	}
	here := m.selected()
	shown := notes[max(0, slices.IndexFunc(notes, func(e problem.Error) bool { return e.Ref.Table == here.Table && e.Ref.Row == here.Row }))]
	text := located(shown)
	if n := len(notes); n > 1 {
		text = fmt.Sprintf("1 of %d: %s", n, text)
	}
	c.Text(1, 1, theme.Warn, grid.Fit("? "+text, c.W()-2))
}

// drawSlot shows a cell that is not typed in: what stands in it, or what is taken
// where it is left out, and what follows from its row.
func (m Model) drawSlot(c grid.Canvas, name string, s cells.Slot) {
	if name == "" { // its row has no such cell
		name = m.selected().Row
	}
	x := c.Text(1, 0, theme.Name, name+": ")
	if s.Does == cells.SetCell && s.Text != "" && m.raw(s) == "" {
		x = c.Text(x, 0, theme.Dim, s.Text+" (left out)")
	} else {
		x = c.Text(x, 0, theme.Plain, s.Text)
	}
	if s.Does == cells.Nothing && s.Text != "" && slices.ContainsFunc(m.follows, func(f cells.Fact) bool { return f.Value == s.Text }) {
		return // it is what follows
	}
	follows := cells.ShownFacts(m.follows)
	if s.Text == "" {
		follows = strings.TrimLeft(follows, " ")
	}
	c.Text(x, 0, theme.Computed, follows)
}

// words tells from where the picture is seen.
func (c camera) words(p *problem.Problem) string {
	s := "seen " + c.name(p)
	if c.from == keys.ViewSpace && (p == nil || !p.Planar) {
		s += fmt.Sprintf(", turned %.0f°, from %.0f° above", c.turn*180/math.Pi, c.tilt*180/math.Pi)
	}
	if c.zoom != 1 {
		s += fmt.Sprintf(", %.2g times", c.zoom)
	}
	return s
}

// drawHints shows the keys that hold now, as many as fit.
func (m Model) drawHints(c grid.Canvas) {
	x := 1
	other := "f1" // of the two keys of the help one is enough
	if m.edit != nil || m.mode() == keys.OnHelp {
		other = ""
	} else if m.mode() == keys.OnCells && m.takesUnknown() {
		other = unknownMark
	}
	for _, s := range m.mode().Scopes() {
		for _, b := range keys.Table() {
			if b.Scope != s || b.Hint == "" || !m.has(b) || b.Keys[0] == other {
				continue
			}
			key := b.Short()
			if x+len(key)+len(b.Hint)+1 >= c.W() {
				continue
			}
			x = c.Text(x, 0, theme.Key, key)
			x = c.Text(x+1, 0, theme.Plain, b.Hint) + 2
		}
	}
}

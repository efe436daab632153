package tui

import (
	"cmp"
	"fmt"
	"image"
	"math"
	"slices"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/tui/cells"
	"trivet/tui/edit"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// drawFoot shows at the bottom of the screen the cell in full, what is wrong with it or
// what it takes, and what can be done here. A message is never cut: one of two lines has
// that of the keys too, and a longer one covers what stands above.
func (m Model) drawFoot(all grid.Canvas) {
	w := all.W() - 2
	first, says := m.footSays(w)
	rows := max(layout.Foot, first+len(says))
	c := all.In(image.Rect(0, max(all.H()-rows, 0), all.W(), all.H()))
	c.Fill(' ', theme.Plain)
	if first > 0 {
		m.drawFirst(c)
	}
	says.Draw(c.In(image.Rect(1, first, all.W(), c.H())), text.Offset{}, w, false)
	if first+len(says) < rows {
		m.drawHints(c.In(image.Rect(0, rows-1, c.W(), rows)))
	}
}

// drawFirst draws the line that is typed in, or the cell under the cursor.
func (m Model) drawFirst(c grid.Canvas) {
	switch {
	case m.ask != nil:
		c.Text(1, 0, theme.Warn, grid.Fit(m.ask.text, c.W()-2))
	case m.choosing, m.listing: // the list asks
	case m.naming != nil:
		m.drawLine(c, m.forPage.longPrompt(), *m.naming)
	case m.search.on:
		m.drawLine(c, "find: ", m.search.Line)
	case m.palette != nil:
		m.drawLine(c, "command: ", m.palette.Line)
	case m.help != nil:
	case m.setup != nil:
		m.drawSetting(c)
	case m.cells.Cell != nil:
		m.drawLine(c, m.cells.Cell.Slot.Label()+": ", m.cells.Cell.Line)
	case m.focus == layout.Picture:
		c.Text(1, 0, theme.Dim, grid.Fit(m.cam.words(m.live.Problem), c.W()-2))
	default:
		if s, ok := m.slot(); ok {
			m.drawSlot(c, s)
		}
	}
}

// footSays gives what stands below that line, in lines of a width, and where it begins:
// 0 where there is no such line.
func (m Model) footSays(w int) (first int, says text.Lines) {
	wrapped := func(look grid.Style, mark, s string) (int, text.Lines) {
		var d text.Lines
		d.Wrapped(look, mark, s, w)
		return 1, d
	}
	between := m.ask != nil || m.choosing || m.listing || m.naming != nil || m.search.on || m.palette != nil || m.help != nil || m.setup != nil
	switch {
	case m.note.text != "" && m.note.bad:
		return wrapped(theme.Bad, "", m.note.text)
	case m.note.text != "":
		return wrapped(theme.Plain, "", m.note.text)
	case m.ask != nil && grid.Width(m.ask.text) > w:
		_, says = wrapped(theme.Warn, "", m.ask.text)
		return 0, says
	case between:
		return 1, nil
	case m.cells.Cell != nil:
		if says = m.cells.Says(&m.live.Result, w); says != nil {
			return 1, says
		}
		return wrapped(theme.Dim, "", takes(m.cells.Cell.Slot))
	case m.focus.Result():
		look, s := theme.Plain, m.says
		if s == "" {
			look, s = theme.Dim, "line "+ordinal(m.read[m.focus].Scroll.Y+1, len(m.texts[m.focus].paneText))
		}
		_, says = wrapped(look, "", s)
		if len(says) == 1 {
			if look, mark, s := m.firstWrong(); s != "" {
				says.Wrapped(look, mark, s, w)
			}
		}
		return 0, says
	}
	if look, mark, s := m.firstWrong(); s != "" {
		return wrapped(look, mark, s)
	}
	if s, ok := m.slot(); ok {
		if facts := m.facts(s); facts != "" && m.slotWidth(s)+grid.Width(facts) > w {
			return wrapped(theme.Computed, "", strings.TrimLeft(facts, " "))
		}
		return wrapped(theme.Dim, "", takes(s))
	}
	return 1, nil
}

// takes says what a cell takes, from the table of keys.
func takes(s cells.Slot) string {
	if s.Does != cells.SetCell {
		return ""
	}
	for _, t := range problem.Tables() {
		if t.Name != s.Ref.Table {
			continue
		}
		key := cmp.Or(s.Ref.Key, t.Plain)
		if t.Fixed {
			key = s.Ref.Row
		}
		if k, ok := t.Key(key); ok {
			return k.Says + ". Example: " + k.Example
		}
	}
	return ""
}

// firstWrong is the first thing that is wrong, of the cell under the cursor before others', or
// what comes next; empty where all is well. mark stands before it.
func (m Model) firstWrong() (look grid.Style, mark, says string) {
	if next := m.cells.Made.NextStep(m.focus); next != "" && m.focus < layout.System {
		return theme.Warn, "", next
	}
	if says := m.likeliest(); says != "" {
		return theme.Warn, "", says
	}
	errs := m.live.Faults()
	if len(errs) == 0 {
		return theme.Warn, "? ", m.doubt()
	}
	shown := errs[0]
	if s, ok := m.slot(); ok {
		if e, own := m.live.ErrorOf(s.Ref); own && s.Bad {
			shown = e
		}
	}
	if shown.Ref.Key == "" && shown.Span == (diag.Span{}) {
		if cause := m.cause(shown); cause != "" {
			return theme.Warn, "? ", cause
		}
	}
	says = cells.Located(shown)
	if n := len(errs); n > 1 {
		says = fmt.Sprintf("1 of %d: %s", n, says)
	}
	return theme.Bad, "! ", says
}

// cause is what is typed and read by nothing, in place of an error that something is
// missing: it most likely stands there, in a table or under a key that is unknown.
func (m Model) cause(missing problem.Error) string {
	if m.live.Latest == nil {
		return ""
	}
	for _, e := range m.live.Latest.Unread {
		if e.Ref.Row == "" || e.Ref.Table == missing.Ref.Table && e.Ref.Row == missing.Ref.Row {
			return cells.Located(e)
		}
	}
	return ""
}

// doubt is what is read by nothing, or reads and is most likely not what was meant,
// that of the row under the cursor before others'.
func (m Model) doubt() string {
	if m.live.Latest == nil {
		return ""
	}
	notes := m.live.Latest.Notes()
	if len(notes) == 0 {
		return m.live.Unconnected()
	}
	here := m.selected()
	shown := notes[max(0, slices.IndexFunc(notes, func(e problem.Error) bool { return e.Ref.Table == here.Table && e.Ref.Row == here.Row }))]
	says := cells.Located(shown)
	if n := len(notes); n > 1 {
		says = fmt.Sprintf("1 of %d: %s", n, says)
	}
	return says
}

// slotName names the cell under the cursor.
func (m Model) slotName(s cells.Slot) string {
	if s.Does == cells.SetCell {
		return s.Label()
	}
	if name := m.cells.Tables[m.focus].Head(m.cells.At[m.focus].Row, m.cells.At[m.focus].Col); name != "" {
		return name
	}
	return m.selected().Row // its row has no such cell
}

// leftOut tells that a cell shows what is taken where it is left out.
func (m Model) leftOut(s cells.Slot) bool {
	return s.Does == cells.SetCell && s.Text != "" && m.raw(s) == ""
}

// slotWidth is how wide a cell's name and text are in the foot.
func (m Model) slotWidth(s cells.Slot) int {
	w := grid.Width(m.slotName(s)) + 2 + grid.Width(s.Text)
	if m.leftOut(s) {
		w += len(leftOut)
	}
	return w
}

const leftOut = " (left out)"

// facts are what follows from the row, behind a cell.
func (m Model) facts(s cells.Slot) string {
	if s.Does == cells.Nothing && s.Text != "" && slices.ContainsFunc(m.follows, func(f cells.Fact) bool { return f.Value == s.Text }) {
		return "" // it is what follows
	}
	facts := cells.ShownFacts(m.follows)
	if s.Text == "" {
		facts = strings.TrimLeft(facts, " ")
	}
	return facts
}

// drawSlot shows a cell that is not typed in: what stands in it, or what is taken
// where it is left out, and what follows from its row.
func (m Model) drawSlot(c grid.Canvas, s cells.Slot) {
	x := c.Text(1, 0, theme.Name, m.slotName(s)+": ")
	text, look := s.Text, theme.Plain
	if m.leftOut(s) {
		text, look = text+leftOut, theme.Dim
	}
	x = c.Text(x, 0, look, grid.Fit(text, min(grid.Width(text), c.W()-x-1)))
	if facts := m.facts(s); x+grid.Width(facts) < c.W() {
		c.Text(x, 0, theme.Computed, facts)
	}
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

// How many things to do the last line names, and how many of those that the place alone
// has: more are not read.
const mostHints, ownHints = 5, 3

type hint struct{ key, does string }

// hints are the things to do here: first what is special to the place, then saving where
// something is unsaved, last where help is.
func (m Model) hints() (list []hint) {
	mode := m.mode()
	if s, ok := m.slot(); ok && mode == keys.OnCells && s.Does != cells.Nothing && !m.watches {
		list = append(list, hint{"type", "replace"})
		if m.cells.TakesUnknown(m.focus) {
			list = append(list, hint{edit.Unknown, "unknown"})
		}
	}
	var rest, more, help []hint
	for n, scope := range mode.Scopes() {
		own := 0
		for _, b := range keys.Table() {
			if b.Scope != scope || b.Hint == "" || !m.has(b) {
				continue
			}
			h := hint{b.Short(), b.Hint}
			switch {
			case b.Intent == keys.Help: // of its two keys one is enough
				help = []hint{h}
			case b.Intent == keys.Save && mode == keys.OnCells && m.history.Modified():
				rest = append([]hint{h}, rest...)
			case b.Intent == keys.Save || b.Intent == keys.ToBoard && m.live.Solution == nil:
			case n > 0:
				rest = append(rest, h)
			case own < ownHints:
				list = append(list, h)
				own++
			default:
				more = append(more, h)
			}
		}
	}
	list = append(append(list, rest...), more...)
	return append(list[:min(len(list), mostHints-len(help))], help...)
}

// drawHints says what can be done here, in a few words.
func (m Model) drawHints(c grid.Canvas) {
	x := 1
	for _, h := range m.hints() {
		if x+grid.Width(h.key)+2+grid.Width(h.does) < c.W() {
			x = c.Text(x, 0, theme.Key, h.key)
			x = c.Text(x, 0, theme.Dim, ": "+h.does) + 3
		}
	}
}

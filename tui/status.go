package tui

import (
	"fmt"
	"image"
	"math"
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/theme"
)

// drawTop shows the file, whether it is saved, and the verdict.
func (m Model) drawTop(c grid.Canvas) {
	x := c.Text(1, 0, theme.Bar, "trivet  ")
	x = c.Text(x, 0, theme.Name, grid.Fit(m.title(), min(grid.Width(m.title()), c.W()/3)))
	if m.history.Modified() {
		x = c.Text(x, 0, theme.Warn, " * unsaved")
	}
	text, look := m.verdict()
	w := min(grid.Width(text), c.W()-x-3)
	if w > 0 {
		c.Text(c.W()-w-1, 0, look, grid.Fit(text, w))
	}
}

// verdict is the first words of the verdict, and whether they still hold.
func (m Model) verdict() (string, grid.Style) {
	l := m.live
	if l.solution == nil {
		if len(l.errs) > 0 {
			return fmt.Sprintf("no result yet: %s to mend", count(len(l.errs), "cell")), theme.Warn
		}
		return "", theme.Plain
	}
	text, look := l.solution.Words()[0], verdictLook(l.solution.Verdict)
	// What stands behind the colon is in the system.
	text, _, _ = strings.Cut(text, ":")
	if bad := failures(l.solution); bad > 0 {
		text, look = text+fmt.Sprintf(", %s", count(bad, "check")+" failed"), theme.Bad
	}
	missed := 0
	for _, a := range l.solution.Answers {
		if !a.OK {
			missed++
		}
	}
	if missed > 0 {
		text, look = text+fmt.Sprintf(", %s missed", count(missed, "answer")), theme.Warn
	}
	if l.stale {
		return "stale: " + text, theme.Warn
	}
	return text, look
}

func failures(s *statics.Solution) (n int) {
	for _, c := range s.Checks {
		if !c.OK {
			n++
		}
	}
	return n
}

func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// drawFoot shows the cell in full, what is wrong with it under the place where
// it is wrong, and the keys.
func (m Model) drawFoot(c grid.Canvas) {
	keysLine := c.In(image.Rect(0, 2, c.W(), 3))
	switch {
	case m.ask != nil:
		c.Text(1, 0, theme.Warn, m.ask.text)
	case m.naming != nil:
		m.drawLine(c, "save as: ", *m.naming)
	case m.help != nil:
	case m.edit != nil:
		if m.drawEdit(c) {
			return
		}
	default:
		m.drawCell(c)
	}
	if m.note.text != "" {
		look := theme.Plain
		if m.note.bad {
			look = theme.Bad
		}
		in := c.In(image.Rect(0, 1, c.W(), 2))
		in.Fill(' ', theme.Plain)
		in.Text(1, 0, look, grid.Fit(m.note.text, c.W()-2))
	}
	m.drawHints(keysLine)
}

// drawLine shows a line of text with its cursor and gives where its text starts
// and how much of it is scrolled away.
func (m Model) drawLine(c grid.Canvas, label string, l line) (start, skip int) {
	start = c.Text(1, 0, theme.Name, label)
	text, skip := grid.Window(l.text, l.column(), c.W()-start-1)
	c.Text(start, 0, theme.Plain, text)
	c.Paint(start+l.column()-skip, 0, 1, theme.Caret)
	return start, skip
}

// drawEdit shows the text being typed and, under it, what is missing. It tells
// whether it needed the line of the keys for what would do.
func (m Model) drawEdit(c grid.Canvas) bool {
	start, skip := m.drawLine(c, label(m.edit.slot)+": ", m.edit.line)
	e, own := m.live.errorOf(m.edit.slot.ref)
	if m.edit.slot.does == setName || m.live.sheet == m.history.Current() {
		own = false
	}
	if !own {
		for _, e := range m.live.errs {
			if blocks(e) && m.edit.slot.does == setCell {
				c.Text(1, 1, theme.Warn, grid.Fit("elsewhere: "+m.live.place(e), c.W()-2))
				break
			}
		}
		return false
	}
	at := max(min(start+grid.Width(m.edit.text[:bound(e.Span.Start, m.edit.text)])-skip, c.W()-2), start)
	marks := strings.Repeat("^", max(1, min(grid.Width(m.edit.text[bound(e.Span.Start, m.edit.text):bound(e.Span.End, m.edit.text)]), c.W()-at-1)))
	if room := c.W() - at - len(marks) - 2; grid.Width(e.Msg) <= room || at < grid.Width(e.Msg)+2 {
		c.Text(c.Text(at, 1, theme.Bad, marks)+1, 1, theme.Bad, grid.Fit(e.Msg, max(room, 0)))
	} else {
		c.Text(at-grid.Width(e.Msg)-1, 1, theme.Bad, e.Msg+" "+marks)
	}
	if e.Hint == "" || m.note.text != "" {
		return false
	}
	c.Text(1, 2, theme.Warn, grid.Fit("would do: "+e.Hint, c.W()-2))
	return true
}

// bound keeps an offset in a text, at a character's start.
func bound(at int, text string) int {
	at = max(min(at, len(text)), 0)
	for at > 0 && at < len(text) && text[at]&0xc0 == 0x80 {
		at--
	}
	return at
}

// label names a cell: "T1 path".
func label(s slot) string {
	switch {
	case s.does == setName:
		if s.ref.Row == "" {
			return "new in " + s.ref.Table
		}
		return "name of " + s.ref.Row
	case s.does == setAsked:
		return "result"
	case s.ref.Key == "":
		return s.ref.Row
	}
	return s.ref.Row + " " + s.ref.Key
}

// place says where an error is and what would do, on one line.
func (l live) place(e problem.Error) string {
	where := e.Ref.Row
	if e.Ref.Table != "" {
		where = e.Ref.Table + " " + where
	}
	if e.Ref.Key != "" {
		where += " " + e.Ref.Key
	}
	return where + ": " + e.Error()
}

// drawCell shows the cell under the cursor and the first thing that is wrong,
// its own before others'.
func (m Model) drawCell(c grid.Canvas) {
	switch m.focus {
	case layout.System:
		c.Text(1, 0, theme.Dim, fmt.Sprintf("line %d of %d", min(m.scroll.y+1, len(m.system)), len(m.system)))
	case layout.Picture:
		c.Text(1, 0, theme.Dim, m.cam.words(m.live.problem))
	default:
		if s, ok := m.slot(); ok {
			name := m.tables[m.focus].columns[m.at[m.focus].col].head
			if s.does == setCell {
				name = label(s)
			}
			x := c.Text(1, 0, theme.Name, name+": ")
			x = c.Text(x, 0, theme.Plain, s.text)
			c.Text(x, 0, theme.Computed, m.follows)
		}
	}
	if len(m.live.errs) == 0 {
		return
	}
	shown := m.live.errs[0]
	if s, ok := m.slot(); ok {
		if e, own := m.live.errorOf(s.ref); own && s.bad {
			shown = e
		}
	}
	text := m.live.place(shown)
	if n := len(m.live.errs); n > 1 {
		text = fmt.Sprintf("1 of %d: %s", n, text)
	}
	c.Text(1, 1, theme.Bad, grid.Fit("! "+text, c.W()-2))
}

// about tells what follows from a row.
func (b builder) about(ref sheet.Ref) string {
	switch ref.Table {
	case "points":
		if xyz := b.coordinates(ref.Row); xyz != "" {
			return "   = " + xyz + " " + b.latest.Units.Length.Symbol
		}
	case "lines":
		return b.aboutLine(ref)
	case "given":
		if v := b.givenValue(ref.Row); v != "" {
			return "   = " + v
		}
	}
	return ""
}

func (b builder) aboutLine(ref sheet.Ref) (s string) {
	r, u := b.course(ref.Row)
	if r != "" {
		s += "   |r| = " + r + " " + b.latest.Units.Length.Symbol
	}
	if u != "" {
		s += "   u = " + u
	}
	return s
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
	for _, s := range m.mode().Scopes() {
		for _, b := range keys.Table() {
			if b.Scope != s || b.Hint == "" || m.cannot(b.Intent) != "" || m.mode() != keys.InCell && b.Keys[0] == "f1" && m.mode() != keys.OnHelp {
				continue
			}
			key := strings.Replace(b.Keys[0], "ctrl+", "^", 1)
			if x+len(key)+len(b.Hint)+1 >= c.W() {
				continue
			}
			x = c.Text(x, 0, theme.Key, key)
			x = c.Text(x+1, 0, theme.Plain, b.Hint) + 2
		}
	}
}

// drawTooSmall says what is wrong with the screen.
func (m Model) drawTooSmall(c grid.Canvas) {
	for i, s := range []string{
		fmt.Sprintf("trivet needs %d by %d,", layout.MinW, layout.MinH),
		fmt.Sprintf("this screen is %d by %d.", m.w, m.h),
		"Make it larger; nothing is lost.",
		"ctrl+s saves, ctrl+q quits.",
	} {
		c.Text(0, i, theme.Plain, s)
	}
	if m.ask != nil {
		c.Text(0, 4, theme.Plain, m.ask.text+" y / n / esc")
	}
}

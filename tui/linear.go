package tui

import (
	"strings"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"

	"trivet/tui/grid"
	"trivet/tui/layout"
)

// The linear screen writes plain lines one below the other, for a screen reader
// or a slow line. It is another drawing of the same model: a message is done as
// ever, and what it made different is said. Nothing that was written is ever
// written over but the last line, where one types.

// The panes are divided as on a screen where each of them shows, so that no key
// depends on the size of a terminal that shows none of them.
const linearW, linearH = 200, 60

// speech is what the linear screen has said.
type speech struct {
	w, h  int      // of the terminal
	lines []string // said by the last message
	last  lastLine // as it stands below them
	begun bool     // what is open was said
	owes  bool     // where one has come to, once the result is there
	at    whereabouts
	heard heard // the result that was said last
	read  [layout.Panes]int

	jumped bool // to the start or the end of what is read: what lies between is passed over
}

// lastLine is where one types: what one is at, the text there, and the column of
// the terminal's own cursor.
type lastLine struct {
	text   string
	column int
}

// announce does a message, says what it made different, and writes it.
func (m Model) announce(msg tea.Msg) (Model, tea.Cmd) {
	was := m
	h := *m.history // changed in place
	was.history = &h
	cmd := m.update(msg)
	before := m.speech.last
	lines, next := m.describe(was, msg)
	m.speech = next
	m.speech.lines = lines
	m.speech.last = m.lastLine()
	if text := written(m.speech.w, lines, before, m.speech.last); text != "" && m.tell != nil {
		m.tell(text)
	}
	return m, cmd
}

// written is what the terminal gets: lines in place of the last one and that
// below them; without lines no more than what differs in it, so that a reader
// hears the character typed and not the line again.
func written(w int, lines []string, before, now lastLine) string {
	if len(lines) == 0 {
		return retyped(before, now)
	}
	var b strings.Builder
	b.WriteString("\r" + ansi.EraseLineRight)
	for _, l := range lines {
		if w > 1 {
			l = ansi.Wrap(l, w-1, " ")
		}
		for _, part := range strings.Split(l, "\n") {
			b.WriteString(strings.TrimRight(part, " ") + "\r\n")
		}
	}
	b.WriteString(now.text)
	b.WriteString(steered(grid.Width(now.text), now.column))
	return b.String()
}

// retyped changes the last line from where it differs.
func retyped(before, now lastLine) string {
	if before == now {
		return ""
	}
	same := 0
	for same < len(before.text) && same < len(now.text) && before.text[same] == now.text[same] {
		same++
	}
	same = min(bound(same, before.text), bound(same, now.text))
	text, at := "", before.column
	if same < max(len(before.text), len(now.text)) {
		from := grid.Width(now.text[:same])
		text = steered(at, from) + now.text[same:]
		at = grid.Width(now.text)
		if grid.Width(before.text) > at {
			text += ansi.EraseLineRight
		}
	}
	return text + steered(at, now.column)
}

// steered takes the cursor from a column to another.
func steered(from, to int) string {
	switch {
	case to < from:
		return strings.Repeat("\b", from-to)
	case to > from:
		return ansi.CursorForward(to - from)
	}
	return ""
}

// isOver tells that the person has left.
func (m Model) isOver() bool { return m.left || m.going }

// lastLine is what stands below what was said.
func (m Model) lastLine() lastLine {
	if m.isOver() {
		return lastLine{}
	}
	prompt, l := m.typingLine()
	w := m.speech.w
	if w <= 0 {
		w = linearW
	}
	prompt = grid.Clean(prompt)
	if limit := max(w/2, 1); grid.Width(prompt) > limit {
		prompt = strings.TrimRight(ansi.Truncate(prompt, limit-1, ""), " ") + " "
	}
	text, skip := grid.Window(l.Text, l.Column(), max(w-grid.Width(prompt)-1, 1))
	return lastLine{strings.TrimRight(prompt+grid.Clean(text), " "), grid.Width(prompt) + l.Column() - skip}
}

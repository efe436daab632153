package speech

import (
	"slices"
	"strings"
	"unicode"

	"github.com/charmbracelet/x/ansi"

	"trivet/mechanics/diag"
	"trivet/mechanics/printable"
	"trivet/tui/grid"
	"trivet/tui/text"
)

// Line is where one types: what one is at, the text there, and the column of
// the terminal's own cursor.
type Line struct {
	Text   string
	Column int
}

// below is a text with its cursor behind a prompt, in a width.
func below(prompt string, l text.Line, w int) Line {
	prompt = grid.Clean(prompt)
	if limit := max(w/2, 1); grid.Width(prompt) > limit {
		prompt = strings.TrimRight(ansi.Truncate(prompt, limit-1, ""), " ") + " "
	}
	text, skip := grid.Window(l.Text, l.Column(), max(w-grid.Width(prompt)-1, 1))
	return Line{strings.TrimRight(prompt+grid.Clean(text), " "), grid.Width(prompt) + l.Column() - skip}
}

// written is what the terminal gets: lines in place of the last one and that
// below them; without lines no more than what differs in it, so that a reader
// hears the character typed and not the line again.
func written(w int, lines []string, before, now Line) string {
	if len(lines) == 0 {
		return retyped(before, now)
	}
	var b strings.Builder
	b.WriteString("\r" + ansi.EraseLineRight)
	for _, l := range lines {
		if w > 1 {
			l = broken(l, w-1)
		}
		b.WriteString(strings.ReplaceAll(l, "\n", "\r\n") + "\r\n")
	}
	b.WriteString(now.Text)
	b.WriteString(steered(grid.Width(now.Text), now.Column))
	return b.String()
}

// broken is a line in rows of a width, a word that is wider cut.
func broken(l string, w int) string {
	rows := slices.Collect(text.Rows(l, w))
	return ansi.Hardwrap(strings.Join(rows, "\n"), w, true)
}

// retyped changes the last line from where it differs.
func retyped(before, now Line) string {
	if before == now {
		return ""
	}
	same := 0
	for same < len(before.Text) && same < len(now.Text) && before.Text[same] == now.Text[same] {
		same++
	}
	same = min(diag.RuneStart(before.Text, same), diag.RuneStart(now.Text, same))
	text, at := "", before.Column
	if same < max(len(before.Text), len(now.Text)) {
		from := grid.Width(now.Text[:same])
		text = steered(at, from) + now.Text[same:]
		at = grid.Width(now.Text)
		if grid.Width(before.Text) > at {
			text += ansi.EraseLineRight
		}
	}
	return text + steered(at, now.Column)
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

// spoken is lines without what a screen reader cannot read: every character that
// draws is gone, and blanks do not set columns. What would act on the terminal is a
// dot as on every screen. None is said twice.
func spoken(lines []string) (out []string) {
	for i, l := range lines {
		if slices.Contains(lines[:i], l) {
			continue
		}
		l = strings.Map(func(r rune) rune {
			switch {
			case r == '\n' || r == '\t' || r == '\r':
				return ' '
			case printable.Acts(r):
				return printable.Stand
			case unicode.IsSpace(r) || Drawn(r):
				return ' '
			case unicode.Is(unicode.Cf, r):
				return -1
			}
			return r
		}, l)
		if l = strings.Join(strings.Fields(l), " "); l != "" {
			out = append(out, l)
		}
	}
	return out
}

// Drawn tells the characters that are pictures rather than text: frames, blocks,
// braille, and the pieces of tall brackets.
func Drawn(r rune) bool {
	return r >= 0x2500 && r <= 0x259f || r >= 0x2800 && r <= 0x28ff || r >= 0x239b && r <= 0x23b3
}

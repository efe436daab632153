package diag

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"

	"trivet/mechanics/printable"
)

// Short is the error on one line, "file:line:column: what is wrong. Try: what to try".
func (e *Error) Short(file string) string {
	return e.position(printable.Line(file)) + printable.Line(e.Text()) // none may pass for a message of its own
}

// In is Short, and below it the line with a caret, where the line is known.
func (e *Error) In(file string) string {
	if e.Line == 0 || strings.TrimSpace(e.Source) == "" || strings.ContainsFunc(e.Source, func(c rune) bool { return c != '\t' && unicode.IsControl(c) }) {
		return e.Short(file) // nothing to show, or what is no text
	}
	return e.Short(file) + "\n" + e.caret()
}

// Warning is In for what stops nothing.
func (e *Error) Warning(file string) string {
	w := *e
	w.Msg = "warning: " + e.Msg
	return w.In(file)
}

// caret gives two lines: the text, and ^~~~ below what is meant, set by the cells that the
// characters take on a screen. Tabs and line ends are shown as spaces. Of a line that is
// longer than any screen only what stands around is shown.
func (e *Error) caret() string {
	const longest, beside = 240, 60 // cells
	line := shown(e.Source)
	to := func(column int) int { // the cells before a character
		chars := []rune(line)
		return ansi.StringWidth(string(chars[:min(max(column-1, 0), len(chars))]))
	}
	from, end, before := to(e.Column), to(e.Column+max(1, e.Width)), 0
	if width := ansi.StringWidth(line); width > longest {
		left := max(from-beside, 0)
		right := min(end+beside, left+longest)
		line, from, end = ansi.Cut(line, left, right), from-left, min(end, right)-left
		if left > 0 {
			line, before = "... "+line, 4
		}
		if right < width {
			line += " ..."
		}
	}
	return line + "\n" + strings.Repeat(" ", before+from) + "^" + strings.Repeat("~", max(end-from-1, 0))
}

// RuneStart brings an offset into a text and back to the start of its character.
func RuneStart(text string, i int) int {
	i = min(max(i, 0), len(text))
	for i > 0 && i < len(text) && !utf8.RuneStart(text[i]) {
		i--
	}
	return i
}

// shown replaces what does not show as itself.
func shown(text string) string {
	return printable.Line(strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) {
			return ' '
		}
		return r
	}, text))
}

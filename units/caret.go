package units

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"

	"trivet/mechanics/printable"
)

// Caret gives two lines: the text, and ^~~~ below the span, set by the cells
// that the characters take on a screen. Tabs and line ends are shown as spaces.
func Caret(text string, span Span) string {
	start := runeStart(text, span.Start)
	end := max(start, runeStart(text, span.End))
	column := ansi.StringWidth(shown(text[:start]))
	width := ansi.StringWidth(shown(text[:end])) - column
	return shown(text) + "\n" + strings.Repeat(" ", column) + "^" + strings.Repeat("~", max(width-1, 0))
}

// runeStart brings an offset into the text and back to the start of its character.
func runeStart(text string, i int) int {
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

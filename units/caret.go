package units

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
)

// Caret gives two lines: the text, and ^~~~ below the span, set by the cells
// that the characters take on a screen. Tabs, line ends and other controls are
// shown as spaces, so that nothing typed steers the terminal.
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
	var b strings.Builder
	for _, r := range text {
		if r == utf8.RuneError || unicode.IsControl(r) || unicode.IsSpace(r) || unicode.Is(unicode.Bidi_Control, r) {
			r = ' '
		}
		b.WriteRune(r)
	}
	return b.String()
}

package grid

import (
	"strings"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"

	"trivet/mechanics/printable"
)

// character takes the first character of a text: the bytes it is, what shows for
// it, and in how many columns.
//
// Terminals disagree on the width of some that are made of several runes, such
// as an emoji of a family: some count a cluster, others its runes. A
// line with one would be out of step behind it, so the first rune stands for
// those, or a dot.
func character(s string) (taken, shows string, w int) {
	taken, w = ansi.FirstGraphemeCluster(s, ansi.GraphemeWidth)
	r, n := utf8.DecodeRuneInString(taken)
	switch {
	case printable.Acts(r):
		return taken, string(printable.Stand), 1
	case w <= 0:
		return taken, "", 0
	case ansi.StringWidthWc(taken) == w && !strings.ContainsFunc(taken[n:], printable.Acts):
		return taken, taken, w
	}
	first := taken[:n]
	if w = ansi.StringWidth(first); w <= 0 || ansi.StringWidthWc(first) != w {
		return taken, string(printable.Stand), 1
	}
	return taken, first, w
}

package text

import (
	"iter"
	"strings"

	"trivet/mechanics/doc"
	"trivet/tui/grid"
)

// Rows are the lines of a text in a width, broken at blanks: a word that is wider stands in
// one by itself, and what doc.Kept keeps in one line stays where that has room for it.
func Rows(s string, w int) iter.Seq[string] {
	return func(yield func(string) bool) {
		for {
			n := row(s, w)
			if !yield(s[:n]) || n == len(s) {
				return
			}
			s = s[n+1:]
		}
	}
}

// row is how many bytes of a text stand in its first line of a width: the words that fit,
// one at least.
func row(s string, w int) int {
	end, taken := 0, 0
	for at := 0; at < len(s); {
		word, _, _ := strings.Cut(s[at:], " ")
		n := grid.Width(word)
		if end > 0 && taken+1+n > w {
			for _, keep := range []func(string, int) bool{doc.Kept, doc.Measured} { // a whole relation may be too long
				for blank := end; blank > 0; blank = strings.LastIndexByte(s[:blank], ' ') {
					if !keep(s, blank) {
						return blank
					}
				}
			}
			return end // one number fills the line, and more
		}
		if end > 0 {
			taken++
		}
		end, taken = at+len(word), taken+n
		at = end + 1
	}
	return end
}

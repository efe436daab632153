package text

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"trivet/tui/grid"
	"trivet/units"
)

// row is how many bytes of a text stand in its first line of a width: the words that fit,
// one at least. A number stays with its unit, its sign, its equals sign and the rest of its
// vector where a line has room for all of it.
func row(s string, w int) int {
	end, taken := 0, 0
	for at := 0; at < len(s); {
		word, _, _ := strings.Cut(s[at:], " ")
		n := grid.Width(word)
		if end > 0 && taken+1+n > w {
			for _, keep := range []func(string, int) bool{kept, measured} { // a whole relation may be too long
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

// kept tells whether what stands on both sides of a blank belongs in one line.
func kept(s string, blank int) bool {
	before, after := lastWord(s[:blank]), s[blank+1:]
	after, _, _ = strings.Cut(after, " ")
	switch {
	case relates(before) || relates(after):
		return true
	case after == "±":
		return quantity(s[:blank])
	case before == "±" || before == "(±" || before == "+" || before == "-":
		return numeral(after)
	case measured(s, blank):
		return true
	case strings.HasSuffix(before, ","):
		open := strings.LastIndexByte(s[:blank], '(')
		return open >= 0 && !strings.Contains(s[open:blank], ")") && numeral(s[open+1:blank]) && numeral(after)
	}
	return false
}

// measured tells whether a number stands before a blank and its unit behind it.
func measured(s string, blank int) bool {
	after, _, _ := strings.Cut(s[blank+1:], " ")
	return quantity(s[:blank]) && isUnit(after)
}

// quantity tells whether a text ends in a number, which units may follow, or in a vector.
func quantity(s string) bool {
	word := lastWord(s)
	switch {
	case word == "" || strings.ContainsRune(",;:.", rune(word[len(word)-1])):
		return false
	case numeral(word):
		return true
	case strings.HasSuffix(word, ")"):
		open := strings.LastIndexByte(s, '(')
		return open >= 0 && numeral(s[open+1:])
	}
	return isUnit(word) && len(s) > len(word) && quantity(strings.TrimSuffix(s[:len(s)-len(word)], " "))
}

func lastWord(s string) string { return s[strings.LastIndexByte(s, ' ')+1:] }

// relates tells whether a word is a sign that stands between two sides.
func relates(word string) bool {
	r, n := utf8.DecodeRuneInString(word)
	return n == len(word) && strings.ContainsRune("=≈<>≤≥", r) && n > 0
}

// numeral tells whether a word begins as a number does, or as one that is to be found, behind a bracket and a sign.
func numeral(word string) bool {
	r, _ := utf8.DecodeRuneInString(strings.TrimLeft(word, "(+-±."))
	return unicode.IsDigit(r) || r == '?'
}

// isUnit tells whether a word begins with the symbol of a unit: of m/s^2, that is m. What ends a
// clause may stand behind it.
func isUnit(word string) bool {
	if end := strings.IndexAny(word, "/*^·²³⁴,;:.)"); end > 0 {
		word = word[:end]
	}
	_, ok := units.Find(word)
	return ok
}

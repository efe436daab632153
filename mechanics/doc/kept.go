package doc

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"trivet/units"
)

// Kept tells whether what stands on both sides of a blank in a text belongs in one line: a
// number with its unit, its sign, its equals sign, its ± and the rest of its vector, and what
// stands before an equals sign with its factor. A line is broken there only where it has no
// room for all of it.
func Kept(text string, blank int) bool {
	before := lastWord(text[:blank])
	after, behind, _ := strings.Cut(text[blank+1:], " ")
	next, _, _ := strings.Cut(behind, " ")
	switch {
	case relates(before) || relates(after):
		return true
	case after == "±":
		return quantity(text[:blank])
	case before == "±" || before == "(±" || before == "+" || before == "-":
		return numeral(after)
	case quantity(text[:blank]):
		return Measured(text, blank) || relates(next)
	case strings.HasSuffix(before, ","):
		open := strings.LastIndexByte(text[:blank], '(')
		return open >= 0 && !strings.Contains(text[open:blank], ")") && numeral(text[open+1:blank]) && numeral(after)
	}
	return false
}

// Measured tells whether a number stands before a blank and its unit behind it: they stay
// together where the rest that Kept keeps has no room.
func Measured(text string, blank int) bool {
	after, _, _ := strings.Cut(text[blank+1:], " ")
	return quantity(text[:blank]) && isUnit(after)
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

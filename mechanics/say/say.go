// Package say is the English that every room shares: lists, counts, plurals,
// capitals, signs of directions. It knows nothing of statics.
package say

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// And lists names: "a, b and c".
func And(names ...string) string { return series(names, "and") }

// Or lists names: "a, b or c".
func Or(names ...string) string { return series(names, "or") }

func series(names []string, last string) string {
	n := len(names) - 1
	if n < 1 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:n], ", ") + " " + last + " " + names[n]
}

// AndMore lists at most so many names and counts the others: "a, b and 3 more".
func AndMore(names []string, limit int) string {
	if more := len(names) - limit; more > 0 {
		names = append(names[:limit:limit], strconv.Itoa(more)+" more")
	}
	return And(names...)
}

// irregular are the plurals that an s does not make.
var irregular = map[string]string{"body": "bodies", "free body": "free bodies", "entry": "entries", "axis": "axes", "is": "are", "has": "have", "was": "were", "does": "do",
	"passes": "pass", "intersects": "intersect", "cancels": "cancel", "keeps": "keep", "appears": "appear"}

// Plural is a noun, or a verb, for so many: "joint" or "joints", "is" or "are".
func Plural(n int, word string) string {
	if n == 1 {
		return word
	}
	if p, ok := irregular[word]; ok {
		return p
	}
	return word + "s"
}

// Count counts a noun: "1 joint", "3 joints".
func Count(n int, noun string) string { return strconv.Itoa(n) + " " + Plural(n, noun) }

var (
	small    = []string{"zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}
	ordinals = []string{"zeroth", "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh", "twelfth"}
)

// Number is a count in words up to twelve, in digits beyond.
func Number(n int) string {
	if n >= 0 && n < len(small) {
		return small[n]
	}
	return strconv.Itoa(n)
}

// Ordinal is "first" to "twelfth", then "13th".
func Ordinal(n int) string {
	if n >= 0 && n < len(ordinals) {
		return ordinals[n]
	}
	suffix := "th"
	if last := n % 10; last >= 1 && last <= 3 && n/10%10 != 1 {
		suffix = []string{"st", "nd", "rd"}[last-1]
	}
	return strconv.Itoa(n) + suffix
}

// Article is "a" or "an", by the letter that a word begins with.
func Article(word string) string {
	if word != "" && strings.ContainsRune("aeiouAEIOU", rune(word[0])) {
		return "an"
	}
	return "a"
}

// sides are names of bodies that are adjectives.
var sides = []string{"left", "right", "upper", "lower", "top", "bottom", "front", "rear", "inner", "outer", "middle"}

// Side tells that a body's name says only which part it is: left, upper.
func Side(name string) bool { return slices.Contains(sides, name) }

// The puts an article before a name that is a common noun, so that it reads as a
// sentence: "the beam", "the left part", but "AB" and "T1".
func The(name string) string {
	if Side(name) {
		return "the " + name + " part"
	}
	const shortest = 3 // of a noun
	if len(name) < shortest || strings.ContainsFunc(name, func(r rune) bool { return !unicode.IsLower(r) }) {
		return name
	}
	return "the " + name
}

// Capital begins a text with a capital letter.
func Capital(text string) string {
	r, n := utf8.DecodeRuneInString(text)
	if n == 0 {
		return text
	}
	return string(unicode.ToUpper(r)) + text[n:]
}

// Sense is what the sign of a member's force means: "tension", "compression", or
// "no force" where it is zero.
func Sense(force float64, positive, negative string) string {
	switch {
	case force > 0:
		return positive
	case force < 0:
		return negative
	}
	return "no force"
}

// Turn is the sense of a rotation in the plane, by its component along z.
func Turn(z float64) string {
	if z > 0 {
		return "counter-clockwise"
	}
	return "clockwise"
}

// Range says the values from a low to a high end, which may be infinite, numbers as write
// has them and between them what stands between two ends: "1 N to 3 N", "at least 1 N".
func Range(low, high float64, between string, write func(float64) string) string {
	switch least, most := math.IsInf(low, -1), math.IsInf(high, 1); {
	case least && most:
		return "unbounded"
	case most:
		return "at least " + write(low)
	case least:
		return "at most " + write(high)
	}
	return write(low) + between + write(high)
}

package units

import (
	"fmt"
	"strings"

	"trivet/mechanics/diag"
)

// Suggest gives the known word that a mistyped one most likely stands for, or
// "" where none is close: another case, or about one slip in three letters.
// Of equals the first of the list is given.
func Suggest(wrong string, known []string) string {
	best, least := "", len([]rune(wrong))
	limit := max(1, least/3)
	for _, k := range known {
		if k == wrong || k == "" {
			continue
		}
		d := 0
		if !strings.EqualFold(k, wrong) {
			d = distance([]rune(wrong), []rune(k))
		}
		if d <= limit && d < least {
			best, least = k, d
		}
	}
	return best
}

// distance counts insertions, deletions, replacements and swaps of neighbours
// (optimal string alignment).
func distance(a, b []rune) int {
	before, last, cur := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		cur[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			cur[j] = min(last[j]+1, cur[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				cur[j] = min(cur[j], before[j-2]+1)
			}
		}
		before, last, cur = last, cur, before
	}
	return last[len(b)]
}

// unknownUnit says that there is no such unit, with the likeliest cure: run
// together ("Nm"), written out ("meters"), or mistyped.
func unknownUnit(at diag.Span, word string, names []string) *diag.Error {
	hint := spelling(word)
	if hint == "" {
		near, some := nearUnit(word)
		if !some {
			near = Suggest(word, names)
		}
		hint = near
	}
	return diag.At(at, fmt.Sprintf("unknown unit %q", word), hint)
}

// otherNames are units by names that the table does not have, and how they are
// written here. It is never written to.
var otherNames = map[string]string{
	"feet": "ft", "foot": "ft", "inches": "in", "pound": "lbf", "pounds": "lbf", "klb": "kip", "klbf": "kip", "kpsi": "ksi",
	"plf": "lbf/ft", "klf": "kip/ft", "pli": "lbf/in", "pcf": "lbf/ft^3", "kcf": "kip/ft^3", "ksf": "kip/ft^2",
}

// prefixes are those of the SI, some in the spellings of a keyboard.
var prefixes = []string{"da", "d", "c", "m", "u", "µ", "μ", "h", "k", "M", "G"}

// spelling says how a unit is written here that is spelt in another way, "" where
// the word is none. What it says never changes the unit.
func spelling(word string) string {
	switch word {
	case "ton", "tons", "Ton", "Tons", "T":
		return "t for a tonne (a mass), tf for its weight or tonf for 2000 lbf"
	case "k", "K":
		return "kip"
	case "mil", "mils":
		return "a value in inches (in)"
	}
	if other := otherNames[strings.ToLower(word)]; other != "" {
		return other
	}
	spelt := strings.ToLower(strings.TrimSuffix(word, "s"))
	for _, u := range table {
		if spelt == u.Name || spelt == strings.Replace(u.Name, "metre", "meter", 1) {
			return u.Symbol
		}
	}
	if base := strings.TrimRight(word, "234"); len(base) == len(word)-1 && bySymbol[base] != nil {
		return base + "^" + word[len(base):] // mm2
	}
	if base := prefixed(word); base != "" {
		return "a value in " + base
	}
	return runTogether(word)
}

// prefixed gives the unit of a word that has a prefix before it: mN is a thousandth of
// a newton, and MN a million.
func prefixed(word string) string {
	for _, p := range prefixes {
		if base, ok := strings.CutPrefix(word, p); ok && bySymbol[base] != nil {
			return base
		}
	}
	return ""
}

// runTogether says how Nm and kgs are written.
func runTogether(word string) string {
	if one := strings.TrimSuffix(word, "s"); one != word && len(one) > 1 && bySymbol[one] != nil {
		return one
	}
	for i := 1; i < len(word) && prefixed(word) == ""; i++ {
		a, b := strings.TrimSuffix(word[:i], "."), word[i:]
		if bySymbol[a] != nil && bySymbol[b] != nil && (bySymbol[a].Dim != bySymbol[b].Dim || b == "g") { // a force times a force is a slip; kg g is a weight
			return a + " " + b
		}
	}
	return ""
}

// nearUnit gives the symbol that a mistyped unit stands for: in other capitals, with
// a letter too many or two exchanged, else with one missing or wrong. It is "" where
// another unit is as near, or a capital may be the prefix; some tells that one is near.
func nearUnit(word string) (symbol string, some bool) {
	const letter, other, none = 1, 2, 3
	best, least := Unit{}, none
	twice, prefix := false, false
	for _, u := range table {
		for _, symbol := range append([]string{u.Symbol}, u.Aliases...) {
			d := none
			slip := len(word) > 1 && len(symbol) > 1 && distance([]rune(word), []rune(symbol)) == 1
			switch {
			case strings.EqualFold(word, symbol):
				d = 0
				prefix = prefix || u.Dim == Force && symbol[0] == 'M' && word[0] == 'm' // mn
			case slip && (len(word) > len(symbol) || len(word) == len(symbol) && !substituted(word, symbol)), word == symbol+symbol:
				d = letter
			case slip:
				d = other
			}
			switch {
			case d < least:
				best, least, twice = u, d, false
			case d == least && u.Symbol != best.Symbol:
				twice = true
			}
		}
	}
	if twice || prefix {
		return "", true
	}
	return best.Symbol, best.Symbol != ""
}

// substituted tells that two words of one length differ by a letter, not by the
// order of their letters.
func substituted(a, b string) bool {
	differ := 0
	for i := range a {
		if a[i] != b[i] {
			differ++
		}
	}
	return differ == 1
}

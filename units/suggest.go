package units

import (
	"fmt"
	"strings"
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

func didYouMean(s string) string {
	if s == "" {
		return ""
	}
	return fmt.Sprintf("did you mean %q", s)
}

// unknownUnit says that there is no such unit, with the likeliest cure: run
// together ("Nm"), written out ("meters"), or mistyped.
func unknownUnit(at Span, word string, names []string) *Error {
	return &Error{at, fmt.Sprintf("unknown unit %q", word), unitHint(word, names)}
}

func unitHint(word string, names []string) string {
	if word == "ton" || word == "tons" {
		return "write t for a tonne (a mass), tf for its weight, tonf for 2000 lbf"
	}
	for i := 1; i < len(word); i++ {
		a, b := strings.TrimSuffix(word[:i], "."), word[i:]
		if bySymbol[a] != nil && bySymbol[b] != nil && (bySymbol[a].Dim != bySymbol[b].Dim || b == "g") { // a force times a force is a slip; kg g is a weight
			return fmt.Sprintf("write %s %s", a, b)
		}
	}
	spelt := strings.ToLower(strings.TrimSuffix(word, "s"))
	for _, u := range table {
		if spelt == u.Name || spelt == strings.Replace(u.Name, "metre", "meter", 1) {
			return "write " + u.Symbol
		}
	}
	switch spelt {
	case "feet":
		return "write ft"
	case "inche":
		return "write in"
	}
	known := append([]string(nil), names...)
	for _, u := range table {
		known = append(known, u.Symbol)
		for _, a := range u.Aliases {
			if a[0] >= 'A' && a[0] <= 'z' {
				known = append(known, a)
			}
		}
	}
	return didYouMean(Suggest(word, known))
}

package text

import (
	"slices"
	"unicode"
	"unicode/utf8"

	"trivet/mechanics/doc"
	"trivet/tui/grid"
)

// numerals finds the numbers in a text: digits with their sign, a decimal point, an
// exponent, and thousands that are parted by blanks. Digits of a name (T1, u_T1,2) or
// behind a power (^2) are none.
func numerals(s string) (out [][2]int) {
	for i := 0; i < len(s); i++ {
		if !digit(s, i) {
			continue
		}
		to := i
		for digit(s, to) {
			to++
		}
		for to-i <= 3 && to+3 < len(s) && s[to] == ' ' && digit(s, to+1) && digit(s, to+2) && digit(s, to+3) && !digit(s, to+4) {
			for to+3 < len(s) && s[to] == ' ' && digit(s, to+1) && digit(s, to+2) && digit(s, to+3) && !digit(s, to+4) {
				to += 4
			}
		}
		if to+1 < len(s) && s[to] == '.' && digit(s, to+1) {
			for to++; digit(s, to); {
				to++
			}
		}
		if to < len(s) && s[to] == 'e' {
			at := to + 1
			if at < len(s) && (s[at] == '-' || s[at] == '+') {
				at++
			}
			if digit(s, at) {
				for to = at; digit(s, to); {
					to++
				}
			}
		}
		if from, ok := numberFrom(s, i); ok {
			out = append(out, [2]int{from, to})
		}
		i = to
	}
	return out
}

func digit(s string, i int) bool { return i >= 0 && i < len(s) && s[i] >= '0' && s[i] <= '9' }

// numberFrom tells whether digits begin a number, and takes a minus before them.
func numberFrom(s string, i int) (int, bool) {
	if i == 0 {
		return 0, true
	}
	switch c := s[i-1]; {
	case c >= 'a' && c <= 'z', c >= 'A' && c <= 'Z', c == '_', c == '^', c == ',', c >= 0x80 && endsInLetter(s[:i]):
		return 0, false
	case c == '.' && (i < 2 || s[i-2] != '.'):
		return 0, false
	case c == '-' && (i == 1 || s[i-2] == ' ' || s[i-2] == '(' || s[i-2] == '.'):
		return i - 1, true
	}
	return i, true
}

func endsInLetter(s string) bool {
	r, _ := utf8.DecodeLastRuneInString(s)
	return unicode.IsLetter(r)
}

// Numbered is a text whose numbers have one origin.
func Numbered(look grid.Style, s string, from doc.Origin) []Span {
	return AppendNumbered(nil, look, s, func(int) doc.Origin { return from })
}

// order; one that has none is text.
func AppendNumbered(out []Span, look grid.Style, s string, of func(k int) doc.Origin) []Span {
	at := 0
	all := numerals(s)
	out = slices.Grow(out, 2*len(all)+1)
	for k, n := range all {
		from := of(k)
		if from == nil {
			continue
		}
		if n[0] > at {
			out = append(out, Span{Text: s[at:n[0]], Look: look})
		}
		out = append(out, Span{Text: s[n[0]:n[1]], Look: look, Of: from})
		at = n[1]
	}
	if at < len(s) {
		out = append(out, Span{Text: s[at:], Look: look})
	}
	return out
}

// From gives every number from a line on one origin.
func (d Lines) From(line int, of doc.Origin) {
	for i := line; i < len(d); i++ {
		var segs []Span
		for _, s := range d[i] {
			begins := len(segs)
			if segs = append(segs, Numbered(s.Look, s.Text, of)...); len(segs) > begins {
				segs[begins].By = s.By
			}
		}
		d[i] = segs
	}
}

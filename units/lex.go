package units

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"trivet/mechanics/diag"
)

type kind uint8

// The kinds of token. A unit mark (° ' ") is a tName, since it is a unit's
// spelling; token.mark tells foot and inch marks from words.
const (
	tEnd kind = iota
	tNumber
	tName
	tPlus
	tMinus
	tStar
	tDot // · or ⋅
	tSlash
	tCaret
	tSuper // ² as a whole power
	tOpen
	tClose
	tComma
	tPlusMinus
	tRange // ..
	tQuestion
	tPercent
	tColon
)

type token struct {
	kind       kind
	start, end int
	num        float64
	place      int  // the power of ten of the number's last digit
	whole      bool // digits only
	mark       bool // a foot or inch mark
	grouped    bool // digits in threes with commas between them
	vulgar     bool // a fraction in one character, ½
}

// maxText bounds a cell: a longer one is a paste gone wrong.
const maxText = 4096

// symbol gives the kind of a character that is a token by itself, or tEnd.
func symbol(r rune) kind {
	switch r {
	case '+':
		return tPlus
	case '-', '−', '–', '‐', '‑': // a minus, a dash, a hyphen, one that does not break
		return tMinus
	case '*', '×':
		return tStar
	case '·', '⋅':
		return tDot
	case '/', '÷':
		return tSlash
	case '^':
		return tCaret
	case '(':
		return tOpen
	case ')':
		return tClose
	case ',':
		return tComma
	case '±':
		return tPlusMinus
	case '?':
		return tQuestion
	case '%':
		return tPercent
	case ':':
		return tColon
	}
	return tEnd
}

// vulgarFractions are the fractions that are one character. It is never written to.
var vulgarFractions = map[rune]float64{
	'½': 1. / 2, '⅓': 1. / 3, '⅔': 2. / 3, '¼': 1. / 4, '¾': 3. / 4, '⅕': 1. / 5, '⅖': 2. / 5, '⅗': 3. / 5, '⅘': 4. / 5,
	'⅙': 1. / 6, '⅚': 5. / 6, '⅛': 1. / 8, '⅜': 3. / 8, '⅝': 5. / 8, '⅞': 7. / 8,
}

// superscripts in the order of their digits, the raised minus last.
const superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹⁻"

// lex cuts a cell's text into tokens, the last of which is a tEnd. In a cell of one
// value a comma may part a number's digits into threes, outside parentheses.
func lex(text string, one bool) ([]token, *diag.Error) {
	if len(text) > maxText {
		return nil, diag.At(diag.Between(maxText, len(text)), fmt.Sprintf("a cell may contain at most %d characters", maxText), "")
	}
	out := make([]token, 0, 8+len(text)/4)
	depth := 0
	for i := 0; i < len(text); {
		r, w := utf8.DecodeRuneInString(text[i:])
		t := token{start: i, end: i + w}
		switch {
		case unicode.IsSpace(r):
			i += w
			continue
		case isDigit(text, i), r == '.' && isDigit(text, i+1):
			var err *diag.Error
			if t, err = lexNumber(text, i, one && depth == 0); err != nil {
				return nil, err
			}
			if n := len(out); n > 0 && text[i] == '.' && out[n-1].end == i && bySymbol[text[out[n-1].start:i]] != nil { // 5 ft.6 in
				unit := text[out[n-1].start:i]
				return nil, diag.At(diag.Between(out[n-1].start, t.end), unit+text[i:t.end]+" can be read two ways", fmt.Sprintf("%[1]s %[2]s or %[1]s 0.%[2]s", unit, text[i+1:t.end]))
			}
		case strings.HasPrefix(text[i:], ".."):
			t.kind, t.end = tRange, i+2
		case strings.HasPrefix(text[i:], "+/-"), strings.HasPrefix(text[i:], "+-"), strings.HasPrefix(text[i:], "+−"):
			t.kind, t.end = tPlusMinus, i+strings.IndexAny(text[i:], "-−")
			_, w := utf8.DecodeRuneInString(text[t.end:])
			t.end += w
		case vulgarFractions[r] != 0:
			t.kind, t.num, t.vulgar = tNumber, vulgarFractions[r], true
		case symbol(r) != tEnd:
			t.kind = symbol(r)
		case r == '\'', r == '′', r == '’', r == '"', r == '″', r == '”':
			t.kind, t.mark = tName, true
		case r == '°', r == 'º', r == '√':
			t.kind = tName
		case strings.ContainsRune(superscripts, r):
			t = lexSuper(text, i)
			if t.kind == tEnd {
				return nil, unreadable(text, i, w)
			}
		case nameStart(r):
			t.kind, t.end = tName, nameEnd(text, i)
		default:
			return nil, unreadable(text, i, w)
		}
		switch t.kind {
		case tOpen:
			depth++
		case tClose:
			depth--
		}
		out = append(out, t)
		i = t.end
		if t.kind == tName && abbreviated(text, t) {
			i++
		}
	}
	return append(out, token{start: len(text), end: len(text)}), nil
}

// abbreviated tells that a point ends a unit, as in 5 ft. 6 in., and begins nothing.
func abbreviated(text string, t token) bool {
	if t.mark || t.end >= len(text) || text[t.end] != '.' || bySymbol[text[t.start:t.end]] == nil {
		return false
	}
	next, _ := utf8.DecodeRuneInString(text[t.end+1:])
	return next != '.' && !unicode.IsDigit(next) && !nameStart(next)
}

// unreadable says that a character has no meaning, and what may have been meant.
func unreadable(text string, i, w int) *diag.Error {
	hint := ""
	switch text[i] {
	case '=':
		hint = "the value alone"
	case '[', ']', '{', '}':
		hint = "( and )"
	case ';':
		hint = "a comma"
	case '|':
		if inner, _, closed := strings.Cut(text[i+1:], "|"); closed && strings.TrimSpace(inner) != "" {
			at := diag.Between(i, i+len(inner)+2)
			return diag.At(at, text[at.Start:at.End]+" is not read as an absolute value", "abs("+strings.TrimSpace(inner)+")")
		}
	}
	return diag.At(diag.Between(i, i+w), fmt.Sprintf("unexpected %q", text[i:i+w]), hint)
}

func isDigit(s string, i int) bool { return i < len(s) && s[i] >= '0' && s[i] <= '9' }

func digits(s string, i int) int {
	for isDigit(s, i) {
		i++
	}
	return i
}

func nameStart(r rune) bool { return r == '_' || unicode.IsLetter(r) }

// nameEnd finds the end of a name, results' names with their dots (T1.x) included.
func nameEnd(text string, i int) int {
	for i < len(text) {
		r, w := utf8.DecodeRuneInString(text[i:])
		dotted := false
		if r == '.' {
			n, _ := utf8.DecodeRuneInString(text[i+1:])
			dotted = nameStart(n) && n != 'º'
		}
		if !dotted && (r == 'º' || !nameStart(r) && !unicode.IsDigit(r)) {
			break
		}
		i += w
	}
	return i
}

// lexSuper reads a raised whole number; its kind is tEnd where it is none.
func lexSuper(text string, i int) token {
	t := token{kind: tSuper, start: i}
	sign, seen := 1.0, false
	for j, r := range text[i:] {
		k := strings.IndexRune(superscripts, r)
		if k < 0 {
			break
		}
		d := utf8.RuneCountInString(superscripts[:k])
		if d < 10 {
			t.num, seen = t.num*10+float64(d), true
		} else if j == 0 {
			sign = -1
		} else {
			break
		}
		t.end = i + j + utf8.RuneLen(r)
	}
	t.num *= sign
	if !seen || t.end-i > 16 { // a power of so many digits is none
		t.kind = tEnd
	}
	return t
}

package units

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
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
)

type token struct {
	kind       kind
	start, end int
	num        float64
	place      int  // the power of ten of the number's last digit
	whole      bool // digits only
	mark       bool // a foot or inch mark
}

// maxText bounds a cell: a longer one is a paste gone wrong.
const maxText = 4096

var symbols = map[rune]kind{
	'+': tPlus, '-': tMinus, '−': tMinus, '–': tMinus, '*': tStar, '×': tStar,
	'·': tDot, '⋅': tDot, '/': tSlash, '÷': tSlash, '^': tCaret, '(': tOpen, ')': tClose,
	',': tComma, '±': tPlusMinus, '?': tQuestion,
}

// superscripts in the order of their digits, the raised minus last.
const superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹⁻"

// lex cuts a cell's text into tokens, the last of which is a tEnd.
func lex(text string) ([]token, *Error) {
	if len(text) > maxText {
		return nil, &Error{Span{maxText, len(text)},
			fmt.Sprintf("the text is longer than the %d characters a cell may hold", maxText), ""}
	}
	out := make([]token, 0, 8+len(text)/4)
	for i := 0; i < len(text); {
		r, w := utf8.DecodeRuneInString(text[i:])
		t := token{start: i, end: i + w}
		switch {
		case unicode.IsSpace(r):
			i += w
			continue
		case isDigit(text, i), r == '.' && isDigit(text, i+1):
			var err *Error
			if t, err = lexNumber(text, i); err != nil {
				return nil, err
			}
		case strings.HasPrefix(text[i:], ".."):
			t.kind, t.end = tRange, i+2
		case strings.HasPrefix(text[i:], "+/-"), strings.HasPrefix(text[i:], "+-"), strings.HasPrefix(text[i:], "+−"):
			t.kind, t.end = tPlusMinus, i+strings.IndexAny(text[i:], "-−")
			_, w := utf8.DecodeRuneInString(text[t.end:])
			t.end += w
		case symbols[r] != 0:
			t.kind = symbols[r]
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
		out = append(out, t)
		i = t.end
	}
	return append(out, token{start: len(text), end: len(text)}), nil
}

// unreadable says that a character has no meaning, and what may have been meant.
func unreadable(text string, i, w int) *Error {
	hint := ""
	switch text[i] {
	case '=':
		hint = "a cell holds the value alone"
	case '[', ']', '{', '}':
		hint = "write ( and )"
	case ';':
		hint = "write a comma"
	case '%':
		hint = "write a fraction, such as 0.02"
	}
	return &Error{Span{i, i + w}, fmt.Sprintf("%q has no meaning in a cell", text[i:i+w]), hint}
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

// lexNumber reads 6, .5, 6., 6e3, and thousands in groups of three behind
// single spaces as they are printed: 12 300.
func lexNumber(text string, i int) (token, *Error) {
	t := token{kind: tNumber, start: i, whole: true}
	end := digits(text, i)
	var grouped []byte
	if text[i] != '0' && end > i && end-i <= 3 {
		for {
			g := group(text, end)
			if g < 0 {
				break
			}
			if grouped == nil {
				grouped = append(grouped, text[i:end]...)
			}
			grouped = append(grouped, text[g:g+3]...)
			end = g + 3
		}
	}
	if grouped != nil {
		if err := twoWays(text, i, end, grouped); err != nil {
			return t, err
		}
	}
	mantissa := end
	if end < len(text) && text[end] == '.' && !strings.HasPrefix(text[end:], "..") {
		t.whole = false
		end = digits(text, end+1)
		t.place = mantissa + 1 - end
	}
	if end < len(text) && (text[end] == 'e' || text[end] == 'E') {
		j := end + 1
		if j < len(text) && (text[j] == '-' || text[j] == '+') {
			j++
		}
		if isDigit(text, j) {
			t.whole = false
			j = digits(text, j)
			e, err := strconv.Atoi(text[end+1 : j])
			if err != nil {
				e = math.MaxInt32 // the number itself is refused below, unless it is 0
			}
			t.place += e
			end = j
		}
	}
	t.end = end
	if end < len(text) && text[end] == '_' || end+1 < len(text) && text[end] == '.' && isDigit(text, end+1) {
		j := end
		for j < len(text) && (isDigit(text, j) || text[j] == '_' || text[j] == '.' && isDigit(text, j+1)) {
			j++
		}
		hint := "write one decimal point"
		if text[end] == '_' {
			hint = "write " + strings.ReplaceAll(text[i:j], "_", "")
		}
		return t, &Error{Span{i, j}, text[i:j] + " is not a number", hint}
	}
	literal := text[i:end]
	if grouped != nil {
		literal = string(grouped) + text[mantissa:end]
	}
	x, err := strconv.ParseFloat(literal, 64)
	switch {
	case err != nil:
		return t, &Error{Span{i, end}, text[i:end] + " is larger than any number kept here", ""}
	case x == 0 && strings.ContainsAny(beforeExponent(literal), "123456789"):
		return t, &Error{Span{i, end}, text[i:end] + " is too small to tell from 0", "write 0"}
	}
	t.num = x
	return t, nil
}

func beforeExponent(s string) string {
	if i := strings.IndexAny(s, "eE"); i >= 0 {
		return s[:i]
	}
	return s
}

// group gives where a group of exactly three digits behind one space begins, or -1.
func group(text string, i int) int {
	r, w := utf8.DecodeRuneInString(text[i:])
	if r != ' ' && r != '\u00a0' && r != '\u2009' && r != '\u202f' {
		return -1
	}
	if i += w; digits(text, i)-i != 3 {
		return -1
	}
	return i
}

// twoWays refuses 12 300/400, which is a quotient of 12300 to one reader and a
// mixed number to another. A fraction that is not a proper one (12 300/2) can
// only be the quotient.
func twoWays(text string, start, end int, grouped []byte) *Error {
	rest := strings.TrimLeft(text[end:], " ")
	if !strings.HasPrefix(rest, "/") {
		return nil
	}
	rest = strings.TrimLeft(rest[1:], " ")
	d := digits(rest, 0)
	if d == 0 {
		return nil
	}
	over, _ := strconv.ParseFloat(string(grouped[len(grouped)-3:]), 64)
	under, _ := strconv.ParseFloat(rest[:d], 64)
	if over >= under {
		return nil
	}
	last := len(text) - len(rest) + d
	whole := string(grouped)
	return &Error{Span{start, last}, text[start:last] + " can be read two ways",
		fmt.Sprintf("write %s/%s, or %s + %s/%s", whole, rest[:d], whole[:len(whole)-3], whole[len(whole)-3:], rest[:d])}
}

package units

import (
	"unicode"
	"unicode/utf8"

	"trivet/mechanics/diag"
)

// Mention is a name used in an expression: where, and as what.
type Mention struct {
	diag.Span
	Name  string
	Place bool // an argument that takes a vector, as in dir(A, B): a point is meant first
}

// Mentions gives the names an expression uses, in the order of the text: what
// the reader looks up in the sheet before anything else. Units behind numbers
// and functions are none; of T1.x the name is T1. A range (300 lbf .. F) and a
// text that does not read yet are looked through too.
func Mentions(text string) []Mention {
	toks, err := lex(text, false)
	if err != nil {
		return nil
	}
	var out []Mention
	if e, err := Parse(text); err == nil {
		out = named(out, text, toks, e.root, false)
	} else if low, high, err := ParseRange(text); err == nil {
		out = named(named(out, text, toks, low.root, false), text, toks, high.root, false)
	} else {
		out = loose(text, toks)
	}
	for i := range out {
		// Names are in the order of the tree but for a number's unit, so of the text.
		out[i].Name, out[i].End = undotted(out[i])
	}
	return out
}

// undotted takes the part of a name before its first dot.
func undotted(m Mention) (string, int) {
	for i := range m.Name {
		if m.Name[i] == '.' {
			return m.Name[:i], m.Start + i
		}
	}
	return m.Name, m.End
}

// named walks the tree of an expression.
func named(out []Mention, text string, toks []token, n *node, place bool) []Mention {
	if n.kind == nName {
		// The span of a name in parentheses takes them in: its word is in it once.
		for _, t := range toks {
			if t.kind == tName && t.start >= n.span.Start && t.end <= n.span.End {
				return append(out, Mention{diag.Between(t.start, t.end), text[t.start:t.end], place})
			}
		}
		return out
	}
	takes := 0
	for _, a := range n.args {
		vector := false
		if n.kind == nCall {
			if n.fn.takes[takes] == '|' {
				takes++
			}
			vector = n.fn.takes[takes] == 'v'
			takes++
		}
		out = named(out, text, toks, a, vector)
	}
	return out
}

// loose finds the names of a text that does not read: words that are neither
// functions nor units right behind a number.
func loose(text string, toks []token) (out []Mention) {
	var calls []*function
	unit := false // a unit may stand here, or go on
	for i, t := range toks {
		behind := unit
		switch {
		case t.kind == tNumber:
			unit = true
		case t.kind == tName && behind, t.kind == tSlash, t.kind == tDot, t.kind == tSuper:
		default:
			unit = false
		}
		switch t.kind {
		case tOpen:
			var fn *function
			if i > 0 && toks[i-1].kind == tName {
				fn = findFunction(text[toks[i-1].start:toks[i-1].end])
			}
			calls = append(calls, fn)
		case tClose:
			calls = calls[:max(0, len(calls)-1)]
		case tName:
			word := text[t.start:t.end]
			if t.mark || findFunction(word) != nil || word == "pi" || word == "π" || behind && bySymbol[word] != nil || !nameStart([]rune(word)[0]) {
				continue
			}
			var in *function
			if len(calls) > 0 {
				in = calls[len(calls)-1]
			}
			unit = false
			edge := i > 0 && (toks[i-1].kind == tOpen || toks[i-1].kind == tComma) && (toks[i+1].kind == tComma || toks[i+1].kind == tClose || toks[i+1].kind == tEnd)
			out = append(out, Mention{diag.Between(t.start, t.end), word, edge && in != nil && in.takes[0] == 'v'})
		}
	}
	return out
}

// Word gives the name, or the beginning of one, that a cursor stands in or at
// the edge of: what completion replaces. It is empty, at the cursor, where there
// is none. Digits behind a number (6m) are the number's; a dot parts words.
func Word(text string, cursor int) diag.Span {
	cursor = diag.RuneStart(text, cursor)
	start, end := cursor, cursor
	for start > 0 {
		r, w := utf8.DecodeLastRuneInString(text[:start])
		if !nameRune(r) {
			break
		}
		start -= w
	}
	for start < cursor && isDigit(text, start) {
		start++
	}
	for end < len(text) {
		r, w := utf8.DecodeRuneInString(text[end:])
		if !nameRune(r) || start == end && isDigit(text, end) {
			break
		}
		end += w
	}
	return diag.Between(start, end)
}

func nameRune(r rune) bool { return r != 'º' && (nameStart(r) || unicode.IsDigit(r)) }

// Setting says what a word at a place in an expression would be.
type Setting struct {
	Unit  bool // a unit: a number, or a unit before it, stands right before
	From  int  // where that unit begins, kN/m as a whole
	Place bool // an argument that takes a point or a vector
}

// SettingAt looks at what stands before a place in a text, which need not read.
func SettingAt(text string, at int) Setting {
	at = diag.RuneStart(text, at)
	toks, err := lex(text[:at], false)
	if err != nil {
		return Setting{}
	}
	toks = toks[:len(toks)-1]
	s := Setting{From: at}
	i := len(toks)
	for i > 0 { // back over the beginning of a compound unit
		t := toks[i-1]
		name := t.kind == tName && bySymbol[text[t.start:t.end]] != nil
		if !name && t.kind != tSlash && t.kind != tDot && t.kind != tSuper {
			break
		}
		s.From = t.start
		i--
	}
	s.Unit = i > 0 && toks[i-1].kind == tNumber && (i == len(toks) || toks[i].kind == tName)
	if !s.Unit {
		s.From = at
	}
	depth := 0
	for i := len(toks) - 1; i > 0; i-- {
		switch toks[i].kind {
		case tClose:
			depth++
		case tOpen:
			if depth--; depth < 0 {
				fn := findFunction(text[toks[i-1].start:toks[i-1].end])
				s.Place = fn != nil && fn.takes[0] == 'v' && !s.Unit
				return s
			}
		}
	}
	return s
}

package units

import (
	"math/big"
	"slices"
	"strings"

	"trivet/mechanics/diag"
)

// Nudge changes the number under a cursor by steps of its last digit and gives
// the new text and cursor: 3.40 becomes 3.41, 9.9 becomes 10.0, 1e3 becomes
// 2e3. The figures behind the point, an exponent, spaces between thousands
// and a written + stay. A sign is the number's where nothing stands before it
// that it could be taken from: 5 - 3 keeps its minus, and its 3 is not nudged
// below 0. Behind a unit the number before it is meant. A fraction (1/2, 3 1/2), a power and the digits of
// a name are left alone: ok is false, as where there is no number.
func Nudge(text string, cursor, steps int) (out string, at int, ok bool) {
	if len(text) > maxText || steps == 0 || steps > maxNudge || steps < -maxNudge {
		return text, cursor, false
	}
	one := groups(text)
	toks, err := lex(text, one)
	if err != nil {
		return text, cursor, false
	}
	i := numberAt(text, toks, cursor)
	if i < 0 || fixedNumber(toks, i) {
		return text, cursor, false
	}
	t := toks[i]
	start, negative, signed := t.start, false, false
	if i > 0 && (toks[i-1].kind == tMinus || toks[i-1].kind == tPlus) && (i == 1 || opens(toks[i-2].kind)) {
		start, signed, negative = toks[i-1].start, true, toks[i-1].kind == tMinus
	}
	free := signed || i == 0 || opens(toks[i-1].kind)
	body, exponent := text[t.start:t.end], ""
	if k := strings.IndexAny(body, "eE"); k >= 0 {
		body, exponent = body[:k], body[k:]
	}
	if negative {
		steps = -steps
	}
	digits, below := addSteps(body, steps)
	switch {
	case below && !free:
		return text, cursor, false
	case below:
		negative = !negative
	}
	if strings.Trim(digits, "0. \u00a0\u2009\u202f") == "" {
		negative = false
	}
	sign := ""
	if negative {
		if sign = "-"; signed && toks[i-1].kind == tMinus {
			sign = text[start:t.start] // the minus as it was typed
		}
	} else if signed && toks[i-1].kind == tPlus {
		sign = text[start:t.start]
	}
	word := sign + digits + exponent
	out = text[:start] + word + text[t.end:]
	n := len(toks)
	if signed {
		n--
	}
	if sign != "" {
		n++
	}
	if len(out) > maxText || groups(out) != one || !stillNumber(out, one, diag.Between(start+len(sign), start+len(word)), n) {
		return text, cursor, false
	}
	// The cursor keeps its distance from the number's end.
	return out, max(start, min(len(out), cursor+len(out)-len(text))), true
}

// groups tells that commas between thousands stand in a text, and not between values.
func groups(text string) bool {
	e, err := ParseOne(text)
	return err == nil && e.grouped != ""
}

// maxNudge bounds the steps of one nudge; a key repeats far less.
const maxNudge = 1_000_000

// stillNumber tells whether a piece of text is one number among n tokens: behind
// a name, as in h.5, it might join it.
func stillNumber(text string, one bool, at diag.Span, n int) bool {
	toks, err := lex(text, one)
	return err == nil && len(toks) == n && slices.ContainsFunc(toks, func(t token) bool {
		return t.kind == tNumber && t.start == at.Start && t.end == at.End
	})
}

// opens tells that a sign behind this token is a number's own.
func opens(k kind) bool {
	switch k {
	case tOpen, tComma, tStar, tDot, tPlusMinus, tRange:
		return true
	}
	return false
}

// numberAt gives the number token that a cursor stands in or at the end of,
// before the one it stands in front of; a sign counts with it. Where there is
// none it is the one whose unit the cursor stands in or behind. -1 for none.
func numberAt(text string, toks []token, cursor int) int {
	best, behind := -1, -1
	for i, t := range toks {
		switch {
		case t.start > cursor:
		case t.kind == tNumber:
			behind = i
		case t.kind == tSuper, t.kind == tSlash, t.kind == tDot, t.kind == tName && bySymbol[text[t.start:t.end]] != nil:
		default:
			if t.kind != tEnd {
				behind = -1
			}
		}
		if t.kind != tNumber {
			continue
		}
		start := t.start
		if i > 0 && (toks[i-1].kind == tMinus || toks[i-1].kind == tPlus) {
			start = toks[i-1].start
		}
		if start <= cursor && cursor <= t.end && (best < 0 || start < cursor) {
			best = i
		}
	}
	if best < 0 {
		return behind
	}
	return best
}

// fixedNumber tells whether a number belongs to a fraction, a mixed number or a
// power, which have no last digit to go by.
func fixedNumber(toks []token, i int) bool {
	at := func(k int) token {
		if k < 0 || k >= len(toks) {
			return token{}
		}
		return toks[k]
	}
	fraction := func(k int) bool { // whole/whole at k
		return at(k).whole && at(k).kind == tNumber && at(k+1).kind == tSlash && at(k+2).whole && at(k+2).kind == tNumber
	}
	before := i - 1
	if at(before).kind == tMinus || at(before).kind == tPlus {
		before--
	}
	switch {
	case at(i).vulgar, fraction(i), fraction(i - 2), at(i+1).kind == tNumber, at(i-1).kind == tNumber:
		return true
	case i > 0 && at(i-1).kind == tCaret, i > 1 && at(before).kind == tCaret:
		return true
	}
	return false
}

// addSteps adds steps of the last digit to an unsigned decimal number as typed.
// below tells that the result is less than nothing; the digits are then its size.
func addSteps(body string, steps int) (out string, below bool) {
	gap := "" // the space between thousands, where there is one
	var ds []byte
	point := -1
	for i, r := range body {
		switch {
		case r == '.':
			point = len(ds)
		case r >= '0' && r <= '9':
			ds = append(ds, body[i])
		default:
			gap = string(r)
		}
	}
	places := 0
	dot := point >= 0
	if dot {
		places = len(ds) - point
	}
	width := len(ds)
	ds, below = addWhole(ds, steps)
	// Leading zeros as typed: .5 stays without one, 0.5 keeps it.
	least := places
	if width > places {
		least = places + 1
	}
	trimmed := ds
	for len(trimmed) > least && len(trimmed) > 0 && trimmed[0] == '0' {
		trimmed = trimmed[1:]
	}
	for len(trimmed) < least {
		trimmed = append([]byte{'0'}, trimmed...)
	}
	whole, rest := string(trimmed[:len(trimmed)-places]), string(trimmed[len(trimmed)-places:])
	if gap != "" && len(whole) > 3 {
		var grouped string
		for len(whole) > 3 {
			grouped = gap + whole[len(whole)-3:] + grouped
			whole = whole[:len(whole)-3]
		}
		whole += grouped
	}
	if dot {
		return whole + "." + rest, below
	}
	return whole, below
}

// addWhole adds to a whole number in decimal digits and gives the size of the sum.
func addWhole(ds []byte, steps int) (sum []byte, below bool) {
	n := new(big.Int)
	n.SetString(string(ds), 10)
	n.Add(n, big.NewInt(int64(steps)))
	below = n.Sign() < 0
	return []byte(n.Abs(n).String()), below
}

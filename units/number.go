package units

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"trivet/mechanics/diag"
)

// lexNumber reads 6, .5, 6., 6e3, and thousands in groups of three behind
// single spaces as they are printed: 12 300.
//
// Where commas is set, commas may stand in the place of the spaces: 12,300.
func lexNumber(text string, i int, commas bool) (token, *diag.Error) {
	t := token{kind: tNumber, start: i, whole: true}
	end := digits(text, i)
	var grouped []byte
	if text[i] != '0' && end > i && end-i <= 3 {
		for {
			g := group(text, end)
			if commas && (grouped == nil || t.grouped) && end < len(text) && text[end] == ',' && digits(text, end+1)-end-1 == 3 {
				g, t.grouped = end+1, true
			} else if t.grouped {
				g = -1
			}
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
		hint := "one decimal point"
		if text[end] == '_' {
			hint = strings.ReplaceAll(text[i:j], "_", "")
		} else if whole, grouped := ungroup(text[i:j], '.'); grouped && strings.Count(text[i:j], ".") > 1 {
			hint = whole
		}
		return t, diag.At(diag.Between(i, j), text[i:j]+" is not a number", hint)
	}
	literal := text[i:end]
	if grouped != nil {
		literal = string(grouped) + text[mantissa:end]
	}
	x, err := strconv.ParseFloat(literal, 64)
	switch {
	case err != nil:
		return t, diag.At(diag.Between(i, end), text[i:end]+" is too large", "")
	case x == 0 && strings.ContainsAny(beforeExponent(literal), "123456789"):
		return t, diag.At(diag.Between(i, end), text[i:end]+" is too small to be distinguished from zero", "0")
	}
	t.num = x
	return t, nil
}

// ungroup takes the marks out of whole digits that they part into threes: 12.300 is
// 12300 where the mark is a point.
func ungroup(s string, mark byte) (whole string, ok bool) {
	groups := strings.Split(s, string(mark))
	for i, g := range groups {
		if !allDigits(g) || i > 0 && len(g) != 3 || i == 0 && (len(g) > 3 || g[0] == '0') {
			return s, false
		}
	}
	return strings.Join(groups, ""), len(groups) > 1
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
func twoWays(text string, start, end int, grouped []byte) *diag.Error {
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
	return diag.At(diag.Between(start, last), text[start:last]+" can be read two ways", fmt.Sprintf("%s/%s or %s + %s/%s", whole, rest[:d], whole[:len(whole)-3], whole[len(whole)-3:], rest[:d]))
}

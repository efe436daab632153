package sheet

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"trivet/mechanics/diag"
)

// Place is where a piece of the decoded text of ref's cell stands. Without such a cell
// it is the row's name, without the row the table's, and the start of the file where
// there is neither.
func (s *Sheet) Place(ref Ref, at diag.Span) diag.Place {
	return place(s.text, diag.Between(s.offset(ref, at.Start), s.offset(ref, at.End)))
}

func (s *Sheet) offset(ref Ref, offset int) int {
	if c, ok := s.Cell(ref); ok && c.whole.End > 0 {
		return c.at.Start + within(s.text[c.at.Start:c.at.End], offset)
	}
	return s.nameSpan(Ref{Table: ref.Table, Row: ref.Row}).Start
}

// NamePlace is where the name of what ref names stands: a cell's key, a row, a table.
// Without such a cell it is the row's name, without the row the table's.
func (s *Sheet) NamePlace(ref Ref) diag.Place { return place(s.text, s.nameSpan(ref)) }

func (s *Sheet) nameSpan(ref Ref) diag.Span {
	t, r := s.row(ref)
	switch {
	case t == nil:
		return diag.Span{}
	case r == nil:
		return t.at
	}
	if c, ok := r.Cell(ref.Key); ok && ref.Key != "" && c.keyAt.End > 0 {
		return c.keyAt
	}
	if len(r.pieces) > 0 {
		return r.pieces[0].name
	}
	return t.at
}

// within maps an offset in a decoded string to one in the raw value that it
// was decoded from. Past the end it gives the closing quote.
func within(raw string, offset int) int {
	offset = max(0, offset)
	open := opening(raw)
	if open == 0 { // a bare value
		return min(offset, len(raw))
	}
	end := len(raw) - 1
	if strings.HasPrefix(raw, `"""`) || strings.HasPrefix(raw, "'''") {
		end = len(raw) - 3
	}
	if raw[0] == '\'' {
		return min(open+offset, end)
	}
	i := open
	for decoded := 0; i < end; {
		n, width := escape(raw[i:])
		if n > 0 && decoded+n > offset {
			break
		}
		decoded += n
		i += width
	}
	return min(i, end)
}

// opening is the length of what stands before a string's text: its quotes, and
// the line end that follows them at once. It is 0 for a bare value.
func opening(raw string) int {
	switch {
	case strings.HasPrefix(raw, `"""`), strings.HasPrefix(raw, "'''"):
		switch {
		case strings.HasPrefix(raw[3:], "\n"):
			return 4
		case strings.HasPrefix(raw[3:], "\r\n"):
			return 5
		}
		return 3
	case strings.HasPrefix(raw, `"`), strings.HasPrefix(raw, "'"):
		return 1
	}
	return 0
}

// escape measures the first character of a string's raw text: the bytes it
// decodes to and the bytes it takes.
func escape(raw string) (decoded, width int) {
	if raw[0] != '\\' || len(raw) < 2 {
		return 1, 1
	}
	digits := 0
	switch raw[1] {
	case 'x':
		digits = 2
	case 'u':
		digits = 4
	case 'U':
		digits = 8
	case ' ', '\t', '\r', '\n':
		// a line end that is left out, with the blanks after it
		return 0, len(raw) - len(strings.TrimLeft(raw[1:], " \t\r\n"))
	default:
		return 1, 2
	}
	r, _ := strconv.ParseUint(raw[2:min(2+digits, len(raw))], 16, 32)
	return max(1, utf8.RuneLen(rune(r))), 2 + digits
}

package sheet

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"trivet/mechanics/diag"
)

// bom is the byte order mark some editors put before UTF-8 text.
const bom = "\ufeff"

// place is where a piece of a text stands. A byte order mark takes no column, and a
// piece that ends on another line has no width.
func place(text string, at diag.Span) diag.Place {
	start := diag.RuneStart(text, at.Start)
	begin := strings.LastIndexByte(text[:start], '\n') + 1
	line, _, _ := strings.Cut(text[begin:], "\n")
	before := text[begin:start]
	if begin == 0 {
		line, before = strings.TrimPrefix(line, bom), strings.TrimPrefix(before, bom)
	}
	p := diag.Place{Line: strings.Count(text[:begin], "\n") + 1, Column: utf8.RuneCountInString(before) + 1, Source: strings.TrimSuffix(line, "\r")}
	if piece := text[start:max(start, diag.RuneStart(text, at.End))]; !strings.Contains(piece, "\n") {
		p.Width = utf8.RuneCountInString(piece)
	}
	return p
}

// errorIn is an error at a byte offset of a sheet's text, which has yet to be placed.
func errorIn(at int, msg, hint string) *diag.Error { return diag.At(diag.Between(at, at), msg, hint) }

// Place is where a piece of the decoded text of ref's cell stands. Without such a cell
// it is the row's name, without the row the table's, and the start of the file where
// there is neither.
func (s *Sheet) Place(ref Ref, at diag.Span) diag.Place {
	c, ok := s.Cell(ref)
	if !ok || c.in == nil {
		start := s.nameSpan(Ref{Table: ref.Table, Row: ref.Row}).Start
		return place(s.text, diag.Between(start, start))
	}
	raw := s.text[c.value.Start:c.value.End]
	return place(s.text, diag.Between(c.value.Start+within(raw, at.Start), c.value.Start+within(raw, at.End)))
}

// NamePlace is where the name of what ref names stands: a cell's key, a row, a table.
// Without such a cell it is the row's name, without the row the table's.
func (s *Sheet) NamePlace(ref Ref) diag.Place { return place(s.text, s.nameSpan(ref)) }

func (s *Sheet) nameSpan(ref Ref) diag.Span {
	t := s.Table(ref.Table)
	r, _ := t.Row(ref.Row)
	if c, ok := r.Cell(ref.Key); ok && ref.Key != "" && c.in != nil {
		return c.name
	}
	if len(r.pieces) > 0 {
		return r.pieces[0].name
	}
	return t.at
}

// within maps an offset in a decoded string to one in the raw value that it
// was decoded from. Past the end it gives the closing quote.
func within(raw string, offset int) int {
	quote, open := opening(raw)
	end := len(raw) - len(quote)
	if quote == "" || quote[0] == '\'' {
		return min(open+max(0, offset), end)
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

// opening is the quote that a value begins with, "" for a bare one, and how long it is
// with the line end that follows a triple one, which is not part of the text.
func opening(raw string) (quote string, length int) {
	for _, q := range []string{`"""`, "'''", `"`, "'"} {
		if rest, ok := strings.CutPrefix(raw, q); ok {
			if len(q) == 3 {
				rest = strings.TrimPrefix(strings.TrimPrefix(rest, "\r"), "\n")
			}
			return q, len(raw) - len(rest)
		}
	}
	return "", 0
}

// escape measures the first character of a string's raw text: the bytes it
// decodes to and the bytes it takes.
func escape(raw string) (decoded, width int) {
	if raw[0] != '\\' || len(raw) < 2 {
		return 1, 1
	}
	if strings.IndexByte(" \t\r\n", raw[1]) >= 0 { // a line end that is left out, with the blanks after it
		return 0, skip(raw, 1, " \t\r\n")
	}
	if r, _, rest, err := strconv.UnquoteChar(raw, '"'); err == nil {
		return utf8.RuneLen(r), len(raw) - len(rest)
	}
	return 1, 2 // an escape of TOML alone
}

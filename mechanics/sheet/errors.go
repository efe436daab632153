package sheet

import (
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

// placed gives an error at an offset its line and column.
func placed(text string, e *diag.Error) *diag.Error {
	return &diag.Error{Place: place(text, e.Span), Msg: e.Msg, Hint: e.Hint}
}

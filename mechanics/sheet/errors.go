package sheet

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// Error says where and why a text is not a sheet. Line and Column count from
// 1; Column counts characters. Hint says what would do; it may be empty.
type Error struct {
	Line, Column int
	Msg, Hint    string
	Source       string // the line it stands on
}

// Error gives "line:column: what is wrong"; the caller puts the file before it.
func (e *Error) Error() string {
	return fmt.Sprintf("%d:%d: %s", e.Line, e.Column, e.Msg)
}

// bom is the byte order mark some editors put before UTF-8 text.
const bom = "\ufeff"

// place turns a byte offset into a line and a column, both from 1, the column
// in characters. A byte order mark takes no column.
func place(text string, offset int) (line, column int) {
	offset = max(0, min(offset, len(text)))
	for offset > 0 && offset < len(text) && !utf8.RuneStart(text[offset]) {
		offset--
	}
	before := text[:offset]
	start := strings.LastIndexByte(before, '\n') + 1
	before = before[start:]
	if start == 0 {
		before = strings.TrimPrefix(before, bom)
	}
	return strings.Count(text[:start], "\n") + 1, utf8.RuneCountInString(before) + 1
}

// lineAt is the line that a byte offset stands on, without a mark or an end.
func lineAt(text string, offset int) string {
	offset = max(0, min(offset, len(text)))
	start := strings.LastIndexByte(text[:offset], '\n') + 1
	line, _, _ := strings.Cut(text[start:], "\n")
	if start == 0 {
		line = strings.TrimPrefix(line, bom)
	}
	return strings.TrimSuffix(line, "\r")
}

func errorAt(text string, offset int, msg, hint string) *Error {
	line, column := place(text, offset)
	return &Error{Line: line, Column: column, Msg: msg, Hint: hint, Source: lineAt(text, offset)}
}

// Package diag is the one error of the program, for what a person typed or named:
// where it is, what is wrong, what to try; and the one way in which that is printed.
package diag

import (
	"cmp"
	"errors"
	"fmt"
)

// Span is a piece of a text, as byte offsets [Start, End).
type Span struct{ Start, End int }

// Between is the piece from one byte up to another.
func Between(start, end int) Span { return Span{start, end} }

// Whole is the span of a whole text.
func Whole(text string) Span { return Span{0, len(text)} }

// Place is a place in a file. Line and Column count from 1, Column in characters;
// Line is 0 where the whole file is meant, Column where the whole line is. Width is
// the number of characters meant and Source the line, as far as they are known.
type Place struct {
	Line   int    `json:"line"`
	Column int    `json:"column"`
	Width  int    `json:"-"`
	Source string `json:"-"`
}

// Error is what is wrong. Msg and Hint are in lower case without a full stop; Hint
// follows the words "Try: ", which it never contains, and may be empty.
type Error struct {
	Span Span `json:"-"` // in the text of a cell
	Place
	Msg   string  `json:"says"`
	Hint  string  `json:"hint"`
	Meant string  `json:"-"` // the known name that a mistyped one most likely stands for
	Keys  []Named `json:"-"` // where they name keys of rows, in order
	Err   error   `json:"-"` // the cause, where it is another error
}

// New is an error without a place.
func New(msg, hint string) *Error { return At(Span{}, msg, hint) }

// At is an error in the text of a cell.
func At(at Span, msg, hint string) *Error {
	e := &Error{Span: at}
	e.Msg, e.Hint = e.told(msg, false), e.told(hint, true)
	return e
}

// Of is a copy of the Error that err is or wraps. Any other error becomes the cause of
// one without a place.
func Of(err error) *Error {
	var e *Error
	if errors.As(err, &e) {
		found := *e
		return &found
	}
	return &Error{Msg: err.Error(), Err: err}
}

// Error gives "line:column: what is wrong. Try: what to try".
func (e *Error) Error() string { return e.position("") + e.Text() }

// Unwrap gives the cause.
func (e *Error) Unwrap() error { return e.Err }

// Text is Error without the place.
func (e *Error) Text() string {
	if e.Hint == "" {
		return e.Msg
	}
	return e.Msg + ". Try: " + e.Hint
}

func (e *Error) position(file string) string {
	at := ""
	if e.Line > 0 {
		at = fmt.Sprintf("%d: ", e.Line)
	}
	if e.Line > 0 && e.Column > 0 {
		at = fmt.Sprintf("%d:%d: ", e.Line, e.Column)
	}
	if file == "" {
		return at
	}
	return file + ":" + cmp.Or(at, " ")
}

package diag

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"

	"trivet/mechanics/printable"
)

// Short is the error on one line, "file:line:column: what is wrong. Try: what to try".
func (e *Error) Short(file string) string { return e.short(file, "") }

// In is Short, and below it the line with a caret, where the line is known.
func (e *Error) In(file string) string { return e.in(file, "") }

// Warning is In for what stops nothing.
func (e *Error) Warning(file string) string { return e.in(file, "warning: ") }

func (e *Error) short(file, mark string) string {
	return e.position(printable.Line(file)) + mark + printable.Line(e.Text()) // none may pass for a message of its own
}

func (e *Error) in(file, mark string) string {
	out := e.short(file, mark)
	if e.Line == 0 || strings.TrimSpace(e.Source) == "" || strings.ContainsFunc(e.Source, func(c rune) bool { return c != '\t' && unicode.IsControl(c) }) {
		return out // nothing to show, or what is no text
	}
	return out + "\n" + caret(around(e.Source, e.inSource()))
}

// Of a line that is longer than any screen so many bytes are shown on each side of
// an error.
const (
	longestSource = 240
	sourceBeside  = 60
)

// around cuts a long line to what stands around a span.
func around(line string, at Span) (string, Span) {
	if len(line) <= longestSource {
		return line, at
	}
	from := RuneStart(line, at.Start-sourceBeside)
	to := min(max(at.End, at.Start)+sourceBeside, len(line), from+longestSource)
	for to < len(line) && !utf8.RuneStart(line[to]) {
		to++
	}
	cut, before := line[from:to], ""
	if from > 0 {
		before = "... "
	}
	if to < len(line) {
		cut += " ..."
	}
	return before + cut, Span{at.Start - from + len(before), min(at.End, to) - from + len(before)}
}

// inSource turns characters into the bytes that the caret is drawn by.
func (e *Error) inSource() Span {
	n, span := 0, Span{len(e.Source), len(e.Source)}
	for i := range e.Source {
		if n == e.Column-1 {
			span.Start = i
		}
		if n == e.Column-1+max(1, e.Width) {
			span.End = i
			break
		}
		n++
	}
	return span
}

// caret gives two lines: the text, and ^~~~ below the span, set by the cells that the
// characters take on a screen. Tabs and line ends are shown as spaces.
func caret(text string, span Span) string {
	start := RuneStart(text, span.Start)
	end := max(start, RuneStart(text, span.End))
	column := ansi.StringWidth(shown(text[:start]))
	width := ansi.StringWidth(shown(text[:end])) - column
	return shown(text) + "\n" + strings.Repeat(" ", column) + "^" + strings.Repeat("~", max(width-1, 0))
}

// RuneStart brings an offset into a text and back to the start of its character.
func RuneStart(text string, i int) int {
	i = min(max(i, 0), len(text))
	for i > 0 && i < len(text) && !utf8.RuneStart(text[i]) {
		i--
	}
	return i
}

// shown replaces what does not show as itself.
func shown(text string) string {
	return printable.Line(strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) {
			return ' '
		}
		return r
	}, text))
}

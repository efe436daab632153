package report

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"trivet/mechanics/printable"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
	"trivet/units"
)

// Fault is an error with its place in a file. Line and Column count from 1,
// Column in characters; Line is 0 where the fault is the file's as a whole.
// Source is the line it stands on and Width the characters it spans there.
type Fault struct {
	Line, Column int
	Width        int
	Source       string
	Msg, Hint    string
}

// Faults gives a problem's errors their places in the file.
func Faults(s *sheet.Sheet, errs []problem.Error) []Fault {
	faults := make([]Fault, len(errs))
	for i, e := range errs {
		if e.InName {
			line, column, width := s.NamePosition(e.Ref)
			faults[i] = Fault{Line: line, Column: column, Width: width, Msg: e.Msg, Hint: e.Hint, Source: s.Line(line)}
			continue
		}
		line, column := s.Position(e.Ref, e.Span.Start)
		faults[i] = Fault{Line: line, Column: column, Msg: e.Msg, Hint: e.Hint, Source: s.Line(line)}
		if endLine, end := s.Position(e.Ref, e.Span.End); endLine == line {
			faults[i].Width = end - column
		}
	}
	return faults
}

// Where is the fault's line for standard error, `file:line:column: what: what
// would do`, and below it the source with a caret, where there is a line.
func (f Fault) Where(file string) string { return f.where(file, "") }

func (f Fault) where(file, mark string) string {
	msg := mark + printable.Line(units.WithHint(f.Msg, f.Hint)) // none may pass for a message of its own
	file = printable.Line(file)
	if f.Line == 0 {
		return file + ": " + msg
	}
	out := fmt.Sprintf("%s:%d:%d: %s", file, f.Line, f.Column, msg)
	if strings.TrimSpace(f.Source) == "" || strings.ContainsFunc(f.Source, func(c rune) bool { return c != '\t' && unicode.IsControl(c) }) {
		return out // nothing to show, or what is no text
	}
	return out + "\n" + units.Caret(around(f.Source, f.span()))
}

// Of a line that is longer than any screen so many bytes are shown on each side of
// a fault.
const (
	longestSource = 240
	sourceBeside  = 60
)

// around cuts a long line to what stands around a span.
func around(line string, at units.Span) (string, units.Span) {
	if len(line) <= longestSource {
		return line, at
	}
	from, to := max(at.Start-sourceBeside, 0), min(max(at.End, at.Start)+sourceBeside, len(line))
	to = min(to, from+longestSource)
	for from > 0 && !utf8.RuneStart(line[from]) {
		from--
	}
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
	end := min(at.End, to)
	return before + cut, units.Span{Start: at.Start - from + len(before), End: end - from + len(before)}
}

// span turns characters into the bytes that the caret is drawn by.
func (f Fault) span() units.Span {
	n, span := 0, units.Span{Start: len(f.Source), End: len(f.Source)}
	for i := range f.Source {
		if n == f.Column-1 {
			span.Start = i
		}
		if n == f.Column-1+max(1, f.Width) {
			span.End = i
			break
		}
		n++
	}
	return span
}

// mostAlike is up to how many notes that are alike are each shown where they stand; of
// more only the first is.
const mostAlike = 2

// Warnings are the lines for standard error that say what stops nothing: each note where
// it stands, and of many alike the first, with how many there are more.
func Warnings(file string, s *sheet.Sheet, notes []problem.Error) []string {
	return noteLines(file, "warning: ", s, notes)
}

// Unread are the same lines for notes that are failures.
func Unread(file string, s *sheet.Sheet, notes []problem.Error) []string {
	return noteLines(file, "", s, notes)
}

func noteLines(file, mark string, s *sheet.Sheet, notes []problem.Error) (lines []string) {
	for _, alike := range problem.Gather(notes) {
		faults := Faults(s, alike)
		if n := len(faults); n > mostAlike {
			last := Fault{Line: faults[n-1].Line, Column: faults[n-1].Column, Msg: fmt.Sprintf("and %d more alike, of which this is the last", n-1)}
			faults = []Fault{faults[0], last}
		}
		for _, f := range faults {
			lines = append(lines, f.where(file, mark))
		}
	}
	return lines
}

// CheckLine is the one line that `trivet check` prints for a sheet; t is what the ± of
// its inputs does, nil where none has one. A sheet of which something is read by nothing
// is not well: its results may be those of another one.
func CheckLine(file string, s *statics.Solution, t *uncertainty.Effect) (well bool, line string) {
	file = printable.Line(file)
	failures := uncertainty.Failures(s, t)
	for _, alike := range problem.Gather(s.Problem.Unread) {
		more := ""
		if n := len(alike); n > mostAlike {
			alike, more = alike[:1], fmt.Sprintf(", and %d more alike", n-1)
		}
		for _, e := range alike {
			failures = append(failures, e.Msg+more)
		}
	}
	if len(failures) > 0 {
		return false, fmt.Sprintf("FAILS %s: %s", file, printable.Line(strings.Join(failures, "; ")))
	}
	line = fmt.Sprintf("ok    %s: %s, %s", file, s.Verdict, say.Count(len(s.Checks), "check"))
	if s.Problem.Expect == problem.AtRisk {
		line += ", " + AtRisk + " as expected"
	}
	if n := len(s.Answers); n > 0 {
		line += ", " + say.Count(n, "reference answer") + " met"
	}
	return true, line
}

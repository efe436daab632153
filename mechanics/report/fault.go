package report

import (
	"fmt"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/names"
	"trivet/mechanics/printable"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
)

// Faults gives a problem's errors their places in the file.
func Faults(s *sheet.Sheet, errs []problem.Error) []*diag.Error {
	return say.Each(errs, func(e problem.Error) *diag.Error { return e.Placed(s) })
}

// maxAlike is up to how many notes that are alike are each shown where they stand; of
// more only the first is.
const maxAlike = 2

// Notes are lines for standard error: each note where it stands, written as a warning or
// an error, and of many alike the first, with how many there are more.
func Notes(file string, s *sheet.Sheet, notes []problem.Error, in func(*diag.Error, string) string) (lines []string) {
	for _, alike := range names.Gather(notes) {
		faults := Faults(s, alike)
		if n := len(faults); n > maxAlike {
			last := faults[n-1]
			last.Msg, last.Hint, last.Source = fmt.Sprintf("and %d more alike, of which this is the last", n-1), "", ""
			faults = []*diag.Error{faults[0], last}
		}
		for _, f := range faults {
			lines = append(lines, in(f, file))
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
	for _, alike := range names.Gather(s.Problem.Unread) {
		more := ""
		if n := len(alike); n > maxAlike {
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

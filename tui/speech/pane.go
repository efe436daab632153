package speech

import (
	"fmt"

	"trivet/mechanics/doc"
	"trivet/mechanics/report"
	"trivet/mechanics/sheet"
	"trivet/mechanics/working"
	"trivet/tui/layout"
	"trivet/tui/results"
	"trivet/tui/session"
	"trivet/tui/text"
	"trivet/units"
)

// Whole is a width at which no text is broken.
const Whole = 1 << 20

// Pane is what a pane shows of the result of a sheet, and of its working as far as that is laid
// out, a sentence a line; old tells that it is of an earlier version.
func Pane(p layout.Pane, r *session.Result, of *sheet.Sheet, k *working.Working, old bool) (lines []string) {
	switch {
	case p == layout.Picture && r.Problem == nil:
		return nil
	case p == layout.Picture:
		return report.Described(r.Problem, r.Solution)
	case r.Solution == nil:
		lines = []string{"no result yet"}
		for _, e := range r.Errs {
			lines = append(lines, Wrong(of, e))
		}
		return lines
	case old:
		lines = []string{"stale: this is the result of an earlier version of the sheet"}
	}
	switch p {
	case layout.Checks:
		return append(lines, results.Checks(r, Whole).Read()...)
	case layout.Ranges:
		return append(lines, results.Ranges(r, Whole).Read()...)
	case layout.Limits:
		return append(lines, results.Limits(r, Whole).Read()...)
	case layout.Working, layout.HandSolution:
		return append(lines, steps(k, p == layout.HandSolution)...)
	}
	return append(lines, system(r)...)
}

// system is the verdict, the equations, the unknowns and the lines.
func system(r *session.Result) []string {
	s, p := r.Solution, r.Problem
	lines := s.Words()
	if eq := report.LineEquations(s); len(eq) > 0 {
		lines = append(append(lines, "equations:"), eq[:min(len(eq), results.MaxRows)]...)
	}
	var d text.Lines
	results.Order(r, &d, Whole)
	lines = append(lines, d.Read()...)
	if len(s.X) > 0 {
		lines = append(lines, "unknowns:")
	}
	for i := range min(len(s.X), results.MaxRows) {
		line := s.X[i].Name + " " + report.ResultText(s, i) + " " + report.SenseWord(s, i)
		if _, c := report.LimitCheck(s, i); c != nil {
			line += "; " + report.UsePercent(p, c.Value/c.Bound) + " of its limit " + results.Format(p, c.Bound, units.Force)
		}
		if s.X[i].Broken {
			line += "; inadmissible"
		}
		lines = append(lines, line)
	}
	if courses := report.LineCourses(p); len(courses) > 0 {
		lines = append(append(lines, "lines:"), courses[:min(len(courses), results.MaxRows)]...)
	}
	return append(lines, results.Caution)
}

// steps are the steps of the working, or those of the hand solution.
func steps(k *working.Working, hand bool) (lines []string) {
	if k == nil {
		return nil
	}
	steps := k.Steps
	if hand {
		if steps = k.HandSteps(); len(steps) == 0 {
			return []string{k.NoHandSolution()}
		}
	}
	for i, s := range steps {
		lines = append(append(lines, fmt.Sprintf("%d: %s", i+1, s.Title)), doc.Lines(s.Body)...)
	}
	return lines
}

package tui

import (
	"fmt"

	"trivet/mechanics/doc"
	"trivet/mechanics/report"
	"trivet/tui/layout"
	"trivet/tui/results"
	"trivet/tui/text"
	"trivet/units"
)

func (m Model) pictureLines() []string {
	if m.live.Problem == nil {
		return nil
	}
	return m.live.spoken.of(layout.Picture, m.live.Problem, func() []string { return report.Described(m.live.Problem, m.live.Solution) })
}

// resultLines are what a pane of results shows, a sentence a line.
func (m Model) resultLines(p layout.Pane) (lines []string) {
	l := m.live
	if l.Solution == nil {
		lines = []string{"no result yet"}
		for _, e := range l.Errs {
			lines = append(lines, m.wrong(e))
		}
		return lines
	}
	if m.isOld(p) {
		lines = append(lines, "stale: this is the result of an earlier version of the sheet")
	}
	if p == layout.Working || p == layout.HandSolution {
		return append(lines, l.spoken.of(p, m.worked.Value.working, func() []string { return m.workingLines(p) })...)
	}
	of := any(l.Solution)
	if p == layout.Ranges || p == layout.Limits {
		of = l.Weighed // which comes later
	}
	return append(lines, l.spoken.of(p, of, func() []string { return l.paneLines(p) })...)
}

// paneLines are what a pane shows of a result.
func (l live) paneLines(p layout.Pane) []string {
	switch p {
	case layout.Checks:
		return l.checkLines()
	case layout.Ranges:
		return results.Ranges(&l.Result, wholeLine).Read()
	case layout.Limits:
		return results.Limits(&l.Result, wholeLine).Read()
	}
	return append(l.systemLines(), results.Caution)
}

// systemLines are the verdict, the equations, the unknowns and the lines.
func (l live) systemLines() []string {
	s, p := l.Solution, l.Problem
	lines := s.Words()
	if eq := report.LineEquations(s); len(eq) > 0 {
		lines = append(append(lines, "equations:"), eq[:min(len(eq), results.MaxRows)]...)
	}
	var d text.Lines
	results.Order(&l.Result, &d, wholeLine)
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
	return lines
}

// checkLines are the checks, those that fail first, and the answers.
func (l live) checkLines() (lines []string) {
	for _, want := range []bool{false, true} {
		for _, c := range l.Solution.Checks {
			if c.OK == want {
				lines = append(lines, okWord(c.OK)+c.Says(l.Problem))
			}
		}
	}
	if len(l.Solution.Answers) > 0 {
		lines = append(lines, "answers:")
	}
	for _, a := range l.Solution.Answers {
		lines = append(lines, okWord(a.OK)+a.Says(l.Problem))
	}
	return lines
}

// workingLines are the steps of the working, or those of the hand solution.
func (m Model) workingLines(p layout.Pane) (lines []string) {
	k := m.worked.Value.working
	if k == nil {
		return nil
	}
	steps := k.Steps
	if p == layout.HandSolution {
		if steps = k.HandSteps(); len(steps) == 0 {
			return []string{k.NoHandSolution()}
		}
	}
	for i, s := range steps {
		lines = append(append(lines, fmt.Sprintf("%d: %s", i+1, s.Title)), doc.Lines(s.Body)...)
	}
	return lines
}

func okWord(ok bool) string { return map[bool]string{true: "ok: ", false: "FAILS: "}[ok] }

package tui

import (
	"fmt"

	"trivet/mechanics/doc"
	"trivet/mechanics/report"
	"trivet/tui/layout"
	"trivet/units"
)

func (m Model) pictureLines() []string {
	if m.live.problem == nil {
		return nil
	}
	return m.live.spoken.of(layout.Picture, m.live.problem, func() []string { return report.Described(m.live.problem, m.live.solution) })
}

// resultLines are what a pane of results shows, a sentence a line.
func (m Model) resultLines(p layout.Pane) (lines []string) {
	l := m.live
	if l.solution == nil {
		lines = []string{"no result yet"}
		for _, e := range l.errs {
			lines = append(lines, m.wrong(e))
		}
		return lines
	}
	if m.isOld(p) {
		lines = append(lines, "stale: this is the result of an earlier version of the sheet")
	}
	if p == layout.Working || p == layout.HandSolution {
		return append(lines, l.spoken.of(p, m.worked.working, func() []string { return m.workingLines(p) })...)
	}
	of := any(l.solution)
	if p == layout.Ranges || p == layout.Limits {
		of = l.weighed // which comes later
	}
	return append(lines, l.spoken.of(p, of, func() []string { return l.paneLines(p) })...)
}

// paneLines are what a pane shows of a result.
func (l live) paneLines(p layout.Pane) []string {
	switch p {
	case layout.Checks:
		return l.checkLines()
	case layout.Ranges:
		return l.ranges(wholeLine).read()
	case layout.Limits:
		return l.limits(wholeLine).read()
	}
	return append(l.systemLines(), caution)
}

// systemLines are the verdict, the equations, the unknowns and the lines.
func (l live) systemLines() []string {
	s, p := l.solution, l.problem
	lines := s.Words()
	if eq := report.LineEquations(s); len(eq) > 0 {
		lines = append(append(lines, "equations:"), eq[:min(len(eq), maxRows)]...)
	}
	var d paneText
	l.order(&d, wholeLine)
	lines = append(lines, d.read()...)
	if len(s.X) > 0 {
		lines = append(lines, "unknowns:")
	}
	for i := range min(len(s.X), maxRows) {
		line := s.X[i].Name + " " + report.ResultText(s, i) + " " + report.SenseWord(s, i)
		if limit, use, ok := report.LimitUse(s, i); ok {
			line += "; " + report.UsePercent(p, use) + " of its limit " + format(p, limit, units.Force)
		}
		if s.X[i].Broken {
			line += "; inadmissible"
		}
		lines = append(lines, line)
	}
	if courses := report.LineCourses(p); len(courses) > 0 {
		lines = append(append(lines, "lines:"), courses[:min(len(courses), maxRows)]...)
	}
	return lines
}

// checkLines are the checks, those that fail first, and the answers.
func (l live) checkLines() (lines []string) {
	for _, want := range []bool{false, true} {
		for _, c := range l.solution.Checks {
			if c.OK == want {
				lines = append(lines, okWord(c.OK)+c.Says(l.problem))
			}
		}
	}
	if len(l.solution.Answers) > 0 {
		lines = append(lines, "answers:")
	}
	for _, a := range l.solution.Answers {
		lines = append(lines, okWord(a.OK)+a.Says(l.problem))
	}
	return lines
}

// workingLines are the steps of the working, or those of the hand solution.
func (m Model) workingLines(p layout.Pane) (lines []string) {
	k := m.worked.working
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

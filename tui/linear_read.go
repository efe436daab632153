package tui

import (
	"fmt"
	"strings"

	"trivet/mechanics/report"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/units"
)

// pageLines is how many lines a page key reads on.
const pageLines = 10

// readLines are the lines of what is read, and the one that is read now.
func (m Model) readLines() (lines []string, at int) {
	switch {
	case m.help != nil:
		lines, at = spokenDoc(m.helpText(wholeLine), ": "), m.help.y
	case m.board.on:
		lines, at = m.stepLines(), m.board.line
	case m.focus == layout.Picture:
		lines, at = m.pictureLines(), m.speech.read[m.focus]
	default:
		lines, at = m.resultLines(m.focus), m.speech.read[m.focus]
	}
	if len(lines) == 0 {
		lines = []string{nothingYet}
	}
	return lines, max(min(at, len(lines)-1), 0)
}

// nothingYet stands for what is being written.
const nothingYet = "nothing yet"

// wholeLine is a width at which no text is broken.
const wholeLine = 1 << 20

// spokenDoc is a text in lines, without the blanks that set its columns: the first
// wide blank of a line becomes the mark.
func spokenDoc(d doc, mark string) (lines []string) {
	for _, l := range d {
		var s strings.Builder
		for _, seg := range l {
			s.WriteString(seg.text)
		}
		text := strings.TrimSpace(s.String())
		if head, rest, ok := strings.Cut(text, "  "); ok {
			text = head + mark + strings.TrimSpace(rest)
			for strings.Contains(text, "  ") {
				head, rest, _ := strings.Cut(text, "  ")
				text = head + ", " + strings.TrimSpace(rest)
			}
		}
		if text != "" {
			lines = append(lines, text)
		}
	}
	return lines
}

// readOn moves in what is read; false where the intent is none of reading.
func (m *Model) readOn(i keys.Intent) bool {
	lines, at := m.readLines()
	switch i {
	case keys.Up:
		at--
	case keys.Down:
		at++
	case keys.PageUp:
		at -= pageLines
	case keys.PageDown:
		at += pageLines
	case keys.First:
		at = 0
	case keys.Last:
		at = len(lines) - 1
	default:
		return false
	}
	at = max(min(at, len(lines)-1), 0)
	m.speech.jumped = i == keys.First || i == keys.Last
	switch {
	case m.help != nil:
		m.help = &offset{y: at}
	case m.board.on:
		m.board.line = at
	default:
		m.speech.read[m.focus] = at
	}
	return true
}

// readScene says the lines that have been read on to.
func (m Model) readScene(was Model, name string) []string {
	lines, at := m.readLines()
	same := was.history != nil && was.mode() == m.mode() && was.focus == m.focus
	if !same {
		return []string{fmt.Sprintf("%s, line %d of %d: %s", name, at+1, len(lines), lines[at])}
	}
	earlier, before := was.readLines()
	switch {
	case earlier[0] == nothingYet && lines[0] != nothingYet:
		return []string{fmt.Sprintf("%s, line %d of %d: %s", name, at+1, len(lines), lines[at])}
	case at != before && m.speech.jumped:
		return lines[at : at+1]
	case at > before && at-before <= pageLines:
		return lines[before+1 : at+1]
	case at < before && before-at <= pageLines:
		return lines[at:before]
	case at != before:
		return lines[at : at+1]
	}
	if m.help == nil && m.focus.Result() && m.read[m.focus].at != was.read[m.focus].at && m.says != "" {
		return []string{m.says}
	}
	if m.focus == layout.Picture && was.selected() != m.selected() {
		return m.pickedWords()
	}
	return nil
}

// pickedWords says more of what was picked in the picture.
func (m Model) pickedWords() []string {
	ref := m.selected()
	for _, l := range m.pictureLines() {
		for _, begin := range []string{"point ", "body ", "couple ", "load ", ""} {
			if rest, ok := strings.CutPrefix(l, begin+ref.Row); ok && (strings.HasPrefix(rest, " ") || strings.HasPrefix(rest, ":")) {
				return []string{l}
			}
		}
	}
	return nil
}

func (m Model) pictureLines() []string {
	if m.live.problem == nil {
		return nil
	}
	return report.Described(m.live.problem, m.live.solution)
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
		lines = append(lines, "stale: this is the result of an earlier sheet")
	}
	switch p {
	case layout.Checks:
		return append(lines, l.checkLines()...)
	case layout.Working, layout.Route:
		return append(lines, m.workingLines(p)...)
	case layout.Ranges:
		return append(lines, spokenDoc(l.ranges(wholeLine), ", ")...)
	case layout.Limits:
		return append(lines, spokenDoc(l.limits(wholeLine), ", ")...)
	}
	return append(append(lines, l.systemLines()...), caution)
}

// systemLines are the verdict, the equations, the unknowns and the lines.
func (l live) systemLines() []string {
	s, p := l.solution, l.problem
	lines := s.Words()
	if eq := report.LineEquations(s); len(eq) > 0 {
		lines = append(append(lines, "equations:"), eq[:min(len(eq), mostRows)]...)
	}
	var d doc
	l.order(&d, wholeLine)
	lines = append(lines, spokenDoc(d, ": ")...)
	if len(s.X) > 0 {
		lines = append(lines, "unknowns:")
	}
	for i := range min(len(s.X), mostRows) {
		line := s.X[i].Name + " " + report.ResultText(s, i) + " " + report.SenseWord(s, i)
		if limit, use, ok := report.LimitUse(s, i); ok {
			line += "; " + units.Figures(100*use, p.Figures) + " % of its limit " + format(p, limit, units.Force)
		}
		if s.X[i].Broken {
			line += "; cannot be"
		}
		lines = append(lines, line)
	}
	if courses := report.LineCourses(p); len(courses) > 0 {
		lines = append(append(lines, "lines:"), courses[:min(len(courses), mostRows)]...)
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

// workingLines are the steps of the working, or those of the hand route.
func (m Model) workingLines(p layout.Pane) (lines []string) {
	k := m.worked.working
	if k == nil {
		return nil
	}
	steps := k.Steps
	if p == layout.Route {
		if steps = steps[k.RouteFrom:k.RouteTo]; len(steps) == 0 {
			return []string{k.NoRoute()}
		}
	}
	for i, s := range steps {
		lines = append(append(lines, fmt.Sprintf("%d: %s", i+1, s.Title)), report.Lines(s.Body)...)
	}
	return lines
}

func okWord(ok bool) string { return map[bool]string{true: "ok: ", false: "FAILS: "}[ok] }

// stepLines are the step on the board, its title first.
func (m Model) stepLines() []string {
	steps := m.steps()
	if m.board.at >= len(steps) {
		if m.live.solution == nil {
			return []string{"no result yet, so there is no working: esc leads back to the cells"}
		}
		return nil
	}
	step := steps[m.board.at]
	body, hidden := step.Body, false
	if m.board.hides && !m.board.shown {
		body, hidden = newHiding(m.worked.of).blocks(step)
	}
	lines := append([]string{fmt.Sprintf("step %d of %d: %s", m.board.at+1, len(steps), grid.Clean(step.Title))}, report.Lines(body)...)
	if hidden && len(body) == 0 {
		lines = append(lines, "hidden: r shows it")
	}
	if m.live.stale {
		lines = append(lines, "stale: this is of an earlier sheet")
	}
	return lines
}

// boardScene says a whole step where another shows, or the line read on to.
func (m Model) boardScene(was Model) []string {
	lines := m.stepLines()
	if was.board.on && !was.board.list && was.help == nil && was.ask == nil && was.naming == nil && strings.Join(was.stepLines(), "\n") == strings.Join(lines, "\n") {
		if at := max(min(m.board.line, len(lines)-1), 0); at != was.board.line && len(lines) > 0 {
			return lines[at : at+1]
		}
		return nil
	}
	return lines
}

// readBoard reads a step line by line; a step is whole when it is said, so the
// next one is never more of it.
func (m *Model) readBoard(i keys.Intent) bool {
	switch i {
	case keys.Up, keys.Down:
		return m.readOn(i)
	case keys.NextStep, keys.PrevStep:
		m.board.line = 0
	}
	return false
}

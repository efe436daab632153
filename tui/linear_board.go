package tui

import (
	"fmt"
	"strings"

	"trivet/mechanics/doc"
	"trivet/tui/grid"
	"trivet/tui/keys"
)

// stepLines are the step on the board, its title first.
func (m Model) stepLines() []string {
	steps := m.steps()
	if m.board.at >= len(steps) {
		if m.live.Solution == nil {
			return []string{"no result yet, so there is no working: esc leads back to the cells"}
		}
		return nil
	}
	step := steps[m.board.at]
	body, hidden := step.Body, false
	if m.board.hides && !m.board.shown {
		body, hidden = newHiding(m.worked.of).blocks(step)
	}
	lines := append([]string{fmt.Sprintf("step %d of %d: %s", m.board.at+1, len(steps), grid.Clean(step.Title))}, doc.Lines(body)...)
	if hidden && len(body) == 0 {
		lines = append(lines, "hidden: r shows it")
	}
	if m.live.Stale {
		lines = append(lines, "stale: this belongs to an earlier version of the sheet")
	}
	return lines
}

// boardScene says a whole step where another shows, or the line read on to.
func (m Model) boardScene(was Model) []string {
	lines := m.stepLines()
	if was.board.on && was.board.list == nil && was.help == nil && was.ask == nil && was.naming == nil && strings.Join(was.stepLines(), "\n") == strings.Join(lines, "\n") {
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

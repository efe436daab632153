package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/mechanics/working"
	"trivet/tui/board"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/results"
	"trivet/tui/session"
)

// toBoard opens the board.
func (m *Model) toBoard() tea.Cmd {
	m.board = m.board.Opened()
	return m.lay()
}

// lay lays the solution out as steps, unless that is done already.
func (m *Model) lay() tea.Cmd {
	s := m.live.Solution
	if s == nil || m.worked.Of == s || !m.wantsSteps() {
		return nil
	}
	wanted := m.stepWidths()
	return m.laying.Ask(s, func() results.Steps { return results.Lay(working.Build(s), wanted) })
}

// wantsSteps tells whether the working shows, on the board or in a pane.
func (m *Model) wantsSteps() bool {
	return m.board.On || m.stepWidths().Any()
}

func (m *Model) stepWidths() results.Widths {
	s := m.screen()
	return results.StepWidths(&s, m.theme.Glyphs.ASCII)
}

// takeWorked receives a working, and finds the step that was shown.
func (m *Model) takeWorked(msg results.Laid) {
	if !m.laying.Take(msg, m.live.Solution) {
		return
	}
	m.worked = msg
	if msg.Fault != "" {
		m.say("the working could not be written (fault: "+msg.Fault+")", true)
		return
	}
	m.board = m.board.Follow(msg.Value.Working.Steps)
}

// boardOf is what the board shows.
func (m Model) boardOf() board.Of {
	return board.Of{
		Working: m.worked.Value.Working, Problem: m.live.Problem, Solution: m.live.Solution, Stale: m.live.Stale,
		W: m.w, H: m.h, Whole: m.linear, Theme: m.theme, View: m.cam.View,
		Picture: m.cam.Options(m.theme.Glyphs.ASCII, m.live.Stale, sheet.Ref{}),
	}
}

// onBoard does the intents of the board; in words its step is read line by line.
func (m *Model) onBoard(i keys.Intent) bool {
	b, says, ok := m.board.Do(i, m.boardOf())
	m.board = b
	m.say(says, false)
	switch {
	case ok:
	case b.List != nil:
		return false
	case m.linear && m.readOn(i):
	case i == keys.WritePage:
		m.askPage(session.WorkingPage)
	default:
		_, ok := m.cam.Do(i)
		return ok
	}
	return true
}

// drawBoard draws the board on the whole screen.
func (m Model) drawBoard(c grid.Canvas) {
	m.board.Draw(c, m.boardOf())
	m.drawEnd(c, board.Margin)
}

package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/working"
	"trivet/tui/board"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/session"
)

// stepwise is the working of a solution.
type stepwise struct {
	working *working.Working
	written [2]shownText // as the panes that showed it when it was asked for want it
}

type worked = session.Reply[*statics.Solution, stepwise]

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
	wanted := m.stepPanes()
	return m.live.laying.Ask(s, func() stepwise {
		k := stepwise{working: working.Build(s)}
		k.write(wanted)
		return k
	})
}

// wantsSteps tells whether the working shows, on the board or in a pane.
func (m Model) wantsSteps() bool {
	if m.board.On {
		return true
	}
	wanted := m.stepPanes()
	return wanted.working+wanted.handSolution > 0
}

// takeWorked receives a working, and finds the step that was shown.
func (m *Model) takeWorked(msg worked) {
	if !m.live.laying.Take(msg, m.live.Solution) {
		return
	}
	m.worked = msg
	if msg.Fault != "" {
		m.say("the working could not be written (fault: "+msg.Fault+")", true)
		return
	}
	m.board = m.board.Follow(msg.Value.working.Steps)
}

// boardOf is what the board shows.
func (m Model) boardOf() board.Of {
	return board.Of{
		Working: m.worked.Value.working, Problem: m.live.Problem, Solution: m.live.Solution, Stale: m.live.Stale,
		W: m.w, H: m.h, Whole: m.linear, Theme: m.theme, View: m.cam.View,
		Picture: m.cam.Options(m.theme.Glyphs.ASCII, m.live.Stale, sheet.Ref{}),
	}
}

// onBoard does the intents of the board; in words its step is read line by line.
func (m *Model) onBoard(i keys.Intent) bool {
	b, says, ok := m.board.Do(i, m.boardOf())
	m.board = b
	if says != "" {
		m.say(says, false)
	}
	switch {
	case ok:
	case b.List != nil:
		return false
	case m.linear && m.readOn(i):
	case i == keys.WritePage:
		m.askPage(WorkingPage)
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

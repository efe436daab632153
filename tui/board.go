package tui

import (
	"fmt"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/statics"
	"trivet/mechanics/working"
	"trivet/tui/board"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/picture"
)

// worked is the working of a solution.
type worked struct {
	of      *statics.Solution
	working *working.Working
	fault   string
	written [2]shownText // as the panes that showed it when it was asked for want it
}

// toBoard opens the board.
func (m *Model) toBoard() tea.Cmd {
	m.board = m.board.Opened()
	return m.lay()
}

// lay lays the solution out as steps, unless that is done already. One is laid out at
// a time; the newest that came meanwhile follows.
func (m *Model) lay() tea.Cmd {
	s := m.live.Solution
	if !m.wantsSteps() || s == nil || m.worked.of == s || m.laying != nil {
		return nil
	}
	m.laying = s
	wanted := m.stepPanes()
	return func() (msg tea.Msg) {
		// A fault of ours in here must not cost what was typed and not saved.
		defer func() {
			if r := recover(); r != nil {
				msg = worked{of: s, fault: fmt.Sprint(r)}
			}
		}()
		w := worked{of: s, working: working.Build(s)}
		w.write(wanted)
		return w
	}
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
	m.laying = nil
	if msg.of != m.live.Solution {
		return // overtaken: the newer one is on its way
	}
	m.worked = msg
	defer m.fit() // the panes that show it
	if msg.fault != "" {
		m.say("the working could not be written (fault: "+msg.fault+")", true)
		return
	}
	m.board = m.board.Follow(msg.working.Steps)
}

// boardOf is what the board shows.
func (m Model) boardOf() board.Of {
	return board.Of{
		Working: m.worked.working, Problem: m.live.Problem, Solution: m.live.Solution, Stale: m.live.Stale,
		W: m.w, H: m.h, Whole: m.linear, Theme: m.theme, View: m.cam.view,
		Picture: picture.Options{ASCII: m.theme.Glyphs.ASCII != m.cam.plain, Zoom: m.cam.zoom, Arrows: m.cam.arrows, Stale: m.live.Stale},
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
		if !b.On {
			m.fit()
		}
	case b.List != nil:
		return false
	case m.linear && m.readOn(i):
	case i == keys.WritePage:
		m.askPage(WorkingPage)
	case m.cam.handle(i):
		m.project()
	default:
		return false
	}
	return true
}

// drawBoard draws the board on the whole screen.
func (m Model) drawBoard(c grid.Canvas) {
	m.board.Draw(c, m.boardOf())
	m.drawEnd(c, board.Margin)
}

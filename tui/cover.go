package tui

import (
	"trivet/mechanics/sheet"
	"trivet/tui/board"
	"trivet/tui/results"
	"trivet/tui/session"
)

// covered is a session as others see it while its presenter hides the answers: what follows
// from the solution is not there to be shown, nor are the reference answers. The board
// hides them itself.
func (m Model) covered() Model {
	if m.board.Hides == board.HidesNothing || m.board.On && m.help == nil {
		return m
	}
	s := m.live.Sheet
	if s == nil {
		s = m.history.Current()
	}
	if bare, err := s.Apply(sheet.DeleteTable{Table: "answers"}); err == nil {
		s = bare
	}
	m.live.Sheet = s
	m.live.Solution, m.live.Blocks, m.live.Weighed = nil, nil, session.Effect{}
	m.worked = results.Laid{}
	m.hides = true
	if m.board.Hides == board.HidesVectors {
		m.cam = m.cam.Plain()
	}
	m.panes = panes{resulted: m.resulted + 1, records: m.records + 1} // all of it anew, from what is left
	m.settle()
	return m
}

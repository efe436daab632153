package tui

import "trivet/tui/layout"

// switchSide shows the next of the panes that share a place. The keys stay where
// they are, unless their pane goes.
func (m *Model) switchSide() {
	switch m.screen().Shared {
	case layout.ResultTurn:
		m.give(m.turn, m.turn.Next(1, layout.Pane.Result))
	case layout.ThirdTurn:
		m.give(m.third, m.third.Next(1, layout.Pane.Third))
	default:
		if m.side == layout.Picture {
			m.give(m.side, m.turn)
		} else {
			m.give(m.turn, layout.Picture)
		}
	}
}

// give gives one pane's place to another, and the keys with it where it has them.
func (m *Model) give(from, to layout.Pane) {
	if m.focus == from {
		m.goTo(to)
		return
	}
	m.show(to)
}

// show takes a pane for the places that it shares; the keys stay where they are.
func (m *Model) show(p layout.Pane) {
	if p.Result() {
		m.turn = p
	}
	if p.Third() {
		m.third = p
	}
	if p >= layout.System {
		m.side = p
	}
}

// nextResult goes on among the results. From elsewhere it shows the next in their
// place; one that gave way to another pane comes back first.
func (m *Model) nextResult(by int) {
	shared := m.screen().Shared
	switch {
	case m.focus.Result():
		m.goTo(m.focus.Next(by, layout.Pane.Result))
	case m.focus == layout.Picture && shared == layout.SideTurns:
		m.goTo(m.turn)
	case shared == layout.ThirdTurn:
		m.give(m.third, m.third.Next(by, layout.Pane.Third))
	case shared == layout.SideTurns && !m.side.Result():
		m.give(m.side, m.turn)
	default:
		m.give(m.turn, m.turn.Next(by, layout.Pane.Result))
	}
}

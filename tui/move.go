package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/keys"
	"trivet/tui/layout"
)

// onCells does the intents of a pane of cells.
func (m *Model) onCells(i keys.Intent) (tea.Cmd, bool) {
	at := &m.at[m.focus]
	page := max(m.screen().Panes[m.focus].Dy()-layout.Frame, 1)
	if i != keys.Edit {
		m.newest = sheet.Ref{}
	}
	switch i {
	case keys.MarkUp, keys.MarkDown, keys.MarkLeft, keys.MarkRight:
		m.extend(i)
		return nil, true
	case keys.Copy, keys.Cut, keys.Paste:
	default:
		m.mark = mark{}
	}
	switch i {
	case keys.Up:
		at.Row--
	case keys.Down:
		at.Row++
	case keys.Left:
		at.Col--
	case keys.Right:
		at.Col++
	case keys.First:
		at.Col = 0
	case keys.Last:
		at.Col = len(m.tables[m.focus].Columns) - 1
	case keys.PageUp:
		at.Row -= page
	case keys.PageDown:
		at.Row += page
	case keys.NextCell:
		m.step(1)
	case keys.PrevCell:
		m.step(-1)
	case keys.Edit:
		m.begin()
	case keys.NewRow:
		return m.newRow(), true
	case keys.DeleteRow:
		return m.deleteRow(), true
	case keys.ClearCell:
		return m.clearCell(), true
	case keys.MoveUp, keys.MoveDown:
		return m.moveRow(i), true
	case keys.Copy:
		cmd, _ := m.copyBlock()
		return cmd, true
	case keys.Cut:
		return m.cutBlock(), true
	case keys.Paste:
		return m.pasteClip(), true
	case keys.Duplicate:
		return m.duplicateRow(), true
	case keys.NudgeUp, keys.NudgeDown:
		return m.nudgeCell(i), true
	case keys.ToDefinition:
		return m.define(), true
	default:
		return nil, false
	}
	return nil, true
}

// clamp keeps every cursor on its table and in view, and every scroll in its
// text.
func (m *Model) clamp() {
	s := m.screen()
	for p := range m.tables {
		at, t := &m.at[p], m.tables[p]
		at.Row = max(min(at.Row, len(t.Records)-1), 0)
		at.Col = max(min(at.Col, len(t.Columns)-1), 0)
		rows := max(s.Panes[p].Dy()-layout.Frame, 1)
		at.Top = max(min(at.Top, at.Row, len(t.Records)-rows), at.Row-rows+1, 0)
	}
	for p, r := range s.Panes {
		if layout.Pane(p).Result() && !r.Empty() {
			o, t := &m.read[p].Scroll, &m.texts[p]
			o.Y = max(min(o.Y, len(t.Lines)-r.Dy()+1), 0)
			o.X = max(min(o.X, t.Wide-r.Dx()+2), 0)
		}
	}
}

// slot is the cell under the cursor.
func (m Model) slot() (cells.Slot, bool) {
	if m.focus >= layout.System {
		return cells.Slot{}, false
	}
	t, at := m.tables[m.focus], m.at[m.focus]
	if at.Row >= len(t.Records) || at.Col >= len(t.Records[at.Row].Slots) {
		return cells.Slot{}, false
	}
	return t.Records[at.Row].Slots[at.Col], true
}

// step goes to the next cell that can be typed in, on into the next pane that
// shows.
func (m *Model) step(dir int) {
	p, at := m.focus, m.at[m.focus]
	for range layout.System + 1 {
		t := m.tables[p]
		row, col := at.Row, at.Col+dir
		for row >= 0 && row < len(t.Records) {
			if col < 0 || col >= len(t.Columns) {
				row += dir
				col = 0
				if dir < 0 {
					col = len(t.Columns) - 1
				}
				continue
			}
			if t.Records[row].Slots[col].Does != cells.Nothing {
				m.goTo(p)
				m.at[p].Row, m.at[p].Col = row, col
				return
			}
			col += dir
		}
		p = m.nextInput(p, dir)
		at = cells.Place{Row: 0, Col: -1}
		if dir < 0 {
			at = cells.Place{Row: len(m.tables[p].Records) - 1, Col: len(m.tables[p].Columns)}
		}
	}
}

// nextInput is the next pane of cells that shows.
func (m Model) nextInput(p layout.Pane, dir int) layout.Pane {
	s := m.screen()
	for range layout.System {
		p = (p + layout.Pane(dir) + layout.System) % layout.System
		if m.large || !s.Panes[p].Empty() {
			return p
		}
	}
	return p
}

// hop goes to the next pane, one that is hidden beside others included.
func (m *Model) hop(dir int) {
	m.goTo((m.focus + layout.Pane(dir) + layout.Panes) % layout.Panes)
}

// goTo gives a pane the keys and shows it.
func (m *Model) goTo(p layout.Pane) {
	m.mark = mark{}
	m.focus = p
	if p < layout.System {
		m.back = p
	}
	m.show(p)
	m.settle()
}

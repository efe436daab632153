package tui

import (
	"strings"

	"trivet/tui/cells"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/text"
)

// search is a text looked for in the cells.
type search struct {
	text.Line
	on   bool // it is being typed
	from spot // where it began
}

func (m *Model) beginSearch() {
	if m.focus >= layout.System {
		m.goTo(m.back)
	}
	m.search = search{on: true, from: m.spot()}
}

// searching does the intents of the line that is looked for.
func (m *Model) searching(i keys.Intent) bool {
	switch i {
	case keys.Cancel:
		m.search.on = false
		return true
	case keys.SearchNext:
		m.seek(1)
		return true
	}
	was := m.search.Text
	if !m.search.Handle(i) {
		return false
	}
	if m.search.Text != was {
		m.seek(0)
	}
	return true
}

func (m *Model) searchNext() {
	if m.search.Text == "" {
		m.beginSearch()
		return
	}
	if m.focus >= layout.System {
		m.goTo(m.back)
	}
	m.seek(1)
}

// seek goes to the next cell that holds the text, from the cell under the cursor
// on or, with skip 1, from the one behind it; capitals count for nothing.
func (m *Model) seek(skip int) {
	want := strings.ToLower(m.search.Text)
	if want == "" {
		return
	}
	if skip == 0 { // each character typed looks from where the search began
		m.focus, m.cells.At[m.search.from.pane] = m.search.from.pane, m.search.from.at
		m.clamp()
	}
	p, row, col := m.focus, m.cells.At[m.focus].Row, m.cells.At[m.focus].Col+skip
	for range int(layout.System) + 1 {
		for records := m.cells.Tables[p].Records; row < len(records); row, col = row+1, 0 {
			for ; col < len(records[row].Slots); col++ {
				s := records[row].Slots[col]
				text := s.Text
				if s.Does != cells.Nothing {
					text = m.raw(s)
				}
				if strings.Contains(strings.ToLower(text), want) {
					m.cells.At[p].Row, m.cells.At[p].Col = row, col
					m.goTo(p)
					return
				}
			}
		}
		p, row, col = (p+1)%layout.System, 0, 0
	}
	m.say("no cell contains "+m.search.Text, false)
}

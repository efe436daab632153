package tui

import (
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
	if m.Focus >= layout.System {
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
	if m.Focus >= layout.System {
		m.goTo(m.back)
	}
	m.seek(1)
}

// seek goes to the next cell that holds the text, from the cell under the cursor
// on or, with skip 1, from the one behind it; capitals count for nothing.
func (m *Model) seek(skip int) {
	want := m.search.Text
	if want == "" {
		return
	}
	if skip == 0 { // each character typed looks from where the search began
		m.Focus, m.cells.At[m.search.from.pane] = m.search.from.pane, m.search.from.at
		m.clamp()
	}
	p, found := m.cells.Find(m.where(), want, skip)
	if found {
		m.goTo(p)
		return
	}
	m.say("no cell contains "+m.search.Text, false)
}

package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/tui/keys"
	"trivet/tui/settings"
)

// lastOpened are the sheets opened last, for a start screen over the sheet that is open.
type lastOpened struct {
	paths []string
	blank bool // the blank sheets are pointed at
}

// reopen asks for the list of sheets; Update reads no file.
func (m *Model) reopen(i keys.Intent) tea.Cmd {
	env, remembers := m.env, m.file.Opened != nil
	return func() tea.Msg {
		list := lastOpened{blank: i == keys.NewSheet}
		if remembers {
			list.paths = settings.Recent(env)
		}
		return list
	}
}

// overview shows the start screen over the sheet, which stays as it is until another is chosen.
func (m *Model) overview(list lastOpened) {
	o := newOpening(list.paths)
	o.over = true
	for k, s := range o.all {
		if list.blank && s.family == blankFamily {
			o.Pick = k
			break
		}
	}
	m.opening = o
}

// openAfter opens a sheet; where the one that is open has unsaved changes it asks first.
func (m *Model) openAfter(f fetched) tea.Cmd {
	if !m.opening.over {
		return m.open(f)
	}
	if !m.history.Modified() {
		return m.open(f)
	}
	m.ask = &question{
		text: m.title() + " has unsaved changes. Save them first?",
		yes:  func(m *Model) tea.Cmd { m.opening, m.pending = nil, &f; return m.save() },
		no:   func(m *Model) tea.Cmd { return m.open(f) },
	}
	return nil
}

// openPending opens the sheet that waited for this one to be saved.
func (m *Model) openPending() tea.Cmd {
	f := m.pending
	if f == nil || m.history.Modified() {
		return nil
	}
	m.pending = nil
	return m.open(*f)
}

package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/board"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/practice"
	"trivet/tui/prefs"
	"trivet/tui/results"
	"trivet/tui/session"
	"trivet/tui/settings"
	"trivet/tui/start"
	"trivet/tui/text"
)

// first is what a session begins with.
func (m *Model) first() tea.Cmd {
	if m.front.Alone() {
		return tea.Batch(m.practiseSheet(), m.next())
	}
	m.beginJournal()
	if m.opening != nil {
		return tea.Batch(m.peek(false), m.next(), m.front.Standing(m.opening.Paths()))
	}
	return tea.Batch(m.live.Solve(m.history.Current(), session.Whole), m.file.Record(), m.next())
}

func (m *Model) peek(open bool) tea.Cmd { return m.opening.Peek(open, m.prefs.Own) }

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

// takeFetched shows a picture that is still wanted, or opens the sheet.
func (m *Model) takeFetched(msg start.Fetched) tea.Cmd {
	switch {
	case m.opening == nil: // another was opened meanwhile
		return nil
	case msg.Fault == "" && (msg.Practise || msg.Open && msg.Set != nil):
		return m.front.Fetched(practice.Name(msg.Of.Path, msg.Of.Name()), msg.Sheet, msg.Set)
	case msg.Practise:
		m.front.Expect(false)
		m.say(msg.Fault, true)
	case msg.Open && msg.Fault == "":
		return m.openAfter(msg)
	case msg.Open:
		m.say(msg.Fault, true)
	}
	m.opening = m.opening.Take(msg)
	return nil
}

// openAfter opens a sheet; where the one that is open has unsaved changes it asks first.
func (m *Model) openAfter(f start.Fetched) tea.Cmd {
	if !m.opening.Over || !m.history.Modified() {
		return m.open(f)
	}
	m.ask = &question{
		Question: asked(m.title() + " has unsaved changes. Save them first?"),
		yes:      func(m *Model) tea.Cmd { m.opening, m.pending = nil, &f; return m.save() },
		no:       func(m *Model) tea.Cmd { return m.open(f) },
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

// open leaves the start screen for a sheet.
func (m *Model) open(f start.Fetched) tea.Cmd {
	m.opening = nil
	m.file.Reopen(f.Of.Path, f.Stamp)
	m.history, m.outdated = sheet.NewHistory(f.Sheet), nil
	m.live, m.derived = session.NewLive(), derived{}
	m.read, m.texts = [layout.Panes]text.View{}, [layout.Panes]results.Pane{}
	m.cells = m.cells.Rest()
	m.board = board.Board{}
	m.start()
	if f.Of.Path == "" && !f.Of.Blank() {
		m.say("a sheet to start from, not saved yet; F1 lists the keys", false)
	}
	m.beginJournal()
	return tea.Batch(m.live.Solve(m.history.Current(), session.Whole), m.file.Record())
}

// atStart does the intents of the start screen.
func (m *Model) atStart(i keys.Intent) (tea.Cmd, bool) {
	next, wish, ok := m.opening.Do(i, m.w, m.h)
	if !ok {
		return nil, false
	}
	m.opening = next
	return m.grant(wish), true
}

// grant does what is asked for on the start screen.
func (m *Model) grant(wish start.Wish) tea.Cmd {
	switch wish {
	case start.Open:
		if of, ok := m.opening.Picked(); ok && of.Path == "" {
			return m.openAfter(of.Fetch(true, m.prefs.Own)) // no file: what is typed next goes to it
		}
		return m.peek(true)
	case start.OpenNew:
		return m.openAfter(start.NewSheet(m.prefs.Own))
	case start.Leave:
		m.opening = nil
		return nil
	case start.Practise:
		return m.practisePicked()
	case start.Settings:
		m.setup = &prefs.List{}
		return nil
	}
	return m.peek(false)
}

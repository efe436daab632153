package tui

import (
	"errors"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/session"
	"trivet/tui/text"
	"trivet/tui/xdg"
)

// askPage asks for the name of a page's file; it begins with the sheet's own.
func (m *Model) askPage(p session.Page) {
	if m.page == nil {
		m.say("pages are not written from this session", false)
	} else if m.paged() {
		l := text.NewLine(p.Name(m.file.Path))
		m.naming, m.forPage = &l, p
	}
}

// paged tells whether there is a result for a page, and says where there is none.
func (m *Model) paged() bool {
	ok := m.live.Solution != nil && !m.live.Stale
	if !ok {
		m.say("the sheet has no result to write yet", true)
	}
	return ok
}

// writePage writes a page in a command: Update touches no file.
func (m *Model) writePage(p session.Page, file string, force bool) tea.Cmd {
	if m.page == nil || !m.paged() {
		return nil
	}
	return m.page.Cmd(p, file, m.title(), &m.live.Result, force)
}

// afterPage says where the page went, or why it did not.
func (m *Model) afterPage(msg session.Paged) {
	var there *sheet.ChangedError
	switch {
	case errors.As(msg.Err, &there):
		m.ask = &question{
			Question: asked(xdg.Short(m.env, msg.File) + " is there already. Overwrite it?"),
			yes:      func(m *Model) tea.Cmd { return m.writePage(msg.Page, msg.File, true) },
			no:       func(m *Model) tea.Cmd { m.say("not written", false); return nil },
		}
	case msg.Err != nil:
		m.say("not written: "+msg.Err.Error(), true)
	default:
		m.say("page written to "+xdg.Whole(m.env, msg.File)+msg.Doubt, msg.Doubt != "")
	}
}

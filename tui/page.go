package tui

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/xdg"
)

// PageWriter writes the working of a solution as a page to a file, in the format
// that the file's name ends with. A file that is there already is a
// *sheet.ChangedError unless forced.
type PageWriter func(file string, s *statics.Solution, of *sheet.Sheet, force bool) error

// paged is what became of a page.
type paged struct {
	file string
	err  error
}

// askPage asks for the name of a page's file; it begins with the sheet's own.
func (m *Model) askPage() {
	switch {
	case m.page == nil:
		m.say("pages are not written from this session", false)
		return
	case m.live.solution == nil || m.live.stale:
		m.say("the sheet has no result to write yet", true)
		return
	}
	name := "page"
	if m.path != "" {
		name = strings.TrimSuffix(m.path, filepath.Ext(m.path))
	}
	l := newLine(name + ".")
	m.naming, m.forPage = &l, true
}

// writePage writes a page in a command: Update touches no file.
func (m *Model) writePage(file string, force bool) tea.Cmd {
	s, of, write := m.live.solution, m.live.sheet, m.page
	if s == nil || m.live.stale || write == nil {
		m.say("the sheet has no result to write yet", true)
		return nil
	}
	return func() (msg tea.Msg) {
		// A fault of ours in here must not cost what was typed and not saved.
		defer func() {
			if r := recover(); r != nil {
				msg = paged{file, fmt.Errorf("this page could not be laid out (fault: %v)", r)}
			}
		}()
		return paged{file, write(file, s, of, force)}
	}
}

// afterPage says where the page went, or why it did not.
func (m *Model) afterPage(msg paged) {
	var there *sheet.ChangedError
	switch {
	case errors.As(msg.err, &there):
		m.ask = &question{
			text: xdg.Short(m.env, msg.file) + " is there already. Overwrite it?",
			yes:  func(m *Model) tea.Cmd { return m.writePage(msg.file, true) },
			no:   func(m *Model) tea.Cmd { m.say("not written", false); return nil },
		}
	case msg.err != nil:
		m.say("not written: "+oneLine(msg.err), true)
	default:
		where := msg.file
		if abs, err := filepath.Abs(msg.file); err == nil {
			where = xdg.Short(m.env, abs)
		}
		m.say("page written to "+where, false)
	}
}

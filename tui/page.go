package tui

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/variant"
	"trivet/tui/text"
	"trivet/tui/xdg"
)

// Page is a kind of page.
type Page int

// The pages: the working with all results; one for the file of a job; one to hand
// out, with the task and no result.
const (
	WorkingPage Page = iota + 1
	FieldPage
	TaskPage
)

// prompt asks for a page's file.
func (p Page) prompt() string {
	return p.asks() + ": "
}

func (p Page) asks() string {
	return [...]string{"save as", "page as", "field page as", "page to hand out as"}[p]
}

// longPrompt says what the name may end in.
func (p Page) longPrompt() string {
	if p == 0 {
		return p.prompt()
	}
	return p.asks() + " (" + pageEndings + "): "
}

// behind a sheet's name, so that one page does not take the place of another.
func (p Page) behind() string { return [...]string{"", "", "-field", "-task"}[p] }

// PageWriter writes a page of a solution to a file, in the format that the file's
// name ends with; name is the sheet's. A file that is there already is a *sheet.ChangedError unless
// forced.
type PageWriter func(p Page, file, name string, s *statics.Solution, of *sheet.Sheet, force bool) error

// paged is what became of a page.
type paged struct {
	page  Page
	file  string
	err   error
	doubt string // what its words say against its numbers
}

// askPage asks for the name of a page's file; it begins with the sheet's own.
func (m *Model) askPage(p Page) {
	switch {
	case m.page == nil:
		m.say("pages are not written from this session", false)
		return
	case m.live.Solution == nil || m.live.Stale:
		m.say("the sheet has no result to write yet", true)
		return
	}
	name := "page"
	if m.file.Path != "" {
		name = strings.TrimSuffix(m.file.Path, filepath.Ext(m.file.Path))
	}
	l := text.NewLine(name + p.behind() + ".")
	m.naming, m.forPage = &l, p
}

// writePage writes a page in a command: Update touches no file.
func (m *Model) writePage(p Page, file string, force bool) tea.Cmd {
	s, of, write, name := m.live.Solution, m.live.Sheet, m.page, m.title()
	if s == nil || m.live.Stale || write == nil {
		m.say("the sheet has no result to write yet", true)
		return nil
	}
	return func() (msg tea.Msg) {
		// A fault of ours in here must not cost what was typed and not saved.
		defer func() {
			if r := recover(); r != nil {
				msg = paged{page: p, file: file, err: fmt.Errorf("this page could not be laid out (fault: %v)", r)}
			}
		}()
		out := paged{page: p, file: file, err: write(p, file, name, s, of, force)}
		if of != nil {
			for _, c := range variant.Contradictions(of, s.Problem) {
				out.doubt = "; " + c.Text()
			}
		}
		return out
	}
}

// afterPage says where the page went, or why it did not.
func (m *Model) afterPage(msg paged) {
	var there *sheet.ChangedError
	switch {
	case errors.As(msg.err, &there):
		m.ask = &question{
			text: xdg.Short(m.env, msg.file) + " is there already. Overwrite it?",
			yes:  func(m *Model) tea.Cmd { return m.writePage(msg.page, msg.file, true) },
			no:   func(m *Model) tea.Cmd { m.say("not written", false); return nil },
		}
	case msg.err != nil:
		m.say("not written: "+msg.err.Error(), true)
	default:
		where := msg.file
		if abs, err := filepath.Abs(msg.file); err == nil {
			where = xdg.Short(m.env, abs)
		}
		m.say("page written to "+where+msg.doubt, msg.doubt != "")
	}
}

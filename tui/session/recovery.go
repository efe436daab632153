package session

import (
	"fmt"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/journal"
)

// Trouble says that no journal is kept, and why.
type Trouble string

// note is what a journal was told: the sheet, and the cell being typed.
type note struct {
	of     *journal.Journal
	sheet  *sheet.Sheet
	typed  journal.Typed
	typing bool
}

// Begin looks for work that was left of the sheet, and begins to keep what is typed.
// Without a journal of its own a session does neither: another program's visitors may
// have no state folder. What was left of sheets without a file is offered once.
func (f *File) Begin(env []string, text string) (offers []journal.Offer, others []journal.Other, trouble Trouble) {
	if !f.Keeps {
		return nil, nil, ""
	}
	f.Close()
	path := f.at(f.Path)
	if path != "" {
		sheet.Sweep(path) // of what a save that was killed left beside it
	}
	found := journal.Find(env, path, text, f.Journals...)
	f.Journal = journal.Open(env, path, text, f.Journals...)
	trouble = Trouble(f.Journal.Trouble())
	if f.Path == "" && f.offered {
		found.Offers = nil // the start screen has asked
	}
	f.offered = true
	return found.Offers, found.Others, trouble
}

// Warn tells of other workbenches on the same sheet, once.
func (f *File) Warn(others []journal.Other) (says string) {
	n := len(others)
	if n > f.others {
		says = others[n-1].String()
		if n > 1 {
			says = fmt.Sprintf("%d of them, the last %s", n, says)
		}
		says = "it is open in another workbench too (" + says + "); saving will ask first"
	}
	f.others = n
	return says
}

// Note keeps the sheet and the cell being typed, nil for none, in the journal; nil where
// it has them. A reply is a Trouble.
func (f *File) Note(s *sheet.Sheet, typed *journal.Typed) tea.Cmd {
	now := note{of: f.Journal, sheet: s, typing: typed != nil}
	if typed != nil {
		now.typed = *typed
	}
	if f.Journal == nil || now == f.noted {
		return nil
	}
	f.noted = now
	n := now.of.Next()
	return func() tea.Msg {
		now.of.Note(n, s.Text(), typed)
		if says := now.of.Trouble(); says != "" {
			return Trouble(says)
		}
		return nil
	}
}

// Close ends the journal in order: nothing is left to recover.
func (f *File) Close() {
	if f.Journal != nil {
		f.Journal.Close()
	}
	f.Journal = nil
}

// Forget has the next Note written whatever the journal was told.
func (f *File) Forget() { f.noted = note{} }

package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
	"trivet/mechanics/working"
	"trivet/tui/board"
	"trivet/tui/edit"
	"trivet/tui/frame"
	"trivet/tui/grid"
	"trivet/tui/layout"
	"trivet/tui/prefs"
	"trivet/tui/results"
	"trivet/tui/session"
	"trivet/tui/theme"
)

// Look is a session as it stood at a moment. Nothing changes it, so it may be
// drawn beside the session, by several goroutines at once and at other sizes.
type Look struct{ m Model }

// Look takes the session as it stands. Its journal stays the session's own.
func (m Model) Look() Look {
	m = m.Apart()
	m.file.Journal, m.file.Keeps = nil, false
	return Look{m}
}

// Own is the frame that the session itself shows.
func (l Look) Own() grid.Frame { return l.m.composed() }

// On is the frame for a reader's terminal: the same panes, focus and cell in
// another size and other characters. What is between the session and the host
// alone, file names and questions, does not show.
func (l Look) On(w, h int, set theme.Set) grid.Frame {
	return l.m.shown(w, h, set).covered().composed()
}

// Hides tells that answers are hidden from those who watch.
func (l Look) Hides() bool { return l.m.board.Hides > board.HidesNothing }

// Title is the sheet's name, for a window's title.
func (l Look) Title() string { return l.m.title() }

func (m Model) shown(w, h int, set theme.Set) Model {
	m.naming, m.ask, m.note, m.leave = nil, nil, frame.Note{}, false
	m.setup, m.prefs = nil, prefs.Prefs{} // the session's own
	m.watches = true
	m = m.Fitted(w, h, set)
	m.lookUp() // a wider screen may show the working where the session's own does not
	return m
}

// Fitted is the session on a terminal of another size and other characters: it
// may be handed from one terminal to another.
func (m Model) Fitted(w, h int, set theme.Set) Model {
	m.prefs.Chars = set
	m.dress()
	m.resize(w, h)
	return m
}

// Unsaved tells what a session that ends now would lose: the sheet with the
// cell that is being typed, where the sheet takes it. A sheet without a file
// has an empty path.
func (m Model) Unsaved() (path string, s *sheet.Sheet, stamp sheet.Stamp, any bool) {
	m = m.Look().m
	m.keep()
	return m.file.Path, m.history.Current(), m.file.Stamp, m.history.Modified()
}

// Reader is somebody else's own view of a session: where to look, but nothing
// that could change the sheet.
type Reader struct{ m Model }

// Reader begins with what the session shows.
func (l Look) Reader(w, h int, set theme.Set) Reader {
	m := l.m.shown(w, h, set)
	m.cells.Cell, m.cells.Fresh, m.choosing, m.listing, m.drag, m.palette = nil, nil, false, false, nil, nil
	m.cells.Search, m.cells.Mark = edit.Search{}, edit.Mark{}
	m.around = true
	return Reader{m}
}

// Take shows the session as it has become, from where the reader looks.
func (r Reader) Take(l Look) Reader {
	m := l.Reader(r.m.w, r.m.h, r.m.theme.Set).m
	m.places, m.cells.At, m.help, m.note = r.m.places, r.m.cells.At, r.m.help, r.m.note
	m.board, m.worked, m.listing = r.m.board, r.m.worked, r.m.listing
	// Answers that the presenter hides stay hidden.
	m.board.Hides = l.m.board.Hides
	m.board.Shown = l.m.board.Shown && l.m.board.At == m.board.At
	m.texts = [layout.Panes]results.Pane{}
	m.lookUp()
	return Reader{m}
}

// lookUp lays the solution out in steps where the board or a pane shows
// them, once for all who read along.
func (m *Model) lookUp() {
	if s := m.live.Solution; m.wantsSteps() && s != nil && m.worked.Of != s {
		m.takeWorked(m.workings.steps.Get(s, func() results.Steps { return results.Lay(working.Build(s), results.Widths{}) }))
	}
	if m.wantsEffect() {
		of, s := m.live.Of, m.live.Solution
		m.live.TakeEffect(m.workings.effects.Get(s, func() *uncertainty.Effect { return uncertainty.Of(of, s) }))
	}
	m.settle()
}

// workings are the steps and the effect of the ± of the last solution that one who reads along
// asked for.
type workings struct {
	steps   session.Once[*statics.Solution, results.Steps]
	effects session.Once[*statics.Solution, *uncertainty.Effect]
}

// On is the view on a terminal of another size.
func (r Reader) On(w, h int, set theme.Set) Reader { return Reader{r.m.Fitted(w, h, set)} }

// Frame is what the reader sees.
func (r Reader) Frame() grid.Frame { return r.m.covered().composed() }

// Key takes a key of the reader's, and tells whether it means anything to one
// who only reads.
func (r Reader) Key(msg tea.KeyPressMsg) (Reader, bool) {
	if !r.m.now().Looks(msg.String(), msg.Key().Text) {
		return r, false
	}
	r.m.route(msg)
	r.m.settle()
	r.m.lookUp()
	return r, true
}

// Apart is the session as it stands, with a history of its own: what is done to
// the one does not show in the other. Either may go on with the journal, and not
// both.
func (m Model) Apart() Model {
	h := *m.history // the one part of a model that is changed in place
	m.history = &h
	return m
}

// Size is how large the sheet is: its rows, and the bytes of its text with that
// of the cell being typed.
func (m Model) Size() (rows, bytes int) {
	s := m.history.Current()
	for _, t := range s.Tables {
		rows += len(t.Rows)
	}
	bytes = len(s.Text())
	if m.cells.Cell != nil {
		bytes += len(m.cells.Cell.Text)
	}
	return rows, bytes
}

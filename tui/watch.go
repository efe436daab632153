package tui

import (
	"errors"
	"io/fs"
	"os"
	"time"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/text"
)

// WatchEvery is how often the file is looked at, and other workbenches are: often
// enough to be told before much is typed, and no work to speak of.
const WatchEvery = 10 * time.Second

// tick asks for a look at the file.
type tick struct{}

// seenFile is the sheet's file as it is now, where it is not as it was.
type seenFile struct {
	path  string
	sheet *sheet.Sheet
	stamp sheet.Stamp
	gone  bool
	err   error
}

// next waits for the next look.
func (m Model) next() tea.Cmd {
	if m.every <= 0 {
		return nil
	}
	return tea.Tick(m.every, func(time.Time) tea.Msg { return tick{} })
}

// watch does what is due now and then.
func (m *Model) watch() tea.Cmd {
	if m.journal != nil {
		m.journal.Beat()
		m.warn(m.journal.Others())
		m.troubled()
	}
	return m.lookAtFile()
}

// lookAtFile reads the file where its time or size is not what it was. What a
// host stores for a session is not found by its path.
func (m Model) lookAtFile() tea.Cmd {
	path, was := m.path, m.stamp
	if path == "" || was.IsZero() || m.saving || m.opening != nil || m.store != nil {
		return nil
	}
	return func() tea.Msg {
		info, err := os.Stat(path)
		switch {
		case errors.Is(err, fs.ErrNotExist):
			return seenFile{path: path, gone: true}
		case err != nil || info.Size() == was.Size && info.ModTime().Equal(was.Time):
			return nil
		}
		s, stamp, err := sheet.Load(path)
		return seenFile{path: path, sheet: s, stamp: stamp, err: err}
	}
}

// takeSeen tells that the file was changed by somebody else. While something is
// typed or asked it waits: the next look finds it again.
func (m *Model) takeSeen(msg seenFile) tea.Cmd {
	if msg.path != m.path || m.saving || m.edit != nil || m.ask != nil || m.naming != nil || m.opening != nil || m.palette != nil || m.setup != nil {
		return nil
	}
	says := ""
	switch {
	case msg.gone:
		says = m.title() + " is gone from the disk: ctrl+s writes it again"
	case msg.err != nil:
		says = m.title() + " was changed on disk and does not read now: " + msg.err.Error()
	case msg.sheet.Text() == m.history.Current().Text():
		m.stamp = msg.stamp
		m.history.MarkSaved()
		return nil
	}
	if says != "" {
		if m.reported != says {
			m.reported = says
			m.say(says, true)
		}
		return nil
	}
	if m.reported == msg.sheet.Text() {
		return nil
	}
	m.reported = msg.sheet.Text() // asked once for each content
	changes := sheet.Diff(m.history.Current(), msg.sheet)
	text := m.title() + " was changed on disk: " + differ(changes) + ". Read it anew?"
	if m.history.Modified() {
		text = m.title() + " was changed on disk and here: " + differ(changes) + ". Read it anew?"
	}
	m.ask = &question{
		text: text, more: changeLines(changes, "here", "on disk"),
		yes: func(m *Model) tea.Cmd {
			m.history.Replace(msg.sheet)
			m.history.MarkSaved()
			m.stamp = msg.stamp
			if m.journal != nil {
				m.journal.Saved(m.file(m.path), msg.sheet.Text())
			}
			m.say("reloaded; ctrl+z returns to the sheet as it was", false)
			return m.changed()
		},
		no: func(m *Model) tea.Cmd {
			m.say("kept as it is here; saving asks before overwriting the other", false)
			return nil
		},
	}
	return nil
}

// disk is what a file that is not to be overwritten unasked differs in; nil where
// it does not read.
func disk(path string, s *sheet.Sheet) text.Lines {
	now, _, err := sheet.Load(path)
	if err != nil {
		return nil
	}
	return changeLines(sheet.Diff(s, now), "here", "on disk")
}

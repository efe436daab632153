package tui

import (
	"errors"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/keys"
	"trivet/tui/overlay"
	"trivet/tui/session"
	"trivet/tui/text"
	"trivet/tui/xdg"
)

// question is one with what its answers do.
type question struct {
	overlay.Question
	yes, no func(m *Model) tea.Cmd
}

// asked is a question about nothing that is to be seen.
func asked(text string) overlay.Question { return overlay.Question{Text: text} }

// save keeps what is being typed, then writes the file, or asks for its name.
func (m *Model) save() tea.Cmd {
	m.help = nil
	cmd, open := m.keep()
	if open {
		return cmd
	}
	if m.file.Path == "" {
		m.askName()
		return cmd
	}
	return tea.Batch(cmd, m.writeFile(m.file.Path, m.file.Stamp, false))
}

func (m *Model) askName() {
	l := text.NewLine(m.file.Path)
	m.naming, m.forPage = &l, 0
}

// writeFile saves in a command: Update touches no file.
func (m *Model) writeFile(path string, was sheet.Stamp, force bool) tea.Cmd {
	if m.file.Saving {
		m.say("still saving", false)
		return nil
	}
	return m.file.Save(path, m.history.Current(), was, force)
}

// afterSave says where the sheet went, or why it did not.
func (m *Model) afterSave(msg session.Saved) tea.Cmd {
	m.file.Take(msg)
	var changed *sheet.ChangedError
	switch {
	case errors.As(msg.Err, &changed):
		m.ask = &question{
			Question: overlay.Question{
				Text: xdg.Short(m.env, msg.Path) + ": " + changed.Error() + ". Overwrite it?", More: overlay.Changes(msg.Changes, "here", "on disk"),
			},
			yes: func(m *Model) tea.Cmd { return m.writeFile(msg.Path, sheet.Stamp{}, true) },
			no:  func(m *Model) tea.Cmd { m.leave, m.pending = false, nil; m.say("not saved", false); return nil },
		}
		return nil
	case msg.Err != nil:
		m.leave, m.pending = false, nil
		m.say("not saved: "+msg.Path+": "+msg.Err.Error(), true)
		return nil
	}
	where := msg.Path
	if m.file.Store == nil {
		where = xdg.Whole(m.env, msg.Path)
	}
	// What was typed while the file was being written is not in it.
	if m.history.Current() == msg.Sheet {
		m.history.MarkSaved()
	}
	m.say("saved to "+where, false)
	if m.leave && !m.history.Modified() {
		return m.bye()
	}
	m.leave = false
	return m.openPending()
}

// quit leaves, and asks first where something is unsaved.
func (m *Model) quit() tea.Cmd {
	var cmd tea.Cmd
	if m.cells.Unkept() {
		var open bool
		if cmd, open = m.keep(); open {
			// The sheet refuses the text. To leave is still possible.
			m.cells.Drop()
			cmd = m.changed()
		}
	}
	if !m.history.Modified() {
		return m.bye()
	}
	m.ask = &question{
		Question: asked(m.title() + " has unsaved changes. Save them before leaving?"),
		yes:      func(m *Model) tea.Cmd { m.leave = true; return m.save() },
		no:       func(m *Model) tea.Cmd { return m.bye() },
	}
	return cmd
}

// answered takes the answer to a question.
func (m *Model) answered(i keys.Intent) (tea.Cmd, bool) {
	q := m.ask
	m.ask = nil
	switch i {
	case keys.Yes:
		return q.yes(m), true
	case keys.No:
		return q.no(m), true
	case keys.Cancel:
		m.leave, m.pending = false, nil
		return nil, true
	case keys.See:
		m.ask = &question{q.Turned(), q.yes, q.no}
		return nil, true
	}
	next, ok := q.Scrolled(i, m.aboveFoot())
	m.ask = &question{next, q.yes, q.no}
	return nil, ok
}

// named takes the intents of the question for a file name.
func (m *Model) named(i keys.Intent) (tea.Cmd, bool) {
	l := *m.naming
	switch i {
	case keys.Cancel:
		m.naming, m.leave, m.pending = nil, false, nil
	case keys.Commit:
		if l.Text == "" {
			m.say("type a name such as mast.toml", false)
			return nil, true
		}
		m.naming = nil
		if m.forPage != 0 {
			return m.writePage(m.forPage, l.Text, false), true
		}
		var was sheet.Stamp // another file of this name is somebody's: the save asks before it overwrites
		if l.Text == m.file.Path {
			was = m.file.Stamp
		}
		return m.writeFile(l.Text, was, false), true
	default:
		if !l.Handle(i) {
			return nil, false
		}
		m.naming = &l
	}
	return nil, true
}

// title is the sheet's name on the screen.
func (m Model) title() string { return m.file.Title() }

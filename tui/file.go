package tui

import (
	"errors"
	"path/filepath"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/text"
	"trivet/tui/xdg"
)

// question is one of yes or no; esc always goes back.
type question struct {
	text    string
	yes, no func(m *Model) tea.Cmd
	more    text.Lines // what it is about, to be seen
	seen    bool
	at      text.Offset // how far it is scrolled
}

// saved is what became of a save.
type saved struct {
	path  string
	sheet *sheet.Sheet
	stamp sheet.Stamp
	err   error
	other text.Lines // what differs in the file that is in the way
}

// save keeps what is being typed, then writes the file, or asks for its name.
func (m *Model) save() tea.Cmd {
	var cmd tea.Cmd
	m.help = nil
	if m.edit != nil {
		cmd = m.keep(func() {})
		if m.edit != nil {
			return cmd // the cell is refused; the bottom line says why
		}
	}
	if m.path == "" {
		m.askName()
		return cmd
	}
	return tea.Batch(cmd, m.writeFile(m.path, m.stamp, false))
}

func (m *Model) askName() {
	l := text.NewLine(m.path)
	m.naming, m.forPage = &l, 0
}

// writeFile saves in a command: Update touches no file.
func (m *Model) writeFile(path string, was sheet.Stamp, force bool) tea.Cmd {
	if m.saving {
		m.say("still saving", false)
		return nil
	}
	m.saving = true
	s, record, save, own := m.history.Current(), m.record(path), m.store, m.store == nil
	if own {
		save = sheet.Save
	}
	return func() tea.Msg {
		stamp, err := save(path, s, was, force)
		if err == nil && record != nil {
			record()
		}
		msg := saved{path: path, sheet: s, stamp: stamp, err: err}
		if changed := (*sheet.ChangedError)(nil); own && errors.As(err, &changed) {
			msg.other = disk(path, s)
		}
		return msg
	}
}

// afterSave says where the sheet went, or why it did not.
func (m *Model) afterSave(msg saved) tea.Cmd {
	m.saving = false
	var changed *sheet.ChangedError
	switch {
	case errors.As(msg.err, &changed):
		m.ask = &question{
			text: xdg.Short(m.env, msg.path) + ": " + changed.Error() + ". Overwrite it?", more: msg.other,
			yes: func(m *Model) tea.Cmd { return m.writeFile(msg.path, sheet.Stamp{}, true) },
			no:  func(m *Model) tea.Cmd { m.leave, m.pending = false, nil; m.say("not saved", false); return nil },
		}
		return nil
	case msg.err != nil:
		m.leave, m.pending = false, nil
		m.say("not saved: "+msg.path+": "+msg.err.Error(), true)
		return nil
	}
	m.path, m.stamp = msg.path, msg.stamp
	if m.journal != nil {
		m.journal.Saved(m.file(msg.path), msg.sheet.Text())
	}
	where := msg.path
	if abs, err := filepath.Abs(msg.path); err == nil && m.store == nil {
		where = xdg.Short(m.env, abs)
	}
	// What was typed while the file was being written is not in it.
	if m.history.Current() == msg.sheet {
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
	if m.edit != nil && (m.edit.Text != m.edit.Was || m.fresh != nil) {
		cmd = m.keep(func() {})
		if m.edit != nil {
			// The sheet refuses the text. To leave is still possible.
			m.edit, m.fresh = nil, nil
			cmd = m.changed()
		}
	}
	if !m.history.Modified() {
		return m.bye()
	}
	m.ask = &question{
		text: m.title() + " has unsaved changes. Save them before leaving?",
		yes:  func(m *Model) tea.Cmd { m.leave = true; return m.save() },
		no:   func(m *Model) tea.Cmd { return m.bye() },
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
		shown := *q
		shown.seen, shown.at = !q.seen, text.Offset{}
		m.ask = &shown
		return nil, true
	}
	shown := *q
	m.ask = &shown
	if !text.Scroll(&shown.at, i, m.seenRect().Dy()-1) {
		return nil, false
	}
	m.clampSeen(&shown.at)
	return nil, true
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
		if l.Text == m.path {
			return m.writeFile(l.Text, m.stamp, false), true
		}
		// A file of this name is somebody's: the save asks before it overwrites.
		return m.writeFile(l.Text, sheet.Stamp{}, false), true
	default:
		if !l.Handle(i) {
			return nil, false
		}
		m.naming = &l
	}
	return nil, true
}

// title is the file's name, or a word for none.
func (m Model) title() string {
	if m.path == "" {
		return "untitled"
	}
	return grid.Clean(filepath.Base(m.path))
}

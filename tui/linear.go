package tui

import (
	"cmp"
	"context"
	"io"
	"os"

	tea "charm.land/bubbletea/v2"

	"trivet/tui/keys"
	"trivet/tui/speech"
	"trivet/tui/text"
)

// The linear screen writes plain lines one below the other, for a screen reader
// or a slow line. It is another drawing of the same model: a message is done as
// ever, and what it made different is said. Nothing that was written is ever
// written over but the last line, where one types.

// The panes are divided as on a screen where each of them shows, so that no key
// depends on the size of a terminal that shows none of them.
const linearW, linearH = 200, 60

// announce does a message, says what it made different, and writes it.
func (m Model) announce(msg tea.Msg) (Model, tea.Cmd) {
	cmd := m.update(msg)
	cause := speech.Other
	switch msg.(type) {
	case tea.KeyPressMsg, tea.PasteMsg:
		cause = speech.Pressed
	case opened:
		cause = speech.Opened
	}
	if text := m.speech.Hear(m.moment(), cause); text != "" && m.tell != nil {
		m.tell(text)
	}
	return m, cmd
}

// moment is the session as it is said.
func (m Model) moment() speech.Moment {
	now := speech.Moment{
		Gone: m.left || m.going, Starting: m.opening != nil, Greeting: speech.Greeting(m.opening != nil, m.front.Alone(), m.title(), m.history.Current()),
		Note: m.note.Text, Warns: m.note.Bad, Notes: m.notes,
		Sheet: m.history.Current(), Solving: m.live.Sheet, Running: m.live.Running(), Leaving: m.leave, Saving: m.file.Saving,
		Result: m.heard(), Place: m.place(), Scene: m.scene(),
	}
	if !m.front.On() {
		now.Doubt = m.live.Likeliest(m.cell())
	}
	return now
}

// scene is what has the keys, as it is said, and what stands on the last line.
func (m Model) scene() speech.Scene {
	s := speech.SceneOf(m.mode())
	s.After = m.cells.Newest
	if l, _, picks := m.listed(); picks {
		s.List, s.Line = &l, l.Line
	}
	if label, typed, ok := m.prompt(); ok {
		s.Prompt, s.Line = label, typed
	}
	switch s.Mode {
	case keys.OnQuestion:
		s.Of, s.Intro = [2]any{m.ask.Text, m.ask.Seen}, speech.Asked(m.ask.Question)
	case keys.OnSettings:
		s.Prompt, s.Line = "settings, "+m.setup.Name()+": ", text.Line{Text: m.prefs.Shown(m.setup.Name())}
	case keys.InCell, keys.InList, keys.InWords:
		s.Edit, s.ByKey = m.cells.Cell, m.changedByKey
	case keys.OnSteps:
		s.Prompt = "board, " + m.board.Where(m.boardOf())
	case keys.OnShelf:
		if s.Of = m.front.Shelf != nil; m.front.Shelf != nil { // else it is being read
			l := m.front.Shelf.Listed()
			s.List, s.Line = &l, l.Line
		}
	case keys.OnResult, keys.OnPicture, keys.OnHelp, keys.OnBoard, keys.OnTask:
		s.Text, s.Of = m.readText()
		if s.Prompt = s.Text.Where(); m.help == nil && m.board.On {
			s.Prompt = "board, " + m.board.Where(m.boardOf())
		}
	}
	return s
}

// inLines has the session write lines to its terminal, where it is to be so. The
// program that runs it has a terminal to ask for its size, but draws nothing.
func (opt *Options) inLines(ctx context.Context) (done func()) {
	if !opt.Linear && opt.Settings.Screen != "linear" {
		return func() {}
	}
	opt.Linear = true
	opt.tell, opt.Out, done = speech.To(ctx, cmp.Or(opt.Out, io.Writer(os.Stdout)))
	return done
}

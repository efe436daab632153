package tui

import (
	"cmp"
	"context"
	"fmt"
	"io"
	"os"
	"strings"

	tea "charm.land/bubbletea/v2"

	"trivet/tui/grid"
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
	now, last := m.moment(), speech.Line{}
	if !now.Gone {
		prompt, l := m.typingLine(now.Scene)
		last = speech.Below(prompt, l, cmp.Or(max(m.speech.W, 0), linearW))
	}
	if text := m.speech.Hear(now, cause, last); text != "" && m.tell != nil {
		m.tell(text)
	}
	return m, cmd
}

// moment is the session as it is said.
func (m Model) moment() speech.Moment {
	return speech.Moment{
		Gone: m.left || m.going, Starting: m.opening != nil, Greeting: m.greeting(),
		Note: m.note.text, Warns: m.note.bad, Notes: m.notes,
		Sheet: m.history.Current(), Solving: m.live.seq, Running: m.live.running, Leaving: m.leave, Saving: m.saving,
		Doubt: m.likeliest(), Result: m.heard(), Place: m.place(), Scene: m.scene(),
	}
}

// greeting says what is open, once.
func (m Model) greeting() []string {
	if m.opening != nil {
		return []string{"trivet: free-body equilibrium, line by line; F1 is help, ctrl+q quits"}
	}
	lines := []string{"sheet " + m.title() + "; F1 is help, ctrl+k lists commands, alt and a figure lead to the panes"}
	for _, name := range []string{"title", "statement"} {
		row, _ := m.history.Current().Table("").Row(name)
		c, _ := row.Cell("")
		lines = append(lines, c.Text)
	}
	return lines
}

// scene is what has the keys, as it is said.
func (m Model) scene() speech.Scene {
	s := speech.Scene{Mode: m.mode()}
	if l, ok := m.listed(); ok {
		s.List = &l
	}
	switch s.Mode {
	case keys.OnQuestion:
		q := m.ask
		s.Of = [2]string{q.text, fmt.Sprint(q.seen)}
		switch {
		case q.seen:
			s.Intro = q.more.Read()
		case len(q.more) > 0:
			s.Intro = []string{q.text, "y is yes, n is no, s lists it, esc goes back"}
		default:
			s.Intro = []string{q.text, "y is yes, n is no, esc goes back"}
		}
	case keys.OnName:
		s.Intro = []string{"type the name of the file and enter; esc goes back"}
	case keys.OnSearch:
		s.Intro = []string{"type what to find; enter goes on, esc ends"}
	case keys.InSetting:
		s.List, s.Intro = nil, []string{"type the value and enter; esc leaves it as it was"}
	case keys.OnChoice:
		var parts []string
		for _, b := range keys.Table() {
			if b.Scope == keys.Choosing {
				parts = append(parts, b.Keys[0]+" "+b.Help)
			}
		}
		s.Intro = []string{"which row? " + strings.Join(parts, "; ")}
	case keys.InCell, keys.InList, keys.InWords:
		s.Edit, s.New, s.ByKey = m.edit, m.newName(), m.changedByKey
	case keys.OnHelp, keys.OnBoard, keys.OnResult, keys.OnPicture:
		s.Text, s.Of = m.readText()
	}
	return s
}

// typingLine is what stands on the last line: what one is at, and the text there
// with its cursor.
func (m Model) typingLine(s speech.Scene) (prompt string, l text.Line) {
	switch s.Mode {
	case keys.OnQuestion:
		return "y, n or esc: ", l
	case keys.OnName:
		return m.forPage.longPrompt(), *m.naming
	case keys.OnSearch:
		return "find: ", m.search.Line
	case keys.OnPalette:
		return "command: ", m.palette.Line
	case keys.InSetting:
		return m.setup.name() + ": ", *m.setup.typing
	case keys.OnSettings:
		return "settings, " + m.setup.name() + ": ", text.Line{Text: m.shownValue(m.setup.name())}
	case keys.OnStart:
		return "sheet: ", m.opening.Line
	case keys.OnChoice:
		return "which row? ", l
	case keys.InCell, keys.InList, keys.InWords:
		return m.edit.Slot.Label() + ": ", m.edit.Line
	case keys.OnBoard, keys.OnSteps:
		return "board, " + m.board.Where(m.boardOf()), l
	case keys.OnCells:
		p := m.place()
		if p.Rows == 0 {
			return p.Pane + ": ", l
		}
		slot, _ := m.slot()
		return p.Pane + ", " + p.Row + ", " + p.Column + ": ", text.Line{Text: grid.Clean(slot.Text)}
	}
	return s.Text.Where(), l
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

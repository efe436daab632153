package tui

import (
	"fmt"
	"strings"

	"trivet/tui/board"
	"trivet/tui/cells"
	"trivet/tui/edit"
	"trivet/tui/frame"
	"trivet/tui/grid"
	"trivet/tui/help"
	"trivet/tui/keys"
	"trivet/tui/text"
	"trivet/tui/theme"
)

func (m Model) drawFoot(c grid.Canvas) { m.foot(c.W() - 2).Draw(c) }

// foot is what stands at the bottom, in lines of a width.
func (m Model) foot(w int) frame.Foot {
	mode := m.mode()
	f := frame.Foot{Bare: true, Hints: m.hints()}
	says := func(look grid.Style, mark, s string) {
		if s != "" {
			f.Says.Wrapped(look, mark, s, w)
		}
	}
	var facts string // those that have no room behind their cell
	switch label, typed, ok := m.prompt(); {
	case ok:
		f.First, f.Typed, f.Types = []text.Span{{Text: label, Look: theme.Name}}, typed, true
	case mode == keys.OnQuestion:
		f.First = []text.Span{{Text: m.ask.Text, Look: theme.Warn}}
	case mode == keys.OnSettings:
		f.First = m.setup.Line(m.prefs)
	case mode == keys.OnPicture:
		f.First = []text.Span{{Text: m.cam.Words(m.live.Problem), Look: theme.Dim}}
	case mode == keys.OnCells:
		f.First, facts = m.cells.Line(m.where(), m.follows, w)
	}
	switch {
	case m.note.Text != "":
		says(m.note.Look(), "", m.note.Text)
	case mode == keys.OnQuestion && grid.Width(m.ask.Text) > w:
		f.First, f.Bare = nil, false
		says(theme.Warn, "", m.ask.Text)
	case mode.Typing():
		if f.Says = m.cells.Says(&m.live.Result, w); f.Says == nil {
			says(theme.Dim, "", takes(m.cells.Cell.Slot))
		}
	case mode == keys.OnResult:
		f.Bare = false
		if m.says != "" {
			says(theme.Plain, "", m.says)
		} else {
			n := len(m.texts[m.Focus].Lines)
			says(theme.Dim, "", fmt.Sprintf("line %d of %d", min(m.read[m.Focus].Scroll.Y+1, n), n))
		}
		if len(f.Says) == 1 {
			says(m.cells.Wrong(&m.live.Result, m.Focus, m.selected()))
		}
	case mode == keys.OnPicture || mode == keys.OnCells:
		says(m.cells.Wrong(&m.live.Result, m.Focus, m.selected()))
		if f.Says == nil && facts != "" {
			says(theme.Computed, "", strings.TrimLeft(facts, " "))
		} else if s, ok := m.slot(); ok && f.Says == nil {
			says(theme.Dim, "", takes(s))
		}
	}
	return f
}

// prompt is what is typed on a line of its own, and what asks for it.
func (m Model) prompt() (label string, typed text.Line, ok bool) {
	switch mode := m.mode(); {
	case mode == keys.OnName:
		return m.forPage.Prompt(true), *m.naming, true
	case mode == keys.OnSearch:
		return "find: ", m.cells.Search.Line, true
	case mode == keys.OnHelpSearch:
		return "find: ", m.help.Search.Line, true
	case mode == keys.OnPalette:
		return "command: ", m.palette.Line, true
	case mode == keys.OnPractice:
		return "entry: ", m.front.Line(), true
	case mode == keys.InSetting:
		return m.setup.Name() + ": ", *m.setup.Typing, true
	case mode.Typing():
		return m.cells.Cell.Slot.Label() + ": ", m.cells.Cell.Line, true
	}
	return "", typed, false
}

// takes says what a cell takes.
func takes(s cells.Slot) string {
	if s.Does != cells.SetCell {
		return ""
	}
	return help.Takes(s.Ref)
}

// now is what decides which keys do something.
func (m Model) now() keys.Now {
	n := keys.Now{
		Mode: m.mode(), Watches: m.watches, Linear: m.linear, Flat: m.live.Problem != nil && m.live.Problem.Planar,
		Hosted: m.file.Store != nil, Starts: m.opening != nil, Hides: m.board.Hides > board.HidesNothing, Large: m.Large,
		Unsaved: m.history.Modified(), Solved: m.live.Solution != nil, Asked: m.ask != nil,
		Practises: m.front.On(), Keeps: m.front.Keeps(),
	}
	if m.ask != nil {
		n.More, n.Seen = len(m.ask.More) > 0, m.ask.Seen
	}
	return n
}

// hints are the things to do here.
func (m Model) hints() []keys.Hint {
	var cell []keys.Hint
	now := m.now()
	if s, ok := m.slot(); ok && now.Mode == keys.OnCells && s.Does != cells.Nothing && !m.watches {
		cell = append(cell, keys.Hint{Key: "type", Does: "replace"})
		if m.cells.TakesUnknown(m.Focus) {
			cell = append(cell, keys.Hint{Key: edit.Unknown, Does: "unknown"})
		}
	}
	return now.Hints(cell)
}

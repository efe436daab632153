package tui

import (
	"fmt"
	"image"
	"path/filepath"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/grid"
	"trivet/tui/journal"
	"trivet/tui/layout"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// beginJournal looks for work that was left of the sheet, and begins to keep
// what is typed. Without a journal of its own a session does neither: another
// program's visitors may have no state folder.
func (m *Model) beginJournal() {
	if !m.keeps {
		return
	}
	m.closeJournal()
	path := m.file(m.path)
	if path != "" {
		sheet.Sweep(path) // of what a save that was killed left beside it
	}
	text := m.history.Current().Text()
	found := journal.Find(m.env, path, text, m.journals...)
	m.journal = journal.Open(m.env, path, text, m.journals...)
	m.troubled()
	m.warn(found.Others)
	if m.path == "" && m.offered {
		return // the start screen has asked
	}
	m.offered = true
	m.offer(found.Offers)
}

// warn tells of other workbenches on the same sheet, once.
func (m *Model) warn(others []journal.Other) {
	n := len(others)
	if n > m.others {
		says := others[n-1].String()
		if n > 1 {
			says = fmt.Sprintf("%d of them, the last %s", n, says)
		}
		m.say("it is open in another workbench too ("+says+"); saving will ask first", true)
	}
	m.others = n
}

// offer asks whether work that was left is to be taken over; esc leaves it for
// the next start.
func (m *Model) offer(offers []journal.Offer) {
	if len(offers) == 0 {
		return
	}
	o, rest := offers[0], offers[1:]
	left, err := sheet.Parse([]byte(o.Text))
	if err != nil {
		m.say("unsaved work of "+o.When.Format("2 Jan 15:04")+" was found, but it cannot be read: "+err.Error(), true)
		return
	}
	m.ask = &question{
		text: fmt.Sprintf("Unsaved work of %s was left: %s. Take it over?", o.When.Format("2 Jan 15:04"), differ(o.Changes)),
		more: changeLines(o.Changes, "on disk", "left"),
		yes: func(m *Model) tea.Cmd {
			m.opening = nil
			m.history.Replace(left)
			cmd := m.changed() // which has it in this session's journal
			o.Discard()
			m.say("recovered, not saved yet; ctrl+z returns to the sheet as it was", false)
			m.offer(rest)
			return cmd
		},
		no: func(m *Model) tea.Cmd {
			o.Discard()
			m.offer(rest)
			return nil
		},
	}
}

func differ(list []sheet.Change) string {
	switch len(list) {
	case 0:
		return "it differs in order or comments"
	case 1:
		return "1 cell differs"
	}
	return count(len(list), "cell") + " differ"
}

// changeLines words what differs, a line a cell.
func changeLines(list []sheet.Change, was, is string) (lines text.Lines) {
	for _, c := range list {
		says, only := was+" "+c.Old+", "+is+" "+c.New, ""
		switch {
		case !c.Was:
			says, only = c.New, "   only "+is
		case !c.Is:
			says, only = c.Old, "   only "+was
		}
		lines.Add(text.Span{Text: grid.Clean(label(cells.Slot{Ref: c.Ref, Does: cells.SetCell}) + ": " + says)}, text.Span{Text: only, By: ", "})
	}
	return lines
}

// drawQuestion puts what is asked in the last lines of a screen without a foot.
func (m Model) drawQuestion(c grid.Canvas) {
	if m.ask != nil || m.naming != nil || m.setup != nil {
		m.drawFoot(c)
	}
}

// drawSeen shows what a question is about, above it.
func (m Model) drawSeen(c grid.Canvas) {
	if m.ask == nil || !m.ask.seen {
		return
	}
	c = c.In(m.seenRect())
	c.Fill(' ', theme.Plain)
	c.In(image.Rect(0, 0, c.W(), 1)).Fill(m.theme.Glyphs.RuleFocus, theme.RuleFocus)
	title, rows, at := " What differs ", c.H()-1, m.ask.at
	m.clampSeen(&at) // the screen may have grown
	if rows < len(m.ask.more) {
		title = fmt.Sprintf(" What differs: %d to %d of %d ", at.Y+1, at.Y+rows, len(m.ask.more))
	}
	c.Text(1, 0, theme.RuleFocus, title)
	m.ask.more.Draw(c.In(image.Rect(1, 1, c.W()-1, c.H())), at, c.W()-2, false)
}

// seenRect is where it stands: above the foot, no higher than it needs.
func (m Model) seenRect() image.Rectangle {
	rows := min(len(m.ask.more), max(m.h-layout.Foot-2, 1))
	y := max(m.h-layout.Foot-rows-1, 0)
	return image.Rect(0, y, m.w, y+rows+1)
}

// clampSeen keeps the scroll in the text.
func (m Model) clampSeen(at *text.Offset) {
	r := m.seenRect()
	at.Y = max(min(at.Y, len(m.ask.more)-r.Dy()+1), 0)
	at.X = max(min(at.X, m.ask.more.Width()-r.Dx()+2), 0)
}

// noteTyping keeps the cell being typed in the journal. The name of a row that is
// there already is given without the row: it is no cell that could be written.
func (m *Model) noteTyping() {
	if m.journal == nil || m.edit == nil {
		return
	}
	ref, text := m.edit.Slot.Ref, m.edit.Text
	switch {
	case m.edit.Slot.Does == cells.SetName:
		ref = sheet.Ref{Table: ref.Table}
	case m.edit.Slot.Does == cells.SetAsked && m.fresh != nil:
		row, _ := m.history.Current().Table("").Row("asked")
		cell, _ := row.Cell("")
		ref, text = sheet.Ref{Row: "asked"}, cell.Text+" "+text
	case m.edit.Slot.Does == cells.SetAsked:
		ref, text = m.asking(m.edit.Slot, text)
	}
	m.journal.Typing(ref, text)
	m.troubled()
}

// noteCommit keeps the sheet as it is now.
func (m *Model) noteCommit() {
	if m.journal != nil {
		m.journal.Commit(m.history.Current().Text())
		m.troubled()
	}
}

func (m *Model) troubled() {
	says := m.journal.Trouble()
	if says == "" {
		return
	}
	m.say(says, true)
	if m.trouble != nil {
		m.trouble(says)
	}
}

// file is where a sheet lies, for its journal: a name in a host's store is found
// by others on its whole path alone.
func (m *Model) file(path string) string {
	if path == "" || m.folder == "" {
		return path
	}
	return filepath.Join(m.folder, path)
}

func (m *Model) closeJournal() {
	if m.journal != nil {
		m.journal.Close()
	}
	m.journal = nil
}

// Done ends the journal of a session that another program runs, once what it
// holds is saved or is not wanted: nothing is left to recover.
func (m Model) Done() { m.closeJournal() }

// Leave ends it too, where what it holds could not be saved: the next session on
// this sheet is offered that.
func (m Model) Leave() {
	if m.journal != nil {
		m.journal.Leave()
	}
}

// Renote puts the journal right where it has a step that was taken back.
func (m Model) Renote() {
	m.noteCommit()
	m.noteTyping()
}

// bye leaves in order: nothing is left to recover, and nothing is left half
// written. Where a host saves, the session may yet go on, and what is not saved
// may yet be lost.
func (m *Model) bye() tea.Cmd {
	if m.store == nil {
		m.closeJournal()
	}
	m.going = true
	return m.gone()
}

// gone ends the session once nothing is on its way any more.
func (m *Model) gone() tea.Cmd {
	if !m.going || m.liking.busy {
		return nil
	}
	m.going = false
	m.left = true
	return tea.Quit
}

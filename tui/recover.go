package tui

import (
	"fmt"
	"image"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/grid"
	"trivet/tui/journal"
	"trivet/tui/layout"
	"trivet/tui/overlay"
	"trivet/tui/session"
)

// beginJournal looks for work that was left of the sheet, and begins to keep what is typed.
func (m *Model) beginJournal() {
	offers, others, trouble := m.file.Begin(m.env, m.history.Current().Text())
	m.troubled(trouble)
	m.warn(others)
	m.offer(offers)
}

// warn tells of other workbenches on the same sheet.
func (m *Model) warn(others []journal.Other) { m.say(m.file.Warn(others), true) }

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
		Question: overlay.Question{
			Text: fmt.Sprintf("Unsaved work of %s was left: %s. Take it over?", o.When.Format("2 Jan 15:04"), overlay.Differ(o.Changes)),
			More: overlay.Changes(o.Changes, "on disk", "left"),
		},
		yes: func(m *Model) tea.Cmd {
			m.opening = nil
			m.history.Replace(left)
			cmd, note := m.changed(), m.toJournal()
			m.say("recovered, not saved yet; ctrl+z returns to the sheet as it was", false)
			m.offer(rest)
			return tea.Batch(cmd, func() (trouble tea.Msg) {
				if note != nil {
					trouble = note() // which has it in this session's journal
				}
				o.Discard()
				return trouble
			})
		},
		no: func(m *Model) tea.Cmd {
			m.offer(rest)
			return func() tea.Msg {
				o.Discard()
				return nil
			}
		},
	}
}

// drawQuestion puts what is asked in the last lines of a screen without a foot.
func (m Model) drawQuestion(c grid.Canvas) {
	if m.ask != nil || m.naming != nil || m.setup != nil {
		m.drawFoot(c)
	}
}

// aboveFoot is where it stands what a question is about.
func (m Model) aboveFoot() image.Rectangle { return image.Rect(0, 1, m.w, m.h-layout.Foot) }

// toJournal keeps the sheet in the journal, and the cell being typed.
func (m *Model) toJournal() tea.Cmd {
	if m.file.Journal == nil {
		return nil
	}
	return m.file.Note(m.history.Current(), m.cells.Typed(m.history.Current()))
}

// troubled says that no journal is kept.
func (m *Model) troubled(says session.Trouble) {
	if says == "" {
		return
	}
	m.say(string(says), true)
	if m.trouble != nil {
		m.trouble(string(says))
	}
}

// Done ends the journal of a session that another program runs, once what it
// holds is saved or is not wanted: nothing is left to recover.
func (m Model) Done() { m.file.Close() }

// Leave ends it too, where what it holds could not be saved: the next session on
// this sheet is offered that.
func (m Model) Leave() {
	m.Renote()
	if m.file.Journal != nil {
		m.file.Journal.Leave()
	}
}

// Renote puts the journal right at once, where it has a step that was taken back or lacks
// one whose command was not done.
func (m Model) Renote() {
	m.file.Forget()
	if note := m.toJournal(); note != nil {
		note()
	}
}

// bye leaves in order: nothing is left to recover, and nothing is left half
// written. Where a host saves, the session may yet go on, and what is not saved
// may yet be lost.
func (m *Model) bye() tea.Cmd {
	if m.file.Store == nil {
		m.file.Close()
	}
	m.going = true
	return m.gone()
}

// gone ends the session once nothing is on its way any more.
func (m *Model) gone() tea.Cmd {
	if !m.going || m.prefs.Busy() {
		return nil
	}
	m.going = false
	m.left = true
	return tea.Quit
}

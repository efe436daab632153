package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/tui/frame"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/practice"
	"trivet/tui/theme"
)

// practised is what is practised in a session, in front of the workbench.
type practised struct {
	practice  practice.Options
	practises bool            // the session began so: behind practice there is nothing
	shelf     *practice.Shelf // the problems of a set
	desk      *practice.Desk  // the one that is worked on
}

// beginPractice opens what a session that practises begins with.
func (m *Model) beginPractice() tea.Cmd {
	if m.practice.Set != nil {
		return m.practice.List(0)
	}
	return m.practiseSheet()
}

// practiseSheet opens the sheet of the session for practice.
func (m *Model) practiseSheet() tea.Cmd {
	s := m.history.Current()
	title := ""
	if p := m.live.Latest; p != nil {
		title = p.Title
	}
	return m.practice.Sheet(practice.Name(m.file.Path, title), s, m.keeper())
}

// keeper opens the record that a session keeps practice in; nil: it has one, or none.
func (m *Model) keeper() func() (practice.Keeping, string) {
	env := m.env
	if m.practice.Store != nil || m.file.Store != nil { // a visitor's record is not that of the host's person
		return nil
	}
	return func() (practice.Keeping, string) { return practice.Own(env) }
}

// practisePicked practises the sheet or the set that is picked on the start screen.
func (m *Model) practisePicked() tea.Cmd {
	of, ok := m.opening.Picked()
	switch {
	case !ok:
		return nil
	case of.Set == "":
		return of.Practise
	}
	keep, open := m.practice.Keeping, m.keeper()
	return func() tea.Msg {
		opt, ok := practice.BuiltIn(of.Set)
		if !ok {
			return practice.Shelved{Fault: "this set does not read"}
		}
		if opt.Keeping = keep; open != nil {
			opt.Keeping, _ = open()
		}
		return opt.List(0)()
	}
}

// farther is how far one has come in each set.
type farther struct {
	keep practice.Keeping
	far  map[string]string
}

// standing reads how far one has come in the sets of the start screen; looking makes no record.
func (m *Model) standing() tea.Cmd {
	keep, open, env := m.practice.Keeping, m.keeper(), m.env
	return func() tea.Msg {
		switch {
		case open != nil && !practice.Kept(env):
			return nil
		case open != nil:
			keep, _ = open()
		}
		return farther{keep, keep.Standing()}
	}
}

// takeFarther shows it.
func (m *Model) takeFarther(msg farther) {
	m.practice.Keeping = msg.keep
	if m.opening != nil {
		m.opening = m.opening.Standing(msg.far)
	}
}

// takeOpened shows a desk that was opened.
func (m *Model) takeOpened(msg practice.Opened) {
	if msg.Fault != "" {
		m.say(msg.Fault, true)
		return
	}
	m.practice.Keeping = msg.Keep
	m.desk = &msg.Desk
	m.say(msg.Trouble, true)
	if m.linear && msg.Trouble == "" {
		m.say("practice: "+msg.Desk.Title()+"; type an entry and enter, or the word hint; ctrl+w leads to the task, esc back", false)
	}
}

// takeShelved shows the list of a set that was read.
func (m *Model) takeShelved(msg practice.Shelved) {
	if msg.Fault != "" {
		m.say(msg.Fault, true)
		return
	}
	m.shelf = &msg.Shelf
	m.practice.Keeping = msg.Shelf.Keeping()
}

// takeTold receives what became of an entry, and says it where no pane does.
func (m *Model) takeTold(msg practice.Told) tea.Cmd {
	if m.desk == nil {
		return nil
	}
	d, cmd := m.desk.Take(msg)
	m.desk = &d
	if msg.Bad || m.linear {
		m.say(msg.Says, msg.Bad)
	}
	return cmd
}

// practising does the intents of practice.
func (m *Model) practising(i keys.Intent) (tea.Cmd, bool) {
	if m.linear && m.desk.OnTask() && m.readOn(i) {
		return nil, true
	}
	d, cmd, says, wish := m.desk.Do(i)
	m.desk = &d
	m.say(says, false)
	switch wish {
	case practice.Leave:
		return m.leavePractice(), true
	case practice.AskShow:
		m.ask = &question{
			Question: asked("Show the solution? Practice on this problem ends, and your record says so."),
			yes: func(m *Model) tea.Cmd {
				d, cmd := m.desk.Show()
				m.desk = &d
				return cmd
			},
			no: func(*Model) tea.Cmd { return nil },
		}
	}
	return cmd, true
}

// onShelf does the intents of the list of a set.
func (m *Model) onShelf(i keys.Intent) (tea.Cmd, bool) {
	if m.shelf == nil { // it is being read, or cannot be
		if i == keys.Cancel {
			return m.leavePractice(), true
		}
		return nil, true
	}
	s, cmd, wish := m.shelf.Do(i)
	m.shelf = &s
	if wish == practice.Leave {
		return m.leavePractice(), true
	}
	return cmd, true
}

// leavePractice goes back to where practice was begun.
func (m *Model) leavePractice() tea.Cmd {
	switch {
	case m.desk != nil && m.shelf != nil:
		m.desk = nil
		return m.shelf.Again()
	case m.practises:
		return m.quit()
	}
	m.desk, m.shelf = nil, nil
	if m.opening != nil {
		return m.standing()
	}
	return nil
}

// inPractice tells that practice has the screen.
func (m *Model) inPractice() bool { return m.desk != nil || m.shelf != nil || m.practises }

// drawPractice draws practice on the whole screen.
func (m Model) drawPractice(c grid.Canvas) {
	f := practice.Frame{Glyphs: m.theme.Glyphs, Note: m.note, Hints: m.hints()}
	if m.ask != nil {
		f.Note = frame.Note{Text: m.ask.Text}
	}
	switch {
	case m.desk != nil:
		m.desk.Draw(c, f)
	case m.shelf != nil:
		m.shelf.Draw(c, f)
	default:
		says := "opening ..."
		if m.note.Text != "" {
			says = m.note.Text
		}
		c.Text(1, 0, theme.Dim, grid.Fit(says, c.W()-2))
	}
}

// doubt is the likeliest mistake of the answer under the cursor; in practice nobody hears of it.
func (m Model) doubt() string {
	if m.inPractice() {
		return ""
	}
	return m.live.Likeliest(m.cell())
}

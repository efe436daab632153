package tui

import (
	"unicode/utf8"

	tea "charm.land/bubbletea/v2"

	"trivet/tui/edit"
	"trivet/tui/frame"
	"trivet/tui/help"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/overlay"
	"trivet/tui/prefs"
	"trivet/tui/session"
)

// mode is what has the keys.
func (m Model) mode() keys.Mode {
	switch {
	case m.ask != nil:
		return keys.OnQuestion
	case m.naming != nil:
		return keys.OnName
	case m.cells.Search.On:
		return keys.OnSearch
	case m.palette != nil:
		return keys.OnPalette
	case m.help != nil && m.help.Search != nil:
		return keys.OnHelpSearch
	case m.help != nil:
		return keys.OnHelp
	case m.setup != nil && m.setup.Typing != nil:
		return keys.InSetting
	case m.setup != nil:
		return keys.OnSettings
	case m.front.On():
		return m.front.Mode()
	case m.opening != nil:
		return keys.OnStart
	case m.board.On && m.board.List != nil:
		return keys.OnSteps
	case m.board.On:
		return keys.OnBoard
	case m.choosing:
		return keys.OnChoice
	case m.listing:
		return keys.OnPanes
	case m.cells.Cell != nil && m.cells.Cell.List != nil:
		return keys.InList
	case m.cells.Cell != nil && len(m.cells.Cell.Words) > 0:
		return keys.InWords
	case m.cells.Cell != nil:
		return keys.InCell
	case m.Focus.Result():
		return keys.OnResult
	case m.Focus == layout.Picture:
		return keys.OnPicture
	}
	return keys.OnCells
}

// route turns a key into an intent, or into text where it is a character.
func (m *Model) route(msg tea.KeyPressMsg) tea.Cmd {
	m.note, m.changedByKey = frame.Note{}, false
	text := msg.Key().Text
	// What came as several characters is text, even where it spells a key's name.
	if utf8.RuneCountInString(text) <= 1 {
		if m.cells.DropBlank(m.mode(), msg.String()) {
			m.settle()
		}
		if text == edit.Unknown && m.mode() == keys.OnCells && m.cells.TakesUnknown(m.Focus) {
			return m.typed(text)
		}
		if b, ok := keys.Find(m.mode(), msg.String()); ok {
			m.changedByKey = b.Intent != keys.Rubout && b.Intent != keys.Delete
			return m.can(b.Intent)
		}
		if m.linear && m.mode() == keys.OnPicture {
			// In words the picture is read as a result is.
			if b, ok := keys.Find(keys.OnResult, msg.String()); ok && m.readOn(b.Intent) {
				return nil
			}
		}
		if cmd, ok := m.keepFirst(msg.String()); ok {
			return cmd
		}
	}
	if text == "" || msg.Key().Mod&(tea.ModCtrl|tea.ModAlt|tea.ModMeta|tea.ModSuper|tea.ModHyper) != 0 {
		return nil
	}
	return m.typed(text)
}

// keepFirst does a key of the workbench from within a cell: what is typed there
// is kept, and the key goes on. Where the sheet refuses it the cell stays open.
func (m *Model) keepFirst(key string) (tea.Cmd, bool) {
	i, ok := m.mode().Keeps(key)
	if !ok {
		return nil, false
	}
	cmd, open := m.keep()
	if open {
		return cmd, true
	}
	again, _ := m.handle(i)
	return tea.Batch(cmd, again), true
}

// deeds do the intents of a mode, behind those that hold everywhere, and tell whether they know
// them.
func deeds() [keys.Modes]func(*Model, keys.Intent) (tea.Cmd, bool) {
	only := func(do func(*Model, keys.Intent) bool) func(*Model, keys.Intent) (tea.Cmd, bool) {
		return func(m *Model, i keys.Intent) (tea.Cmd, bool) { return nil, do(m, i) }
	}
	return [keys.Modes]func(*Model, keys.Intent) (tea.Cmd, bool){
		keys.OnQuestion:   (*Model).answered,
		keys.OnName:       (*Model).named,
		keys.OnChoice:     only((*Model).chosen),
		keys.OnPanes:      (*Model).onPanes,
		keys.OnSearch:     (*Model).searching,
		keys.OnPalette:    (*Model).inPalette,
		keys.OnHelp:       only((*Model).turnHelp),
		keys.OnHelpSearch: only((*Model).seekHelp),
		keys.OnSettings:   (*Model).settingUp,
		keys.InSetting:    (*Model).settingUp,
		keys.OnStart:      (*Model).atStart,
		keys.OnBoard:      only((*Model).onBoard),
		keys.OnSteps:      only((*Model).onBoard),
		keys.InCell:       (*Model).typing,
		keys.InList:       (*Model).typing,
		keys.InWords:      (*Model).typing,
		keys.OnResult:     only((*Model).onResult),
		keys.OnPicture:    only((*Model).pictured),
		keys.OnCells:      (*Model).onCells,
		keys.OnPractice:   (*Model).practising,
		keys.OnTask:       (*Model).practising,
		keys.OnDepicted:   (*Model).practising,
		keys.OnShelf:      (*Model).practising,
	}
}

// can does an intent, or says why it cannot be done here.
func (m *Model) can(i keys.Intent) tea.Cmd {
	if why := m.now().Cannot(i); why != "" {
		m.say(why, false)
		return nil
	}
	cmd, _ := m.handle(i)
	return cmd
}

// handle does an intent where the keys are; ok tells that the mode knows it.
func (m *Model) handle(i keys.Intent) (cmd tea.Cmd, ok bool) {
	if cmd, ok := m.everywhere(i); ok {
		return cmd, true
	}
	mode := m.mode()
	if mode == keys.OnCells || mode == keys.OnResult || mode == keys.OnPicture {
		if cmd, ok := m.workbench(i); ok {
			return cmd, true
		}
		if mode != keys.OnCells && (m.linear && m.readOn(i) || m.reading(i)) {
			return nil, true
		}
	}
	return deeds()[mode](m, i)
}

// onPanes does the intents of the list of panes.
func (m *Model) onPanes(i keys.Intent) (tea.Cmd, bool) {
	m.listing = false
	if i == keys.Cancel {
		return nil, true
	}
	return m.workbench(i)
}

// reading does what is the same in the results and the picture.
func (m *Model) reading(i keys.Intent) bool {
	if i == keys.Cancel {
		m.goTo(m.back)
		return true
	}
	return false
}

// onResult moves the cursor of the result that has the keys.
func (m *Model) onResult(i keys.Intent) bool {
	p := m.Focus
	r := m.screen().Panes[p]
	return m.read[p].Turn(m.texts[p].Lines, i, r.Dx()-2, r.Dy()-1)
}

func (m *Model) everywhere(i keys.Intent) (tea.Cmd, bool) {
	switch i {
	case keys.Help:
		if m.help != nil {
			m.help = nil
		} else {
			m.help = help.Open(m.helpFor())
		}
	case keys.Save:
		return m.save(), true
	case keys.Quit:
		return m.quit(), true
	default:
		return nil, false
	}
	return nil, true
}

// workbench does what is the same in every pane.
func (m *Model) workbench(i keys.Intent) (tea.Cmd, bool) {
	switch i {
	case keys.Undo:
		if !m.history.Undo() {
			m.say("nothing to undo", false)
			return nil, true
		}
		return m.changed(), true
	case keys.Redo:
		if !m.history.Redo() {
			m.say("nothing to redo", false)
			return nil, true
		}
		return m.changed(), true
	case keys.NewNumbers:
		return m.edited(edit.NewNumbers(m.history.Current(), m.notes)), true
	case keys.Retell:
		return m.retell(), true
	case keys.Commands:
		m.palette = &overlay.List{}
	case keys.OpenSettings:
		m.setup = &prefs.List{}
	case keys.Search, keys.SearchNext, keys.GoBack:
		if i != keys.GoBack && m.Focus >= layout.System {
			m.goTo(m.back)
		}
		return m.edited(m.cells.Seek(m.where(), i)), true
	case keys.NewSheet, keys.OpenSheet:
		return m.reopen(i), true
	case keys.Practise:
		return m.practiseSheet(), true
	case keys.SaveAs:
		m.askName()
	case keys.WritePage:
		m.askPage(session.WorkingPage)
	case keys.WriteField:
		m.askPage(session.FieldPage)
	case keys.WriteTask:
		m.askPage(session.TaskPage)
	case keys.ToBoard:
		return m.toBoard(), true
	case keys.NextPane:
		m.hop(1)
	case keys.PrevPane:
		m.hop(-1)
	case keys.ListPanes:
		m.listing = true
	case keys.NextResult:
		m.NextResult(m.screen().Shared, 1)
	case keys.PrevResult:
		m.NextResult(m.screen().Shared, -1)
	case keys.SwitchSide:
		m.Switch(m.screen().Shared)
	case keys.Enlarge:
		m.Large = !m.Large
	default:
		p, ok := frame.PaneOf(i)
		if ok {
			m.goTo(p)
		}
		return nil, ok
	}
	return nil, true
}

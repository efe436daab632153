package tui

import (
	"unicode/utf8"

	tea "charm.land/bubbletea/v2"

	"trivet/tui/edit"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/overlay"
)

// mode is what has the keys.
func (m Model) mode() keys.Mode {
	switch {
	case m.ask != nil:
		return keys.OnQuestion
	case m.naming != nil:
		return keys.OnName
	case m.search.on:
		return keys.OnSearch
	case m.palette != nil:
		return keys.OnPalette
	case m.help != nil:
		return keys.OnHelp
	case m.setup != nil && m.setup.typing != nil:
		return keys.InSetting
	case m.setup != nil:
		return keys.OnSettings
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
	case m.focus.Result():
		return keys.OnResult
	case m.focus == layout.Picture:
		return keys.OnPicture
	}
	return keys.OnCells
}

// route turns a key into an intent, or into text where it is a character.
func (m *Model) route(msg tea.KeyPressMsg) tea.Cmd {
	m.note, m.changedByKey = note{}, false
	text := msg.Key().Text
	// What came as several characters is text, even where it spells a key's name.
	if utf8.RuneCountInString(text) <= 1 {
		if m.cells.DropBlank(m.mode(), msg.String()) {
			m.settle()
		}
		if text == edit.Unknown && m.mode() == keys.OnCells && m.cells.TakesUnknown(m.focus) {
			return m.typed(text)
		}
		if b, ok := keys.Find(m.mode(), msg.String()); ok {
			if why := m.cannot(b.Intent); why != "" {
				m.say(why, false)
				return nil
			}
			m.changedByKey = b.Intent != keys.Rubout && b.Intent != keys.Delete
			cmd, _ := m.handle(b.Intent)
			return cmd
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
	if mode := m.mode(); mode != keys.InCell && mode != keys.InWords && mode != keys.InList {
		return nil, false
	}
	b, ok := keys.Find(keys.OnCells, key)
	if !ok {
		return nil, false
	}
	switch b.Intent {
	case keys.NewRow, keys.ListPanes, keys.GoPoints, keys.GoUnknowns, keys.GoSheet, keys.GoSystem, keys.GoPicture, keys.GoHandSolution, keys.GoLimits, keys.NextResult,
		keys.ToBoard, keys.SwitchSide, keys.Enlarge, keys.Commands, keys.OpenSettings, keys.Search, keys.MoveUp, keys.MoveDown, keys.Duplicate:
	default:
		return nil, false
	}
	cmd := m.keep()
	if m.cells.Cell != nil {
		return cmd, true
	}
	again, _ := m.handle(b.Intent)
	return tea.Batch(cmd, again), true
}

// cannot says why an intent has no effect at the moment; empty where it has.
func (m Model) cannot(i keys.Intent) string {
	flat := m.live.Problem != nil && m.live.Problem.Planar
	switch i {
	case keys.See:
		if m.ask != nil && len(m.ask.more) == 0 {
			return "there is nothing more to show"
		}
	case keys.PageUp, keys.PageDown, keys.First, keys.Last:
		return m.cannotScroll()
	case keys.Save:
		if m.opening != nil {
			return "no sheet is open yet: enter opens one"
		}
	case keys.ViewFront, keys.ViewSide, keys.ViewTop, keys.ViewSpace:
		if flat {
			return "a problem in a plane has one view"
		}
	case keys.Left, keys.Right, keys.Up, keys.Down:
		if flat && !m.linear && (m.mode() == keys.OnPicture || m.mode() == keys.OnBoard && i != keys.Up && i != keys.Down) {
			return "a picture in a plane does not turn"
		}
		return m.cannotScroll()
	case keys.NewSheet, keys.OpenSheet:
		if m.file.Store != nil {
			return "a hosted session has one sheet. Try: start trivet on the other one"
		}
	case keys.Reveal:
		if !m.board.Hides && m.mode() == keys.OnBoard {
			return "answers are shown already: h hides them"
		}
	case keys.SwitchSide:
		if m.large {
			return "one pane has the whole screen: ctrl+e brings the others back"
		}
	}
	return ""
}

// cannotScroll says why a question does not scroll.
func (m Model) cannotScroll() string {
	switch {
	case m.ask == nil || m.ask.seen:
		return ""
	case len(m.ask.more) == 0:
		return "y, n or esc answers"
	}
	return "s shows what differs"
}

// handle does an intent where the keys are; ok tells that the mode knows it.
func (m *Model) handle(i keys.Intent) (cmd tea.Cmd, ok bool) {
	switch m.mode() {
	case keys.OnQuestion:
		return m.answered(i)
	case keys.OnName:
		return m.named(i)
	case keys.OnChoice:
		return nil, m.chosen(i)
	case keys.OnPanes:
		m.listing = false
		if i == keys.Cancel {
			return nil, true
		}
		return m.workbench(i)
	case keys.OnSearch:
		return nil, m.searching(i)
	case keys.OnPalette:
		return m.inPalette(i)
	case keys.InSetting:
		return m.valuing(i)
	}
	if cmd, ok := m.everywhere(i); ok {
		return cmd, true
	}
	switch m.mode() {
	case keys.OnHelp:
		return nil, m.turnHelp(i)
	case keys.OnSettings:
		return m.settingUp(i)
	case keys.OnStart:
		return m.atStart(i)
	case keys.OnBoard, keys.OnSteps:
		return nil, m.onBoard(i)
	case keys.InCell, keys.InList, keys.InWords:
		return m.typing(i)
	}
	if cmd, ok := m.workbench(i); ok {
		return cmd, true
	}
	if m.linear && m.focus >= layout.System && m.readOn(i) {
		return nil, true
	}
	switch m.mode() {
	case keys.OnResult:
		return nil, m.reading(i) || m.turnResult(i)
	case keys.OnPicture:
		if m.reading(i) {
			return nil, true
		}
		switch i {
		case keys.PickNext:
			m.pickNext(1)
			return nil, true
		case keys.PickPrev:
			m.pickNext(-1)
			return nil, true
		}
		if m.pictured(i) {
			return nil, true
		}
		ok := m.cam.handle(i)
		return nil, ok
	}
	return m.onCells(i)
}

func (m *Model) everywhere(i keys.Intent) (tea.Cmd, bool) {
	switch i {
	case keys.Help:
		if m.help != nil {
			m.help = nil
		} else {
			m.help = &helping{}
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
		return m.newNumbers(), true
	case keys.Retell:
		return m.retell(), true
	case keys.Commands:
		m.palette = &overlay.List{}
	case keys.OpenSettings:
		m.setup = &setup{}
	case keys.Search:
		m.beginSearch()
	case keys.SearchNext:
		m.searchNext()
	case keys.GoBack:
		m.goBack()
	case keys.NewSheet, keys.OpenSheet:
		return m.reopen(i), true
	case keys.SaveAs:
		m.askName()
	case keys.WritePage:
		m.askPage(WorkingPage)
	case keys.WriteField:
		m.askPage(FieldPage)
	case keys.WriteTask:
		m.askPage(TaskPage)
	case keys.ToBoard:
		return m.toBoard(), true
	case keys.NextPane:
		m.hop(1)
	case keys.PrevPane:
		m.hop(-1)
	case keys.ListPanes:
		m.listing = true
	case keys.GoGiven, keys.GoPoints, keys.GoLines, keys.GoSupports, keys.GoUnknowns, keys.GoSheet, keys.GoSystem, keys.GoPicture,
		keys.GoChecks, keys.GoWorking, keys.GoHandSolution, keys.GoRanges, keys.GoLimits:
		m.goTo(layout.Pane(i - keys.GoGiven))
	case keys.NextResult:
		m.nextResult(1)
	case keys.PrevResult:
		m.nextResult(-1)
	case keys.SwitchSide:
		m.switchSide()
	case keys.Enlarge:
		m.large = !m.large
	default:
		return nil, false
	}
	return nil, true
}

package tui

import (
	"fmt"
	"strings"

	"trivet/mechanics/problem"
	"trivet/tui/cells"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/settings"
	"trivet/tui/text"
)

// greeting says what is open, once.
func (m Model) greeting() []string {
	if m.opening != nil {
		return []string{"trivet: free-body equilibrium, line by line; F1 is help, ctrl+q quits"}
	}
	lines := []string{"sheet " + m.title() + "; F1 is help, ctrl+k lists commands, f7 and a letter lead to the panes"}
	cell := func(name string) string {
		row, _ := m.history.Current().Table("").Row(name)
		c, _ := row.Cell("")
		return c.Text
	}
	return append(lines, cell("title"), cell("statement"))
}

// scene says what has the keys, as far as it differs from a model before; fresh
// tells that something else had them.
func (m Model) scene(was Model, fresh bool) []string {
	intro := func(s string) string {
		if fresh || was.history == nil {
			return s
		}
		return ""
	}
	switch m.mode() {
	case keys.OnQuestion:
		return m.questionScene(was)
	case keys.OnName:
		if fresh {
			return []string{"type the name of the file and enter; esc goes back"}
		}
	case keys.OnSearch:
		if fresh {
			return []string{"type what to find; enter goes on, esc ends"}
		}
	case keys.OnPalette:
		return one(was.palette == nil || was.paletteWords() != m.paletteWords(), intro("commands, type to narrow; ")+m.paletteWords())
	case keys.OnHelp:
		return m.readScene(was, "help")
	case keys.OnSettings:
		s := settings.Keys()[m.setup.pick]
		words := func(m Model) string {
			return fmt.Sprintf("%d of %d: %s is %s; %s", m.setup.pick+1, len(settings.Keys()), s.Name, shownValue(m.like().Get(s.Name)), s.Says)
		}
		return one(was.setup == nil || words(was) != words(m) || fresh, intro("settings, "+m.keptWhere()+"; left and right change one; ")+words(m))
	case keys.InSetting:
		if fresh {
			return []string{"type the value and enter; esc leaves it as it was"}
		}
	case keys.OnStart:
		return one(was.opening == nil || was.opening.find != m.opening.find || was.opening.pick != m.opening.pick || fresh, intro("choose a sheet with down and up, or type to look for one; enter opens it; ")+m.opening.words())
	case keys.OnSteps:
		steps := m.steps()
		if m.board.pick < len(steps) {
			return one(!was.board.list || was.board.pick != m.board.pick, fmt.Sprintf("step %d of %d: %s", m.board.pick+1, len(steps), steps[m.board.pick].Title))
		}
	case keys.OnBoard:
		return m.boardScene(was)
	case keys.OnChoice:
		return one(fresh, "which row? "+offers(keys.Choosing))
	case keys.OnPanes:
		return one(fresh, "which pane? "+offers(keys.Panes))
	case keys.InCell, keys.InList, keys.InWords:
		return m.editScene(was)
	case keys.OnCells:
		return m.place(whereabouts{})
	default:
		return m.readScene(was, m.paneName(m.focus))
	}
	return nil
}

// offers are the keys of a scope, each with what it does.
func offers(of keys.Scope) string {
	var parts []string
	for _, b := range keys.Table() {
		if b.Scope == of {
			parts = append(parts, b.Keys[0]+" "+b.Help)
		}
	}
	return strings.Join(parts, "; ")
}

func one(is bool, line string) []string {
	if !is {
		return nil
	}
	return []string{line}
}

func (m Model) questionScene(was Model) []string {
	q := m.ask
	switch {
	case was.ask != nil && was.ask.text == q.text && was.ask.seen == q.seen:
		return nil
	case q.seen:
		return q.more.Read()
	}
	keys := "y is yes, n is no, esc goes back"
	if len(q.more) > 0 {
		keys = "y is yes, n is no, s lists it, esc goes back"
	}
	return []string{q.text, keys}
}

func (m Model) paletteWords() string {
	list := m.palette.commands()
	if len(list) == 0 {
		return "no command matches"
	}
	b := list[min(m.palette.pick, len(list)-1)]
	return fmt.Sprintf("%d of %d: %s; key %s", m.palette.pick+1, len(list), b.Help, b.Keys[0])
}

func (o *opening) words() string {
	list := o.shown()
	if o.pick >= len(list) {
		return "no sheet matches: backspace"
	}
	return fmt.Sprintf("%d of %d, %s: %s", o.pick+1, len(list), list[o.pick].family, list[o.pick].title)
}

// editScene says what is being typed where the terminal itself does not show it: a
// cell that is opened, a text that a key changed, the lists that go with it.
func (m Model) editScene(was Model) (lines []string) {
	e, old := m.edit, was.edit
	name := label(e.Slot)
	if e.Slot.Does == cells.SetName && e.Slot.Ref.Row == "" {
		name = "name of the new " + problem.ThingOf(e.Slot.Ref.Table).String()
		if e.Slot.Ref.Table == m.newest.Table {
			name += ", enter alone ends the list"
		}
	}
	switch {
	case old == nil || old.Slot.Ref != e.Slot.Ref || old.Slot.Does != e.Slot.Does:
		text := e.Text
		if strings.TrimSpace(text) == "" {
			text = "blank"
		}
		line := "typing " + name
		if e.Text == e.Was {
			line += ": " + text
		}
		if e.Text == e.Was || e.List != nil {
			lines = append(lines, line)
		}
		old = &cells.Edit{}
	case old.Text != e.Text && m.changedByKey:
		lines = append(lines, name+": "+e.Text)
	}
	list, pick, noun := e.Offered()
	before, wasAt, _ := old.Offered()
	switch {
	case len(list) == 0 || pick == wasAt && len(before) == len(list) && before[max(pick, 0)].Text == list[max(pick, 0)].Text:
	case pick < 0:
		var names []string
		for _, c := range list[:min(len(list), 3)] {
			names = append(names, c.Text)
		}
		how := "down chooses"
		if noun == "word" {
			how = "tab takes the first"
		}
		lines = append(lines, count(len(list), noun)+": "+strings.Join(names, ", ")+"; "+how)
	default:
		c := list[pick]
		line := fmt.Sprintf("%d of %d: %s", pick+1, len(list), c.Text)
		if c.Says != "" {
			line += ", " + c.Says
		}
		lines = append(lines, line)
	}
	return lines
}

// typingLine is what stands on the last line: what one is at, and the text there
// with its cursor.
func (m Model) typingLine() (prompt string, l text.Line) {
	switch m.mode() {
	case keys.OnQuestion:
		return "y, n or esc: ", text.Line{}
	case keys.OnName:
		return m.forPage.longPrompt(), *m.naming
	case keys.OnSearch:
		return "find: ", m.search.Line
	case keys.OnPalette:
		return "command: ", m.palette.Line
	case keys.InSetting:
		return settings.Keys()[m.setup.pick].Name + ": ", *m.setup.typing
	case keys.OnSettings:
		s := settings.Keys()[m.setup.pick]
		return "settings, " + s.Name + ": ", text.Line{Text: shownValue(m.like().Get(s.Name))}
	case keys.OnStart:
		return "sheet: ", text.NewLine(m.opening.find)
	case keys.OnChoice:
		return "which row? ", text.Line{}
	case keys.OnPanes:
		return "which pane? ", text.Line{}
	case keys.InCell, keys.InList, keys.InWords:
		return label(m.edit.Slot) + ": ", m.edit.Line
	case keys.OnBoard, keys.OnSteps:
		return fmt.Sprintf("board, step %d of %d", m.board.at+1, len(m.steps())), text.Line{}
	case keys.OnCells:
		t, at := m.tables[m.focus], m.at[m.focus]
		if at.Row >= len(t.Records) {
			return m.paneName(m.focus) + ": ", text.Line{}
		}
		s, _ := m.slot()
		return m.paneName(m.focus) + ", " + m.rowLabel(at.Row) + ", " + m.columnName() + ": ", text.Line{Text: grid.Clean(s.Text)}
	}
	lines, at := m.readLines()
	name := m.paneName(m.focus)
	if m.help != nil {
		name = "help"
	}
	return fmt.Sprintf("%s, line %d of %d", name, min(at+1, len(lines)), len(lines)), text.Line{}
}

package tui

import (
	"strings"

	tea "charm.land/bubbletea/v2"

	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/overlay"
	"trivet/tui/theme"
)

// commandScopes are those whose keys are commands, those of the cells first.
var commandScopes = []keys.Scope{keys.Cells, keys.Workbench, keys.Always, keys.Result, keys.Picture, keys.Board}

// commands gives the bindings with all the words that are typed, in what they do,
// where, or their keys.
func commands(of overlay.List) (list []keys.Binding) {
	seen := map[keys.Intent]keys.Scope{}
	for _, s := range commandScopes {
		for _, b := range keys.Table() {
			if at, ok := seen[b.Intent]; b.Scope == s && (!ok || at == s) && b.Intent != keys.Commands {
				seen[b.Intent] = s
				list = append(list, b)
			}
		}
	}
	return overlay.Narrowed(of, list, func(b keys.Binding) string {
		return b.Help + " " + b.Scope.String() + " " + strings.Join(b.Keys, " ")
	})
}

// inPalette does the intents of the list of commands.
func (m *Model) inPalette(i keys.Intent) (tea.Cmd, bool) {
	list := commands(*m.palette)
	switch i {
	case keys.Cancel:
		m.palette = nil
		return nil, true
	case keys.Commit:
		if len(list) == 0 {
			m.say("no command matches", false)
			return nil, true
		}
		b := list[m.palette.Pick]
		m.palette = nil
		return m.run(b), true
	}
	p, ok := m.palette.Do(i, len(list), paletteRows)
	m.palette = &p
	return nil, ok
}

// run does a command, in the pane that it belongs to.
func (m *Model) run(b keys.Binding) (cmd tea.Cmd) {
	switch {
	case b.Scope == keys.Cells && m.focus >= layout.System:
		m.goTo(m.back)
	case b.Scope == keys.Result && !m.focus.Result():
		m.goTo(m.turn)
	case b.Scope == keys.Picture:
		m.goTo(layout.Picture)
	case b.Scope == keys.Board:
		cmd = m.toBoard()
	}
	if why := m.cannot(b.Intent); why != "" {
		m.say(why, false)
		return cmd
	}
	next, _ := m.handle(b.Intent)
	return tea.Batch(cmd, next)
}

// paletteRows is how many commands show at a time.
const paletteRows = 14

// listedCommands are the commands as they show.
func listedCommands(of overlay.List) overlay.Shown {
	list := commands(of)
	s := overlay.Shown{
		List: of, Title: " " + count(len(list), "command") + ": type to narrow ",
		Intro: "commands, type to narrow; ", None: "no command matches",
		Columns: []overlay.Column{{At: 1, Width: 14, Look: theme.Key}, {At: 16, Look: theme.Plain, Picks: true}},
	}
	for _, b := range list {
		says := b.Help
		if b.Scope > keys.Cells {
			says = strings.ToLower(b.Scope.String()) + ": " + says
		}
		s.Rows = append(s.Rows, overlay.Row{Cells: []string{b.Keys[0], says}, Says: b.Help + "; key " + b.Keys[0]})
	}
	return s
}

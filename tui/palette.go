package tui

import (
	"image"
	"strings"

	tea "charm.land/bubbletea/v2"

	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// palette is the list of commands. It is replaced, never changed.
type palette struct {
	text.Line
	pick int
}

func (p palette) typed(text string) *palette {
	p.Insert(text)
	p.pick = 0
	return &p
}

// commandScopes are those whose keys are commands, those of the cells first.
var commandScopes = []keys.Scope{keys.Cells, keys.Workbench, keys.Always, keys.Result, keys.Picture, keys.Board}

// commands gives the bindings with all the words that are typed, in what they do,
// where, or their keys.
func (p palette) commands() (list []keys.Binding) {
	want := strings.Fields(strings.ToLower(p.Text))
	seen := map[keys.Intent]keys.Scope{}
	for _, s := range commandScopes {
	bindings:
		for _, b := range keys.Table() {
			if at, ok := seen[b.Intent]; b.Scope != s || ok && at != s || b.Intent == keys.Commands {
				continue
			}
			seen[b.Intent] = s
			all := strings.ToLower(b.Help + " " + s.String() + " " + strings.Join(b.Keys, " "))
			for _, w := range want {
				if !strings.Contains(all, w) {
					continue bindings
				}
			}
			list = append(list, b)
		}
	}
	return list
}

// inPalette does the intents of the list of commands.
func (m *Model) inPalette(i keys.Intent) (tea.Cmd, bool) {
	p := *m.palette
	list := p.commands()
	switch i {
	case keys.Cancel:
		m.palette = nil
		return nil, true
	case keys.PickUp:
		p.pick = max(p.pick-1, 0)
	case keys.PickDown:
		p.pick = max(min(p.pick+1, len(list)-1), 0)
	case keys.Commit:
		if len(list) == 0 {
			m.say("no command matches", false)
			return nil, true
		}
		m.palette = nil
		return m.run(list[p.pick]), true
	default:
		was := p.Text
		if !p.Handle(i) {
			return nil, false
		}
		if p.Text != was {
			p.pick = 0
		}
	}
	m.palette = &p
	return nil, true
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

func (m Model) drawPalette(c grid.Canvas) {
	if m.palette == nil {
		return
	}
	list := m.palette.commands()
	w := min(c.W(), 84)
	rows := min(max(len(list), 1), paletteRows, max(c.H()-layout.Foot-2, 1))
	x, y := (c.W()-w)/2, max(c.H()-layout.Foot-rows-2, 0)
	box := c.In(image.Rect(x, y, x+w, y+rows+1))
	box.Fill(' ', theme.Plain)
	box.In(image.Rect(0, 0, w, 1)).Fill(m.theme.Glyphs.RuleFocus, theme.RuleFocus)
	box.Text(1, 0, theme.RuleFocus, " "+count(len(list), "command")+": type to narrow ")
	if len(list) == 0 {
		box.Text(2, 1, theme.Dim, "no command matches")
		return
	}
	const wide = 14
	top := max(min(m.palette.pick-rows/2, len(list)-rows), 0)
	for k := range rows {
		b := list[top+k]
		look := theme.Plain
		if top+k == m.palette.pick {
			box.Set(0, k+1, m.theme.Glyphs.Row, theme.RuleFocus)
			look = theme.Selected
		}
		box.Text(1, k+1, theme.Key, grid.Fit(b.Keys[0], wide))
		says := b.Help
		if b.Scope > keys.Cells {
			says = strings.ToLower(b.Scope.String()) + ": " + says
		}
		box.Text(wide+2, k+1, look, grid.Fit(says, w-wide-3))
	}
}

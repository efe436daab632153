package tui

import (
	"image"

	"trivet/tui/grid"
	"trivet/tui/layout"
	"trivet/tui/settings"
	"trivet/tui/theme"
)

// setupWidth is how wide the list of settings gets.
const setupWidth = 84

// shownValue is a setting's value as it is listed.
func shownValue(text string) string {
	if text == "" {
		return "usual"
	}
	return text
}

// keptWhere tells what becomes of a changed setting.
func (m Model) keptWhere() string {
	if m.liking.keep == nil {
		return "for this session"
	}
	return "kept in " + m.liking.where
}

// drawSetup lists the settings over what else shows.
func (m Model) drawSetup(c grid.Canvas) {
	if m.setup == nil {
		return
	}
	all := settings.Keys()
	w := min(c.W(), setupWidth)
	rows := min(len(all), max(c.H()-layout.Foot-2, 1))
	x, y := (c.W()-w)/2, max(c.H()-layout.Foot-rows-2, 0)
	box := c.In(image.Rect(x, y, x+w, y+rows+1))
	box.Fill(' ', theme.Plain)
	box.In(image.Rect(0, 0, w, 1)).Fill(m.theme.Glyphs.RuleFocus, theme.RuleFocus)
	box.Text(1, 0, theme.RuleFocus, grid.Fit(" Settings, "+m.keptWhere()+" ", min(grid.Width(m.keptWhere())+12, w-2)))
	const name, value = 13, 8
	top := max(min(m.setup.pick-rows/2, len(all)-rows), 0)
	for k := range rows {
		s, look := all[top+k], theme.Plain
		if top+k == m.setup.pick {
			box.Set(0, k+1, m.theme.Glyphs.Row, theme.RuleFocus)
			look = theme.Selected
		}
		box.Text(1, k+1, theme.Name, grid.Fit(s.Name, name))
		box.Text(name+2, k+1, look, grid.Fit(shownValue(m.like().Get(s.Name)), value))
		box.Text(name+value+4, k+1, theme.Plain, grid.Fit(s.Says, w-name-value-5))
	}
}

// drawSetting shows the setting in full, or as it is typed.
func (m Model) drawSetting(c grid.Canvas) {
	s := settings.Keys()[m.setup.pick]
	if m.setup.typing != nil {
		m.drawLine(c, s.Name+": ", *m.setup.typing)
		return
	}
	x := c.Text(1, 0, theme.Name, s.Name+": ")
	x = c.Text(x, 0, theme.Plain, shownValue(m.like().Get(s.Name)))
	c.Text(x, 0, theme.Dim, grid.Fit("   "+s.Says, max(c.W()-x-1, 0)))
}

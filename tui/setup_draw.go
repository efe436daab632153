package tui

import (
	"fmt"

	"trivet/tui/grid"
	"trivet/tui/overlay"
	"trivet/tui/settings"
	"trivet/tui/theme"
)

// shownValue is a setting's value as it is listed.
func (m Model) shownValue(name string) string {
	if text := m.like().Get(name); text != "" {
		return text
	}
	return "usual"
}

// listedSettings are the settings as they show.
func (m Model) listedSettings() overlay.Shown {
	kept := "for this session"
	if m.liking.keep != nil {
		kept = "kept in " + m.liking.where
	}
	s := overlay.Shown{
		List: m.setup.List, Title: " Settings, " + kept + " ", Intro: "settings, " + kept + "; left and right change one; ",
		Columns: []overlay.Column{{At: 1, Width: 13, Look: theme.Name}, {At: 15, Width: 8, Look: theme.Plain, Picks: true}, {At: 25, Look: theme.Plain}},
	}
	for _, k := range settings.Keys() {
		value := m.shownValue(k.Name)
		s.Rows = append(s.Rows, overlay.Row{Cells: []string{k.Name, value, k.Says}, Says: fmt.Sprintf("%s is %s; %s", k.Name, value, k.Says)})
	}
	return s
}

// drawSetting shows the setting in full, or as it is typed.
func (m Model) drawSetting(c grid.Canvas) {
	s := settings.Keys()[m.setup.Pick]
	if m.setup.typing != nil {
		m.drawLine(c, s.Name+": ", *m.setup.typing)
		return
	}
	x := c.Text(1, 0, theme.Name, s.Name+": ")
	x = c.Text(x, 0, theme.Plain, m.shownValue(s.Name))
	c.Text(x, 0, theme.Dim, grid.Fit("   "+s.Says, max(c.W()-x-1, 0)))
}

package host

import (
	"image"
	"strings"

	"trivet/tui/grid"
	"trivet/tui/host/line"
	"trivet/tui/host/store"
	"trivet/tui/theme"
)

// list is the sheets that a private visitor may open.
type list struct {
	names []string
	at    int
	note  string
}

// deed is what a key of the list asks for.
type deed int

const (
	nothing deed = iota
	open
	leave
)

func (l list) key(key string) (list, deed) {
	l.note = ""
	page := 10
	switch key {
	case "up":
		l.at--
	case "down":
		l.at++
	case "pgup":
		l.at -= page
	case "pgdown":
		l.at += page
	case "home":
		l.at = 0
	case "end":
		l.at = len(l.names)
	case "enter":
		if len(l.names) > 0 {
			return l, open
		}
	case "q", "esc", "ctrl+q", "ctrl+c":
		return l, leave
	}
	l.at = max(min(l.at, len(l.names)-1), 0)
	return l, nothing
}

func (l list) draw(w, h int, t line.Terminal) grid.Frame {
	looks := theme.New(t.Set)
	g := grid.New(w, h-1)
	c := g.All()
	c.In(image.Rect(0, 0, w, 1)).Fill(looks.Glyphs.Rule, theme.RuleFocus)
	c.Text(1, 0, theme.RuleFocus, " Your sheets ")
	rows := max(h-4, 1)
	top := max(0, l.at-rows+1)
	for y := range rows {
		if i := top + y; i < len(l.names) {
			look := theme.Plain
			if i == l.at {
				look = theme.Selected
				c.Set(0, y+2, looks.Glyphs.Row, theme.RuleFocus)
			}
			c.Text(2, y+2, look, strings.TrimSuffix(l.names[i], store.Ending))
		}
	}
	if len(l.names) == 0 {
		c.Text(2, 2, theme.Dim, "There is no sheet to work on yet.")
	}
	if l.note != "" {
		c.Text(1, h-2, theme.Bad, grid.Fit(l.note, w-2))
	}
	return line.Under(grid.Frame{Grid: g, Styles: looks.Styles}, w, h, t, "up/down: choose, enter: open, q: leave")
}

package tui

import (
	"image"

	"trivet/tui/grid"
	"trivet/tui/layout"
	"trivet/tui/overlay"
	"trivet/tui/theme"
)

// The list of choices shows so many at a time, so wide.
const (
	listRows  = 8
	listWidth = 66
)

// drawList shows what the cell being typed in may hold, under it or above.
func (m Model) drawList(c grid.Canvas) {
	if m.edit == nil || m.ask != nil || m.naming != nil {
		return
	}
	list, pick, noun := m.edit.Offered()
	r := m.screen().Panes[m.focus]
	if len(list) == 0 || r.Empty() {
		return
	}
	rows := min(len(list), listRows)
	y := r.Min.Y + layout.Frame + m.at[m.focus].Row - m.at[m.focus].Top + 1
	if y+rows+1 > c.H()-layout.Foot {
		y = max(y-rows-2, 0)
	}
	x := max(min(r.Min.X+6, c.W()-listWidth), 0)
	box := c.In(image.Rect(x, y, min(x+listWidth, c.W()), y+rows+1))
	box.Fill(' ', theme.Plain)
	name := 8
	shown := make([]overlay.Row, len(list))
	for i, k := range list {
		name = max(name, grid.Width(k.Text))
		shown[i].Cells = []string{k.Text, k.Says}
	}
	overlay.Shown{
		List: overlay.List{Pick: pick}, Rows: shown,
		Columns: []overlay.Column{{At: 1, Width: name, Look: theme.Name, Picks: true}, {At: name + 2, Look: theme.Plain}},
	}.Draw(box.In(image.Rect(1, 0, box.W(), rows)), m.theme.Glyphs.Row)
	for i := range rows {
		box.Set(0, i, m.theme.Glyphs.Wall, theme.RuleFocus)
		box.Set(box.W()-1, i, m.theme.Glyphs.Wall, theme.RuleFocus)
	}
	box.In(image.Rect(0, rows, box.W(), rows+1)).Fill(m.theme.Glyphs.RuleFocus, theme.RuleFocus)
	says := ""
	if len(list) > rows {
		says = " " + count(len(list), noun) + ", more with the arrows "
	}
	if noun == "word" {
		says += " enter: insert   esc: leave it as typed "
	}
	box.Text(2, rows, theme.RuleFocus, says)
}

package overlay

import (
	"image"

	"trivet/mechanics/say"
	"trivet/tui/grid"
	"trivet/tui/layout"
	"trivet/tui/theme"
)

// Choices are what a cell being typed in may hold: their rows of two columns, the one picked, and
// what one of them is called.
type Choices struct {
	Rows []Row
	Pick int
	Noun string
}

// The list of choices shows so many at a time, so wide.
const (
	choiceRows  = 8
	choiceWidth = 66
)

// Draw shows the choices under a row of a pane, or above it.
func (l Choices) Draw(c grid.Canvas, row image.Point, g theme.Glyphs) {
	if len(l.Rows) == 0 {
		return
	}
	rows, y := min(len(l.Rows), choiceRows), row.Y+1
	if y+rows+1 > c.H()-layout.Foot {
		y = max(y-rows-2, 0)
	}
	x := max(min(row.X+6, c.W()-choiceWidth), 0)
	box := c.In(image.Rect(x, y, min(x+choiceWidth, c.W()), y+rows+1))
	box.Fill(' ', theme.Plain)
	name := 8
	for _, r := range l.Rows {
		name = max(name, grid.Width(r.Cells[0]))
	}
	Shown{
		List: List{Pick: l.Pick}, Rows: l.Rows,
		Columns: []Column{{At: 1, Width: name, Look: theme.Name, Picks: true}, {At: name + 2, Look: theme.Plain}},
	}.Draw(box.In(image.Rect(1, 0, box.W(), rows)), g.Row)
	for i := range rows {
		box.Set(0, i, g.Wall, theme.Rule)
		box.Set(box.W()-1, i, g.Wall, theme.Rule)
	}
	box.In(image.Rect(0, rows, box.W(), rows+1)).Fill(g.Rule, theme.Rule)
	says := ""
	if len(l.Rows) > rows {
		says = " " + say.Count(len(l.Rows), l.Noun) + ", more with the arrows "
	}
	if l.Noun == "word" {
		says += " enter: insert   esc: leave it as typed "
	}
	box.Text(2, rows, theme.Dim, says)
}

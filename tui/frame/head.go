package frame

import (
	"fmt"
	"image"
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/tui/grid"
	"trivet/tui/layout"
	"trivet/tui/theme"
)

// Head is what stands over the panes: the sheet's name for itself and its verdict; below them,
// quietly, its settings, and its file.
type Head struct {
	Problem  *problem.Problem // nil: none reads yet
	Verdict  string
	Look     grid.Style // of the verdict
	File     string
	Saved    bool // it has a file
	Modified bool
}

// Draw shows the head; between stands between the facts of a line.
func (h Head) Draw(c grid.Canvas, between string) {
	title := "untitled"
	if p := h.Problem; p != nil && p.Title != "" {
		title = p.Title
	}
	left := c.W() - 2
	if w := grid.Width(h.Verdict); w > 0 {
		w = min(w, left)
		c.Text(c.W()-w-1, 0, h.Look, grid.Fit(h.Verdict, w))
		left -= w + 2
	}
	c.Text(1, 0, theme.Bar, grid.Fit(title, min(grid.Width(title), left)))

	state, look := "saved", theme.Dim
	switch {
	case h.Modified:
		state, look = "unsaved", theme.Warn
	case !h.Saved:
		state = ""
	}
	x := c.W() - 1
	if state != "" {
		x -= grid.Width(state)
		c.Text(x, 1, look, state)
		x -= grid.Width(between)
		c.Text(x, 1, theme.Dim, between)
	}
	terms := h.terms(between)
	from := c.Text(1, 1, theme.Dim, grid.Fit(terms, min(grid.Width(terms), x-2))) + 2
	if w := min(grid.Width(h.File), x-from); w > 0 {
		c.Text(x-w, 1, theme.Dim, grid.Fit(h.File, w))
	}
}

// terms are the sheet's own settings as they hold, folded into one line.
func (h Head) terms(between string) string {
	p := h.Problem
	if p == nil {
		return ""
	}
	where := "in space"
	if p.Planar {
		where = "in the plane"
	}
	return strings.Join([]string{where, problem.Axis(p.Up) + " up", p.Units.Length.Symbol + ", " + p.Units.Force.Symbol, say.Count(p.Figures, "figure")}, between)
}

// Pane is the head of a pane that is read, and which way what it shows goes on.
type Pane struct {
	Title string
	Live  bool
	More  string
}

// Draw shows the head of a pane, and gives what is below.
func (p Pane) Draw(c grid.Canvas) grid.Canvas {
	look := theme.Head
	if p.Live {
		look = theme.RuleFocus
	}
	w := grid.Width(p.Title)
	c.Text(1, 0, look, grid.Fit(p.Title, min(w, c.W()-2)))
	if w+grid.Width(p.More)+4 < c.W() {
		c.Text(c.W()-grid.Width(p.More)-1, 0, theme.Dim, p.More)
	}
	return c.In(image.Rect(0, layout.Frame, c.W(), c.H()))
}

// Hidden tells which way something goes on, and by how many rows or lines.
func Hidden(left, right bool, above, below int) string {
	var parts []string
	if left {
		parts = append(parts, "<")
	}
	if above > 0 {
		parts = append(parts, fmt.Sprintf("%d above", above))
	}
	if below > 0 {
		parts = append(parts, fmt.Sprintf("%d more", below))
	}
	if right {
		parts = append(parts, ">")
	}
	return strings.Join(parts, " ")
}

// TooSmall says what is wrong with a screen w by h, and what is typed or asked all the same.
func TooSmall(c grid.Canvas, w, h int, asked string) {
	for i, s := range []string{
		fmt.Sprintf("trivet needs %d by %d,", layout.MinW, layout.MinH),
		fmt.Sprintf("this screen is %d by %d.", w, h),
		"Make it larger; nothing is lost.",
		"ctrl+s saves, ctrl+q quits.",
		asked,
	} {
		c.Text(0, i, theme.Plain, s)
	}
}

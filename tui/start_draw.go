package tui

import (
	"image"

	"trivet/mechanics/scene"
	"trivet/mechanics/sheet"
	"trivet/tui/grid"
	"trivet/tui/layout"
	"trivet/tui/picture"
	"trivet/tui/text"
	"trivet/tui/theme"
	"trivet/tui/xdg"
)

// Lines of the start screen above and below its list.
const (
	startAbove = 3
	startBelow = 2
)

// startList is where the list of sheets stands; the picture has the rest.
func (m Model) startList() image.Rectangle {
	w := min(m.w*46/100, 60)
	return image.Rect(0, min(startAbove, m.h), w, max(m.h-startBelow, min(startAbove, m.h)))
}

// drawStart draws the start screen.
func (m Model) drawStart(c grid.Canvas) {
	o := m.opening
	c.Text(1, 0, theme.Bar, "trivet")
	c.Text(9, 0, theme.Plain, grid.Fit("free-body equilibrium: choose a sheet to start from", c.W()-10))
	if o.Text == "" {
		c.Text(1, 1, theme.Dim, "type to search")
	} else {
		x := c.Text(1, 1, theme.Name, "search: ")
		x = c.Text(x, 1, theme.Typing, o.Text)
		c.Set(x, 1, ' ', theme.Caret)
	}
	list := m.startList()
	o.listed().Draw(c.In(image.Rect(1, list.Min.Y, list.Max.X, list.Max.Y)), m.theme.Glyphs.Row)
	c.In(image.Rect(list.Max.X, list.Min.Y, list.Max.X+1, list.Max.Y)).Fill(m.theme.Glyphs.Wall, theme.Rule)
	m.drawShot(c.In(image.Rect(list.Max.X+2, list.Min.Y, c.W(), list.Max.Y)))
	m.drawEnd(c, 1)
}

// drawShot shows the picked sheet: where it is or what it says, and its picture.
func (m Model) drawShot(c grid.Canvas) {
	f := m.opening.shot
	if of, ok := m.opening.picked(); !ok || f.of != of {
		return // its picture is on its way
	}
	var d text.Lines
	w := min(c.W()-1, boxWidth)
	switch {
	case f.of.family == blankFamily:
		d.Wrapped(theme.Plain, "", "Nothing in it yet. Name the point where the forces meet, then the points that ropes and struts run to, then the lines between them; the workbench says what comes next.", w)
	case f.fault != "":
		d.Wrapped(theme.Bad, "! ", f.fault, w)
	case f.problem != nil:
		d.Wrapped(theme.Name, "", f.problem.Title, w)
		if f.of.path != "" {
			d.Wrapped(theme.Dim, "", xdg.Short(m.env, f.of.path), w)
		}
		if f.problem.Statement != "" {
			d.Wrapped(theme.Plain, "", f.problem.Statement, w)
		}
	}
	// The picture has at least half of the room.
	rows := min(len(d), max(c.H()/2, 1))
	d.Draw(c.In(image.Rect(0, 0, w, rows)), text.Offset{}, w, false)
	if rows < len(d) {
		c.Set(w-1, rows-1, m.theme.Glyphs.More, theme.Dim)
	}
	if f.problem == nil || len(f.problem.Points) == 0 || c.H()-rows < layout.Frame+1 {
		return
	}
	whole := scene.System(f.problem, f.solution, scene.Options{})
	picture.Draw(c.In(image.Rect(0, rows+1, w, c.H())), &whole, m.cam.View(&whole), m.cam.Options(m.theme.Glyphs.ASCII, false, sheet.Ref{}))
}

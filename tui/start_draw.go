package tui

import (
	"image"

	"trivet/mechanics/scene"
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

// startLine is a line of the list: a family's name, or a sheet.
type startLine struct {
	text string
	item int // -1 for a family
}

func (o *opening) lines() (out []startLine) {
	family := ""
	for i, s := range o.shown() {
		if s.family != family {
			family = s.family
			out = append(out, startLine{family, -1})
		}
		out = append(out, startLine{s.title, i})
	}
	return out
}

// top is the first line that shows of as many as there are rows.
func (o *opening) top(lines []startLine, rows int) int {
	at := 0
	for i, l := range lines {
		if l.item == o.pick {
			at = i
		}
	}
	return max(min(at-rows/2, len(lines)-rows), 0)
}

// drawStart draws the start screen.
func (m Model) drawStart(c grid.Canvas) {
	o := m.opening
	c.Text(1, 0, theme.Bar, "trivet")
	c.Text(9, 0, theme.Plain, grid.Fit("free-body equilibrium: choose a sheet to start from", c.W()-10))
	if o.find == "" {
		c.Text(1, 1, theme.Dim, "type to search")
	} else {
		x := c.Text(1, 1, theme.Name, "search: ")
		x = c.Text(x, 1, theme.Typing, o.find)
		c.Set(x, 1, ' ', theme.Caret)
	}
	list := m.startList()
	m.drawStarts(c.In(list), o.lines())
	c.In(image.Rect(list.Max.X, list.Min.Y, list.Max.X+1, list.Max.Y)).Fill(m.theme.Glyphs.Wall, theme.Rule)
	m.drawShot(c.In(image.Rect(list.Max.X+2, list.Min.Y, c.W(), list.Max.Y)))
	if m.note.text != "" {
		look := theme.Plain
		if m.note.bad {
			look = theme.Bad
		}
		c.Text(1, c.H()-2, look, grid.Fit(m.note.text, c.W()-2))
	}
	m.drawHints(c.In(image.Rect(0, c.H()-1, c.W(), c.H())))
}

func (m Model) drawStarts(c grid.Canvas, lines []startLine) {
	if len(lines) == 0 {
		c.Text(1, 0, theme.Dim, grid.Fit("no sheet matches: backspace", c.W()-2))
		return
	}
	top := m.opening.top(lines, c.H())
	for y := range min(c.H(), len(lines)-top) {
		l := lines[top+y]
		switch {
		case l.item < 0:
			c.Text(1, y, theme.Head, grid.Fit(l.text, min(grid.Width(l.text), c.W()-1)))
		case l.item == m.opening.pick:
			c.Set(1, y, m.theme.Glyphs.Row, theme.RuleFocus)
			c.Text(2, y, theme.Selected, grid.Fit(l.text, c.W()-3))
		default:
			c.Text(2, y, theme.Plain, grid.Fit(l.text, c.W()-3))
		}
	}
}

// drawShot shows the picked sheet: where it is or what it says, and its picture.
func (m Model) drawShot(c grid.Canvas) {
	f := m.opening.shot
	list := m.opening.shown()
	if m.opening.pick >= len(list) || f.of != list[m.opening.pick] {
		return // its picture is on its way
	}
	var d text.Lines
	w := min(c.W()-1, boardLine)
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
	picture.Draw(c.In(image.Rect(0, rows+1, w, c.H())), &whole, m.cam.view(&whole), picture.Options{ASCII: m.theme.Glyphs.ASCII != m.cam.plain, Zoom: 1})
}

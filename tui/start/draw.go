package start

import (
	"image"

	"trivet/fixtures"
	"trivet/mechanics/say"
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
	above = 3
	below = 2
)

// Place is where the list of sheets stands; the picture has the rest.
func Place(w, h int) image.Rectangle {
	return image.Rect(0, min(above, h), min(w*46/100, 60), max(h-below, min(above, h)))
}

// At gives the row of the list at a place of a screen w by h.
func (o *Screen) At(w, h int, at image.Point) (row int, ok bool) {
	r := Place(w, h)
	if !at.In(r) {
		return 0, false
	}
	return o.Listed().At(r.Dy(), at.Y-r.Min.Y)
}

// Draw draws the start screen, its last two lines left free.
func (o *Screen) Draw(c grid.Canvas, env []string, g theme.Glyphs, cam picture.Camera) {
	c.Text(1, 0, theme.Bar, "trivet")
	c.Text(9, 0, theme.Plain, grid.Fit("free-body equilibrium: choose a sheet to start from", c.W()-10))
	if o.Text == "" {
		c.Text(1, 1, theme.Dim, "type to search")
	} else {
		x := c.Text(1, 1, theme.Name, "search: ")
		x = c.Text(x, 1, theme.Typing, o.Text)
		c.Set(x, 1, ' ', theme.Caret)
	}
	list := Place(c.W(), c.H())
	o.Listed().Draw(c.In(image.Rect(1, list.Min.Y, list.Max.X, list.Max.Y)), g.Row)
	c.In(image.Rect(list.Max.X, list.Min.Y, list.Max.X+1, list.Max.Y)).Fill(g.Wall, theme.Rule)
	o.drawShot(c.In(image.Rect(list.Max.X+2, list.Min.Y, c.W(), list.Max.Y)), env, g, cam)
}

// textWidth is how wide a statement gets.
const textWidth = 84

// drawShot shows the picked sheet: where it is or what it says, and its picture.
func (o *Screen) drawShot(c grid.Canvas, env []string, g theme.Glyphs, cam picture.Camera) {
	f := o.shot
	if of, ok := o.Picked(); !ok || f.Of != of {
		return // its picture is on its way
	}
	var d text.Lines
	w := min(c.W()-1, textWidth)
	switch {
	case f.Of.Blank():
		d.Wrapped(theme.Plain, "", "Nothing in it yet. Name the point where the forces meet, then the points that ropes and struts run to, then the lines between them; the workbench says what comes next.", w)
	case f.Of.Set != "":
		for _, set := range fixtures.Sets() {
			if set.Name != f.Of.Set {
				continue
			}
			d.Wrapped(theme.Plain, "", say.Count(len(set.Sheets), "problem")+" to work without being shown the answer, each with numbers of your own: every line that you write is judged at once. Enter lists them.", w)
			d.Add()
			for _, s := range set.Sheets {
				d.Wrapped(theme.Plain, "- ", s.Title, w)
			}
		}
	case f.Set != nil && f.Fault == "":
		d.Wrapped(theme.Name, "", grid.Clean(f.Set.Title), w)
		d.Wrapped(theme.Dim, "", xdg.Short(env, f.Of.Path), w)
		d.Wrapped(theme.Plain, "", say.Count(len(f.Set.Problems), "problem")+" to practise. Enter lists them.", w)
	case f.Fault != "":
		d.Wrapped(theme.Bad, "! ", f.Fault, w)
	case f.problem != nil:
		d.Wrapped(theme.Name, "", f.problem.Title, w)
		if f.Of.Path != "" {
			d.Wrapped(theme.Dim, "", xdg.Short(env, f.Of.Path), w)
		}
		if f.problem.Statement != "" {
			d.Wrapped(theme.Plain, "", f.problem.Statement, w)
		}
	}
	// The picture has at least half of the room.
	rows := min(len(d), max(c.H()/2, 1))
	d.Draw(c.In(image.Rect(0, 0, w, rows)), text.Offset{}, w, false)
	if rows < len(d) {
		c.Set(w-1, rows-1, g.More, theme.Dim)
	}
	if f.problem == nil || len(f.problem.Points) == 0 || c.H()-rows < layout.Frame+1 {
		return
	}
	whole := scene.System(f.problem, nil, scene.Options{}) // what is to be found is not given away
	how := cam.Options(g.ASCII, false, sheet.Ref{})
	how.Zoom = 1
	picture.Draw(c.In(image.Rect(0, rows+1, w, c.H())), &whole, cam.View(&whole), how)
}

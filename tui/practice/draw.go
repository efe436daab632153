package practice

import (
	"fmt"
	"image"
	"time"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/mechanics/tutor"
	"trivet/tui/frame"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// Frame is what a desk is drawn with.
type Frame struct {
	Glyphs theme.Glyphs
	Note   frame.Note
	Hints  []keys.Hint
}

// Lines over the panes.
const top = 2

// Shares of the screen, in hundredths.
const (
	leftOf = 64 // the task and the work, of the width
	taskOf = 42 // the task, of their height
)

// places are where the panes stand on a screen w by h.
func (d *Desk) places(w, h int) (at [panes]image.Rectangle) {
	body := image.Rect(0, top, w, h-layout.Foot)
	if d.large {
		at[d.pane] = body
		return at
	}
	x := w * leftOf / 100
	y := body.Min.Y + body.Dy()*taskOf/100
	at[taskPane] = image.Rect(0, body.Min.Y, x, y)
	at[workPane] = image.Rect(0, y, x, body.Max.Y)
	at[picturePane] = image.Rect(x+1, body.Min.Y, w, body.Max.Y)
	if d.solved != nil && d.pane == taskPane { // a solution is read, not glanced at
		at[taskPane], at[workPane] = image.Rect(0, body.Min.Y, x, body.Max.Y), image.Rectangle{}
	}
	return at
}

// Draw draws the desk on the whole screen.
func (d *Desk) Draw(c grid.Canvas, f Frame) {
	d.drawTop(c.In(image.Rect(0, 0, c.W(), top)), f.Glyphs)
	at := d.places(c.W(), c.H())
	titles := [panes]string{"Your work", "The task", "Picture " + d.cam.Name(d.Problem)}
	if d.solved != nil {
		titles[taskPane] = "The solution"
	}
	for p := range panes {
		r := at[p]
		if r.Empty() {
			continue
		}
		in := func(more string) grid.Canvas {
			return frame.Pane{Title: titles[p], Live: p == d.pane, More: more}.Draw(c.In(r))
		}
		if p == picturePane {
			if r.Min.X > 0 {
				c.In(image.Rect(r.Min.X-1, r.Min.Y, r.Min.X, r.Max.Y)).Fill(f.Glyphs.Wall, theme.Rule)
			}
			d.sketch.Draw(in(""), d.drawn, d.cam.View(d.drawn), d.cam.Options(f.Glyphs.ASCII, false, sheet.Ref{}))
			continue
		}
		lines := d.lines(p, r.Dx()-2, f.Glyphs.ASCII)
		rows := r.Dy() - layout.Frame
		from := min(d.scroll[p], max(len(lines)-rows, 0))
		if p == workPane {
			from = max(len(lines)-rows, 0) - from
		}
		from = max(from, 0)
		body := in(frame.Hidden(false, false, from, max(len(lines)-from-rows, 0)))
		lines.Draw(body.In(image.Rect(1, 0, body.W()-1, body.H())), text.Offset{Y: from}, r.Dx()-2, false)
	}
	foot := frame.Foot{First: []text.Span{{Text: "entry: ", Look: theme.Name}}, Types: true, Typed: d.Line, Hints: f.Hints}
	if f.Note.Text != "" {
		foot.Says.Wrapped(f.Note.Look(), "", f.Note.Text, c.W()-2)
	} else {
		foot.Says.Wrapped(theme.Dim, "", forms, c.W()-2)
	}
	foot.Draw(c)
}

// forms are what may be entered, in a line.
const forms = "cut, r, u, F, M, a sum, a value; hint; F1: the forms of an entry"

func (d *Desk) drawTop(c grid.Canvas, g theme.Glyphs) {
	title := d.Title()
	state, look := "practice: "+Progress(min(d.Independent, d.Needed), d.Needed), theme.Dim
	switch {
	case d.Done:
		state, look = "done", theme.Good
	case d.Shown:
		state = "solution shown"
	}
	w := min(grid.Width(state), c.W()-2)
	c.Text(c.W()-w-1, 0, look, grid.Fit(state, w))
	c.Text(1, 0, theme.Bar, grid.Fit(title, min(grid.Width(title), c.W()-w-4)))
	hints := ""
	switch {
	case d.Of >= 0:
		hints = fmt.Sprintf("%d of %s", d.Hints, say.Count(d.Of, "hint"))
	case d.Hints > 0:
		hints = say.Count(d.Hints, "hint")
	}
	if set := d.work.task.Set; set != nil && set.Closed(time.Now()) && !d.Done {
		hints = set.Late() + g.Between + hints
	}
	if d.busy {
		hints = "judging" + g.Between + hints
	}
	c.Text(c.W()-grid.Width(hints)-1, 1, theme.Dim, hints)
	asked := "find " + say.And(say.Each(d.Problem.Results(), func(q problem.Query) string { return q.Name })...)
	c.Text(1, 1, theme.Dim, grid.Fit(asked, min(grid.Width(asked), c.W()-grid.Width(hints)-4)))
}

// lines are the text of a pane in a width.
func (d *Desk) lines(p pane, w int, ascii bool) (lines text.Lines) {
	w = max(w, 1)
	switch {
	case p == workPane:
		for _, one := range d.Items {
			d.item(&lines, &one, w, ascii)
		}
		if len(lines) == 0 {
			lines.Wrapped(theme.Dim, "", "Nothing yet. Write an equation, a value, a vector: each line is judged as you enter it, and no result shows before you have found it.", w)
		}
	case d.solved != nil:
		return d.solved.in(w, ascii)
	default:
		return d.task.in(w, ascii)
	}
	return lines
}

// marks stand before an entry, by its verdict, each as wide as the other.
var marks = map[tutor.Verdict]struct {
	mark, plain string
	look        grid.Style
}{
	tutor.Right:      {"ok ", "ok ", theme.Good},
	tutor.Dependent:  {"ok ", "ok ", theme.Good},
	tutor.Imprecise:  {"≈  ", "~  ", theme.Warn},
	tutor.Wrong:      {"!  ", "!  ", theme.Bad},
	tutor.Unreadable: {"?  ", "?  ", theme.Bad},
}

// item adds an entry with its judgement, or a hint.
func (d *Desk) item(lines *text.Lines, one *Item, w int, ascii bool) {
	if one.Hint != nil {
		lines.Wrapped(theme.Computed, fmt.Sprintf("hint %d  ", one.Hint.Stage), one.Hint.Says, w)
		return
	}
	m := marks[one.Verdict]
	mark := m.mark
	if ascii {
		mark = m.plain
	}
	lines.Behind(text.Span{Text: mark, Look: m.look}, "", theme.Plain, grid.Clean(one.Entry), w)
	look := theme.Dim
	if one.Verdict == tutor.Wrong || one.Verdict == tutor.Unreadable {
		look = theme.Plain
	}
	lines.Wrapped(look, "   ", grid.Clean(one.Says), w)
}

package board

import (
	"image"

	"trivet/mechanics/scene"
	"trivet/mechanics/working"
	"trivet/tui/grid"
	"trivet/tui/picture"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// The lines beside the step: above it its number and its title with air round them, below
// it a note and the keys.
const (
	above = 4
	below = 2
	// Margin is how far all stands in, from the left and the right.
	Margin = 3
)

// Sizes from which the picture stands beside the text, and under it.
const (
	besideFrom = 110 // columns of the screen
	underFrom  = 7   // rows left under the text
	maxWidth   = 84  // columns of text: longer lines are hard to follow
)

// Page is how a step stands on the board.
type Page struct {
	Text    text.Lines
	Picture image.Rectangle
	in      image.Rectangle // the text
	rows    int             // of it that show
	below   bool            // there is more of it
}

// Page sets the step for the screen as it is.
func (b Board) Page(of Of) (p Page) {
	all := image.Rect(Margin, above, max(of.W-Margin, Margin), max(of.H-below, above))
	p.in = all
	switch {
	case b.show == pictureOnly:
		p.in, p.Picture = image.Rectangle{}, all
		return p
	case b.show == both && of.W >= besideFrom:
		p.in.Max.X = all.Min.X + all.Dx()*54/100
		p.Picture = image.Rect(p.in.Max.X+Margin, all.Min.Y, all.Max.X, all.Max.Y)
	}
	p.in.Max.X = min(p.in.Max.X, p.in.Min.X+maxWidth)
	if p.Text = b.text(of, p.in.Dx(), 1); len(p.Text) > p.in.Dy() {
		p.Text = b.text(of, p.in.Dx(), 0)
	}
	if left := p.in.Dy() - len(p.Text) - 1; b.show == both && of.W < besideFrom && left >= underFrom {
		p.in.Max.Y = p.in.Min.Y + len(p.Text)
		p.Picture = image.Rect(all.Min.X, p.in.Max.Y+1, all.Max.X, all.Max.Y)
	}
	p.rows = p.in.Dy()
	p.below = !of.Whole && len(p.Text) > b.Line+p.rows
	return p
}

// text is the step in lines of a width.
func (b Board) text(of Of, w, air int) (out text.Lines) {
	body, hidden := b.body(of)
	out.Laid(text.Layout(w, air, of.Theme.Set == theme.Seven), body)
	if hidden && len(body) == 0 {
		out.Plain(theme.Warn, hiddenAll)
	}
	return out
}

// Draw draws the board on the whole screen, but for the two lines at its foot.
func (b Board) Draw(c grid.Canvas, of Of) {
	steps, w := of.Steps(), c.W()-2*Margin
	if p := of.Problem; p != nil {
		c.Text(Margin, 0, theme.Dim, grid.Fit(p.Title, max(c.W()-30, 0)))
	}
	where := b.Where(of)
	if of.Stale {
		where = "stale   " + where
	}
	if b.Hides > HidesNothing {
		where = b.Hides.String() + " hidden   " + where
	}
	if len(steps) > 0 {
		c.Text(c.W()-grid.Width(where)-Margin, 0, theme.Dim, where)
	}
	switch {
	case of.Solution == nil:
		c.Text(Margin, 2, theme.Warn, grid.Fit(noResult, c.W()-Margin))
	case len(steps) == 0:
		c.Text(Margin, 2, theme.Dim, "The steps are being laid out.")
	case b.List != nil:
		c.Text(Margin, 2, theme.Bar, "Steps")
		b.Listed(steps).Draw(c.In(image.Rect(Margin-2, above, Margin+w+1, max(c.H()-below, above+1))), of.Theme.Glyphs.Row)
	default:
		c.Text(Margin, 2, theme.Bar, grid.Fit(steps[b.At].Title, w))
		b.drawStep(c, of, steps[b.At])
	}
}

func (b Board) drawStep(c grid.Canvas, of Of, step working.Step) {
	p := b.Page(of)
	from := max(min(b.Line, len(p.Text)-1), 0)
	p.Text.Draw(c.In(p.in), text.Offset{Y: from}, p.in.Dx(), of.Stale)
	if p.below {
		c.Text(p.in.Min.X, p.in.Max.Y, theme.Dim, "more below: space")
	}
	if p.Picture.Empty() || of.Problem == nil {
		return
	}
	sol := of.Solution
	if b.Hides > HidesNothing && !b.Shown || step.Kind < working.Senses {
		sol = nil // the equations have the senses that count as positive, and an arrow's length tells an answer
	}
	part := scene.Part(of.Problem, sol, subject(step))
	picture.Draw(c.In(p.Picture), &part, of.View(&part), of.Picture)
}

// subject is what a step's picture shows. A force vector of a body alone is its
// weight: lists that name nothing leave all else out.
func subject(step working.Step) working.Subject {
	about := step.About
	if step.Kind == working.Vector && len(about.Lines)+len(about.Joints)+len(about.Couples)+len(about.Loads) == 0 {
		about.Couples, about.Loads = []int{-1}, []int{-1}
	}
	return about
}

package tui

import (
	"fmt"
	"image"

	"trivet/mechanics/scene"
	"trivet/mechanics/working"
	"trivet/tui/grid"
	"trivet/tui/picture"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// The board's lines beside the step: above it its number and its title with air
// round them, below it a note and the keys.
const (
	boardAbove = 4
	boardBelow = 2
	boardIn    = 3 // to the left and right
)

// boardPage is how a step stands on the board.
type boardPage struct {
	text, picture image.Rectangle
	paneText      text.Lines
	rows          int  // of text that show
	below         bool // there is more text
}

// Sizes from which the picture stands beside the text, and under it.
const (
	boardBeside  = 110 // columns of the screen
	boardPicture = 7   // rows left under the text
	boardLine    = 84  // columns of text: longer lines are hard to follow
)

// boardPage sets the step for the screen as it is.
func (m Model) boardPage() (p boardPage) {
	all := image.Rect(boardIn, boardAbove, max(m.w-boardIn, boardIn), max(m.h-boardBelow, boardAbove))
	p.text = all
	b := m.board
	switch {
	case b.show == pictureOnly:
		p.text, p.picture = image.Rectangle{}, all
		return p
	case b.show == both && m.w >= boardBeside:
		p.text.Max.X = all.Min.X + all.Dx()*54/100
		p.picture = image.Rect(p.text.Max.X+boardIn, all.Min.Y, all.Max.X, all.Max.Y)
	}
	p.text.Max.X = min(p.text.Max.X, p.text.Min.X+boardLine)
	p.paneText = m.stepText(p.text.Dx(), 1)
	if len(p.paneText) > p.text.Dy() {
		p.paneText = m.stepText(p.text.Dx(), 0)
	}
	if left := p.text.Dy() - len(p.paneText) - 1; b.show == both && m.w < boardBeside && left >= boardPicture {
		p.text.Max.Y = p.text.Min.Y + len(p.paneText)
		p.picture = image.Rect(all.Min.X, p.text.Max.Y+1, all.Max.X, all.Max.Y)
	}
	p.rows = p.text.Dy()
	p.below = !m.linear && len(p.paneText) > b.line+p.rows
	return p
}

// stepText is the step in lines of a width.
func (m Model) stepText(w, air int) text.Lines {
	steps := m.steps()
	if m.board.at >= len(steps) {
		return nil
	}
	step := steps[m.board.at]
	var out text.Lines
	body, hidden := step.Body, false
	if m.board.hides && !m.board.shown {
		body, hidden = newHiding(m.worked.of).blocks(step)
	}
	out.Laid(text.Layout(w, air, m.theme.Set == theme.Seven), body)
	if hidden && len(body) == 0 {
		out.Plain(theme.Warn, "hidden: r shows it")
	}
	return out
}

// drawBoard draws the board on the whole screen.
func (m Model) drawBoard(c grid.Canvas) {
	b, steps := m.board, m.steps()
	if p := m.live.Problem; p != nil {
		c.Text(boardIn, 0, theme.Dim, grid.Fit(p.Title, max(c.W()-30, 0)))
	}
	where := fmt.Sprintf("step %d of %d", b.at+1, len(steps))
	if m.live.Stale {
		where = "stale   " + where
	}
	if b.hides {
		where = "answers hidden   " + where
	}
	if len(steps) > 0 {
		c.Text(c.W()-grid.Width(where)-boardIn, 0, theme.Dim, where)
	}
	switch {
	case m.live.Solution == nil:
		c.Text(boardIn, 2, theme.Warn, grid.Fit("No result yet, so there is no working: esc leads back to the cells.", c.W()-boardIn))
	case len(steps) == 0:
		c.Text(boardIn, 2, theme.Dim, "The steps are being laid out.")
	case b.list != nil:
		c.Text(boardIn, 2, theme.Bar, "Steps")
		m.listedSteps().Draw(c.In(image.Rect(boardIn-2, boardAbove, c.W()-boardIn+1, max(c.H()-boardBelow, boardAbove+1))), m.theme.Glyphs.Row)
	default:
		c.Text(boardIn, 2, theme.Bar, grid.Fit(steps[b.at].Title, c.W()-2*boardIn))
		m.drawStep(c, steps[b.at])
	}
	if m.note.text != "" {
		look := theme.Plain
		if m.note.bad {
			look = theme.Bad
		}
		c.Text(boardIn, c.H()-2, look, grid.Fit(m.note.text, c.W()-2*boardIn))
	}
	m.drawHints(c.In(image.Rect(boardIn-1, c.H()-1, c.W(), c.H())))
}

func (m Model) drawStep(c grid.Canvas, step working.Step) {
	p := m.boardPage()
	from := max(min(m.board.line, len(p.paneText)-1), 0)
	p.paneText.Draw(c.In(p.text), text.Offset{Y: from}, p.text.Dx(), m.live.Stale)
	if p.below {
		c.Text(p.text.Min.X, p.text.Max.Y, theme.Dim, "more below: space")
	}
	if p.picture.Empty() || m.live.Problem == nil {
		return
	}
	sol := m.live.Solution
	if m.board.hides && !m.board.shown || step.Kind < working.Senses {
		sol = nil // the equations have the senses that count as positive, and an arrow's length tells an answer
	}
	part := scene.Part(m.live.Problem, sol, subject(step))
	picture.Draw(c.In(p.picture), &part, m.cam.view(&part), picture.Options{
		ASCII: m.theme.Glyphs.ASCII != m.cam.plain, Zoom: m.cam.zoom, Arrows: m.cam.arrows, Stale: m.live.Stale,
	})
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

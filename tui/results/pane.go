package results

import (
	"image"

	"trivet/mechanics/statics"
	"trivet/tui/grid"
	"trivet/tui/layout"
	"trivet/tui/session"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// Laid are the steps of a solution.
type Laid = session.Reply[*statics.Solution, Steps]

// Pane is the text of a result as its pane shows it.
type Pane struct {
	Lines text.Lines
	Wide  int // its longest line
	of    written
}

// written is what a text was written of: a result, of which the effect of the ± may come
// later, or the working; to a width, in which characters.
type written struct {
	pane    layout.Pane
	w       int
	ascii   bool
	result  int
	missing bool // it says what is missing for a result
	laid    *statics.Solution
	weighed *statics.Solution
}

// Args are what a result is written of: the Nth result, its steps as far as they are laid out, and
// what is missing where there is none.
type Args struct {
	Result  *session.Result
	Nth     int
	Steps   *Laid
	Glyphs  theme.Glyphs
	Missing func(w int) text.Lines // nil: another pane says it
	Hidden  bool                   // there is a result, and it is not to be seen
}

// Write makes the text of a pane where it is old, and tells whether it was.
func (t *Pane) Write(p layout.Pane, w int, a Args) bool {
	of := written{pane: p, w: w, ascii: a.Glyphs.ASCII, result: a.Nth}
	switch {
	case a.Result.Solution == nil:
		of.missing = a.Missing != nil
	case p == layout.Working || p == layout.HandSolution:
		of.result, of.laid = 0, a.Steps.Of
	case p == layout.Ranges || p == layout.Limits:
		of.weighed = a.Result.Weighed.Of
	}
	if t.of == of {
		return false
	}
	t.of, t.Lines = of, nil
	switch {
	case a.Result.Solution == nil:
		if a.Hidden {
			t.Lines.Wrapped(theme.Dim, "", "The presenter hides the answers.", w)
			break
		}
		t.Lines.Plain(theme.Dim, "No result yet.")
		if a.Missing != nil {
			t.Lines = append(t.Lines, a.Missing(w)...)
		}
	case p == layout.System:
		t.Lines = System(a.Result, a.Glyphs, w)
	case p == layout.Checks:
		t.Lines = Checks(a.Result, w)
	case p == layout.Ranges:
		t.Lines = Ranges(a.Result, w)
	case p == layout.Limits:
		t.Lines = Limits(a.Result, w)
	case a.Steps.Fault != "":
		t.Lines.Wrapped(theme.Bad, "! ", "the working could not be written (fault: "+a.Steps.Fault+")", w)
	default:
		t.Lines = a.Steps.Value.on(p, of.ascii, w)
	}
	t.Wide = t.Lines.Width()
	return true
}

// Draw shows the text beside a column for the mark, and the cursor where it is live.
func (t *Pane) Draw(c grid.Canvas, v text.View, live, old bool, mark rune) {
	in := c.In(image.Rect(1, 0, c.W(), c.H()))
	w := c.W() - 2
	t.Lines.Draw(in, v.Scroll, w, old)
	y := v.Line - v.Scroll.Y
	if !live || v.At == nil || y < 0 || y >= c.H() {
		return
	}
	n := t.Lines.Number(v.Line, v.Span)
	x := n.From - t.Lines.Shift(v.Line, v.Scroll.X, w)
	in.Paint(x, y, n.To-n.From, theme.Selected)
	// The mark stands before the number where there is room, else at the line's edge:
	// a terminal that shows no reversed text shows it all the same.
	if n.Blank && x > 0 {
		in.Set(x-1, y, mark, theme.RuleFocus)
	} else {
		c.Set(0, y, mark, theme.RuleFocus)
	}
}

// Point puts the cursor on the number at a place of the text's canvas, w wide.
func (t *Pane) Point(v *text.View, at image.Point, w int) {
	y := at.Y + v.Scroll.Y
	if at.Y < 0 || y >= len(t.Lines) {
		return
	}
	x, w := at.X-1, w-2
	by := t.Lines.Shift(y, v.Scroll.X, w)
	if by > 0 && x < t.Lines.HeadWidth(y, w) {
		return
	}
	for _, n := range t.Lines.Numbers(y) {
		if x+by >= n.From && x+by < n.To {
			v.Set(t.Lines, y, n.Span)
		}
	}
}

package overlay

import (
	"fmt"
	"image"

	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/text"
)

// Question is one of yes or no; esc always goes back. More is what it is about, to be seen. It is
// replaced, never changed.
type Question struct {
	Text string
	More text.Lines
	Seen bool
	at   text.Offset // how far it is scrolled
}

// Turned shows what the question is about, or hides it again.
func (q Question) Turned() Question {
	q.Seen, q.at = !q.Seen, text.Offset{}
	return q
}

// Scrolled scrolls in what it is about, in a rectangle.
func (q Question) Scrolled(i keys.Intent, in image.Rectangle) (_ Question, ok bool) {
	r := q.place(in)
	q.at, ok = Scrolled(q.at, i, q.More, r.Dx()-2, r.Dy()-1)
	return q, ok
}

// place is where it stands at the lower end of a rectangle, no higher than it needs.
func (q Question) place(in image.Rectangle) image.Rectangle { return Place(in, in.Dx(), len(q.More)) }

// Draw shows in a rectangle what the question is about, where it is to be seen.
func (q Question) Draw(c grid.Canvas, in image.Rectangle, rule rune) {
	if !q.Seen {
		return
	}
	r := q.place(in)
	title, w, rows := " What differs ", r.Dx()-2, r.Dy()-1
	at := Within(q.at, q.More, w, rows) // the screen may have grown
	if rows < len(q.More) {
		title = fmt.Sprintf(" What differs: %d to %d of %d ", at.Y+1, at.Y+rows, len(q.More))
	}
	box := Box(c.In(r), rule, title)
	q.More.Draw(box.In(image.Rect(1, 0, box.W()-1, box.H())), at, w, false)
}

// Differ counts what differs between two sheets.
func Differ(list []sheet.Change) string {
	switch len(list) {
	case 0:
		return "it differs in order or comments"
	case 1:
		return "1 cell differs"
	}
	return say.Count(len(list), "cell") + " differ"
}

// Changes words what differs, a line a cell.
func Changes(list []sheet.Change, was, is string) (lines text.Lines) {
	for _, c := range list {
		says, only := was+" "+c.Old+", "+is+" "+c.New, ""
		switch {
		case !c.Was:
			says, only = c.New, "   only "+is
		case !c.Is:
			says, only = c.Old, "   only "+was
		}
		lines.Add(text.Span{Text: grid.Clean(cells.LabelOf(c.Ref) + ": " + says)}, text.Span{Text: only, By: ", "})
	}
	return lines
}

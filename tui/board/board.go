// Package board shows a working a step at a time.
package board

import (
	"fmt"
	"slices"
	"strconv"

	"trivet/mechanics/doc"
	"trivet/mechanics/figure"
	"trivet/mechanics/problem"
	"trivet/mechanics/report"
	"trivet/mechanics/scene"
	"trivet/mechanics/statics"
	"trivet/mechanics/working"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/overlay"
	"trivet/tui/picture"
	"trivet/tui/theme"
)

// Board is where one is in a working. It stays what it was while a cell is edited on
// the workbench, so that coming back leads to the same step. It is a value: what is done
// gives the next one.
type Board struct {
	On    bool
	At    int           // the step
	Line  int           // scrolled to
	Hides Hiding        // shows as ? until asked
	Shown bool          // those of this step are shown all the same
	List  *overlay.List // of the steps, while it shows

	title  string // of the step, to find it again in another working
	kind   working.Kind
	show   show
	number string // of a step, being typed
}

// show is what the board shows of a step.
type show int

const (
	both show = iota
	textOnly
	pictureOnly
	shows
)

// Of is what a board shows, and on which screen.
type Of struct {
	Working *working.Working // nil: it is not laid out yet

	Problem  *problem.Problem
	Solution *statics.Solution // the newest; nil: there is none yet
	Stale    bool

	W, H    int
	Whole   bool // a step is said as a whole, and not shown
	Theme   theme.Theme
	View    func(*scene.Scene) figure.View
	Picture picture.Options
}

// Steps are those of the working.
func (of Of) Steps() []working.Step {
	if of.Working == nil {
		return nil
	}
	return of.Working.Steps
}

// Opened is the board as it shows again, at its step.
func (b Board) Opened() Board {
	b.On, b.List, b.number = true, nil, ""
	return b
}

// Go shows a step from its top.
func (b Board) Go(i int, steps []working.Step) Board {
	b.At = max(min(i, len(steps)-1), 0)
	b.Line, b.Shown = 0, false
	if b.At < len(steps) {
		b.title, b.kind = steps[b.At].Title, steps[b.At].Kind
	}
	return b
}

// Follow finds the step that was shown in another working: by its title, else the first of its
// kind, else by its number.
func (b Board) Follow(steps []working.Step) Board {
	if b.At < len(steps) && steps[b.At].Title == b.title {
		return b
	}
	found := slices.IndexFunc(steps, func(s working.Step) bool { return s.Title == b.title })
	if found < 0 && b.title != "" {
		found = slices.IndexFunc(steps, func(s working.Step) bool { return s.Kind == b.kind })
	}
	if found < 0 {
		found = b.At
	}
	return b.Go(found, steps)
}

// Do does an intent of the board; says is a word about it. What is not the board's own is not ok.
func (b Board) Do(i keys.Intent, of Of) (_ Board, says string, ok bool) {
	b.number = ""
	steps := of.Steps()
	if b.List != nil {
		b, ok = b.inList(i, steps)
		return b, "", ok
	}
	if of.Whole && (i == keys.NextStep || i == keys.PrevStep) {
		b.Line = 0 // no more of this step is ahead
	}
	switch i {
	case keys.NextStep:
		switch page := b.Page(of); {
		case page.below:
			b.Line += max(page.rows-1, 1)
		case b.At+1 < len(steps):
			b = b.Go(b.At+1, steps)
		case len(steps) > 0:
			says = "this is the last step"
		}
	case keys.PrevStep:
		switch {
		case b.Line > 0:
			b.Line = max(b.Line-max(b.Page(of).rows-1, 1), 0)
		case b.At > 0:
			b = b.Go(b.At-1, steps)
		default:
			says = "this is the first step"
		}
	case keys.First:
		b = b.Go(0, steps)
	case keys.Last:
		b = b.Go(len(steps)-1, steps)
	case keys.Up, keys.Down:
		switch {
		case of.Whole:
			return b, "", false // whoever says it knows its lines
		case i == keys.Up:
			b.Line = max(b.Line-1, 0)
		case b.Page(of).below:
			b.Line++
		}
	case keys.HideAnswers:
		b.Hides, b.Shown = (b.Hides+1)%hidings, false
		if says = "answers are shown"; b.Hides > HidesNothing {
			says = b.Hides.String() + " are hidden: r shows those of a step"
		}
	case keys.Reveal:
		b.Shown = true
	case keys.Steps:
		b.List = &overlay.List{Pick: b.At}
	case keys.ShowPart:
		b.show = (b.show + 1) % shows
	case keys.Cancel:
		b.On = false
	default:
		return b, "", false
	}
	return b, says, true
}

// inList does the intents of the list of steps.
func (b Board) inList(i keys.Intent, steps []working.Step) (_ Board, ok bool) {
	const page = 10
	l := *b.List
	b.List = nil
	switch i {
	case keys.Commit:
		return b.Go(l.Pick, steps), true
	case keys.Cancel:
		return b, true
	}
	l, ok = l.Do(i, len(steps), page)
	b.List = &l
	return b, ok
}

// Typed takes a digit of a step's number and shows that step.
func (b Board) Typed(text string, steps []working.Step) (_ Board, says string) {
	if text < "0" || text > "9" || len(text) != 1 {
		return b, ""
	}
	n, _ := strconv.Atoi(b.number + text)
	if n < 1 || n > len(steps) {
		n, _ = strconv.Atoi(text) // another number begins
		b.number = ""
	}
	if n < 1 || n > len(steps) {
		return b, fmt.Sprintf("there are %d steps", len(steps))
	}
	b = b.Go(n-1, steps)
	b.number += text
	return b, ""
}

// Listed are the steps as their list shows them.
func (b Board) Listed(steps []working.Step) overlay.Shown {
	s := overlay.Shown{List: *b.List, Noun: "step ", Columns: []overlay.Column{{At: 2, Width: maxWidth, Look: theme.Plain, Picks: true}}}
	for i, step := range steps {
		s.Rows = append(s.Rows, overlay.Row{Cells: []string{fmt.Sprintf("%3d  %s", i+1, step.Title)}, Says: step.Title})
	}
	return s
}

// Where tells which step of how many shows.
func (b Board) Where(of Of) string { return fmt.Sprintf("step %d of %d", b.At+1, len(of.Steps())) }

// No working, and why.
const (
	noResult  = "No result yet, so there is no working: esc leads back to the cells."
	hiddenAll = "hidden: r shows it"
)

// body is the step without what is hidden, and whether anything of it is; the first begins with the
// statement.
func (b Board) body(of Of) (body []doc.Block, hidden bool) {
	steps := of.Steps()
	if b.At >= len(steps) {
		return nil, false
	}
	if body = steps[b.At].Body; b.Hides > HidesNothing && !b.Shown {
		body, hidden = newHiding(of.Working.Solution, b.Hides).blocks(steps[b.At])
	}
	if b.At == 0 {
		body = append(report.Paragraphs(of.Working.Solution.Problem.Statement), body...)
	}
	return body, hidden
}

// Said is which step is said, and how: two that are equal say the same.
type Said struct {
	working       *working.Working
	at            int
	hidden, stale bool
}

// Said tells which step would be said.
func (b Board) Said(of Of) Said {
	_, hidden := b.body(of)
	return Said{of.Working, b.At, hidden, of.Stale}
}

// Lines are the step as it is said, its title first; none where it is not laid out yet.
func (b Board) Lines(of Of) []string {
	steps := of.Steps()
	if b.At >= len(steps) {
		if of.Solution == nil {
			return []string{noResult}
		}
		return nil
	}
	body, hidden := b.body(of)
	lines := append([]string{b.Where(of) + ": " + grid.Clean(steps[b.At].Title)}, doc.Lines(body)...)
	if hidden && len(body) == 0 {
		lines = append(lines, hiddenAll)
	}
	if of.Stale {
		lines = append(lines, "stale: this belongs to an earlier version of the sheet")
	}
	return lines
}

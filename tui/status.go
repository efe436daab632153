package tui

import (
	"fmt"

	"trivet/mechanics/statics"
	"trivet/tui/grid"
	"trivet/tui/layout"
	"trivet/tui/results"
	"trivet/tui/theme"
)

// drawTop shows the file, whether it is saved, and the verdict.
func (m Model) drawTop(c grid.Canvas) {
	x := c.Text(1, 0, theme.Bar, "trivet  ")
	x = c.Text(x, 0, theme.Name, grid.Fit(m.title(), min(grid.Width(m.title()), c.W()/3)))
	if m.history.Modified() {
		x = c.Text(x, 0, theme.Warn, " * unsaved")
	}
	text, look := m.verdict()
	if p := m.live.Latest; p != nil && p.Title != "" && x+grid.Width(p.Title)+grid.Width(text)+8 < c.W() {
		x = c.Text(x+2, 0, theme.Plain, p.Title)
	}
	w := min(grid.Width(text), c.W()-x-3)
	if w > 0 {
		c.Text(c.W()-w-1, 0, look, grid.Fit(text, w))
	}
}

// verdict is the first words of the verdict, and whether they still hold.
func (m Model) verdict() (string, grid.Style) {
	l := m.live
	if l.Solution == nil {
		if errs := l.Faults(); len(errs) > 0 {
			return fmt.Sprintf("no result yet: %s to mend", count(len(errs), "cell")), theme.Warn
		}
		return l.Unconnected(), theme.Warn
	}
	text, look := l.Solution.Headline(), results.VerdictLook(l.Solution.Verdict)
	if says := l.Unconnected(); says != "" && !l.Stale {
		// On its way: what follows from the rest is shown, and not judged yet.
		if l.Solution.Single() {
			says = text + ", " + says
		}
		text, look = says, theme.Warn
	} else if bad := failures(l.Solution); bad > 0 {
		text, look = text+fmt.Sprintf(", %s", count(bad, "check")+" failed"), theme.Bad
	}
	missed := 0
	for _, a := range l.Solution.Answers {
		if !a.OK {
			missed++
		}
	}
	if missed > 0 {
		text, look = text+fmt.Sprintf(", %s missed", count(missed, "answer")), theme.Warn
	}
	if l.solving.Running() {
		text = "working; until then: " + text
	}
	if l.Stale {
		return "stale: " + text, theme.Warn
	}
	return text, look
}

func failures(s *statics.Solution) (n int) {
	for _, c := range s.Checks {
		if !c.OK {
			n++
		}
	}
	return n
}

func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// drawTooSmall says what is wrong with the screen.
func (m Model) drawTooSmall(c grid.Canvas) {
	for i, s := range []string{
		fmt.Sprintf("trivet needs %d by %d,", layout.MinW, layout.MinH),
		fmt.Sprintf("this screen is %d by %d.", m.w, m.h),
		"Make it larger; nothing is lost.",
		"ctrl+s saves, ctrl+q quits.",
	} {
		c.Text(0, i, theme.Plain, s)
	}
	if m.naming != nil {
		c.Text(0, 4, theme.Plain, m.forPage.prompt()+m.naming.Text)
	}
	if m.ask != nil {
		c.Text(0, 4, theme.Plain, "y / n / esc: "+m.ask.text)
	}
}

package tui

import (
	"fmt"
	"image"
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/tui/grid"
	"trivet/tui/layout"
	"trivet/tui/results"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// drawTop shows the title and the verdict; below them, quietly, what the sheet says of
// itself, and its file.
func (m Model) drawTop(c grid.Canvas) {
	text, look := m.verdict()
	title := "untitled"
	if p := m.live.Latest; p != nil && p.Title != "" {
		title = p.Title
	}
	left := c.W() - 2
	if w := grid.Width(text); w > 0 {
		w = min(w, left)
		c.Text(c.W()-w-1, 0, look, grid.Fit(text, w))
		left -= w + 2
	}
	c.Text(1, 0, theme.Bar, grid.Fit(title, min(grid.Width(title), left)))

	state, file := "saved", m.title()
	look = theme.Dim
	switch {
	case m.history.Modified():
		state, look = "unsaved", theme.Warn
	case m.file.Path == "":
		state = ""
	}
	x := c.W() - 1
	if state != "" {
		x -= grid.Width(state)
		c.Text(x, 1, look, state)
		x -= grid.Width(m.theme.Glyphs.Between)
		c.Text(x, 1, theme.Dim, m.theme.Glyphs.Between)
	}
	terms := m.terms()
	from := c.Text(1, 1, theme.Dim, grid.Fit(terms, min(grid.Width(terms), x-2))) + 2
	if w := min(grid.Width(file), x-from); w > 0 {
		c.Text(x-w, 1, theme.Dim, grid.Fit(file, w))
	}
}

// terms are the sheet's own settings as they hold, folded into one line.
func (m Model) terms() string {
	p := m.live.Latest
	if p == nil {
		return ""
	}
	where := "in space"
	if p.Planar {
		where = "in the plane"
	}
	return strings.Join([]string{where, problem.Axis(p.Up) + " up", p.Units.Length.Symbol + ", " + p.Units.Force.Symbol, count(p.Figures, "figure")}, m.theme.Glyphs.Between)
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
	if l.Running() {
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

// drawStrip shows in one line what the sheet comes to.
func (m Model) drawStrip(c grid.Canvas) {
	if m.live.Solution == nil {
		return
	}
	results.Strip(&m.live.Result, c.W()-2).Draw(c.In(image.Rect(1, 0, c.W(), 1)), text.Offset{}, c.W()-2, m.live.Stale)
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

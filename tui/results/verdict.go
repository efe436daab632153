package results

import (
	"fmt"

	"trivet/mechanics/say"
	"trivet/tui/grid"
	"trivet/tui/session"
	"trivet/tui/theme"
)

// Headline is the first words of the verdict, and whether they still hold.
func Headline(l *session.Live) (string, grid.Style) {
	s := l.Solution
	if s == nil {
		if errs := l.Faults(); len(errs) > 0 {
			return fmt.Sprintf("no result yet: %s to mend", say.Count(len(errs), "cell")), theme.Warn
		}
		return l.Unconnected(), theme.Warn
	}
	text, look := s.Headline(), VerdictLook(s.Verdict)
	failed, missed := 0, 0
	for _, c := range s.Checks {
		if !c.OK {
			failed++
		}
	}
	for _, a := range s.Answers {
		if !a.OK {
			missed++
		}
	}
	if says := l.Unconnected(); says != "" && !l.Stale {
		// On its way: what follows from the rest is shown, and not judged yet.
		if s.Single() {
			says = text + ", " + says
		}
		text, look = says, theme.Warn
	} else if failed > 0 {
		text, look = text+fmt.Sprintf(", %s failed", say.Count(failed, "check")), theme.Bad
	}
	if missed > 0 {
		text, look = text+fmt.Sprintf(", %s missed", say.Count(missed, "answer")), theme.Warn
	}
	if l.Running() {
		text = "working; until then: " + text
	}
	if l.Stale {
		return "stale: " + text, theme.Warn
	}
	return text, look
}

package tui

import (
	"fmt"

	"trivet/mechanics/origin"
	"trivet/tui/theme"
)

// checked writes the checks and the reference answers, those that fail first.
func (l live) checked(w int) paneText {
	var d paneText
	s := l.solution
	failed := 0
	for _, c := range s.Checks {
		if !c.OK {
			failed++
		}
	}
	for _, a := range s.Answers {
		if !a.OK {
			failed++
		}
	}
	switch all := len(s.Checks) + len(s.Answers); {
	case all == 0:
		d.text(theme.Dim, "There is nothing to check.")
		return d
	case failed == 0:
		d.text(theme.Good, fmt.Sprintf("All %d hold.", all))
	default:
		d.text(theme.Bad, fmt.Sprintf("%d of %d failed.", failed, all))
	}
	if len(s.Checks) > 0 {
		d.heading("Checks")
		failedFirst(len(s.Checks), func(k int) bool { return s.Checks[k].OK }, &d, func(k int) {
			from := len(d)
			d.marked(s.Checks[k].OK, s.Checks[k].Says(l.problem), w)
			d.from(from, origin.Check(s, k))
		})
	}
	if len(s.Answers) > 0 {
		d.heading("Reference answers")
		failedFirst(len(s.Answers), func(k int) bool { return s.Answers[k].OK }, &d, func(k int) {
			from := len(d)
			d.marked(s.Answers[k].OK, s.Answers[k].Says(l.problem), w)
			d.from(from, origin.Answer(s, k))
		})
	}
	return d
}

// failedFirst writes n things, those that fail first; of many it says how many more.
func failedFirst(n int, ok func(k int) bool, d *paneText, write func(k int)) {
	shown := 0
	for _, want := range []bool{false, true} {
		for k := range n {
			if ok(k) != want {
				continue
			}
			if shown++; shown > maxRows {
				d.text(theme.Dim, fmt.Sprintf("... and %d more", n-shown+1))
				return
			}
			write(k)
		}
	}
}

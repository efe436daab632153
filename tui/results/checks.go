package results

import (
	"fmt"

	"trivet/mechanics/origin"
	"trivet/mechanics/statics"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// checked writes the checks and the reference answers, those that fail first.
func (l writer) checked(w int) text.Lines {
	var d text.Lines
	s := l.Solution
	if says := l.Unconnected(); says != "" && !s.Single() {
		d.Wrapped(theme.Warn, "", "Not checked yet: "+says+".", w)
		return d
	}
	failed := 0
	for _, c := range s.Checks {
		if !c.OK && c.Kind != statics.CheckBare {
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
		d.Plain(theme.Dim, "There is nothing to check.")
		return d
	case failed == 0:
		d.Plain(theme.Good, fmt.Sprintf("All %d hold.", all))
	default:
		d.Plain(theme.Bad, fmt.Sprintf("%d of %d failed.", failed, all))
	}
	if len(s.Checks) > 0 {
		d.Heading("Checks")
		failedFirst(len(s.Checks), func(k int) bool { return s.Checks[k].OK }, &d, func(k int) {
			c := s.Checks[k]
			if c.Kind == statics.CheckBare {
				d.Behind(text.Numeral("not yet, ", theme.Warn, origin.Check(s, k)), "", theme.Warn, c.Says(l.Problem), w)
				return
			}
			marked(&d, c.OK, c.Says(l.Problem), origin.Check(s, k), w)
		})
	}
	if len(s.Answers) > 0 {
		d.Heading("Reference answers")
		failedFirst(len(s.Answers), func(k int) bool { return s.Answers[k].OK }, &d, func(k int) {
			marked(&d, s.Answers[k].OK, s.Answers[k].Says(l.Problem), origin.Answer(s, k), w)
		})
	}
	return d
}

// failedFirst writes n things, those that fail first; of many it says how many more.
func failedFirst(n int, ok func(k int) bool, d *text.Lines, write func(k int)) {
	shown := 0
	for _, want := range []bool{false, true} {
		for k := range n {
			if ok(k) != want {
				continue
			}
			if shown++; shown > MaxRows {
				d.Plain(theme.Dim, fmt.Sprintf("... and %d more", n-shown+1))
				return
			}
			write(k)
		}
	}
}

package frame

import (
	"strings"

	"trivet/tui/keys"
	"trivet/tui/layout"
)

// Panes are the panes: the title of each, what stands for it over narrow columns, and the intent
// that leads there.
var Panes = [layout.Panes]struct {
	Long, Short string
	To          keys.Intent
}{
	layout.Given:        {"Givens", "Givens", keys.GoGiven},
	layout.Points:       {"Points", "Points", keys.GoPoints},
	layout.Lines:        {"Force lines", "Lines", keys.GoLines},
	layout.Supports:     {"Supports and loads", "Supports", keys.GoSupports},
	layout.Unknowns:     {"Unknown magnitudes", "Unknowns", keys.GoUnknowns},
	layout.Sheet:        {"Sheet", "Sheet", keys.GoSheet},
	layout.System:       {"System", "System", keys.GoSystem},
	layout.Picture:      {"Picture", "Picture", keys.GoPicture},
	layout.Checks:       {"Checks", "Checks", keys.GoChecks},
	layout.Working:      {"Working", "Working", keys.GoWorking},
	layout.HandSolution: {"Hand solution", "Hand solution", keys.GoHandSolution},
	layout.Ranges:       {"Ranges", "Ranges", keys.GoRanges},
	layout.Limits:       {"Limits", "Limits", keys.GoLimits},
}

// PaneOf is the pane that an intent leads to.
func PaneOf(i keys.Intent) (layout.Pane, bool) {
	for p := range Panes {
		if Panes[p].To == i {
			return layout.Pane(p), true
		}
	}
	return 0, false
}

// Within is a pane's title within a sentence.
func Within(p layout.Pane) string {
	s := Panes[p].Long
	return strings.ToLower(s[:1]) + s[1:]
}

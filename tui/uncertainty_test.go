package tui

import (
	"strings"
	"testing"

	"trivet/mechanics/statics"
	"trivet/tui/layout"
	"trivet/tui/session"
	"trivet/tui/speech"
)

// site is a load between two anchors measured by tape.
const site = `title = "Sign between two anchors"
plane = "xy"
asked = "T1 T2"
[units]
force = "kN"
[given]
h = "0.80 m ± 2 cm"
W = "2.4 kN ± 0.1 kN"
[points]
O = { at = "0, 0", on = "particle" }
A = "-3.0, h"
B = "2.0 ± 0.02, h"
[lines]
T1 = { kind = "cable", path = "O A", limit = "5 kN" }
T2 = { kind = "cable", path = "O B", limit = "4 kN" }
W = { kind = "weight", at = "O", magnitude = "W" }
`

func TestUncertaintyInRanges(t *testing.T) {
	r := newRig(t, site, 120, 36)
	r.keys("f7 r")
	golden(t, "120x36-uncertainty", r.screen())
	r.keys("down", "down")
	r.tells("T1 ± 0.18 kN: mostly from W (± 0.1 kN); root of the sum of squares of W 0.16 kN, h 0.087 kN and x of B 0.022 kN")
	r.keys("right")
	r.tells("T1, worst case 3.47 kN: with h 2 cm larger, W 0.1 kN smaller and x of B 0.02 m smaller")
	r.keys("right")
	r.tells("T1, worst case 4.00 kN: with h 2 cm smaller, W 0.1 kN larger and x of B 0.02 m larger")
}

func TestUncertaintyInLimits(t *testing.T) {
	r := newRig(t, site, 80, 24)
	r.keys("alt+l")
	golden(t, "80x24-uncertainty", r.screen())
	r.keys("end")
	r.tells("4.15 kN at the worst of 4.00 kN (limit of T2) = 104 %, mostly from W")
}

// TestUncertaintyIsWorkedOutWhereItShows: it costs solutions, and a keystroke none of them.
func TestUncertaintyIsWorkedOutWhereItShows(t *testing.T) {
	r := newRig(t, site, 80, 24)
	r.keys("f7 f")
	if r.m.live.Effects() != nil {
		t.Error("worked out, and no pane shows it")
	}
	r.keys("f7 r")
	if r.m.live.Effects() == nil {
		t.Error("not worked out, and a pane shows it")
	}
	// One that a newer sheet overtakes is given up.
	r.m.live.TakeEffect(session.Effect{Of: r.m.live.Solution})
	if r.m.live.Effects() == nil {
		t.Error("what was given up counts")
	}
	r.m.live.TakeEffect(session.Effect{Of: &statics.Solution{}})
	if r.m.live.Effects() == nil {
		t.Error("what is of another sheet counts")
	}
}

func TestUncertaintyLinear(t *testing.T) {
	r := newRig(t, site, 80, 24)
	r.m.linear = true
	r.keys("alt+l")
	lines := strings.Join(append(speech.Pane(layout.Limits, &r.m.live.Result, r.m.history.Current(), nil, false), speech.Pane(layout.Ranges, &r.m.live.Result, r.m.history.Current(), nil, false)...), "\n")
	for _, want := range []string{"T2 governs, at risk: every limit is met as typed, but not throughout the ± of the inputs", "worst case: all inputs at their adverse ends, from all 8 combinations of the ends of the ±, and from between the ends wherever a result has an extreme there", "at risk: T2 could reach 4.15 kN within the ±, above its limit of 4.00 kN, mostly from W (± 0.1 kN)", "at risk: T2, 4.15 kN, 104%"} {
		if !strings.Contains(lines, want) {
			t.Errorf("no %q in\n%s", want, lines)
		}
	}
}

package call

import (
	"strings"
	"testing"
)

func TestCheck(t *testing.T) {
	const well, misses = "ok    lamp.toml: determinate, 6 checks\n", "FAILS misprint.toml: T = 10.000 N differs from the reference 11 N\n"
	for _, c := range []struct {
		line string
		want said
	}{
		{"check lamp.toml", said{well, "", 0}},
		{"check -", said{"ok    standard input: determinate, 6 checks\n", "", 0}},
		{"check misprint.toml", said{misses, "", Failed}},
		{"check half.toml", said{"FAILS half.toml: unreadable\n", halfSays, CantDo}},
		{"check broken.toml", said{"FAILS broken.toml: unreadable\n", brokenSays, CantDo}},
		{"check missing.toml", said{"FAILS missing.toml: unreadable\n", missingSays, CantDo}},
		// one line per sheet whatever the one before it was, and the worst code
		{"check half.toml misprint.toml lamp.toml", said{"FAILS half.toml: unreadable\n" + misses + well, halfSays, CantDo}},
		{"check misprint.toml lamp.toml", said{misses + well, "", Failed}},
		// what reads and was most likely meant otherwise is said, for no code
		{"check doubt.toml", said{"ok    doubt.toml: determinate, 6 checks\n",
			"doubt.toml:5:26: warning: \"pa\" is a body with the one point P. Try: particle, if that is meant\n" +
				"P = { at = \"0, 0\", on = \"pa\" }\n                         ^~\n", 0}},
		// a particle that no force acts on yet is left out, and the sheet is not well
		{"check two.toml", said{"FAILS two.toml: no force acts on E, so it is left out\n",
			"two.toml:6:1: warning: no force acts on E, so it is left out. Try: add a line at E, or let it be a fixed point\n" +
				"E = { at = \"1, 0\", on = \"particle\" }\n^\n", Failed}},
		// what is read by nothing is a failure, not a warning
		{"check loads.toml", said{"FAILS loads.toml: unknown table [loads]; unknown key \"rope\"\n",
			"loads.toml:7:2: unknown table [loads]. Try: [lines]\n[loads]\n ^~~~~\n" +
				"loads.toml:10:37: unknown key \"rope\". Try: x-rope, which is kept but ignored\n" +
				"T = { kind = \"cable\", path = \"P A\", rope = \"9 mm\", x-rope = \"9 mm\" }\n" + strings.Repeat(" ", 36) + "^~~~\n", Failed}},
	} {
		if got := calls(t, strings.Fields(c.line)...); got != c.want {
			t.Errorf("trivet %s:\n%+v, want\n%+v", c.line, got, c.want)
		}
	}
}

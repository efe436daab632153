package tui

import (
	"strings"
	"testing"
)

// An own answer is typed as a text prints it; what is wrong with it is said below it,
// with what to try.
func TestAnAnswerAsTextsPrintIt(t *testing.T) {
	for _, c := range []struct{ typed, met, says string }{
		{"2.5 kN T", "ok", ""}, {"2500 N (T)", "ok", ""}, {"2,500 N tension", "ok", ""}, {"2*1.25 kN", "ok", ""}, {"0.562 kip", "ok", ""}, {"255 kg * g", "ok", ""},
		{"2.5 kN C", "no", "your T1: sign reversed: it is not compression"},
		{"2.5 T", "", "Try: 2.5 kN T or 2.5 (T)"},
		{"2,500", "", "Try: 2500 or 2.500"},
		{"2,5", "", "Try: 2.5"},
	} {
		r := newRig(t, mast(t, "T2 = \"2.60 kN\"\n"), 120, 40)
		r.keys("alt+m", "right", "right", "right", "right", "right", "right")
		for range 9 {
			if s, _ := r.m.slot(); s.Ref.Table == "answers" {
				break
			}
			r.keys("left")
		}
		r.text(c.typed)
		if c.met == "" {
			lines := strings.Split(r.screen(), "\n")
			if got := strings.TrimSpace(lines[len(lines)-1]); got != c.says {
				t.Errorf("%s: %q is said, want %q", c.typed, got, c.says)
			}
			continue
		}
		r.keys("enter", "up")
		row := r.screen()
		row = row[strings.Index(row, "▸T1"):]
		row, _, _ = strings.Cut(row, "│")
		if row = strings.TrimSpace(row); !strings.HasSuffix(row, " "+c.met) {
			t.Errorf("%s: %q does not say %s", c.typed, row, c.met)
		}
		if c.says != "" && !strings.Contains(r.screen(), c.says) {
			t.Errorf("%s: %q is not said:\n%s", c.typed, c.says, r.screen())
		}
	}
}

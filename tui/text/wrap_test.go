package text

import (
	"strings"
	"testing"
)

// A number is not parted from what makes it one where a line has room for all of it.
func TestNumbersStayWhole(t *testing.T) {
	for _, c := range []struct {
		text string
		w    int
		want string
	}{
		{"a force F = 3 kN acts", 13, "a force|F = 3 kN acts"},
		{"it weighs 12 kN.", 12, "it weighs|12 kN."},
		{"a couple of 3 kN m, up", 16, "a couple of|3 kN m, up"},
		{"from 3 m", 5, "from|3 m"},
		{"from 30 deg on", 7, "from|30 deg|on"},
		{"along (0, -2, 0) kN, down", 17, "along|(0, -2, 0) kN,|down"},
		{"is 3.2 ± 0.1 kN", 14, "is|3.2 ± 0.1 kN"},
		{"from W (± 0.1 kN)", 14, "from W|(± 0.1 kN)"},
		{"throughout the ± of all", 16, "throughout the ±|of all"},
		{"12 kN - 3 kN", 9, "12 kN|- 3 kN"},
		{"about A: 4 B = 6", 10, "about A:|4 B = 6"},
		{"at A, 4 more", 7, "at A, 4|more"},
		{"of 4 forces", 6, "of 4|forces"},
		{"see (as in 1, 2) here", 14, "see (as in 1,|2) here"},
		{"mass = 120000 kg", 9, "mass =|120000 kg"}, // no room for all of it
	} {
		var d Lines
		d.Wrapped(0, "", c.text, c.w)
		var got []string
		for _, l := range d {
			got = append(got, l[0].Text)
		}
		if is := strings.Join(got, "|"); is != c.want {
			t.Errorf("%q at %d: %q, want %q", c.text, c.w, is, c.want)
		}
	}
}

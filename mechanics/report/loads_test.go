package report

import (
	"strings"
	"testing"
)

// TestLoadWords: the words of a working for the resultant of a distributed load.
func TestLoadWords(t *testing.T) {
	const beam = "plane = \"xy\"\n[points]\nA = { at = \"0, 0\", on = \"beam\" }\nB = { at = \"0, 6\", on = \"beam\" }\n[joints]\nA = { kind = \"fixed\" }\n[distributed]\n"
	water := func(surface string) string {
		return beam + "q = { kind = \"hydrostatic\", path = \"A B\", along = \"+x\", surface = \"" + surface + "\", width = \"2 m\", density = \"1000 kg/m^3\" }\n"
	}
	const one = "Replace the distributed load by its resultant, the area of the load diagram, through its centroid, d_q from A:"
	for _, c := range []struct {
		name, text string
		says       []string
	}{
		// 9.81 kN/m³ · 2 m · 0.12²/2 m² = 141.264 N, a third of 0.12 m up.
		{"partly wet", water("0.12 m"), []string{"The distributed load q acts from 0 m to 0.12 m along the line from A to B.", "p_A = ρ g h = 1000 · 9.81 · 0.12 = 1177.2 N/m²", one, "R_q = 1/2 · 2354.4 · 0.12 = 141.3 N", "d_q = 1/3 · 0.12 = 0.04 m"}},
		{"wholly wet", water("6 m"), []string{one, "d_q = 1/3 · 6 = 2 m"}},
		{"dry", water("-1 m"), []string{"The distributed load q is zero from A to B.", "R_q = 0 N"}},
		// q L²/6 = 120 · 36/6.
		{"a couple", beam + "q = { path = \"A B\", along = \"+x\", magnitude = \"120 N/m .. -120 N/m\" }\n",
			[]string{"The distributed load q has no resultant force; it is equivalent to a couple:", "R_q = 0 N", "C_q = 720 N m"}},
	} {
		got := strings.Join(strings.Fields(textWorking(worked(t, c.text))), " ")
		for _, says := range c.says {
			if !strings.Contains(got, says) {
				t.Errorf("%s: no %q in\n%s", c.name, says, got)
			}
		}
	}
}

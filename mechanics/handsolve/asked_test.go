package handsolve

import (
	"slices"
	"strings"
	"testing"
)

// What is asked is derived, and what is not needed for it is not.
func TestOnlyWhatIsAsked(t *testing.T) {
	const beam = `plane = "xy"
asked = "ASKED"
[points]
A = { at = "0, 0", on = "beam" }
B = { at = "6, 0", on = "beam" }
C = { at = "2, 0", on = "beam" }
D = "6, 8"
[lines]
P = { kind = "force", at = "C", along = "(3, -4)", magnitude = "500 N" }
T = { kind = "cable", path = "B D" }
[joints]
A = { kind = "pin" }
`
	for asked, want := range map[string]string{
		"T":                        "T",
		"Ay":                       "Ay", // about B, where T passes through
		"A.x":                      "Ax",
		"|Ay|":                     "Ay",
		"T.y Ax":                   "T Ax",
		"A.size":                   "Ax Ay",
		"angle(T, A)":              "Ax Ay", // T's direction is given
		"angle(T, P)":              "",
		"T.length beam.loads.size": "",
		"":                         "T Ax Ay",
	} {
		s := solveText(t, strings.Replace(beam, "ASKED", asked, 1))
		r := Find(s)
		follow(t, s, &r, s.Problem.Asked...)
		var found []string
		for _, step := range r.Steps {
			for _, x := range step.Finds {
				found = append(found, r.Name(s.Problem, x.Symbol))
			}
		}
		slices.Sort(found)
		wanted := strings.Fields(want)
		slices.Sort(wanted)
		if !slices.Equal(found, wanted) {
			t.Errorf("asked %q: found %v, and needed are %v", asked, found, wanted)
		}
		if nothing := want == ""; nothing != (r.Why == NoneAsked) {
			t.Errorf("asked %q: refused with %d", asked, r.Why)
		}
	}
}

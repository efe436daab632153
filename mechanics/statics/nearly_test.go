package statics

import (
	"math"
	"slices"
	"testing"
)

// TestNearlyDependentBodies: what is a hair off a dependent geometry still has
// checks that agree with its verdict.
func TestNearlyDependentBodies(t *testing.T) {
	for _, c := range []struct {
		name, text string
		verdict    Verdict
		want       map[string]float64
	}{
		// A roller 1e-9 askew pushes 3e-7 N sideways, which is nothing beside 600 N.
		{"a roller a hair askew", `plane = "xy"
[points]
A = { at = "0, 0", on = "beam" }
M = { at = "2, 0", on = "beam" }
B = { at = "4, 0", on = "beam" }
[joints]
A = { kind = "roller", normal = "1e-9, 1" }
B = { kind = "roller", normal = "+y" }
[lines]
F = { kind = "force", at = "M", along = "-y", magnitude = "600 N" }
`, Determinate, map[string]float64{"A": 300, "B": 300}},
		// The cable passes the pin by 1.5e-9 m: 1200 N m need 8e11 N of it, and beside
		// these Ax = T/2·1e-9 is small without being nothing.
		{"a cable a hair beside the pin", `plane = "xy"
[points]
A = { at = "0, 0", on = "bar" }
B = { at = "1e-9, 1", on = "bar" }
C = { at = "2, 0", on = "bar" }
W = "0, 3"
[joints]
A = { kind = "pin" }
[lines]
T = { kind = "cable", path = "B W" }
F = { kind = "force", at = "C", along = "-y", magnitude = "600 N" }
`, Determinate, map[string]float64{"Ax": 400, "T": 8e11}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := solveText(t, c.text)
			if s.Verdict != c.verdict {
				t.Errorf("%v: %v", s.Verdict, s.Words())
			}
			for _, x := range s.X {
				if want, ok := c.want[x.Name]; ok && math.Abs(x.Value-want) > 1e-6*want {
					t.Errorf("%s = %v, want %v", x.Name, x.Value, want)
				}
			}
			s.Checks = slices.DeleteFunc(s.Checks, func(c Check) bool { return c.Kind == CheckSupport }) // it is not supported well
			checkChecks(t, s, c.text)
		})
	}
}

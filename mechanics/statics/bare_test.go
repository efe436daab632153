package statics

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"trivet/fixtures"
)

// A bare body beside a problem changes none of its values, equations or verdict; it
// adds one check, which fails.
func TestABareBodyIsLeftOut(t *testing.T) {
	for _, f := range append(fixtures.Starts(), fixtures.Published()...) {
		s := solveText(t, f.Answered())
		at := "7, 7, 7"
		if s.Problem.Planar {
			at = "7, 7"
		}
		for _, on := range []string{"particle", "bodynotyet"} {
			row := fmt.Sprintf("[points]\nZz = { at = %q, on = %q }\n", at, on)
			p := read(t, strings.Replace(f.Text, "[points]\n", row, 1)) // before all others
			got := Solve(p)
			if got.Verdict != s.Verdict || got.Degree != s.Degree || len(got.System.Rows) != len(s.System.Rows) {
				t.Fatalf("%s: %v with %d equations beside a bare body, else %v with %d", f.Name, got.Verdict, len(got.System.Rows), s.Verdict, len(s.System.Rows))
			}
			for j := range s.X {
				if a, b := got.X[j], s.X[j]; a.Fixed != b.Fixed || math.Abs(a.Value-b.Value) > 1e-9*s.scale() {
					t.Errorf("%s: %s = %v, want %v", f.Name, a.Name, a.Value, b.Value)
				}
			}
			bare := 0
			for _, c := range got.Checks {
				if c.Kind == CheckBare {
					bare++
				}
			}
			if bare != 1 || len(got.Failures()) == 0 {
				t.Errorf("%s: %d checks of bare bodies, and it fails by %v", f.Name, bare, got.Failures())
			}
		}
	}
}

func TestABareBodyIsSaid(t *testing.T) {
	s := solveText(t, `
plane = "xy"
[points]
E = { at = "1, 0", on = "particle" }
P = { at = "0, 0", on = "particle" }
A = "0, 3"
[lines]
T = { kind = "cable", path = "P A" }
W = { kind = "weight", at = "P", magnitude = "10 N" }
`)
	want := []string{"statically determinate, partially constrained: every unknown has a single value", "P is unsupported in the x direction, but no load acts in that direction",
		"no force acts on E, so it is left out. Try: add a line at E, or let it be a fixed point"}
	if got := s.Words(); !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	if got := s.Failures(); !slices.Equal(got, []string{"no force acts on E, so it is left out"}) {
		t.Errorf("%q", got)
	}
}

package scene_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/mechanics/problem"
	"trivet/mechanics/scene"
)

// A body in the plane that ropes leave as they leave a rim, or that rolls on surfaces, is a
// wheel; one with arms of unlike length, or with forces at their ends, is not.
func TestWheels(t *testing.T) {
	crank := `plane = "xy"
up = "+y"
[points]
A = { at = "0 m, 0 m", on = "crank" }
P = { at = "1 m, 0 m", on = "crank" }
Q = { at = "0 m, 1 m", on = "crank" }
[joints]
A = { kind = "pin" }
[lines]
F = { kind = "force", at = "P", along = "-y", magnitude = "10 N" }
G = { kind = "force", at = "Q", along = "+x" }
`
	sheets := map[string]*problem.Problem{"crank": read(t, crank)}
	for _, name := range []string{"pulley-on-a-pin", "flat-belt-torque", "pipe-rolls-or-slides", "frame-of-two-members"} {
		one, _ := fixtures.Get(name)
		sheets[name] = read(t, one.Answered())
	}
	for name, wheels := range map[string]int{"pulley-on-a-pin": 1, "flat-belt-torque": 1, "pipe-rolls-or-slides": 1, "frame-of-two-members": 0, "crank": 0} {
		got := 0
		for _, thing := range scene.System(sheets[name], nil, scene.Options{}).Things {
			if thing.Kind == scene.Disc && thing.Body != "" {
				got++
			}
		}
		if got != wheels {
			t.Errorf("%s: %d wheels, want %d", name, got, wheels)
		}
	}
}

// The free body of a drum shows the drum, with the two parts of its belt on both sides.
func TestTheFreeBodyOfADrum(t *testing.T) {
	one, _ := fixtures.Get("boat-on-a-bollard")
	p := read(t, one.Answered())
	drums, aside := 0, 0.0
	for _, thing := range scene.Free(p, nil, p.Points[slices.IndexFunc(p.Points, func(q problem.Point) bool { return q.Name == "K" })].Body).Things {
		if thing.Kind == scene.Disc {
			drums++
		}
		if thing.Kind == scene.Force && thing.Ref.Table == "lines" {
			aside += thing.Aside
			if thing.Aside == 0 || len(thing.Behind) > 0 {
				t.Errorf("%s acts at the middle of the drum", thing.Ref.Row)
			}
		}
	}
	if drums != 1 || aside != 0 {
		t.Errorf("%d drums, the parts of the belt %g aside together", drums, aside)
	}
}

// A figure names the bodies that have no row of their own, and draws all of one with very
// many points.
func TestBodiesWithoutARow(t *testing.T) {
	var text strings.Builder
	text.WriteString("plane = \"xy\"\nup = \"+y\"\n[points]\n")
	const points = 400
	for i := range points {
		fmt.Fprintf(&text, "P%d = { at = \"%d m, 0 m\", on = \"jib\" }\n", i, i)
	}
	text.WriteString("[joints]\nP0 = { kind = \"fixed\" }\n")
	s := scene.System(read(t, text.String()), nil, scene.Options{})
	bars := 0
	for _, thing := range s.Things {
		for range thing.Lines() {
			bars++
		}
	}
	if bars != points-1 || !strings.Contains(s.Alt(), "the body jib") {
		t.Errorf("%d bars; %s", bars, s.Alt())
	}
}

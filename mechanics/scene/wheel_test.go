package scene_test

import (
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
		sheets[name] = read(t, one.Text)
	}
	for name, wheels := range map[string]int{"pulley-on-a-pin": 1, "flat-belt-torque": 1, "pipe-rolls-or-slides": 1, "frame-of-two-members": 0, "crank": 0} {
		got := 0
		for _, thing := range scene.System(sheets[name], nil, scene.Options{}).Things {
			if thing.Kind == scene.Disc && thing.Ref.Table == "bodies" && thing.Radius > 0 || thing.Kind == scene.Disc && thing.Ref.Table == "points" {
				got++
			}
		}
		if got != wheels {
			t.Errorf("%s: %d wheels, want %d", name, got, wheels)
		}
	}
}

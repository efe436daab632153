package statics

import (
	"fmt"
	"math"
	"testing"

	"trivet/mechanics/problem"
)

// closedForm is a sheet and what its results come to in SI, by a formula.
type closedForm struct {
	name, text string
	want       map[string]float64
}

// holdValues asks a sheet for results by name.
func holdValues(t *testing.T, cases []closedForm) {
	t.Helper()
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			s := solveText(t, c.text)
			for name, want := range c.want {
				q, qerr := problem.ParseQuery(s.Problem, name)
				if qerr != nil {
					t.Fatalf("%s: %s", name, qerr.Msg)
				}
				got, err := s.Evaluate(q)
				if err != nil {
					t.Fatalf("%s: %v\n%v", name, err, s.Words())
				}
				if math.Abs(got-want) > 1e-9*max(1, math.Abs(want)) {
					t.Errorf("%s = %.12g, want %.12g", name, got, want)
				}
			}
		})
	}
}

const simpleBeam = `plane = "xy"
[points]
A = { at = "0, 0", on = "beam" }
B = { at = "6, 0", on = "beam" }
M = { at = "2, 0", on = "beam" }
[joints]
A = { kind = "pin" }
B = { kind = "roller", normal = "+y" }
`

// TestLoadsOnBeams holds distributed loads against closed forms (common
// practice) for a beam of L = 6 m on two supports.
func TestLoadsOnBeams(t *testing.T) {
	load := func(magnitude string) string {
		return simpleBeam + fmt.Sprintf("[distributed]\nq = { path = \"A B\", along = \"-y\", magnitude = %q }\n", magnitude)
	}
	holdValues(t, []closedForm{
		// wL/2 each.
		{"uniform", load("200 N/m"), map[string]float64{"Ax": 0, "Ay": 600, "B": 600, "q.size": 1200, "q.y": -1200, "q.at": 3}},
		// wL/6 and wL/3, the resultant wL/2 at 2L/3.
		{"triangular", load("0 N/m .. 200 N/m"), map[string]float64{"Ay": 200, "B": 400, "q.size": 600, "q.at": 4}},
		{"triangular, falling", load("200 N/m .. 0 N/m"), map[string]float64{"Ay": 400, "B": 200, "q.size": 600, "q.at": 2}},
		// (2q₁+q₂)L/6 and (q₁+2q₂)L/6.
		{"trapezoidal", load("100 N/m .. 400 N/m"), map[string]float64{"Ay": 600, "B": 900, "q.size": 1500, "q.at": 3.6}},
		// The parabola 4q s(L-s)/L² has the area 2qL/3.
		{"parabolic", load("4*150 N/m * s * (6 m - s) / (6 m)^2"), map[string]float64{"Ay": 300, "B": 300, "q.size": 600, "q.at": 3}},
		// A half wave of sine has the area 2qL/π.
		{"half a wave", load("100 N/m * sin(180 deg * s/(6 m))"), map[string]float64{"Ay": 600 / math.Pi, "B": 600 / math.Pi, "q.size": 1200 / math.Pi, "q.at": 3}},
		// From -q to 2q: the resultant qL/2, of moment ∫ q s ds = qL²/2, acts at the end B.
		{"a negative part", load("-100 N/m .. 200 N/m"), map[string]float64{"Ay": 0, "B": 300, "q.size": 300, "q.at": 6}},
		// From q to -q: no resultant, and a couple of qL²/6 counter-clockwise, held by qL/6 at each end.
		{"no resultant", load("120 N/m .. -120 N/m"), map[string]float64{"Ay": 120, "B": -120, "q.size": 0, "q.at": 0}},
		{"nothing at all", load("0 N/m"), map[string]float64{"Ay": 0, "B": 0, "q.size": 0}},
		// On a part of the beam only: 400 N at 4 m.
		{"part of the beam", simpleBeam + "[distributed]\nq = { path = \"M B\", along = \"-y\", magnitude = \"100 N/m\" }\n",
			map[string]float64{"Ay": 400. / 3, "B": 800. / 3, "q.at": 2}},
		// A couple M is held by M/L.
		{"a couple", simpleBeam + "[couples]\nC = { on = \"beam\", magnitude = \"30 N m\" }\n", map[string]float64{"Ay": 5, "B": -5, "C": 30}},
		{"a couple clockwise", simpleBeam + "[couples]\nC = { on = \"beam\", about = \"-z\", magnitude = \"30 N m\" }\n", map[string]float64{"Ay": -5, "B": 5}},
		{"a couple by components", simpleBeam + "[couples]\nC = { on = \"beam\", components = \"(0, 0, 30) N m\" }\n", map[string]float64{"Ay": 5, "B": -5}},
		// The weight m g at its centre.
		{"a mass", "g = \"10 m/s^2\"\n" + simpleBeam + "[bodies]\nbeam = { weight = \"60 kg\", centre = \"M\" }\n", map[string]float64{"Ay": 400, "B": 200, "beam.loads.y": -600, "beam.loads.mz": -1200, "beam.loads.at": 2}},
		{"a mass on the moon", "g = \"1.62 m/s^2\"\n" + simpleBeam + "[bodies]\nbeam = { weight = \"100 kg\", centre = \"(A + B)/2\" }\n", map[string]float64{"Ay": 81, "B": 81}},
		// Up along +x: gravity pulls the beam along itself.
		{"up is +x", "up = \"+x\"\n" + simpleBeam + "[bodies]\nbeam = { weight = \"90 N\", centre = \"M\" }\n", map[string]float64{"Ax": 90, "Ay": 0, "B": 0}},
		// A cantilever: P at the free end has the moment PL at the wall.
		{"a cantilever", `plane = "xy"
[points]
A = { at = "0, 0", on = "beam" }
B = { at = "6, 0", on = "beam" }
[joints]
A = { kind = "fixed" }
[lines]
P = { kind = "force", at = "B", along = "(-3, -4)", magnitude = "50 N" }
`, map[string]float64{"Ax": 30, "Ay": 40, "MA": 240, "MAz": 240, "A.mz": 240, "A.size": 50, "A.angle": math.Atan2(4, 3)}},
		// A torsional spring turned by θ exerts -kθ.
		{"a torsional spring", simpleBeam + "[couples]\nC = { on = \"beam\", stiffness = \"3 N m/deg\", turn = \"20 deg\" }\n", map[string]float64{"C": -60, "Ay": -10, "B": 10}},
		{"a torsional spring per radian", simpleBeam + "[couples]\nC = { on = \"beam\", stiffness = \"60 N m\", turn = \"1 rad\" }\n", map[string]float64{"C": -60, "B": 10}},
		// An unknown couple takes the place of the roller.
		{"an unknown couple", `plane = "xy"
[points]
A = { at = "0, 0", on = "beam" }
B = { at = "6, 0", on = "beam" }
[joints]
A = { kind = "pin" }
[couples]
C = { on = "beam", magnitude = "?" }
[lines]
P = { kind = "force", at = "B", along = "-y", magnitude = "50 N" }
`, map[string]float64{"C": 300, "Ay": 50}},
	})
}

// TestWaterOnGates: the pressure ρgh on a gate of width b gives ρgbH²/2 at a
// third of the depth H from the bottom (common practice).
func TestWaterOnGates(t *testing.T) {
	gate := func(top, more string) string {
		return fmt.Sprintf(`plane = "xy"
g = "10 m/s^2"
[points]
A = { at = "0, 0", on = "gate" }
B = { at = %q, on = "gate" }
[joints]
A = { kind = "pin" }
B = { kind = "roller", normal = "-x" }
[distributed]
q = { path = "A B", along = "+x", kind = "hydrostatic", %s }
`, top, more)
	}
	holdValues(t, []closedForm{
		// 1000·10·2·3²/2 = 90 kN at 1 m: the hinge carries two thirds.
		{"water to the top", gate("0, 3", `width = "2 m", surface = "3 m"`), map[string]float64{"q.size": 90e3, "q.at": 1, "Ax": -60e3, "B": 30e3, "Ay": 0}},
		// The gate stands 3 m above the surface: what is dry carries nothing.
		{"partly above the surface", gate("0, 6", `width = "2 m", surface = "3 m"`), map[string]float64{"q.size": 90e3, "q.at": 1, "B": 15e3}},
		// Surface 2 m over the top: ρgb(h₁+h₂)L/2, h from 2 to 5 m; the trapezoid's centre is L(h₂+2h₁)/(3(h₁+h₂)) up.
		{"wholly under water", gate("0, 3", `width = "2 m", surface = "5 m"`), map[string]float64{"q.size": 210e3, "q.at": 3 * 9. / 21}},
		{"wholly dry", gate("0, 3", `width = "2 m", surface = "-1 m"`), map[string]float64{"q.size": 0, "B": 0}},
		{"sea water", gate("0, 3", `width = "2 m", surface = "3 m", density = "1025 kg/m^3"`), map[string]float64{"q.size": 92.25e3}},
		// Leaning as 3:4, 5 m long: the length counts, not the height; ρgbHL/2.
		{"a leaning gate", gate("4, 3", `width = "2 m", surface = "3 m"`), map[string]float64{"q.size": 150e3, "q.at": 5. / 3}},
	})
}

package statics

import (
	"fmt"
	"math"
	"testing"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
)

// TestFrictionAndTies holds friction, springs and ropes over drums against closed
// forms (common practice).
func TestFrictionAndTies(t *testing.T) {
	// A block of W = 100 N on a slope of 3:4, pulled along it; its particle form
	// has the normal (-3, 4)/5 and slips along (4, 3)/5.
	slope := func(contact, pull string) string {
		return fmt.Sprintf(`plane = "xy"
[points]
P = { at = "0, 0", on = "particle" }
[joints]
P = { kind = "rough", normal = "(-3, 4)", %s }
[lines]
W = { kind = "weight", at = "P", magnitude = "100 N" }
T = { kind = "force", at = "P", along = "(4, 3)"%s }
`, contact, pull)
	}
	holdValues(t, []closedForm{
		// W (sin ± μ cos), the normal force W cos.
		{"about to slip up", slope(`friction = "0.5", impending = "(4, 3)"`, ""), map[string]float64{"T": 100, "PN": 80, "PF": -40}},
		{"about to slip down", slope(`friction = "0.5", impending = "(-4, -3)"`, ""), map[string]float64{"T": 20, "PN": 80, "PF": 40}},
		// The slip may be given by any direction that is not along the normal.
		{"about to slip to the right", slope(`friction = "0.5", impending = "+x"`, ""), map[string]float64{"T": 100, "PN": 80}},
		// At rest: friction is what is missing, along the normal turned clockwise.
		{"at rest", slope(`friction = "0.5"`, `, magnitude = "50 N"`), map[string]float64{"PN": 80, "PF": 10}},
		{"at rest, pushed down", slope(`friction = "0.5"`, `, magnitude = "80 N"`), map[string]float64{"PN": 80, "PF": -20}},
		// A rope over a rough drum: T₂ = T₁ exp(μβ), here half a turn.
		{"a capstan", `plane = "xy"
[points]
P = { at = "0, 0", on = "particle" }
Q = { at = "5, 0", on = "particle" }
[lines]
T1 = { kind = "cable", at = "P", along = "+y" }
W = { kind = "weight", at = "P", magnitude = "100 N" }
N = { kind = "contact", at = "P", along = "+x" }
T2 = { kind = "cable", at = "Q", along = "+y", magnitude = "T1*exp(0.25*pi)" }
H = { kind = "cable", at = "Q", along = "-y" }
K = { kind = "link", at = "Q", along = "+x" }
`, map[string]float64{"T1": 100, "T2": 100 * math.Exp(0.25*math.Pi), "H": 100 * math.Exp(0.25*math.Pi)}},
		// A spring holds a body: T = k (length - natural).
		{"a spring on a body", simpleBeam + "[lines]\nK = { kind = \"spring\", path = \"M C\", stiffness = \"200 N/m\", natural = \"1.5 m\" }\n[points.C]\nat = \"2, -3\"\n",
			map[string]float64{"K": 300, "K.stretch": 1.5, "Ay": 200, "B": 100}},
		// Its natural length unknown, the stretch follows from the tension: T/k.
		{"a spring of unknown length", `plane = "xy"
[points]
A = { at = "0, 0", on = "beam" }
B = { at = "6, 0", on = "beam" }
C = "6, 3"
[joints]
A = { kind = "pin" }
[lines]
K = { kind = "spring", path = "B C", stiffness = "200 N/m" }
P = { kind = "force", at = "B", along = "-y", magnitude = "50 N" }
`, map[string]float64{"K": 50, "K.stretch": 0.25, "Ay": 0}},
		// A belt on a pulley of radius 0.5 m: (T₁ - T₂) r holds the torque.
		{"a belt", `plane = "xy"
[points]
O = { at = "0, 0", on = "wheel" }
A = { at = "0, 0.5", on = "wheel" }
B = { at = "0, -0.5", on = "wheel" }
[joints]
O = { kind = "pin" }
[lines]
T1 = { kind = "cable", at = "A", along = "+x" }
T2 = { kind = "cable", at = "B", along = "+x", magnitude = "T1*exp(0.3*pi)" }
[couples]
M = { on = "wheel", about = "-z", magnitude = "20 N m" }
`, map[string]float64{"T1": 40 / (math.Exp(0.3*math.Pi) - 1), "T2": 40 * math.Exp(0.3*math.Pi) / (math.Exp(0.3*math.Pi) - 1)}},
		// Three bars meet at P: two joints there, each of two bodies. A push H at the
		// middle of the third is held by H/2 at its roller; the other half goes to
		// the two bars as H/4 / cos each, in tension and compression.
		{"two joints at a point of three bodies", `plane = "xy"
[points]
A = { at = "-3, 0", on = "a" }
B = { at = "3, 0", on = "b" }
P = { at = "0, 4", on = "a b c" }
C = { at = "0, 0", on = "c" }
M = { at = "0, 2", on = "c" }
[joints]
A = { kind = "pin" }
B = { kind = "pin" }
C = { kind = "roller", normal = "+x" }
P1 = { kind = "pin", at = "P", on = "a b" }
P2 = { kind = "pin", at = "P", on = "a c" }
[lines]
H = { kind = "force", at = "M", along = "-x", magnitude = "60 N" }
`, map[string]float64{"C": 30, "P2x": -30, "P2y": 0, "Ax": 15, "Ay": 20, "Bx": 15, "By": -20, "P1x": 15, "P1y": -20, "A.size": 25, "P2.size": 30}},
	})
}

// TestLimitsOfJoints: the use is the resultant over the limit.
func TestLimitsOfJoints(t *testing.T) {
	s := solveText(t, `plane = "xy"
[points]
A = { at = "0, 0", on = "beam" }
B = { at = "4, 0", on = "beam" }
[joints]
A = { kind = "fixed", limit = "250 N" }
[lines]
P = { kind = "force", at = "B", components = "(-30, -40) N", limit = "100 N" }
`)
	c, ok := s.Governing()
	if !ok || c.Subject != "P" || c.Says(s.Problem) != "P is at 50.0 % of its limit of 100 N; reserve factor 2.00" {
		t.Errorf("%v %v: %s", ok, c, c.Says(s.Problem))
	}
	for _, c := range s.Checks {
		if c.Kind == CheckLimit && c.Joint >= 0 && (c.Value != 50 || c.Says(s.Problem) != "A is at 20.0 % of its limit of 250 N; reserve factor 5.00") {
			t.Errorf("%v: %s", c, c.Says(s.Problem))
		}
	}
}

// A face that is still being typed leaves the surface without reactions, and
// everything else stands.
func TestASurfaceWhoseFaceDoesNotReadYet(t *testing.T) {
	s, err := sheet.Parse([]byte(`plane = "xy"
[points]
C = { at = "0, 0", on = "crate" }
H = { at = "0, 1", on = "crate" }
[bodies]
crate = { weight = "400 N", centre = "H" }
[lines]
P = { kind = "force", at = "H", along = "+x", magnitude = "120 N" }
[joints]
C = { kind = "rough-surface", normal = "+y", friction = "0.4", face = "C" }
H = { kind = "pin" }
`))
	if err != nil {
		t.Fatal(err)
	}
	p, errs := problem.Read(s)
	if len(errs) != 1 {
		t.Fatalf("%v", errs)
	}
	if got := Solve(p); got.Verdict == Unreadable || len(p.Joints) != 2 || len(p.Joints[0].Forces.Terms) > 0 {
		t.Errorf("%v with joints %+v", got.Verdict, p.Joints)
	}
}

// A friction force a little beyond the limit is printed with the figures that show it.
func TestFrictionBeyondItsLimitShows(t *testing.T) {
	s := solveText(t, `plane = "xy"
figures = 3
[points]
A = { at = "0, 0", on = "block" }
[lines]
P = { kind = "force", at = "A", along = "+x", magnitude = "30.004 N" }
W = { kind = "force", at = "A", along = "-y", magnitude = "100 N" }
[joints]
A = { kind = "rough-surface", normal = "+y", friction = "0.3" }
`)
	hasWords(t, s, "the block slips at A: equilibrium requires F = 30.004 N, but μN = 30.000 N")
}

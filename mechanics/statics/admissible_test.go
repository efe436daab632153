package statics

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// The problems of friction and faces below are of our own; what they should say is
// worked out by hand beside each.

func ladderOf(angle, mu float64) string {
	return fmt.Sprintf(`plane = "xy"
[points]
A = { at = "0, 0", on = "ladder" }
B = { at = "4 m*cos(%[1]g deg), 4 m*sin(%[1]g deg)", on = "ladder" }
M = { at = "(A + B)/2", on = "ladder" }
[bodies]
ladder = { weight = "200 N", centre = "M" }
[joints]
A = { kind = "rough-surface", normal = "+y", friction = "%.12[2]g" }
B = { kind = "rough-surface", normal = "-x", friction = "%.12[2]g" }
`, angle, mu)
}

// onIncline is a block of 160 lb on an incline of 30 degrees, pushed along it by P: it
// needs P between W (sin - μ cos) and W (sin + μ cos), here 80 lb ∓ 24 lb.
const onIncline = `plane = "xy"
[units]
force = "lb"
[points]
C = { at = "0, 0", on = "particle" }
[joints]
C = { kind = "rough-surface", normal = "polar(120 deg)", friction = "0.1*sqrt(3)" }
[lines]
W = { kind = "force", at = "C", along = "-y", magnitude = "160 lb" }
P = { kind = "force", at = "C", along = "polar(30 deg)" }
`

// crateAt is a crate of 100 N on a face of 1 m, pushed by 500 N at a height of 2 m and
// held there by a rope R. The normal force acts at e = 2 (R - 500)/100 from the middle,
// and inside the face |e| <= 0.5 gives R between 475 N and 525 N.
func crateAt(more string) string {
	return `plane = "xy"
[points]
A = { at = "0, 0", on = "crate" }
B = { at = "1, 0", on = "crate" }
C = { at = "0.5, 0", on = "crate" }
M = { at = "0.5, 0.5", on = "crate" }
H = { at = "0.5, 2", on = "crate" }
Q = "9, 2"
[bodies]
crate = { weight = "100 N", centre = "M" }
[joints]
C = { kind = "rough-surface", normal = "+y", face = "A B"` + more + ` }
[lines]
R = { kind = "cable", path = "H Q", limit = "520 N" }
F = { kind = "force", at = "H", along = "-x", magnitude = "500 N" }
`
}

// drag is a block of 100 N on a level floor with μ = 0.4 in space, pulled by 24 N along y
// and by an unknown P along x: |F| <= 40 N leaves P between ∓32 N.
const drag = `[points]
C = { at = "0, 0, 0", on = "particle" }
[joints]
C = { kind = "rough-surface", normal = "+z", friction = "0.4" }
[lines]
W = { kind = "weight", at = "C", magnitude = "100 N" }
Q = { kind = "force", at = "C", along = "+y", magnitude = "24 N" }
P = { kind = "link", at = "C", along = "+x" }
`

func TestWordsOfAdmissibleStates(t *testing.T) {
	sayAll(t, []wordCase{
		// It stands where μ > tan(45° - 50°/2) = 0.36397.
		{"a ladder that cannot stand", ladderOf(50, 0.30), `
inadmissible, not possible as drawn
no solution satisfies |F| ≤ μN at A and B
A or B slips: equilibrium would need greater coefficients of friction
- the free unknowns have no admissible values`},
		{"a ladder that just cannot", ladderOf(50, 0.3639), `
inadmissible, not possible as drawn
no solution satisfies |F| ≤ μN at A and B
A or B slips: equilibrium would need greater coefficients of friction
- the free unknowns have no admissible values`},
		{"a ladder that may stand", ladderOf(50, 0.37), `
indeterminate to degree 1: 3 independent equations for 4 unknowns
AN lies between 176 N and 179 N
AF lies between 64.0 N and 66.2 N
BN lies between 64.0 N and 66.2 N
BF lies between 21.1 N and 23.7 N
equilibrium is possible with |F| ≤ μN at A and B
- equilibrium is possible: the free unknowns have admissible values`},
		{"a block on an incline", onIncline, `
indeterminate to degree 1: 2 independent equations for 3 unknowns
P lies between 56.0 lbf and 104 lbf
CN = 139 lbf is fixed all the same
CF lies between -24.0 lbf and 24.0 lbf
equilibrium is possible with |F| ≤ μN at C
- equilibrium is possible: the free unknowns have admissible values`},
		{"a crate on a face", crateAt(`, friction = "1"`), `
indeterminate to degree 1: 3 independent equations for 4 unknowns
R lies between 475 N and 525 N
CN = 100 N is fixed all the same
CF lies between -25.0 N and 25.0 N
MCz lies between -50.0 N m and 50.0 N m
equilibrium is possible with |F| ≤ μN at C
- equilibrium is possible: the free unknowns have admissible values
- R could reach 525 N, 101 % of its limit of 520 N`},
		{"a rope that cannot push", drag + `V = { kind = "cable", at = "C", along = "-z" }
U = { kind = "force", at = "C", along = "+z", magnitude = "150 N" }
`, `
indeterminate to degree 2: 3 independent equations for 5 unknowns
P is unbounded
V is at least 110 N, unbounded above
CN is at least 60.0 N, unbounded above
CF1 is unbounded
CF2 = -24.0 N is fixed all the same
equilibrium is possible with |F| ≤ μN at C
- equilibrium is possible: the free unknowns have admissible values`},
		{"a block in space", drag, `
indeterminate to degree 1: 3 independent equations for 4 unknowns
P lies between -32.0 N and 32.0 N
CN = 100 N is fixed all the same
CF1 lies between -32.0 N and 32.0 N
CF2 = -24.0 N is fixed all the same
equilibrium is possible with |F| ≤ μN at C
- equilibrium is possible: the free unknowns have admissible values`},
	})
}

// TestEndsOfRanges: what ends a range is said by what then happens.
func TestEndsOfRanges(t *testing.T) {
	for _, c := range []struct{ name, text, unknown, low, high string }{
		{"incline", onIncline, "P", "C is about to slip", "C is about to slip"},
		{"crate", crateAt(`, friction = "1"`), "R", "crate is about to tip about A", "crate is about to tip about B"},
		{"crate that slips first", crateAt(`, friction = "0.2"`), "R", "C is about to slip", "C is about to slip"},
		{"block in space", drag, "P", "C is about to slip", "C is about to slip"},
	} {
		s := solveText(t, c.text)
		for _, x := range s.X {
			if x.Name == c.unknown && (s.Ends(x.LowBy) != c.low || s.Ends(x.HighBy) != c.high) {
				t.Errorf("%s: %q and %q", c.name, s.Ends(x.LowBy), s.Ends(x.HighBy))
			}
		}
	}
}

// TestLaddersByTheirAngle: with the same friction at floor and wall a ladder can stand
// exactly where its angle is more than 90° - 2 atan μ (common practice).
func TestLaddersByTheirAngle(t *testing.T) {
	for mu := 0.05; mu < 1; mu += 0.05 {
		least := 90 - 2*math.Atan(mu)*180/math.Pi
		for _, off := range []float64{-1e-6, 1e-6} {
			want := Inadmissible
			if off > 0 {
				want = Indeterminate
			}
			if s := solveText(t, ladderOf(least+off, mu)); s.Verdict != want || s.Slips != (want == Inadmissible) {
				t.Errorf("μ = %g at %g°: %v", mu, least+off, s.Words())
			}
		}
	}
}

// TestPullAcrossAnIncline: a block on a slope of angle a is pulled level along the slope.
// It stays where P² + (W sin a)² <= (μ W cos a)², the cone of friction by Pythagoras.
func TestPullAcrossAnIncline(t *testing.T) {
	for _, c := range []struct{ angle, mu float64 }{{0, 0.3}, {10, 0.4}, {25, 0.5}, {30, 0.9}, {20, 0.3640}} {
		s := solveText(t, fmt.Sprintf(`figures = 9
[points]
C = { at = "0, 0, 0", on = "particle" }
[joints]
C = { kind = "rough-surface", normal = "(0, -sin(%[1]g deg), cos(%[1]g deg))", friction = "%[2]g" }
[lines]
W = { kind = "weight", at = "C", magnitude = "100 N" }
P = { kind = "link", at = "C", along = "+x" }
`, c.angle, c.mu))
		sin, cos := math.Sincos(c.angle * math.Pi / 180)
		want := 100 * math.Sqrt(c.mu*c.mu*cos*cos-sin*sin)
		for _, x := range s.X {
			if x.Name == "P" && (!x.Ranged || math.Abs(x.High-want) > 1e-6*want+1e-5 || math.Abs(x.Low+want) > 1e-6*want+1e-5) {
				t.Errorf("%g°, μ = %g: P from %v to %v, want ∓%v (%v)", c.angle, c.mu, x.Low, x.High, want, s.Words())
			}
		}
	}
}

// TestBlockBetweenTwoPalms: pressed by an unknown force from both sides a block of
// weight W holds where 2 μ P >= W; what presses more holds too.
func TestBlockBetweenTwoPalms(t *testing.T) {
	s := solveText(t, `[points]
C = { at = "0, 0, 0", on = "particle" }
[joints]
L = { kind = "rough-surface", at = "C", normal = "+x", friction = "0.25" }
R = { kind = "rough-surface", at = "C", normal = "-x", friction = "0.25" }
[lines]
W = { kind = "weight", at = "C", magnitude = "100 N" }
`)
	for _, x := range s.X {
		if x.Name == "LN" && (math.Abs(x.Low-200) > 1e-5 || !math.IsInf(x.High, 1)) {
			t.Errorf("LN from %v to %v", x.Low, x.High)
		}
	}
	if s.Verdict != Indeterminate {
		t.Error(s.Words())
	}
}

// TestConflictsName: a smallest set of what cannot hold together.
func TestConflictsName(t *testing.T) {
	const two = `plane = "xy"
[points]
P = { at = "0, 0", on = "particle" }
[lines]
T1 = { kind = "cable", at = "P", along = "+x" }
T2 = { kind = "cable", at = "P", along = "+x" }
`
	for _, c := range []struct{ name, text, says string }{
		{"two cables", two + "F = { kind = \"force\", at = \"P\", along = \"+x\", magnitude = \"5 N\" }\n",
			"no solution has cables T1 and T2 in tension"},
		{"a strut that would pull", two + "S = { kind = \"strut\", at = \"P\", along = \"+x\" }\nF = { kind = \"force\", at = \"P\", along = \"-x\", magnitude = \"5 N\" }\n",
			""},
		{"a face and a rope", crateAt(`, friction = "1"`) + `G = { kind = "force", at = "M", along = "+y", magnitude = "150 N" }
V = { kind = "cable", at = "M", along = "+y" }
`, "no solution has cable V in tension and the support at C pressing"},
	} {
		s := solveText(t, c.text)
		got := ""
		if len(s.Conflict) > 0 {
			got = s.Words()[1]
		}
		if got != c.says {
			t.Errorf("%s: %q, want %q\n%v", c.name, got, c.says, s.Words())
		}
	}
}

// TestLimitsWithoutAGreatestValue: no number stands for what has none.
func TestLimitsWithoutAGreatestValue(t *testing.T) {
	s := solveText(t, `plane = "xy"
[points]
P = { at = "0, 0", on = "particle" }
[lines]
R = { kind = "cable", at = "P", along = "+y", limit = "300 N" }
S = { kind = "cable", at = "P", along = "-y" }
W = { kind = "weight", at = "P", magnitude = "96 N" }
`)
	says := ""
	for _, c := range s.Checks {
		if c.Kind == CheckLimit {
			says = c.Says(s.Problem)
		}
	}
	if says != "R has no greatest value to hold against its limit of 300 N" {
		t.Error(says)
	}
}

// TestFrictionAtItsLimit: where a pull takes all of the friction, none is left to
// another; beyond that the block slips. A billionth of the load is no slip.
func TestFrictionAtItsLimit(t *testing.T) {
	for _, c := range []struct{ pull, says string }{
		{"39.99 N", "P lies between -0.894 N and 0.894 N"}, // √(40² - 39.99²) = 0.8943
		{"40 N", "P = 0 N is the only admissible value"},
		{"40.00000001 N", "P = 0 N is the only admissible value"},
		{"40.000001 N", "no solution satisfies |F| ≤ μN at C"},
		{"60 N", "no solution satisfies |F| ≤ μN at C"},
	} {
		s := solveText(t, strings.Replace(drag, "24 N", c.pull, 1))
		if got := s.Words()[1]; got != c.says {
			t.Errorf("%s: %q, want %q", c.pull, got, c.says)
		}
	}
}

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
not possible as drawn: no solution has |F| ≤ μN at A and B; the ladder slips
- no values of the undetermined unknowns are admissible`},
		{"a ladder that just cannot", ladderOf(50, 0.3639), `
not possible as drawn: no solution has |F| ≤ μN at A and B; the ladder slips
- no values of the undetermined unknowns are admissible`},
		{"a ladder that may stand", ladderOf(50, 0.37), `
statically indeterminate to the first degree: 3 independent equations for 4 unknowns
AN lies between 176 N and 179 N
AF lies between 64.0 N and 66.2 N
BN lies between 64.0 N and 66.2 N
BF lies between 21.1 N and 23.7 N
equilibrium is possible with |F| ≤ μN at A and B
- equilibrium is possible: the undetermined unknowns have admissible values`},
		{"a block on an incline", onIncline, `
statically indeterminate to the first degree: 2 independent equations for 3 unknowns
P lies between 56.0 lbf and 104 lbf
CN = 139 lbf is nevertheless determinate
CF lies between -24.0 lbf and 24.0 lbf
equilibrium is possible with |F| ≤ μN at C
- equilibrium is possible: the undetermined unknowns have admissible values`},
		{"a crate on a face", crateAt(`, friction = "1"`), `
statically indeterminate to the first degree: 3 independent equations for 4 unknowns
R lies between 475 N and 525 N
CN = 100 N is nevertheless determinate
CF lies between -25.0 N and 25.0 N
MCz lies between -50.0 N m and 50.0 N m
equilibrium is possible with |F| ≤ μN at C
- equilibrium is possible: the undetermined unknowns have admissible values
- R could reach 525 N, 101 % of its limit of 520 N`},
		{"a rope that cannot push", drag + `V = { kind = "cable", at = "C", along = "-z" }
U = { kind = "force", at = "C", along = "+z", magnitude = "150 N" }
`, `
statically indeterminate to the second degree: 3 independent equations for 5 unknowns
P is undetermined and unbounded
V is at least 110 N, with no upper bound
CN is at least 60.0 N, with no upper bound
CF1 is undetermined and unbounded
CF2 = -24.0 N is nevertheless determinate
equilibrium is possible with |F| ≤ μN at C
- equilibrium is possible: the undetermined unknowns have admissible values`},
		{"a block in space", drag, `
statically indeterminate to the first degree: 3 independent equations for 4 unknowns
P lies between -32.0 N and 32.0 N
CN = 100 N is nevertheless determinate
CF1 lies between -32.0 N and 32.0 N
CF2 = -24.0 N is nevertheless determinate
equilibrium is possible with |F| ≤ μN at C
- equilibrium is possible: the undetermined unknowns have admissible values`},
	})
}

// TestEndsOfRanges: what ends a range is said by what then happens.
func TestEndsOfRanges(t *testing.T) {
	for _, c := range []struct{ name, text, unknown, low, high string }{
		{"incline", onIncline, "P", "slip is impending at C", "slip is impending at C"},
		{"crate", crateAt(`, friction = "1"`), "R", "the crate is about to tip about A", "the crate is about to tip about B"},
		{"crate that slips first", crateAt(`, friction = "0.2"`), "R", "slip is impending at C", "slip is impending at C"},
		{"block in space", drag, "P", "slip is impending at C", "slip is impending at C"},
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
			if s := solveText(t, ladderOf(least+off, mu)); s.Verdict != want || (len(s.conflicts) == 1 && s.conflicts[0].Slips) != (want == Inadmissible) {
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
`, "no solution has cable V in tension and the support at C in compression"},
	} {
		s := solveText(t, c.text)
		got := ""
		if len(s.conflicts) > 0 {
			_, got, _ = strings.Cut(s.Words()[0], ": ")
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
	if says != "R is unbounded and can exceed its limit of 300 N" {
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
		{"40.000001 N", "no solution has |F| ≤ μN at C; C slips"},
		{"60 N", "no solution has |F| ≤ μN at C; C slips"},
	} {
		s := solveText(t, strings.Replace(drag, "24 N", c.pull, 1))
		if got := strings.Join(s.Words(), "\n"); !strings.Contains(got, c.says) {
			t.Errorf("%s: %q, want %q", c.pull, got, c.says)
		}
	}
}

// TestBarBetweenWalls: a bar of weight W leans from one wall to another, its ends c apart
// and s of height. With N from either wall its lower end carries W/2 + N s/c of friction,
// so that it can stand where μ > s/c, from N = W/2 / (μ - s/c) on. At μ = s/c the margin
// is the same for every N: nothing that is free changes it.
func TestBarBetweenWalls(t *testing.T) {
	for _, c := range []struct{ run, rise float64 }{{4, 3}, {12, 5}, {15, 8}, {21, 20}, {24, 7}, {1, 1}, {3, 4}} {
		slope := c.rise / c.run
		for _, off := range []float64{-0.1, -1e-4, 0, 1e-4, 0.1} {
			mu := slope + off
			s := solveText(t, fmt.Sprintf(`plane = "xy"
[points]
A = { at = "0, 0", on = "bar" }
B = { at = "%g, %g", on = "bar" }
M = { at = "(A + B)/2", on = "bar" }
[bodies]
bar = { weight = "10 N", centre = "M" }
[joints]
A = { kind = "rough-surface", normal = "+x", friction = "%.17g" }
B = { kind = "rough-surface", normal = "-x", friction = "%.17g" }
`, c.run, c.rise, mu, mu))
			want := Inadmissible
			if off > 0 {
				want = Indeterminate
			}
			if s.Verdict != want {
				t.Errorf("%g to %g, μ = %g: %v", c.rise, c.run, mu, s.Words())
			}
			if low := 5 / off; off > 0 && math.Abs(s.X[0].Low-low) > 1e-6*low {
				t.Errorf("%g to %g, μ = %g: %s from %v, want %v", c.rise, c.run, mu, s.X[0].Name, s.X[0].Low, low)
			}
		}
	}
}

// TestConditionsThatNothingChanges: what is violated whatever is free is said.
func TestConditionsThatNothingChanges(t *testing.T) {
	const particle = `plane = "xy"
[points]
Q = { at = "0, 0", on = "particle" }
S = { at = "0, 1", on = "particle" }
[lines]
P = { kind = "force", at = "Q", along = "+x" }
R = { kind = "force", at = "Q", along = "+x" }
W = { kind = "force", at = "Q", along = "+x", magnitude = "100 N" }
C = { kind = "cable", at = "S", along = "+x", magnitude = "P + R" }
L = { kind = "link", at = "S", along = "-x" }
`
	const wall = `plane = "xy"
[points]
B = { at = "0, 0", on = "particle" }
[joints]
B = { kind = "rough-surface", normal = "+x", friction = "0" }
[lines]
W = { kind = "weight", at = "B", magnitude = "100 N" }
P = { kind = "force", at = "B", along = "-x" }
`
	// The rope lifts the crate above the end that it tips about.
	const lifted = `plane = "xy"
[points]
C = { at = "0, 0", on = "crate" }
D = { at = "1 m, 0", on = "crate" }
E = { at = "1 m, 1 m", on = "crate" }
H = { at = "0, 1 m", on = "crate" }
M = { at = "0.5 m, 0.5 m", on = "crate" }
[joints]
C = { kind = "rough-surface", normal = "+y", face = "C D", friction = "0.9" }
[lines]
V = { kind = "cable", at = "E", along = "+y" }
W = { kind = "weight", at = "M", magnitude = "1000 N" }
F = { kind = "force", at = "H", along = "+x", magnitude = "600 N" }
`
	// All of its weight hangs on the end of the face: the face has a moment to carry and
	// no normal force to do it with.
	const hung = `plane = "xy"
[points]
C = { at = "0, 0", on = "crate" }
D = { at = "1 m, 0", on = "crate" }
M = { at = "0.5 m, 0.5 m", on = "crate" }
[joints]
C = { kind = "smooth-surface", normal = "+y", face = "C D" }
[lines]
W = { kind = "weight", at = "M", magnitude = "100 N" }
U = { kind = "force", at = "D", along = "+y", magnitude = "100 N" }
`
	for _, c := range []struct{ name, text, says string }{
		{"a sum that is the same", particle, "not possible as drawn, partially constrained: every solution puts cable C in compression (100 N); C goes slack"},
		{"a smooth wall", wall, "not possible as drawn: equilibrium requires a friction force of 100 N at B, but μN = 0 N; B slips"},
		{"a rope above the end", lifted, "not possible as drawn: no solution has the normal force at C inside the contact"},
		{"no normal force", hung, "not possible as drawn, partially constrained: the contact at C would have to exert a moment of 50.0 N m without a normal force; the crate tips"},
		{"a slope of 3:4 in space", `[points]
A = { at = "0, 0, 0", on = "bar" }
B = { at = "4, 3, 0", on = "bar" }
M = { at = "2, 1.5, 0", on = "bar" }
[joints]
A = { kind = "rough-surface", normal = "+x", friction = "0.75" }
B = { kind = "rough-surface", normal = "-x", friction = "0.75" }
[lines]
W = { kind = "force", at = "M", along = "-y", magnitude = "10 N" }
`, "not possible as drawn, partially constrained: no solution has |F| ≤ μN at A; the bar slips"},
	} {
		s := solveText(t, c.text)
		got := s.Words()[0]
		if got != c.says {
			t.Errorf("%s: %q, want %q", c.name, got, c.says)
		}
		for _, check := range s.Checks {
			if says := check.Says(s.Problem); strings.Contains(says, "not a number") || strings.Contains(says, "NaN") {
				t.Errorf("%s: %s", c.name, says)
			}
		}
	}
}

// TestFourFeetAtTheLimit: a table of 200 N on four rough feet, μ = 0.5, pushed level: it
// stays up to 100 N, in whatever way its feet share that.
func TestFourFeetAtTheLimit(t *testing.T) {
	for _, c := range []struct {
		push    string
		verdict Verdict
	}{{"60 N", Indeterminate}, {"99.99 N", Indeterminate}, {"99.9999 N", Indeterminate}, {"100 N", Indeterminate}, {"100.001 N", Inadmissible}, {"150 N", Inadmissible}} {
		s := solveText(t, `[points]
A = { at = "0, 0, 0", on = "t" }
B = { at = "1 m, 0, 0", on = "t" }
C = { at = "1 m, 1 m, 0", on = "t" }
D = { at = "0, 1 m, 0", on = "t" }
M = { at = "0.5 m, 0.5 m, 0.2 m", on = "t" }
[joints]
A = { kind = "rough-surface", normal = "+z", friction = "0.5" }
B = { kind = "rough-surface", normal = "+z", friction = "0.5" }
C = { kind = "rough-surface", normal = "+z", friction = "0.5" }
D = { kind = "rough-surface", normal = "+z", friction = "0.5" }
[lines]
W = { kind = "weight", at = "M", magnitude = "200 N" }
F = { kind = "force", at = "M", along = "(1, 0.3, 0)", magnitude = "`+c.push+`" }
`)
		if s.Verdict != c.verdict {
			t.Errorf("%s: %v", c.push, s.Words())
		}
	}
}

package statics

import (
	"math"
	"slices"
	"strings"
	"testing"
)

// TestWords holds what is said of every verdict, line by line.
func TestWords(t *testing.T) {
	const plane = "plane = \"xy\"\n"
	const p2 = plane + "[points]\nP = { at = \"0, 0\", on = \"particle\" }\n[lines]\n"
	const p3 = "[points]\nP = { at = \"0, 0, 0\", on = \"particle\" }\nA = \"-4, 0, 3\"\nB = \"4, 0, 3\"\n[lines]\n"
	for _, c := range []struct{ name, text, want string }{
		{"determinate", p3 + `
T1 = { kind = "cable", path = "P A" }
T2 = { kind = "cable", path = "P B" }
T3 = { kind = "cable", at = "P", along = "+y" }
F = { kind = "force", at = "P", components = "(0, -20, -96) N" }`, `
statically determinate: every unknown has a single value`},
		{"partially constrained", p3 + `
T1 = { kind = "cable", path = "P A" }
T2 = { kind = "cable", path = "P B" }
W = { kind = "weight", at = "P", magnitude = "96 N" }`, `
statically determinate, partially constrained: every unknown has a single value
P is unsupported in the y direction, but no load acts in that direction`},
		{"partially constrained obliquely", p2 + `
T = { kind = "cable", at = "P", along = "(4, 3)" }
F = { kind = "force", at = "P", along = "(-4, -3)", magnitude = "5" }`, `
statically determinate, partially constrained: every unknown has a single value
P is unsupported in the direction (0.6, -0.8), but no load acts in that direction`},
		{"a linkage that moves", plane + `
[points]
P = { at = "0, 0", on = "particle" }
Q = { at = "3, 4", on = "particle" }
[lines]
L = { kind = "link", path = "P Q" }
N1 = { kind = "contact", at = "P", along = "+y" }
N2 = { kind = "contact", at = "Q", along = "-x" }
W = { kind = "force", at = "Q", along = "+x", magnitude = "100 N" }`, `
statically determinate, partially constrained: every unknown has a single value
nothing prevents P from moving in the direction +x, and with it Q from moving in the direction +y, but no load causes it`},
		{"senses broken", p3 + `
T = { kind = "cable", at = "P", along = "+x" }
S = { kind = "strut", at = "P", along = "+y" }
N = { kind = "contact", at = "P", along = "+z" }
F = { kind = "force", at = "P", components = "(12, -5, 3) N" }`, `
not possible as drawn: the only solution is inadmissible
the only solution puts cable T in compression (12.0 N)
the only solution puts strut S in tension (5.00 N)
contact N would have to pull (3.00 N)
without T, there is no equilibrium
then P is unsupported in the direction +x: 12.0 N is unbalanced`},
		{"sense broken and partially constrained", p2 + `
T = { kind = "cable", at = "P", along = "+x" }
F = { kind = "force", at = "P", along = "+x", magnitude = "2 kN" }`, `
not possible as drawn, partially constrained: the only solution puts cable T in compression (2000 N); T goes slack
P is unsupported in the y direction, but no load acts in that direction
without T, there is no equilibrium
then P is unsupported in the direction +x: 2000 N is unbalanced`},
		{"a tied cable is slack", p2 + `
R = { kind = "force", at = "P", along = "+x" }
T = { kind = "cable", at = "P", along = "+x", magnitude = "2*R - 10 N" }
N = { kind = "contact", at = "P", along = "+y" }
F = { kind = "force", at = "P", components = "(1, -4) N" }`, `
not possible as drawn: the only solution puts cable T in compression (4.00 N); T goes slack`},
		{"ranges and a fixed one", p2 + `
T1 = { kind = "cable", at = "P", along = "+y" }
T2 = { kind = "cable", at = "P", along = "+y" }
H = { kind = "link", at = "P", along = "+x" }
W = { kind = "weight", at = "P", magnitude = "96 N" }
F = { kind = "force", at = "P", along = "-x", magnitude = "7 N" }`, `
statically indeterminate to the first degree: 2 independent equations for 3 unknowns
T1 lies between 0 N and 96.0 N
T2 lies between 0 N and 96.0 N
H = 7.00 N is nevertheless determinate`},
		{"no greatest", p2 + `
T1 = { kind = "cable", at = "P", along = "+y" }
T2 = { kind = "cable", at = "P", along = "-y" }
H = { kind = "link", at = "P", along = "+x" }
W = { kind = "weight", at = "P", magnitude = "96 N" }`, `
statically indeterminate to the first degree: 2 independent equations for 3 unknowns
T1 is at least 96.0 N, with no upper bound
T2 is at least 0 N, with no upper bound
H = 0 N is nevertheless determinate`},
		{"no least and no bounds", p2 + `
K = { kind = "link", at = "P", along = "+y" }
T = { kind = "cable", at = "P", along = "+y" }
H1 = { kind = "link", at = "P", along = "+x" }
H2 = { kind = "link", at = "P", along = "+x" }
W = { kind = "weight", at = "P", magnitude = "96 N" }`, `
statically indeterminate to the second degree: 2 independent equations for 4 unknowns
K is at most 96.0 N, with no lower bound
T is at least 0 N, with no upper bound
H1 is undetermined and unbounded
H2 is undetermined and unbounded`},
		{"senses leave nothing", p2 + `
T1 = { kind = "cable", at = "P", along = "-y" }
T2 = { kind = "cable", at = "P", along = "-y" }
H = { kind = "link", at = "P", along = "+x" }
W = { kind = "weight", at = "P", magnitude = "96 N" }`, `
not possible as drawn: no solution has cables T1 and T2 in tension
H = 0 N is nevertheless determinate`},
		{"senses leave one value", p2 + `
T1 = { kind = "cable", at = "P", along = "-y" }
T2 = { kind = "cable", at = "P", along = "-y" }
H = { kind = "link", at = "P", along = "+x" }
F = { kind = "force", at = "P", along = "+x", magnitude = "96 N" }`, `
statically indeterminate to the first degree: 2 independent equations for 3 unknowns
T1 = 0 N is the only admissible value
T2 = 0 N is the only admissible value
H = -96.0 N is nevertheless determinate`},
		{"indeterminate, partially constrained, and a fixed one slack", p3 + `
T1 = { kind = "cable", at = "P", along = "+z" }
T2 = { kind = "cable", at = "P", along = "+z" }
H = { kind = "cable", at = "P", along = "+x" }
W = { kind = "weight", at = "P", magnitude = "96 N" }
F = { kind = "force", at = "P", along = "+x", magnitude = "7 N" }`, `
not possible as drawn, partially constrained: every solution puts cable H in compression (7.00 N); H goes slack
H = -7.00 N is nevertheless determinate
P is unsupported in the y direction, but no load acts in that direction`},
		{"an unknown that balances itself", p2 + `
T1 = { kind = "cable", at = "P", along = "+x" }
T2 = { kind = "cable", at = "P", along = "-x", magnitude = "T1" }
N = { kind = "contact", at = "P", along = "+y" }
W = { kind = "weight", at = "P", magnitude = "100 N" }`, `
statically indeterminate to the first degree, partially constrained: 1 independent equation for 2 unknowns
T1 is at least 0 N, with no upper bound
N = 100 N is nevertheless determinate
P is unsupported in the x direction, but no load acts in that direction`},
		{"no equilibrium along an axis", p3 + `
T1 = { kind = "cable", path = "P A" }
T2 = { kind = "cable", path = "P B" }
F = { kind = "force", at = "P", components = "(0, -20, -96) N" }`, `
no equilibrium: the loads move the particle and no support prevents it
P is unsupported in the direction -y: 20.0 N is unbalanced`},
		{"no equilibrium obliquely", p2 + `
T1 = { kind = "cable", at = "P", along = "(4, 3)" }
W = { kind = "weight", at = "P", magnitude = "100 N" }`, `
no equilibrium: the loads move the particle and no support prevents it
P is unsupported in the direction (0.6, -0.8): 80.0 N is unbalanced`},
		{"no equilibrium of two particles apart", plane + `
[points]
P = { at = "0, 0", on = "particle" }
Q = { at = "3, 0", on = "particle" }
[lines]
T1 = { kind = "cable", at = "P", along = "+x" }
T2 = { kind = "cable", at = "Q", along = "+x" }
V = { kind = "weight", at = "P", magnitude = "100 N" }
W = { kind = "weight", at = "Q", magnitude = "50 N" }`, `
no equilibrium: the loads move the particles and no support prevents it
P is unsupported in the direction -y: 100 N is unbalanced
Q is unsupported in the direction -y: 50.0 N is unbalanced`},
		{"no equilibrium of two particles joined", plane + `
[points]
P = { at = "0, 0", on = "particle" }
Q = { at = "3, 0", on = "particle" }
[lines]
L = { kind = "link", path = "P Q" }
N1 = { kind = "contact", at = "P", along = "+y" }
N2 = { kind = "contact", at = "Q", along = "+y" }
F = { kind = "force", at = "Q", components = "(100, -40) N" }
G = { kind = "force", at = "P", components = "(20, 0) N" }`, `
no equilibrium: the loads move the particles and no support prevents it
nothing prevents P from moving in the direction +x, and with it Q from moving in the direction +x: 120 N is unbalanced`},
		{"joined, pushed apart and free besides", `
[points]
P = { at = "0, 0, 0", on = "particle" }
Q = { at = "3, 0, 0", on = "particle" }
A = "-4, 0, 0"
[lines]
L = { kind = "link", path = "P Q" }
T = { kind = "link", path = "P A" }
U = { kind = "link", at = "P", along = "+y" }
V = { kind = "force", at = "P", along = "-z", magnitude = "100 N" }
W = { kind = "force", at = "Q", along = "+z", magnitude = "100 N" }`, `
no equilibrium: the loads move the particles and no support prevents it
P is unsupported in the direction -z: 100 N is unbalanced
Q is unsupported in the direction +z: 100 N is unbalanced
Q is unsupported in the y direction, but no load acts in that direction`},
		{"no load", p2 + `
T1 = { kind = "cable", at = "P", along = "(4, 3)" }
T2 = { kind = "cable", at = "P", along = "(-4, 3)" }`, `
statically determinate: no load acts, so every unknown is zero`},
		{"no load, and prestress possible", p2 + `
T1 = { kind = "cable", at = "P", along = "+x" }
T2 = { kind = "cable", at = "P", along = "-x" }`, `
statically indeterminate to the first degree, partially constrained: 1 independent equation for 2 unknowns
T1 is at least 0 N, with no upper bound
T2 is at least 0 N, with no upper bound
P is unsupported in the y direction, but no load acts in that direction`},
		{"resultant", `expect = "resultant"` + "\n" + p3 + `
F1 = { kind = "force", at = "P", components = "(3, 0, 0) N" }
F2 = { kind = "force", at = "P", components = "(0, 4, 0) N" }`, `
resultant: the known forces are added and need not balance
the resultant of the known forces on P is 5.00 N along (0.6, 0.8, 0)`},
		{"known forces that balance", p3 + `
F1 = { kind = "force", at = "P", components = "(3, 0, 0) N" }
F2 = { kind = "force", at = "P", components = "(-3, 0, 0) N" }`, `
statically determinate: there are no unknowns, and the known forces balance`},
		{"known forces that do not, and nothing asked", p3 + `
F1 = { kind = "force", at = "P", components = "(3, 0, 0) N" }
F2 = { kind = "force", at = "P", components = "(-3, 1, 0) N" }`, `
no equilibrium: the loads move the particle and no support prevents it
P is unsupported in the direction +y: 1.00 N is unbalanced
the sheet has neither supports nor unknowns. Try: set expect to "resultant" if only the resultant of the known forces is wanted`},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := strings.Join(solveText(t, c.text).Words(), "\n")
			if want := strings.TrimPrefix(c.want, "\n"); got != want {
				t.Errorf("got\n%s\nwant\n%s", got, want)
			}
		})
	}
}

// TestNothingCutFree: such a sheet is an error of its own to read; solved all the
// same, it says so.
func TestNothingCutFree(t *testing.T) {
	s := Solve(read(t, "[points]\nP = { at = \"0, 0, 0\", on = \"particle\" }\n[lines]\nT = { kind = \"cable\", at = \"P\", along = \"+x\" }"))
	s.Problem.Bodies, s.Problem.Lines, s.Problem.Unknowns = nil, nil, nil
	s = Solve(s.Problem)
	if s.Verdict != Unreadable || !slices.Equal(s.Words(), []string{"unreadable: there is no free body to write equations for"}) {
		t.Errorf("%v: %v", s.Verdict, s.Words())
	}
}

// TestCheckWords holds what every kind of check says, when it holds and when it
// does not.
func TestCheckWords(t *testing.T) {
	s := solveText(t, `
[points]
P = { at = "0, 0, 0", on = "particle" }
A = "-4, 0, 3"
[lines]
T = { kind = "cable", path = "P A" }
S = { kind = "strut", at = "P", along = "+y" }
N = { kind = "contact", at = "P", along = "+z" }
F = { kind = "force", at = "P", components = "(12, -5, 3) N" }`)
	for _, c := range []struct {
		check      Check
		name, want string
	}{
		{Check{Kind: CheckUnit, Subject: "T", OK: true}, "unit vector T", "|u| = 1 for T, exactly"},
		{Check{Kind: CheckUnit, Subject: "T", Value: 2.2e-16, OK: true}, "unit vector T", "|u| = 1 for T, to within 2.2e-16"},
		{Check{Kind: CheckUnit, Subject: "T", Value: 0.25}, "unit vector T", "|u| for T is not 1: it is off by 0.25"},
		{Check{Kind: CheckResidual, Subject: "P", OK: true}, "sum of forces P", "ΣF = 0 on P, exactly"},
		{Check{Kind: CheckResidual, Subject: "P", Value: 1.5e-16, OK: true}, "sum of forces P", "ΣF = 0 on P, to within 1.5e-16 of the largest force"},
		{Check{Kind: CheckResidual, Subject: "P", Value: 0.156}, "sum of forces P", "ΣF on P is not zero: the residual is 0.16 times the largest force"},
		{Check{Kind: CheckMoment, Subject: "P", About: "A", OK: true}, "sum of moments P", "ΣM = 0 on P about A, exactly"},
		{Check{Kind: CheckMoment, Subject: "P", Value: 1e-16, OK: true}, "sum of moments P", "ΣM = 0 on P about a second point, to within 1.0e-16 of the largest moment"},
		{Check{Kind: CheckMoment, Subject: "P", About: "A", Value: 0.5}, "sum of moments P", "ΣM on P about A is not zero: the residual is 0.5 times the largest moment"},
		{Check{Kind: CheckCondition, Value: 0.43, OK: true}, "conditioning", "well conditioned: about 15 figures are reliable"},
		{Check{Kind: CheckCondition, Value: 8, OK: true}, "conditioning", "poorly conditioned, but about 7 figures are reliable"},
		{Check{Kind: CheckResidual, Subject: "P", Value: 0.9999}, "sum of forces P", "ΣF on P is not zero: the residual is as large as the largest force"},
		{Check{Kind: CheckCondition, Value: 13.2}, "conditioning", "ill conditioned: only about 2 figures are reliable, fewer than the 3 shown"},
		{Check{Kind: CheckSense, Subject: "T", Line: 0, Value: 80, OK: true}, "sense T", "T = 80.0 N in tension"},
		{Check{Kind: CheckSense, Subject: "T", Line: 0, OK: true}, "sense T", "T = 0 N: no force"},
		{Check{Kind: CheckSense, Subject: "T", Line: 0, Value: -80}, "sense T", "T = 80.0 N in compression, which a cable cannot carry"},
		{Check{Kind: CheckSense, Subject: "S", Line: 1, Value: -80}, "sense S", "S = 80.0 N in tension, which a strut cannot carry"},
		{Check{Kind: CheckSense, Subject: "N", Line: 2, Value: -80}, "sense N", "N would have to pull (80.0 N), which a contact cannot do"},
		{Check{Kind: CheckLimit, Subject: "T", Value: 80, Bound: 90, OK: true}, "limit T", "T is at 88.9 % of its limit of 90.0 N; reserve factor 1.13"},
		{Check{Kind: CheckLimit, Subject: "T", Value: 80, Bound: 50}, "limit T", "T exceeds its limit of 50.0 N: utilisation 160 %"},
		{Check{Kind: CheckLimit, Subject: "N", Value: 100, Bound: 2, Ranged: true}, "limit N", "N could reach 100 N, 5000 % of its limit of 2.00 N"},
		{Check{Kind: CheckLimit, Subject: "T", Value: 80, Bound: 90, Ranged: true, OK: true}, "limit T", "T reaches at most 88.9 % of its limit of 90.0 N; reserve factor 1.13"},
		{Check{Kind: CheckLimit, Subject: "T", Value: math.Inf(1), Bound: 50}, "limit T", "T is unbounded and can exceed its limit of 50.0 N"},
		{Check{Kind: CheckSenseRange, OK: true}, "senses", "equilibrium is possible: the undetermined unknowns have admissible values"},
		{Check{Kind: CheckBare, Subject: "E"}, "forces E", "no force acts on E, so it is left out"},
		{Check{Kind: CheckSenseRange}, "senses", "no values of the undetermined unknowns are admissible"},
	} {
		if got := c.check.Says(s.Problem); got != c.want {
			t.Errorf("says %q, want %q", got, c.want)
		}
		if got := c.check.Name(); got != c.name {
			t.Errorf("is named %q, want %q", got, c.name)
		}
	}
}

// TestFailures holds what a sheet that is not well says, in one line each.
func TestFailures(t *testing.T) {
	const lines = `
[points]
P = { at = "0, 0, 0", on = "particle" }
[lines]
T = { kind = "cable", at = "P", along = "+z", limit = "50 N" }
H = { kind = "link", at = "P", along = "+x" }
K = { kind = "link", at = "P", along = "+y" }
W = { kind = "weight", at = "P", magnitude = "96 N" }
`
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"a limit", lines, []string{"T exceeds its limit of 50.0 N: utilisation 192 %"}},
		{"an answer", strings.Replace(lines, "50 N", "500 N", 1) + "[answers]\nT = \"96 N\"\nH = \"1.0 N\"", []string{
			"H = 0 N differs from the reference 1.0 N"}},
		{"an expectation", "expect = \"indeterminate\"" + strings.Replace(lines, "50 N", "500 N", 1), []string{
			"expected indeterminate, found statically determinate: every unknown has a single value"}},
		{"an answer without value", strings.Replace(lines, "\"+x\"", "\"+y\"", 1) + "[answers]\nT = \"96 N\"\nH = \"1.0 N\"", []string{
			"statically indeterminate to the first degree, partially constrained: 2 independent equations for 3 unknowns",
			"T = 96.0 N is nevertheless determinate", "H is undetermined and unbounded", "K is undetermined and unbounded",
			"P is unsupported in the x direction, but no load acts in that direction",
			"T exceeds its limit of 50.0 N: utilisation 192 %",
			"H has no single value, but the reference is 1.0 N"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := solveText(t, c.text)
			if got := s.Failures(); !slices.Equal(got, c.want) {
				t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(c.want, "\n"))
			}
			if s.Well() {
				t.Error("is well")
			}
		})
	}
}

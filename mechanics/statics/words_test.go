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
determinate: every unknown has one value`},
		{"partly constrained", p3 + `
T1 = { kind = "cable", path = "P A" }
T2 = { kind = "cable", path = "P B" }
W = { kind = "weight", at = "P", magnitude = "96 N" }`, `
determinate, partly constrained: every unknown has one value
nothing holds P along y, and no load acts that way`},
		{"partly constrained obliquely", p2 + `
T = { kind = "cable", at = "P", along = "(4, 3)" }
F = { kind = "force", at = "P", along = "(-4, -3)", magnitude = "5" }`, `
determinate, partly constrained: every unknown has one value
nothing holds P along (0.6000, -0.8000), and no load acts that way`},
		{"a linkage that moves", plane + `
[points]
P = { at = "0, 0", on = "particle" }
Q = { at = "3, 4", on = "particle" }
[lines]
L = { kind = "link", path = "P Q" }
N1 = { kind = "contact", at = "P", along = "+y" }
N2 = { kind = "contact", at = "Q", along = "-x" }
W = { kind = "force", at = "Q", along = "+x", magnitude = "100 N" }`, `
determinate, partly constrained: every unknown has one value
nothing holds P along +x with Q along +y, and no load acts that way`},
		{"senses broken", p3 + `
T = { kind = "cable", at = "P", along = "+x" }
S = { kind = "strut", at = "P", along = "+y" }
N = { kind = "contact", at = "P", along = "+z" }
F = { kind = "force", at = "P", components = "(12, -5, 3) N" }`, `
inadmissible, not possible as drawn
the only solution puts cable T in compression (12.0 N)
the only solution puts strut S in tension (5.00 N)
contact N would have to pull (3.00 N)
without T there is no equilibrium
then nothing holds P along +x: 12.0 N is unbalanced`},
		{"sense broken and partly constrained", p2 + `
T = { kind = "cable", at = "P", along = "+x" }
F = { kind = "force", at = "P", along = "+x", magnitude = "2 kN" }`, `
inadmissible, not possible as drawn, partly constrained: the only solution puts cable T in compression (2000 N); T goes slack
nothing holds P along y, and no load acts that way
without T there is no equilibrium
then nothing holds P along +x: 2000 N is unbalanced`},
		{"a tied cable is slack", p2 + `
R = { kind = "force", at = "P", along = "+x" }
T = { kind = "cable", at = "P", along = "+x", magnitude = "2*R - 10 N" }
N = { kind = "contact", at = "P", along = "+y" }
F = { kind = "force", at = "P", components = "(1, -4) N" }`, `
inadmissible, not possible as drawn: the only solution puts cable T in compression (4.00 N); T goes slack`},
		{"ranges and a fixed one", p2 + `
T1 = { kind = "cable", at = "P", along = "+y" }
T2 = { kind = "cable", at = "P", along = "+y" }
H = { kind = "link", at = "P", along = "+x" }
W = { kind = "weight", at = "P", magnitude = "96 N" }
F = { kind = "force", at = "P", along = "-x", magnitude = "7 N" }`, `
indeterminate to degree 1: 2 independent equations for 3 unknowns
T1 lies between 0 N and 96.0 N
T2 lies between 0 N and 96.0 N
H = 7.00 N is fixed all the same`},
		{"no greatest", p2 + `
T1 = { kind = "cable", at = "P", along = "+y" }
T2 = { kind = "cable", at = "P", along = "-y" }
H = { kind = "link", at = "P", along = "+x" }
W = { kind = "weight", at = "P", magnitude = "96 N" }`, `
indeterminate to degree 1: 2 independent equations for 3 unknowns
T1 is at least 96.0 N, unbounded above
T2 is at least 0 N, unbounded above
H = 0 N is fixed all the same`},
		{"no least and no bounds", p2 + `
K = { kind = "link", at = "P", along = "+y" }
T = { kind = "cable", at = "P", along = "+y" }
H1 = { kind = "link", at = "P", along = "+x" }
H2 = { kind = "link", at = "P", along = "+x" }
W = { kind = "weight", at = "P", magnitude = "96 N" }`, `
indeterminate to degree 2: 2 independent equations for 4 unknowns
K is at most 96.0 N, unbounded below
T is at least 0 N, unbounded above
H1 is unbounded
H2 is unbounded`},
		{"senses leave nothing", p2 + `
T1 = { kind = "cable", at = "P", along = "-y" }
T2 = { kind = "cable", at = "P", along = "-y" }
H = { kind = "link", at = "P", along = "+x" }
W = { kind = "weight", at = "P", magnitude = "96 N" }`, `
inadmissible, not possible as drawn
no solution has cables T1 and T2 in tension
H = 0 N is fixed all the same`},
		{"senses leave one value", p2 + `
T1 = { kind = "cable", at = "P", along = "-y" }
T2 = { kind = "cable", at = "P", along = "-y" }
H = { kind = "link", at = "P", along = "+x" }
F = { kind = "force", at = "P", along = "+x", magnitude = "96 N" }`, `
indeterminate to degree 1: 2 independent equations for 3 unknowns
T1 = 0 N is the only admissible value
T2 = 0 N is the only admissible value
H = -96.0 N is fixed all the same`},
		{"indeterminate, partly constrained, and a fixed one slack", p3 + `
T1 = { kind = "cable", at = "P", along = "+z" }
T2 = { kind = "cable", at = "P", along = "+z" }
H = { kind = "cable", at = "P", along = "+x" }
W = { kind = "weight", at = "P", magnitude = "96 N" }
F = { kind = "force", at = "P", along = "+x", magnitude = "7 N" }`, `
inadmissible, not possible as drawn, partly constrained: every solution puts cable H in compression (7.00 N); H goes slack
H = -7.00 N is fixed all the same
nothing holds P along y, and no load acts that way`},
		{"an unknown that balances itself", p2 + `
T1 = { kind = "cable", at = "P", along = "+x" }
T2 = { kind = "cable", at = "P", along = "-x", magnitude = "T1" }
N = { kind = "contact", at = "P", along = "+y" }
W = { kind = "weight", at = "P", magnitude = "100 N" }`, `
indeterminate to degree 1, partly constrained: 1 independent equation for 2 unknowns
T1 is at least 0 N, unbounded above
N = 100 N is fixed all the same
nothing holds P along x, and no load acts that way`},
		{"no equilibrium along an axis", p3 + `
T1 = { kind = "cable", path = "P A" }
T2 = { kind = "cable", path = "P B" }
F = { kind = "force", at = "P", components = "(0, -20, -96) N" }`, `
no equilibrium: the loads excite a motion that nothing resists
nothing holds P along -y: 20.0 N is unbalanced`},
		{"no equilibrium obliquely", p2 + `
T1 = { kind = "cable", at = "P", along = "(4, 3)" }
W = { kind = "weight", at = "P", magnitude = "100 N" }`, `
no equilibrium: the loads excite a motion that nothing resists
nothing holds P along (0.6000, -0.8000): 80.0 N is unbalanced`},
		{"no equilibrium of two particles apart", plane + `
[points]
P = { at = "0, 0", on = "particle" }
Q = { at = "3, 0", on = "particle" }
[lines]
T1 = { kind = "cable", at = "P", along = "+x" }
T2 = { kind = "cable", at = "Q", along = "+x" }
V = { kind = "weight", at = "P", magnitude = "100 N" }
W = { kind = "weight", at = "Q", magnitude = "50 N" }`, `
no equilibrium: the loads excite a motion that nothing resists
nothing holds P along -y: 100 N is unbalanced
nothing holds Q along -y: 50.0 N is unbalanced`},
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
no equilibrium: the loads excite a motion that nothing resists
nothing holds P along +x with Q along +x: 120 N is unbalanced`},
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
no equilibrium: the loads excite a motion that nothing resists
nothing holds P along -z: 100 N is unbalanced
nothing holds Q along +z: 100 N is unbalanced
nothing holds Q along y, and no load acts that way`},
		{"no load", p2 + `
T1 = { kind = "cable", at = "P", along = "(4, 3)" }
T2 = { kind = "cable", at = "P", along = "(-4, 3)" }`, `
determinate: every unknown has one value; no load acts, so each is zero`},
		{"no load, and prestress possible", p2 + `
T1 = { kind = "cable", at = "P", along = "+x" }
T2 = { kind = "cable", at = "P", along = "-x" }`, `
indeterminate to degree 1, partly constrained: 1 independent equation for 2 unknowns
T1 is at least 0 N, unbounded above
T2 is at least 0 N, unbounded above
nothing holds P along y, and no load acts that way`},
		{"resultant", `expect = "resultant"` + "\n" + p3 + `
F1 = { kind = "force", at = "P", components = "(3, 0, 0) N" }
F2 = { kind = "force", at = "P", components = "(0, 4, 0) N" }`, `
resultant: the known forces are added up, and need not balance
the resultant of the known forces on P is 5.00 N along (0.6000, 0.8000, 0.0000)`},
		{"known forces that balance", p3 + `
F1 = { kind = "force", at = "P", components = "(3, 0, 0) N" }
F2 = { kind = "force", at = "P", components = "(-3, 0, 0) N" }`, `
determinate: no unknowns, and the known forces balance`},
		{"known forces that do not, and nothing asked", p3 + `
F1 = { kind = "force", at = "P", components = "(3, 0, 0) N" }
F2 = { kind = "force", at = "P", components = "(-3, 1, 0) N" }`, `
no equilibrium: the loads excite a motion that nothing resists
nothing holds P along +y: 1.00 N is unbalanced
the sheet has no supports and no unknowns. Try: expect = "resultant", if the resultant of the known forces is what is asked`},
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
	if s.Verdict != Unreadable || !slices.Equal(s.Words(), []string{"unreadable: nothing is cut free"}) {
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
		{Check{Kind: CheckUnit, Subject: "T", Value: 2.2e-16, OK: true}, "unit vector T", "|u| = 1 for T, to 2.2e-16"},
		{Check{Kind: CheckUnit, Subject: "T", Value: 0.25}, "unit vector T", "|u| is not 1 for T: it is off by 0.25"},
		{Check{Kind: CheckResidual, Subject: "P", OK: true}, "sum of forces P", "ΣF = 0 on P, exactly"},
		{Check{Kind: CheckResidual, Subject: "P", Value: 1.5e-16, OK: true}, "sum of forces P", "ΣF = 0 on P, to 1.5e-16 of the largest force"},
		{Check{Kind: CheckResidual, Subject: "P", Value: 0.156}, "sum of forces P", "ΣF on P is not 0: 0.16 of the largest force is left"},
		{Check{Kind: CheckMoment, Subject: "P", About: "A", OK: true}, "sum of moments P", "ΣM = 0 on P about A, exactly"},
		{Check{Kind: CheckMoment, Subject: "P", Value: 1e-16, OK: true}, "sum of moments P", "ΣM = 0 on P about a second point, to 1.0e-16 of the largest moment"},
		{Check{Kind: CheckMoment, Subject: "P", About: "A", Value: 0.5}, "sum of moments P", "ΣM on P about A is not 0: 0.5 of the largest moment is left"},
		{Check{Kind: CheckCondition, Value: 0.43, OK: true}, "conditioning", "conditioning costs 0.4 of the 15.9 figures carried"},
		{Check{Kind: CheckCondition, Value: 13.2}, "conditioning", "conditioning costs 13.2 of the 15.9 figures carried, which leaves fewer than the 3 shown"},
		{Check{Kind: CheckSense, Subject: "T", Line: 0, Value: 80, OK: true}, "sense T", "T = 80.0 N: tension"},
		{Check{Kind: CheckSense, Subject: "T", Line: 0, OK: true}, "sense T", "T = 0 N: no force"},
		{Check{Kind: CheckSense, Subject: "T", Line: 0, Value: -80}, "sense T", "T = 80.0 N: compression, which a cable cannot take"},
		{Check{Kind: CheckSense, Subject: "S", Line: 1, Value: -80}, "sense S", "S = 80.0 N: tension, which a strut cannot take"},
		{Check{Kind: CheckSense, Subject: "N", Line: 2, Value: -80}, "sense N", "N = 80.0 N: pull, which a contact cannot take"},
		{Check{Kind: CheckLimit, Subject: "T", Value: 80, Bound: 90, OK: true}, "limit T", "T uses 88.9 % of 90.0 N, a factor of 1.13 left"},
		{Check{Kind: CheckLimit, Subject: "T", Value: 80, Bound: 50}, "limit T", "T exceeds its limit: it uses 160 % of 50.0 N"},
		{Check{Kind: CheckLimit, Subject: "N", Value: 100, Bound: 2, Ranged: true}, "limit N", "N could reach 100 N, 5000 % of its limit of 2.00 N"},
		{Check{Kind: CheckLimit, Subject: "T", Value: 80, Bound: 90, Ranged: true, OK: true}, "limit T", "T uses 88.9 % of 90.0 N, a factor of 1.13 left"},
		{Check{Kind: CheckLimit, Subject: "T", Value: math.Inf(1), Bound: 50}, "limit T", "T has no greatest value to hold against its limit of 50.0 N"},
		{Check{Kind: CheckSenseRange, OK: true}, "senses", "equilibrium is possible: the free unknowns have admissible values"},
		{Check{Kind: CheckBare, Subject: "E"}, "forces E", "no force acts on E, so it is left out"},
		{Check{Kind: CheckSenseRange}, "senses", "the free unknowns have no admissible values"},
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
		{"a limit", lines, []string{"T exceeds its limit: it uses 192 % of 50.0 N"}},
		{"an answer", strings.Replace(lines, "50 N", "500 N", 1) + "[answers]\nT = \"96 N\"\nH = \"1.0 N\"", []string{
			"H = 0 N differs from the reference 1.0 N"}},
		{"an expectation", "expect = \"indeterminate\"" + strings.Replace(lines, "50 N", "500 N", 1), []string{
			"expected indeterminate, and it is determinate: every unknown has one value"}},
		{"an answer without value", strings.Replace(lines, "\"+x\"", "\"+y\"", 1) + "[answers]\nT = \"96 N\"\nH = \"1.0 N\"", []string{
			"indeterminate to degree 1, partly constrained: 2 independent equations for 3 unknowns",
			"T = 96.0 N is fixed all the same", "H is unbounded", "K is unbounded",
			"nothing holds P along x, and no load acts that way",
			"T exceeds its limit: it uses 192 % of 50.0 N",
			"H has no single value, and the reference answer is 1.0 N"}},
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

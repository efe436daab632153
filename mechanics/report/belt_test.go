package report

import (
	"strings"
	"testing"
)

const capstan = `plane = "xy"
figures = 3
[points]
A = { at = "-2, -3", on = "particle" }
C = "0, 0"
B = { at = "2, -3", on = "particle" }
[lines]
R = { kind = "belt", path = "A C B", BELT }
F = { kind = "force", at = "A", along = "dir(C, A)", magnitude = "100 N" }
G = { kind = "force", at = "B", along = "dir(C, B)", magnitude = "PULL" }
`

// The argument of a belt stands in the working: β in radians, e^(μβ), and what follows.
func TestWorkingOfBelts(t *testing.T) {
	for _, c := range []struct{ belt, pull, want string }{
		{`wrap = "200 deg", friction = "0.3", tight = "R2"`, "?", `Friction of belt R
The angle of contact in radians:
β = 200 · π/180 = 3.491 rad
Slip toward R2 is impending, so R2 is the larger tension, with μ the coefficient of static friction:
R2 = R1 e^(μ β) = R1 e^(0.3 · 3.491) = 2.850 R1`},
		{`wrap = "200 deg", friction = "0.3", tight = "R1", magnitude = "300 N, ?"`, "?", `Friction of belt R
The angle of contact in radians:
β = 200 · π/180 = 3.491 rad
Slip toward R1 is impending, so R1 is the larger tension, with μ the coefficient of static friction:
R2 = R1/e^(μ β) = 300/e^(0.3 · 3.49) = 105.3 N`},
		{`friction = "0.3"`, "120 N", `Does belt R slip?
The angle of contact is the angle between the directions of R1 and R2 along the path:
cos β = (0.55470)(0.55470) + (0.83205)(-0.83205) = -0.3846
β = acos (-0.385) = 112.6°
The angle of contact in radians:
β = 112.6 · π/180 = 1.966 rad
The belt does not slip as long as the larger tension is at most e^(μ β) times the smaller one, with μ the coefficient of static friction:
e^(μ β) = e^(0.3 · 1.9656) = 1.803
R2/R1 = 120/100 = 1.2
The ratio needed does not exceed e^(μ β): the belt does not slip.`},
		{`wrap = "200 deg", friction = "0.3"`, "800 N", `R2/R1 = 800/100 = 8
The ratio needed exceeds e^(μ β): the belt slips.`},
		{`wrap = "200 deg", friction = "0.3"`, "?", `Equilibrium leaves the tensions open within
0.3509 R1 ≤ R2 ≤ 2.850 R1`},
		{`wrap = "200 deg", friction = "0.3"`, "285 N", "= 2.8497 R2/R1 = 285/100 = 2.85 The ratio needed exceeds e^(μ β): the belt slips."},
		{`wrap = "200 deg", friction = "0.3"`, "0 N", "R2 is zero, so no friction acts: the belt slips."},
	} {
		text := textWorking(worked(t, strings.NewReplacer("BELT", c.belt, "PULL", c.pull).Replace(capstan)))
		if got, want := strings.Join(strings.Fields(text), " "), strings.Join(strings.Fields(c.want), " "); !strings.Contains(got, want) {
			t.Errorf("%s, %s:\n%s\nwant\n%s", c.belt, c.pull, text, c.want)
		}
	}
}

// The angle of contact of a path at a right angle has the cosine 0, not what rounding leaves of it.
func TestRightAngleOfContact(t *testing.T) {
	at := strings.NewReplacer("-2, -3", "-2, -2", "2, -3", "2, -2", "BELT", `friction = "0.3", tight = "R2"`, "PULL", "?")
	text := textWorking(worked(t, at.Replace(capstan)))
	for _, want := range []string{"cos β = (0.707)(0.707) + (0.707)(-0.707) = 0", "β = acos 0 = 90°", "β = 90 · π/180 = 1.571 rad"} {
		if got := strings.Join(strings.Fields(text), " "); !strings.Contains(got, want) {
			t.Errorf("%q is not in\n%s", want, text)
		}
	}
}

// The relation of the tensions of a belt about to slip is stated once, and counted as such.
func TestRelationOfABeltOnce(t *testing.T) {
	text := textWorking(worked(t, strings.NewReplacer("BELT", `wrap = "200 deg", friction = "0.3", tight = "R2"`, "PULL", "?").Replace(capstan)))
	got := strings.Join(strings.Fields(text), " ")
	if strings.Contains(got, "Relations between the forces") || strings.Count(got, "e^(0.3") != 1 {
		t.Errorf("the relation of belt R is repeated in\n%s", text)
	}
	for _, want := range []string{"5 equations (4 of equilibrium and 1 between the forces) in 3 unknowns: R1, G and R2.", "R2 = 2.850 R1 is substituted"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not in\n%s", want, text)
		}
	}
}

package working

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"trivet/mechanics/doc"
	"trivet/mechanics/statics"
)

// explained tells that an origin says one line, of nothing that there is none of.
func explained(o doc.Origin) (string, bool) {
	if o == nil {
		return "nothing", false
	}
	says := o.Says()
	return says, says != "" && !strings.ContainsAny(says, "\n\r") && !strings.Contains(says, "%!") && !strings.Contains(says, "NaN")
}

// checkOrigins sees that every number of a working says where it comes from, and so does
// every check.
func checkOrigins(t *testing.T, name string, w *Working) {
	t.Helper()
	for _, step := range w.Steps {
		for _, b := range step.Body {
			for _, x := range doc.Numbers(b) {
				if says, ok := explained(x.From); !ok {
					t.Errorf("%s, %s: %s is explained by %q", name, step.Title, x.Text, says)
				}
			}
			c, check := b.(*doc.Check)
			if !check {
				continue
			}
			if says, ok := explained(c.From); !ok {
				t.Errorf("%s, %s: a check is explained by %q", name, step.Title, says)
			}
		}
	}
}

func TestNumbersOfBeltsHaveOrigins(t *testing.T) {
	for _, belt := range []string{originSlips, originSlack, originHolds} {
		for _, pull := range []string{"?", "150 N", "400 N"} {
			for _, unit := range []string{"deg", "gon", "turn", "rad"} {
				text := originCapstan(belt, pull) + "[units]\nangle = \"" + unit + "\"\n"
				checkOrigins(t, text, Build(statics.Solve(read(t, text))))
				square := strings.NewReplacer("-2, -3", "0, -3", `"2, -3"`, `"3, 0"`).Replace(text) // its parts along the axes
				checkOrigins(t, square, Build(statics.Solve(read(t, square))))
			}
		}
	}
}

const originMast = `
[units]
length = "m"
force = "kN"
[points]
O = "0, 0, 0"
T = { at = "0, 0, 12", on = "particle" }
A = "9, 0, 0"
B = "-3, 4, 0"
C = "-3, -4, 0"
[lines]
T1 = { kind = "cable", path = "T A", limit = "5 kN" }
T2 = { kind = "cable", path = "T B", limit = "2 kN" }
T3 = { kind = "cable", path = "T C" }
mast = { kind = "strut", path = "T O", magnitude = "5.6 kN" }
wire = { kind = "force", at = "T", components = "(-0.6, -0.4, 0) kN" }
[answers]
T1 = "2.50 kN"
T3 = "1.4 kN"
`

const originBeam = `
plane = "xy"
[points]
A = { at = "0, 0", on = "beam" }
C = { at = "2, 0", on = "beam" }
B = { at = "6, 0", on = "beam" }
D = { at = "8, 0", on = "beam" }
[bodies]
beam = { weight = "600 N", centre = "(A + B)/2" }
[lines]
P = { kind = "force", at = "C", along = "-y", magnitude = "1 kN" }
[joints]
A = { kind = "pin" }
B = { kind = "roller", normal = "+y", limit = "1.5 kN" }
[couples]
M0 = { on = "beam", magnitude = "900 N m" }
[distributed]
q = { path = "B D", along = "-y", magnitude = "600 N/m" }
`

// originCapstan is a belt round a drum, which 100 N and another pull hold.
func originCapstan(belt, pull string) string {
	return `plane = "xy"
[points]
A = { at = "-2, -3", on = "particle" }
C = "0, 0"
B = { at = "2, -3", on = "particle" }
[lines]
R = { kind = "belt", path = "A C B", friction = "0.3"` + belt + ` }
F = { kind = "force", at = "A", along = "dir(C, A)", magnitude = "100 N" }
G = { kind = "force", at = "B", along = "dir(C, B)", magnitude = "` + pull + `" }
`
}

// Belts whose slip impends, either way, and one that holds or does not.
const (
	originSlips = `, wrap = "200 deg", tight = "R2"`
	originSlack = `, wrap = "200 deg", tight = "R1", magnitude = "100 N, ?"`
	originHolds = ``
)

// What the numbers of a working say, by the step and all numbers there that say it: were two origins
// exchanged, a row would fail.
func TestNumbersSayWhereTheyComeFrom(t *testing.T) {
	for _, c := range []struct{ sheet, step, shows, says string }{
		{originMast, "Forces on particle T", "5.6", "mast: its magnitude, as the sheet gives it"},
		{originMast, "Position and unit vectors", "3", "x of r of T3, from T to C: x of C less x of T = -3.00 - 0 m"},
		{originMast, "Position and unit vectors", "12", "z of r of mast, from T to O: z of O less z of T = 0 - 12.0 m"},
		{originMast, "Position and unit vectors", "3", "x of r of T2, from T to B: x of B less x of T = -3.00 - 0 m"},
		{originMast, "Position and unit vectors", "13", "|r| of T2, from T to B: √((-3.00)² + 4.00² + (-12.0)²) m"},
		{originMast, "Position and unit vectors", "15", "|r| of T1, from T to A: √(9.00² + 0² + (-12.0)²) m"},
		{originMast, "Position and unit vectors", "0.8", "z of u of T1, from T to A: z of r over |r| = -12.0 m / 15.0 m"},
		{originMast, "Force vectors", "0.6", "T1 in the x component of T1: x of u from T to A = (9.00 - 0) m / 15.0 m = 0.6000"},
		{originMast, "Equilibrium of particle T, with numbers", "0.2308", "T2 in ΣFx on T: x of u from T to B = (-3.00 - 0) m / 13.0 m = -0.2308"},
		{originMast, "Equilibrium of particle T, with numbers", "0.6", "b in ΣFx on T: minus the known force, wire -0.600 kN"},
		{originMast, "Equilibrium of particle T, with numbers", "0 0 0", "zero: the body is in equilibrium"},
		{originMast, "Equilibrium of particle T, with numbers", "5.6", "b in ΣFz on T: minus the known force, mast 5.60 kN"},
		{originMast, "Answers", "2.50", "T1 = 2.50 kN: T1, T2 and T3 together from ΣFx on T, ΣFy on T and ΣFz on T"},
		{originMast, "Checks", "1.500", "the x component of T1 in the solution, 1.50 kN"},
		{originMast, "Particle T", "0.308 0.308", "T3 in ΣFy on T: the component of one unit of it along +y = -0.3077"},
		{originMast, "Particle T", "1.3 1.3 1.3 1.3 1.3", "ΣFy solved for T2"},
		{originMast, "Particle T", "0.4 0.6", "wire: its magnitude, as the sheet gives it"},
		{originMast, "Particle T", "2.60", "T2 = 2.60 kN: from ΣFy on T, ΣFx on T and ΣFz on T"},
		{originBeam, "Beam", "6 6", "B in ΣM about A on the beam: the moment of one unit of it, its arm with its sign = 6.00 m"},
		{originBeam, "Beam", "900", "M0: its magnitude, as the sheet gives it"},
		{originBeam, "Beam", "1200 1200", "q: its resultant, the area of the load diagram"},
		{originBeam, "Moments on the beam about A", "1000", "the y component of P: its magnitude times the direction's y, 1000·(-1) N"},
		{originBeam, "Moments on the beam about A", "2000", "the moment of P about A: x·Fy - y·Fx, from A to the point of application, = (2.00·(-1000) - 0·0) N m"},
		{originBeam, "Resultant of the distributed load q", "600 2 1 2 2", "the distributed load q, from its cells and the places of its ends"},
		{originBeam, "Resultant of the distributed load q", "1200", "resultant of q: the area of the load diagram"},
		{originBeam, "Resultant of the distributed load q", "1", "from B to where the resultant of q acts: the centroid of the load diagram"},
		{originBeam, "Resultant of the distributed load q", "7 0", "where the resultant of q acts: the centroid of the load diagram, along its line"},
		{originCapstan(originSlips, "?"), "Friction of belt R", "2.850", "R2, where slip of the belt impends: R1 times e^(μβ) = e^(0.3 · 3.49) = 2.85"},
		{originCapstan(originSlack, "?"), "Friction of belt R", "35.09", "R2, where slip of the belt impends: R1 over e^(μβ) = e^(0.3 · 3.49) = 2.85"},
		{originCapstan(originSlips, "?"), "Friction of belt R", "200 3.491", "β, the angle of contact of the belt R, from its cell"},
		{originCapstan(originHolds, "400 N"), "Does belt R slip?", "1.803", "the largest ratio of the tensions of the belt R, e^(μβ) = e^(0.3 · 1.97) = 1.80"},
		{originCapstan(originHolds, "400 N"), "Does belt R slip?", "4", "the ratio of the tensions of the belt R"},
		{originBeam, "Answers", "0", "Ax from ΣFx on the beam: (b - the others) / its coefficient = 0 N / 1 = 0 N"},
	} {
		said := map[string][]string{}
		for _, step := range Build(statics.Solve(read(t, c.sheet))).Steps {
			if step.Title != c.step {
				continue
			}
			for _, b := range step.Body {
				for _, x := range doc.Numbers(b) {
					said[x.From.Says()] = append(said[x.From.Says()], x.Text)
				}
			}
		}
		if got := strings.Join(said[c.says], " "); got != c.shows {
			t.Errorf("in %q\n%s\nis said by %q, want %q; what is said there:\n%s", c.step, c.says, got, c.shows, strings.Join(slices.Sorted(maps.Keys(said)), "\n"))
		}
	}
}

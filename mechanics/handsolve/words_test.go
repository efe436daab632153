package handsolve

import (
	"strings"
	"testing"

	"trivet/fixtures"
)

// sheets are small problems of the trade; the words of each route are below.
var sheets = map[string]string{
	"beam": `plane = "xy"
[points]
A = { at = "0, 0", on = "beam" }
B = { at = "6, 0", on = "beam" }
C = { at = "2, 0", on = "beam" }
[lines]
P = { kind = "force", at = "C", along = "(3, -4)", magnitude = "500 N" }
[joints]
A = { kind = "pin" }
B = { kind = "roller", normal = "(-3, 4)" }`,
	"ladder": `plane = "xy"
[points]
A = { at = "3, 0", on = "ladder" }
B = { at = "0, 4", on = "ladder" }
[bodies]
ladder = { weight = "200 N", centre = "(A + B)/2" }
[joints]
A = { kind = "rough-surface", normal = "+y", friction = "0.5" }
B = { kind = "smooth-surface", normal = "+x" }`,
	"particle": `up = "+z"
[points]
P = { at = "0, 0, 0", on = "particle" }
A = "2, 1, 3"
B = "-2, 1, 3"
C = "1, -2, 3"
[lines]
T1 = { kind = "cable", path = "P A" }
T2 = { kind = "cable", path = "P B" }
T3 = { kind = "cable", path = "P C" }
W = { kind = "weight", at = "P", magnitude = "600 N" }`,
	"boom": `up = "+z"
[points]
O = { at = "0, 0, 0", on = "boom" }
T = { at = "0, 6, 0", on = "boom" }
M = { at = "0, 3, 0", on = "boom" }
A = "-2, 0, 3"
B = "3, 0, 2"
[lines]
T1 = { kind = "cable", path = "T A" }
T2 = { kind = "cable", path = "M B" }
W = { kind = "weight", at = "T", magnitude = "910 N" }
[joints]
O = { kind = "ball-and-socket" }`,
	"truss": `plane = "xy"
[points]
A = { at = "0, 0", on = "particle" }
B = { at = "8, 0", on = "particle" }
C = { at = "4, 3", on = "particle" }
[lines]
AB = { kind = "link", path = "A B" }
AC = { kind = "link", path = "A C" }
BC = { kind = "link", path = "B C" }
W = { kind = "weight", at = "C", magnitude = "1200 N" }
[joints]
A = { kind = "pin" }
B = { kind = "roller", normal = "+y" }`,
	"frame": `plane = "xy"
[points]
A = { at = "0, 0", on = "left" }
D = { at = "2, 1.5", on = "left" }
C = { at = "4, 3", on = "left right" }
B = { at = "8, 0", on = "right" }
[lines]
load = { kind = "weight", at = "D", magnitude = "1200 N" }
[joints]
A = { kind = "pin" }
B = { kind = "pin" }
C = { kind = "pin" }`,
	"post": `plane = "xy"
[points]
A = { at = "0, 0", on = "post" }
B = { at = "0, 2", on = "post beam" }
C = { at = "3, 2", on = "beam" }
D = { at = "4, 2", on = "beam" }
[lines]
T = { kind = "link", path = "C E" }
W = { kind = "weight", at = "D", magnitude = "300 N" }
[points.E]
at = "3, 5"
[joints]
A = { kind = "pin" }
B = { kind = "pin" }`,
	"parallel": `plane = "xy"
[points]
A = { at = "0, 0", on = "bar" }
B = { at = "4, 0", on = "bar" }
C = { at = "2, 1", on = "bar" }
[lines]
P = { kind = "force", at = "C", along = "(3, -4)", magnitude = "500 N" }
[joints]
A = { kind = "roller", normal = "+y" }
B = { kind = "roller", normal = "+y" }
C = { kind = "slider", axis = "+y" }`,
	"skew": `plane = "xy"
[points]
A = { at = "0, 0", on = "plate" }
B = { at = "6, 0", on = "plate" }
C = { at = "5, 4", on = "plate" }
D = { at = "3, 2", on = "plate" }
E = "-3, 4"
F = "10, 2"
G = "9, 8"
[lines]
T1 = { kind = "link", path = "A E" }
T2 = { kind = "link", path = "B F" }
T3 = { kind = "link", path = "C G" }
W = { kind = "weight", at = "D", magnitude = "100 N" }`,
	"arch": `plane = "xy"
[points]
A = { at = "0, 0", on = "left" }
D = { at = "1, 3", on = "left" }
C = { at = "3, 4", on = "left right" }
E = { at = "5, 3", on = "right" }
B = { at = "7, 1", on = "right" }
[lines]
W1 = { kind = "weight", at = "D", magnitude = "300 N" }
W2 = { kind = "weight", at = "E", magnitude = "500 N" }
[joints]
A = { kind = "pin" }
B = { kind = "pin" }
C = { kind = "pin" }`,
	"cantilever": `plane = "xy"
[points]
A = { at = "0, 0", on = "beam" }
B = { at = "4, 0", on = "beam" }
[joints]
A = { kind = "fixed" }
[lines]
P = { kind = "weight", at = "B", magnitude = "100 N" }
[couples]
M = { on = "beam", magnitude = "50 N m" }`,
	"rope": `plane = "xy"
[points]
A = { at = "0, 0", on = "particle" }
B = { at = "4, 0", on = "particle" }
C = "0, 3"
D = "4, 3"
[lines]
R = { kind = "cable", path = "C A B D" }
N = { kind = "link", path = "A B" }
H = { kind = "force", at = "A", along = "-y", magnitude = "90 N" }
W = { kind = "force", at = "B", along = "-y", magnitude = "90 N" }`,
	"two triangles": `plane = "xy"
[points]
A = { at = "0, 0", on = "particle" }
B = { at = "6, 0", on = "particle" }
C = { at = "3, 2", on = "particle" }
D = { at = "0, 6", on = "particle" }
E = { at = "6, 6", on = "particle" }
F = { at = "4, 4", on = "particle" }
[lines]
AB = { kind = "link", path = "A B" }
AC = { kind = "link", path = "A C" }
BC = { kind = "link", path = "B C" }
DE = { kind = "link", path = "D E" }
DF = { kind = "link", path = "D F" }
EF = { kind = "link", path = "E F" }
AD = { kind = "link", path = "A D" }
BF = { kind = "link", path = "B F" }
CE = { kind = "link", path = "C E" }
H = { kind = "force", at = "D", along = "+x", magnitude = "300 N" }
W = { kind = "force", at = "E", along = "-y", magnitude = "500 N" }
[joints]
A = { kind = "pin" }
B = { kind = "roller", normal = "+y" }`,
	"falling": `plane = "xy"
[points]
P = { at = "0, 0", on = "particle" }
A = "0, 3"
[lines]
T = { kind = "cable", path = "P A" }
W = { kind = "force", at = "P", along = "(1, -4)", magnitude = "90 N" }`,
	"four wires": `up = "+z"
[points]
P = { at = "0, 0, 0", on = "particle" }
A = "2, 1, 3"
B = "-2, 1, 3"
C = "1, -2, 3"
D = "-1, -2, 3"
[lines]
T1 = { kind = "cable", path = "P A" }
T2 = { kind = "cable", path = "P B" }
T3 = { kind = "cable", path = "P C" }
T4 = { kind = "cable", path = "P D" }
W = { kind = "weight", at = "P", magnitude = "600 N" }`,
	"half fixed": `plane = "xy"
[points]
A = { at = "0, 0", on = "beam" }
B = { at = "6, 0", on = "beam" }
C = { at = "2, 0", on = "beam" }
[lines]
P = { kind = "force", at = "C", along = "-y", magnitude = "500 N" }
[joints]
A = { kind = "pin" }
B = { kind = "pin" }`,
}

func sheetOf(t *testing.T, name string) string {
	t.Helper()
	if text, ok := sheets[name]; ok {
		return text
	}
	fx, ok := fixtures.Get(name)
	if !ok {
		t.Fatalf("no sheet %s", name)
	}
	return fx.Text
}

var wanted = map[string]string{
	"arch": `
No sum of forces or of moments here holds one of Bx and By alone, so two equations are solved together: moments about A on the whole structure and moments about C on right.
Forces along x on the whole structure hold Ax alone: Ay acts across it. Bx is known by now.
Forces along y on the whole structure hold Ay alone. By is known by now.
Forces along x on left hold Cx alone: Cy acts across it. Ax is known by now.
Forces along y on left hold Cy alone. Ay is known by now.
`,
	"beam": `
Moments about A on beam hold B alone: Ax and Ay pass through A.
Forces along x on beam hold Ax alone: Ay acts across it. B is known by now.
Forces along y on beam hold Ay alone. B is known by now.
`,
	"boom": `
Moments about the axis OA on boom hold T2 alone: T1, Ox, Oy and Oz meet the axis.
Moments about the axis through O along z on boom hold T1 alone: Ox and Oy meet the axis, Oz is parallel to the axis. T2 is known by now.
Moments about the axis through T along x on boom hold Oz alone: Ox is parallel to the axis, Oy meets the axis. T2 is known by now.
Forces along x on boom hold Ox alone: Oy acts across it. T1 and T2 are known by now.
Forces along y on boom hold Oy alone. T1 and T2 are known by now.
`,
	"cantilever": `
Moments about A on beam hold MAz alone: Ax and Ay pass through A.
Forces along x on beam hold Ax alone: Ay acts across it.
Forces along y on beam hold Ay alone.
`,
	"falling": `
there is no equilibrium, so no value keeps it
`,
	"four wires": `
no unknown has a single value
`,
	"frame": `
Forces act on right at B and C only, so it is a two-force member: they lie along BC. S_right is its force, tension positive, in place of Bx, By, Cx and Cy.
Moments about A on the whole structure hold S_right alone: Ax and Ay pass through A.
The force in right has the components Bx, By, Cx and Cy along BC.
Moments about B on the whole structure hold Ay alone: Ax passes through B.
Forces along x on the whole structure hold Ax alone. S_right is known by now.
`,
	"half fixed": `
Moments about A on beam hold By alone: Ax, Ay and Bx pass through A.
Forces along y on beam hold Ay alone: Ax and Bx act across it. By is known by now.
`,
	"ladder": `
Moments about A on ladder hold B alone: AN and AF pass through A.
Forces along y on ladder hold AN alone: AF acts across it.
Forces along x on ladder hold AF alone. B is known by now.
`,
	"parallel": `
Forces along x on bar hold C alone: A and B act across it.
Moments about A on bar hold B alone: A passes through A. C is known by now.
Forces along y on bar hold A alone. B is known by now.
`,
	"particle": `
Forces across T1 and T3 at P hold T2 alone: T1 and T3 act across it.
Forces across T1 and T2 at P hold T3 alone: T1 acts across it.
Forces along x at P hold T1 alone. T2 and T3 are known by now.
`,
	"post": `
Forces act on post at A and B only, so it is a two-force member: they lie along AB. S_post is its force, tension positive, in place of Ax, Ay, Bx and By. Ax and Bx act across it and are zero.
Moments about B on beam hold T alone: S_post passes through B.
Forces along y on beam hold S_post alone. T is known by now.
The force in post has the components Ay and By along AB.
`,
	"rope": `
Forces along y at A hold R alone: N acts across it.
Forces along x at A hold N alone. R is known by now.
`,
	"skew": `
Moments about the point (1.636, -2.182) m, where the lines of T1 and T2 meet, on plate hold T3 alone: T1 and T2 pass through it.
Moments about A on plate hold T2 alone: T1 passes through A. T3 is known by now.
Forces along x on plate hold T1 alone. T2 and T3 are known by now.
`,
	"two triangles": `
Moments about B on the whole structure hold Ay alone: Ax and B pass through B.
Forces along x on the whole structure hold Ax alone: B acts across it.
Forces along y on the whole structure hold B alone. Ay is known by now.
Cut through AD, BF and CE and keep the part with D, E and F. Moments about the point (0, 12) m, where the lines of AD and BF meet, hold CE alone: AD and BF pass through it.
Forces across AC at C hold BC alone: AC acts across it. CE is known by now.
Forces along y at E hold EF alone: DE acts across it. CE is known by now.
Forces across DF at F hold BF alone: DF acts across it. EF is known by now.
Forces along x at B hold AB alone. BC and BF are known by now.
Forces along x at A hold AC alone: AD acts across it. AB and Ax are known by now.
Forces along y at A hold AD alone. AC and Ay are known by now.
Forces along y at D hold DF alone: DE acts across it. AD is known by now.
Forces along x at D hold DE alone. DF is known by now.
Cut through AD, BF and CE and keep the part with D, E and F. Moments about the point (4.2, 3.6) m, where the lines of BF and CE meet, hold AD alone: BF and CE pass through it.
Cut through AD, BF and CE and keep the part with D, E and F. Moments about the point (0, -2) m, where the lines of AD and CE meet, hold BF alone: AD and CE pass through it.
`,
	"truss": `
Moments about A on the whole structure hold B alone: Ax and Ay pass through A.
Forces along x on the whole structure hold Ax alone: Ay acts across it.
Forces along y on the whole structure hold Ay alone. B is known by now.
Forces along y at A hold AC alone: AB acts across it. Ay is known by now.
Forces along x at A hold AB alone. AC and Ax are known by now.
Forces along x at B hold BC alone. AB is known by now.
`,
	"planar-truss": `
Moments about A on the whole structure hold D alone: Ax and Ay pass through A.
Forces along x on the whole structure hold Ax alone: Ay acts across it.
Forces along y on the whole structure hold Ay alone. D is known by now.
Forces along y at C hold CF alone: BC and CD act across it.
Forces along y at D hold FD alone: CD acts across it. D is known by now.
Forces along x at D hold CD alone. FD is known by now.
Forces along x at C hold BC alone. CD is known by now.
Forces along y at A hold AE alone: AB acts across it. Ay is known by now.
Forces along x at A hold AB alone. AE and Ax are known by now.
Forces along x at E hold EF alone: BE acts across it. AE is known by now.
Forces along y at E hold BE alone. AE is known by now.
Forces along y at B hold BF alone. BE is known by now.
Cut through AB, EF and BE and keep the part with A and E. Moments about E hold AB alone: EF and BE pass through E. Ax and Ay are known by now.
Cut through BC, FD and CF and keep the part with C and D. Moments about F hold BC alone: FD and CF pass through F. D is known by now.
Cut through AB, EF and BE and keep the part with A and E. Moments about B hold EF alone: AB and BE pass through B. Ay is known by now.
Cut through AB, EF and BE and keep the part with A and E. Forces along y hold BE alone: AB and EF act across it. Ay is known by now.
Cut through BC, EF and BF and keep the part with C, D and F. Forces along y hold BF alone: BC and EF act across it. D is known by now.
`,
	"bent-rod-three-bearings": `
No sum of forces or of moments here holds one of Bx and Cx alone: what leaves one of them alone on rod is a screw, and neither a direction nor an axis, so two equations are solved together: forces along x on rod and moments about the axis through A that meets the lines of Bz and Cy on rod.
Moments about the axis through B along y on rod hold Az alone: Ay and Cy are parallel to the axis, Bz meets the axis. Cx is known by now.
Moments about the axis through B along z on rod hold Ay alone: Bz is parallel to the axis, Cy meets the axis. Cx is known by now.
Forces along z on rod hold Bz alone: Cy acts across it. Az is known by now.
Forces along y on rod hold Cy alone. Ay is known by now.
`,
	"hand-press": `
Moments about O on lever hold S alone: Ox and Oy pass through O.
Forces along x on lever hold Ox alone: Oy acts across it. S is known by now.
Forces along y on lever hold Oy alone. S is known by now.
Forces along y at Q hold work alone: guide acts across it. S is known by now.
Forces along x at Q hold guide alone. S is known by now.
`,
	"shaft-in-bearings": `
Moments about the axis through A along x on shaft hold F alone: Ax is parallel to the axis, Ay, Az, By and Bz meet the axis.
Moments about the axis through A along y on shaft hold Bz alone: Ax and Az meet the axis, Ay and By are parallel to the axis. F is known by now.
Moments about the axis through A along z on shaft hold By alone: Ax and Ay meet the axis, Az is parallel to the axis. F is known by now.
Moments about the axis through P along z on shaft hold Ay alone: Ax meets the axis, Az is parallel to the axis. F and By are known by now.
Forces along x on shaft hold Ax alone: Az acts across it.
Forces along z on shaft hold Az alone. F and Bz are known by now.
`,
}

func TestWords(t *testing.T) {
	for name := range sheets {
		if _, ok := wanted[name]; !ok {
			t.Errorf("no words for %s", name)
		}
	}
	for name, want := range wanted {
		s := solveText(t, sheetOf(t, name))
		r := Find(s)
		follow(t, s, &r)
		var lines []string
		for _, list := range [][]Step{r.Steps, r.Sections} {
			for i := range list {
				lines = append(lines, r.Text(s.Problem, r.Says(s.Problem, &list[i])))
			}
		}
		if r.Why != "" {
			lines = append(lines, r.Why)
		}
		if got := strings.Join(lines, "\n"); got != strings.TrimSpace(want) {
			t.Errorf("%s:\n%s\nwant\n%s", name, got, want)
		}
	}
}

package working_test

import (
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/mechanics/doc"
	"trivet/mechanics/working"
)

// handSheets are small problems of the trade; the words of their hand solutions are below.
var handSheets = map[string]string{
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
	"idle corner": `plane = "xy"
asked = "BC"
[points]
A = { at = "0, 0", on = "particle" }
B = { at = "4, 0", on = "particle" }
C = { at = "0, 3", on = "particle" }
D = { at = "4, 3", on = "particle" }
[lines]
AB = { kind = "link", path = "A B" }
AC = { kind = "link", path = "A C" }
BC = { kind = "link", path = "B C" }
BD = { kind = "link", path = "B D" }
CD = { kind = "link", path = "C D" }
P = { kind = "force", at = "C", along = "+x", magnitude = "100 N" }
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

var handWords = map[string]string{
	"arch": `
Simultaneous equations for Bx and By
  No sum of forces or moments contains only one of Bx and By, so two equations are solved simultaneously: ΣM_A on the whole frame and ΣM_C on the right part.
Whole frame
  On the whole frame the internal forces cancel in pairs, so only the external forces remain.
  ΣFx on the whole frame contains only Ax: Ay has no component in that direction. Bx is already known.
  ΣFy on the whole frame contains only Ay. By is already known.
Left part
  ΣFx on the left part contains only Cx: Cy has no component in that direction. Ax is already known.
  ΣFy on the left part contains only Cy. Ay is already known.
`,
	"beam": `
Beam
  ΣM_A on the beam contains only B: Ax and Ay pass through A.
  ΣFx on the beam contains only Ax: Ay has no component in that direction. B is already known.
  ΣFy on the beam contains only Ay. B is already known.
`,
	"boom": `
Boom
  ΣM_OA on the boom, about the axis OA, contains only T2: T1, Ox, Oy and Oz intersect the axis.
  ΣM_Oz on the boom, about the z axis through O, contains only T1: Ox and Oy intersect the axis; Oz is parallel to the axis. T2 is already known.
  ΣM_Tx on the boom, about the x axis through T, contains only Oz: Ox is parallel to the axis; Oy intersects the axis. T2 is already known.
  ΣFx on the boom contains only Ox: Oy has no component in that direction. T1 and T2 are already known.
  ΣFy on the boom contains only Oy. T1 and T2 are already known.
`,
	"cantilever": `
Beam
  ΣM_A on the beam contains only MAz: Ax and Ay pass through A.
  ΣFx on the beam contains only Ax: Ay has no component in that direction.
  ΣFy on the beam contains only Ay.
`,
	"idle corner": `
Zero-force members
  No load acts at joint D. It joins two members that are not collinear, so neither carries a force: BD = CD = 0.
Joint C
  ΣFx on joint C contains only BC: AC has no component in that direction. CD is already known.
`,
	"frame": `
Two-force member: right part
  Forces act on the right part at B and C only, so it is a two-force member and they lie along BC: S_right, positive in tension, replaces Bx, By, Cx and Cy.
Whole frame
  On the whole frame the internal forces cancel in pairs, so only the external forces remain.
  ΣM_A on the whole frame contains only S_right: Ax and Ay pass through A.
  ΣM_B on the whole frame contains only Ay: Ax and S_right pass through B.
  ΣFx on the whole frame contains only Ax. S_right is already known.
Components of the force in the right part
`,
	"half fixed": `
Beam
  ΣM_A on the beam contains only By: Ax, Ay and Bx pass through A.
  ΣFy on the beam contains only Ay: Ax and Bx have no component in that direction. By is already known.
`,
	"ladder": `
Ladder
  ΣM_A on the ladder contains only B: AN and AF pass through A.
  ΣFy on the ladder contains only AN: AF has no component in that direction.
  ΣFx on the ladder contains only AF. B is already known.
`,
	"parallel": `
Bar
  ΣFx on the bar contains only C: A and B have no component in that direction.
  ΣM_A on the bar contains only B: A passes through A. C is already known.
  ΣFy on the bar contains only A. B is already known.
`,
	"particle": `
Particle P
  Take components along n = u_T1 × u_T2/|u_T1 × u_T2| = (0, -0.9487, 0.3162), perpendicular to T1 and T2; only T3 remains.
  No sum of forces along an axis contains only one of T1 and T2, so they are found by substitution. T3 is already known. ΣFx on particle P relates T1 to T2.
  With T1 substituted, ΣFy on particle P contains only T2.
`,
	"post": `
Two-force member: post
  Forces act on the post at A and B only, so it is a two-force member and they lie along AB: S_post, positive in tension, replaces Ax, Ay, Bx and By. Ax and Bx are perpendicular to it and are zero.
Beam
  ΣM_B on the beam contains only T: S_post passes through B.
  ΣFy on the beam contains only S_post. T is already known.
Components of the force in the post
`,
	"rope": `
Joint A
  ΣFy on joint A contains only R: N has no component in that direction.
  ΣFx on joint A contains only N. R is already known.
`,
	"skew": `
Plate
  Take moments about the point (1.636, -2.182) m, where the lines of action of T1 and T2 intersect; only T3 remains.
  ΣM_A on the plate contains only T2: T1 passes through A. T3 is already known.
  ΣFx on the plate contains only T1. T2 and T3 are already known.
`,
	"truss": `
Whole truss
  On the whole truss the internal forces cancel in pairs, so only the external forces remain.
  ΣM_A on the whole truss contains only B: Ax and Ay pass through A.
  ΣFx on the whole truss contains only Ax: Ay has no component in that direction.
  ΣFy on the whole truss contains only Ay. B is already known.
Joint A
  ΣFy on joint A contains only AC: AB has no component in that direction. Ay is already known.
  ΣFx on joint A contains only AB. AC and Ax are already known.
Joint B
  ΣFx on joint B contains only BC. AB is already known.
`,
	"two triangles": `
Whole truss
  On the whole truss the internal forces cancel in pairs, so only the external forces remain.
  ΣM_B on the whole truss contains only Ay: Ax and B pass through B.
  ΣFx on the whole truss contains only Ax: B has no component in that direction.
  ΣFy on the whole truss contains only B. Ay is already known.
Section through AD, BF and CE
  Cut AD, BF and CE and consider the part with joints D, E and F.
  Take moments about the point (0, 12) m, where the lines of action of AD and BF intersect; only CE remains.
Joint C
  Take components along n = (0.5547, -0.8321), perpendicular to AC; only BC remains. CE is already known.
Joint B
  ΣFy on joint B contains only BF: AB has no component in that direction. BC and B are already known.
  ΣFx on joint B contains only AB. BC and BF are already known.
Joint F
  Take components along n = (0.4472, 0.8944), perpendicular to DF; only EF remains. BF is already known.
Joint A
  ΣFx on joint A contains only AC: AD has no component in that direction. AB and Ax are already known.
  ΣFy on joint A contains only AD. AC and Ay are already known.
Joint D
  ΣFy on joint D contains only DF: DE has no component in that direction. AD is already known.
  ΣFx on joint D contains only DE. DF is already known.
`,
	"planar-truss": `
Whole truss
  On the whole truss the internal forces cancel in pairs, so only the external forces remain.
  ΣM_A on the whole truss contains only D: Ax and Ay pass through A.
  ΣFx on the whole truss contains only Ax: Ay has no component in that direction.
  ΣFy on the whole truss contains only Ay. D is already known.
Joint C
  ΣFy on joint C contains only CF: BC and CD have no component in that direction.
Joint D
  ΣFy on joint D contains only FD: CD has no component in that direction. D is already known.
  ΣFx on joint D contains only CD. FD is already known.
Joint C
  ΣFx on joint C contains only BC. CD is already known.
Joint A
  ΣFy on joint A contains only AE: AB has no component in that direction. Ay is already known.
  ΣFx on joint A contains only AB. AE and Ax are already known.
Joint E
  ΣFx on joint E contains only EF: BE has no component in that direction. AE is already known.
  ΣFy on joint E contains only BE. AE is already known.
Joint B
  ΣFy on joint B contains only BF. BE is already known.
`,
	"bent-rod-three-bearings": `
Simultaneous equations for Bx and Cx
  No direction and no axis leaves only one of Bx and Cx on the rod, so two equations are solved simultaneously: ΣFx on the rod and ΣM on the rod about the axis through A that intersects the lines of action of Bz and Cy.
Rod
  ΣM_By on the rod, about the y axis through B, contains only Az: Ay and Cy are parallel to the axis; Bz intersects the axis. Cx is already known.
  ΣM_Bz on the rod, about the z axis through B, contains only Ay: Bz is parallel to the axis; Cy intersects the axis. Cx is already known.
  ΣFz on the rod contains only Bz: Cy has no component in that direction. Az is already known.
  ΣFy on the rod contains only Cy. Ay is already known.
`,
	"hand-press": `
Lever
  ΣM_O on the lever contains only S: Ox and Oy pass through O.
Particle Q
  ΣFy on particle Q contains only work: guide has no component in that direction. S is already known.
  ΣFx on particle Q contains only guide. S is already known.
`,
	"shaft-in-bearings": `
Shaft
  ΣM_Ax on the shaft, about the x axis through A, contains only F: Ax is parallel to the axis; Ay, Az, By and Bz intersect the axis.
  ΣM_Ay on the shaft, about the y axis through A, contains only Bz: Ax and Az intersect the axis; Ay and By are parallel to the axis. F is already known.
  ΣM_Az on the shaft, about the z axis through A, contains only By: Ax and Ay intersect the axis; Az is parallel to the axis. F is already known. press = 0.36 F is substituted.
  ΣM_Pz on the shaft, about the z axis through P, contains only Ay: Ax intersects the axis; Az is parallel to the axis. F and By are already known. press = 0.36 F is substituted.
  ΣFx on the shaft contains only Ax: Az has no component in that direction.
  ΣFz on the shaft contains only Az. F and Bz are already known.
`,
	"truss-by-section": `
Whole truss
  On the whole truss the internal forces cancel in pairs, so only the external forces remain.
  ΣM_A on the whole truss contains only D: Ax and Ay pass through A.
  ΣFx on the whole truss contains only Ax: Ay has no component in that direction.
  ΣFy on the whole truss contains only Ay. D is already known.
Section through BC, GE and GC
  Cut BC, GE and GC and consider the part with joints A, B and G.
  ΣM_C on this part contains only GE: BC and GC pass through C. Ay is already known.
  ΣFy on this part contains only GC: BC and GE have no component in that direction. Ay is already known.
  ΣFx on this part contains only BC. GE, GC and Ax are already known.
`,
	"roof-truss-in-the-wind": `
Zero-force members
  No load acts at joint B. AB and BD are collinear there, so the third member carries no force: BC = 0.
  No load acts at joint C. BC is already known to be zero. AC and CE are collinear there, so the other member carries no force: CD = 0.
Whole truss
  On the whole truss the internal forces cancel in pairs, so only the external forces remain.
  ΣM_G on the whole truss contains only A: Gx and Gy pass through G.
  ΣFx on the whole truss contains only Gx: Gy has no component in that direction.
  ΣFy on the whole truss contains only Gy. A is already known.
Section through BD, CE and CD
  Cut BD, CE and CD and consider the part with joints A, B and C.
  ΣFy on this part contains only BD: CE has no component in that direction. CD and A are already known.
  ΣFx on this part contains only CE. BD and CD are already known.
`,
	"block-on-incline": `
Particle P
  Take components along n = u_T = (0.86603, 0.5), perpendicular to N; only T remains.
  Take components along n = u_N = (-0.5, 0.86603), perpendicular to T; only N remains.
`,
}

// refused are the sheets without a hand solution, and why.
var refused = map[string]string{
	"falling":    "There is no equilibrium, so the equations have no solution.",
	"four wires": "No unknown that is asked for has a single value.",
}

// Where there is no hand solution the working has no step of it, and says why where it is looked for.
func TestWhyThereIsNoHandSolution(t *testing.T) {
	for name, want := range refused {
		s, steps := handSteps(t, handSheets[name])
		if got := working.Build(s).NoHandSolution(); len(steps) > 0 || got != want {
			t.Errorf("%s: %d steps, %q", name, len(steps), got)
		}
	}
}

// sentences are the titles and sentences of steps, without the equations.
func sentences(steps []working.Step) string {
	var out []string
	for _, step := range steps {
		out = append(out, step.Title)
		for _, line := range doc.Lines(step.Body) {
			if strings.HasSuffix(line, ".") {
				out = append(out, "  "+line)
			}
		}
	}
	return strings.Join(out, "\n")
}

// Each sentence names what is considered and why one unknown is alone.
func TestWordsOfHandSolutions(t *testing.T) {
	for name := range handSheets {
		if _, ok := handWords[name]; !ok && refused[name] == "" {
			t.Errorf("no words for %s", name)
		}
	}
	for name, want := range handWords {
		text, ok := handSheets[name]
		if !ok {
			fx, found := fixtures.Get(name)
			if !found {
				t.Fatalf("no sheet %s", name)
			}
			text = fx.Answered()
		}
		_, steps := handSteps(t, text)
		if got := sentences(steps); got != strings.TrimSpace(want) {
			t.Errorf("%s:\n%s\nwant%s", name, got, want)
		}
	}
}

package grade_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"trivet/mechanics/grade"
)

// solve3 solves three equations a·x = b by Cramer's rule.
func solve3(a [3][3]float64, b [3]float64) (x [3]float64) {
	det := func(m [3][3]float64) float64 {
		return m[0][0]*(m[1][1]*m[2][2]-m[1][2]*m[2][1]) - m[0][1]*(m[1][0]*m[2][2]-m[1][2]*m[2][0]) + m[0][2]*(m[1][0]*m[2][1]-m[1][1]*m[2][0])
	}
	for j := range x {
		m := a
		for i := range m {
			m[i][j] = b[i]
		}
		x[j] = det(m) / det(a)
	}
	return x
}

// written writes answers to four figures, as a student does.
func written(names string, values ...float64) string {
	out := ""
	for i, name := range strings.Fields(names) {
		out += fmt.Sprintf("%s %#.4g ", name, values[i])
	}
	return out
}

// The equations of some starting sheets by hand, each with room for one mistake.

// beam: ΣFx, ΣM about A, ΣFy of the beam of 600 N with 500 N at a slope of 4 in 3 at C.
func beam(fx, moment, fy float64) string {
	b := moment / 6
	return written("Ax B Ay", -fx, b, fy-b)
}

// incline: T = W sin, N = W cos.
func incline(weight, sin, cos float64) string { return written("T N", weight*sin, weight*cos) }

// mast: u1 = (9, 0, -12)/l1, u2 = (-3, 4, -12)/l2, u3 = (-3, -4, -12)/l3, and the loads on
// the right; signs of terms and the loads may be wrong.
func mast(l [3]float64, change func(a *[3][3]float64, b *[3]float64)) string {
	a := [3][3]float64{{9, -3, -3}, {0, 4, -4}, {-12, -12, -12}}
	for i := range a {
		for j := range a {
			a[i][j] /= l[j]
		}
	}
	b := [3]float64{0.6, 0.4, -5.6}
	if change != nil {
		change(&a, &b)
	}
	x := solve3(a, b)
	return written("T1 T2 T3", x[:]...)
}

// hung: the ring of 380 N on TA to (2, 1, 2), TB to (-1, 2, 2), TC to (0, -3, 4).
func hung(l [3]float64, weight float64, change func(a *[3][3]float64, b *[3]float64)) string {
	a := [3][3]float64{{2 / l[0], -1 / l[1], 0}, {1 / l[0], 2 / l[1], -3 / l[2]}, {2 / l[0], 2 / l[1], 4 / l[2]}}
	b := [3]float64{0, 0, weight}
	if change != nil {
		change(&a, &b)
	}
	x := solve3(a, b)
	return written("TA TB TC", x[:]...)
}

// plate: ΣMx, ΣMy about A, ΣFz of the plate on three wires, with 1200 N at (2, 1.5) and 480 N at (3, 1).
func plate(mx, my, fz float64) string {
	t3 := mx / 3
	t2 := (my - 2*t3) / 4
	return written("T1 T2 T3", fz-t2-t3, t2, t3)
}

// overhang: ΣM about A and ΣFy of the overhanging beam, with what heap is said to be.
func overhang(moment, fy, heap, at float64) string {
	b := moment / 6
	return written("Ay B heap.size heap.at", fy-b, b, heap, at)
}

// ladder: ΣFy, ΣM about A, ΣFx.
func ladder(fy, moment float64) string {
	b := moment / 4
	return written("AN AF B", fy, -b, b)
}

// ring: (c1, c2; s1, s2) are the components of T1, to the left, and T2 of the light.
func ring(c [4]float64, weight float64) string {
	t2 := weight / (c[2]*c[1]/c[0] + c[3])
	return written("T1 T2", t2*c[1]/c[0], t2)
}

// press: ΣM about O of the lever, the arm of the link and its share upwards on the ram.
func press(moment, arm, up float64) string {
	s := moment / arm
	return written("S work guide", s, up*s, -0.6*s)
}

// rib: the snow, where it acts, and the sign at the tip.
func rib(snow, at, sign float64) string {
	return written("Ay MA snow.size snow.at", snow+sign, snow*at+12*sign, snow, at)
}

// rightGuys are the lengths of the mast's guys, and of the cables of the hung load.
var rightGuys, rightCables = [3]float64{15, 13, 13}, [3]float64{3, 3, 5}

// made are answers of one mistake each, computed by making it, and what has to be said.
var made = []struct{ kind, sheet, typed, want string }{
	{"a load left out of ΣM", "beam-on-supports", beam(300, 1800, 1000), "missing in ΣM about A on the beam: P"},
	{"a load left out of ΣFy", "beam-on-supports", beam(300, 2400, 600), "missing in ΣFy on the beam: P"},
	{"a load left out everywhere", "beam-on-supports", beam(0, 1800, 600), "as if P were left out"},
	{"the sign of one moment", "beam-on-supports", beam(300, 1200, 1000), "sign of P in ΣM about A"},
	{"the sense of a load", "beam-on-supports", beam(-300, 1200, 200), "as if P acted the other way"},
	{"sine and cosine, everywhere", "beam-on-supports", beam(400, 1800+450, 900), "as if sine and cosine of P were exchanged"},
	{"the component along another axis, in ΣM", "beam-on-supports", beam(300, 1800+450, 1000), "component of P in ΣM about A on the beam is the one along another axis"},
	{"the whole force in a moment", "beam-on-supports", beam(300, 1800+750, 1000), "the arm of P in ΣM about A on the beam is the distance to the point"},
	{"the whole force in ΣFy", "beam-on-supports", beam(300, 2400, 1100), "the whole force P stands in ΣFy"},
	{"an arm from another support", "beam-on-supports", beam(300, 1800+400*4.5, 1000), "the arm of P in ΣM about A on the beam is measured from another point"},
	{"×1000", "beam-on-supports", beam(300e3, 1800+600e3, 600+400e3), "P were 1000 times"},
	{"/1000", "beam-on-supports", beam(0.3, 1800.6, 600.4), "P were a thousandth"},
	{"factor 2 of a load", "beam-on-supports", beam(600, 3000, 1400), "P were twice"},
	{"newtons taken as kilograms", "beam-on-supports", beam(300, 600*9.81*3+600, 600*9.81+400), "as if the weight of beam were multiplied by g"},
	{"a decimal slip", "beam-on-supports", written("Ax B Ay", -300, 40, 600), "B: the decimal point is misplaced"},
	{"a decimal slip of another", "beam-on-supports", written("Ax B Ay", -300, 400, 60), "Ay: the decimal point is misplaced"},
	{"degrees as radians", "block-on-incline", incline(196.2, math.Sin(30), math.Cos(30)), "as if degrees were taken as radians"},
	{"g missing", "block-on-incline", incline(20, 0.5, math.Sqrt(0.75)), "as if 20 kg were 20 N"},
	{"g twice", "block-on-incline", incline(196.2*9.81, 0.5, math.Sqrt(0.75)), "as if 20 kg were multiplied by g twice"},
	{"sine and cosine of the incline", "block-on-incline", incline(196.2, math.Sqrt(0.75), 0.5), "as if sine and cosine of theta were exchanged"},
	{"g of 10", "block-on-incline", incline(200, 0.5, math.Sqrt(0.75)), "as if g were 10 m/s^2"},
	{"unit vectors not normalised", "mast-top", mast([3]float64{1, 1, 1}, nil), "as if the vectors r were taken for unit vectors"},
	{"one unit vector not normalised", "mast-top", mast([3]float64{1, 13, 13}, nil), "as if the vector r of T1 were taken for its unit vector"},
	{"lengths without z", "mast-top", mast([3]float64{9, 5, 5}, nil), "z were left out of the lengths"},
	{"a length without y", "hanging-load", hung([3]float64{math.Sqrt(8), 3, 5}, 380, nil), "y were left out of the length of TA"},
	{"a load left out of ΣFx", "mast-top", mast(rightGuys, func(_ *[3][3]float64, b *[3]float64) { b[0] = 0 }), "missing in ΣFx on T: wire"},
	{"a load left out of ΣFz", "mast-top", mast(rightGuys, func(_ *[3][3]float64, b *[3]float64) { b[2] = 0 }), "as if mast were left out"},
	{"the sign of a component of a load", "mast-top", mast(rightGuys, func(_ *[3][3]float64, b *[3]float64) { b[1] = -0.4 }), "sign of wire in ΣFy"},
	{"the sign of a cable's component", "hanging-load", hung(rightCables, 380, func(a *[3][3]float64, _ *[3]float64) { a[1][2] *= -1 }), "sign of TC in ΣFy"},
	{"a cable left out of one equation", "hanging-load", hung(rightCables, 380, func(a *[3][3]float64, _ *[3]float64) { a[1][0] = 0 }), "missing in ΣFy on R: TA"},
	{"the whole force of a cable", "hanging-load", hung(rightCables, 380, func(a *[3][3]float64, _ *[3]float64) { a[2][2] = 1 }), "the whole force TC stands in ΣFz"},
	{"newtons taken as kilograms, of all", "hanging-load", hung(rightCables, 380*9.81, nil), "factor g too many: a force taken for a mass"},
	{"newtons for kilonewtons", "hanging-load", hung(rightCables, 0.38, nil), "wrong unit: the number is right in kN"},
	{"half of one answer", "hanging-load", "TA 90 TB 180 TC 125", "TC: half the right value"},
	{"two digits of an answer", "hanging-load", "TA 90 TB 180 TC 205", "TC: two digits are exchanged"},
	{"the intensity for the resultant", "overhanging-beam", overhang(2*4.5+36, 2+4.5, 4.5, 2), "as if the intensity of floor were its resultant"},
	{"a distributed load over a wrong length", "overhanging-beam", overhang(2*6*3+36, 12+4.5, 4.5, 2), "as if floor extended from A to B"},
	{"a triangle as a rectangle", "overhanging-beam", overhang(81+9*8, 18+9, 9, 2), "as if the intensity of heap were its greatest all along"},
	{"a distributed load at a wrong place", "overhanging-beam", overhang(81+4.5*7, 22.5, 4.5, 1), "the resultant of heap acted as far from the other end"},
	{"a distributed load left out of ΣM", "overhanging-beam", overhang(81, 22.5, 4.5, 2), "missing in ΣM about A on the beam: heap"},
	{"friction as μN", "ladder-on-rough-floor", written("AN AF B", 900, -450, 450), "slip does not impend at A, so its friction is not μN"},
	{"the distance as an arm", "ladder-on-rough-floor", ladder(900, 300+700*2.5), "the arm of painter in ΣM about A on the ladder is the distance to the point"},
	{"a weight left out of ΣM", "ladder-on-rough-floor", ladder(900, 700*1.5), "missing in ΣM about A on the ladder: the weight of ladder"},
	{"force on the other body", "frame-of-two-members", written("Ax Ay Bx By Cx Cy", 400, 900, 400, -300, -400, 300), "as if the forces at C had the same sense on both bodies"},
	{"a load in a moment left out, in space", "plate-on-three-wires", plate(1800, 3840, 1680), "missing in ΣMx about A on the plate: box"},
	{"coordinates exchanged", "plate-on-three-wires", plate(1800+480*3, 2400+480, 1680), "as if x and y of K were exchanged"},
	{"an arm from another wire", "plate-on-three-wires", plate(1800+480*2, 3840, 1680), "the arm of box in ΣMx about A on the plate is measured from another point"},
	{"sine and cosine of a cable", "traffic-light", ring([4]float64{5. / 13, 4. / 5, 12. / 13, 3. / 5}, 280), "as if sine and cosine of T1 were exchanged"},
	{"the whole tension in ΣFy", "traffic-light", ring([4]float64{12. / 13, 4. / 5, 5. / 13, 1}, 280), "the whole force T2 stands in ΣFy on R"},
	{"the sign of a tension in ΣFy", "traffic-light", ring([4]float64{12. / 13, 4. / 5, -5. / 13, 3. / 5}, 280), "sign of T1 in ΣFy"},
	{"the component along another axis in ΣFx", "traffic-light", ring([4]float64{12. / 13, 3. / 5, 5. / 13, 3. / 5}, 280), "the component of T2 in ΣFx on R is the one along another axis"},
	{"a cable in the plane not normalised", "traffic-light", ring([4]float64{12, 4. / 5, 5, 3. / 5}, 280), "as if the vector r of T1 were taken for its unit vector"},
	{"the distance from a pin that is not the centre", "hand-press", press(150*750, 120, 0.8), "the arm of press in ΣM about O on the lever is measured from another point"},
	{"the whole force of a link in ΣM", "hand-press", press(150*900, 150, 0.8), "the arm of S in ΣM about O on the lever is the distance to the point"},
	{"the other component of a link in ΣFy", "hand-press", press(150*900, 120, 0.6), "the component of S in ΣFy on Q is the one along another axis"},
	{"a load twice", "hand-press", press(300*900, 120, 0.8), "as if press were twice as large"},
	{"a parabola in the middle", "canopy-cantilever", rib(360, 6, 100), "as if the resultant of snow acted in the middle"},
	{"a parabola as a rectangle", "canopy-cantilever", rib(1080, 9, 100), "as if the intensity of snow were its greatest all along"},
	{"a parabola from the other end", "canopy-cantilever", rib(360, 3, 100), "as if the resultant of snow acted as far from the other end"},
	{"a force without a load", "canopy-cantilever", rib(360, 9, 0), "as if hang were left out"},
	{"a load on the wrong side", "canopy-cantilever", rib(360, 9, -100), "as if hang acted the other way"},
	{"a couple as a force", coupleSheet, written("Ay B", 500+900-1900./6, 1900./6), "couple: it has no part in a sum of forces"},
	{"a couple left out", coupleSheet, written("Ay B", 500-1000./6, 1000./6), "as if the couple K were left out"},
	{"a couple the other way", coupleSheet, written("Ay B", 500-100./6, 100./6), "as if the couple K turned the other way"},
}

// coupleSheet is a beam of 6 m with 500 N at 2 m and a couple of 900 N m, clockwise.
const coupleSheet = `plane = "xy"
up = "+y"
asked = "Ay B"
[points]
A = { at = "0, 0", on = "beam" }
C = { at = "2, 0", on = "beam" }
B = { at = "6, 0", on = "beam" }
[lines]
P = { kind = "force", at = "C", along = "-y", magnitude = "500 N" }
[joints]
A = { kind = "pin" }
B = { kind = "roller", normal = "+y" }
[couples]
K = { on = "beam", about = "-z", magnitude = "900 N m" }
`

const (
	// leastNamed is how many of the mistakes that are made have to be named, and mostWrongly
	// how many may be named as another one.
	leastNamed  = 60
	mostWrongly = 1
)

// Answers to another student's variant are told to be so, and those to the sheet that was
// varied; alone neither is known.
func TestAnotherVariant(t *testing.T) {
	sheet := func(load string) string {
		return strings.Replace(start(t, "beam-on-supports"), `value = "500 N"`, `value = "`+load+`"`, 1)
	}
	base, _ := keyOf(t, sheet("500 N"), grade.Rule{})
	ada, _ := keyOf(t, sheet("300 N"), grade.Rule{})
	ben, _ := keyOf(t, sheet("700 N"), grade.Rule{})
	grade.Variants(map[string]*grade.Key{"beam.toml": base, "ada.toml": ada, "ben.toml": ben, "unread.toml": nil})
	for _, c := range []struct{ typed, want string }{
		{beam(0.6*700, 1800+0.8*700*1.5, 600+0.8*700), "Ax, B, Ay: as if the sheet were ben.toml"},
		{beam(0.6*500, 1800+0.8*500*1.5, 600+0.8*500), "Ax, B, Ay: as if the sheet were beam.toml"},
		{beam(0.6*300, 1800+0.8*300*1.5, 600+0.8*300), ""},
	} {
		marks, notes := ada.Mark(answers(strings.Fields(c.typed)...))
		if got := strings.Join(grade.Student{Marks: marks, Notes: notes}.Remarks(), "; "); got != c.want {
			t.Errorf("%s: %q, want %q", c.typed, got, c.want)
		}
	}
}

// Mistakes that are made in equations by hand, apart from what is tested, are named.
func TestMistakesMadeByHand(t *testing.T) {
	named, wrongly := 0, 0
	for _, c := range made {
		text := c.sheet
		if !strings.Contains(text, "\n") {
			text = start(t, c.sheet)
		}
		key, _ := keyOf(t, text, grade.Rule{})
		marks, notes := key.Mark(answers(strings.Fields(c.typed)...))
		got := strings.Join(grade.Student{Marks: marks, Notes: notes}.Remarks(), "; ")
		other := len(notes) > 0
		for _, m := range marks {
			other = other || !m.Verdict.OK() && m.Verdict != grade.Wrong && m.Verdict != grade.Follows && m.Verdict != grade.Close
		}
		switch {
		case strings.Contains(got, c.want):
			named++
		case other:
			wrongly++
			t.Logf("%s: %s: %s", c.kind, c.typed, got)
		default:
			t.Logf("%s is not named: %s: %s", c.kind, c.typed, got)
		}
	}
	t.Logf("of %d mistakes %d are named and %d wrongly", len(made), named, wrongly)
	if named < leastNamed || wrongly > mostWrongly {
		t.Errorf("of %d mistakes %d are named, not %d; and %d wrongly, not %d at most", len(made), named, leastNamed, wrongly, mostWrongly)
	}
}

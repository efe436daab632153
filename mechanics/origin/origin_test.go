package origin

import (
	"fmt"
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// mast is held at its top T by three guys, under a mast force of 5.6 kN up and a wire.
// r runs from T: T1 (9, 0, -12) of 15 m, T2 (-3, 4, -12) and T3 (-3, -4, -12) of 13 m. So
//
//	ΣFx: 0.6 T1 - 3/13 T2 - 3/13 T3 = 0.6
//	ΣFy: 4/13 T2 - 4/13 T3 = 0.4
//	ΣFz: -0.8 T1 - 12/13 T2 - 12/13 T3 = -5.6
//
// T2 = T3 + 1.3 by the second; with S = T2 + T3 the others are 0.6 T1 - 3/13 S = 0.6
// and 0.8 T1 + 12/13 S = 5.6: four times the first and the second make 3.2 T1 = 8,
// T1 = 2.5, S = 3.9, T2 = 2.6, T3 = 1.3 kN. The forces along x: 1.5, -0.6, -0.3, -0.6.
const mast = `
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

// beam is 8 m long on a pin at A and a roller at B, 6 m off, with 600 N of its own in
// the middle of AB, 1 kN at C, 600 N/m over the 2 m of BD and 900 N m. Moments about
// A: 6 B = 600·3 + 1000·2 + 1200·7 - 900 = 11 300, B = 1883 N, and Ay = 2800 - B = 917 N.
const beam = `
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

// fork is a load of 120 N at D on three cables in a plane, along (-3, 4)/5, (0, 1) and
// (3, 4)/5: T1 = T3 and 1.6 T1 + T2 = 120. So T1 lies between 0, where it goes slack,
// and 75 N, where T2 does; T2 between 0 and 120 N, where T1 and T3 do.
const fork = `
plane = "xy"
[points]
D = { at = "0, 0", on = "particle" }
A = "-3, 4"
B = "0, 4"
C = "3, 4"
[lines]
T1 = { kind = "cable", path = "D A", limit = "100 N" }
T2 = { kind = "cable", path = "D B" }
T3 = { kind = "cable", path = "D C" }
W = { kind = "force", at = "D", along = "-y", magnitude = "120 N" }
`

// hoist is a block D of 300 N on a rope over a pulley: the rope runs A D B with one
// tension, and a strut S, tied to it as 2*R, pushes from C along (0, 3).
const hoist = `
plane = "xy"
[points]
D = { at = "0, 0", on = "particle" }
A = "-3, 4"
B = "3, 4"
C = "0, -3"
[lines]
R = { kind = "cable", path = "A D B" }
S = { kind = "strut", path = "C D", magnitude = "2*R" }
W = { kind = "force", at = "D", along = "-y", magnitude = "300 N" }
`

// space is a boom on a ball-and-socket at O, 4 m along x, with a cable at its tip
// T along (-4, 0, 3)/5: about y it turns 0·(-0.8) - 4·0.6 = -2.4 m.
const space = `
[points]
O = { at = "0, 0, 0", on = "boom" }
T = { at = "4, 0, 0", on = "boom" }
A = "0, 0, 3"
[lines]
K = { kind = "cable", path = "T A" }
W = { kind = "force", at = "T", along = "-z", magnitude = "300 N" }
[joints]
O = { kind = "ball-and-socket" }
`

func solved(t *testing.T, text string) *statics.Solution {
	t.Helper()
	of, err := sheet.Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	p, errs := problem.Read(of)
	if len(errs) > 0 {
		t.Fatal(errs)
	}
	return statics.Solve(p)
}

func says(t *testing.T, from doc.Origin, want string) {
	t.Helper()
	if got := from.Says(); got != want {
		t.Errorf("says\n%s\nwant\n%s", got, want)
	}
}

// What acts on two bodies is explained on each: away from the other where a contact
// pushes, towards it where a force does, and opposite where it has a direction.
func TestEntriesOfWhatActsOnTwo(t *testing.T) {
	s := solved(t, `plane = "xy"
[points]
a = { at = "0, 0", on = "particle" }
b = { at = "3, 4", on = "particle" }
[lines]
N = { kind = "contact", path = "a b" }
F = { kind = "force", path = "a b" }
V = { kind = "force", path = "a b", along = "+x" }
`)
	says(t, Entry(s, 0, 0), "N in ΣFx on a: x of u from b to a = (0 - 3.00) m / 5.00 m = -0.6000")
	says(t, Entry(s, 2, 0), "N in ΣFx on b: x of u from a to b = (3.00 - 0) m / 5.00 m = 0.6000")
	says(t, Entry(s, 1, 1), "F in ΣFy on a: y of u from a to b = (4.00 - 0) m / 5.00 m = 0.8000")
	says(t, Entry(s, 3, 1), "F in ΣFy on b: y of u from b to a = (0 - 4.00) m / 5.00 m = -0.8000")
	says(t, Entry(s, 0, 2), "V in ΣFx on a: it acts along +x = 1")
	says(t, Entry(s, 2, 2), "V in ΣFx on b: it acts along -x = -1")
}

// Every number of every sheet that comes with the program says where it comes from.
func TestEveryNumberIsExplained(t *testing.T) {
	for _, f := range fixtures.Starts() {
		s := solved(t, f.Answered())
		explained := func(what string, from doc.Origin) {
			t.Helper()
			got := from.Says()
			for _, fault := range []string{"NaN", "%!", "  ", "\n"} {
				if got == "" || strings.Contains(got, fault) {
					t.Errorf("%s: %s is explained by %q", f.Name, what, got)
					return
				}
			}
		}
		for j := range s.X {
			name := s.X[j].Name
			explained("the value of "+name, Value(s, j))
			explained("the least "+name, End(s, j, false))
			explained("the greatest "+name, End(s, j, true))
			for i := range s.System.Rows {
				explained("the coefficient of "+name+" in "+Row(s.Problem, &s.System.Rows[i]), Entry(s, i, j))
			}
		}
		for i := range s.System.Rows {
			row := Row(s.Problem, &s.System.Rows[i])
			explained("the right side of "+row, Known(s, i))
			explained("the residual of "+row, Residual(s, i))
			explained("the share of "+row, Share(s, i))
		}
		for k := range s.Checks {
			explained(fmt.Sprint("check ", k), Check(s, k))
		}
		for k := range s.Answers {
			explained(fmt.Sprint("answer ", k), Answer(s, k))
		}
	}
}

func TestEntries(t *testing.T) {
	s := solved(t, mast)
	says(t, Entry(s, 0, 1), "T2 in ΣFx on T: x of u from T to B = (-3.00 - 0) m / 13.0 m = -0.2308")
	says(t, Entry(s, 2, 0), "T1 in ΣFz on T: z of u from T to A = (0 - 12.0) m / 15.0 m = -0.8000")
	says(t, Entry(s, 1, 0), "T1 in ΣFy on T: 0, it has no component along y")
	s = solved(t, beam)
	says(t, Entry(s, 1, 2), "B in ΣFy on the beam: it acts along +y = 1")
	says(t, Entry(s, 2, 2), "B in ΣM about A on the beam: x·uy - y·ux, from A to the point of application, = (6.00·1 - 0·0) m = 6.0000")
	says(t, Entry(s, 2, 0), "Ax in ΣM about A on the beam: 0, its line of action passes through A")
	s = solved(t, hoist)
	says(t, Entry(s, 1, 0), "R in ΣFy on D: y of u from D to B = (4.00 - 0) m / 5.00 m + y of u from D to A = (4.00 - 0) m / 5.00 m + 2·y of u from C to D = 2·(0 - (-3.00)) m / 3.00 m = 1.6000 + 2.0000 = 3.6000")
	s = solved(t, space)
	says(t, Entry(s, 4, 0), "K in ΣMy about O on the boom: z·ux - x·uz, from O to the point of application, = (0·(-0.8000) - 4.00·0.6000) m = -2.4000")
	says(t, Entry(s, 3, 0), "K in ΣMx about O on the boom: 0, its line of action intersects the axis along x through O or is parallel to it")
}

func TestRows(t *testing.T) {
	s := solved(t, mast)
	says(t, Known(s, 0), "b in ΣFx on T: minus the known force, wire -0.600 kN")
	says(t, Known(s, 2), "b in ΣFz on T: minus the known force, mast 5.60 kN")
	s.Residuals[0] = statics.Residual{Value: -3e-13, Relative: 2e-16} // as of a largest force of 1.5 kN
	says(t, Residual(s, 0), "the residual A x - b of ΣFx on T, the sum of T1 1.50 kN, T2 -0.600 kN, T3 -0.300 kN and wire -0.600 kN: -3.0e-16 kN")
	says(t, Share(s, 0), "the residual of ΣFx on T, -3.0e-16 kN, over the largest force, 1.50 kN")
	s.Residuals[0] = statics.Residual{}
	says(t, Share(s, 0), "the residual of ΣFx on T is zero")
	s = solved(t, beam)
	says(t, Known(s, 0), "b in ΣFx on the beam: no known force has a part in it")
	says(t, Known(s, 2), "b in ΣM about A on the beam: minus the sum of the known moments, P -2000 N m, M0 900 N m, q -8400 N m and weight of beam -1800 N m")
}

func TestValues(t *testing.T) {
	s := solved(t, mast)
	says(t, Value(s, 0), "T1 = 2.50 kN: T1, T2 and T3 together from ΣFx on T, ΣFy on T and ΣFz on T")
	s = solved(t, beam)
	says(t, Value(s, 2), "B from ΣM about A on the beam: (b - the others) / its coefficient = 11 300 N m / 6.0000 m = 1880 N")
	says(t, Value(s, 1), "Ay from ΣFy on the beam: (b - the others) / its coefficient = (2800 - 1·1880) N / 1 = 917 N")
	s = solved(t, fork)
	says(t, Value(s, 0), "T1: least value 0 N, where T1 and T3 go slack; greatest value 75.0 N, where T2 goes slack")
	says(t, End(s, 1, true), "T2: greatest value 120 N, where T1 and T3 go slack")
}

func TestLegs(t *testing.T) {
	s := solved(t, mast)
	says(t, Segment(s, 1, 0, R, 0), "x of r of T2, from T to B: x of B less x of T = -3.00 - 0 m")
	says(t, Segment(s, 0, 0, R, 2), "z of r of T1, from T to A: z of A less z of T = 0 - 12.0 m")
	says(t, Segment(s, 1, 0, Length, 0), "|r| of T2, from T to B: √((-3.00)² + 4.00² + (-12.0)²) m")
	says(t, Segment(s, 0, 0, U, 0), "x of u of T1, from T to A: x of r over |r| = 9.00 m / 15.0 m")
	says(t, Segment(s, 0, 0, Unit, 0), "|u| of T1, from T to A: √(0.6000² + 0² + (-0.8000)²), 1 for a unit vector")
	s = solved(t, beam)
	says(t, Segment(s, 0, 0, U, 1), "y of u of P: its direction as the sheet gives it, as a unit vector")
}

func TestChecks(t *testing.T) {
	s := solved(t, mast)
	for k := range s.Checks {
		c := &s.Checks[k]
		switch {
		case c.Kind == statics.CheckLimit && c.Subject == "T1":
			says(t, Check(s, k), "2.50 kN of 5.00 kN (limit of T1) = 50.0 %")
		case c.Kind == statics.CheckLimit:
			says(t, Check(s, k), "2.60 kN of 2.00 kN (limit of T2) = 130 %")
		case c.Kind == statics.CheckSense && c.Subject == "T1":
			says(t, Check(s, k), "the sign of T1 = 2.50 kN: positive is tension, and a cable has no compression")
		case c.Kind == statics.CheckMoment:
			c.Value = 2e-16
			says(t, Check(s, k), "moments of all forces on T about O, taken at the far ends of their lines, over the largest = 2.0e-16, up to 1.0e-08 is rounding")
		case c.Kind == statics.CheckUnit && c.Subject == "T1":
			says(t, Check(s, k), "√(ux² + uy² + uz²) of T1 less 1 = 0, up to 1.0e-12 is rounding")
		}
	}
	says(t, Answer(s, 0), "T1: computed 2.5000 kN less reference 2.50 kN = 0 kN; 0.00500 kN is half a unit of the last place printed")
	says(t, Answer(s, 1), "T3: computed 1.3000 kN less reference 1.4 kN = -0.100 kN; 0.0500 kN is half a unit of the last place printed")
	s = solved(t, fork)
	for k := range s.Checks {
		if s.Checks[k].Kind == statics.CheckLimit {
			says(t, Check(s, k), "the largest magnitude, 75.0 N of 100 N (limit of T1) = 75.0 %")
		}
	}
}

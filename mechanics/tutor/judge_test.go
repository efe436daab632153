package tutor

import (
	"strings"
	"testing"
)

// What a student is told, line after line.
func TestSittings(t *testing.T) {
	type said struct {
		entries string // one, or several that are told the same
		verdict Verdict
		kind    MistakeKind // "" where none is named
		says    string
	}
	for _, c := range []struct {
		name, sheet string
		lines       []said
	}{
		{"values are held against the student's own equations", "mast-top", []said{
			{"ΣFx T: 0.6 T1 - 0.231 T2 - 0.231 T3 = 0.6", Right, "", "This is ΣFx on T."},
			{"ΣFy T: 0.308 T2 + 0.308 T3 = 0.4", Wrong, "sign", "Look at the sign of T3 in ΣFy on T."},
			{"ΣFz T: 0.8 T1 + 0.923 T2 + 0.923 T3 = 5.6", Right, "", "This is ΣFz on T."},
			{"T1 = 2.5", Right, "", "T1 is right."},
			{"T2 = 2.00", Wrong, "", "T2 is not right. Put it into one of your equations."},
			{"T3 = -0.70", Wrong, "carried", "T3 follows from your equations; the equation 0.308 T2 + 0.308 T3 = 0.4 is wrong."},
			{"T1 = 2500 kN", Wrong, "factor-1000", "T1 is off by a factor of 1000: look at its unit."},
			{"T1 = -2.5", Wrong, "sign", "Look at the sign of T1: in which sense is it positive?"},
			{"T1 = 2.54", Imprecise, "figures", "T1 is close, but not right to the digits typed: give three significant figures, and carry more on the way."},
			{"T1 = 2.6", Wrong, "", "With your values ΣFx on T is off by 0.660 kN and ΣFz on T is off by 2.32 kN."},
		}},
		{"the unit, the sign and the components of a value", "mast-top", []said{
			{"T1 = 2.5 N; T1 = 11.1; T1 = 0.562 kN", Wrong, "units", "T1 is right in another unit than the one typed: look at the unit."},
			{"T1 = 2500", Wrong, "factor-1000", "T1 is off by a factor of 1000: look at its unit."},
			{"|r T1| = 49.2 m", Wrong, "units", "T1.length is right in another unit than the one typed: look at the unit."},
			{"|r T1| = 15 mm", Wrong, "", "Write an equation first: a sum of the forces on one body."},
		}},
		{"an angle in radians", "mast-top", []said{
			{"angle(T1, T2) = 53.1 rad; angle(T1, T2) = 0.927", Wrong, "units", "angle(T1, T2) is right in another unit than the one typed: look at the unit."},
		}},
		{"a magnitude", "beam-on-supports", []said{
			{"A.size = -671 N", Wrong, "magnitude", "A.size is a magnitude: give it without a sign."},
			{"A.size = 600 N", Wrong, "magnitude", "A.size is the magnitude of the force, not one of its components."},
			{"A.size = 671 N", Right, "", "A.size is right."},
		}},
		{"values are put into the sums that are entered, and into no others", "beam-on-supports", []said{
			{"ΣFx: Ax + 0.6 P = 0", Right, "", "This is ΣFx on the beam."},
			{"ΣFy: Ay + B = 1000", Right, "", "This is ΣFy on the beam."},
			{"Ax = -300", Right, "", "Ax is right."},
			{"Ay = 600", Right, "", "Ay is right."},
			{"B = 500", Wrong, "", "With your values ΣFx on the beam holds, ΣFy on the beam is off by 100 N."},
			{"ΣM A: 6 B = 2400", Right, "", "This is ΣM about A on the beam."},
			{"B = 510", Wrong, "", "With your values ΣFx on the beam holds, ΣFy on the beam is off by 110 N and ΣM about A on the beam is off by 660 N m."},
		}},
		{"a value that follows from a wrong equation", "beam-on-supports", []said{
			{"ΣM A: 6 B = 1800", Wrong, "missing-force", "A force on the body is missing in ΣM about A on the beam: P."},
			{"ΣFy: Ay + B = 1000", Right, "", "This is ΣFy on the beam."},
			{"B = 300", Wrong, "carried", "B follows from your equations; the equation 6 B = 1800 is wrong."},
			{"Ay = 700", Wrong, "carried", "Ay follows from your equations; B is wrong."},
		}},
		{"guessing is no practice", "beam-on-supports", []said{
			{"Ax = 1; Ax = 2; Ax = 3; Ax = 4; Ax = 5", Wrong, "", "Ax is not right. Try: an equation first, then its value"},
			{"Ax = 6", Wrong, "", "Write an equation first: a sum of the forces on one body."},
			{"ΣFx: Ax + 0.6 P = 0", Right, "", "This is ΣFx on the beam."},
			{"Ax = 7", Wrong, "", "With your values ΣFx on the beam is off by 307 N."},
		}},
		{"guesses are counted for the body that they concern", "frame-of-two-members", []said{
			{"ΣFx right: Bx - Cx = 0", Right, "", "This is ΣFx on the right part."},
			{"Ax = 1", Wrong, "", "Ax is not right. Put it into one of your equations."},
			{"cut left: Ax", Wrong, "missing-force", "The free body of the left part is not complete: 4 forces are missing."},
			{"ΣFx left: Ax - Cx = 0", Wrong, "other-body", "Cx in ΣFx on the left part has the sense that it has on the other body; by Newton's third law the two have opposite senses."},
			{"ΣFx left: Ax = 0", Wrong, "missing-force", "A force on the body is missing in ΣFx on the left part: Cx."},
			{"Ax = 2", Wrong, "", "Ax is not right. Put it into one of your equations."},
			{"Ax = 3", Wrong, "", "Write an equation first: a sum of the forces on one body."},
			{"Bx = 3", Wrong, "", "Bx is not right. Put it into one of your equations."},
			{"ΣFx left: Ax + Cx = 0", Right, "", "This is ΣFx on the left part."},
			{"Ax = 4", Wrong, "", "Ax is not right. Put it into one of your equations."},
		}},
		{"an equation that follows from those before, one that is another, one that is rounded", "mast-top", []said{
			{"ΣFz T: 0.8 T1 + 0.923 T2 + 0.923 T3 = 5.6", Right, "", "This is ΣFz on T."},
			{"4 T1 + 4.62 T2 + 4.62 T3 = 28 kN", Dependent, "", "This is ΣFz on T. It follows from your earlier equations, so it adds nothing new."},
			{"ΣFx T: 0.8 T1 + 0.923 T2 + 0.923 T3 = 5.6", Wrong, "", "This equation is true, but it is ΣFz on T, not ΣFx on T."},
			{"ΣFy T: 0.31 T2 - 0.31 T3 = 0.4", Imprecise, "figures", "The terms of ΣFy on T are right, but a coefficient is not precise enough: give three significant figures."},
		}},
		{"mistakes of sums", "beam-on-supports", []said{
			{"ΣFy beam: Ay + B - 400 = 0", Wrong, "missing-force", "A force on the body is missing in ΣFy on the beam: the weight of beam."},
			{"ΣFy beam: Ay + B - 600 - 500 = 0", Wrong, "whole-force", "The whole force P stands in ΣFy on the beam in place of its component."},
			{"ΣFy beam: Ay + B - 600 - 300 = 0", Wrong, "other-axis", "The component of P in ΣFy on the beam is the one along another axis."},
			{"ΣFy beam: Ay - B - 600 - 400 = 0", Wrong, "sign", "Look at the sign of B in ΣFy on the beam."},
			{"ΣM A beam: 6 B - 1.5*500 - 3*600 = 0", Wrong, "arm-distance", "The arm of P in ΣM about A on the beam is the distance to the point, not the perpendicular distance to the line of action."},
		}},
		{"a typed angle is as precise as its digits", signBeam, []said{
			{"ΣFx beam: Ax - BC cos 36.87° = 0", Right, "", "This is ΣFx on the beam."},
			{"ΣFx: Ax - BC cos 36.9° = 0; ΣFx: Ax - BC cos(37) = 0; ΣFx: Ax = BC cos 37 deg; ΣFx: Ax + BC cos(180° - 37°) = 0; ΣFx: Ax = BC cos(atan 0.75)", Dependent, "", "This is ΣFx on the beam. It follows from your earlier equations, so it adds nothing new."},
			{"ΣFx: Ax - BC cos 40° = 0", Wrong, "", "Compare BC in ΣFx on the beam with the figure."},
			{"ΣFx: Ax - BC sin 36.9° = 0", Wrong, "sine-cosine", "Sine and cosine are exchanged in the component of BC in ΣFx on the beam."},
			{"u BC = (-cos 37°, sin 37°)", Right, "", "u BC is right."},
		}},
		{"close is two per cent of each term, and no more", signBeam, []said{
			{"ΣM A: 2.44 BC = 2040; ΣM A: 2.36 BC = 2040; ΣM A: 4.88 BC = 4080; ΣM A: 2.44 BC = 2000", Imprecise, "figures", "The terms of ΣM about A on the beam are right, but a coefficient is not precise enough: give three significant figures."},
			{"ΣM A: 2.46 BC = 2040; ΣM A: 2.34 BC = 2040", Wrong, "", "Compare BC in ΣM about A on the beam with the figure."},
		}},
		{"a free body that is hardly begun is not completed for the student", signBeam, []said{
			{"cut beam:", Wrong, "missing-force", "The free body of the beam is not complete: 5 forces are missing."},
			{"cut beam: Ax Ay", Wrong, "missing-force", "The free body of the beam is not complete: 3 forces are missing."},
			{"cut beam: Ax Ay BC", Wrong, "missing-force", "The free body of the beam is not complete: 2 forces are missing, among them sign."},
			{"cut beam: Ax Ay BC sign", Wrong, "missing-force", "The free body of the beam is not complete: 1 force is missing: boxes."},
			{"0 = 0; ΣFx: 0 = 0; ΣFy beam: 600 + 240 = 840; 3 kN = 2 kN", Wrong, "", "It contains none of the unknown forces, so it is not an equation for one of them."},
		}},
		{"an equation, a free body, a vector and a moment are work, whatever was guessed before", signBeam, []said{
			{"BC = 1; BC = 2; BC = 3; BC = 4; BC = 5", Wrong, "", "BC is not right. Try: an equation first, then its value"},
			{"cut beam: Ax Ay BC sign", Wrong, "missing-force", "The free body of the beam is not complete: 1 force is missing: boxes."},
			{"u BC = (0.8, -0.6)", Wrong, "reversed", "It points the other way: r runs from the first point to the second."},
			{"M A BC = -2.4 BC", Wrong, "r-cross-f", "It is r × F, in that order: look at the sign."},
			{"ΣFx: Ax + 0.8 BC = 0", Wrong, "sign", "Look at the sign of BC in ΣFx on the beam."},
			{"BC = 6; 2*BC = 3; indeterminate", Wrong, "", "Write an equation first: a sum of the forces on one body."},
		}},
		{"a moment by the name of its force", signBeam, []said{
			{"M A BC = 2.4 m*BC; M A BC = 2.4 BC; M A BC = 3/5*4 BC; M A BC = 4 BC sin 36.9°; M A BC = 2040; M A BC = 2.04 kN m", Right, "", "M A BC is right."},
			{"M A sign = -3 sign; M A sign = -3 m*sign; M A sign = -1800", Right, "", "M A sign is right."},
			{"M A BC = 3.2 BC", Wrong, "", "M A BC is not right. Look at the arm and at the force."},
			{"M A BC = 4 BC", Wrong, "arm-distance", "The arm is the perpendicular distance to the line of action, not the distance to the point of application."},
			{"M A BC = 2.4 Ax", Unreadable, "", "2.4 Ax is not a multiple of BC. Try: a value in N m, or an arm times BC"},
			{"M A BC = 2040 N", Unreadable, "", "expected a moment, but 2040 N is a force. Try: a value in N m"},
		}},
		{"a moment of a support as it is asked for", worktop, []said{
			{"cut shelf: Ax Ay MA P", Right, "", "The free body of the shelf is complete."},
			{"ΣM A: MA - 2*50 = 0", Right, "", "This is ΣM about A on the shelf."},
			{"ΣM A: MAz - 2*50 = 0", Dependent, "", "This is ΣM about A on the shelf. It follows from your earlier equations, so it adds nothing new."},
			{"MA = 100 N m", Right, "", "MA is right."},
		}},
		{"friction that is tied to the normal force acts on the free body as well", "impending-slip", []said{
			{"cut B: P N G", Wrong, "missing-force", "The free body of B is not complete: 1 force is missing: F."},
			{"cut B: P N F G", Right, "", "The free body of B is complete."},
		}},
		{"friction where slip impends at a joint", "block-about-to-slip", []said{
			{"cut A: AN P W", Wrong, "missing-force", "The free body of A is not complete: 1 force is missing: AF."},
			{"cut A: AN AF P W", Right, "", "The free body of A is complete."},
		}},
		{"a force that has no component in a direction", signBeam, []said{
			{"ΣFx beam: Ax - 0.8 BC - 600 = 0; ΣFx beam: Ax - 0.8 BC - sign = 0; ΣFx: Ax = 0.8 BC + 600", Wrong, "extra-force", "sign has no part in ΣFx on the beam."},
		}},
		{"an equation of one unknown is the sum that it is as it stands", signBeam, []said{
			{"4.8 BC = 4080", Right, "", "It follows from equilibrium."},
			{"2.4 BC = 2040", Right, "", "This is ΣM about A on the beam."},
			{"ΣM A: 2.4 BC - 240*1 - 600*3 = 0", Dependent, "", "This is ΣM about A on the beam. It follows from your earlier equations, so it adds nothing new."},
		}},
		{"verdicts", signBeam, []said{
			{"indeterminate", Wrong, "", "That is not so. Count the unknowns and the equations."},
			{"BC slack", Wrong, "", "That is not so. Look at the sense that BC can have."},
			{"no equilibrium", Wrong, "", "That is not so. Look at the motions that the supports prevent."},
			{"inadmissible", Wrong, "", "That is not so. Look at the senses that each cable and each contact can have."},
			{"tips about A", Wrong, "", "That is not so. Look at where the normal force acts."},
		}},
		{"two typed angles", hung, []said{
			{"ΣFx C: -T1 cos 55.22° + T2 cos 23.20° = 0", Right, "", "This is ΣFx on C."},
			{"ΣFy C: T1 sin 55.2° + T2 sin 23.2° = 180*9.81", Right, "", "This is ΣFy on C."},
			{"ΣFy C: T1 cos 55.2° + T2 sin 23.2° = 180*9.81; ΣFy C: T1 cos 55.2° + T2 cos 23.2° = 180*9.81", Wrong, "sine-cosine", "Sine and cosine are exchanged in the component of T1 in ΣFy on C."},
			{"ΣFy C: T1 sin 55.2° - T2 sin 23.2° = 180*9.81", Wrong, "sign", "Look at the sign of T2 in ΣFy on C."},
		}},
		{"free bodies and vectors", "mast-top", []said{
			{"cut T: T1 T2 T3", Wrong, "missing-force", "The free body of T is not complete: 2 forces are missing, among them mast."},
			{"cut T: T1 pushes T2 T3 mast wire", Wrong, "sign", "A cable pulls: look at T1."},
			{"u T1 = (9, 0, -12)", Wrong, "not-normalised", "A unit vector is r divided by its length."},
			{"u T1 = (-0.6, 0, 0.8)", Wrong, "reversed", "It points the other way: r runs from the first point to the second."},
			{"|r T1| = 9 m", Wrong, "missing-coordinate", "A coordinate is missing from the length of r."},
		}},
		{"friction that is not at its limit", "ladder-on-rough-floor", []said{
			{"ΣFx ladder: B - 0.5 AN = 0; AF = 0.5 AN; AF = mu*AN; AF = -0.5 AN; AF = 450 N", Wrong, "friction-limit", "Slip does not impend at A, so its friction is not μN: leave it an unknown."},
			{"AF = 0.7 AN", Wrong, "", "Write an equation first: a sum of the forces on one body."},
			{"AF = -0.375 AN", Right, "", "It follows from equilibrium."},
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := begin(t, c.sheet)
			for _, want := range c.lines {
				for entry := range strings.SplitSeq(want.entries, "; ") {
					if j := p.Enter(entry); j.Verdict != want.verdict || kindOf(j) != want.kind || j.Says != want.says {
						t.Errorf("%s\n  %s %q %s\nwant\n  %s %q %s", entry, j.Verdict, kindOf(j), j.Says, want.verdict, want.kind, want.says)
					}
				}
			}
		})
	}
}

// begin is the practice of a sheet that comes with the program, or of a text.
func begin(t testing.TB, sheet string) *Practice {
	if strings.Contains(sheet, "\n") {
		return practice(t, sheet)
	}
	return practise(t, sheet)
}

// signBeam is a beam that a cable holds, at 3 m to 4 m: BC = 850 N, Ax = 680 N, Ay = 330 N.
const signBeam = `
plane = "xy"
up    = "+y"

[units]
length = "m"
force  = "N"

[points]
A = { at = "0, 0", on = "beam" }
B = { at = "4, 0", on = "beam" }
C = { at = "0, 3" }
D = { at = "3, 0", on = "beam" }
E = { at = "2, 0", on = "beam" }

[lines]
BC   = { kind = "cable", path = "B C" }
sign = { kind = "weight", at = "D", magnitude = "600 N" }

[distributed]
boxes = { path = "A E", along = "-y", magnitude = "120 N/m" }

[joints]
A = { kind = "pin" }
`

// worktop is a beam that is fixed at one end and asks for the moment there.
const worktop = `
plane = "xy"
up    = "+y"
asked = "Ay MA"

[units]
length = "m"
force  = "N"

[points]
A = { at = "0, 0", on = "shelf" }
B = { at = "2, 0", on = "shelf" }

[lines]
P = { kind = "weight", at = "B", magnitude = "50 N" }

[joints]
A = { kind = "fixed" }
`

// hung is a load at two cables, at 55.22 deg and 23.20 deg to the horizontal.
const hung = `
plane = "xy"
up    = "+y"

[units]
length = "m"
force  = "N"

[points]
A = { at = "-2.5, 3.6" }
B = { at = "4.2, 1.8" }
C = { at = "0, 0", on = "particle" }

[lines]
T1 = { kind = "cable", path = "C A" }
T2 = { kind = "cable", path = "C B" }
L  = { kind = "weight", at = "C", magnitude = "180 kg*g" }
`

// kindOf is the mistake that is named; "" where none is.
func kindOf(j Judgement) MistakeKind {
	if j.Mistake == nil {
		return ""
	}
	return j.Mistake.Kind
}

// What has no single value is not right, whatever is said of it, and no more is told.
func TestWithoutASingleValue(t *testing.T) {
	p := practice(t, clamped)
	for _, c := range []struct{ entry, says string }{
		{"MAz = 3", "MAz is not right. Try: an equation first, then its value"},
		{"S = 3 N", "S is not right. Try: an equation first, then its value"},
		{"F S = (0, 3) N", "F S is not right. Look at the coordinates of its two points."},
		{"M A S = 3 N m", "M A S is not right. Look at the arm and at the force."},
		{"indeterminate 1", "That is right."},
	} {
		if j := p.Enter(c.entry); j.Says != c.says {
			t.Errorf("%s is told %q, want %q", c.entry, j.Says, c.says)
		}
	}
}

// clamped is a beam that a strut props as well.
const clamped = `
plane = "xy"
up    = "+y"

[units]
length = "m"
force  = "N"

[points]
A = { at = "0, 0", on = "beam" }
B = { at = "4, 0", on = "beam" }
C = { at = "4, -3" }
D = { at = "2, 0", on = "beam" }

[lines]
S = { kind = "strut", path = "B C" }
P = { kind = "weight", at = "D", magnitude = "500 N" }

[joints]
A = { kind = "fixed" }
`

// What is too long for a sum on paper is not judged, and says so.
func TestTooLong(t *testing.T) {
	for _, c := range []struct{ entry, says string }{
		{"BC = 850" + strings.Repeat(" + 0", 100), "the line has 408 characters, which is too long to be judged. Try: one sum at a time, such as ΣFx beam: ... = 0"},
		{"BC = 0" + strings.Repeat("+BC", 60), "the equation has more than 60 terms, which is too long to be judged. Try: one sum at a time, such as ΣFx beam: ... = 0"},
		{"cut beam: " + strings.Repeat("Ax ", 1400), "the line has 4209 characters, which is too long to be judged. Try: one sum at a time, such as ΣFx beam: ... = 0"},
	} {
		if j := practice(t, signBeam).Enter(c.entry); j.Verdict != Unreadable || j.Says != c.says {
			t.Errorf("%s is %s: %s, want %s", c.entry, j.Verdict, j.Says, c.says)
		}
	}
}

// All that is asked counts as answered by values, also by those that stand in a relation.
func TestDone(t *testing.T) {
	p := practise(t, "beam-on-supports")
	for _, entry := range []string{"Ax = -300 N", "2*Ay = 1200 N"} {
		if p.Enter(entry); p.Done() {
			t.Fatalf("done after %s", entry)
		}
	}
	if p.Enter("B = 400.5 N"); p.Done() {
		t.Error("done by a value that is not right")
	}
	if p.Enter("B = 400 N"); !p.Done() {
		t.Error("not done")
	}
}

// Where there is no solution a combination of equations proves anything: an entry is right
// only where it is one sum, with that sum's own right side.
func TestWithoutASolution(t *testing.T) {
	for _, c := range []struct {
		entry   string
		verdict Verdict
		is      string
	}{
		{"ΣFy: A + B = 400", Right, "ΣFy on the beam"},
		{"A + B = 400", Right, "ΣFy on the beam"},
		{"A + B = 500", Wrong, "ΣFy on the beam"},
		{"A + 2 B = 600", Wrong, ""},
		{"A - B = 0", Right, "ΣM about C on the beam"},
		{"ΣM A beam: 4 B = 800", Right, "ΣM about A on the beam"},
		{"ΣFx: 300 N = 0", Right, "ΣFx on the beam"},
		{"ΣFx: 0.6 P = 0", Right, "ΣFx on the beam"},
		{"ΣFx: 250 N = 0", Wrong, "ΣFx on the beam"},
		{"ΣFy: A + B = 500", Wrong, "ΣFy on the beam"},
		{"ΣFy: A + B = 700", Wrong, "ΣFy on the beam"},
		{"no equilibrium", Right, ""},
		{"determinate", Wrong, ""},
	} {
		p := practice(t, rolling)
		if j := p.Enter(c.entry); j.Verdict != c.verdict || c.is != "" && j.Is != c.is {
			t.Errorf("%s is %s %q: %s", c.entry, j.Verdict, j.Is, j.Says)
		}
	}
}

// rolling is a beam on two rollers, pushed along.
const rolling = `
plane  = "xy"
up     = "+y"
expect = "no-equilibrium"

[units]
length = "m"
force  = "N"

[points]
A = { at = "0, 0", on = "beam" }
B = { at = "4, 0", on = "beam" }
C = { at = "2, 0", on = "beam" }

[lines]
P = { kind = "force", at = "C", along = "(3, -4)", magnitude = "500 N" }

[joints]
A = { kind = "roller", normal = "+y" }
B = { kind = "roller", normal = "+y" }
`

// How many sums are needed: no more than lead to what is asked.
func TestNeeded(t *testing.T) {
	for sheet, want := range map[string]int{"mast-top": 3, "beam-on-supports": 3, "frame-of-two-members": 6, "cable-pull-along-a-chute": 1, "arms-with-crossed-struts": 2} {
		if got := practise(t, sheet).needed; got != want {
			t.Errorf("%s needs %d sums, want %d", sheet, got, want)
		}
	}
}

// Where two mistakes come to the same number, the terms as they are written tell which it is.
func TestTermsAsWritten(t *testing.T) {
	for _, c := range []struct {
		entry string
		kind  MistakeKind
	}{
		{"ΣM A: 6 B - 6*2 - 5*1 = 0", "load-place"},
		{"ΣM A: 6 B - 3*4 - 5*1 = 0", "load-length"},
		{"ΣM A: 6 B - 12 - 5 = 0", ""},
		{"ΣM A: 6 B - 17 = 0", ""},
		{"ΣM A: 6 B - 6*4 = 0", "missing-force"},
	} {
		p := practice(t, triangle)
		if j := p.Enter(c.entry); j.Verdict != Wrong || kindOf(j) != c.kind {
			t.Errorf("%s is %s %q: %s, want %q", c.entry, j.Verdict, kindOf(j), j.Says, c.kind)
		}
	}
}

// triangle is a beam under a load that rises along it: a third of the way from its end and
// half its length make the same moment.
const triangle = `
plane = "xy"
up    = "+y"

[units]
length = "m"
force  = "kN"

[points]
A = { at = "0, 0", on = "beam" }
B = { at = "6, 0", on = "beam" }
C = { at = "1, 0", on = "beam" }

[joints]
A = { kind = "pin" }
B = { kind = "roller", normal = "+y" }

[lines]
P = { kind = "weight", at = "C", magnitude = "5 kN" }

[distributed]
q = { path = "A B", along = "-y", magnitude = "0 kN/m .. 2 kN/m" }
`

package units

import (
	"strings"
	"testing"
)

// What a message says would do does, and is what was meant.
func TestWhatWouldDoForAUnitBehindAQuotient(t *testing.T) {
	for _, c := range []struct{ wrong, meant string }{
		{"500/sin(30 deg) lb", "1000 lb"}, {"2*5/(1+1) lb", "5 lb"}, {"500/2^2 N m", "125 N m"}, {"8/sqrt(4)m", "4 m"},
	} {
		want, err := evalText(c.meant, newDesk())
		if err != nil {
			t.Fatal(err)
		}
		_, err = evalText(c.wrong, newDesk())
		if err == nil {
			t.Errorf("%s reads", c.wrong)
			continue
		}
		for _, text := range strings.Split(strings.TrimPrefix(err.Hint, "write "), ", or ") {
			if got, err := evalText(text, newDesk()); err != nil || got.Dim != want.Dim || !near(got.V[0], want.V[0]) {
				t.Errorf("%s: %s gives %v, %v", c.wrong, text, got, err)
			}
		}
	}
}

// Every message a user can meet, as it is shown: the message, the hint, and
// the piece of the text that it points at.
func TestMessages(t *testing.T) {
	long := "1" + strings.Repeat("+1", maxText/2)
	for _, c := range []struct{ text, want, at string }{
		// nothing, half-typed, unbalanced
		{"", "nothing here", ""},
		{"  ", "nothing here", "  "},
		{"6 +", "something is missing after +", "+"},
		{"6 m *", "something is missing after *", "*"},
		{"* 3", "something is missing before *", "*"},
		{"6 m ±", "something is missing after ±", "±"},
		{"± 3", "something is missing before ±", "±"},
		{"2^", "something is missing after ^", "^"},
		{"1, 2,", "something is missing after ,", ","},
		{"1,,2", "a value is missing between the commas", ",,"},
		{"(3 + 4", "this ( is not closed: add a )", "("},
		{"(", "this ( is not closed: add a )", "("},
		{"sin(30 deg", "this ( is not closed: add a )", "("},
		{"3)", "this ) closes nothing: write a ( before it, or take it out", ")"},
		{")", "this ) closes nothing: write a ( before it, or take it out", ")"},
		{"()", "nothing stands between ( and )", "()"},
		{"(3 +)", "something is missing after +", "+"},
		{"min(1,)", "something is missing after ,", ","},
		{"1, 2, 3, 4", "these are 4 components, and a vector has two or three", "1, 2, 3, 4"},
		{"-0,75, 1.3, 0", "these are 4 components, and a vector has two or three: write -0.75 where that is one number", "-0,75, 1.3, 0"},
		{"4 2", "an operator is missing between 4 and 2: write 4, 2 for two components", "4 2"},
		{"h W", "an operator is missing between h and W: write h*W", "h W"},
		{"h m", "the unit m stands behind the name h: take it out, or write (h) m where h is a plain number", "h m"},
		{"500/W lb", "the unit lb stands behind the name W: take it out, or write (W) lb where W is a plain number", "W lb"},
		{"20 kg g", "an operator is missing between kg and g: write kg*g", "kg g"},
		{"5 m (3)", `there is no function "m": write m*( ... )`, "m"},
		{"h/2 W", "2 W behind / can be read two ways: put * between them, or ( and ) around them", "2 W"},
		{"W/(1+1) h", "(1+1) h behind / can be read two ways: put * between them, or ( and ) around them", "(1+1) h"},
		{"12 300/400", "12 300/400 can be read two ways: write 12300/400, or 12 + 300/400", "12 300/400"},
		{`5'-6-1/2"`, `5'-6-1/2" has a hyphen before its fraction. Try: 5'-6 1/2"`, `5'-6-1/2"`},
		{`5' 6-1/2"`, `5' 6-1/2" has a hyphen before its fraction. Try: 5' 6 1/2"`, `5' 6-1/2"`},
		{`10'6-3/4"`, `10'6-3/4" has a hyphen before its fraction. Try: 10'6 3/4"`, `10'6-3/4"`},
		{"5 ft 6-1/2 in", "5 ft 6-1/2 in has a hyphen before its fraction. Try: 5 ft 6 1/2 in", "5 ft 6-1/2 in"},
		{"5 ft-6-1/2 in", "5 ft-6-1/2 in has a hyphen before its fraction. Try: 5 ft 6 1/2 in", "5 ft-6-1/2 in"},
		{"5'-6-1/2", `5'-6-1/2 has a hyphen before its fraction. Try: 5'-6 1/2"`, "5'-6-1/2"},
		{`5'-6"-1/2"`, `5'-6"-1/2" can be read two ways. Try: 5'-6 1/2", or 5'-6" - 1/2"`, `5'-6"-1/2"`},
		{`6"-1/2"`, `6"-1/2" can be read two ways. Try: 6 1/2", or 6" - 1/2"`, `6"-1/2"`},
		{"3 m 20 cm", "3 m 20 cm has two units. Try: 3.2 m", "3 m 20 cm"},
		{"2*(1 kN 5 N)", "1 kN 5 N has two units. Try: 1.005 kN", "1 kN 5 N"},
		{"5 x 10^3 N", "5 x 10^3 N has the letter x for a times sign. Try: 5e3 N", "5 x 10^3 N"},
		{"1.5 X 10^-3 kN/m + h", "1.5 X 10^-3 kN/m has the letter x for a times sign. Try: 1.5e-3 kN/m", "1.5 X 10^-3 kN/m"},
		{"5x10³ N", "5x10³ N has the letter x for a times sign. Try: 5e3 N", "5x10³ N"},
		{"5x10^-3 N", "5x10^-3 N has the letter x for a times sign. Try: 5e-3 N", "5x10^-3 N"},
		{"2 x 400 N", "2 x 400 N has the letter x for a times sign. Try: 2*400 N", "2 x 400 N"},
		{"e^(0.25*pi)", "e^(0.25*pi) is a power of e, which is no name here. Try: exp(0.25*pi)", "e^(0.25*pi)"},
		{"2*e^-0.3", "e^-0.3 is a power of e, which is no name here. Try: exp(-0.3)", "e^-0.3"},
		{"|h|", "|h| has bars, which have no meaning in a cell. Try: abs(h)", "|h|"},
		{"6 N ± 1,5 %", "± 1,5 % has a comma. Try: ± 1.5 %", "± 1,5 %"},
		{"(1,200, 0, 0) N", "these are 4 components, and a vector has two or three. Try: 1200 or 1.200, where that is one number", "1,200, 0, 0"},
		{"slope 5/12", "slope 5/12 is a slope with a slash. Try: slope 5:12", "slope 5/12"},
		{"slope -5/12", "slope -5/12 is a slope with a slash. Try: slope -5:12", "slope -5/12"},
		{"5'-6 in", `5'-6 in can be read two ways. Try: 5' 6", or 5 ft - 6 in`, "5'-6 in"},
		// characters
		{"@", `"@" has no meaning in a cell`, "@"},
		{"h = 3", `"=" has no meaning in a cell: a cell holds the value alone`, "="},
		{"[1, 2]", `"[" has no meaning in a cell: write ( and )`, "["},
		{"2 %", "a per cent has no meaning here. Try: a fraction, such as 0.02", "%"},
		{"1; 2", `";" has no meaning in a cell: write a comma`, ";"},
		{"\xff", `"\xff" has no meaning in a cell`, "\xff"},
		{"5 \x1b[2J", `"\x1b" has no meaning in a cell`, "\x1b"},
		{"'", `' is a foot mark, and stands right behind a number: write it as in 5' 6"`, "'"},
		{`h"`, `" is an inch mark, and stands right behind a number: write it as in 5' 6"`, `"`},
		{"300 N .. 500 N", ".. stands between the two ends of a range, and one value is wanted here", ".."},
		{"2*?", "? stands alone, for a magnitude to be found: name the unknown instead, as in 2*T1", "?"},
		{"?+1", "? stands alone, for a magnitude to be found: name the unknown instead, as in 2*T1", "?"},
		{"?", "? is unknown, and a value is wanted here", "?"},
		// numbers
		{"1e400", "1e400 is larger than any number kept here", "1e400"},
		{"2 + 1e-400", "1e-400 is too small to tell from 0: write 0", "1e-400"},
		{"1_000", "1_000 is not a number: write 1000", "1_000"},
		{"1.2.3", "1.2.3 is not a number: write one decimal point", "1.2.3"},
		{"1e300*1e300", "1e300*1e300 is larger than any number kept here", "1e300*1e300"},
		{"1e308 km", "1e308 km is larger than any number kept here", "1e308 km"},
		{"2 + 1/0", "1/0 divides by 0", "1/0"},
		{"0/0", "0/0 divides by 0", "0/0"},
		{"0^-1", "0^-1 divides by 0", "0^-1"},
		{"(-8)^(1/3)", "(-8)^(1/3) is a fractional power of a negative number", "(-8)^(1/3)"},
		{"sqrt(-1)", "sqrt(-1) is the root of a negative number", "sqrt(-1)"},
		{"1 + asin(2)", "asin(2) has no value: 2 is outside -1 to 1", "asin(2)"},
		{"acos(-1.5)", "acos(-1.5) has no value: -1.5 is outside -1 to 1", "acos(-1.5)"},
		{"ln(0)", "ln(0) is the logarithm of a number that is not positive", "ln(0)"},
		{"exp(1000)", "exp(1000) is larger than any number kept here", "exp(1000)"},
		{"tan(90 deg)", "tan(90 deg) has no value: the tangent of a right angle is infinite", "tan(90 deg)"},
		{"atan2(0, 0)", "atan2(0, 0) has no value: (0, 0) lies in no direction", "atan2(0, 0)"},
		// names and units
		{"hh", `there is no "hh": did you mean "h"`, "hh"},
		{"2 + w1", `there is no "w1": did you mean "T1"`, "w1"},
		{"2*qqq", `there is no "qqq"`, "qqq"},
		{"sqrt", `there is no "sqrt": write sqrt(x)`, "sqrt"},
		{"6 kipp/m", `unknown unit "kipp": did you mean "kip"`, "kipp"},
		{"6 Nm", `unknown unit "Nm": write N m`, "Nm"},
		{"3 kNN", `unknown unit "kNN": did you mean "kN"`, "kNN"},
		{"6 kN.m", `unknown unit "kN.m": write kN m`, "kN.m"},
		{"6 meters", `unknown unit "meters": write m`, "meters"},
		{"6 feet", `unknown unit "feet": write ft`, "feet"},
		{"5 ft 8 im", `unknown unit "im": write feet and inches as in 5 ft 6 in`, "im"},
		{"6 inches", `unknown unit "inches": write in`, "inches"},
		{"5 ton", `unknown unit "ton": write t for a tonne (a mass), tf for its weight, tonf for 2000 lbf`, "ton"},
		{"5 qqq", `unknown unit "qqq"`, "qqq"},
		{"2*late", "given late does not read", "late"},
		{"2*mute", "mute is in a circle: break it", "mute"},
		{"length(late)", "given late does not read", "late"},
		{"f(2)", `there is no function "f": write f*( ... )`, "f"},
		{"sine(2)", `there is no function "sine": did you mean "sin"`, "sine"},
		{"dir(A)", "dir takes 2 values, and this has 1: write dir(A, B)", "dir(A)"},
		{"sin()", "sin takes one value, and this has 0: write sin(angle)", "sin()"},
		{"max(1, 2, 3, 4)", "max takes 2 to 3 values, and this has 4: write max(a, b)", "max(1, 2, 3, 4)"},
		{"5 mN", `unknown unit "mN": write it in N`, "mN"},
		{"5 mn", `unknown unit "mn"`, "mn"},
		{"5 klb", `unknown unit "klb": write kip`, "klb"},
		{"5 plf", `unknown unit "plf": write lbf/ft`, "plf"},
		{"5 kN/m2", `unknown unit "m2": write m^2`, "m2"},
		{"5 kgs", `unknown unit "kgs": write kg`, "kgs"},
		{"5 psd", `unknown unit "psd"`, "psd"},
		{"5 tons", `unknown unit "tons": write t for a tonne (a mass), tf for its weight, tonf for 2000 lbf`, "tons"},
		{"5 KN", `unknown unit "KN": did you mean "kN"`, "KN"},
		{"5 kN T", "an operator is missing between kN and T", "kN T"},
		// hyphens, as carpenters and texts write them
		{"3-1/2 in", "3-1/2 in reads as a difference. Try: 3 1/2 in", "3-1/2 in"},
		{`-3-1/2"`, `3-1/2" reads as a difference. Try: 3 1/2"`, `3-1/2"`},
		{"3-1/2-in", "3-1/2-in reads as a difference. Try: 3 1/2 in", "3-1/2-in"},
		{"3-1/2", "3-1/2 can be read two ways. Try: 3 1/2, or 3 - 1/2", "3-1/2"},
		{"3 - 1/2 in", "3 has no unit, and 1/2 in is a length. Try: a unit behind 3", "3"},
		{"6-in", "6-in reads as a difference. Try: 6 in", "6-in"},
		{"500-lb", "500-lb reads as a difference. Try: 500 lb", "500-lb"},
		{"5'-6", `5'-6 has no inch mark. Try: 5'-6"`, "5'-6"},
		{"5' 6 1/2", `5' 6 1/2 has no inch mark. Try: 5' 6 1/2"`, "5' 6 1/2"},
		{"5 ft.6 in", "ft.6 can be read two ways. Try: ft 6, or ft 0.6", "ft.6"},
		{"5 ft 6", "6 has no unit behind 5 ft. Try: 5 ft 6 in", "5 ft 6"},
		{"5 ft-6 in", "5 ft-6 in can be read two ways. Try: 5 ft 6 in, or 5 ft - 6 in", "5 ft-6 in"},
		// points and slopes
		{"1.200.000 N", "1.200.000 is not a number: write 1200000", "1.200.000"},
		{"3:4", "3:4 can be read two ways. Try: slope 3:4 where the first is the rise, or slope 4:3 where it is the run", "3:4"},
		{"slope 3", "slope 3 has no run. Try: a rise and a run, as in slope 3:4", "slope 3"},
		{"slope 3:4", "slope is for a problem in a plane, and this one is in space. Try: components, such as (4, 0, 3)", "slope 3:4"},
		// dimensions
		{"3 m + 2 N", "3 m is a length, and 2 N is a force: only like quantities add", "3 m + 2 N"},
		{"500/sin(60 deg) lb", "the unit lb goes with sin(60 deg), which is divided by: write (500/sin(60 deg)) lb, or 500 lb/sin(60 deg)", "500/sin(60 deg) lb"},
		{"100 lb + 2*5/(1+1) lb", "the unit lb goes with (1+1), which is divided by: write (2*5/(1+1)) lb, or 2*5 lb/(1+1)", "2*5/(1+1) lb"},
		{"500/2^2 N m", "the unit N m goes with 2^2, which is divided by: write (500/2^2) N m, or 500 N m/2^2", "500/2^2 N m"},
		{"1/sqrt(2)m", "the unit m goes with sqrt(2), which is divided by: write (1/sqrt(2)) m, or 1 m/sqrt(2)", "1/sqrt(2)m"},
		{"500 sin 60 deg lb", "sin takes an angle, and 60 deg lb is a quantity in kg m s^-2 rad: put the angle alone in parentheses, as in sin(30 deg) N", "60 deg lb"},
		{"sin(2 m)", "sin takes an angle, and 2 m is a length: write an angle, such as 30 deg", "2 m"},
		{"1 + h", "1 has no unit, and h is a length: write 1 m", "1"},
		{"h + 1", "1 has no unit, and h is a length: write 1 m", "1"},
		{"h + mu", "mu has no unit, and h is a length: write (mu) m", "mu"},
		{"T1 + 5", "5 has no unit, and T1 is a force: write 5 N", "5"},
		{"50 N m + 3", "3 has no unit, and 50 N m is a moment. Try: a unit behind 3", "3"},
		{"0, 1, h", "1 has no unit, and h is a length: write 1 m", "1"},
		{"h, 1, 0", "1 has no unit, and h is a length: write 1 m", "1"},
		{"h, W, 0", "h is a length, and W is a force: write components of one kind", "h, W, 0"},
		{"min(1, h)", "1 has no unit, and h is a length: write 1 m", "1"},
		{"hypot(W, h)", "W is a force, and h is a length: hypot takes like quantities", "hypot(W, h)"},
		{"sqrt(2 m)", "2 m is a length, and its root has no unit: the powers of the units must come out whole", "sqrt(2 m)"},
		{"h^0.5", "h is a length, and h^0.5 has no unit: the powers of the units must come out whole", "h^0.5"},
		{"2^h", "an exponent is a plain number, and h is a length", "h"},
		{"2 m^0.5", "a unit's power is a whole number: write it as in m^2, or put the quantity in parentheses", "^0.5"},
		{"2 m^99", "a unit's power of 99 is beyond 12", "99"},
		{"exp(h)", "exp takes a plain number, and h is a length", "h"},
		{"(1 m)^100*(1 m)^100", "the unit of (1 m)^100*(1 m)^100 is beyond what is kept", "(1 m)^100*(1 m)^100"},
		// vectors
		{"A*T", "A and T are both vectors: write dot(a, b) or cross(a, b)", "A*T"},
		{"2/A", "A is a vector and divides nothing", "2/A"},
		{"A + 2 m", "A is a vector, and 2 m is a number: a vector adds to a vector only", "A + 2 m"},
		{"A^2", "A is a vector and has no powers: write dot(a, a) for its square", "A^2"},
		{"sin(A)", "sin takes a number, and A is a vector: write sin(angle)", "A"},
		{"dir(A, 3)", "dir takes a vector or a point, and 3 is a number: write dir(A, B)", "3"},
		{"dir(A, A)", "A and A are at the same place, so dir(A, A) has no direction: take two places apart", "dir(A, A)"},
		{"dir(O, (0, 0, 0))", "O and (0, 0, 0) are at the same place, so dir(O, (0, 0, 0)) has no direction: take two places apart", "dir(O, (0, 0, 0))"},
		{"unit(O)", "O has no length, so unit(O) has no direction: take a vector other than zero", "unit(O)"},
		{"(A, 1, 2)", "a component is a number, and A is a vector", "A"},
		{"polar(30)", "polar is for a problem in a plane, and this one is in space: write angles(a, b, c) or bearing(azimuth, elevation)", "polar(30)"},
		{"angles(60 deg, 45 deg, 100 deg)", "the squared cosines of direction angles sum to 1, and these sum to 0.7802: with the first two the third is 60.00 or 120.0 deg", "angles(60 deg, 45 deg, 100 deg)"},
		{"angles(10, 20, 30)", "the squared cosines of direction angles sum to 1, and these sum to 2.6029", "angles(10, 20, 30)"},
		// unknowns
		{"2*T1*T2", "2*T1*T2 multiplies two unknowns: trivet ties magnitudes linearly", "2*T1*T2"},
		{"3/T1", "3/T1 divides by an unknown: trivet ties magnitudes linearly", "3/T1"},
		{"T1^2", "T1^2 is a power of an unknown: trivet ties magnitudes linearly", "T1^2"},
		{"abs(T1)", "abs(T1) is a function of an unknown: trivet ties magnitudes linearly", "abs(T1)"},
		{"T1*x", "T1 is an unknown, and a vector is known: write the direction and the magnitude apart", "T1*x"},
		{"(T1, 0, 0)", "a component is known, and T1 is an unknown: write a direction, and the unknown as its magnitude", "T1"},
		// uncertainty
		{"(6 ± 1)*2", "± stands at the end of a value: write it last, as in 6 m ± 2 cm", "6 ± 1"},
		{"6 ± 1 ± 2", "± stands at the end of a value: write it last, as in 6 m ± 2 cm", "±"},
		{"sin(30 ± 1)", "± stands at the end of a value: write it last, as in 6 m ± 2 cm", "±"},
		{"6 m ± -2 cm", "an uncertainty is not negative, and -2 cm is: write it without the sign", "-2 cm"},
		{"6 m ± 2 N", "6 m is a length, and 2 N is a force: write both in like units", "6 m ± 2 N"},
		{"6 m ± 2", "2 has no unit, and 6 m is a length. Try: a unit behind 2", "2"},
		{"6 m ± -5 %", "an uncertainty is not negative, and -5 % is: write it without the sign", "-5 %"},
		{"0 m ± 5 %", "5 % of 0 is 0. Try: the uncertainty itself, as in 0 m ± 2 cm", "0 m ± 5 %"},
		{"6 m ± 5 m %", "a per cent is a plain number, and 5 m is not", "5 m %"},
		{"mu ± 2 cm", "mu has no unit, and 2 cm is a length. Try: a value with a unit", "mu"},
		{"A ± 1 m", "± stands behind a number, and A is a vector: write ± behind each component", "A ± 1 m"},
		{"h ± A", "an uncertainty is a number, and A is a vector", "A"},
		{"T1 ± 1 N", "T1 is an unknown and takes no ±", "T1 ± 1 N"},
		{"W ± T1", "an uncertainty is known, and T1 is an unknown", "T1"},
		// too much
		{strings.Repeat("(", 80) + "1" + strings.Repeat(")", 80), "nested more than 64 deep: split it over named values", "("},
		{strings.Repeat("-", 80) + "1", "nested more than 64 deep: split it over named values", "-"},
		{long, "the text is longer than the 4096 characters a cell may hold", "1"},
	} {
		v, err := evalText(c.text, newDesk())
		if err == nil {
			t.Errorf("%.40q = %v, want the error %q", c.text, v, c.want)
			continue
		}
		if err.Error() != c.want {
			t.Errorf("%.40q:\n got %s\nwant %s", c.text, err, c.want)
		}
		checkSpan(t, c.text, err.Span)
		if got := c.text[err.Span.Start:err.Span.End]; got != c.at && c.at != "" {
			t.Errorf("%.40q points at %q, want %q", c.text, got, c.at)
		}
	}
}

func TestWant(t *testing.T) {
	set := DefaultSet()
	set.Force, _ = Find("kN")
	for _, c := range []struct {
		text string
		dim  Dim
		want float64
	}{
		{"6", Length, 6},
		{"6 ft", Length, 6 * foot},
		{"6", Force, 6000},
		{"30", Angle, 30 * 0.017453292519943295},
		{"6", Moment, 6000},
		{"6", Number, 6},
		{"0", LineLoad, 0},
	} {
		v, err := evalText(c.text, newDesk())
		if err != nil {
			t.Fatal(err)
		}
		v, err = Want(v, c.dim, set.For(c.dim), Span{0, len(c.text)})
		if err != nil || !near(v.V[0], c.want) || v.Dim != c.dim {
			t.Errorf("Want(%q, %v) = %v %v, %v", c.text, c.dim, v.V[0], v.Dim, err)
		}
	}
	v, _ := evalText("6 ± 0.5", newDesk())
	if v, err := Want(v, Force, set.Force, Span{}); err != nil || v.V[0] != 6000 || v.Plus[0] != 500 {
		t.Errorf("a bare uncertainty: %v ± %v, %v", v.V, v.Plus, err)
	}
	v, _ = evalText("1, 2 ± 0.5", newDesk())
	if v, err := WantVector(v, Force, set.Force, Span{}); err != nil || v.V != [3]float64{1000, 2000} || v.Plus[1] != 500 {
		t.Errorf("a bare vector: %v ± %v, %v", v.V, v.Plus, err)
	}
	for _, c := range []struct {
		text string
		dim  Dim
		want string
	}{
		{"2 N", Length, "a length is wanted here, and 2 N is a force: write a value in m"},
		{"2 N", Number, "a number is wanted here, and 2 N is a force: write it without a unit"},
		{"2 N", Moment, "a moment is wanted here, and 2 N is a force: write a value in kN m"},
		{"2 kg m", Force, "a force is wanted here, and 2 kg m is a quantity in kg m: write a value in kN"},
		{"20 kg", Force, `20 kg is a mass, and a mass is not a force: write 20 kg * g, or make it kind = "weight"`},
		{"20 kg + 3 kg", Force, `20 kg + 3 kg is a mass, and a mass is not a force: write (20 kg + 3 kg) * g, or make it kind = "weight"`},
		{"6,0", Length, "6,0 reads as two values: write 6.0"},
		{"-6,25", Length, "-6,25 can be read two ways. Try: -625, or -6.25"},
		{"6, 0", Length, "6, 0 reads as two values: expected one value"},
		{"1,2,3", Length, "1,2,3 reads as three values: expected one value"},
		{"A", Length, "A reads as three values: expected one value"},
		{"1.7e308", Force, "1.7e308 is larger than any number kept here"},
	} {
		v, err := evalText(c.text, newDesk())
		if err != nil {
			t.Fatal(err)
		}
		whole := Span{0, len(c.text)}
		if _, err := Want(v, c.dim, set.For(c.dim), whole); err == nil || err.Error() != c.want || err.Span != whole {
			t.Errorf("Want(%q, %v): %v\nwant %s", c.text, c.dim, err, c.want)
		}
	}
	if _, err := WantVector(Scalar(3, Length), Length, set.Length, Span{}); err == nil ||
		err.Error() != "3 m is one value, and a vector is wanted here: write components with commas between them" {
		t.Errorf("WantVector of a scalar: %v", err)
	}
}

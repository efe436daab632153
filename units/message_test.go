package units

import (
	"strings"
	"testing"

	"trivet/mechanics/diag"
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
		for _, text := range strings.Split(err.Hint, " or ") {
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
		{"", "a value is missing", ""},
		{"  ", "a value is missing", "  "},
		{"6 +", "a value is missing after +", "+"},
		{"6 m *", "a value is missing after *", "*"},
		{"* 3", "a value is missing before *", "*"},
		{"6 m ±", "a value is missing after ±", "±"},
		{"± 3", "a value is missing before ±", "±"},
		{"2^", "a value is missing after ^", "^"},
		{"1, 2,", "a value is missing after ,", ","},
		{"1,,2", "a value is missing between the commas", ",,"},
		{"(3 + 4", "this ( is not closed. Try: add a )", "("},
		{"(", "this ( is not closed. Try: add a )", "("},
		{"sin(30 deg", "this ( is not closed. Try: add a )", "("},
		{"3)", "this ) has no matching (. Try: add a ( before it, or remove it", ")"},
		{")", "this ) has no matching (. Try: add a ( before it, or remove it", ")"},
		{"()", "a value is missing between ( and )", "()"},
		{"(3 +)", "a value is missing after +", "+"},
		{"min(1,)", "a value is missing after ,", ","},
		{"1, 2, 3, 4", "a vector has two or three components, not 4", "1, 2, 3, 4"},
		{"-0,75, 1.3, 0", "a vector has two or three components, not 4. Try: -0.75, if that is one number", "-0,75, 1.3, 0"},
		{"4 2", "an operator is missing between 4 and 2. Try: 4, 2 for two components", "4 2"},
		{"h W", "an operator is missing between h and W. Try: h*W", "h W"},
		{"h m", "the name h is followed by the unit m. Try: h alone, or (h) m if h is a plain number", "h m"},
		{"500/W lb", "the name W is followed by the unit lb. Try: W alone, or (W) lb if W is a plain number", "W lb"},
		{"20 kg g", "an operator is missing between kg and g. Try: kg*g", "kg g"},
		{"5 m (3)", `unknown function "m". Try: m*( ... )`, "m"},
		{"h/2 W", "2 W after / can be read two ways. Try: a * between them, or ( and ) around them", "2 W"},
		{"W/(1+1) h", "(1+1) h after / can be read two ways. Try: a * between them, or ( and ) around them", "(1+1) h"},
		{"12 300/400", "12 300/400 can be read two ways. Try: 12300/400 or 12 + 300/400", "12 300/400"},
		{`5'-6-1/2"`, `5'-6-1/2" has a hyphen before its fraction. Try: 5'-6 1/2"`, `5'-6-1/2"`},
		{`5' 6-1/2"`, `5' 6-1/2" has a hyphen before its fraction. Try: 5' 6 1/2"`, `5' 6-1/2"`},
		{`10'6-3/4"`, `10'6-3/4" has a hyphen before its fraction. Try: 10'6 3/4"`, `10'6-3/4"`},
		{"5 ft 6-1/2 in", "5 ft 6-1/2 in has a hyphen before its fraction. Try: 5 ft 6 1/2 in", "5 ft 6-1/2 in"},
		{"5 ft-6-1/2 in", "5 ft-6-1/2 in has a hyphen before its fraction. Try: 5 ft 6 1/2 in", "5 ft-6-1/2 in"},
		{"5'-6-1/2", `5'-6-1/2 has a hyphen before its fraction. Try: 5'-6 1/2"`, "5'-6-1/2"},
		{`5'-6"-1/2"`, `5'-6"-1/2" can be read two ways. Try: 5'-6 1/2" or 5'-6" - 1/2"`, `5'-6"-1/2"`},
		{`6"-1/2"`, `6"-1/2" can be read two ways. Try: 6 1/2" or 6" - 1/2"`, `6"-1/2"`},
		{"3 m 20 cm", "3 m 20 cm has two units. Try: 3.2 m", "3 m 20 cm"},
		{"2*(1 kN 5 N)", "1 kN 5 N has two units. Try: 1.005 kN", "1 kN 5 N"},
		{"5 x 10^3 N", "5 x 10^3 N uses the letter x as a multiplication sign. Try: 5e3 N", "5 x 10^3 N"},
		{"1.5 X 10^-3 kN/m + h", "1.5 X 10^-3 kN/m uses the letter x as a multiplication sign. Try: 1.5e-3 kN/m", "1.5 X 10^-3 kN/m"},
		{"5x10³ N", "5x10³ N uses the letter x as a multiplication sign. Try: 5e3 N", "5x10³ N"},
		{"5x10^-3 N", "5x10^-3 N uses the letter x as a multiplication sign. Try: 5e-3 N", "5x10^-3 N"},
		{"2 x 400 N", "2 x 400 N uses the letter x as a multiplication sign. Try: 2*400 N", "2 x 400 N"},
		{"e^(0.25*pi)", "e^(0.25*pi) uses e, which is not defined. Try: exp(0.25*pi)", "e^(0.25*pi)"},
		{"2*e^-0.3", "e^-0.3 uses e, which is not defined. Try: exp(-0.3)", "e^-0.3"},
		{"|h|", "|h| is not read as an absolute value. Try: abs(h)", "|h|"},
		{"6 N ± 1,5 %", "± 1,5 % contains a comma. Try: ± 1.5 %", "± 1,5 %"},
		{"(1,200, 0, 0) N", "a vector has two or three components, not 4. Try: 1200 or 1.200, if that is one number", "1,200, 0, 0"},
		{"slope 5/12", "the rise and the run of a slope are separated by a colon. Try: slope 5:12", "slope 5/12"},
		{"slope -5/12", "the rise and the run of a slope are separated by a colon. Try: slope -5:12", "slope -5/12"},
		{"5'-6 in", `5'-6 in can be read two ways. Try: 5' 6" or 5 ft - 6 in`, "5'-6 in"},
		// characters
		{"@", `unexpected "@"`, "@"},
		{"h = 3", `unexpected "=". Try: the value alone`, "="},
		{"[1, 2]", `unexpected "[". Try: ( and )`, "["},
		{"2 %", "a percentage is not expected here. Try: a fraction, such as 0.02", "%"},
		{"1; 2", `unexpected ";". Try: a comma`, ";"},
		{"\xff", `unexpected "\xff"`, "\xff"},
		{"5 \x1b[2J", `unexpected "\x1b"`, "\x1b"},
		{"'", `the foot mark ' must follow a number. Try: the form 5' 6"`, "'"},
		{`h"`, `the inch mark " must follow a number. Try: the form 5' 6"`, `"`},
		{"300 N .. 500 N", "a range is not expected here. Try: a single value", ".."},
		{"2*?", "? cannot be part of an expression. Try: the name of the unknown, as in 2*T1", "?"},
		{"?+1", "? cannot be part of an expression. Try: the name of the unknown, as in 2*T1", "?"},
		{"?", "expected a value, but ? is an unknown", "?"},
		// numbers
		{"1e400", "1e400 is too large", "1e400"},
		{"2 + 1e-400", "1e-400 is too small to be distinguished from zero. Try: 0", "1e-400"},
		{"1_000", "1_000 is not a number. Try: 1000", "1_000"},
		{"1.2.3", "1.2.3 is not a number. Try: one decimal point", "1.2.3"},
		{"1e300*1e300", "1e300*1e300 is too large", "1e300*1e300"},
		{"1e308 km", "1e308 km is too large", "1e308 km"},
		{"2 + 1/0", "1/0 is a division by zero", "1/0"},
		{"0/0", "0/0 is a division by zero", "0/0"},
		{"0^-1", "0^-1 is a division by zero", "0^-1"},
		{"(-8)^(1/3)", "(-8)^(1/3) is a fractional power of a negative number", "(-8)^(1/3)"},
		{"sqrt(-1)", "sqrt(-1) is the root of a negative number", "sqrt(-1)"},
		{"1 + asin(2)", "asin takes a number from -1 to 1, not 2", "asin(2)"},
		{"acos(-1.5)", "acos takes a number from -1 to 1, not -1.5", "acos(-1.5)"},
		{"ln(0)", "ln(0) is the logarithm of a number that is not greater than zero", "ln(0)"},
		{"exp(1000)", "exp(1000) is too large", "exp(1000)"},
		{"tan(90 deg)", "tan(90 deg) is infinite", "tan(90 deg)"},
		{"atan2(0, 0)", "atan2(0, 0) is not defined", "atan2(0, 0)"},
		// names and units
		{"hh", `unknown name "hh". Try: h`, "hh"},
		{"2 + w1", `unknown name "w1". Try: T1`, "w1"},
		{"2*qqq", `unknown name "qqq"`, "qqq"},
		{"sqrt", `unknown name "sqrt". Try: sqrt(x)`, "sqrt"},
		{"6 kipp/m", `unknown unit "kipp". Try: kip`, "kipp"},
		{"6 Nm", `unknown unit "Nm". Try: N m`, "Nm"},
		{"3 kNN", `unknown unit "kNN". Try: kN`, "kNN"},
		{"6 kN.m", `unknown unit "kN.m". Try: kN m`, "kN.m"},
		{"6 meters", `unknown unit "meters". Try: m`, "meters"},
		{"6 feet", `unknown unit "feet". Try: ft`, "feet"},
		{"5 ft 8 im", `unknown unit "im". Try: feet and inches as in 5 ft 6 in`, "im"},
		{"6 inches", `unknown unit "inches". Try: in`, "inches"},
		{"5 ton", `unknown unit "ton". Try: t for a tonne (a mass), tf for its weight or tonf for 2000 lbf`, "ton"},
		{"5 qqq", `unknown unit "qqq"`, "qqq"},
		{"2*late", "given late does not read", "late"},
		{"2*mute", "mute is in a circle. Try: break it", "mute"},
		{"length(late)", "given late does not read", "late"},
		{"f(2)", `unknown function "f". Try: f*( ... )`, "f"},
		{"sine(2)", `unknown function "sine". Try: sin`, "sine"},
		{"dir(A)", "dir takes two values, not 1. Try: dir(A, B)", "dir(A)"},
		{"sin()", "sin takes one value, not 0. Try: sin(angle)", "sin()"},
		{"max(1, 2, 3, 4)", "max takes two to three values, not 4. Try: max(a, b)", "max(1, 2, 3, 4)"},
		{"5 mN", `unknown unit "mN". Try: a value in N`, "mN"},
		{"5 mn", `unknown unit "mn"`, "mn"},
		{"5 klb", `unknown unit "klb". Try: kip`, "klb"},
		{"5 plf", `unknown unit "plf". Try: lbf/ft`, "plf"},
		{"5 kN/m2", `unknown unit "m2". Try: m^2`, "m2"},
		{"5 kgs", `unknown unit "kgs". Try: kg`, "kgs"},
		{"5 psd", `unknown unit "psd"`, "psd"},
		{"5 tons", `unknown unit "tons". Try: t for a tonne (a mass), tf for its weight or tonf for 2000 lbf`, "tons"},
		{"5 KN", `unknown unit "KN". Try: kN`, "KN"},
		{"5 kN T", "an operator is missing between kN and T", "kN T"},
		// hyphens, as carpenters and texts write them
		{"3-1/2 in", "3-1/2 in is read as a difference. Try: 3 1/2 in", "3-1/2 in"},
		{`-3-1/2"`, `3-1/2" is read as a difference. Try: 3 1/2"`, `3-1/2"`},
		{"3-1/2-in", "3-1/2-in is read as a difference. Try: 3 1/2 in", "3-1/2-in"},
		{"3-1/2", "3-1/2 can be read two ways. Try: 3 1/2 or 3 - 1/2", "3-1/2"},
		{"3 - 1/2 in", "3 has no unit, but 1/2 in is a length. Try: a unit after 3", "3"},
		{"6-in", "6-in is read as a difference. Try: 6 in", "6-in"},
		{"500-lb", "500-lb is read as a difference. Try: 500 lb", "500-lb"},
		{"5'-6", `5'-6 has no inch mark. Try: 5'-6"`, "5'-6"},
		{"5' 6 1/2", `5' 6 1/2 has no inch mark. Try: 5' 6 1/2"`, "5' 6 1/2"},
		{"5 ft.6 in", "ft.6 can be read two ways. Try: ft 6 or ft 0.6", "ft.6"},
		{"5 ft 6", "6 after 5 ft has no unit. Try: 5 ft 6 in", "5 ft 6"},
		{"5 ft-6 in", "5 ft-6 in can be read two ways. Try: 5 ft 6 in or 5 ft - 6 in", "5 ft-6 in"},
		// points and slopes
		{"1.200.000 N", "1.200.000 is not a number. Try: 1200000", "1.200.000"},
		{"3:4", "3:4 can be read two ways. Try: slope 3:4 if the first is the rise, or slope 4:3 if it is the run", "3:4"},
		{"slope 3", "slope 3 has no run. Try: a rise and a run, as in slope 3:4", "slope 3"},
		{"slope 3:4", "slope is for a problem in a plane, but this one is in space. Try: components, such as (4, 0, 3)", "slope 3:4"},
		// dimensions
		{"3 m + 2 N", "3 m is a length and 2 N is a force, so they cannot be added", "3 m + 2 N"},
		{"500/sin(60 deg) lb", "the unit lb belongs to the divisor sin(60 deg). Try: (500/sin(60 deg)) lb or 500 lb/sin(60 deg)", "500/sin(60 deg) lb"},
		{"100 lb + 2*5/(1+1) lb", "the unit lb belongs to the divisor (1+1). Try: (2*5/(1+1)) lb or 2*5 lb/(1+1)", "2*5/(1+1) lb"},
		{"500/2^2 N m", "the unit N m belongs to the divisor 2^2. Try: (500/2^2) N m or 500 N m/2^2", "500/2^2 N m"},
		{"1/sqrt(2)m", "the unit m belongs to the divisor sqrt(2). Try: (1/sqrt(2)) m or 1 m/sqrt(2)", "1/sqrt(2)m"},
		{"500 sin 60 deg lb", "sin takes an angle, but 60 deg lb is a quantity in kg m s^-2 rad. Try: the angle alone in parentheses, as in sin(30 deg) N", "60 deg lb"},
		{"sin(2 m)", "sin takes an angle, but 2 m is a length. Try: an angle, such as 30 deg", "2 m"},
		{"1 + h", "1 has no unit, but h is a length. Try: 1 m", "1"},
		{"h + 1", "1 has no unit, but h is a length. Try: 1 m", "1"},
		{"h + mu", "mu has no unit, but h is a length. Try: (mu) m", "mu"},
		{"T1 + 5", "5 has no unit, but T1 is a force. Try: 5 N", "5"},
		{"50 N m + 3", "3 has no unit, but 50 N m is a moment. Try: a unit after 3", "3"},
		{"0, 1, h", "1 has no unit, but h is a length. Try: 1 m", "1"},
		{"h, 1, 0", "1 has no unit, but h is a length. Try: 1 m", "1"},
		{"h, W, 0", "the components of a vector must be of one kind, but h is a length and W is a force", "h, W, 0"},
		{"min(1, h)", "1 has no unit, but h is a length. Try: 1 m", "1"},
		{"hypot(W, h)", "hypot takes quantities of one kind, but W is a force and h is a length", "hypot(W, h)"},
		{"sqrt(2 m)", "2 m is a length, so the unit of its root would have a fractional power", "sqrt(2 m)"},
		{"h^0.5", "h is a length, so the unit of h^0.5 would have a fractional power", "h^0.5"},
		{"2^h", "an exponent must be a plain number, but h is a length", "h"},
		{"2 m^0.5", "the power of a unit must be a whole number. Try: the form m^2, or parentheses around the quantity", "^0.5"},
		{"2 m^99", "the power of a unit is at most 12, not 99", "99"},
		{"exp(h)", "exp takes a plain number, but h is a length", "h"},
		{"(1 m)^100*(1 m)^100", "the powers of the units of (1 m)^100*(1 m)^100 are too high", "(1 m)^100*(1 m)^100"},
		// vectors
		{"A*T", "the vectors A and T cannot be multiplied with *. Try: dot(a, b) or cross(a, b)", "A*T"},
		{"2/A", "the divisor A is a vector", "2/A"},
		{"A + 2 m", "A is a vector and 2 m is a number, so they cannot be added", "A + 2 m"},
		{"A^2", "the vector A cannot be raised to a power. Try: dot(a, a) for its square", "A^2"},
		{"sin(A)", "sin takes a number, but A is a vector. Try: sin(angle)", "A"},
		{"dir(A, 3)", "dir takes a vector or a point, but 3 is a number. Try: dir(A, B)", "3"},
		{"dir(A, A)", "A and A coincide, so dir(A, A) has no direction. Try: two different points", "dir(A, A)"},
		{"dir(O, (0, 0, 0))", "O and (0, 0, 0) coincide, so dir(O, (0, 0, 0)) has no direction. Try: two different points", "dir(O, (0, 0, 0))"},
		{"unit(O)", "O is zero, so unit(O) has no direction. Try: a vector other than zero", "unit(O)"},
		{"(A, 1, 2)", "a component must be a number, but A is a vector", "A"},
		{"polar(30)", "polar is for a problem in a plane, but this one is in space. Try: angles(a, b, c) or bearing(azimuth, elevation)", "polar(30)"},
		{"angles(60 deg, 45 deg, 100 deg)", "the squares of the cosines of the direction angles must add up to 1, not 0.7802. Try: 60.00 or 120.0 deg for the third", "angles(60 deg, 45 deg, 100 deg)"},
		{"angles(10, 20, 30)", "the squares of the cosines of the direction angles must add up to 1, not 2.6029", "angles(10, 20, 30)"},
		// unknowns
		{"2*T1*T2", "2*T1*T2 multiplies two unknowns; only linear relations between magnitudes are possible", "2*T1*T2"},
		{"3/T1", "3/T1 divides by an unknown; only linear relations between magnitudes are possible", "3/T1"},
		{"T1^2", "T1^2 is a power of an unknown; only linear relations between magnitudes are possible", "T1^2"},
		{"abs(T1)", "abs(T1) is a function of an unknown; only linear relations between magnitudes are possible", "abs(T1)"},
		{"T1*x", "a vector must be known, but T1 is an unknown. Try: separate cells for the direction and the magnitude", "T1*x"},
		{"(T1, 0, 0)", "a component must be known, but T1 is an unknown. Try: a direction, with T1 as the magnitude", "T1"},
		// uncertainty
		{"(6 ± 1)*2", "± must come last in a value. Try: the form 6 m ± 2 cm", "6 ± 1"},
		{"6 ± 1 ± 2", "± must come last in a value. Try: the form 6 m ± 2 cm", "±"},
		{"sin(30 ± 1)", "± must come last in a value. Try: the form 6 m ± 2 cm", "±"},
		{"6 m ± -2 cm", "an uncertainty cannot be negative, but -2 cm is. Try: it without the minus sign", "-2 cm"},
		{"6 m ± 2 N", "a value and its uncertainty must be of one kind, but 6 m is a length and 2 N is a force", "6 m ± 2 N"},
		{"6 m ± 2", "2 has no unit, but 6 m is a length. Try: a unit after 2", "2"},
		{"6 m ± -5 %", "an uncertainty cannot be negative, but -5 % is. Try: it without the minus sign", "-5 %"},
		{"0 m ± 5 %", "5 % of zero is zero. Try: the uncertainty itself, as in 0 m ± 2 cm", "0 m ± 5 %"},
		{"6 m ± 5 m %", "a percentage must be a plain number, but 5 m is not", "5 m %"},
		{"mu ± 2 cm", "mu has no unit, but 2 cm is a length. Try: a value with a unit", "mu"},
		{"A ± 1 m", "± must follow a number, but A is a vector. Try: ± after each component", "A ± 1 m"},
		{"h ± A", "an uncertainty must be a number, but A is a vector", "A"},
		{"T1 ± 1 N", "T1 is an unknown and cannot have an uncertainty", "T1 ± 1 N"},
		{"W ± T1", "an uncertainty must be known, but T1 is an unknown", "T1"},
		// too much
		{strings.Repeat("(", 80) + "1" + strings.Repeat(")", 80), "the expression is nested more than 64 deep. Try: split it over named values", "("},
		{strings.Repeat("-", 80) + "1", "the expression is nested more than 64 deep. Try: split it over named values", "-"},
		{long, "a cell may contain at most 4096 characters", "1"},
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
		v, err = Want(v, c.dim, set.For(c.dim), diag.Between(0, len(c.text)))
		if err != nil || !near(v.V[0], c.want) || v.Dim != c.dim {
			t.Errorf("Want(%q, %v) = %v %v, %v", c.text, c.dim, v.V[0], v.Dim, err)
		}
	}
	v, _ := evalText("6 ± 0.5", newDesk())
	if v, err := Want(v, Force, set.Force, diag.Span{}); err != nil || v.V[0] != 6000 || v.Plus[0] != 500 {
		t.Errorf("a bare uncertainty: %v ± %v, %v", v.V, v.Plus, err)
	}
	v, _ = evalText("1, 2 ± 0.5", newDesk())
	if v, err := WantVector(v, Force, set.Force, diag.Span{}); err != nil || v.V != [3]float64{1000, 2000} || v.Plus[1] != 500 {
		t.Errorf("a bare vector: %v ± %v, %v", v.V, v.Plus, err)
	}
	for _, c := range []struct {
		text string
		dim  Dim
		want string
	}{
		{"2 N", Length, "expected a length, but 2 N is a force. Try: a value in m"},
		{"2 N", Number, "expected a number, but 2 N is a force. Try: a number without a unit"},
		{"2 N", Moment, "expected a moment, but 2 N is a force. Try: a value in kN m"},
		{"2 kg m", Force, "expected a force, but 2 kg m is a quantity in kg m. Try: a value in kN"},
		{"20 kg", Force, `20 kg is a mass, not a force. Try: 20 kg * g, or the kind weight`},
		{"20 kg + 3 kg", Force, `20 kg + 3 kg is a mass, not a force. Try: (20 kg + 3 kg) * g, or the kind weight`},
		{"6,0", Length, "expected one value, but 6,0 is two. Try: 6.0"},
		{"-6,25", Length, "-6,25 can be read two ways. Try: -625 or -6.25"},
		{"6, 0", Length, "expected one value, but 6, 0 is two"},
		{"1,2,3", Length, "expected one value, but 1,2,3 is three"},
		{"A", Length, "expected one value, but A is three"},
		{"1.7e308", Force, "1.7e308 is too large"},
	} {
		v, err := evalText(c.text, newDesk())
		if err != nil {
			t.Fatal(err)
		}
		whole := diag.Between(0, len(c.text))
		if _, err := Want(v, c.dim, set.For(c.dim), whole); err == nil || err.Error() != c.want || err.Span != whole {
			t.Errorf("Want(%q, %v): %v\nwant %s", c.text, c.dim, err, c.want)
		}
	}
	if _, err := WantVector(Scalar(3, Length), Length, set.Length, diag.Span{}); err == nil ||
		err.Error() != "expected a vector, but 3 m is a single value. Try: components separated by commas" {
		t.Errorf("WantVector of a scalar: %v", err)
	}
}

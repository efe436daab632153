package units

import (
	"math"
	"reflect"
	"testing"

	"trivet/mechanics/diag"
)

// FuzzCell: whatever is typed, a cell either gives a finite value, the same
// each time, or an error inside the text that says something. Never a panic.
func FuzzCell(f *testing.F) {
	for _, seed := range []string{
		"6 cos 30°", "3 ft 6 in", `5'-6 1/2"`, "(3i - 4k) N", "6 ± 0.02 m", "T + 2 m * dir(T, A)",
		"12 300/400",            // two readings
		"1e400",                 // overflow in the text
		"1e-999999999999999999", // an exponent no integer holds
		"0^-0.5", "(-1)^0.5",    // no number comes of it
		"2^2^2^2^2^2",                                                                  // far too large
		"((((((((((",                                                                   // nothing but openings
		"2 m^-12/s^12",                                                                 // powers at their bound
		"\xff\xc3(",                                                                    // not UTF-8
		"5 \x1b[2J",                                                                    // would clear a screen
		"1,200 lb", "-1,200.5 lb ± 5 %", "1,200", "1.234,5 N", "(1,200) lb", "0,750 m", // commas in numbers
		"3-1/2 in", "3-1/2", "6-in", "5 ft-6", "160 lb-ft", "5 lb.-ft.", "kN-", // hyphens
		"slope 3:4", "slope -h:4 m", "slope 3", "slope 0:0", "3:4", ":", "%", "5 %", "0 ± 5 %",
		"(0, ?) N", "(?, ?, ?) N m", "5 kN/m2", "2 mN",
		"1..2", "..", "1.", ".", // dots
		"3 1/0 in", "1/0 in", // a fraction without value
		"5'-", "5'-6", "-5'-6\"", // half-typed feet
		"N N N", "2 N g", "g g", // units and a name of one spelling
		"T1 - T1", "0*T1 + 1 N", // an unknown that cancels
		"dir(A, A)", "unit(0, 0)", // no direction
		"²", "2⁻", "2⁻⁹⁹⁹⁹", // raised digits
		"angles(90, 90, 0)", "bearing(1e300)",
		"?, ?", "(?)", "2*(?)",
		"late", "mute + 1",
		"1\u202f000", "1 000 00",
		"a.b.c", "a..b",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if one, err := ParseOne(text); err != nil {
			checkError(t, text, err)
		} else if as, grouped := one.Grouped(); grouped {
			// What a note says it is read as is read alike without commas.
			again, err := Parse(as)
			if err != nil {
				t.Fatalf("%q is read as %q: %v", text, as, err)
			}
			v, err1 := one.Eval(newDesk())
			w, err2 := again.Eval(newDesk())
			if (err1 == nil) != (err2 == nil) || v.V != w.V || v.Dim != w.Dim {
				t.Fatalf("%q = %v %v, and %q = %v %v", text, v, err1, as, w, err2)
			}
		}
		_, _, _, _ = ReadPrinted(text, DefaultSet(), Force)
		e, err := Parse(text)
		if err != nil {
			checkError(t, text, err)
			return
		}
		checkSpan(t, text, e.Span())
		parts, _ := e.Tuple()
		for _, part := range parts {
			checkSpan(t, text, part.Span())
		}
		v, err := e.Eval(newDesk())
		again, err2 := e.Eval(newDesk())
		if !reflect.DeepEqual(v, again) || !reflect.DeepEqual(err, err2) {
			t.Fatalf("%q: %v %v, and then %v %v", text, v, err, again, err2)
		}
		if err != nil {
			checkError(t, text, err)
			return
		}
		if !v.Finite() || v.N < 1 || v.N > 3 {
			t.Fatalf("%q = %v", text, v)
		}
		for i, x := range v.V {
			if i >= v.N && x != 0 || math.Signbit(v.Plus[i]) || math.IsInf(v.Plus[i], 0) || math.IsNaN(v.Plus[i]) {
				t.Fatalf("%q = %v ± %v", text, v.V, v.Plus)
			}
		}
		for _, term := range v.Terms {
			if math.IsInf(term.Coef, 0) || math.IsNaN(term.Coef) || v.N != 1 {
				t.Fatalf("%q = %v", text, v)
			}
		}
		for _, d := range []Dim{Length, Force, Number} {
			for _, want := range []func(Value, Dim, Unit, diag.Span) (Value, *diag.Error){Want, WantVector} {
				if w, err := want(v, d, DefaultSet().For(d), e.Span()); err != nil {
					checkError(t, text, err)
				} else if !w.Finite() || w.Dim != d {
					t.Fatalf("%q is wanted as %v and gives %v", text, d, w)
				}
			}
		}
	})
}

func checkError(t *testing.T, text string, err *diag.Error) {
	t.Helper()
	if err.Msg == "" {
		t.Errorf("%q: an error without words", text)
	}
	checkSpan(t, text, err.Span)
}

// FuzzFigures: what is printed reads back, within the rounding that the
// printing allows itself.
func FuzzFigures(f *testing.F) {
	for _, seed := range []struct {
		x       float64
		figures int
	}{
		{2.675, 3}, {0.045, 1}, {999.5, 3}, {-4e-4, 2}, {12345, 3}, {1e7, 3}, {9999999.5, 8},
		{5e-324, 3},               // the least float
		{math.MaxFloat64, 17},     // the greatest
		{math.Copysign(0, -1), 3}, // a zero with a sign
		{100000, 1},               // a group of zeros only
		{1e22, 25},                // more figures than there are
	} {
		f.Add(seed.x, seed.figures)
	}
	f.Fuzz(func(t *testing.T, x float64, figures int) {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return
		}
		figures = min(max(figures, 1), 20)
		read := func(text string) float64 {
			v, err := evalText(text, alone{set: DefaultSet()})
			if err != nil {
				// Rounding may carry the greatest floats out of range.
				if math.Abs(x) > math.MaxFloat64/2 {
					return x
				}
				t.Fatalf("%v prints as %q: %v", x, text, err)
			}
			return v.V[0]
		}
		text := Figures(x, figures)
		const spacing = 0x1p-52                        // of the floats, which 16 figures come near to
		half := 0.5 * math.Pow(10, 1-float64(figures)) // relative to the leading digit's place
		if got := read(text); math.Abs(got-x) > half*math.Abs(x)*(1+1e-9)+spacing*math.Abs(x)+math.SmallestNonzeroFloat64 {
			t.Errorf("%v to %d figures is %q, which reads as %v", x, figures, text, got)
		}
		if text == "-0" || x < 0 != (text[0] == '-') {
			t.Errorf("%v prints as %q", x, text)
		}
		if got := read(Compact(x)); got != x {
			t.Errorf("%v in full is %q, which reads as %v", x, Compact(x), got)
		}
		if math.Abs(x) < 1e7 {
			places := figures % 8
			text := Decimals(x, places)
			if got := read(text); math.Abs(got-x) > 0.5*math.Pow(10, -float64(places))*(1+1e-9)+1e-9*math.Abs(x) {
				t.Errorf("%v with %d decimals is %q, which reads as %v", x, places, text, got)
			}
		}
		if x != 0 && (math.Abs(x) > 1e300 || math.Abs(x) < 1e-300) {
			return // a unit's factor may carry it out of the normal numbers
		}
		for _, u := range []Unit{DefaultSet().For(Moment), DefaultSet().Angle, *bySymbol["kip"]} {
			text := u.Format(x, figures)
			value, printed, dim, err := ReadPrinted(text, DefaultSet(), Number)
			if err != nil {
				t.Fatalf("%v prints as %q: %v", x, text, err)
			}
			if dim != u.Dim || math.Abs(value-x) > max(printed, half*math.Abs(x))*(1+1e-9)+1e-14*math.Abs(x) {
				t.Errorf("%v prints as %q, which reads as %v ± %v", x, text, value, printed)
			}
		}
	})
}

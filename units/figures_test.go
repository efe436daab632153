package units

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestFigures(t *testing.T) {
	for _, c := range []struct {
		x       float64
		figures int
		want    string
	}{
		{0, 3, "0"},
		{math.Copysign(0, -1), 3, "0"},
		{1, 3, "1.00"},
		{-1, 1, "-1"},
		{760.93, 3, "761"},
		// half up on the decimal that is seen, whichever way the float lies
		{2.675, 3, "2.68"},
		{1.005, 3, "1.01"},
		{-1.005, 3, "-1.01"},
		{0.045, 1, "0.05"},
		{0.045, 3, "0.0450"},
		{2.5, 1, "3"},
		{9.995, 3, "10.0"},
		{999.5, 3, "1000"},
		{99950, 3, "100 000"},
		{0.9995, 3, "1.00"},
		{9.99499999999999, 3, "9.99"},
		// thousands, NIST SP 811 (2008), 10.5.3: four digits are not parted
		{1234, 4, "1234"},
		{9999.5, 4, "10 000"},
		{12345, 3, "12 300"},
		{-12345.678, 7, "-12 345.68"},
		{1234567, 7, "1 234 567"},
		// powers of ten
		{9999999, 7, "9 999 999"},
		{9999999, 3, "1.00e7"},
		{1e7, 3, "1.00e7"},
		{1.891e-3, 3, "0.00189"},
		{1e-3, 3, "0.00100"},
		{9.994e-4, 3, "9.99e-4"},
		{9.996e-4, 3, "0.00100"},
		{-4e-4, 2, "-4.0e-4"},
		{5e-324, 3, "5.00e-324"},
		{1.7976931348623157e308, 3, "1.80e308"},
		// limits
		{math.Pi, 0, "3"},
		{math.Pi, -5, "3"},
		{0.5, 20, "0.50000000000000000000"},
		{math.NaN(), 3, "not a number"},
		{math.Inf(-1), 3, "not a number"},
	} {
		if got := Figures(c.x, c.figures); got != c.want {
			t.Errorf("Figures(%v, %d) = %q, want %q", c.x, c.figures, got, c.want)
		}
	}
}

func TestDecimals(t *testing.T) {
	for _, c := range []struct {
		x      float64
		places int
		want   string
	}{
		{0, 2, "0.00"},
		{2.675, 2, "2.68"},
		{1.005, 2, "1.01"},
		{-0.0004, 3, "0.000"},
		{-0.0005, 3, "-0.001"},
		{0.5, 0, "1"},
		{0.4, 0, "0"},
		{0.06, 0, "0"},
		{0.95, 1, "1.0"},
		{0.095, 1, "0.1"},
		{99999.95, 1, "100 000.0"},
		{1e-320, 4, "0.0000"},
		{1.25e9, 1, "1.3e9"},
		{9.99e9, 1, "1.0e10"},
		{3, -2, "3"},
		{math.NaN(), 2, "not a number"},
	} {
		if got := Decimals(c.x, c.places); got != c.want {
			t.Errorf("Decimals(%v, %d) = %q, want %q", c.x, c.places, got, c.want)
		}
	}
}

func TestCompact(t *testing.T) {
	for _, c := range []struct {
		x    float64
		want string
	}{
		{0, "0"}, {math.Copysign(0, -1), "0"}, {0.1, "0.1"}, {-1234567.25, "-1234567.25"}, {12300, "12300"},
		{1e7, "1e7"}, {1.5e-7, "1.5e-7"}, {1.0 / 3, "0.3333333333333333"}, {math.Inf(1), "not a number"},
	} {
		if got := Compact(c.x); got != c.want {
			t.Errorf("Compact(%v) = %q, want %q", c.x, got, c.want)
		}
	}
}

func TestFormat(t *testing.T) {
	unit := func(s string) Unit {
		u, err := ParseUnit(s)
		if err != nil {
			t.Fatal(err)
		}
		return u
	}
	for _, c := range []struct {
		si      float64
		unit    Unit
		figures int
		want    string
	}{
		{760.93, unit("N"), 3, "761 N"},
		{math.Pi / 6, unit("°"), 2, "30 deg"},
		{0.045 * math.Pi / 180, unit("deg"), 1, "0.05 deg"},
		{2675, unit("kN"), 3, "2.68 kN"},
		{400 * poundF, unit("lb"), 3, "400 lbf"},
		{12.345 * poundF * foot, unit("lbf ft"), 4, "12.35 lbf ft"},
		{0.25, DefaultSet().For(Number), 3, "0.250"},
		{0, unit("N m"), 3, "0 N m"},
	} {
		if got := c.unit.Format(c.si, c.figures); got != c.want {
			t.Errorf("%v in %s to %d figures: %q, want %q", c.si, c.unit.Symbol, c.figures, got, c.want)
		}
	}
}

func TestReadPrinted(t *testing.T) {
	deg := math.Pi / 180
	for _, c := range []struct {
		text        string
		d           Dim
		value, half float64
		dim         Dim
	}{
		{"761 N", Force, 761, 0.5, Force},
		{"-761 N", Force, -761, 0.5, Force},
		{"43.8", Force, 43.8, 0.05, Force},
		{"43.80", Force, 43.8, 0.005, Force},
		{"6.0e2 N", Force, 600, 5, Force},
		{"6e2 N", Force, 600, 50, Force},
		{"1.30 kN", Force, 1300, 5, Force},
		{"12 300 N", Force, 12300, 0.5, Force},
		{"22.62 deg", Angle, 22.62 * deg, 0.005 * deg, Angle},
		{"22.62°", Force, 22.62 * deg, 0.005 * deg, Angle}, // the dimension as printed
		{"215.6 lb", Force, 215.6 * poundF, 0.05 * poundF, Force},
		{"22.6", Angle, 22.6 * deg, 0.05 * deg, Angle},
		{"-49*sqrt(3)/3 N", Force, -49 * math.Sqrt(3) / 3, 1e-9 * 49 * math.Sqrt(3) / 3, Force},
		{"50/3", Force, 50.0 / 3, 1e-9 * 50 / 3, Force},
		{"1/2 kN", Force, 500, 1e-9 * 500, Force},
		{"500 N ± 5 N", Force, 500, 5, Force},
		{"0", Moment, 0, 0.5, Moment},
		// arithmetic is held to the figures of its inputs (the rule of significant figures, common practice)
		{"2*761 N", Force, 1522, 5, Force},
		{"2*761.0 N", Force, 1522, 0.5, Force},
		{"10*9.81 N", Force, 98.1, 0.05, Force},
		{"0.5*761 N", Force, 380.5, 0.5, Force}, // a bare factor counts as three figures at least
		{"2*761 lb", Force, 1522 * poundF, 5 * poundF, Force},
		{"2*0.761 kN", Force, 1522, 5, Force},
		{"500 N + 26.1 N", Force, 526.1, 0.5, Force},
		{"761 N*cos(60 deg)", Force, 380.5, 0.5, Force},
		{"sqrt(3)*761 N", Force, math.Sqrt(3) * 761, 5, Force},
		{"sqrt(3)/2 kN", Force, 500 * math.Sqrt(3), 1e-9 * 500 * math.Sqrt(3), Force},
		{"sqrt(50^2 + 37^2) N", Force, math.Hypot(50, 37), 0.5, Force},
		{"sqrt(50^2 + 37^2)", Force, math.Hypot(50, 37), 0.5, Force},
		{"hypot(50, 37) kN", Force, 1000 * math.Hypot(50, 37), 500, Force},
		{"sqrt((50 N)^2 + (37 N)^2)", Force, math.Hypot(50, 37), 0.5, Force},
		{"sqrt(3^2 + 4^2) N", Force, 5, 5e-9, Force}, // whole numbers of one digit are exact
		{"(100/(1 + sqrt(3))) N", Force, 100 / (1 + math.Sqrt(3)), 1e-7 / (1 + math.Sqrt(3)), Force},
		{"(100 + 55) N", Force, 155, 0.5, Force},
		{"100 N/1.59", Force, 100 / 1.59, 0.05, Force},
		{"2*761", Force, 1522, 1e-9 * 1522, Force},
		{"5 ft 6 in", Length, 66 * inch, 0.5 * inch, Length},
		{"1,200 lb", Force, 1200 * poundF, 0.5 * poundF, Force},
		{"0.29", Number, 0.29, 0.005, Number},
	} {
		value, half, dim, err := ReadPrinted(c.text, DefaultSet(), c.d)
		if err != nil || !near(value, c.value) || math.Abs(half-c.half) > 1e-12*c.half || dim != c.dim {
			t.Errorf("ReadPrinted(%q) = %v, %v, %v, %v, want %v, %v, %v", c.text, value, half, dim, err, c.value, c.half, c.dim)
		}
	}
	for text, want := range map[string]string{
		"":       "a value is missing",
		"761 NN": `unknown unit "NN". Try: N`,
		"T1":     `unknown name "T1"`,
		"1,200":  "1,200 can be read two ways. Try: 1200 or 1.200",
		"1, 2":   "expected one value, but 1, 2 is two",
		"?":      "expected a value, but ? is an unknown",
	} {
		if _, _, _, err := ReadPrinted(text, DefaultSet(), Force); err == nil || err.Error() != want {
			t.Errorf("ReadPrinted(%q): %v, want %q", text, err, want)
		}
	}
}

// The short way of Decimals gives what the digits give.
func TestFewDecimals(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 18))
	short := 0
	for range 200000 {
		x, places := (r.Float64()-0.5)*math.Pow10(r.IntN(12)-6), r.IntN(8)
		if r.IntN(3) == 0 { // a decimal, or the middle between two
			x = math.Round(x*2e3) / 2e3
		}
		got, ok := fewDecimals(x, places)
		if !ok {
			continue
		}
		short++
		var digits room
		d := shortest(x, -1, &digits)
		d = d.round(max(d.exp+1+places, -1))
		if want := d.plain(places, true); got != want {
			t.Fatalf("%v to %d decimals is %q, want %q", x, places, got, want)
		}
	}
	if short < 100000 {
		t.Errorf("only %d go the short way", short)
	}
}

// A value in a unit is printed as the number that it comes to in it.
func TestFormatIsFiguresIn(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 17))
	for range 200000 {
		u := Unit{Factor: []float64{0, 1, 0.0254, 4.4482216152605, 1e-9, math.Pi / 180}[r.IntN(6)]}
		x := math.Float64frombits(r.Uint64())
		switch r.IntN(4) {
		case 0: // of sizes that a sheet has
			x = (r.Float64() - 0.5) * math.Pow10(r.IntN(16)-8)
		case 1: // near to a decimal of few digits
			x = math.Nextafter(math.Round(x*1000)/1000, float64(r.IntN(3)-1)) * u.Factor
		case 2:
			x = float64(r.IntN(4001)-2000) / 16
		}
		n := r.IntN(20)
		if got, want := u.Format(x, n), Figures(u.In(x), n); got != want {
			t.Fatalf("%v over %v to %d figures is %q, want %q", x, u.Factor, n, got, want)
		}
	}
}

// Two values that differ are printed so that they do, and equal ones alike.
func TestApart(t *testing.T) {
	for _, c := range []struct {
		a, b float64
		x, y string
	}{
		{2.85008, 2.84966, "2.8501", "2.8497"},
		{2, 1, "2.00", "1.00"},
		{5, 5, "5.00000000000", "5.00000000000"},
	} {
		if x, y := (Unit{}).Apart(c.a, c.b, 3); x != c.x || y != c.y {
			t.Errorf("%v and %v are %s and %s, want %s and %s", c.a, c.b, x, y, c.x, c.y)
		}
	}
}

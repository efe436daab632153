package units

import (
	"math"
	"testing"

	"trivet/mechanics/diag"
)

func TestScalars(t *testing.T) {
	for _, c := range []struct {
		text string
		dim  Dim
		want float64
	}{
		// numbers
		{"6", Number, 6},
		{".5", Number, 0.5},
		{"6.", Number, 6},
		{"6e3", Number, 6000},
		{"6E-3", Number, 0.006},
		{"-0", Number, 0},
		{"0*-3 m", Length, 0},
		{"12 300", Number, 12300},
		{"1 234 567.5", Number, 1234567.5},
		{"12\u202f300", Number, 12300},
		{"12 300/2", Number, 6150},
		{"12 300 N", Force, 12300},
		{"0e999999999999", Number, 0},
		// quantities
		{"6 m", Length, 6},
		{"600cm", Length, 6},
		{"35 cm", Length, 0.35},
		{"6e3 mm", Length, 6},
		{"400 lb", Force, 1779.288646104200},
		{"400 lbf", Force, 1779.288646104200},
		{"0.4 kip", Force, 1779.288646104200},
		{"20 kg", Mass, 20},
		{"5 g", Mass, 0.005},
		{"5 t", Mass, 5000},
		{"30 deg", Angle, math.Pi / 6},
		{"30°", Angle, math.Pi / 6},
		{"30 °", Angle, math.Pi / 6},
		{"45/2°", Angle, math.Pi / 8},
		{"100 gon", Angle, math.Pi / 2},
		{"1/4 turn", Angle, math.Pi / 2},
		// compounds
		{"2 kN/m", LineLoad, 2000},
		{"50 N m", Moment, 50},
		{"50 N·m", Moment, 50},
		{"50 N⋅m", Moment, 50},
		{"50 kN*m", Moment, 50e3},
		{"12 lbf ft", Moment, 12 * poundF * foot},
		{"9.81 m/s^2", Acceleration, 9.81},
		{"9.81 m/s²", Acceleration, 9.81},
		{"9.81 m s^-2", Acceleration, 9.81},
		{"9.81 m s⁻²", Acceleration, 9.81},
		{"5 N/mm^2", Pressure, 5e6},
		{"5 N/mm/mm", Pressure, 5e6},
		{"160 lb-ft", Moment, 160 * poundF * foot},
		{"180 kN-m", Moment, 180e3},
		{"180 kN‑m", Moment, 180e3},
		{"12 ft-lb", Moment, 12 * foot * poundF},
		{"2 kip-ft/ft", Force, 2000 * poundF},
		{"5 ft. 6 in.", Length, 66 * inch},
		{"400 lb.", Force, 400 * poundF},
		{"2 m^2", Area, 2},
		{"2 m²", Area, 2},
		{"24 kN/m³", Dim{L: -2, M: 1, T: -2}, 24e3},
		{"7850 kg/m^3", Dim{L: -3, M: 1}, 7850},
		{"2 m/2 m", Number, 1},
		{"10 N/2 m", LineLoad, 5},
		{"sqrt(3)/2 m", Length, math.Sqrt(3) / 2},
		{"-49*sqrt(3)/3 N", Force, -49 * math.Sqrt(3) / 3},
		{"1/(2 m)", Dim{L: -1}, 0.5},
		{"1/1/2 in", Length, 0.0127},
		{"2^1/2 in", Length, 0.0254},

		// carpenters
		{"1/2 in", Length, 0.0127},
		{"-1/2 in", Length, -0.0127},
		{"3 1/2 in", Length, 0.0889},
		{"3 1/2", Number, 3.5},
		{"3 ft 6 in", Length, 1.0668},
		{"-3 ft 6 in", Length, -1.0668},
		{"3 ft - 6 in", Length, 0.762},
		{"3 1/2 ft", Length, 1.0668},
		{`5'-6 1/2"`, Length, 66.5 * inch},
		{`5' - 6 1/2"`, Length, 66.5 * inch},
		{`5'6"`, Length, 66 * inch},
		{`5' 1/2"`, Length, 60.5 * inch},
		{`5′ 6″`, Length, 66 * inch},
		{`5’-6”`, Length, 66 * inch},
		{`-5'-6"`, Length, -66 * inch},
		{`5' - 6'`, Length, -foot},
		{`8'`, Length, 8 * foot},
		{`6 1/2"`, Length, 6.5 * inch},
		{`2*5'-6"`, Length, 132 * inch},
		// operators
		{"10*9.81 N", Force, 98.1},
		{"2*W/3", Force, 2 * 400 * poundF / 3},
		{"sqrt(3)/2", Number, math.Sqrt(3) / 2},
		{"√3/2", Number, math.Sqrt(3) / 2},
		{"2√3", Number, 2 * math.Sqrt(3)},
		{"√3 m", Length, math.Sqrt(3)},
		{"2√3 kN/m", LineLoad, 2000 * math.Sqrt(3)},
		{"√3/2 kN", Force, 500 * math.Sqrt(3)},
		{"√(9 m^2)", Length, 3},
		{"½ kN", Force, 500},
		{"3½ in", Length, 3.5 * inch},
		{"3 ½ in", Length, 3.5 * inch},
		{"2/½", Number, 4},
		{"⅔^2", Number, 4. / 9},
		{"5'-6½\"", Length, 66.5 * inch},
		{"5 ft 6¾ in", Length, 66.75 * inch},
		{"6*cos(30 deg)", Number, 3 * math.Sqrt(3)},
		{"6 cos 30°", Number, 3 * math.Sqrt(3)},
		{"6 cos 30 deg", Number, 3 * math.Sqrt(3)},
		{"6 cos 30", Number, 3 * math.Sqrt(3)},
		{"cos -60°", Number, 0.5},
		{"2 kN cos(60°)", Force, 1000},
		{"N cos 60°", Force, 5},
		{"4 sin 30° cos 60°", Number, 1},
		{"(1+1) sqrt(4)", Number, 4},
		{"6 m * cos 60°/2", Length, 1.5},
		{"2 (3+4)", Number, 14},
		{"(1+2)(3+4)", Number, 21},
		{"1/2 (3+4)", Number, 3.5},
		{"1/2 W", Force, 200 * poundF},
		{"2h", Length, 12},
		{"2 h^2", Area, 72},
		{"-2^2", Number, -4},
		{"2^-1", Number, 0.5},
		{"2^3^2", Number, 512},
		{"10^3 N", Force, 1000},
		{"6×10^3 N", Force, 6000},
		{"2² + 1", Number, 5},
		{"6 ÷ 4", Number, 1.5},
		{"5 − 3", Number, 2},
		{"5–3", Number, 2},
		{"(2 m)^2", Area, 4},
		{"(8 m^3)^(1/3)", Length, 2},
		{"2 pi", Number, 2 * math.Pi},
		{"π/2 rad", Angle, math.Pi / 2},
		{"2 pi/3 rad", Angle, 2 * math.Pi / 3},
		{"(3 + 4) m", Length, 7},
		{"h + 0", Length, 6},
		{"0 - h", Length, -6},
		{"0*3 + h", Length, 6},
		// a name comes before the unit of that spelling, except behind a number
		{"0.3*N", Force, 3},
		{"0.3 N", Force, 0.3},
		{"mu*N", Force, 3},
		{"20 kg * g", Force, 196.2},
		{"20 kg * 9.81 m/s^2", Force, 196.2},
		{"20 N / g", Mass, 20 / 9.81},
		{"0.3*kN", Force, 300},
		{"W*2-N", Force, 800*poundF - 10},
		{"W*3-1/2 N", Force, 1200*poundF - 0.5},
		{"(3-1/2)*2", Number, 5},
		// functions
		{"hypot(3 m, 4 m)", Length, 5},
		{"hypot(1, 2, 2)", Number, 3},
		{"abs(-3 N)", Force, 3},
		{"min(1 m, 20 cm)", Length, 0.2},
		{"max(1 m, 20 cm, 0)", Length, 1},
		{"asin(1/2)", Angle, math.Pi / 6},
		{"acos(0)", Angle, math.Pi / 2},
		{"atan(1)", Angle, math.Pi / 4},
		{"atan2(1 m, -1 m)", Angle, 3 * math.Pi / 4},
		{"sin(90°)", Number, 1},
		{"cos(90°)", Number, 0},
		{"sin(180°)", Number, 0},
		{"tan(180°)", Number, 0},
		{"tan 45°", Number, 1},
		{"exp(0.3*180°)", Number, math.Exp(0.3 * math.Pi)},
		{"ln(exp(2))", Number, 2},
		{"sqrt(4 m^2)", Length, 2},
		{"length(A)", Length, 4},
		{"length(O, T)", Length, 6},
		{"length(O, N)", Length, 3}, // the point N, not the line
		{"dot((1, 2, 3), (1, 1, 1) m)", Length, 6},
	} {
		v, err := evalText(c.text, newDesk())
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		if v.N != 1 || v.Dim != c.dim || !near(v.V[0], c.want) || math.Signbit(v.V[0]) && v.V[0] == 0 {
			t.Errorf("%q = %v %v (%d), want %v %v", c.text, v.V[0], v.Dim, v.N, c.want, c.dim)
		}
	}
}

func TestVectors(t *testing.T) {
	s := math.Sqrt(0.5)
	for _, c := range []struct {
		text string
		n    int
		dim  Dim
		want [3]float64
	}{
		{"4, 0, 0", 3, Number, [3]float64{4}},
		{"6,0", 2, Number, [3]float64{6, 0}},
		{"(3, 0, -4)", 3, Number, [3]float64{3, 0, -4}},
		{"0, 0, h", 3, Length, [3]float64{0, 0, 6}},
		{"-4 ft, 0, 10 ft 6 in", 3, Length, [3]float64{-1.2192, 0, 3.2004}},
		{"0, 8', 6'", 3, Length, [3]float64{0, 8 * foot, 6 * foot}},
		{"(100, -200, 50) N", 3, Force, [3]float64{100, -200, 50}},
		{"(-0.6, -0.4, 0) kN", 3, Force, [3]float64{-600, -400, 0}},
		{"(3i - 4k) N", 3, Force, [3]float64{3, 0, -4}},
		{"+x", 3, Number, [3]float64{1, 0, 0}},
		{"-y", 3, Number, [3]float64{0, -1, 0}},
		{"z", 3, Number, [3]float64{0, 0, 1}},
		{"(O + T)/2", 3, Length, [3]float64{0, 0, 3}},
		{"T + 2 m * dir(T, A)", 3, Length, [3]float64{2 * 4 / math.Sqrt(52), 0, 6 - 2*6/math.Sqrt(52)}},
		{"A + (1 m, 2 m)", 3, Length, [3]float64{5, 2, 0}},
		{"dir(O, T)", 3, Number, [3]float64{0, 0, 1}},
		{"dir(O, N)", 3, Number, [3]float64{0, 1, 0}},
		{"unit((3, 4))", 2, Number, [3]float64{0.6, 0.8}},
		{"cross(x, y)", 3, Number, [3]float64{0, 0, 1}},
		{"angles(60 deg, 45 deg, 120 deg)", 3, Number, [3]float64{0.5, s, -0.5}},
		{"angles(60, 45, 120)", 3, Number, [3]float64{0.5, s, -0.5}},
		{"bearing(0)", 3, Number, [3]float64{0, 1, 0}},
		{"bearing(90°)", 3, Number, [3]float64{1, 0, 0}},
		{"bearing(225°, 45°)", 3, Number, [3]float64{-0.5, -0.5, s}},
		{"-A", 3, Length, [3]float64{-4, 0, 0}},
		{"2 A", 3, Length, [3]float64{8, 0, 0}},
	} {
		v, err := evalText(c.text, newDesk())
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		if v.N != c.n || v.Dim != c.dim || !near(v.V[0], c.want[0]) || !near(v.V[1], c.want[1]) || !near(v.V[2], c.want[2]) {
			t.Errorf("%q = %v %v (%d), want %v %v", c.text, v.V, v.Dim, v.N, c.want, c.dim)
		}
		for i, x := range v.V {
			if x == 0 && math.Signbit(x) {
				t.Errorf("%q: component %d is a negative zero", c.text, i)
			}
		}
	}
	plane := newDesk()
	plane.planar = true
	for text, want := range map[string][2]float64{
		"slope 3:4": {0.8, 0.6}, "slope -3:4": {0.8, -0.6}, "slope 3:-4": {-0.8, 0.6}, "-slope 3:4": {-0.8, -0.6},
		"slope 1.5 m:200 cm": {0.8, 0.6}, "slope h:8 m": {0.8, 0.6}, "slope(3, 4)": {0.8, 0.6}, "slope 1:0": {0, 1},
	} {
		// The compass of the desk points up along z; in a plane that is y.
		v, err := evalText(text, upright{plane})
		if err != nil || !near(v.V[0], want[0]) || !near(v.V[1], want[1]) || v.V[2] != 0 {
			t.Errorf("%s = %v, %v", text, v.V, err)
		}
	}
	v, err := evalText("polar(30 deg)", plane)
	if err != nil || !near(v.V[0], math.Sqrt(3)/2) || !near(v.V[1], 0.5) || v.V[2] != 0 {
		t.Errorf("polar(30 deg) = %v, %v", v.V, err)
	}
}

// Angles rounded to 0.01 deg are taken, and make a vector of length 1.
func TestAnglesRounded(t *testing.T) {
	// The direction (1, 2, 3): 74.4986, 57.6885, 36.6992 deg.
	v, err := evalText("angles(74.50, 57.69, 36.70)", newDesk())
	if err != nil {
		t.Fatal(err)
	}
	if !near(norm(v.V), 1) {
		t.Errorf("|u| = %v, want 1", norm(v.V))
	}
	if math.Abs(v.V[0]-1/math.Sqrt(14)) > 1e-4 {
		t.Errorf("u = %v, want along (1, 2, 3)", v.V)
	}
}

func TestAffine(t *testing.T) {
	for _, c := range []struct {
		text  string
		known float64
		terms []Term
	}{
		{"2*T1", 0, []Term{{"T1", 2}}},
		{"2 T1", 0, []Term{{"T1", 2}}},
		{"1/2 T1", 0, []Term{{"T1", 0.5}}},
		{"T1/4 - 3*T2 + 10 N", 10, []Term{{"T1", 0.25}, {"T2", -3}}},
		{"T2 + T1 + T2", 0, []Term{{"T2", 2}, {"T1", 1}}},
		{"-(T1 + 2 N)", -2, []Term{{"T1", -1}}},
		{"T1 - T1", 0, nil},
		{"0*T1", 0, nil},
		{"mu*T1", 0, []Term{{"T1", 0.3}}},
		{"T1 cos 60°", 0, []Term{{"T1", 0.5}}},
		{"T1 * cos 60°", 0, []Term{{"T1", 0.5}}},
	} {
		v, err := evalText(c.text, newDesk())
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		ok := v.Dim == Force && near(v.V[0], c.known) && len(v.Terms) == len(c.terms)
		for i := range v.Terms {
			ok = ok && v.Terms[i].Name == c.terms[i].Name && near(v.Terms[i].Coef, c.terms[i].Coef)
		}
		if !ok {
			t.Errorf("%q = %v %v + %v, want %v + %v", c.text, v.Dim, v.V[0], v.Terms, c.known, c.terms)
		}
	}
}

func TestUncertainty(t *testing.T) {
	for _, c := range []struct {
		text      string
		dim       Dim
		want, tol float64
	}{
		{"6 m ± 2 cm", Length, 6, 0.02},
		{"6 m +- 2 cm", Length, 6, 0.02},
		{"6 m +/- 2 cm", Length, 6, 0.02},
		{"6 ± 0.02", Number, 6, 0.02},
		{"6 ± 0.02 m", Length, 6, 0.02},
		{"-6 ± 2 cm", Length, -0.06, 0.02},
		{"6 m ± 0", Length, 6, 0},
		{"6 m ± 5 %", Length, 6, 0.3},
		{"-6 ± 5%", Number, -6, 0.3},
		{"w ± 1 %", Length, 2, 0.03},
		{"0 ± 2 cm", Length, 0, 0.02},
		{"w", Length, 2, 0.01},
		{"-w/2", Length, -1, 0.005},
		{"w*w", Area, 4, 0.04},
		{"1 m^2/w", Length, 0.5, 0.0025},
		{"w + w ± 1 mm", Length, 4, 0.021},
	} {
		v, err := evalText(c.text, newDesk())
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		if v.Dim != c.dim || !near(v.V[0], c.want) || !near(v.Plus[0], c.tol) {
			t.Errorf("%q = %v ± %v %v, want %v ± %v", c.text, v.V[0], v.Plus[0], v.Dim, c.want, c.tol)
		}
	}
	v, err := evalText("1 m ± 1 cm, 0, w ± 2 cm", newDesk())
	if err != nil || !near(v.Plus[0], 0.01) || v.Plus[1] != 0 || !near(v.Plus[2], 0.03) {
		t.Errorf("components: ± %v, %v", v.Plus, err)
	}
	v, err = evalText("(1 ± 1, 0, 2 ± 0.5) cm", newDesk())
	if err != nil || !near(v.Plus[0], 0.01) || !near(v.Plus[2], 0.005) {
		t.Errorf("components with a unit behind: ± %v, %v", v.Plus, err)
	}
}

func TestExprParts(t *testing.T) {
	e, err := Parse(" (1 m, ?, h) ")
	if err != nil {
		t.Fatal(err)
	}
	parts, ok := e.Tuple()
	if !ok || len(parts) != 3 {
		t.Fatalf("Tuple: %v %v", parts, ok)
	}
	if parts[0].Span() != (diag.Between(2, 5)) || parts[0].String() != "1 m" {
		t.Errorf("the first component is %q at %v", parts[0], parts[0].Span())
	}
	if !parts[1].IsQuestion() || parts[0].IsQuestion() {
		t.Error("the second component, and it alone, is a question")
	}
	if name, ok := parts[2].Name(); !ok || name != "h" {
		t.Errorf("the third component's name is %q, %v", name, ok)
	}
	for text, name := range map[string]string{"T1": "T1", " boom.loads.x ": "boom.loads.x", "φ": "φ", "2*T1": "", "T1 + 0": ""} {
		e, err := Parse(text)
		if err != nil {
			t.Errorf("%q: %v", text, err)
			continue
		}
		if got, ok := e.Name(); got != name || ok != (name != "") {
			t.Errorf("%q: name %q, %v", text, got, ok)
		}
		if _, ok := e.Tuple(); ok {
			t.Errorf("%q is no tuple", text)
		}
	}
	if e, err := Parse("?"); err != nil || !e.IsQuestion() {
		t.Errorf("? does not read: %v", err)
	}
	if e, err := Parse("(1, 2, 3) N"); err != nil {
		t.Error(err)
	} else if _, ok := e.Tuple(); ok {
		t.Error("a tuple with a unit behind has no components to read one by one")
	}
}

func TestRange(t *testing.T) {
	for _, c := range []struct {
		text      string
		dim       Dim
		low, high float64
	}{
		{"300 N .. 500 N", Force, 300, 500},
		{"300 N..500 N", Force, 300, 500},
		{"1..5", Number, 1, 5},
		{"1.5..2.5", Number, 1.5, 2.5},
		{"2 .. 4 kN/m", LineLoad, 2000, 4000},
		{"-2 .. 4 kN", Force, -2000, 4000},
		{"h/2 .. 2*h", Length, 3, 12},
	} {
		a, b, err := ParseRange(c.text)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		low, err1 := a.Eval(newDesk())
		high, err2 := b.Eval(newDesk())
		if err1 != nil || err2 != nil || low.Dim != c.dim || high.Dim != c.dim || !near(low.V[0], c.low) || !near(high.V[0], c.high) {
			t.Errorf("%q = %v .. %v, %v %v", c.text, low, high, err1, err2)
		}
	}
	for text, want := range map[string]string{
		"300 N":        "a range has two ends. Try: two dots and the high end behind it",
		"300 N ..":     "a value is missing after ..",
		".. 5 N":       "a value is missing before ..",
		"1 .. 2 .. 3":  "a range is not expected here. Try: a single value",
		"":             "a value is missing",
		"300 N, 400 N": "unexpected comma. Try: ( and ) around the components of a vector",
	} {
		if _, _, err := ParseRange(text); err == nil || err.Error() != want {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
}

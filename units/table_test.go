package units

import (
	"math"
	"slices"
	"testing"
)

// The factors as printed in NIST SP 811 (2008), Appendix B, where those that
// are not exact are rounded to seven figures.
func TestFactorsOfNIST(t *testing.T) {
	for _, c := range []struct {
		symbol, row, printed string
	}{
		{"ft", "foot (ft)", "3.048e-01"},
		{"in", "inch (in)", "2.54e-02"},
		{"yd", "yard", "9.144e-01"},
		{"mi", "mile", "1.609344e+03"},
		{"in^2", "square inch", "6.4516e-04"},
		{"ft^2", "square foot", "9.290304e-02"},
		{"in^3", "cubic inch", "1.638706e-05"},
		{"ft^3", "cubic foot", "2.831685e-02"},
		{"lbm", "pound (avoirdupois) (lb)", "4.535924e-01"},
		{"slug", "slug", "1.459390e+01"},
		{"t", "tonne", "1.0e+03"},
		{"kgf", "kilogram-force (kgf)", "9.80665e+00"},
		{"kip", "kip (1000 lbf)", "4.448222e+03"},
		{"lbf", "pound-force (lbf)", "4.448222e+00"},
		{"tonf", "ton-force (2000 lbf)", "8.896443e+03"},
		{"psi", "pound-force per square inch (psi)", "6.894757e+03"},
		{"lbf ft", "pound-force foot (lbf.ft)", "1.355818e+00"},
		{"lbf in", "pound-force inch (lbf.in)", "1.129848e-01"},
		{"deg", "degree (angle)", "1.745329e-02"},
	} {
		u, err := ParseUnit(c.symbol)
		if err != nil {
			t.Errorf("%s: %v", c.row, err)
			continue
		}
		printed, perr := evalText(c.printed, newDesk())
		if perr != nil {
			t.Fatal(perr)
		}
		// Half a unit of the seventh figure.
		half := 0.5e-6 * math.Pow(10, math.Floor(math.Log10(u.Factor)))
		if math.Abs(u.Factor-printed.V[0]) > half {
			t.Errorf("%s: factor %v, printed %s", c.row, u.Factor, c.printed)
		}
	}
}

// What follows exactly from the definitions, by hand in decimal.
func TestFactorsExact(t *testing.T) {
	for symbol, want := range map[string]float64{
		"lbf": 4.4482216152605, "kip": 4448.2216152605, "tonf": 8896.443230521, "kgf": 9.80665, "tf": 9806.65,
		"mi": 1609.344, "yd": 0.9144, "N/mm^2": 1e6, "kN/m": 1000, "N/mm": 1000, "kN m": 1000, "kg/m^3": 1,
	} {
		if u, err := ParseUnit(symbol); err != nil || u.Factor != want {
			t.Errorf("%s: %v, want %v (%v)", symbol, u.Factor, want, err)
		}
	}
}

func TestTable(t *testing.T) {
	seen := map[string]string{}
	for _, u := range Table() {
		if u.Name == "" || u.Source == "" || u.Factor <= 0 || u.Dim == Number {
			t.Errorf("%s: the entry is not filled in: %+v", u.Symbol, u)
		}
		for _, s := range append([]string{u.Symbol}, u.Aliases...) {
			if other, taken := seen[s]; taken {
				t.Errorf("%q is both %s and %s", s, other, u.Name)
			}
			seen[s] = u.Name
			if Reserved(s) {
				t.Errorf("%q is a unit and has another meaning too", s)
			}
			got, ok := Find(s)
			if !ok || got.Symbol != u.Symbol {
				t.Errorf("Find(%q) = %v, %v", s, got.Symbol, ok)
			}
			read, err := ParseUnit(s)
			if err != nil || read.Symbol != u.Symbol {
				t.Errorf("ParseUnit(%q) = %v, %v", s, read.Symbol, err)
			}
			v, err := evalText("1 "+s, alone{set: DefaultSet()})
			if err != nil || v.Dim != u.Dim || !near(v.V[0], u.Factor) {
				t.Errorf("1 %s = %v %v, %v", s, v.V[0], v.Dim, err)
			}
		}
	}
	if u, ok := Find("mn"); ok {
		t.Errorf("mn is read as %s", u.Name)
	}
	if lb, _ := Find("lb"); lb.Dim != Force {
		t.Error("lb is a force")
	}
	Table()[0].Factor = 7
	if m, _ := Find("m"); m.Factor != 1 {
		t.Error("the table can be written to from outside")
	}
}

func TestParseUnit(t *testing.T) {
	for _, c := range []struct {
		text, symbol string
		dim          Dim
		factor       float64
	}{
		{"kN/m", "kN/m", LineLoad, 1000},
		{"N m", "N m", Moment, 1},
		{"N·m", "N m", Moment, 1},
		{"N*m", "N m", Moment, 1},
		{"lb ft", "lbf ft", Moment, poundF * foot},
		{"lb-ft", "lbf ft", Moment, poundF * foot},
		{"kN-m/m", "kN m/m", Force, 1000},
		{"m/s^2", "m/s^2", Acceleration, 1},
		{"m/s²", "m/s^2", Acceleration, 1},
		{"m s^-2", "m s^-2", Acceleration, 1},
		{"N/mm^2", "N/mm^2", Pressure, 1e6},
		{"kg/m³", "kg/m^3", Dim{L: -3, M: 1}, 1},
		{" kN ", "kN", Force, 1000},
		{"g", "g", Mass, 0.001},
		{"N/g", "N/g", Acceleration, 1000},
		{"m^1", "m", Length, 1},
		{`"`, "in", Length, inch},
	} {
		u, err := ParseUnit(c.text)
		if err != nil || u.Symbol != c.symbol || u.Dim != c.dim || !near(u.Factor, c.factor) {
			t.Errorf("ParseUnit(%q) = %q %v %v, %v", c.text, u.Symbol, u.Dim, u.Factor, err)
		}
	}
	for text, want := range map[string]string{
		"":      "a value is missing",
		"5":     `"5" is not a unit. Try: a symbol such as m, kN or N m`,
		"kn":    `unknown unit "kn". Try: kN`,
		"N foo": `unknown unit "foo"`,
		"N/foo": `unknown unit "foo"`,
		"N/":    `"N/" is not a unit. Try: the form N m, kN/m or m/s^2`,
		"N 5":   `"N 5" is not a unit. Try: the form N m, kN/m or m/s^2`,
		"N^":    "the power of a unit must be a whole number. Try: the form m^2, or parentheses around the quantity",
		"ft'":   `"ft'" is not a unit. Try: the form N m, kN/m or m/s^2`,
	} {
		_, err := ParseUnit(text)
		if err == nil || err.Error() != want {
			t.Errorf("ParseUnit(%q): %v, want %q", text, err, want)
			continue
		}
		checkSpan(t, text, err.Span)
	}
}

func TestSetFor(t *testing.T) {
	us := DefaultSet()
	us.Length, _ = Find("ft")
	us.Force, _ = Find("lb")
	for _, c := range []struct {
		set    Set
		dim    Dim
		symbol string
		factor float64
	}{
		{DefaultSet(), Length, "m", 1},
		{DefaultSet(), Angle, "deg", math.Pi / 180},
		{DefaultSet(), Mass, "kg", 1},
		{DefaultSet(), Moment, "N m", 1},
		{DefaultSet(), LineLoad, "N/m", 1},
		{DefaultSet(), Pressure, "N/m^2", 1},
		{DefaultSet(), Acceleration, "m/s^2", 1},
		{DefaultSet(), Number, "", 1},
		{DefaultSet(), Dim{L: 2, M: 1}, "kg m^2", 1},
		{DefaultSet(), Dim{T: -1}, "s^-1", 1},
		{us, Force, "lbf", poundF},
		{us, Moment, "lbf ft", poundF * foot},
		{us, LineLoad, "lbf/ft", poundF / foot},
		{us, Pressure, "lbf/ft^2", poundF / (foot * foot)},
		{us, Area, "ft^2", foot * foot},
		{us, Volume, "ft^3", foot * foot * foot},
		{us, Acceleration, "ft/s^2", foot},
	} {
		u := c.set.For(c.dim)
		if u.Symbol != c.symbol || !near(u.Factor, c.factor) || u.Dim != c.dim {
			t.Errorf("For(%v) = %q %v %v, want %q %v", c.dim, u.Symbol, u.Dim, u.Factor, c.symbol, c.factor)
		}
		// What the set prints, a cell reads back.
		if c.symbol != "" {
			if back, err := ParseUnit(u.Symbol); err != nil || back.Dim != u.Dim || !near(back.Factor, u.Factor) {
				t.Errorf("%q does not read back: %v", u.Symbol, err)
			}
		}
	}
}

func TestDimName(t *testing.T) {
	for d, want := range map[Dim]string{
		Length: "a length", Angle: "an angle", Moment: "a moment", {L: 2, M: 1}: "a quantity in kg m^2",
	} {
		if d.Name() != want {
			t.Errorf("%#v: %q, want %q", d, d.Name(), want)
		}
	}
	if Force.String() != "force" || (Dim{L: 4}).String() != "quantity in m^4" {
		t.Errorf("%v, %v", Force, Dim{L: 4})
	}
}

func TestSuggest(t *testing.T) {
	known := []string{"h", "T1", "T2", "boom", "magnitude"}
	for wrong, want := range map[string]string{
		"hh": "h", "H": "h", "t2": "T2", "bom": "boom", "bmoo": "", "obom": "boom", "magnitdue": "magnitude",
		"magnitd": "magnitude", "x": "", "": "", "zzz": "", "h": "",
	} {
		if got := Suggest(wrong, known); got != want {
			t.Errorf("Suggest(%q) = %q, want %q", wrong, got, want)
		}
	}
}

func TestFunctions(t *testing.T) {
	var names []string
	for _, f := range Functions() {
		names = append(names, f.Name)
		if f.Says == "" {
			t.Errorf("%s: nothing said", f.Name)
		}
		e, err := Parse(f.Usage)
		if err != nil {
			t.Errorf("%s: the usage %q does not read: %v", f.Name, f.Usage, err)
		} else if e.String() != f.Usage {
			t.Errorf("%s: the usage reads as %q", f.Name, e)
		}
		if !Reserved(f.Name) {
			t.Errorf("%s may be taken as a name", f.Name)
		}
	}
	for _, want := range []string{"sqrt", "dir", "polar", "angles", "bearing"} {
		if !slices.Contains(names, want) {
			t.Errorf("there is no %s", want)
		}
	}
}

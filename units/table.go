package units

import (
	"math"
	"slices"
)

// The sources that the table cites.
const (
	srcSI   = "the SI itself"
	srcNIST = "NIST SP 811 (2008), Appendix B"
	srcDef  = "by definition from the units it is made of"
)

// The definitions from which the customary units follow, all of them exact.
const (
	foot    = 0.3048     // m
	inch    = 0.0254     // m
	pound   = 0.45359237 // kg, avoirdupois
	gravity = 9.80665    // m/s^2, the standard acceleration g_n
	poundF  = pound * gravity
)

// table is the one list of units; whatever reads, prints or lists units is fed
// from it. It is never written to.
var table = []Unit{
	{"m", nil, "metre", Length, 1, true, srcSI},
	{"mm", nil, "millimetre", Length, 1e-3, true, srcSI},
	{"cm", nil, "centimetre", Length, 1e-2, true, srcSI},
	{"km", nil, "kilometre", Length, 1e3, true, srcSI},
	{"in", []string{`"`, "″", "”"}, "inch", Length, inch, true, srcNIST},
	{"ft", []string{"'", "′", "’"}, "foot", Length, foot, true, srcNIST},
	{"yd", nil, "yard", Length, 3 * foot, true, srcNIST},
	{"mi", nil, "mile", Length, 5280 * foot, true, srcNIST},

	{"N", nil, "newton", Force, 1, true, srcSI},
	{"daN", nil, "decanewton", Force, 10, true, srcSI},
	{"kN", nil, "kilonewton", Force, 1e3, true, srcSI},
	{"MN", nil, "meganewton", Force, 1e6, true, srcSI},
	{"lbf", []string{"lb", "lbs"}, "pound-force", Force, poundF, true, srcNIST},
	{"kip", []string{"kips"}, "kip (1000 lbf)", Force, 1000 * poundF, true, srcNIST},
	{"tonf", nil, "ton-force (2000 lbf)", Force, 2000 * poundF, true, srcNIST},
	{"kgf", []string{"kp"}, "kilogram-force", Force, gravity, true, srcNIST},
	{"tf", nil, "tonne-force (1000 kgf)", Force, 1000 * gravity, true, srcDef},

	{"kg", nil, "kilogram", Mass, 1, true, srcSI},
	{"g", nil, "gram", Mass, 1e-3, true, srcSI},
	{"t", nil, "tonne", Mass, 1e3, true, srcNIST},
	{"lbm", nil, "pound (mass)", Mass, pound, true, srcNIST},
	{"slug", nil, "slug (lbf s^2/ft)", Mass, poundF / foot, true, srcNIST},

	{"deg", []string{"°", "º"}, "degree", Angle, math.Pi / 180, true, srcNIST},
	{"rad", nil, "radian", Angle, 1, true, srcSI},
	{"gon", []string{"grad"}, "gon (a right angle is 100)", Angle, math.Pi / 200, true, srcDef},
	{"turn", []string{"rev"}, "turn (360 deg)", Angle, 2 * math.Pi, true, srcDef},

	{"s", nil, "second", Time, 1, true, srcSI},

	{"Pa", nil, "pascal", Pressure, 1, true, srcSI},
	{"kPa", nil, "kilopascal", Pressure, 1e3, true, srcSI},
	{"MPa", nil, "megapascal", Pressure, 1e6, true, srcSI},
	{"GPa", nil, "gigapascal", Pressure, 1e9, true, srcSI},
	{"psi", nil, "pound-force per square inch", Pressure, poundF / (inch * inch), true, srcNIST},
	{"ksi", nil, "kip per square inch", Pressure, 1000 * poundF / (inch * inch), true, srcNIST},
	{"psf", nil, "pound-force per square foot", Pressure, poundF / (foot * foot), true, srcNIST},
}

// bySymbol finds a unit by any of its spellings. It is never written to.
var bySymbol = func() map[string]*Unit {
	m := make(map[string]*Unit)
	for i := range table {
		m[table[i].Symbol] = &table[i]
		for _, a := range table[i].Aliases {
			m[a] = &table[i]
		}
	}
	return m
}()

// Table lists every unit that is read, for a help page.
func Table() []Unit { return slices.Clone(table) }

// Find gives the unit of a symbol or of one of its other spellings. Letters
// count as they are: MN is a meganewton, mn is nothing.
func Find(symbol string) (Unit, bool) {
	if u := bySymbol[symbol]; u != nil {
		return *u, true
	}
	return Unit{}, false
}

// scale turns x units of the factor into SI. Where the factor is one over a
// whole number it divides by that, so that 35 cm is the same number as 0.35.
func scale(x, factor float64) float64 {
	if factor < 1 {
		if n := math.Round(1 / factor); 1/n == factor {
			return x / n
		}
	}
	return x * factor
}

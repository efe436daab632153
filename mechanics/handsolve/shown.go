package handsolve

import (
	"math"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/units"
)

// place is (x, y) in the sheet's unit.
func (s *said) place(at r3.Vec) string {
	u := s.p.Units.Length
	return s.tuple(at, u.Factor) + " " + u.Symbol
}

func (s *said) tuple(v r3.Vec, unit float64) string {
	parts := []float64{v.X, v.Y, v.Z}
	if s.p.Planar {
		parts = parts[:2]
	}
	text := make([]string, len(parts))
	for k, x := range parts {
		if math.Abs(x) <= sameTol*r3.Norm(v) {
			x = 0
		}
		text[k] = Shown(x/unit, s.p.Figures+1)
	}
	return "(" + strings.Join(text, ", ") + ")"
}

// Shown shows a number to so many figures without zeros at the end.
func Shown(x float64, figures int) string {
	text := units.Figures(x, figures)
	mantissa, exponent, _ := strings.Cut(text, "e")
	if strings.Contains(mantissa, ".") {
		mantissa = strings.TrimSuffix(strings.TrimRight(mantissa, "0"), ".")
	}
	if exponent != "" {
		mantissa += "e" + exponent
	}
	return mantissa
}

func count(n int) string {
	if n < len(numerals) {
		return numerals[n]
	}
	return strconv.Itoa(n)
}

var numerals = [...]string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"}

func listed(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

func upper(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

package problem

import (
	"math"
	"slices"
	"testing"
)

// A direction is kept as it was typed, so that a working can derive its unit vector.
func TestTypedDirections(t *testing.T) {
	for along, want := range map[string]TypedDirection{
		"+x":                {},
		"dir(A, B)":         {},
		"(0, 2)":            {},
		"(4, 3)":            {As: AsComponents, Of: []float64{4, 3}},
		"(400 mm, 300 mm)":  {As: AsComponents, Of: []float64{0.4, 0.3}},
		"polar(60 deg + a)": {As: AsPolar, Of: []float64{math.Pi / 2}},
		"slope 3:4":         {As: AsSlope, Of: []float64{3, 4}},
	} {
		text := "plane = \"xy\"\n[given]\na = \"30 deg\"\n[points]\nA = { at = \"0, 0\", on = \"particle\" }\nB = \"1, 1\"\n[lines]\nF = { kind = \"force\", at = \"A\", along = \"" + along + "\" }\n"
		p, errs := Read(parsedSheet(t, text))
		if len(errs) > 0 {
			t.Fatal(errs)
		}
		got := p.Lines[0].Legs[0].Typed
		if got.As != want.As || !slices.EqualFunc(got.Of, want.Of, func(a, b float64) bool { return math.Abs(a-b) < 1e-12 }) {
			t.Errorf("%s: %v, want %v", along, got, want)
		}
	}
}

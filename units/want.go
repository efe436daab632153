package units

import (
	"fmt"
	"math"
	"strings"

	"trivet/mechanics/diag"
)

// Want takes a cell's value as one scalar of dimension d. A bare number is in
// the unit bare; so is a bare uncertainty. The error, at whole, says what the
// cell holds instead.
func Want(v Value, d Dim, bare Unit, whole diag.Span) (Value, *diag.Error) {
	if v.N > 1 {
		return Value{}, severalValues(v.typed(), whole, v.N)
	}
	return coerce(v, d, bare, whole)
}

// WantVector is Want for a vector of two or three components.
func WantVector(v Value, d Dim, bare Unit, whole diag.Span) (Value, *diag.Error) {
	if v.N == 1 {
		return Value{}, diag.At(whole, fmt.Sprintf("expected a vector, but %s is a single value", v.typed()), "components separated by commas")
	}
	return coerce(v, d, bare, whole)
}

func coerce(v Value, d Dim, bare Unit, whole diag.Span) (Value, *diag.Error) {
	switch {
	case v.Dim == d:
		return v, nil
	case v.Dim == Number:
		v.Dim = d
		ok := true
		for i := range v.N {
			v.V[i] = scale(v.V[i], bare.Factor)
			v.Plus[i] = scale(v.Plus[i], bare.Factor)
			ok = ok && !math.IsInf(v.V[i], 0) && !math.IsInf(v.Plus[i], 0)
		}
		v.Terms = times(v.Terms, bare.Factor)
		for _, t := range v.Terms {
			ok = ok && !math.IsInf(t.Coef, 0)
		}
		if !ok {
			return Value{}, diag.At(whole, fmt.Sprintf("%s is too large", v.typed()), "")
		}
		return v, nil
	case v.Dim == Mass && d == Force:
		return Value{}, diag.At(whole, fmt.Sprintf("%s is a mass, not a force", v.typed()), v.factor()+" * g, or the kind weight")
	}
	hint := "a number without a unit"
	if d != Number {
		hint = "a value in " + bare.Symbol
		if bare.Symbol == "" {
			hint = ""
		}
	}
	return Value{}, diag.At(whole, fmt.Sprintf("expected %s, but %s is %s", d.Name(), v.typed(), v.Dim.Name()), hint)
}

// typed is the value's text, or its print where it was not typed.
func (v Value) typed() string {
	if v.Text != "" {
		return v.Text
	}
	return strings.TrimSpace(Compact(v.V[0]) + " " + v.Dim.symbol())
}

// factor is the text as it can stand before a star.
func (v Value) factor() string {
	if strings.ContainsAny(strings.TrimLeft(v.typed(), "+-"), "+-−–±") {
		return "(" + v.typed() + ")"
	}
	return v.typed()
}

func allDigits(s string) bool { return s != "" && digits(s, 0) == len(s) }

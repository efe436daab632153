package units

import (
	"fmt"
	"math"
	"strings"
)

// Want takes a cell's value as one scalar of dimension d. A bare number is in
// the unit bare; so is a bare uncertainty. The error, at whole, says what the
// cell holds instead.
func Want(v Value, d Dim, bare Unit, whole Span) (Value, *Error) {
	if v.N > 1 {
		return Value{}, severalValues(v.typed(), whole, v.N)
	}
	return coerce(v, d, bare, whole)
}

// WantVector is Want for a vector of two or three components.
func WantVector(v Value, d Dim, bare Unit, whole Span) (Value, *Error) {
	if v.N == 1 {
		return Value{}, &Error{whole, fmt.Sprintf("%s is one value, and a vector is wanted here", v.typed()),
			"write components with commas between them"}
	}
	return coerce(v, d, bare, whole)
}

func coerce(v Value, d Dim, bare Unit, whole Span) (Value, *Error) {
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
			return Value{}, &Error{whole, fmt.Sprintf("%s is larger than any number kept here", v.typed()), ""}
		}
		return v, nil
	case v.Dim == Mass && d == Force:
		return Value{}, &Error{whole, fmt.Sprintf("%s is a mass, and a mass is not a force", v.typed()),
			fmt.Sprintf("write %s * g, or make it kind = \"weight\"", v.factor())}
	}
	hint := "write it without a unit"
	if d != Number {
		hint = "write a value in " + bare.Symbol
		if bare.Symbol == "" {
			hint = ""
		}
	}
	return Value{}, &Error{whole, fmt.Sprintf("%s is wanted here, and %s is %s", d.Name(), v.typed(), v.Dim.Name()), hint}
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

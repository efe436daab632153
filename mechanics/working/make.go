package working

import (
	"math"
	"strings"
	"unicode"

	"gonum.org/v1/gonum/spatial/r3"
)

// The constructors of formulas. A negative number is a Neg of its size, so that
// a printer finds signs in the tree and never in a number's text.

func words(text string) Math            { return Math{Op: Words, Text: text} }
func letter(text string) Math           { return Math{Op: Symbol, Text: text} }
func row(of ...Math) Math               { return Math{Op: Row, Of: of} }
func product(of ...Math) Math           { return Math{Op: Product, Of: of} }
func neg(a Math) Math                   { return Math{Op: Neg, Of: []Math{a}} }
func paren(of ...Math) Math             { return Math{Op: Paren, Of: of} }
func size(a Math) Math                  { return Math{Op: Size, Of: []Math{a}} }
func root(a Math) Math                  { return Math{Op: Root, Of: []Math{a}} }
func fraction(a, b Math) Math           { return Math{Op: Fraction, Of: []Math{a, b}} }
func cross(a, b Math) Math              { return Math{Op: Cross, Of: []Math{a, b}} }
func equal(of ...Math) Math             { return Math{Op: Relate, Text: "=", Of: of} }
func bigSum(a Math) Math                { return Math{Op: BigSum, Of: []Math{a}} }
func square(a Math) Math                { return Math{Op: Power, Of: []Math{a, exactly(2)}} }
func unitVec(text string) Math          { return Math{Op: UnitVec, Text: text} }
func vector(text string, sub Math) Math { return Math{Op: Vec, Text: text, Of: []Math{sub}} }

// sum joins terms; one alone stands for itself and none is 0.
func sum(of ...Math) Math {
	switch len(of) {
	case 0:
		return exactly(0)
	case 1:
		return of[0]
	}
	return Math{Op: Sum, Of: of}
}

// named is the symbol of a name typed by a user: digits at its end are a subscript.
func named(name string) Math {
	base := strings.TrimRightFunc(name, unicode.IsDigit)
	if base == "" || base == name {
		return Math{Op: Symbol, Text: name, Name: name}
	}
	return Math{Op: Symbol, Text: base, Of: []Math{words(name[len(base):])}, Name: name}
}

// part adds to a symbol's subscript: T1 and x give T1x.
func part(of Math, suffix string) Math {
	if suffix == "" {
		return of
	}
	out := Math{Op: of.Op, Text: of.Text, Of: []Math{words(suffix)}}
	if len(of.Of) > 0 {
		sub := leaves(of.Of[0])
		if last := []rune(sub[len(sub)-1].Text); of.Name == "" && len(last) > 2 && unicode.IsLetter(last[len(last)-1]) {
			sub = append(sub, words(",")) // beam,x and not beamx
		}
		out.Of[0] = row(append(sub, words(suffix))...)
	}
	if of.Name != "" {
		out.Name = of.Name + suffix
	}
	return out
}

func leaves(m Math) []Math {
	if m.Op == Row {
		return append([]Math{}, m.Of...)
	}
	return []Math{m}
}

// times is a coefficient times something: 1 is left out, -1 is a sign.
func times(coef Math, of Math) Math {
	switch {
	case coef.Op == Number && coef.Text == "1" && math.Abs(coef.Num-1) <= nothing:
		return of
	case coef.Op == Neg:
		return neg(times(coef.Of[0], of))
	case of.Op == Neg:
		return neg(times(coef, of.Of[0]))
	}
	return product(coef, of)
}

// grouped puts a sum in parentheses, for a factor before it.
func grouped(m Math) Math {
	if m.Op == Sum || m.Op == Neg {
		return paren(m)
	}
	return m
}

// bracketed puts a sum in parentheses, for a unit behind it.
func bracketed(m Math) Math {
	if m.Op == Sum {
		return paren(m)
	}
	return m
}

func xyz(v r3.Vec) []float64 { return []float64{v.X, v.Y, v.Z} }

package working

import (
	"math"
	"unicode"

	"trivet/mechanics/doc"
	"trivet/mechanics/problem"

	"gonum.org/v1/gonum/spatial/r3"
)

// The constructors of formulas. A negative number is a Neg of its size, so that
// a printer finds signs in the tree and never in a number's text.

func words(text string) doc.Math      { return doc.Math{Op: doc.Words, Text: text} }
func row(of ...doc.Math) doc.Math     { return doc.Math{Op: doc.Row, Of: of} }
func product(of ...doc.Math) doc.Math { return doc.Math{Op: doc.Product, Of: of} }
func neg(a doc.Math) doc.Math         { return doc.Math{Op: doc.Neg, Of: []doc.Math{a}} }
func paren(of ...doc.Math) doc.Math   { return doc.Math{Op: doc.Paren, Of: of} }
func size(a doc.Math) doc.Math        { return doc.Math{Op: doc.Size, Of: []doc.Math{a}} }
func root(a doc.Math) doc.Math        { return doc.Math{Op: doc.Root, Of: []doc.Math{a}} }
func fraction(a, b doc.Math) doc.Math { return doc.Math{Op: doc.Fraction, Of: []doc.Math{a, b}} }
func cross(a, b doc.Math) doc.Math    { return doc.Math{Op: doc.Cross, Of: []doc.Math{a, b}} }
func equal(of ...doc.Math) doc.Math   { return relation("=", of...) }
func bigSum(a doc.Math) doc.Math      { return doc.Math{Op: doc.BigSum, Of: []doc.Math{a}} }
func square(a doc.Math) doc.Math      { return power(a, exactly(2)) }
func power(a, b doc.Math) doc.Math    { return doc.Math{Op: doc.Power, Of: []doc.Math{a, b}} }
func unitVec(text string, sub ...doc.Math) doc.Math {
	return doc.Math{Op: doc.UnitVec, Text: text, Of: sub}
}
func function(name string, a doc.Math) doc.Math {
	if a.Op == doc.Degrees && a.Of[0].Op == doc.Neg {
		a = paren(a)
	}
	return doc.Math{Op: doc.Function, Text: name, Of: []doc.Math{a}}
}
func vector(text string, sub ...doc.Math) doc.Math {
	return doc.Math{Op: doc.Vec, Text: text, Of: sub}
}
func symbol(text string, sub ...doc.Math) doc.Math {
	return doc.Math{Op: doc.Symbol, Text: text, Of: sub}
}
func relation(sign string, of ...doc.Math) doc.Math {
	return doc.Math{Op: doc.Relate, Text: sign, Of: of}
}

// subscripted is a letter with a name of the sheet as its subscript.
func subscripted(letter, name string) doc.Math { return symbol(letter, words(name)) }

// sum joins terms; one alone stands for itself and none is 0.
func sum(of ...doc.Math) doc.Math {
	switch len(of) {
	case 0:
		return exactly(0)
	case 1:
		return of[0]
	}
	return doc.Math{Op: doc.Sum, Of: of}
}

// named is the symbol of a name typed by a user.
func named(name string) doc.Math {
	base, digits := problem.SymbolOf(name)
	m := symbol(base)
	if digits != "" {
		m = subscripted(base, digits)
	}
	m.Name = name
	return m
}

// leafed is a symbol as a subscript of another: in one piece.
func leafed(m doc.Math) doc.Math {
	switch {
	case m.Name != "":
		return words(m.Name)
	case len(m.Of) == 0:
		return words(m.Text)
	}
	return words(m.Text + m.Of[0].Text)
}

// part adds to a symbol's subscript: T1 and x give T1x.
func part(of doc.Math, suffix string) doc.Math {
	out := doc.Math{Op: of.Op, Text: of.Text, Of: []doc.Math{words(suffix)}}
	if len(of.Of) > 0 {
		sub := leaves(of.Of[0])
		if last := []rune(sub[len(sub)-1].Text); of.Name == "" && len(last) > 2 && unicode.IsLetter(last[len(last)-1]) {
			sub = append(sub, words(",")) // beam,x and not beamx
		}
		out.Of[0] = row(append(sub, words(suffix))...)
	}
	if of.Name != "" {
		out.Name = of.Name + suffix
		if letters := []rune(of.Name); len(letters) > 2 && unicode.IsLower(letters[len(letters)-1]) {
			out.Name = of.Name + "_" + suffix // wind_y and not windy
		}
	}
	return out
}

func leaves(m doc.Math) []doc.Math {
	if m.Op == doc.Row {
		return append([]doc.Math{}, m.Of...)
	}
	return []doc.Math{m}
}

// times is a coefficient times something: 1 is left out, -1 is a sign.
func times(coef doc.Math, of doc.Math) doc.Math {
	switch {
	case coef.Op == doc.Number && coef.Text == "1" && math.Abs(coef.Num-1) <= nothing:
		return of
	case coef.Op == doc.Neg:
		return neg(times(coef.Of[0], of))
	case of.Op == doc.Neg:
		return neg(times(coef, of.Of[0]))
	}
	return product(coef, of)
}

// signed is a symbol with the sign of a number.
func signed(x float64, m doc.Math) doc.Math {
	if x < 0 {
		return neg(m)
	}
	return m
}

// grouped puts a sum in parentheses, for a factor before it.
func grouped(m doc.Math) doc.Math {
	if m.Op == doc.Sum || m.Op == doc.Neg {
		return paren(m)
	}
	return m
}

// bracketed puts a sum in parentheses, for a unit behind it.
func bracketed(m doc.Math) doc.Math {
	if m.Op == doc.Sum {
		return paren(m)
	}
	return m
}

func xyz(v r3.Vec) []float64 { return []float64{v.X, v.Y, v.Z} }

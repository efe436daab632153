package working

import (
	"math"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/units"
)

const (
	// unitDecimals is how many decimals of a unit vector are shown: an angle to
	// some 0.006 deg, and more than three figures of any force.
	unitDecimals = 4
	// nothing is what a component may come to, relative to its vector, and still be
	// rounding: 0 is shown.
	nothing = 1e-12
	// wholeDigits is up to how many figures a number that is short by itself, such
	// as a typed coordinate, is shown in full.
	wholeDigits = 5
)

// exactly is a small whole number.
func exactly(n int) doc.Math {
	if n < 0 {
		return neg(exactly(-n))
	}
	return doc.Math{Op: doc.Number, Text: strconv.Itoa(n), Num: float64(n)}
}

// number makes a node of a value and its print.
func number(x float64, text string) doc.Math {
	if !strings.ContainsAny(text, "123456789") {
		return doc.Math{Op: doc.Number, Text: strings.TrimPrefix(text, "-"), Num: math.Abs(x)}
	}
	if digits, minus := strings.CutPrefix(text, "-"); minus {
		return neg(doc.Math{Op: doc.Number, Text: digits, Num: -x})
	}
	return doc.Math{Op: doc.Number, Text: text, Num: x}
}

// figures shows so many significant figures.
func figures(x float64, n int) doc.Math { return number(x, units.Figures(x, n)) }

// short shows a number that is short by itself as it is, such as 4 or 0.25, and
// any other to so many figures.
func short(x float64, n int) doc.Math {
	if d := digits(x); d <= max(n, wholeDigits) {
		n = d
	}
	return figures(x, n)
}

// digits counts the significant figures of a number but for rounding.
func digits(x float64) int {
	const kept = 12 // typed values carry no more, and rounding begins at the 15th
	mantissa, _, _ := strings.Cut(strconv.FormatFloat(math.Abs(x), 'e', kept-1, 64), "e")
	return max(1, len(strings.TrimRight(strings.Replace(mantissa, ".", "", 1), "0")))
}

// cosine shows a component of a unit vector; 0 and 1 stand without decimals.
func cosine(x float64) doc.Math {
	if digits(x) == 1 && (math.Abs(x) == 0 || math.Abs(math.Abs(x)-1) < nothing) {
		return short(x, 1)
	}
	return number(x, units.Decimals(x, unitDecimals))
}

// clean drops what is rounding beside a size.
func clean(x, beside float64) float64 {
	if math.Abs(x) <= nothing*beside {
		return 0
	}
	return x
}

// cleaned is a vector without the rounding in its components.
func cleaned(v r3.Vec) r3.Vec {
	n := r3.Norm(v)
	return r3.Vec{X: clean(v.X, n), Y: clean(v.Y, n), Z: clean(v.Z, n)}
}

// show is how a component is printed.
type show func(float64) doc.Math

// tuple is (x, y) in the plane, (x, y, z) in space.
func (b *builder) tuple(v r3.Vec, f show) doc.Math {
	v = cleaned(v)
	t := doc.Math{Op: doc.Paren}
	for _, x := range xyz(v)[:b.axes] {
		t.Of = append(t.Of, f(x))
	}
	return t
}

// along is x i + y j + z k without the components that are 0.
func (b *builder) along(v r3.Vec, f show) doc.Math {
	var of []doc.Math
	for k, x := range xyz(cleaned(v)) {
		if x != 0 {
			of = append(of, times(f(x), unitVec("ijk"[k:k+1])))
		}
	}
	return sum(of...)
}

// norm is √(x² + y² + z²).
func (b *builder) norm(v r3.Vec, f show) doc.Math {
	var of []doc.Math
	for _, x := range xyz(cleaned(v)) {
		if x != 0 {
			of = append(of, square(f(x)))
		}
	}
	return root(sum(of...))
}

// measured is a value with its unit.
func measured(m doc.Math, u units.Unit) doc.Math {
	if u.Symbol == "" {
		return m
	}
	return row(m, words(u.Symbol))
}

// result is a value to the sheet's figures with its unit, as everywhere in the program.
func (b *builder) result(si float64, u units.Unit) doc.Math {
	return measured(figures(u.In(si), b.p.Figures), u)
}

func (b *builder) length(x float64) doc.Math { return short(b.p.Units.Length.In(x), b.p.Figures+1) }
func (b *builder) force(x float64) doc.Math  { return short(b.p.Units.Force.In(x), b.p.Figures+1) }

// coefficient shows what stands before an unknown: a component of a unit vector, or an arm.
func (b *builder) coefficient(x float64) doc.Math {
	switch {
	case digits(x) <= 3:
		return short(x, 3)
	case math.Abs(x) < 10 && math.Abs(x) >= 0.1:
		return number(x, units.Decimals(x, unitDecimals))
	}
	return figures(x, max(unitDecimals, b.p.Figures+1))
}

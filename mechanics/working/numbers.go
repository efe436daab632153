package working

import (
	"iter"
	"math"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/units"
)

const (
	// nothing is what a component may come to, relative to its vector, and still be
	// rounding: 0 is shown.
	nothing = 1e-12
	// wholeDigits is up to how many figures a number that is short by itself, such
	// as a typed coordinate, is shown in full.
	wholeDigits = 5
)

// exactly is a small whole number.
func exactly(n int) doc.Math { return doc.NumberOf(strconv.Itoa(n), float64(n)) }

// shownNumber makes a node of a value, its print and half a unit of its last place.
func shownNumber(x float64, text string, half float64) doc.Math {
	m := doc.NumberOf(text, x)
	number := &m
	if m.Op == doc.Neg {
		number = &m.Of[0]
	}
	number.Half = half
	return m
}

// lastPlace is a unit of the last place of a number that is shown to n figures.
func lastPlace(x float64, n int) float64 {
	if x == 0 {
		return 0
	}
	_, exponent := scientific(x, n)
	return math.Pow10(exponent - n + 1)
}

// scientific is the size of a number to n figures: its digits, and the power of ten of the first.
func scientific(x float64, n int) (digits string, exponent int) {
	mantissa, power, _ := strings.Cut(strconv.FormatFloat(math.Abs(x), 'e', n-1, 64), "e")
	exponent, _ = strconv.Atoi(power)
	return strings.Replace(mantissa, ".", "", 1), exponent
}

// figures shows so many significant figures.
func figures(x float64, n int) doc.Math {
	return shownNumber(x, units.Figures(x, n), lastPlace(x, n)/2)
}

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
	all, _ := scientific(x, kept)
	return max(1, len(strings.TrimRight(all, "0")))
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
	return cleanedBy(v, r3.Norm(v))
}

func cleanedBy(v r3.Vec, size float64) r3.Vec {
	return r3.Vec{X: clean(v.X, size), Y: clean(v.Y, size), Z: clean(v.Z, size)}
}

// number shows a number that is carried: as it is where it is short by itself, else to
// one figure more than a result.
func (b *builder) number(x float64) doc.Math { return short(x, b.p.Figures+1) }

// tuple is (x, y) in the plane, (x, y, z) in space.
func (b *builder) tuple(v r3.Vec, from axes) doc.Math {
	t := doc.Math{Op: doc.Paren}
	for k, x := range xyz(cleaned(v))[:b.axes] {
		t.Of = append(t.Of, traced(from(k), b.number(x)))
	}
	return t
}

// along is x i + y j + z k without the components that are 0.
func (b *builder) along(v r3.Vec, from axes) doc.Math {
	var of []doc.Math
	for k, x := range components(v) {
		of = append(of, times(traced(from(k), b.number(x)), unitVec("ijk"[k:k+1])))
	}
	return traced(from(0), sum(of...)) // 0 where it has no components
}

// dot is the scalar product of two vectors, without the terms that are 0.
func (b *builder) dot(u, v r3.Vec, from, also axes) doc.Math {
	var of []doc.Math
	for k, x := range components(u) {
		if y := xyz(cleaned(v))[k]; y != 0 {
			of = append(of, product(paren(traced(from(k), b.number(x))), paren(traced(also(k), b.number(y)))))
		}
	}
	return sum(of...)
}

// norm is √(x² + y² + z²), or the size of the only component.
func (b *builder) norm(v r3.Vec, from axes) doc.Math {
	var of []doc.Math
	for k, x := range components(v) {
		of = append(of, square(traced(from(k), b.number(x))))
	}
	if len(of) == 1 {
		return size(of[0].Of[0])
	}
	return root(sum(of...))
}

// isAxis tells a direction along a coordinate axis.
func isAxis(v r3.Vec) bool {
	n := 0
	for range components(v) {
		n++
	}
	return n == 1
}

// components are those of a vector that are not zero, but for rounding, by axis.
func components(v r3.Vec) iter.Seq2[int, float64] {
	return func(yield func(int, float64) bool) {
		for k, x := range xyz(cleaned(v)) {
			if x != 0 && !yield(k, x) {
				return
			}
		}
	}
}

// in is a vector in a unit.
func in(v r3.Vec, u units.Unit) r3.Vec { return r3.Scale(1/u.Factor, v) }

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

func (b *builder) length(x float64) doc.Math { return b.number(b.p.Units.Length.In(x)) }

// degrees shows an angle: 53.1°, or in the sheet's unit where that is another.
func (b *builder) degrees(angle float64, n int) doc.Math {
	u := b.p.Units.Angle
	if u.Symbol == "deg" {
		return doc.Math{Op: doc.Degrees, Of: []doc.Math{short(u.In(angle), n)}}
	}
	return measured(short(u.In(angle), n), u)
}

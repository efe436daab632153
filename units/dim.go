package units

import (
	"math"
	"strconv"
	"strings"
)

// Dimensions that turn up on the way to the others.
var (
	Area   = Dim{L: 2}
	Volume = Dim{L: 3}
)

// dimNames is never written to.
var dimNames = []struct {
	dim  Dim
	name string
}{
	{Number, "a number"},
	{Length, "a length"},
	{Mass, "a mass"},
	{Time, "a time"},
	{Angle, "an angle"},
	{Acceleration, "an acceleration"},
	{Force, "a force"},
	{Moment, "a moment"},
	{LineLoad, "a force per length"},
	{Pressure, "a pressure"},
	{Area, "an area"},
	{Volume, "a volume"},
	{Dim{L: 1, T: -1}, "a speed"},
	{Dim{L: -3, M: 1}, "a density"},
	{Dim{L: -2, M: 1, T: -2}, "a force per volume"},
}

// Name gives the dimension in words with its article: "a length". One without
// a name of its own is told by its SI unit: "a quantity in kg m^2".
func (d Dim) Name() string {
	for _, k := range dimNames {
		if k.dim == d {
			return k.name
		}
	}
	return "a quantity in " + d.symbol()
}

// String is the name without its article: "length".
func (d Dim) String() string {
	_, noun, _ := strings.Cut(d.Name(), " ")
	return noun
}

// symbol writes the coherent SI unit of d: "kg m^2 s^-1".
func (d Dim) symbol() string {
	var b strings.Builder
	for _, f := range [...]struct {
		s string
		n int8
	}{{"kg", d.M}, {"m", d.L}, {"s", d.T}, {"rad", d.A}} {
		if f.n == 0 {
			continue
		}
		if b.Len() > 0 {
			b.WriteByte(' ')
		}
		b.WriteString(f.s)
		if f.n != 1 {
			b.WriteByte('^')
			b.WriteString(strconv.Itoa(int(f.n)))
		}
	}
	return b.String()
}

// combine gives the dimension of a·b^k; ok is false where an exponent leaves
// the range that is kept.
func combine(a, b Dim, k int) (d Dim, ok bool) {
	ok = true
	add := func(x, y int8) int8 {
		s := int(x) + k*int(y)
		if s < math.MinInt8 || s > math.MaxInt8 {
			ok = false
		}
		return int8(s)
	}
	return Dim{add(a.L, b.L), add(a.M, b.M), add(a.T, b.T), add(a.A, b.A)}, ok
}

// wholePower is how far p times an exponent may be from a whole number: it
// forgives the rounding of 1/3 and refuses every power a person would type.
const wholePower = 1e-9

// power gives the dimension of a quantity of dimension d raised to p; ok is
// false where it is not made of whole powers.
func (d Dim) power(p float64) (r Dim, ok bool) {
	ok = true
	raise := func(x int8) int8 {
		y := float64(x) * p
		n := math.Round(y)
		// The comparison is written so that an infinite p fails it too.
		if !(math.Abs(y-n) <= wholePower && math.Abs(n) <= math.MaxInt8) {
			ok = false
			return 0
		}
		return int8(n)
	}
	return Dim{raise(d.L), raise(d.M), raise(d.T), raise(d.A)}, ok
}

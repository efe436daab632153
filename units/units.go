// Package units reads and prints quantities: dimensions, unit symbols, the
// expressions a cell may hold, and significant figures.
//
// A quantity is kept in coherent SI units: metre, kilogram, second, radian, so
// a force is in newtons and a moment in newton metres. The angle is kept as a
// dimension of its own, so that 30 deg and the number 30 are not confused.
package units

import (
	"math"
)

// Dim holds the exponents of length, mass, time and angle.
type Dim struct{ L, M, T, A int8 }

// The dimensions that a free-body problem uses.
var (
	Number       = Dim{}
	Length       = Dim{L: 1}
	Mass         = Dim{M: 1}
	Time         = Dim{T: 1}
	Angle        = Dim{A: 1}
	Acceleration = Dim{L: 1, T: -2}
	Force        = Dim{L: 1, M: 1, T: -2}
	Moment       = Dim{L: 2, M: 1, T: -2} // also work; which one is meant, the cell says
	LineLoad     = Dim{M: 1, T: -2}       // also the stiffness of a spring
	Pressure     = Dim{L: -1, M: 1, T: -2}
)

// Unit is a named unit: a quantity of x units is x·Factor in SI.
type Unit struct {
	Symbol  string   // as printed: "m", "lbf", "kN/m"
	Aliases []string // other spellings that are read
	Name    string   // in words: "pound-force"
	Dim     Dim
	Factor  float64
	Exact   bool   // the factor is exact by definition
	Source  string // where the factor comes from
}

// Term is a multiple of one unknown.
type Term struct {
	Name string
	Coef float64
}

// Value is what a cell's expression comes to: a scalar (N = 1) or a vector
// (N = 2 or 3) in SI, with its dimension. A scalar may also hold multiples of
// unknowns: value = V[0] + Σ Coef·unknown; Dim is that of the whole.
// Plus holds the uncertainty typed behind ± for each component, 0 where none.
// A value of dimension Number is bare: the sheet's unit applies to it (see Want).
// Text is the expression as typed, for what is said about it.
type Value struct {
	Dim   Dim
	N     int
	V     [3]float64
	Plus  [3]float64
	Terms []Term
	Text  string
}

// Scalar makes a known scalar value.
func Scalar(x float64, d Dim) Value { return Value{Dim: d, N: 1, V: [3]float64{x}} }

// Vector makes a known vector of three components.
func Vector(v [3]float64, d Dim) Value { return Value{Dim: d, N: 3, V: v} }

// Finite tells whether no component is infinite or not a number.
func (v Value) Finite() bool {
	for i := range v.N {
		if math.IsNaN(v.V[i]) || math.IsInf(v.V[i], 0) {
			return false
		}
	}
	return true
}

// Set is the units of a sheet: what a bare number means, and what results are
// printed in. Compounds (a moment, a line load) are formed from its members.
type Set struct{ Length, Force, Angle, Mass Unit }

// Env is what an expression may refer to. Lookup gives the value of a name;
// ok is false where the sheet has no such name (the reader then tries it as a
// unit symbol). err is a reason why the name, though known, has no value
// ("given h does not read").
type Env interface {
	Lookup(name string) (v Value, ok bool, err error)
	Names() []string                       // for "did you mean"
	Set() Set                              // the unit of a bare number in sin(30), polar(30)
	Planar() bool                          // polar, and pairs as vectors
	Compass() (east, north, up [3]float64) // for bearing(azimuth, elevation)
}

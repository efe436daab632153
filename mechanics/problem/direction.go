package problem

import (
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/say"
	"trivet/units"
)

// aligned is how far a unit vector may lie off an axis and still be named by it: less
// is rounding, also of a null space.
const aligned = 1e-9

// Axis names the axis that a direction lies along, with its sign, "+x"; it is empty
// where there is none.
func Axis(v r3.Vec) string {
	size := r3.Norm(v)
	for k, c := range []float64{v.X, v.Y, v.Z} {
		switch axis := "xyz"[k : k+1]; {
		case size == 0:
		case math.Abs(c-size) < aligned*size:
			return "+" + axis
		case math.Abs(c+size) < aligned*size:
			return "-" + axis
		}
	}
	return ""
}

// Extent is the box of the points that read.
func (p *Problem) Extent() (low, high r3.Vec) {
	read := slices.DeleteFunc(slices.Clone(p.Points), func(q Point) bool { return !q.OK })
	for i, q := range read {
		if i == 0 {
			low, high = q.At, q.At
		}
		low = r3.Vec{X: min(low.X, q.At.X), Y: min(low.Y, q.At.Y), Z: min(low.Z, q.At.Z)}
		high = r3.Vec{X: max(high.X, q.At.X), Y: max(high.Y, q.At.Y), Z: max(high.Z, q.At.Z)}
	}
	return low, high
}

// Axes are the unit vectors along the coordinates.
func Axes() [3]r3.Vec { return [3]r3.Vec{{X: 1}, {Y: 1}, {Z: 1}} }

// Component is that of a vector along axis 0, 1 or 2.
func Component(v r3.Vec, axis int) float64 { return numbers(v)[axis] }

// Direction names a direction: the axis that it lies along, or else its unit vector,
// "(0.6, -0.8)".
func (p *Problem) Direction(v r3.Vec) string {
	if axis := Axis(v); axis != "" {
		return axis
	}
	return p.Tuple(r3.Scale(1/r3.Norm(v), v), func(c float64) string {
		const fine = 1e4 // as many decimals as a cosine is printed to
		return units.Compact(math.Round(c*fine) / fine)
	})
}

// nearPlace is how small a coordinate must be, beside the size of the problem, to be
// rounding; a point within it of a place is at that place.
const nearPlace = 1e-7

// Place names a place: the named point there, or else its coordinates.
func (p *Problem) Place(at r3.Vec) string {
	size := 0.0
	for i := range p.Points {
		size = max(size, r3.Norm(r3.Sub(p.Points[i].At, p.Points[0].At)))
	}
	for i := range p.Points {
		if p.Points[i].OK && r3.Norm(r3.Sub(p.Points[i].At, at)) <= nearPlace*size {
			return p.Points[i].Name
		}
	}
	unit := p.Units.Length
	return p.Tuple(at, func(c float64) string {
		if math.Abs(c) <= nearPlace*size {
			c = 0
		}
		return units.Figures(c/unit.Factor, p.Figures)
	}) + " " + unit.Symbol
}

// Tuple writes the components of a vector that the problem has.
func (p *Problem) Tuple(v r3.Vec, write func(float64) string) string {
	return "(" + strings.Join(say.Each(p.Components(v), write), ", ") + ")"
}

// Components are those of a vector that the problem has: two in the plane.
func (p *Problem) Components(v r3.Vec) []float64 {
	all := numbers(v)
	if p.Planar {
		return all[:2]
	}
	return all[:]
}

// DirectionKind says how a direction was typed.
type DirectionKind int

// The ways to type a direction.
const (
	AsAxis       DirectionKind = iota // an axis, or a formula that nothing is to be said of
	AsComponents                      // (4, 3): Of holds the components
	AsPolar                           // the angle from +x, counter-clockwise
	AsSlope                           // rise and run
	AsAngles                          // the three direction angles
	AsBearing                         // azimuth and elevation
)

// TypedDirection is a direction as it was typed: a working derives the unit vector from
// it. Angles are in radians, components in the unit that they were typed in or are read in.
type TypedDirection struct {
	As DirectionKind
	Of []float64
}

// directionCalls are the functions of cells that a direction is derived from.
var directionCalls = map[string]DirectionKind{"polar": AsPolar, "slope": AsSlope, "angles": AsAngles, "bearing": AsBearing}

// typedDirection reads how a direction, which has been read, was typed.
func (c cell) typedDirection() (t TypedDirection) {
	r := c.r
	expr, err := r.Parse(c.text)
	if has(axes, c.word()) || err != nil {
		return t
	}
	e := env{r: r, scope: inGeometry, cell: c.ref}
	name, args, _ := expr.Call()
	if as, derived := directionCalls[name]; derived {
		for _, a := range args {
			v, err := a.Eval(e)
			if err == nil && as != AsSlope {
				v, err = units.Want(v, units.Angle, r.p.Units.Angle, a.Span())
			}
			if err != nil || v.N != 1 {
				return TypedDirection{}
			}
			t.Of = append(t.Of, v.V[0])
		}
		if as == AsBearing && len(t.Of) == 1 {
			t.Of = append(t.Of, 0)
		}
		t.As = as
		return t
	}
	if _, isTuple := expr.Tuple(); !isTuple {
		return t
	}
	v, err := expr.Eval(e)
	if err != nil || v.Dim != units.Number && v.Dim != units.Length {
		return t
	}
	some := 0
	for _, x := range v.V[:v.N] {
		if x != 0 {
			some++
		}
		if v.Dim == units.Length {
			x = r.p.Units.Length.In(x)
		}
		t.Of = append(t.Of, x)
	}
	if some < 2 {
		return TypedDirection{}
	}
	t.As = AsComponents
	return t
}

package problem

import "trivet/units"

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

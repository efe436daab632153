package problem

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Rounding is what arithmetic leaves of a number that ought to be nothing, relative
// to the numbers it is the difference of: 16 units in the last place. A coordinate
// passes a unit's factor, a sine and a sum or two, each good for half a unit of the
// largest of them, and differences show what they left. A direction that somebody
// means leans by far more: 3.6e-15 of a kilometre is less than an atom.
const Rounding = 16 * 2.220446049250313e-16

// snapped is a vector without the components that are rounding beside a size.
func snapped(v r3.Vec, size float64) r3.Vec {
	keep := func(x float64) float64 {
		if abs(x) <= Rounding*size {
			return 0
		}
		return x
	}
	return r3.Vec{X: keep(v.X), Y: keep(v.Y), Z: keep(v.Z)}
}

func largest(v r3.Vec) float64 { return max(abs(v.X), abs(v.Y), abs(v.Z)) }

// unit gives v/|v|, false where v has no length. It scales first, so that very
// long and very short vectors neither overflow nor vanish. A component that is 0,
// 1 or -1 but for rounding is just that.
func unit(v r3.Vec) (r3.Vec, bool) {
	m := largest(v)
	if m == 0 {
		return r3.Vec{}, false
	}
	v = snapped(r3.Vec{X: v.X / m, Y: v.Y / m, Z: v.Z / m}, 1)
	v = r3.Scale(1/r3.Norm(v), v)
	return r3.Vec{X: whole1(v.X), Y: whole1(v.Y), Z: whole1(v.Z)}, true
}

// whole1 is 1 or -1 for what differs from it by rounding only.
func whole1(x float64) float64 {
	if abs(abs(x)-1) <= Rounding {
		return math.Copysign(1, x)
	}
	return x
}

// Moment is that of a force where an act takes hold of its body, about the point that
// the body's moments are taken about, with a couple: (r - q) × F + C.
func (p *Problem) Moment(a *Act, force, couple r3.Vec) r3.Vec {
	return r3.Add(r3.Cross(p.Arm(a), force), couple)
}

// Arm is the vector from the point that a body's moments are taken about to where an
// act takes hold of the body, without the rounding of coordinates.
func (p *Problem) Arm(a *Act) r3.Vec {
	body := &p.Bodies[a.Body]
	return snapped(r3.Sub(a.At, body.About), max(largest(a.At), largest(body.About), body.Reach))
}

package units

import (
	"fmt"
	"math"

	"trivet/mechanics/diag"
)

// cosineSum is how far Σcos² may be from 1 before angles(a, b, c) is refused.
// An angle rounded to 0.01 deg is off by 0.005 deg at most, which moves cos² by
// |sin 2a|·0.005 deg, so three of them move the sum by 3·0.005·π/180 at most.
const cosineSum = 3 * 0.005 * math.Pi / 180

// dir is the unit vector from A to B: (B - A)/|B - A|.
func dir(r run, n *node, a [3]Value) (Value, *diag.Error) {
	if _, err := r.like(n, &a); err != nil {
		return Value{}, err
	}
	from, to := r.src(n.args[0]), r.src(n.args[1])
	v := a[1].V
	for i := range v {
		v[i] -= a[0].V[i]
	}
	u, ok := normalise(v)
	if !ok {
		return r.fail(n, "two different points", "%s and %s coincide, so %s has no direction", from, to, r.src(n))
	}
	return Vector(u, Number), nil
}

// normalise gives v/|v|; ok is false where v is zero or out of range.
func normalise(v [3]float64) (u [3]float64, ok bool) {
	// Dividing by the largest component first keeps |v| in range.
	big := max(math.Abs(v[0]), math.Abs(v[1]), math.Abs(v[2]))
	if big == 0 || math.IsInf(big, 0) || math.IsNaN(big) {
		return v, false
	}
	for i := range v {
		v[i] /= big
	}
	l := norm(v)
	for i := range v {
		v[i] /= l
	}
	return v, true
}

func unitVector(r run, n *node, a [3]Value) (Value, *diag.Error) {
	u, ok := normalise(a[0].V)
	if !ok {
		return r.fail(n, "a vector other than zero", "%s is zero, so %s has no direction", r.src(n.args[0]), r.src(n))
	}
	return Value{Dim: Number, N: a[0].N, V: u}, nil
}

// polar is (cos a, sin a, 0), for a problem in a plane.
func polar(r run, n *node, a [3]Value) (Value, *diag.Error) {
	if !r.env.Planar() {
		return r.fail(n, "angles(a, b, c) or bearing(azimuth, elevation)", "polar is for a problem in a plane, but this one is in space")
	}
	x, err := r.angle(n, 0, a[0])
	return Vector([3]float64{cosineOf(x), sineOf(x), 0}, Number), err
}

// slope is the unit vector along rise·up + run·across: up is the way up of the sheet,
// across the positive axis of the plane that is level.
func slope(r run, n *node, a [3]Value) (Value, *diag.Error) {
	if !r.env.Planar() {
		return r.fail(n, "components, such as (4, 0, 3)", "slope is for a problem in a plane, but this one is in space")
	}
	if _, err := r.like(n, &a); err != nil {
		return Value{}, err
	}
	_, _, up := r.env.Compass()
	across := [3]float64{1, 0, 0}
	if up[0] != 0 {
		across = [3]float64{0, 1, 0}
	}
	var v [3]float64
	for i := range v {
		v[i] = a[0].V[0]*up[i] + a[1].V[0]*across[i]
	}
	u, ok := normalise(v)
	if !ok {
		return r.fail(n, "a rise or a run other than zero", "%s has no direction", r.src(n))
	}
	return Vector(u, Number), nil
}

// angles is (cos a, cos b, cos c), which must be a unit vector to the rounding
// of the angles and is made one exactly.
func angles(r run, n *node, a [3]Value) (Value, *diag.Error) {
	var c [3]float64
	for i := range n.args {
		x, err := r.angle(n, i, a[i])
		if err != nil {
			return Value{}, err
		}
		c[i] = cosineOf(x)
	}
	sum := c[0]*c[0] + c[1]*c[1] + c[2]*c[2]
	if math.Abs(sum-1) > cosineSum {
		hint := ""
		if rest := 1 - c[0]*c[0] - c[1]*c[1]; rest >= 0 {
			third := math.Acos(math.Sqrt(rest)) * 180 / math.Pi
			hint = fmt.Sprintf("%s or %s deg for the third", Figures(third, 4), Figures(180-third, 4))
		}
		return r.fail(n, hint, "the squares of the cosines of the direction angles must add up to 1, not %s", Decimals(sum, 4))
	}
	u, _ := normalise(c)
	return Vector(u, Number), nil
}

// bearing is cos e·(north·cos a + east·sin a) + up·sin e: the azimuth a turns
// clockwise from north seen from above, the elevation e rises from the horizontal.
func bearing(r run, n *node, a [3]Value) (Value, *diag.Error) {
	var x [2]float64
	for i := range n.args {
		var err *diag.Error
		if x[i], err = r.angle(n, i, a[i]); err != nil {
			return Value{}, err
		}
	}
	east, north, up := r.env.Compass()
	var v [3]float64
	for i := range v {
		v[i] = cosineOf(x[1])*(north[i]*cosineOf(x[0])+east[i]*sineOf(x[0])) + up[i]*sineOf(x[1])
	}
	return Vector(v, Number), nil
}

// length is |a|, or |B - A|.
func length(r run, n *node, a [3]Value) (Value, *diag.Error) {
	d, err := r.like(n, &a)
	if err != nil {
		return Value{}, err
	}
	v := a[0].V
	if len(n.args) == 2 {
		for i := range v {
			v[i] = a[1].V[i] - v[i]
		}
	}
	r.corner(norm(v))
	return Scalar(norm(v), d), nil
}

func dot(r run, n *node, a [3]Value) (Value, *diag.Error) {
	d, ok := combine(a[0].Dim, a[1].Dim, 1)
	if !ok {
		return r.fail(n, "", "the powers of the units of %s are too high", r.src(n))
	}
	p, q := a[0].V, a[1].V
	return Scalar(p[0]*q[0]+p[1]*q[1]+p[2]*q[2], d), nil
}

func cross(r run, n *node, a [3]Value) (Value, *diag.Error) {
	d, ok := combine(a[0].Dim, a[1].Dim, 1)
	if !ok {
		return r.fail(n, "", "the powers of the units of %s are too high", r.src(n))
	}
	p, q := a[0].V, a[1].V
	return Vector([3]float64{p[1]*q[2] - p[2]*q[1], p[2]*q[0] - p[0]*q[2], p[0]*q[1] - p[1]*q[0]}, d), nil
}

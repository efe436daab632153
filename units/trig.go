package units

import (
	"math"

	"trivet/mechanics/diag"
)

// angle reads argument i as an angle in radians; a bare number is in the
// sheet's unit of angle.
func (r run) angle(n *node, i int, v Value) (float64, *diag.Error) {
	switch v.Dim {
	case Angle:
		return v.V[0], nil
	case Number:
		return scale(v.V[0], r.env.Set().Angle.Factor), nil
	}
	hint := "an angle, such as 30 deg"
	if v.Dim.A == 1 && n.args[i].kind == nUnit {
		hint = "the angle alone in parentheses, as in " + n.fn.name + "(30 deg) N"
	}
	_, err := r.fail(n.args[i], hint, "%s takes an angle, but %s is %s",
		n.fn.name, r.src(n.args[i]), v.Dim.Name())
	return 0, err
}

// An angle in radians is kept to one part in 2^53, so a sine or cosine below
// |x|·2^-52 is rounding and no more: cos(90 deg) is 0, not 6e-17.
const angleRounding = 0x1p-52

func sineOf(x float64) float64   { return clean(math.Sin(x), x) }
func cosineOf(x float64) float64 { return clean(math.Cos(x), x) }

func clean(y, x float64) float64 {
	if math.Abs(y) <= math.Abs(x)*angleRounding {
		return 0
	}
	return y
}

func sin(r run, n *node, a [3]Value) (Value, *diag.Error) {
	x, err := r.angle(n, 0, a[0])
	return Scalar(sineOf(x), Number), err
}

func cos(r run, n *node, a [3]Value) (Value, *diag.Error) {
	x, err := r.angle(n, 0, a[0])
	return Scalar(cosineOf(x), Number), err
}

func tan(r run, n *node, a [3]Value) (Value, *diag.Error) {
	x, err := r.angle(n, 0, a[0])
	if err != nil {
		return Value{}, err
	}
	if cosineOf(x) == 0 {
		return r.fail(n, "", "%s is infinite", r.src(n))
	}
	if sineOf(x) == 0 {
		return Scalar(0, Number), nil
	}
	return Scalar(math.Tan(x), Number), nil
}

// ratio reads the argument of asin and acos.
func (r run) ratio(n *node, v Value) (float64, *diag.Error) {
	if v.Dim != Number {
		_, err := r.wantNumber(n, v)
		return 0, err
	}
	if math.Abs(v.V[0]) > 1 {
		_, err := r.fail(n, "", "%s takes a number from -1 to 1, not %s", n.fn.name, r.src(n.args[0]))
		return 0, err
	}
	return v.V[0], nil
}

func asin(r run, n *node, a [3]Value) (Value, *diag.Error) {
	x, err := r.ratio(n, a[0])
	return Scalar(math.Asin(x), Angle), err
}

func acos(r run, n *node, a [3]Value) (Value, *diag.Error) {
	x, err := r.ratio(n, a[0])
	return Scalar(math.Acos(x), Angle), err
}

func atan(r run, n *node, a [3]Value) (Value, *diag.Error) {
	if a[0].Dim != Number {
		return r.wantNumber(n, a[0])
	}
	return Scalar(math.Atan(a[0].V[0]), Angle), nil
}

func atan2(r run, n *node, a [3]Value) (Value, *diag.Error) {
	if _, err := r.like(n, &a); err != nil {
		return Value{}, err
	}
	if a[0].V[0] == 0 && a[1].V[0] == 0 {
		return r.fail(n, "", "%s is not defined", r.src(n))
	}
	return Scalar(math.Atan2(a[0].V[0], a[1].V[0]), Angle), nil
}

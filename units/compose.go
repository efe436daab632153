package units

import (
	"math"

	"trivet/mechanics/diag"
)

// tuple makes a vector of components of one dimension; a bare 0 goes with any.
func (r run) tuple(n *node) (Value, *diag.Error) {
	out := Value{N: len(n.args)}
	var like *node // the first component that has a dimension or must have one
	for i, c := range n.args {
		v, err := r.eval(c)
		if err != nil {
			return v, err
		}
		switch {
		case v.N != 1:
			return r.fail(c, "", "a component must be a number, but %s is a vector", r.src(c))
		case len(v.Terms) > 0:
			return r.fail(c, "a direction, with "+r.src(c)+" as the magnitude", "a component must be known, but %s is an unknown", r.src(c))
		}
		out.V[i], out.Plus[i] = v.V[0], v.Plus[0]
		switch {
		case like == nil && !zero(v):
			like, out.Dim = c, v.Dim
		case zero(v) || v.Dim == out.Dim:
		case v.Dim == Number:
			return r.bare(c, like, out.Dim)
		case out.Dim == Number:
			return r.bare(like, c, v.Dim)
		default:
			return r.fail(n, "", "the components of a vector must be of one kind, but %s is %s and %s is %s",
				r.src(like), out.Dim.Name(), r.src(c), v.Dim.Name())
		}
	}
	return out, nil
}

// plusMinus reads a ± b. A bare a before a b with a unit is in that unit, as
// in 6 ± 0.02 m; b may be in per cent of a.
func (r run) plusMinus(n *node) (Value, *diag.Error) {
	a, err := r.eval(n.args[0])
	if err != nil {
		return a, err
	}
	b, err := r.eval(n.args[1])
	if err != nil {
		return b, err
	}
	left, right := n.args[0], n.args[1]
	percent := right.kind == nPercent
	switch {
	case percent && (b.Dim != Number || b.N != 1 || len(b.Terms) > 0):
		return r.fail(right, "", "a percentage must be a plain number, but %s is not", r.src(right.args[0]))
	case percent && a.N == 1 && len(a.Terms) == 0 && a.V[0] == 0:
		return r.fail(n, "the uncertainty itself, as in 0 m ± 2 cm", "%s of zero is zero", r.src(right))
	case percent:
		b = Scalar(b.V[0]/100*math.Abs(a.V[0]), a.Dim)
	}
	switch {
	case a.N != 1:
		return r.fail(n, "± after each component", "± must follow a number, but %s is a vector", r.src(left))
	case b.N != 1:
		return r.fail(right, "", "an uncertainty must be a number, but %s is a vector", r.src(right))
	case len(a.Terms) > 0:
		return r.fail(n, "", "%s is an unknown and cannot have an uncertainty", r.src(left))
	case len(b.Terms) > 0:
		return r.fail(right, "", "an uncertainty must be known, but %s is an unknown", r.src(right))
	case b.V[0] < 0:
		return r.fail(right, "it without the minus sign", "an uncertainty cannot be negative, but %s is", r.src(right))
	}
	if a.Dim == Number && right.kind == nUnit && literal(right.args[0]) && literal(left) {
		if a, err = r.unit(&node{kind: nUnit, span: left.span, factor: right.factor, dim: right.dim}, a); err != nil {
			return a, err
		}
	}
	switch {
	case a.Dim == b.Dim:
	case zero(b):
	case zero(a):
		a.Dim = b.Dim
	case b.Dim == Number:
		return r.bare(right, left, a.Dim)
	case a.Dim == Number:
		return r.bare(left, right, b.Dim)
	default:
		return r.fail(n, "", "a value and its uncertainty must be of one kind, but %s is %s and %s is %s",
			r.src(left), a.Dim.Name(), r.src(right), b.Dim.Name())
	}
	a.Plus[0] += b.V[0]
	if m, ok := r.env.(Measurer); ok && b.V[0] > 0 {
		a.V[0] += m.Measured(n.span, r.src(right), Value{Dim: a.Dim, N: 1, V: b.V}) * b.V[0]
	}
	return r.kept(n, a)
}

package units

import (
	"math"

	"trivet/mechanics/diag"
)

const linear = "; only linear relations between magnitudes are possible"

// add gives a + sign·b.
func (r run) add(n *node, a, b Value, sign float64) (Value, *diag.Error) {
	left, right := n.args[0], n.args[1]
	if a.Dim != b.Dim {
		switch {
		case zero(a):
			a.Dim = b.Dim
		case zero(b):
			b.Dim = a.Dim
		case a.Dim == Number:
			return r.bare(left, right, b.Dim)
		case b.Dim == Number:
			return r.bare(right, left, a.Dim)
		default:
			return r.fail(n, "", "%s is %s and %s is %s, so they cannot be added",
				r.src(left), a.Dim.Name(), r.src(right), b.Dim.Name())
		}
	}
	if (a.N == 1) != (b.N == 1) {
		return r.fail(n, "", "%s is %s and %s is %s, so they cannot be added",
			r.src(left), shape(a), r.src(right), shape(b))
	}
	a.N = max(a.N, b.N)
	for i := range a.V {
		a.V[i] += sign * b.V[i]
		a.Plus[i] += b.Plus[i]
	}
	if len(b.Terms) > 0 {
		a.Terms = plus(a.Terms, b.Terms, sign)
	}
	return r.kept(n, a)
}

func shape(v Value) string {
	switch {
	case v.N > 1:
		return "a vector"
	case len(v.Terms) > 0:
		return "an unknown"
	}
	return "a number"
}

// mul gives a·b, of which one at most is a vector and one at most unknown.
func (r run) mul(n *node, a, b Value) (Value, *diag.Error) {
	left, right := n.args[0], n.args[1]
	switch {
	case len(a.Terms) > 0 && len(b.Terms) > 0:
		return r.fail(n, "", "%s multiplies two unknowns"+linear, r.src(n))
	case a.N > 1 && b.N > 1:
		return r.fail(n, "dot(a, b) or cross(a, b)", "the vectors %s and %s cannot be multiplied with *", r.src(left), r.src(right))
	case a.N > 1:
		a, b = b, a
		left, right = right, left
	}
	if b.N > 1 && len(a.Terms) > 0 {
		return r.fail(n, "separate cells for the direction and the magnitude", "a vector must be known, but %s is an unknown", r.src(left))
	}
	d, ok := combine(a.Dim, b.Dim, 1)
	if !ok {
		return r.fail(n, "", "the powers of the units of %s are too high", r.src(n))
	}
	if len(b.Terms) > 0 {
		a, b = b, a
	}
	// Here a is a scalar; it alone may hold unknowns, and then b is one too.
	out := Value{Dim: d, N: b.N, Terms: times(a.Terms, b.V[0])}
	for i := range b.N {
		out.V[i] = a.V[0] * b.V[i]
		out.Plus[i] = bound(a.V[0], b.Plus[i]) + bound(b.V[i], a.Plus[0])
	}
	return r.kept(n, out)
}

// bound is |slope|·plus, and 0 where there is no uncertainty.
func bound(slope, plus float64) float64 {
	if plus == 0 {
		return 0
	}
	return math.Abs(slope) * plus
}

// div gives a/b for a known scalar b.
func (r run) div(n *node, a, b Value) (Value, *diag.Error) {
	right := n.args[1]
	switch {
	case b.N > 1:
		return r.fail(n, "", "the divisor %s is a vector", r.src(right))
	case len(b.Terms) > 0:
		return r.fail(n, "", "%s divides by an unknown"+linear, r.src(n))
	case b.V[0] == 0:
		return r.fail(n, "", "%s is a division by zero", r.src(n))
	}
	d, ok := combine(a.Dim, b.Dim, -1)
	if !ok {
		return r.fail(n, "", "the powers of the units of %s are too high", r.src(n))
	}
	a.Dim = d
	for i := range a.N {
		a.V[i] /= b.V[0]
		a.Plus[i] = bound(1/b.V[0], a.Plus[i]) + bound(a.V[i]/b.V[0], b.Plus[0])
	}
	if len(a.Terms) > 0 {
		terms := make([]Term, len(a.Terms))
		for i, t := range a.Terms {
			terms[i] = Term{t.Name, t.Coef / b.V[0]}
		}
		a.Terms = terms
	}
	return r.kept(n, a)
}

// pow gives a^b for known scalars; b is a number.
func (r run) pow(n *node, a, b Value) (Value, *diag.Error) {
	base, exp := n.args[0], n.args[1]
	switch {
	case a.N > 1:
		return r.fail(n, "dot(a, a) for its square", "the vector %s cannot be raised to a power", r.src(base))
	case len(a.Terms) > 0:
		return r.fail(n, "", "%s is a power of an unknown"+linear, r.src(n))
	case b.N > 1 || len(b.Terms) > 0 || b.Dim != Number:
		what := b.Dim.Name()
		if b.N > 1 || len(b.Terms) > 0 {
			what = shape(b)
		}
		return r.fail(exp, "", "an exponent must be a plain number, but %s is %s", r.src(exp), what)
	case a.V[0] == 0 && b.V[0] < 0:
		return r.fail(n, "", "%s is a division by zero", r.src(n))
	case a.V[0] < 0 && b.V[0] != math.Trunc(b.V[0]):
		return r.fail(n, "", "%s is a fractional power of a negative number", r.src(n))
	}
	d, ok := a.Dim.power(b.V[0])
	if !ok {
		return r.fail(n, "", "%s is %s, so the unit of %s would have a fractional power",
			r.src(base), a.Dim.Name(), r.src(n))
	}
	if b.V[0] != math.Trunc(b.V[0]) {
		r.corner(a.V[0])
	}
	return r.kept(n, Scalar(math.Pow(a.V[0], b.V[0]), d))
}

// times gives the terms multiplied by k, without those that vanish.
func times(terms []Term, k float64) []Term {
	if len(terms) == 0 || k == 0 {
		return nil
	}
	out := make([]Term, len(terms))
	for i, t := range terms {
		out[i] = Term{t.Name, t.Coef * k}
	}
	return out
}

// plus gives a + sign·b, like terms together and in order of first use. What
// cancels is left out: T1 - T1 is a known 0.
func plus(a, b []Term, sign float64) []Term {
	out := append(make([]Term, 0, len(a)+len(b)), a...)
	for _, t := range b {
		found := false
		for i := range out {
			if out[i].Name == t.Name {
				out[i].Coef += sign * t.Coef
				found = true
				break
			}
		}
		if !found {
			out = append(out, Term{t.Name, sign * t.Coef})
		}
	}
	kept := out[:0]
	for _, t := range out {
		if t.Coef != 0 {
			kept = append(kept, t)
		}
	}
	if len(kept) == 0 {
		return nil
	}
	return kept
}

package units

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"trivet/mechanics/diag"
)

// run is one evaluation. It is passed by value so that it stays off the heap.
type run struct {
	text string
	env  Env
	one  bool // a vector is not wanted
}

func (r run) src(n *node) string { return r.text[n.span.Start:n.span.End] }

func (r run) fail(n *node, hint, format string, args ...any) (Value, *diag.Error) {
	return Value{}, diag.At(n.span, fmt.Sprintf(format, args...), hint)
}

// Eval works the expression out with the names of env. On success every
// component is finite and the error is nil. Uncertainties behind ± go along to
// first order as bounds, |∂f/∂a|·Δa + |∂f/∂b|·Δb, through + - * / and units;
// other functions drop them.
func (e *Expr) Eval(env Env) (Value, *diag.Error) {
	r := run{e.text, env, e.one}
	v, err := r.eval(e.root)
	if err != nil {
		return Value{}, err
	}
	if !v.Finite() {
		return r.fail(e.root, "", "%s is not a finite number", r.src(e.root))
	}
	for i := range v.N {
		v.V[i] += 0 // makes a negative zero a plain one
		if math.IsInf(v.Plus[i], 0) || math.IsNaN(v.Plus[i]) {
			return r.fail(e.root, "", "the uncertainty of %s is not a finite number", r.src(e.root))
		}
	}
	if k := e.root.kips(); e.one && v.N > 1 && k != nil {
		return Value{}, unknownUnit(k.span, k.name, env.Names())
	}
	v.Text = r.src(e.root)
	return v, nil
}

// kips gives the k of 12 k, which is an axis, and kips where one value is wanted.
func (n *node) kips() *node {
	if n = n.unsigned(); n.kind == nMul && n.args[1].behind && n.args[1].name == "k" {
		return n.args[1]
	}
	return nil
}

func (r run) eval(n *node) (Value, *diag.Error) {
	switch n.kind {
	case nNumber:
		return Scalar(n.num, Number), nil
	case nName:
		return r.name(n)
	case nQuestion:
		return r.fail(n, "", "expected a value, but ? is an unknown")
	case nCall:
		return r.call(n)
	case nTuple:
		return r.tuple(n)
	case nPlusMinus:
		return r.plusMinus(n)
	}
	if n.kind == nPow && n.args[0].kind == nName && n.args[0].name == "e" && !r.known("e") {
		power := r.src(n.args[1])
		if !n.args[1].closed {
			power = "(" + power + ")"
		}
		return r.fail(n, "exp"+power, "%s uses e, which is not defined", r.src(n))
	}
	a, err := r.eval(n.args[0])
	if err != nil {
		return a, err
	}
	switch n.kind {
	case nNeg:
		for i := range a.V {
			a.V[i] = 0 - a.V[i] // not -x: no negative zero
		}
		a.Terms = times(a.Terms, -1)
		return a, nil
	case nUnit:
		return r.unit(n, a)
	case nPercent:
		return a, nil
	}
	if u := n.args[1]; n.kind == nDiv && a.Dim == Number && u.kind == nUnit && !u.closed {
		if !literal(u.args[0]) {
			return r.unitTaken(n, u)
		}
		return r.overUnit(n, u, a)
	}
	b, err := r.eval(n.args[1])
	if err != nil {
		return b, err
	}
	switch n.kind {
	case nAdd:
		return r.add(n, a, b, 1)
	case nSub:
		return r.add(n, a, b, -1)
	case nMul:
		return r.mul(n, a, b)
	case nDiv:
		return r.div(n, a, b)
	}
	return r.pow(n, a, b)
}

// unitTaken refuses 500/sin(60 deg) lb, in which the unit belongs to what stands
// before it, the sine, and a reader means the whole.
func (r run) unitTaken(n, u *node) (Value, *diag.Error) {
	over, under := r.src(n.args[0]), r.src(u.args[0])
	unit := strings.TrimSpace(strings.TrimPrefix(r.src(u), under))
	return r.fail(n, fmt.Sprintf("(%[1]s/%[2]s) %[3]s or %[1]s %[3]s/%[2]s", over, under, unit),
		"the unit %s belongs to the divisor %s", unit, under)
}

// because makes an Env's reason the error of the name at span.
func because(at diag.Span, err error) *diag.Error {
	e := diag.Of(err)
	e.Span = at
	return e
}

// name looks a name up in the sheet, then among the units, then among the axes.
func (r run) name(n *node) (Value, *diag.Error) {
	if n.behind {
		if c, ok := r.env.(Coiner); ok && !c.Known(n.name) && bySymbol[n.name] == nil {
			err := unknownUnit(n.span, n.name, r.env.Names())
			if err.Hint == "" {
				err.Hint = "2*" + n.name + ", if " + n.name + " is an unknown"
			}
			return Value{}, err
		}
	}
	v, ok, err := r.env.Lookup(n.name)
	if err != nil {
		return Value{}, because(n.span, err)
	}
	if ok {
		return v, nil
	}
	if u := bySymbol[n.name]; u != nil {
		return Scalar(u.Factor, u.Dim), nil
	}
	switch n.name {
	case "x", "i":
		return Vector([3]float64{1, 0, 0}, Number), nil
	case "y", "j":
		return Vector([3]float64{0, 1, 0}, Number), nil
	case "z", "k":
		return Vector([3]float64{0, 0, 1}, Number), nil
	}
	if n.behind {
		return Value{}, unknownUnit(n.span, n.name, r.env.Names())
	}
	hint := ""
	if f := findFunction(n.name); f != nil {
		hint = f.usage
	} else {
		hint = cmp.Or(Suggest(n.name, r.env.Names()), runTogether(n.name))
	}
	return r.fail(n, hint, "unknown name %q", n.name)
}

// known tells whether a name has a meaning on the sheet, without bringing in an unknown.
func (r run) known(name string) bool {
	if c, ok := r.env.(Coiner); ok && !c.Known(name) {
		return false
	}
	_, ok, err := r.env.Lookup(name)
	return ok || err != nil
}

// unit applies the unit behind a number, a parenthesis or a vector.
func (r run) unit(n *node, a Value) (Value, *diag.Error) {
	d, ok := combine(a.Dim, n.dim, 1)
	if !ok {
		return r.fail(n, "", "the powers of the units of %s are too high", r.src(n))
	}
	a.Dim = d
	for i := range a.N {
		a.V[i] = scale(a.V[i], n.factor)
		a.Plus[i] = scale(a.Plus[i], n.factor)
	}
	a.Terms = times(a.Terms, n.factor)
	return r.kept(n, a)
}

// overUnit gives (a/b) units for "a/b units" where a is a plain number:
// sqrt(3)/2 m and -49*sqrt(3)/3 N mean what 1/2 in does. Where a is a quantity
// the slash divides it by all of b units: 10 N/2 m.
func (r run) overUnit(n, u *node, a Value) (Value, *diag.Error) {
	b, err := r.eval(u.args[0])
	if err != nil {
		return b, err
	}
	if a, err = r.div(n, a, b); err != nil {
		return a, err
	}
	at := *u
	at.span = n.span
	return r.unit(&at, a)
}

// kept refuses a result that has left the range of numbers.
func (r run) kept(n *node, v Value) (Value, *diag.Error) {
	if !v.Finite() {
		return r.fail(n, "", "%s is too large", r.src(n))
	}
	for _, t := range v.Terms {
		if math.IsInf(t.Coef, 0) || math.IsNaN(t.Coef) {
			return r.fail(n, "", "%s is too large", r.src(n))
		}
	}
	return v, nil
}

// zero tells whether v is a known bare 0, which goes with any dimension.
func zero(v Value) bool {
	return v.Dim == Number && len(v.Terms) == 0 && v.V == [3]float64{} && v.Plus == [3]float64{}
}

// bare says that a number stands where a quantity like other is wanted. Beside a
// unit that was typed nobody knows which the number is in, so none is offered.
func (r run) bare(number, other *node, d Dim) (Value, *diag.Error) {
	if k := number.kips(); r.one && k != nil {
		return Value{}, unknownUnit(k.span, k.name, r.env.Names())
	}
	hint := ""
	// 500-lbz is a number with its unit, mistyped, as likely as a difference.
	hyphen := number.span.End+1 == other.span.Start && other.kind == nName
	switch u := r.env.Set().For(d).Symbol; {
	case (hyphen || other.typesUnit()) && literal(number):
		hint = "a unit after " + r.src(number)
	case hyphen || other.typesUnit():
		hint = "a value with a unit"
	case literal(number):
		hint = r.src(number) + " " + u
	default:
		hint = "(" + r.src(number) + ") " + u
	}
	return r.fail(number, hint, "%s has no unit, but %s is %s", r.src(number), r.src(other), d.Name())
}

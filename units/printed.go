package units

import (
	"math"
	"strings"

	"trivet/mechanics/diag"
)

// exactPrint is the tolerance, relative to the value, of a printed answer that
// is an expression ("-49*sqrt(3)/3 N") and so has no last place: far above the
// rounding of a solve, far below any misprint.
const exactPrint = 1e-9

// Printed is an answer as somebody wrote it, in SI.
type Printed struct {
	Value   float64
	Half    float64 // half a unit of the last place written
	Dim     Dim
	Factor  float64 // of the unit that it is written in
	Symbol  string  // and as it is written there, "" where none of that dimension is
	Number  bool    // it is a number with a last place, and no expression
	Figures int     // of an expression: the fewest of its inputs, 0 where they are exact
	Grouped string  // as it is read where commas part its digits into threes
}

// ReadPrinted reads an answer as a source prints it: "761 N", "43.8", "6.0e2 N",
// "22.62 deg", "12 300", "1,200 lb". It gives the value and half a unit of the last
// place printed, in SI, and the dimension as printed; a bare number is in the set's
// unit for d. The last place of a whole number is the units place. Where an
// uncertainty is printed behind ± that is the half.
func ReadPrinted(text string, set Set, d Dim) (value, half float64, dim Dim, err *diag.Error) {
	p, err := ReadPrintedIn(text, set, set.For(d), 0)
	if err != nil {
		return 0, 0, d, err
	}
	return p.Value, p.Half, p.Dim, nil
}

// ReadPrintedIn is ReadPrinted where a bare number is in a unit of its own, as that
// of a column, and the name g is an acceleration, unless that is 0.
func ReadPrintedIn(text string, set Set, bare Unit, g float64) (Printed, *diag.Error) {
	e, err := ParseOne(text)
	if err != nil {
		return Printed{}, err
	}
	env := alone{set, g}
	v, err := e.Eval(env)
	if err != nil {
		return Printed{}, err
	}
	out := Printed{Dim: v.Dim, Factor: bare.Factor, Grouped: e.grouped}
	bareNumber := v.Dim == Number
	if bareNumber {
		out.Dim = bare.Dim
	}
	if v, err = Want(v, out.Dim, bare, e.Span()); err != nil {
		return Printed{}, err
	}
	out.Value = v.V[0]
	if u := e.root.unitOf(out.Dim); u != nil {
		out.Factor, out.Symbol = u.factor, strings.Trim(e.text[u.args[0].span.End:u.span.End], " ()")
	}
	n := e.root.unsigned()
	if n.kind == nUnit {
		n = n.args[0].unsigned()
	}
	out.Number = n.kind == nNumber && !n.exact
	switch {
	case v.Plus[0] > 0:
		out.Half = v.Plus[0]
	case out.Number:
		out.Half = 0.5 * math.Pow(10, float64(n.place)) * out.Factor
	default:
		p := precision{run{e.text, env, e.one}, out.Factor}.of(e.root, false)
		if out.Figures, out.Half = p.figures, p.half; bareNumber {
			out.Half = scale(p.half, out.Factor)
		}
	}
	if out.Half == 0 {
		out.Half = exactPrint * math.Abs(out.Value)
	}
	return out, nil
}

// unitOf is the first unit of a dimension that an expression is written in.
func (n *node) unitOf(d Dim) *node {
	if n.kind == nUnit && n.dim == d {
		return n
	}
	for _, a := range n.args {
		if u := a.unitOf(d); u != nil {
			return u
		}
	}
	return nil
}

// precision works out to how many figures an expression is known, by the rule of
// significant figures: a product has as many as the input with the fewest, a sum the
// place of the input with the coarsest (common practice). factor is the unit that
// figures are counted in.
//
// A whole number without a unit is a count, and exact, as a factor, a divisor, an
// exponent, or where it has one digit: the 2 of 2*761 N, the 3 and the 49 of
// -49*sqrt(3)/3 N. With more digits in a sum, or squared in one, it was measured, and has
// the figures typed: sqrt(50^2 + 37^2) N is known to two.
type precision struct {
	run
	factor float64
}

// known is a value with the figures it is known to, and half a unit of its last
// place; both are 0 where it is exact.
type known struct {
	value, half float64
	figures     int
}

// leastFigures is what a bare factor such as 0.5 counts for at least: it is typed
// short, and meant to the figures of an exercise.
const leastFigures = 3

// term tells that the node is a term of a sum, or the base of a power that is one.
func (p precision) of(n *node, term bool) known {
	var v Value
	if v, _ = p.eval(n); v.N != 1 {
		return known{}
	}
	unit := p.factor
	if v.Dim == Number {
		unit = 1
	}
	k := known{value: v.V[0]}
	arg := func(i int) known { return p.of(n.args[i], false) }
	switch n.kind {
	case nNumber:
		typed := decade(n.num) - n.place + 1
		switch {
		case n.exact:
		case term && (!n.whole || typed > 1):
			k.figures, k.half = typed, 0.5*math.Pow(10, float64(n.place))
			return k
		case !n.whole:
			k.figures = max(leastFigures, typed)
		}
	case nUnit:
		if a := n.args[0]; a.kind == nNumber && !a.exact {
			k.figures, k.half = decade(a.num)-a.place+1, 0.5*math.Pow(10, float64(a.place))*n.factor
			return k
		}
		k.figures = arg(0).figures
	case nNeg, nPow:
		k.figures = p.of(n.args[0], term).figures
	case nDiv:
		below := arg(1)
		if u := n.args[1]; u.kind == nUnit && u.args[0].whole {
			below.figures = 0 // the 3 of sqrt(2)/3 N
		}
		k.figures = fewer(arg(0).figures, below.figures)
	case nMul:
		k.figures = fewer(arg(0).figures, arg(1).figures)
	case nAdd, nSub:
		a, b := p.of(n.args[0], true), p.of(n.args[1], true)
		k.half = max(a.half, b.half)
		if n.inches {
			k.half = b.half
		}
		if k.half > 0 {
			k.figures = max(1, decade(k.value/unit)-int(math.Round(math.Log10(2*k.half/unit)))+1)
		}
		return k
	case nCall: // those that keep a dimension; what an angle gives is exact
		if n.fn.keeps() {
			for i := range n.args {
				k.figures = fewer(k.figures, p.of(n.args[i], n.fn.name == "hypot").figures) // a root of a sum of squares
			}
		}
	}
	if k.figures > 0 {
		k.half = 0.5 * math.Pow(10, float64(decade(k.value/unit)-k.figures+1)) * unit
	}
	return k
}

// fewer is the smaller number of figures, where 0 is exact.
func fewer(a, b int) int {
	if a == 0 || b > 0 && b < a {
		return b
	}
	return a
}

// decade is the power of ten of a number's first digit, 0 for 0.
func decade(x float64) int {
	if x == 0 {
		return 0
	}
	return int(math.Floor(math.Log10(math.Abs(x))))
}

// alone is the Env of an expression without names, but for g where it is known.
type alone struct {
	set Set
	g   float64
}

func (a alone) Lookup(name string) (v Value, ok bool, err error) {
	if name == "g" && a.g != 0 {
		return Scalar(a.g, Acceleration), true, nil
	}
	return
}
func (alone) Names() []string { return nil }
func (a alone) Set() Set      { return a.set }
func (alone) Planar() bool    { return false }
func (alone) Compass() (east, north, up [3]float64) {
	return [3]float64{1, 0, 0}, [3]float64{0, 1, 0}, [3]float64{0, 0, 1}
}

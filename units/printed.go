package units

import "math"

// exactPrint is the tolerance, relative to the value, of a printed answer that
// is an expression ("-49*sqrt(3)/3 N") and so has no last place: far above the
// rounding of a solve, far below any misprint.
const exactPrint = 1e-9

// Printed is an answer as somebody wrote it, in SI.
type Printed struct {
	Value  float64
	Half   float64 // half a unit of the last place written
	Dim    Dim
	Factor float64 // of the unit that it is written in
	Number bool    // it is a number with a last place, and no expression
}

// ReadPrinted reads an answer as a source prints it: "761 N", "43.8", "6.0e2 N",
// "22.62 deg", "12 300". It gives the value and half a unit of the last place
// printed, in SI, and the dimension as printed; a bare number is in the set's
// unit for d. The last place of a whole number is the units place. Where an
// uncertainty is printed behind ± that is the half.
func ReadPrinted(text string, set Set, d Dim) (value, half float64, dim Dim, err *Error) {
	p, err := ReadPrintedIn(text, set, set.For(d))
	if err != nil {
		return 0, 0, d, err
	}
	return p.Value, p.Half, p.Dim, nil
}

// ReadPrintedIn is ReadPrinted where a bare number is in a unit of its own, as that
// of a column.
func ReadPrintedIn(text string, set Set, bare Unit) (Printed, *Error) {
	e, err := Parse(text)
	if err != nil {
		return Printed{}, err
	}
	v, err := e.Eval(alone{set})
	if err != nil {
		return Printed{}, err
	}
	out := Printed{Dim: v.Dim, Factor: bare.Factor}
	if v.Dim == Number {
		out.Dim = bare.Dim
	}
	if v, err = Want(v, out.Dim, bare, e.Span()); err != nil {
		return Printed{}, err
	}
	out.Value, out.Half = v.V[0], exactPrint*math.Abs(v.V[0])
	n := e.root.unsigned()
	factor := 1.0
	switch {
	case n.kind == nUnit:
		factor = n.factor
		out.Factor = factor
		n = n.args[0].unsigned()
	case n.kind == nNumber:
		factor = bare.Factor
	}
	out.Number = n.kind == nNumber && !n.exact
	switch {
	case v.Plus[0] > 0:
		out.Half = v.Plus[0]
	case out.Number:
		out.Half = 0.5 * math.Pow(10, float64(n.place)) * factor
	}
	return out, nil
}

// alone is the Env of an expression without names.
type alone struct{ set Set }

func (alone) Lookup(string) (v Value, ok bool, err error) { return }
func (alone) Names() []string                             { return nil }
func (a alone) Set() Set                                  { return a.set }
func (alone) Planar() bool                                { return false }
func (alone) Compass() (east, north, up [3]float64) {
	return [3]float64{1, 0, 0}, [3]float64{0, 1, 0}, [3]float64{0, 0, 1}
}

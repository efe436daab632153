package units

import "math"

// exactPrint is the tolerance, relative to the value, of a printed answer that
// is an expression ("-49*sqrt(3)/3 N") and so has no last place: far above the
// rounding of a solve, far below any misprint.
const exactPrint = 1e-9

// ReadPrinted reads an answer as a source prints it: "761 N", "43.8", "6.0e2 N",
// "22.62 deg", "12 300". It gives the value and half a unit of the last place
// printed, in SI, and the dimension as printed; a bare number is in the set's
// unit for d. The last place of a whole number is the units place. Where an
// uncertainty is printed behind ± that is the half.
func ReadPrinted(text string, set Set, d Dim) (value, half float64, dim Dim, err *Error) {
	e, err := Parse(text)
	if err != nil {
		return 0, 0, d, err
	}
	v, err := e.Eval(alone{set})
	if err != nil {
		return 0, 0, d, err
	}
	want := d
	if v.Dim != Number {
		want = v.Dim
	}
	bare := set.For(d)
	if v, err = Want(v, want, bare, e.Span()); err != nil {
		return 0, 0, d, err
	}
	value, half = v.V[0], exactPrint*math.Abs(v.V[0])
	n := e.root.unsigned()
	factor := 1.0
	switch {
	case n.kind == nUnit:
		factor = n.factor
		n = n.args[0].unsigned()
	case n.kind == nNumber:
		factor = bare.Factor
	}
	switch {
	case v.Plus[0] > 0:
		half = v.Plus[0]
	case n.kind == nNumber && !n.exact:
		half = 0.5 * math.Pow(10, float64(n.place)) * factor
	}
	return value, half, want, nil
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

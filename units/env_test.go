package units

import (
	"errors"
	"math"
	"testing"

	"trivet/mechanics/diag"
)

// desk is a small sheet for the tests: two givens, a line called N, two
// unknowns, and points in space.
type desk struct {
	alone
	planar bool
}

var errLater = errors.New("given late does not read")

func (d desk) Lookup(name string) (Value, bool, error) {
	switch name {
	case "h":
		return Scalar(6, Length), true, nil
	case "W":
		return Scalar(400*poundF, Force), true, nil
	case "w":
		return Value{Dim: Length, N: 1, V: [3]float64{2}, Plus: [3]float64{0.01}}, true, nil
	case "N":
		return Scalar(10, Force), true, nil
	case "g":
		return Scalar(9.81, Acceleration), true, nil
	case "mu":
		return Scalar(0.3, Number), true, nil
	case "T1", "T2":
		return Value{Dim: Force, N: 1, Terms: []Term{{name, 1}}}, true, nil
	case "O":
		return Vector([3]float64{}, Length), true, nil
	case "T":
		return Vector([3]float64{0, 0, 6}, Length), true, nil
	case "A":
		return Vector([3]float64{4, 0, 0}, Length), true, nil
	case "late":
		return Value{}, true, errLater
	case "mute":
		return Value{}, true, diag.At(diag.Between(70, 80), "mute is in a circle", "break it")
	}
	return Value{}, false, nil
}

// Place has a point N beside the line N.
func (d desk) Place(name string) (Value, bool, error) {
	switch name {
	case "N":
		return Vector([3]float64{0, 3, 0}, Length), true, nil
	case "late":
		return Value{}, true, errLater
	}
	return Value{}, false, nil
}

func (d desk) Names() []string { return []string{"h", "W", "mu", "N", "T1", "T2", "O", "T", "A"} }
func (d desk) Planar() bool    { return d.planar }

// upright is the desk of a sheet whose way up is +y.
type upright struct{ desk }

func (upright) Compass() (east, north, up [3]float64) {
	return [3]float64{1, 0, 0}, [3]float64{0, 1, 0}, [3]float64{0, 1, 0}
}

func newDesk() desk { return desk{alone: alone{set: DefaultSet()}} }

// near allows the rounding of a handful of operations, and no more.
func near(a, b float64) bool {
	return math.Abs(a-b) <= 8*0x1p-52*max(math.Abs(a), math.Abs(b), 1e-3)
}

func evalText(text string, env Env) (Value, *diag.Error) {
	e, err := Parse(text)
	if err != nil {
		return Value{}, err
	}
	return e.Eval(env)
}

func checkSpan(t *testing.T, text string, s diag.Span) {
	t.Helper()
	if s.Start < 0 || s.End < s.Start || s.End > len(text) {
		t.Errorf("%q: the span %v is not inside the text", text, s)
	}
}

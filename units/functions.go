package units

import (
	"math"

	"trivet/mechanics/diag"
)

// function is an entry of the table of functions. takes has a letter a value:
// s a known scalar, v a vector; behind | they may be left out.
type function struct {
	name, takes, usage, says string
	eval                     func(r run, n *node, a [3]Value) (Value, *diag.Error)
}

// FunctionInfo describes a function for a help page.
type FunctionInfo struct {
	Name, Usage, Says string
	Vector            bool // it gives a vector
}

// Functions lists the functions, in the order of the help.
func Functions() []FunctionInfo {
	out := make([]FunctionInfo, len(functions))
	for i, f := range functions {
		out[i] = FunctionInfo{f.name, f.usage, f.says, f.vector()}
	}
	return out
}

// functions is the one table of them. It is never written to.
var functions = []function{
	{"sqrt", "s", "sqrt(x)", "square root; of an area, a length", sqrt},
	{"sin", "s", "sin(angle)", "sine", sin},
	{"cos", "s", "cos(angle)", "cosine", cos},
	{"tan", "s", "tan(angle)", "tangent", tan},
	{"asin", "s", "asin(x)", "angle of a sine, -90 to 90 deg", asin},
	{"acos", "s", "acos(x)", "angle of a cosine, 0 to 180 deg", acos},
	{"atan", "s", "atan(x)", "angle of a tangent, -90 to 90 deg", atan},
	{"atan2", "ss", "atan2(y, x)", "angle of the point (x, y), -180 to 180 deg", atan2},
	{"abs", "s", "abs(x)", "absolute value", abs},
	{"min", "ss|s", "min(a, b)", "the smallest of two or three", least},
	{"max", "ss|s", "max(a, b)", "the largest of two or three", most},
	{"hypot", "ss|s", "hypot(a, b)", "square root of the sum of two or three squares", hypot},
	{"exp", "s", "exp(x)", "e to the power x; an angle counts in radians", exp},
	{"ln", "s", "ln(x)", "natural logarithm", ln},
	{"dir", "vv", "dir(A, B)", "unit vector from A to B", dir},
	{"polar", "s", "polar(angle)", "unit vector in a plane, angle from +x counter-clockwise", polar},
	{"slope", "ss", "slope 3:4", "unit vector in a plane that rises 3 in a run of 4 towards +x (slope -3:4 falls, slope 3:-4 rises towards -x)", slope},
	{"angles", "sss", "angles(a, b, c)", "unit vector by its direction angles from +x, +y, +z", angles},
	{"bearing", "s|s", "bearing(azimuth, elevation)", "unit vector, azimuth clockwise from north, elevation above the horizontal", bearing},
	{"unit", "v", "unit(a)", "unit vector along a", unitVector},
	{"length", "v|v", "length(a)", "magnitude of a vector; length(A, B) is the distance from A to B", length},
	{"dot", "vv", "dot(a, b)", "scalar product", dot},
	{"cross", "vv", "cross(a, b)", "vector product", cross},
}

func (f function) vector() bool {
	switch f.name {
	case "dir", "polar", "slope", "angles", "bearing", "unit", "cross":
		return true
	}
	return false
}

// keeps tells whether the function gives back a size of what it is given.
func (f function) keeps() bool {
	switch f.name {
	case "sqrt", "abs", "min", "max", "hypot":
		return true
	}
	return false
}

func functionNames() []string {
	out := make([]string, len(functions))
	for i := range functions {
		out[i] = functions[i].name
	}
	return out
}

func findFunction(name string) *function {
	if name == "√" {
		name = "sqrt"
	}
	for i := range functions {
		if functions[i].name == name {
			return &functions[i]
		}
	}
	return nil
}

// count gives how many values the function takes at least and at most.
func (f *function) count() (least, most int) {
	for i := range f.takes {
		if f.takes[i] == '|' {
			least = most
		} else {
			most++
		}
	}
	if least == 0 {
		least = most
	}
	return least, most
}

func (r run) call(n *node) (Value, *diag.Error) {
	var a [3]Value
	takes := 0
	for i, c := range n.args {
		if n.fn.takes[takes] == '|' {
			takes++
		}
		vector := n.fn.takes[takes] == 'v'
		v, err := r.argument(c, vector)
		if err != nil {
			return v, err
		}
		switch {
		case len(v.Terms) > 0:
			return r.fail(n, "", "%s is a function of an unknown"+linear, r.src(n))
		case vector && v.N == 1:
			return r.fail(c, n.fn.usage, "%s takes a vector or a point, but %s is %s", n.fn.name, r.src(c), v.Dim.Name())
		case !vector && v.N > 1:
			return r.fail(c, n.fn.usage, "%s takes a number, but %s is a vector", n.fn.name, r.src(c))
		}
		takes++
		a[i] = v
	}
	v, err := n.fn.eval(r, n, a)
	if err != nil {
		return v, err
	}
	return r.kept(n, v)
}

// argument evaluates an argument. Where a vector is taken, a name means a point
// first, even where something else bears it too.
func (r run) argument(c *node, vector bool) (Value, *diag.Error) {
	if places, ok := r.env.(Places); ok && vector && c.kind == nName {
		v, found, err := places.Place(c.name)
		if err != nil {
			return Value{}, because(c.span, err)
		}
		if found {
			return v, nil
		}
	}
	return r.eval(c)
}

// like sees to it that the arguments share a dimension, which it gives.
func (r run) like(n *node, a *[3]Value) (Dim, *diag.Error) {
	first := -1
	for i := range n.args {
		switch {
		case zero(a[i]):
		case first < 0:
			first = i
		case a[i].Dim == a[first].Dim:
		case a[i].Dim == Number:
			_, err := r.bare(n.args[i], n.args[first], a[first].Dim)
			return Dim{}, err
		case a[first].Dim == Number:
			_, err := r.bare(n.args[first], n.args[i], a[i].Dim)
			return Dim{}, err
		default:
			_, err := r.fail(n, "", "%s takes quantities of one kind, but %s is %s and %s is %s",
				n.fn.name, r.src(n.args[first]), a[first].Dim.Name(), r.src(n.args[i]), a[i].Dim.Name())
			return Dim{}, err
		}
	}
	if first < 0 {
		return Number, nil
	}
	return a[first].Dim, nil
}

func sqrt(r run, n *node, a [3]Value) (Value, *diag.Error) {
	d, ok := a[0].Dim.power(0.5)
	if !ok {
		return r.fail(n, "", "%s is %s, so the unit of its root would have a fractional power",
			r.src(n.args[0]), a[0].Dim.Name())
	}
	if a[0].V[0] < 0 {
		return r.fail(n, "", "%s is the root of a negative number", r.src(n))
	}
	r.corner(a[0].V[0])
	return Scalar(math.Sqrt(a[0].V[0]), d), nil
}

func abs(r run, n *node, a [3]Value) (Value, *diag.Error) {
	r.corner(a[0].V[0])
	return Scalar(math.Abs(a[0].V[0]), a[0].Dim), nil
}

func least(r run, n *node, a [3]Value) (Value, *diag.Error) {
	d, err := r.like(n, &a)
	x := a[0].V[0]
	r.corners(n, &a)
	for i := range n.args {
		x = min(x, a[i].V[0])
	}
	return Scalar(x, d), err
}

func most(r run, n *node, a [3]Value) (Value, *diag.Error) {
	d, err := r.like(n, &a)
	x := a[0].V[0]
	r.corners(n, &a)
	for i := range n.args {
		x = max(x, a[i].V[0])
	}
	return Scalar(x, d), err
}

func hypot(r run, n *node, a [3]Value) (Value, *diag.Error) {
	d, err := r.like(n, &a)
	x := norm([3]float64{a[0].V[0], a[1].V[0], a[2].V[0]})
	r.corner(x)
	return Scalar(x, d), err
}

// norm is |v|, without overflow on the way.
func norm(v [3]float64) float64 { return math.Hypot(math.Hypot(v[0], v[1]), v[2]) }

func exp(r run, n *node, a [3]Value) (Value, *diag.Error) {
	// A radian is the number 1 here: a belt's e^(μβ) has an angle for β.
	if a[0].Dim != Number && a[0].Dim != Angle {
		return r.wantNumber(n, a[0])
	}
	return Scalar(math.Exp(a[0].V[0]), Number), nil
}

func ln(r run, n *node, a [3]Value) (Value, *diag.Error) {
	if a[0].Dim != Number {
		return r.wantNumber(n, a[0])
	}
	if a[0].V[0] <= 0 {
		return r.fail(n, "", "%s is the logarithm of a number that is not greater than zero", r.src(n))
	}
	return Scalar(math.Log(a[0].V[0]), Number), nil
}

func (r run) wantNumber(n *node, v Value) (Value, *diag.Error) {
	return r.fail(n.args[0], "", "%s takes a plain number, but %s is %s", n.fn.name, r.src(n.args[0]), v.Dim.Name())
}

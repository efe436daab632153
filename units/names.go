package units

import "trivet/mechanics/diag"

// Places is an Env that knows points by name apart from its other names: in
// dir(A, B) the point A is meant, even where a line is called A as well.
type Places interface {
	Place(name string) (v Value, ok bool, err error)
}

// Coiner is an Env in which a name that nobody has defined becomes an unknown. A
// name right behind a number must be Known all the same: 400 lbz is a misspelt
// unit, while 2*P may bring an unknown P in.
type Coiner interface {
	Known(name string) bool
}

// Measurer is an Env that is told of each uncertainty b of a ± b, and may have the
// value taken at another place of it: at a + share·b, share from -1 to 1, where
// the reader takes a. at is the whole of a ± b, half the text of b.
type Measurer interface {
	Measured(at diag.Span, half string, b Value) (share float64)
}

// Reserved tells whether a name has a meaning of the reader's own that no
// unknown may take: an axis, pi, or a function.
func Reserved(name string) bool {
	switch name {
	case "x", "y", "z", "i", "j", "k", "pi", "π":
		return true
	}
	return findFunction(name) != nil
}

// Cornered is an Env that wants to know where a value may have a corner: abs, min,
// max, roots and lengths tell it the number d whose zero is one, always in the same
// order. d may change its sign there or only touch zero.
type Cornered interface {
	Corner(d float64)
}

func (r run) corner(d float64) {
	if env, ok := r.env.(Cornered); ok {
		env.Corner(d)
	}
}

// corners does it for the choice among the arguments of min or max.
func (r run) corners(n *node, a *[3]Value) {
	for i := range n.args {
		for k := range i {
			r.corner(a[i].V[0] - a[k].V[0])
		}
	}
}

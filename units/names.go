package units

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

// Reserved tells whether a name has a meaning of the reader's own that no
// unknown may take: an axis, pi, or a function.
func Reserved(name string) bool {
	switch name {
	case "x", "y", "z", "i", "j", "k", "pi", "π":
		return true
	}
	return findFunction(name) != nil
}

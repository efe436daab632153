package units

import (
	"slices"

	"trivet/mechanics/diag"
)

// Expr is an expression as it was typed, read but not yet evaluated. It does
// not change and may be kept and used by several readers at once.
type Expr struct {
	text    string
	root    *node
	one     bool    // it is to be one value
	parts   []*Expr // the components where the whole is a tuple
	grouped string  // the text without the commas between its digits, where it had some
}

type nodeKind uint8

const (
	nNumber nodeKind = iota
	nName
	nQuestion
	nNeg
	nAdd
	nSub
	nMul
	nDiv
	nPow
	nUnit // args[0] times a unit
	nCall
	nTuple
	nPlusMinus
	nPercent // args[0] in hundredths of what stands before ±
)

type node struct {
	kind   nodeKind
	behind bool // a name behind a number: meant as a unit, most likely
	span   diag.Span
	num    float64
	factor float64 // of nUnit, into SI
	place  int     // of a typed decimal number: the power of ten of its last digit
	exact  bool    // a number that is a fraction or a constant, with no last digit
	whole  bool    // a number typed with digits only
	closed bool    // in parentheses
	inches bool    // feet and inches, as one number with the inches' last place
	dim    Dim
	name   string
	fn     *function
	args   []*node
}

func newExpr(text string, root *node) *Expr {
	e := &Expr{text: text, root: root}
	switch {
	case root.kind == nTuple:
		for _, a := range root.args {
			e.parts = append(e.parts, newExpr(text, a))
		}
	case root.kind == nUnit && root.args[0].asks():
		// (0, ?) N: what is unknown has no unit, and each other component has it.
		for _, a := range root.args[0].args {
			if a.kind != nQuestion {
				unit := *root
				unit.span, unit.args = a.span, []*node{a}
				a = &unit
			}
			e.parts = append(e.parts, newExpr(text, a))
		}
	}
	return e
}

// asks tells whether a node is a tuple with an unknown component.
func (n *node) asks() bool {
	return n.kind == nTuple && slices.ContainsFunc(n.args, func(a *node) bool { return a.kind == nQuestion })
}

// Literal gives the value of a typed number, signed or not, with or without a
// unit, as Eval would: what needs no names is had without them.
func (e *Expr) Literal() (x float64, d Dim, ok bool) {
	sign := 1.0
	n := e.root
	for n.kind == nNeg {
		sign, n = -sign, n.args[0]
	}
	switch {
	case n.kind == nNumber:
		return 0 + sign*n.num, Number, true
	case n.kind == nUnit && n.args[0].kind == nNumber:
		return 0 + sign*scale(n.args[0].num, n.factor), n.dim, true
	}
	return 0, Number, false
}

// literal tells whether a node is a typed number, signed or not.
func literal(n *node) bool { return n.unsigned().kind == nNumber }

// typesUnit tells whether a unit is typed in the expression.
func (n *node) typesUnit() bool {
	return n.kind == nUnit || n.kind == nName && bySymbol[n.name] != nil || slices.ContainsFunc(n.args, (*node).typesUnit)
}

func (n *node) unsigned() *node {
	for n.kind == nNeg {
		n = n.args[0]
	}
	return n
}

// Tuple gives the components of "a, b, c" or "(a, b, c)", so that they can be
// read one by one. Spans stay offsets in the whole text.
func (e *Expr) Tuple() ([]*Expr, bool) { return e.parts, len(e.parts) > 0 }

// Grouped gives the text as it is read where commas part its digits into threes:
// 1200 lb for 1,200 lb.
func (e *Expr) Grouped() (string, bool) { return e.grouped, e.grouped != "" }

// Name gives the name where the expression is one bare name.
func (e *Expr) Name() (string, bool) { return e.root.name, e.root.kind == nName }

// IsQuestion tells whether the expression is "?" alone: an unknown. A component
// of a tuple may be one.
func (e *Expr) IsQuestion() bool { return e.root.kind == nQuestion }

// Call gives the function's name and its arguments where the expression is one call.
func (e *Expr) Call() (name string, args []*Expr, ok bool) {
	if e.root.kind != nCall {
		return "", nil, false
	}
	for _, a := range e.root.args {
		args = append(args, newExpr(e.text, a))
	}
	return e.root.fn.name, args, true
}

// Quotient gives the two numbers, as typed, of 3/4 alone.
func (e *Expr) Quotient() (over, under string, ok bool) {
	n := e.root
	if n.kind != nDiv || n.closed || !literal(n.args[0]) || n.args[1].kind != nNumber {
		return "", "", false
	}
	src := func(s diag.Span) string { return e.text[s.Start:s.End] }
	return src(n.args[0].span), src(n.args[1].span), true
}

// Span is where the expression stands in its text.
func (e *Expr) Span() diag.Span { return e.root.span }

// String is the expression as typed.
func (e *Expr) String() string { return e.text[e.root.span.Start:e.root.span.End] }

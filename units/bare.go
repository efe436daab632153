package units

import "strings"

// BareAngle is an argument that stands for an angle, or for the power of exp, and
// bears no unit: what the reader takes it for is not what its writer may have had in
// mind. Call is the whole of it, exp(-0.25*180).
type BareAngle struct {
	Function string
	Call     string
	Operands []Operand
}

// Operand is a number, or where Name is not empty a name, of an argument; Under tells
// that it is no plain factor or term of it, as in a divisor.
type Operand struct {
	Span
	X     float64
	Name  string
	Under bool
}

// BareAngles gives the arguments of exp, of the functions of angles and of directions
// by angles in which neither a unit nor pi nor an angle's function stands.
func (e *Expr) BareAngles() []BareAngle {
	if strings.IndexByte(e.text, '(') < 0 {
		return nil
	}
	return bareAngles(nil, e.text, e.root)
}

func bareAngles(out []BareAngle, text string, n *node) []BareAngle {
	for _, arg := range n.args {
		if n.kind == nCall && takesAngle(n.fn.name) {
			b := bare{text: text}
			if b.gather(arg, false); !b.settled {
				out = append(out, BareAngle{n.fn.name, text[n.span.Start:n.span.End], b.found})
			}
		}
		out = bareAngles(out, text, arg)
	}
	return out
}

func takesAngle(function string) bool {
	switch function {
	case "exp", "sin", "cos", "tan", "polar", "angles", "bearing":
		return true
	}
	return false
}

// bare gathers the operands of one argument, until something settles what it is.
type bare struct {
	text    string
	found   []Operand
	settled bool
}

func (b *bare) gather(n *node, under bool) {
	switch n.kind {
	case nNumber:
		isPi := n.exact && strings.ContainsAny(b.text[n.span.Start:n.span.End], "pπ")
		perRadian := under && n.num > 57 && n.num < 58 // degrees are turned into radians by hand
		b.settled = b.settled || isPi || perRadian
		b.found = append(b.found, Operand{Span: n.span, X: n.num, Under: under})
		return
	case nName:
		b.found = append(b.found, Operand{Span: n.span, Name: n.name, Under: under})
		return
	case nUnit:
		b.settled = true
		return
	case nCall:
		switch n.fn.name {
		case "asin", "acos", "atan", "atan2":
			b.settled = true
			return
		}
		under = true
	case nPow:
		under = true
	}
	for i, arg := range n.args {
		b.gather(arg, under || n.kind == nDiv && i == 1)
	}
}

// Quantity is a typed number with one unit's symbol behind it, as in 0.3 N.
type Quantity struct {
	Span
	X      float64
	Number string
	Symbol string
}

// Quantities gives the typed numbers with a single unit, in the order of the text.
func (e *Expr) Quantities() []Quantity { return quantities(nil, e.text, e.root) }

func quantities(out []Quantity, text string, n *node) []Quantity {
	if n.kind == nUnit && n.args[0].kind == nNumber && n.args[0].span.End <= n.span.End {
		number := n.args[0].span
		symbol := strings.TrimSpace(strings.TrimRight(text[number.End:n.span.End], ")"))
		if bySymbol[symbol] != nil {
			out = append(out, Quantity{Span{number.Start, number.End + strings.LastIndex(text[number.End:n.span.End], symbol) + len(symbol)}, n.args[0].num, text[number.Start:number.End], symbol})
		}
		return out
	}
	for _, arg := range n.args {
		out = quantities(out, text, arg)
	}
	return out
}

package units

import (
	"math"
	"strings"

	"trivet/mechanics/diag"
)

// BareAngle is an argument that stands for an angle, or for the power of exp, and
// bears no unit: what the reader takes it for is not what its writer may have had in
// mind. Call is the whole of it, exp(-0.25*180).
type BareAngle struct {
	diag.Span
	Function string
	Call     string
	Argument string
	Operands []Operand
	// Radians is the call with a unit behind an argument in which pi stands as a factor
	// and no angle: what is written so is most likely in radians, sin(pi/6 rad).
	Radians string
}

// Operand is a number, or where Name is not empty a name, of an argument; Under tells
// that it is no plain factor or term of it, as in a divisor. Sum is the sum whose term
// it is, in parentheses, "" where it is in none.
type Operand struct {
	diag.Span
	X     float64
	Name  string
	Under bool
	Sum   string
}

// BareAngles gives the arguments of exp, of the functions of angles and of directions
// by angles in which neither a unit nor pi nor an angle's function stands; and those in
// which pi does, and no angle.
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
			b.gather(arg, false, "")
			call := BareAngle{Span: n.span, Function: n.fn.name, Call: text[n.span.Start:n.span.End], Argument: text[arg.span.Start:arg.span.End], Operands: b.found}
			if b.pi && !b.angle && n.fn.name != "exp" {
				call.Radians = text[n.span.Start:arg.span.Start] + inRadians(text, arg) + text[arg.span.End:n.span.End]
			}
			if !b.settled || call.Radians != "" {
				out = append(out, call)
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
	pi      bool // as a factor
	angle   bool // an angle stands in it
}

func (b *bare) gather(n *node, under bool, sum string) {
	switch n.kind {
	case nNumber:
		isPi := n.exact && strings.ContainsAny(b.text[n.span.Start:n.span.End], "pπ")
		perRadian := under && n.num > 57 && n.num < 58 // degrees are turned into radians by hand
		b.settled = b.settled || isPi || perRadian
		b.pi = b.pi || isPi && !under
		b.found = append(b.found, Operand{Span: n.span, X: n.num, Under: under, Sum: sum})
		return
	case nName:
		b.found = append(b.found, Operand{Span: n.span, Name: n.name, Under: under, Sum: sum})
		return
	case nUnit:
		b.settled = true
		b.angle = b.angle || n.dim == Angle
		return
	case nCall:
		switch n.fn.name {
		case "asin", "acos", "atan", "atan2":
			b.settled, b.angle = true, true
			return
		}
		under = true
	case nPow:
		under = true
	case nAdd, nSub:
		if sum == "" && !n.closed {
			sum = "(" + b.text[n.span.Start:n.span.End] + ")"
		} else if sum == "" {
			sum = b.text[n.span.Start:n.span.End]
		}
	case nMul, nDiv:
		if sum != "" { // 180 of 0.25*180 + 1 is no term of the sum
			sum = "("
		}
	}
	for i, arg := range n.args {
		b.gather(arg, under || n.kind == nDiv && i == 1, sum)
	}
}

// inRadians writes an argument in radians: pi/6 rad, and in parentheses what rad would
// not stand behind as a whole.
func inRadians(text string, arg *node) string {
	src := text[arg.span.Start:arg.span.End]
	plain := src + " rad"
	env := alone{set: DefaultSet()}
	if want, err := (&Expr{text: text, root: arg}).Eval(env); err == nil {
		if e, err := Parse(plain); err == nil {
			if got, err := e.Eval(env); err == nil && got.Dim == Angle && near15(got.V[0], want.V[0]) {
				return plain
			}
		}
	}
	if arg.closed {
		return src + " rad"
	}
	return "(" + src + ") rad"
}

// near15 tells that two ways to work out one value gave it.
func near15(a, b float64) bool { return math.Abs(a-b) <= 1e-15*math.Abs(b) }

// Quantity is a typed number with one unit's symbol behind it, as in 0.3 N.
type Quantity struct {
	diag.Span
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
			out = append(out, Quantity{diag.Between(number.Start, number.End+strings.LastIndex(text[number.End:n.span.End], symbol)+len(symbol)), n.args[0].num, text[number.Start:number.End], symbol})
		}
		return out
	}
	for _, arg := range n.args {
		out = quantities(out, text, arg)
	}
	return out
}

package doc

import (
	"math"
	"strings"
)

// Math is a node of a formula: a tree that text, LaTeX and MathML print alike.
type Math struct {
	Op   Op
	Text string  // the symbol, the number as shown, the unit, the words
	Of   []Math  // operands
	Num  float64 // for Number: the value behind the text, in the unit shown
	Half float64 // for Number: half a unit of the last place shown; 0 where it is exact
	Name string  // for Symbol: the sheet's name that it stands for, as typed; text shows it so
	From Origin  // for Number: where it comes from; nil where it needs no saying
}

// NumberOf makes a node of a number and its print: a minus stands before the digits,
// but not before a zero.
func NumberOf(text string, x float64) Math {
	digits, minus := strings.CutPrefix(text, "-")
	switch {
	case !strings.ContainsAny(digits, "123456789"):
		return Math{Op: Number, Text: digits, Num: math.Abs(x)}
	case minus:
		return Math{Op: Neg, Of: []Math{{Op: Number, Text: digits, Num: -x}}}
	}
	return Math{Op: Number, Text: digits, Num: x}
}

// Op says what a node is.
type Op int

// The nodes of a formula.
const (
	Symbol   Op = iota // T, α, Σ; Of may hold one subscript
	Vec                // a vector's symbol, bold or with an arrow; Of may hold a subscript
	UnitVec            // i j k u: a unit vector's symbol; Of may hold a subscript
	Number             // Text as shown (rounded), Num in full
	Words              // upright words, such as a unit or "about"
	Row                // operands side by side
	Sum                // operands joined by + or -: an operand that is Neg is subtracted
	Neg                // -a
	Product            // operands multiplied, set side by side with · between numbers
	Cross              // a × b
	Fraction           // a / b
	Root               // √a
	Power              // a ^ b
	Size               // |a|
	Paren              // (a), or a tuple (a, b, c) where it holds several
	Relate             // operands joined by Text: "=", "≈", "<"
	Column             // a column vector or a matrix of one column
	Grid               // a matrix: each operand is a Row of entries
	BigSum             // Σ of its operand
	Det                // a determinant: a Grid between bars: i j k over r over F
	Function           // Text of its operand: cos a
	Degrees            // a°
)

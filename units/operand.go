package units

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"trivet/mechanics/diag"
)

// power reads an operand, a power of it, and what stands beside it without an
// operator: 2^3, 10^3 N, 2 T1, W cos 30°, 2 (3 + 4).
func (p *parser) power() (*node, *diag.Error) {
	if err := p.enter(); err != nil {
		return nil, err
	}
	defer func() { p.depth-- }()
	first := p.i
	n, beside, err := p.operand()
	if err != nil {
		return nil, err
	}
	switch t := p.peek(); {
	case t.kind == tCaret, t.kind == tSuper:
		base := n
		if n, err = p.raise(n); err != nil {
			return nil, err
		}
		if base.kind != nName && base.kind != nUnit && p.unitAt(p.i, false) {
			return p.unitBehind(n)
		}
		return n, nil
	case beside && p.operandAt(p.i), p.functionAt(p.i):
		// a/2 h: behind a slash a reader can't tell what is divided by.
		if first > 0 && p.at(first-1).kind == tSlash {
			at := diag.Between(n.span.Start, t.end)
			return nil, diag.At(at, fmt.Sprintf("%s after / can be read two ways", p.src(at)), "a * between them, or ( and ) around them")
		}
		m, err := p.power()
		if err != nil {
			return nil, err
		}
		if m.kind == nName && n.kind == nNumber {
			m.behind = true
		} else if m.kind == nPow && m.args[0].kind == nName && n.kind == nNumber {
			m.args[0].behind = true
		}
		return binary(nMul, n, m), nil
	}
	return n, nil
}

// operandAt tells whether token i begins an operand that a number may stand
// beside: a name or a parenthesis, but no further number.
func (p *parser) operandAt(i int) bool {
	t := p.at(i)
	return t.kind == tOpen || t.kind == tName && !t.mark
}

// raise reads ^exponent or a raised exponent. Powers of powers associate to the
// right, and an exponent takes no unit: 10^3 N is 1000 N.
func (p *parser) raise(base *node) (*node, *diag.Error) {
	t := p.next()
	if t.kind == tSuper {
		e := &node{kind: nNumber, span: diag.Between(t.start, t.end), num: t.num, exact: true}
		return binary(nPow, base, e), nil
	}
	e, err := p.exponent()
	if err != nil {
		return nil, err
	}
	return binary(nPow, base, e), nil
}

func (p *parser) exponent() (*node, *diag.Error) {
	if err := p.enter(); err != nil {
		return nil, err
	}
	defer func() { p.depth-- }()
	t := p.peek()
	switch t.kind {
	case tMinus, tPlus:
		p.i++
		n, err := p.exponent()
		if err != nil || t.kind == tPlus {
			return n, err
		}
		return &node{kind: nNeg, span: diag.Between(t.start, n.span.End), args: []*node{n}}, nil
	case tNumber:
		p.i++
		n := number(t)
		if p.peek().kind == tCaret {
			return p.raise(n)
		}
		return n, nil
	}
	n, _, err := p.operand()
	if err == nil && p.peek().kind == tCaret {
		return p.raise(n)
	}
	return n, err
}

func number(t token) *node {
	return &node{kind: nNumber, span: diag.Between(t.start, t.end), num: t.num, place: t.place, whole: t.whole, exact: t.vulgar}
}

// operand reads a number with its unit, a name, a call, or a parenthesis.
// beside tells that a factor may follow without an operator.
func (p *parser) operand() (n *node, beside bool, err *diag.Error) {
	t := p.peek()
	switch {
	case t.kind == tNumber:
		return p.quantity()
	case t.kind == tOpen:
		if n, err = p.parenthesis(); err != nil {
			return nil, false, err
		}
	case t.kind == tName && !t.mark:
		word := p.text[t.start:t.end]
		if word == "pi" || word == "π" {
			p.i++
			n = &node{kind: nNumber, span: diag.Between(t.start, t.end), num: math.Pi, exact: true}
			// π/6 rad is a fraction of π, as 1/2 in is one of an inch.
			if d := p.at(p.i + 1); p.peek().kind == tSlash && d.whole && d.num != 0 && p.unitAt(p.i+2, false) {
				p.i += 2
				n.num /= d.num
				n.span.End = d.end
			}
			break
		}
		if n, err = p.call(word); n == nil && err == nil {
			p.i++
			return &node{kind: nName, span: diag.Between(t.start, t.end), name: word}, false, nil
		}
		if err != nil || p.at(p.i-1).kind != tClose && word != "√" {
			return n, false, err
		}
	default:
		return nil, false, p.missing(t)
	}
	if p.unitAt(p.i, false) {
		n, err = p.unitBehind(n)
		return n, false, err
	}
	return n, true, nil
}

// parenthesis reads ( ... ), a value or a vector.
func (p *parser) parenthesis() (*node, *diag.Error) {
	open := p.next()
	n, err := p.list()
	if err != nil {
		return nil, err
	}
	if n.kind == nPlusMinus {
		return nil, misplacedPlusMinus(n.span)
	}
	if t := p.peek(); t.kind != tClose {
		if t.kind == tEnd {
			return nil, diag.At(diag.Between(open.start, open.end), "this ( is not closed", "add a )")
		}
		return nil, p.wantEnd()
	}
	close := p.next()
	// The span takes the parentheses in; a copy, since nothing else may see them.
	m := *n
	m.span, m.closed = diag.Between(open.start, close.end), true
	return &m, nil
}

// unitBehind reads the unit behind a number or a parenthesis.
func (p *parser) unitBehind(n *node) (*node, *diag.Error) {
	parts, dim, err := p.compound(true)
	if err != nil {
		return nil, err
	}
	return &node{kind: nUnit, span: diag.Between(n.span.Start, p.prevEnd()), factor: factor(parts), dim: dim, args: []*node{n}}, nil
}

// letterTimes refuses 5 x 10^3 N, in which a letter stands for the times sign.
func (p *parser) letterTimes(n *node) *diag.Error {
	t, by, i := p.peek(), p.at(p.i+1), p.i+2
	if t.kind != tName {
		return nil
	}
	word := p.text[t.start:t.end]
	ten := by.whole && by.num == 10
	switch {
	case strings.EqualFold(word, "x") && by.kind == tNumber:
	case strings.EqualFold(word, "x10") && (by.kind == tCaret || by.kind == tSuper):
		by, ten, i = token{start: t.start + 1, end: t.end}, true, p.i+1
	default:
		return nil
	}
	at := diag.Between(n.span.Start, by.end)
	says := p.src(n.span) + "*" + p.text[by.start:by.end]
	sign, power, last := "", p.at(i+1), i+2
	if power.kind == tMinus {
		sign, power, last = "-", p.at(i+2), i+3
	}
	switch raised := p.at(i); {
	case ten && !n.exact && raised.kind == tCaret && power.kind == tNumber && power.whole:
		at.End, says = power.end, p.src(n.span)+"e"+sign+p.text[power.start:power.end]
		p.i = last
	case ten && !n.exact && raised.kind == tSuper:
		at.End, says = raised.end, p.src(n.span)+"e"+strconv.FormatFloat(raised.num, 'f', -1, 64)
		p.i = i + 1
	case t.start == n.span.End: // 35x 4 is a slip
		return nil
	default:
		p.i = i
	}
	if p.unitAt(p.i, false) {
		from := p.peek().start
		if _, _, err := p.compound(true); err == nil {
			at.End = p.prevEnd()
			says += " " + p.text[from:at.End]
		}
	}
	return diag.At(at, p.src(at)+" uses the letter x as a multiplication sign", says)
}

// quantity reads a number as carpenters and engineers write it, with its unit.
func (p *parser) quantity() (*node, bool, *diag.Error) {
	if err := p.hyphenFraction(); err != nil {
		return nil, false, err
	}
	start := p.i
	n := p.mixed(true)
	if err := p.letterTimes(n); err != nil {
		return nil, false, err
	}
	if err := p.hyphenUnit(start, n); err != nil {
		return nil, false, err
	}
	t := p.peek()
	switch {
	case t.kind == tName && t.mark:
		p.i++
		n = p.marked(n, t)
		if bySymbol[p.text[t.start:t.end]].Symbol == "ft" {
			m, err := p.inches(n, true)
			return m, false, err
		}
		return n, false, p.secondHyphen(n)
	case p.unitAt(p.i, false):
		start := p.i
		u, err := p.unitBehind(n)
		if err == nil && p.i == start+1 && bySymbol[p.text[t.start:t.end]].Symbol == "ft" {
			u, err = p.inches(u, false)
		}
		return u, false, err
	case t.kind == tNumber:
		return nil, false, p.missingOperator(t)
	}
	return n, true, nil
}

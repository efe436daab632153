package units

import (
	"fmt"

	"trivet/mechanics/diag"
	"trivet/mechanics/say"
)

// call reads word as a function: with its arguments in parentheses, or, where
// it takes one scalar, with the operand behind it: cos 30°, sqrt 3. It gives
// nil without an error where the word is no function here.
func (p *parser) call(word string) (*node, *diag.Error) {
	t := p.peek()
	fn := findFunction(word)
	after := p.at(p.i + 1)
	at := diag.Between(t.start, t.end)
	if after.kind == tOpen {
		if fn == nil {
			if bySymbol[word] != nil {
				return nil, diag.At(at, fmt.Sprintf("unknown function %q", word), word+"*( ... )")
			}
			hint := Suggest(word, functionNames())
			if hint == "" {
				hint = word + "*( ... )"
			}
			return nil, diag.At(at, fmt.Sprintf("unknown function %q", word), hint)
		}
		p.i++
		return p.arguments(fn, at)
	}
	if fn != nil && fn.name == "slope" && p.slopeAt(p.i+1) {
		return p.riseAndRun(fn)
	}
	if !p.prefixAt(p.i, fn) {
		return nil, nil
	}
	if err := p.enter(); err != nil {
		return nil, err
	}
	defer func() { p.depth-- }()
	p.i++
	if t := p.peek(); word == "√" && t.kind == tNumber { // the root of the number alone: √3 m is √3 metres
		p.i++
		arg := number(t)
		return &node{kind: nCall, span: diag.Between(at.Start, arg.span.End), fn: fn, args: []*node{arg}}, nil
	}
	minus := p.peek()
	if minus.kind == tMinus {
		p.i++
	}
	arg, beside, err := p.operand()
	if err != nil {
		return nil, err
	}
	if beside && p.operandAt(p.i) || p.peek().kind == tNumber {
		return nil, p.missingOperator(p.peek())
	}
	if minus.kind == tMinus {
		arg = &node{kind: nNeg, span: diag.Between(minus.start, arg.span.End), args: []*node{arg}}
	}
	return &node{kind: nCall, span: diag.Between(t.start, arg.span.End), fn: fn, args: []*node{arg}}, nil
}

// slopeAt tells whether an operand of slope begins at token i.
func (p *parser) slopeAt(i int) bool {
	if k := p.at(i).kind; k == tMinus || k == tPlus {
		i++
	}
	return p.at(i).kind == tNumber || p.at(i).kind == tName && p.at(i+1).kind == tColon
}

// riseAndRun reads slope 3:4.
func (p *parser) riseAndRun(fn *function) (*node, *diag.Error) {
	t := p.next()
	n := &node{kind: nCall, fn: fn}
	for i := range 2 {
		if i == 1 {
			if c := p.peek(); c.kind != tColon {
				at := diag.Between(t.start, p.prevEnd())
				if over := n.args[0]; c.kind == tSlash && p.at(p.i+1).kind == tNumber && over.kind <= nNeg {
					run := p.at(p.i + 1)
					at.End = run.end
					return nil, diag.At(at, "the rise and the run of a slope are separated by a colon", "slope "+p.src(over.span)+":"+p.text[run.start:run.end])
				}
				return nil, diag.At(at, p.src(at)+" has no run", "a rise and a run, as in slope 3:4")
			}
			p.i++
		}
		sign := p.peek()
		if sign.kind == tMinus || sign.kind == tPlus {
			p.i++
		}
		a, _, err := p.operand()
		if err != nil {
			return nil, err
		}
		if sign.kind == tMinus {
			a = &node{kind: nNeg, span: diag.Between(sign.start, a.span.End), args: []*node{a}}
		}
		n.args = append(n.args, a)
	}
	n.span = diag.Between(t.start, p.prevEnd())
	return n, nil
}

// prefixAt tells whether the function named by token i takes the operand
// behind it: a number, signed or not, or a name that is no unit.
func (p *parser) prefixAt(i int, fn *function) bool {
	if fn == nil || fn.takes != "s" {
		return false
	}
	switch t := p.at(i + 1); t.kind {
	case tNumber:
		return true
	case tMinus:
		return p.at(i+2).kind == tNumber
	case tName:
		return bySymbol[p.text[t.start:t.end]] == nil
	}
	return false
}

// functionAt tells whether a call begins at token i. One may stand beside any
// operand: W cos 30°, 2 kN sin(a).
func (p *parser) functionAt(i int) bool {
	t := p.at(i)
	if t.kind != tName {
		return false
	}
	fn := findFunction(p.text[t.start:t.end])
	return fn != nil && (p.at(i+1).kind == tOpen || p.prefixAt(i, fn))
}

// arguments reads ( a, b ) behind a function's name.
func (p *parser) arguments(fn *function, at diag.Span) (*node, *diag.Error) {
	open := p.next()
	n := &node{kind: nCall, fn: fn}
	for p.peek().kind != tClose || len(n.args) > 0 {
		a, err := p.sum()
		if err != nil {
			return nil, err
		}
		n.args = append(n.args, a)
		t := p.peek()
		if t.kind == tComma {
			p.i++
			continue
		}
		if t.kind == tClose {
			break
		}
		if t.kind == tEnd {
			return nil, diag.At(diag.Between(open.start, open.end), "this ( is not closed", "add a )")
		}
		return nil, p.wantEnd()
	}
	n.span = diag.Between(at.Start, p.next().end)
	if least, most := fn.count(); len(n.args) < least || len(n.args) > most {
		return nil, diag.At(n.span, fmt.Sprintf("%s takes %s, not %d", fn.name, values(least, most), len(n.args)), fn.usage)
	}
	return n, nil
}

func values(least, most int) string {
	if least == most {
		return say.Number(most) + " " + say.Plural(most, "value")
	}
	return say.Number(least) + " to " + say.Number(most) + " values"
}

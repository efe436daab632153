package units

import "fmt"

// marked puts the unit of a foot or inch mark, or of the word, behind a number.
func (p *parser) marked(n *node, t token) *node {
	u := bySymbol[p.text[t.start:t.end]]
	return &node{kind: nUnit, span: Span{n.span.Start, t.end}, factor: u.Factor, dim: u.Dim, args: []*node{n}}
}

// mixed reads 6, 3 1/2 and, where a unit or a factor follows and no division
// comes before, 1/2: so 1/2 in is half an inch. The caller has seen a number.
func (p *parser) mixed(fraction bool) *node {
	before := tEnd
	if p.i > 0 {
		before = p.at(p.i - 1).kind
	}
	t := p.next()
	n := number(t)
	if !t.whole {
		return n
	}
	if p.fractionAt(p.i) && p.at(p.i).num < p.at(p.i+2).num && p.at(p.i+3).kind != tCaret {
		n.num += p.at(p.i).num / p.at(p.i+2).num
		p.i += 3
	} else if fraction && before != tSlash && before != tCaret && p.fractionAt(p.i-1) &&
		p.at(p.i+1).num != 0 && (p.operandAt(p.i+2) || p.at(p.i+2).mark) {
		n.num /= p.at(p.i + 1).num
		p.i += 2
	} else {
		return n
	}
	n.exact = true
	n.span.End = p.prevEnd()
	return n
}

// fractionAt tells whether whole/whole stands at token i.
func (p *parser) fractionAt(i int) bool {
	return p.at(i).whole && p.at(i).kind == tNumber && p.at(i+1).kind == tSlash &&
		p.at(i+2).whole && p.at(i+2).kind == tNumber
}

// inches reads on behind feet: 5' 6", 3 ft 6 1/2 in, and 5'-6" where the mark
// makes the dash a hyphen. Between 3 ft - 6 in it takes away.
func (p *parser) inches(feet *node, mark bool) (*node, *Error) {
	back := p.i
	hyphen := mark && p.peek().kind == tMinus
	if hyphen {
		p.i++
	}
	if p.peek().kind != tNumber {
		p.i = back
		return feet, nil
	}
	n := p.mixed(true)
	t := p.peek()
	word := p.text[t.start:t.end]
	isInch := t.kind == tName && bySymbol[word] != nil && bySymbol[word].Symbol == "in"
	after := p.at(p.i + 1)
	switch {
	case !isInch, after.kind == tCaret, after.kind == tSuper, after.kind == tOpen && !t.mark:
		p.i = back
		return feet, nil
	case hyphen && !t.mark:
		at := Span{feet.span.Start, t.end}
		return nil, &Error{at, p.src(at) + " can be read two ways",
			fmt.Sprintf("write %s %s\", or %s ft - %s in", p.src(feet.span), p.src(n.span), p.src(feet.args[0].span), p.src(n.span))}
	}
	p.i++
	return binary(nAdd, feet, p.marked(n, t)), nil
}

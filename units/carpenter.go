package units

import (
	"fmt"
	"strings"

	"trivet/mechanics/diag"
)

// marked puts the unit of a foot or inch mark, or of the word, behind a number.
func (p *parser) marked(n *node, t token) *node {
	u := bySymbol[p.text[t.start:t.end]]
	return &node{kind: nUnit, span: diag.Between(n.span.Start, t.end), factor: u.Factor, dim: u.Dim, args: []*node{n}}
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
	if f := p.peek(); f.vulgar {
		p.i++
		n.num += f.num
		n.exact = true
		n.span.End = f.end
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

// leads tells whether a value begins with token i, signed or not: behind an operator,
// as in 2*3-N, a hyphen takes away.
func (p *parser) leads(i int) bool {
	if i > 0 && (p.at(i-1).kind == tMinus || p.at(i-1).kind == tPlus) {
		i--
	}
	return i == 0 || opens(p.at(i-1).kind) && p.at(i-1).kind != tStar && p.at(i-1).kind != tDot
}

// hyphenFraction refuses 3-1/2 in, as a mixed number is printed, which would be read
// as a difference. Behind a number of its own so does 3-1/2.
func (p *parser) hyphenFraction() *diag.Error {
	t := p.peek()
	if !t.whole || !p.leads(p.i) || p.at(p.i+1).kind != tMinus || !p.tight(p.i+1) || !p.fractionAt(p.i+2) || p.at(p.i+2).num >= p.at(p.i+4).num {
		return nil
	}
	fraction := p.text[p.at(p.i+2).start:p.at(p.i+4).end]
	end := p.i + 5
	if p.at(end).kind == tMinus && p.tight(end) && p.unitAt(end+1, true) {
		end++ // 3-1/2-in
	}
	at := diag.Between(t.start, p.at(end).end)
	switch after := p.at(end); {
	case after.mark:
		return diag.At(at, p.src(at)+" is read as a difference", fmt.Sprintf("%s %s%s", p.text[t.start:t.end], fraction, p.text[after.start:after.end]))
	case p.unitAt(end, true):
		return diag.At(at, p.src(at)+" is read as a difference", fmt.Sprintf("%s %s %s", p.text[t.start:t.end], fraction, p.text[after.start:after.end]))
	case p.i == 0 || p.at(p.i-1).kind != tOpen || after.kind == tComma: // not (1-1/2)
		if after.kind == tEnd || after.kind == tComma || after.kind == tClose {
			at.End = p.at(p.i + 4).end
			return diag.At(at, p.src(at)+" can be read two ways", fmt.Sprintf("%[1]s %[2]s or %[1]s - %[2]s", p.text[t.start:t.end], fraction))
		}
	}
	return nil
}

// hyphenUnit refuses a hyphen between a number and its unit, as in a 6-in pipe, which
// would be read as a difference; s may be the distance along a load.
func (p *parser) hyphenUnit(start int, n *node) *diag.Error {
	if !p.leads(start) || p.peek().kind != tMinus || !p.tight(p.i) || !p.unitAt(p.i+1, true) {
		return nil
	}
	unit := p.at(p.i + 1)
	word := p.text[unit.start:unit.end]
	if bySymbol[word].Dim == Time {
		return nil
	}
	at := diag.Between(n.span.Start, unit.end)
	return diag.At(at, p.src(at)+" is read as a difference", p.src(n.span)+" "+word)
}

// inches reads on behind feet: 5' 6", 3 ft 6 1/2 in, and 5'-6" where the mark
// makes the dash a hyphen. Between 3 ft - 6 in it takes away; 3 ft-6 in may be either.
func (p *parser) inches(feet *node, mark bool) (*node, *diag.Error) {
	back := p.i
	hyphen := p.peek().kind == tMinus && (mark || p.tight(p.i))
	if hyphen {
		p.i++
	}
	if p.peek().kind != tNumber {
		p.i = back
		return feet, nil
	}
	if err := p.hyphenInches(feet, mark); err != nil {
		return nil, err
	}
	n := p.mixed(true)
	t := p.peek()
	word := p.text[t.start:t.end]
	isInch := t.kind == tName && bySymbol[word] != nil && bySymbol[word].Symbol == "in"
	after := p.at(p.i + 1)
	at := diag.Between(feet.span.Start, n.span.End)
	number, inches := p.src(feet.args[0].span), p.src(n.span)
	switch t.kind {
	case tEnd, tComma, tClose, tPlusMinus, tRange: // the last number has no unit
		if mark {
			return nil, diag.At(at, p.src(at)+" has no inch mark", p.src(at)+`"`)
		}
		return nil, diag.At(at, inches+" after "+p.src(feet.span)+" has no unit", p.src(feet.span)+" "+inches+" in")
	}
	switch {
	case !isInch, after.kind == tCaret, after.kind == tSuper, after.kind == tOpen && !t.mark:
		p.i = back
		return feet, nil
	case hyphen && !(mark && t.mark):
		at.End = t.end
		whole := p.src(feet.span) + " " + inches + " in"
		if mark {
			whole = p.src(feet.span) + " " + inches + `"`
		}
		return nil, diag.At(at, p.src(at)+" can be read two ways", fmt.Sprintf("%s or %s ft - %s in", whole, number, inches))
	}
	p.i++
	sum := binary(nAdd, feet, p.marked(n, t))
	sum.inches = true
	if err := p.secondHyphen(sum); err != nil {
		return nil, err
	}
	return sum, nil
}

// hyphenInches refuses the 6-1/2 of 5'-6-1/2", as drawings of steel write it: a hyphen
// before a fraction takes away elsewhere.
func (p *parser) hyphenInches(feet *node, mark bool) *diag.Error {
	t := p.peek()
	if !t.whole || p.at(p.i+1).kind != tMinus || !p.tight(p.i+1) || !p.fractionAt(p.i+2) || p.at(p.i+2).num >= p.at(p.i+4).num {
		return nil
	}
	end := p.i + 5
	unit := p.at(end)
	isInch := unit.kind == tName && bySymbol[p.text[unit.start:unit.end]] != nil && bySymbol[p.text[unit.start:unit.end]].Symbol == "in"
	switch unit.kind {
	case tEnd, tComma, tClose, tPlusMinus, tRange:
		end--
	default:
		if !isInch {
			return nil
		}
	}
	at := diag.Between(feet.span.Start, p.at(end).end)
	between, behind := p.text[feet.span.End:t.start], "\""
	if !mark {
		between, behind = " ", " in"
	}
	inches := p.text[t.start:t.end] + " " + p.text[p.at(p.i+2).start:p.at(p.i+4).end]
	return diag.At(at, p.src(at)+" has a hyphen before its fraction", p.src(feet.span)+between+inches+behind)
}

// secondHyphen refuses 5'-6"-1/2", in which the fraction is added by one reader and
// taken away by another.
func (p *parser) secondHyphen(n *node) *diag.Error {
	last := p.at(p.i - 1)
	if !last.mark || bySymbol[p.text[last.start:last.end]].Symbol != "in" || !p.at(p.i-2).whole || p.peek().kind != tMinus || !p.tight(p.i) ||
		!p.fractionAt(p.i+1) || p.at(p.i+1).num >= p.at(p.i+3).num || !p.at(p.i+4).mark {
		return nil
	}
	unit := p.at(p.i + 4)
	at := diag.Between(n.span.Start, unit.end)
	fraction, whole := p.text[p.at(p.i+1).start:unit.end], p.text[n.span.Start:last.start]
	if p.i > 2 && p.at(p.i-3).kind == tSlash { // 6 1/2" has its fraction
		return nil
	}
	return diag.At(at, p.src(at)+" can be read two ways", fmt.Sprintf("%s %s or %s - %s", whole, fraction, p.src(n.span), fraction))
}

// Dash is a hyphen or a minus between numbers of feet and inches, and how it is read;
// Meant is what else it may stand for, "" where nothing.
type Dash struct {
	diag.Span
	As, Meant string
}

// Dashes gives the lengths in feet and inches that a reader may take otherwise than
// they are: 3 ft - 6 in is 2.5 ft, 4'-3/4" is 4 ft 3/4 in, 0-9 in is -9 in.
func (e *Expr) Dashes() []Dash { return dashes(nil, e.text, e.root) }

func dashes(out []Dash, text string, n *node) []Dash {
	if len(n.args) == 2 {
		a, b := n.args[0], n.args[1]
		in := b.typed("in")
		switch gap := strings.TrimRight(text[a.span.End:max(a.span.End, b.span.Start)], " "); {
		case in == nil:
		case n.kind == nSub && a.typed("ft") != nil && in.num < 12 && a.args[0].whole && !a.args[0].exact:
			feet := Unit{Factor: a.factor}.In(scale(a.args[0].num, a.factor) - scale(in.num, b.factor))
			number := text[a.args[0].span.Start:a.args[0].span.End]
			out = append(out, Dash{n.span, Compact(feet) + " ft", number + " ft " + text[in.span.Start:in.span.End] + " in"})
		case n.kind == nSub && a.kind == nNumber && a.num == 0 && len(gap) == 1 && b.span.Start == a.span.End+1:
			number := text[in.span.Start:in.span.End]
			out = append(out, Dash{n.span, "-" + number + " in", "0 ft " + number + " in"})
		case n.inches && a.typed("ft") != nil && in.num < 1 && gap != "":
			out = append(out, Dash{n.span, text[a.args[0].span.Start:a.args[0].span.End] + " ft " + text[in.span.Start:in.span.End] + " in", ""})
		}
	}
	for _, arg := range n.args {
		out = dashes(out, text, arg)
	}
	return out
}

// typed is the number of a typed quantity in one unit, nil for anything else.
func (n *node) typed(symbol string) *node {
	u := bySymbol[symbol]
	if n.kind != nUnit || n.dim != u.Dim || n.factor != u.Factor || n.args[0].kind != nNumber {
		return nil
	}
	return n.args[0]
}

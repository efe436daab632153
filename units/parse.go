package units

import (
	"fmt"
	"strings"

	"trivet/mechanics/diag"
)

// maxDepth bounds the nesting of an expression.
const maxDepth = 64

type parser struct {
	text  string
	toks  []token
	i     int
	depth int
	one   bool // the text is one value
}

// Parse reads an expression's form; what its names mean is left to Eval. The
// error is nil where the text reads.
//
//	6 m · 3 ft 6 in · 6 cos 30° · 2*W/3 · (3, 0, -4) · 6 m ± 2 cm · ?
func Parse(text string) (*Expr, *diag.Error) {
	_, root, err := parse(text, false)
	if err != nil {
		return nil, err
	}
	return newExpr(text, root), nil
}

// parse reads a text to its end; one says that it is one value.
func parse(text string, one bool) (*parser, *node, *diag.Error) {
	p, err := newParser(text, one)
	if err != nil {
		return nil, nil, err
	}
	if one {
		if err := p.groupsHaveUnits(); err != nil {
			return nil, nil, err
		}
	}
	root, err := p.list()
	if err != nil {
		return nil, nil, err
	}
	return p, root, p.wantEnd()
}

func newParser(text string, one bool) (*parser, *diag.Error) {
	toks, err := lex(text, one)
	if err != nil {
		return nil, err
	}
	if len(toks) == 1 {
		return nil, diag.At(diag.Between(0, len(text)), "a value is missing", "")
	}
	return &parser{text: text, toks: toks, one: one}, nil
}

func (p *parser) at(i int) token         { return p.toks[min(i, len(p.toks)-1)] }
func (p *parser) peek() token            { return p.at(p.i) }
func (p *parser) src(s diag.Span) string { return p.text[s.Start:s.End] }

func (p *parser) next() token {
	t := p.peek()
	p.i++
	return t
}

// prevEnd is where the last token read ends.
func (p *parser) prevEnd() int { return p.at(p.i - 1).end }

func (p *parser) enter() *diag.Error {
	if p.depth++; p.depth > maxDepth {
		t := p.peek()
		return diag.At(diag.Between(t.start, t.end), fmt.Sprintf("the expression is nested more than %d deep", maxDepth), "split it over named values")
	}
	return nil
}

// wantEnd says what is wrong with the first token that the grammar left over.
func (p *parser) wantEnd() *diag.Error {
	t := p.peek()
	at := diag.Between(t.start, t.end)
	switch t.kind {
	case tEnd:
		return nil
	case tClose:
		return diag.At(at, "this ) has no matching (", "add a ( before it, or remove it")
	case tRange:
		return diag.At(at, "a range is not expected here", "a single value")
	case tPlusMinus:
		return misplacedPlusMinus(at)
	case tQuestion:
		return diag.At(at, "? cannot be part of an expression", "the name of the unknown, as in 2*T1")
	case tComma:
		return diag.At(at, "unexpected comma", "( and ) around the components of a vector")
	case tPercent:
		return p.percentAlone(at)
	case tColon:
		return p.colon(at)
	}
	if t.mark {
		return misplacedMark(at, p.src(at))
	}
	return p.missingOperator(t)
}

// missingOperator points at the gap between the last token and t.
func (p *parser) missingOperator(t token) *diag.Error {
	last := p.at(p.i - 1)
	a, b := p.text[last.start:last.end], p.text[t.start:t.end]
	// 5 ft 8 im is a mistyped 5 ft 8 in, not two values.
	if u := bySymbol[a]; last.kind == tName && u != nil && u.Symbol == "ft" && t.kind == tNumber && p.at(p.i+1).kind == tName {
		inches := p.at(p.i + 1)
		if word := p.text[inches.start:inches.end]; bySymbol[word] == nil {
			return diag.At(diag.Between(inches.start, inches.end), fmt.Sprintf("unknown unit %q", word), "feet and inches as in 5 ft 6 in")
		}
	}
	if e := p.twoUnits(last, t); e != nil {
		return e
	}
	e := diag.At(diag.Between(last.start, t.end), fmt.Sprintf("an operator is missing between %s and %s", a, b), "")
	if last.kind == tName && bySymbol[a] == nil && t.kind == tName && bySymbol[b] != nil {
		return diag.At(e.Span, fmt.Sprintf("the name %s is followed by the unit %s", a, b), fmt.Sprintf("%[1]s alone, or (%[1]s) %[2]s if %[1]s is a plain number", a, b))
	}
	if last.kind == tNumber && t.kind == tNumber {
		e.Hint = fmt.Sprintf("%s, %s for two components", a, b)
	}
	// Behind a unit a name is no factor: 5 kN T is a tension, 5 N per m a line load.
	unit := last.kind == tName && bySymbol[a] != nil && b != "g" && findFunction(b) == nil
	if t.kind == tName && !unit || t.kind == tOpen {
		e.Hint = a + "*" + b
		if t.kind == tOpen {
			e.Hint = a + "*( ... )"
		}
	}
	return e
}

// twoUnits says how 3 m 20 cm is written; of feet and inches alone it reads.
func (p *parser) twoUnits(last, t token) *diag.Error {
	if p.i < 2 {
		return nil
	}
	number, unit := p.at(p.i-2), p.at(p.i+1)
	u, v := bySymbol[p.text[last.start:last.end]], bySymbol[p.text[unit.start:unit.end]]
	if last.kind != tName || number.kind != tNumber || t.kind != tNumber || unit.kind != tName || u == nil || v == nil || u.Dim != v.Dim || v.Factor >= u.Factor {
		return nil
	}
	switch p.at(p.i + 2).kind {
	case tSlash, tDot, tStar, tCaret, tSuper:
		return nil
	}
	at := diag.Between(number.start, unit.end)
	sum := u.In(scale(number.num, u.Factor) + scale(t.num, v.Factor))
	return diag.At(at, p.src(at)+" has two units", Compact(sum)+" "+p.text[last.start:last.end])
}

// colon says of 3:4, which may be rise and run or run and rise, how it reads.
func (p *parser) colon(at diag.Span) *diag.Error {
	e := diag.At(at, "a colon is used in a slope only", "slope 3:4, for a rise of 3 in a run of 4")
	if a, b := p.at(p.i-1), p.at(p.i+1); p.i > 0 && a.kind == tNumber && b.kind == tNumber {
		rise, run := p.text[a.start:a.end], p.text[b.start:b.end]
		e.Span = diag.Between(a.start, b.end)
		e.Msg = p.src(e.Span) + " can be read two ways"
		e.Hint = fmt.Sprintf("slope %s:%s if the first is the rise, or slope %s:%s if it is the run", rise, run, run, rise)
	}
	return e
}

// percentAlone says where a per cent stands for nothing; in ± 1,5 % the comma parts it.
func (p *parser) percentAlone(at diag.Span) *diag.Error {
	if i := p.i; i > 3 && p.at(i-1).whole && p.at(i-2).kind == tComma && p.at(i-3).whole && p.at(i-4).kind == tPlusMinus {
		at.Start = p.at(i - 4).start
		return diag.At(at, p.src(at)+" contains a comma", fmt.Sprintf("± %s.%s %%", p.src(diag.Between(p.at(i-3).start, p.at(i-3).end)), p.src(diag.Between(p.at(i-1).start, p.at(i-1).end))))
	}
	return diag.At(at, "a percentage is not expected here", "a fraction, such as 0.02")
}

func misplacedPlusMinus(at diag.Span) *diag.Error {
	return diag.At(at, "± must come last in a value", "the form 6 m ± 2 cm")
}

func misplacedMark(at diag.Span, mark string) *diag.Error {
	word := "the foot mark"
	if bySymbol[mark].Symbol == "in" {
		word = "the inch mark"
	}
	return diag.At(at, word+" "+mark+" must follow a number", `the form 5' 6"`)
}

// list reads components with commas between them: one alone is that component.
func (p *parser) list() (*node, *diag.Error) {
	first, err := p.component()
	if err != nil || p.peek().kind != tComma {
		return first, err
	}
	n := &node{kind: nTuple, span: first.span, args: []*node{first}}
	for p.peek().kind == tComma {
		p.i++
		c, err := p.component()
		if err != nil {
			return nil, err
		}
		n.args = append(n.args, c)
		n.span.End = c.span.End
	}
	if len(n.args) > 3 && !p.one {
		return nil, diag.At(n.span, fmt.Sprintf("a vector has two or three components, not %d", len(n.args)), p.decimalComma(n))
	}
	return n, nil
}

// decimalComma is the cure where a comma without a blank stands in a number, as in
// 0,75, 1.3, 0.
func (p *parser) decimalComma(n *node) string {
	for i, b := range n.args[1:] {
		a := n.args[i]
		if whole, part := p.src(a.span), p.src(b.span); a.span.End+1 == b.span.Start && allDigits(strings.TrimLeft(whole, "+-")) && allDigits(part) {
			if group := strings.TrimLeft(whole, "+-"); len(part) == 3 && len(group) <= 3 && group[0] != '0' {
				return fmt.Sprintf("%[1]s%[2]s or %[1]s.%[2]s, if that is one number", whole, part)
			}
			return fmt.Sprintf("%s.%s, if that is one number", whole, part)
		}
	}
	return ""
}

// component reads a value and the uncertainty behind it, or ? alone.
func (p *parser) component() (*node, *diag.Error) {
	if t := p.peek(); t.kind == tQuestion {
		switch p.at(p.i + 1).kind {
		case tEnd, tComma, tClose:
			p.i++
			return &node{kind: nQuestion, span: diag.Between(t.start, t.end)}, nil
		}
	}
	a, err := p.sum()
	if err != nil || p.peek().kind != tPlusMinus {
		return a, err
	}
	p.i++
	b, err := p.sum()
	if err != nil {
		return nil, err
	}
	if t := p.peek(); t.kind == tPercent {
		p.i++
		b = &node{kind: nPercent, span: diag.Between(b.span.Start, t.end), args: []*node{b}}
	}
	return binary(nPlusMinus, a, b), nil
}

func binary(k nodeKind, a, b *node) *node {
	return &node{kind: k, span: diag.Between(a.span.Start, b.span.End), args: []*node{a, b}}
}

func (p *parser) sum() (*node, *diag.Error) {
	a, err := p.product()
	for err == nil {
		k := nAdd
		switch p.peek().kind {
		case tPlus:
		case tMinus:
			k = nSub
		default:
			return a, nil
		}
		p.i++
		var b *node
		if b, err = p.product(); err == nil {
			a = binary(k, a, b)
		}
	}
	return nil, err
}

func (p *parser) product() (*node, *diag.Error) {
	a, err := p.signed()
	for err == nil {
		k := nMul
		switch p.peek().kind {
		case tStar, tDot:
		case tSlash:
			k = nDiv
		default:
			return a, nil
		}
		p.i++
		var b *node
		if b, err = p.signed(); err == nil {
			if k == nDiv && a.kind == nUnit && b.kind == nName {
				b.behind = true // 5 kN/m2
			}
			a = binary(k, a, b)
		}
	}
	return nil, err
}

// signed reads signs before a power: -2^2 is -4.
func (p *parser) signed() (*node, *diag.Error) {
	t := p.peek()
	if t.kind != tPlus && t.kind != tMinus {
		return p.power()
	}
	if err := p.enter(); err != nil {
		return nil, err
	}
	defer func() { p.depth-- }()
	p.i++
	n, err := p.signed()
	if err != nil || t.kind == tPlus {
		return n, err
	}
	return &node{kind: nNeg, span: diag.Between(t.start, n.span.End), args: []*node{n}}, nil
}

// missing says that a value is wanted where t stands.
func (p *parser) missing(t token) *diag.Error {
	if p.i > 0 {
		last := p.at(p.i - 1)
		at := diag.Between(last.start, last.end)
		word := p.src(at)
		switch {
		case t.kind == tQuestion, t.kind == tPlusMinus, t.mark:
		case last.kind == tOpen && t.kind == tClose:
			return diag.At(diag.Between(last.start, t.end), "a value is missing between ( and )", "")
		case last.kind == tOpen && t.kind == tEnd:
			return diag.At(at, "this ( is not closed", "add a )")
		case last.kind == tComma && t.kind == tComma:
			return diag.At(diag.Between(last.start, t.end), "a value is missing between the commas", "")
		default:
			return diag.At(at, "a value is missing after "+word, "")
		}
	}
	at := diag.Between(t.start, t.end)
	switch {
	case t.kind == tQuestion:
		return diag.At(at, "? cannot be part of an expression", "the name of the unknown, as in 2*T1")
	case t.mark:
		return misplacedMark(at, p.src(at))
	case t.kind == tClose:
		return diag.At(at, "this ) has no matching (", "add a ( before it, or remove it")
	case t.kind == tPlusMinus && p.i > 0:
		return misplacedPlusMinus(at)
	}
	return diag.At(at, "a value is missing before "+strings.TrimSpace(p.src(at)), "")
}

package units

import "trivet/mechanics/diag"

// ParseRange reads the ends of a range, "300 lbf .. 500 lbf". A bare low end
// before a high end with a unit is in that unit ("2 .. 4 kN/m").
func ParseRange(text string) (low, high *Expr, err *diag.Error) {
	p, err := newParser(text, true)
	if err != nil {
		return nil, nil, err
	}
	if err := p.groupsHaveUnits(); err != nil {
		return nil, nil, err
	}
	a, err := p.sum()
	if err != nil {
		return nil, nil, err
	}
	if t := p.peek(); t.kind != tRange {
		if t.kind != tEnd {
			return nil, nil, p.wantEnd()
		}
		return nil, nil, diag.At(a.span, "a range has two ends", "two dots and the high end behind it")
	}
	p.i++
	b, err := p.sum()
	if err != nil {
		return nil, nil, err
	}
	if err := p.wantEnd(); err != nil {
		return nil, nil, err
	}
	if literal(a) && b.unsigned().kind == nUnit && literal(b.unsigned().args[0]) {
		u := b.unsigned()
		a = &node{kind: nUnit, span: a.span, factor: u.factor, dim: u.dim, args: []*node{a}}
	}
	low, high = newExpr(text, a), newExpr(text, b)
	low.grouped = p.ungrouped()
	return low, high, nil
}

package units

import (
	"fmt"
	"strconv"
	"strings"

	"trivet/mechanics/diag"
)

// part is one unit of a compound: unit^power, behind a slash or not. The power
// is as typed, so in m/s^2 it is 2 with slash.
type part struct {
	unit  *Unit
	power int
	slash bool
}

// join makes the compound of the parts, in the order given, with the symbol
// as it is printed ("N m", "m/s^2").
func join(d Dim, parts ...part) Unit {
	u := Unit{Dim: d, Factor: factor(parts), Exact: true, Source: srcDef}
	var symbol, name strings.Builder
	for i, p := range parts {
		switch {
		case p.slash:
			symbol.WriteByte('/')
			name.WriteString(" per ")
		case i > 0:
			symbol.WriteByte(' ')
			name.WriteByte(' ')
		}
		symbol.WriteString(p.unit.Symbol)
		name.WriteString(p.unit.Name)
		if p.power != 1 {
			symbol.WriteString("^" + strconv.Itoa(p.power))
			name.WriteString("^" + strconv.Itoa(p.power))
		}
		u.Exact = u.Exact && p.unit.Exact
	}
	u.Symbol, u.Name = symbol.String(), name.String()
	return u
}

// factor multiplies out the parts. Above and below the line are kept apart
// until the end, since 1e6 is a float where 1/1e-6 need not be one.
func factor(parts []part) float64 {
	over, under := 1.0, 1.0
	for _, p := range parts {
		n, up := p.power, !p.slash
		if n < 0 {
			n, up = -n, !up
		}
		for range n {
			if up {
				over = scale(over, p.unit.Factor)
			} else {
				under = scale(under, p.unit.Factor)
			}
		}
	}
	return over / under
}

// maxPower bounds the power of a unit: no quantity of mechanics comes near.
const maxPower = 12

// compound reads unit { [/ · or nothing] unit }, each with its power. The
// caller has seen to it that a unit stands here. In a cell a star is an
// operator (N may be the sheet's own name behind it) and g behind another unit
// is left to be the sheet's gravity; typed for itself ("N*m") neither is so.
func (p *parser) compound(cell bool) ([]part, Dim, *diag.Error) {
	var parts []part
	var dim Dim
	slash := false
	start := p.peek().start
	for {
		t := p.next()
		pt := part{bySymbol[p.text[t.start:t.end]], 1, slash}
		var err *diag.Error
		if pt.power, err = p.unitPower(); err != nil {
			return nil, dim, err
		}
		k := pt.power
		if slash {
			k = -k
		}
		var ok bool
		if dim, ok = combine(dim, pt.unit.Dim, k); !ok {
			return nil, dim, diag.At(diag.Between(start, p.prevEnd()), "the power of the unit is too high", "")
		}
		parts = append(parts, pt)
		switch n := p.peek(); {
		case n.kind == tSlash && p.unitAt(p.i+1, cell):
			slash = true
			p.i++
		case (n.kind == tDot || !cell && n.kind == tStar || p.hyphenated(pt.unit)) && p.unitAt(p.i+1, cell):
			slash = false
			p.i++
		case p.unitAt(p.i, cell):
			slash = false
		default:
			return parts, dim, nil
		}
	}
}

// hyphenated tells whether a hyphen ties the unit read last to the next, as in lb-ft
// and ft-lb: a force and a length, between which it can take nothing away.
func (p *parser) hyphenated(u *Unit) bool {
	if p.peek().kind != tMinus || !p.tight(p.i) {
		return false
	}
	next := p.at(p.i + 1)
	v := bySymbol[p.text[next.start:next.end]]
	return next.kind == tName && v != nil && (u.Dim == Force && v.Dim == Length || u.Dim == Length && v.Dim == Force)
}

// tight tells whether token i has no blank before it and none behind it.
func (p *parser) tight(i int) bool {
	return i > 0 && strings.TrimSuffix(p.text[p.at(i-1).end:p.at(i).start], ".") == "" && p.at(i).end == p.at(i+1).start
}

// unitAt tells whether token i is a unit that continues a compound: a word of
// the table that is not called like a function.
func (p *parser) unitAt(i int, cell bool) bool {
	t := p.at(i)
	if t.kind != tName || p.at(i+1).kind == tOpen && !t.mark {
		return false
	}
	s := p.text[t.start:t.end]
	return bySymbol[s] != nil && !t.mark && !(cell && s == "g")
}

// unitPower reads ^2, ^-1, ² behind a unit; 1 where there is none.
func (p *parser) unitPower() (int, *diag.Error) {
	switch t := p.peek(); t.kind {
	case tSuper:
		p.i++
		return p.boundPower(t, t.num)
	case tCaret:
		p.i++
		sign := 1.0
		if p.peek().kind == tMinus {
			sign = -1
			p.i++
		}
		n := p.peek()
		if n.kind != tNumber || !n.whole {
			return 0, diag.At(diag.Between(t.start, max(t.end, n.end)), "the power of a unit must be a whole number", "the form m^2, or parentheses around the quantity")
		}
		p.i++
		return p.boundPower(n, sign*n.num)
	}
	return 1, nil
}

func (p *parser) boundPower(t token, x float64) (int, *diag.Error) {
	if x > maxPower || x < -maxPower {
		return 0, diag.At(diag.Between(t.start, t.end), fmt.Sprintf("the power of a unit is at most %d, not %s", maxPower, p.text[t.start:t.end]), "")
	}
	return int(x), nil
}

package units

import (
	"fmt"
	"strings"

	"trivet/mechanics/diag"
)

// ParseUnit reads a unit typed for itself: "kN", "N m", "N·m", "lbf ft",
// "m/s^2", "N/mm^2", "kg/m³". The Symbol of the result is the canonical one,
// so "lb" comes back as lbf and "N·m" as N m.
func ParseUnit(text string) (Unit, *diag.Error) {
	p, err := newParser(text, false)
	if err != nil {
		return Unit{}, err
	}
	t := p.peek()
	if t.kind != tName {
		return Unit{}, diag.At(diag.Between(t.start, t.end), fmt.Sprintf("%q is not a unit", strings.TrimSpace(text)), "a symbol such as m, kN or N m")
	}
	if w := p.text[t.start:t.end]; bySymbol[w] == nil {
		return Unit{}, unknownUnit(diag.Between(t.start, t.end), w, nil)
	}
	if t.mark {
		p.i++
		if p.peek().kind == tEnd {
			return *bySymbol[p.text[t.start:t.end]], nil
		}
	} else {
		parts, dim, err := p.compound(false)
		if err != nil {
			return Unit{}, err
		}
		if p.peek().kind == tEnd {
			if len(parts) == 1 && parts[0].power == 1 {
				return *parts[0].unit, nil
			}
			return join(dim, parts...), nil
		}
	}
	rest := p.peek()
	if rest.kind != tName && p.at(p.i+1).kind == tName {
		rest = p.at(p.i + 1)
	}
	if w := p.text[rest.start:rest.end]; rest.kind == tName && bySymbol[w] == nil {
		return Unit{}, unknownUnit(diag.Between(rest.start, rest.end), w, nil)
	}
	return Unit{}, diag.At(diag.Between(rest.start, rest.end), fmt.Sprintf("%q is not a unit", strings.TrimSpace(text)), "the form N m, kN/m or m/s^2")
}

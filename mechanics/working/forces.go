package working

import (
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/units"
)

// forceList is the free-body list of forces.
func (b *builder) forceList() {
	if b.many() {
		t := doc.NewTable("On", "Forces")
		for i := range b.p.CutFree() {
			var of []doc.Math
			for _, a := range b.acts[i] {
				of = append(of, b.labels(a, a.Force.Terms, a.Couple.Terms)...)
			}
			t.Add(wordCell(b.p.Bodies[i].Name), listed(of))
		}
		b.step(Forces, "Forces on each free body", Subject{}, t)
		return
	}
	for i := range b.acts {
		if len(b.acts[i]) == 0 {
			continue
		}
		about := Subject{Bodies: []int{i}}
		t := doc.NewTable("Force", "Kind", "Acts at", "Magnitude")
		for _, a := range b.acts[i] {
			about.add(a.from)
			magnitude := b.magnitudeCell(a)
			if magnitude.Math != nil {
				*magnitude.Math = traced(a.source.Magnitude(b.s), *magnitude.Math)
			}
			t.Add(listed(b.labels(a, a.Force.Terms, a.Couple.Terms)), wordCell(a.what), wordCell(a.at), magnitude)
		}
		b.step(Forces, "Forces on "+b.bodyWords(i), about, t)
	}
}

// labels are the symbols of an act; of a joint those of some of its terms.
func (b *builder) labels(a *act, of ...[]problem.ActTerm) []doc.Math {
	switch {
	case a.joint != nil && a.tie == nil:
		return b.unknownsOf(of...)
	case a.line != nil && len(a.line.Path) > 2:
		return []doc.Math{named(a.line.Name)}
	}
	return []doc.Math{a.name}
}

func (b *builder) magnitudeCell(a *act) doc.Inline {
	m, u := problem.Affine{Const: r3.Norm(a.Force.Const)}, b.p.Units.Force
	switch l := a.line; {
	case a.tie != nil:
		return cell(b.tied(a.tie))
	case l != nil && l.Components != nil && a.known():
		return cell(measured(b.tuple(in(a.Force.Const, u), unsaid), u))
	case l != nil && l.Components == nil:
		m = l.Magnitude
	case a.couple != nil:
		m, u = a.couple.Magnitude, b.p.Units.For(units.Moment)
	case !a.known():
		return wordCell("unknown")
	case a.isCouple(): // of a distributed load
		m.Const, u = r3.Norm(a.Couple.Const), b.p.Units.For(units.Moment)
	}
	switch {
	case len(m.Terms) == 0:
		return cell(measured(b.number(u.In(m.Const)), u))
	case len(m.Terms) == 1 && m.Terms[0].Coef == 1 && m.Const == 0:
		return wordCell("unknown")
	}
	return cell(b.affine(m, u))
}

// tied is what a tied force is: μ AN = 0.3 AN, or 0.3 N.
func (b *builder) tied(t *tie) doc.Math {
	is := traced(t.from, b.affine(t.is, b.p.Units.Force))
	if t.friction {
		normal := t.is.Terms[0]
		return equal(signed(normal.Coef, product(symbol("μ"), b.unknown(normal.Unknown))), is)
	}
	return is
}

// own tells that a line's magnitude is the unknown of its own name.
func (b *builder) own(line int) bool {
	m := b.p.Lines[line].Magnitude
	return len(m.Terms) == 1 && m.Const == 0 && m.Terms[0].Coef == 1 && b.p.Unknowns[m.Terms[0].Unknown].Name == b.p.Lines[line].Name
}

package working

import (
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	english "trivet/mechanics/say"
)

// vectors are the forces as vectors; in the plane, and where there are many bodies, those along an axis are
// seen in the equations.
func (b *builder) vectors() {
	b.springs()
	if b.many() {
		return
	}
	var of, struts []doc.Math
	var about Subject
	for i := range b.acts {
		for _, a := range b.acts[i] {
			if !a.isForce() || a.far || b.p.Planar && b.alongAxes(a) {
				continue // the far end of a line or joint takes the opposite
			}
			v := b.forceVector(a)
			if a.line != nil && a.line.Kind == problem.Strut && len(v.Of) > 2 && v.Of[1].Op == doc.Neg {
				struts = append(struts, named(a.line.Name))
			}
			of = append(of, v)
			about.add(a.from)
			about.Bodies = []int{i}
		}
	}
	body := formulas(of)
	if len(struts) > 0 {
		body = append([]doc.Block{say("The compression in ", list(struts), " pushes the body, opposite to the unit vector, so the sign is negative:")}, body...)
	}
	b.step(Vector, "Force "+english.Plural(len(of), "vector"), about, body...)
}

// alongAxes tells a force whose direction needs no components.
func (b *builder) alongAxes(a *act) bool {
	terms := b.forceOf(a).terms
	for _, t := range terms {
		if !isAxis(t.d) || t.unknown == isKnown && len(terms) > 1 {
			return false
		}
	}
	return true
}

// forceVector is F = F u = F (..), known or unknown.
func (b *builder) forceVector(a *act) doc.Math {
	of := []doc.Math{a.vec}
	if m, ok := b.magnitudeTimesUnit(a); ok {
		of = append(of, m)
	} else if a.known() && a.line == nil && !isAxis(a.Force.Const) { // a distributed load
		size := b.number(b.p.Units.Force.In(r3.Norm(a.Force.Const)))
		of = append(of, traced(a.source.Magnitude(b.s), product(size, paren(b.along(r3.Unit(a.Force.Const), unsaid)))))
	}
	return equal(append(of, b.forceOf(a).value())...)
}

// magnitudeTimesUnit is T1 u, or -S u of a strut, or T (u1 - u2) over a pulley.
func (b *builder) magnitudeTimesUnit(a *act) (doc.Math, bool) {
	l := a.line
	switch {
	case l == nil, len(l.Legs) == 0, l.Components != nil,
		l.Magnitude.Const == 0 && len(l.Magnitude.Terms) == 0,
		len(l.Legs) == 1 && isAxis(l.Legs[0].U):
		return doc.Math{}, false
	}
	magnitude := traced(a.source.Magnitude(b.s), grouped(b.affine(l.Magnitude, b.p.Units.Force)))
	if len(l.Magnitude.Terms) == 0 || a.tie != nil {
		magnitude = named(l.Name)
	}
	var u []doc.Math
	sign := 1.0
	for k, at := range l.Path {
		if at == a.Point && k < len(l.Legs) {
			u = append(u, unitVec("u", stretchName(l, k)))
		}
		if at == a.Point && k > 0 {
			u = append(u, neg(unitVec("u", stretchName(l, k-1))))
		}
	}
	if len(u) == 1 && u[0].Op == doc.Neg {
		u[0], sign = u[0].Of[0], -sign
	}
	if l.Pushes() {
		sign = -sign
	}
	m := signed(sign, product(magnitude, grouped(sum(u...))))
	return m, len(u) > 0 && len(u) < 3 // a path that comes twice through a point acts there twice
}

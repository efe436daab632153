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
		for k := range b.acts[i] {
			a := &b.acts[i][k]
			if !a.isForce() || a.sign || b.p.Planar && b.alongAxes(a) {
				continue // the far end of a line or joint takes the opposite
			}
			v := b.forceVector(a)
			if a.line >= 0 && b.p.Lines[a.line].Kind == problem.Strut && len(v.Of) > 2 && v.Of[1].Op == doc.Neg {
				struts = append(struts, named(b.p.Lines[a.line].Name))
			}
			of = append(of, v)
			about.add(a.subject)
			about.Bodies = []int{i}
		}
	}
	if len(of) == 0 {
		return
	}
	body := []doc.Block{aligned(of...)}
	if len(struts) > 0 {
		body = append([]doc.Block{say("The compression in ", list(struts), " pushes the body, opposite to the unit vector, so the sign is negative:")}, body...)
	}
	b.step(Vector, "Force "+english.Plural(len(of), "vector"), about, body...)
}

// alongAxes tells a force whose direction needs no components.
func (b *builder) alongAxes(a *act) bool {
	known, shares := b.force(a)
	for _, s := range shares {
		if !isAxis(s.d) {
			return false
		}
	}
	return known == (r3.Vec{}) || isAxis(known) && len(shares) == 0
}

// forceVector is F = F u = F (..), known or unknown.
func (b *builder) forceVector(a *act) doc.Math {
	f := b.p.Units.Force
	of := []doc.Math{a.vec}
	if a.line >= 0 {
		if m, ok := b.magnitudeTimesUnit(a); ok {
			of = append(of, m)
		}
	}
	known, shares := b.force(a)
	if a.known() && a.line < 0 && !isAxis(known) { // a distributed load: its magnitude times its direction
		of = append(of, traced(a.source.Magnitude(b.s), product(b.number(f.In(norm(known))), paren(b.along(r3.Unit(known), unsaid)))))
	}
	value := b.expression(known, shares, f, b.parts(a, false))
	if a.known() {
		value = measured(bracketed(value), f)
	}
	return equal(append(of, value)...)
}

// magnitudeTimesUnit is T1 u, or -S u of a strut, or T (u1 - u2) over a pulley.
func (b *builder) magnitudeTimesUnit(a *act) (doc.Math, bool) {
	l := &b.p.Lines[a.line]
	if len(l.Legs) == 0 || l.ByComponents() || l.Magnitude.Const == 0 && len(l.Magnitude.Terms) == 0 {
		return doc.Math{}, false
	}
	if len(l.Legs) == 1 && isAxis(l.Legs[0].U) {
		return doc.Math{}, false
	}
	magnitude := traced(a.source.Magnitude(b.s), b.affine(l.Magnitude, b.p.Units.Force))
	if len(l.Magnitude.Terms) == 0 || a.tie >= 0 {
		magnitude = named(l.Name)
	}
	var u []doc.Math
	if len(l.Legs) == 1 {
		// the act's own direction says whether it is along u or against it
		d := a.Const
		if len(a.Terms) > 0 {
			d = r3.Scale(1/l.Magnitude.Terms[0].Coef, a.Terms[0].D)
		} else {
			d = r3.Scale(1/l.Magnitude.Const, d)
		}
		along := vectorUnit(named(l.Name))
		if r3.Dot(d, l.Legs[0].U) < 0 {
			return neg(product(grouped(magnitude), along)), true
		}
		return product(grouped(magnitude), along), true
	}
	names := b.stretchNames(a.line)
	for k, at := range l.Path {
		if at != a.Point {
			continue
		}
		if k < len(l.Legs) {
			u = append(u, vectorUnit(names[k]))
		}
		if k > 0 {
			u = append(u, neg(vectorUnit(names[k-1])))
		}
	}
	m := product(grouped(magnitude), grouped(sum(u...)))
	if len(u) == 1 && u[0].Op == doc.Neg {
		m = neg(product(grouped(magnitude), u[0].Of[0]))
	}
	if l.Kind == problem.Strut {
		if m.Op == doc.Neg {
			m = m.Of[0]
		} else {
			m = neg(m)
		}
	}
	return m, len(u) > 0 && len(u) < 3 // a path that comes twice through a point acts there twice
}

func (b *builder) stretchNames(line int) []doc.Math {
	var names []doc.Math
	for _, s := range b.stretches() {
		if s.line == line {
			names = append(names, s.name)
		}
	}
	return names
}

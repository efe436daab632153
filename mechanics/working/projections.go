package working

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/handsolve"
	"trivet/mechanics/origin"
	english "trivet/mechanics/say"
)

// projections derive the coefficients of an equation along a direction or about an axis that is no
// coordinate axis: n · u of each force, and u · (r × F) for one unit of it. What acts along a
// coordinate axis is seen.
func (b *builder) projections(e *handsolve.Equation) (of []doc.Math) {
	if isAxis(e.Along) || e.Moment && e.Named.To < 0 {
		return nil
	}
	n, along := unitVec("n"), byAxis("the %[1]s component of the unit vector n")
	if e.Moment {
		n, along = unitVec("u", words(e.Subscript(b.p))), byAxis("the %[1]s component of the unit vector along the axis %[2]s", e.Subscript(b.p))
		of = append(of, traced(origin.Phrase("from the places of the points of the axis %[1]s", e.Subscript(b.p)), b.axis(e, n)))
	}
	if !e.Moment && len(e.Named.Perp) > 0 {
		if acts, u := b.actsOf(e, &handsolve.Term{Symbol: e.Named.Perp[0]}); len(acts) > 1 {
			vectors := english.Each(acts, func(a *act) doc.Math { return signed(a.side(), a.vec) })
			of = append(of, equal(sum(vectors...), product(b.unknown(e.Named.Perp[0]), paren(b.along(u, byAxis("the %[1]s component of one unit of %[2]s with what follows from it", b.names(e.Named.Perp[:1])))))))
		}
	}
	for i := range e.Terms {
		t := &e.Terms[i]
		acts, u := b.actsOf(e, t)
		single := len(acts) == 1
		switch {
		case len(acts) == 0, t.Known && t.Value == 0, e.Moment && !single:
			continue
		case single && t.Symbol < 0 && acts[0].line != nil && acts[0].line.Components != nil: // it stands by its components
			continue
		case !e.Moment && (isAxis(u) || math.Abs(math.Abs(t.Coef)-1) <= nothing):
			continue
		}
		name := ""
		if t.Symbol >= 0 {
			name = b.Hand.Name(b.p, t.Symbol)
		} else {
			name = b.p.NameOf(t.Load)
		}
		per := byAxis("the %[1]s component of one unit of %[2]s", name)
		force, other := paren(b.along(u, per)), u
		if single {
			force, _ = b.unitOn(acts[0], u)
		}
		force = traced(per(0), force)
		if e.Moment {
			per = byAxis("the %[1]s component of the moment of one unit of %[2]s", name)
			arm := in(r3.Sub(acts[0].At, e.At), b.p.Units.Length)
			force, other = paren(cross(b.arm(b.p.Points[e.Named.Point].Name, acts[0]), force)), cleanedBy(r3.Cross(arm, u), r3.Norm(arm))
		}
		value := traced(b.origins().Term(e, i, false), b.number(r3.Dot(e.Along, other)))
		of = append(of, b.equals(product(n, words("·"), force), b.dot(e.Along, other, along, per), value))
	}
	return of
}

// axis is the unit vector along an axis of moments through two points.
func (b *builder) axis(e *handsolve.Equation, u doc.Math) doc.Math {
	from, to := &b.p.Points[e.Named.Point], &b.p.Points[e.Named.To]
	r := in(r3.Sub(to.At, from.At), b.p.Units.Length)
	name := b.between(from.Name, to.Name)
	return b.unitFrom(u, name, size(name), b.tuple(r, unsaid), b.number(r3.Norm(r)), b.along(e.Along, unsaid))
}

// unitOn is the symbol of the direction of an act where it has one; else it is known by its components.
func (b *builder) unitOn(a *act, u r3.Vec) (symbol doc.Math, known bool) {
	direction := r3.Vec{}
	switch {
	case isAxis(u): // it has no step of its own
		return b.along(u, unsaid), true
	case a.line != nil && len(a.line.Legs) == 1 && a.line.Components == nil:
		symbol, direction = unitVec("u", stretchName(a.line, 0)), a.line.Legs[0].U
	case a.joint != nil:
		symbol, direction = unitVec("n", words(a.joint.Name)), a.joint.Normal
	}
	cosine := r3.Dot(u, direction)
	if math.Abs(math.Abs(cosine)-1) > nothing {
		return paren(b.along(u, unsaid)), false
	}
	return signed(cosine, symbol), true
}

// unitIn is the direction of the force of a symbol in an equation, where it has a symbol of its own.
func (b *builder) unitIn(e *handsolve.Equation, symbol int) (doc.Math, r3.Vec, bool) {
	acts, u := b.actsOf(e, &handsolve.Term{Symbol: symbol})
	if symbol < 0 || len(acts) != 1 {
		return doc.Math{}, u, false
	}
	m, known := b.unitOn(acts[0], u)
	return m, u, known
}

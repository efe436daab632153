package working

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/origin"
	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/units"
)

// quantity is a force or a moment on a body: Σ symbol·d, with what is known of it last.
type quantity struct {
	*builder
	act    *act
	moment bool
	unit   units.Unit
	terms  []term
}

// term is what one unit of a symbol adds.
type term struct {
	symbol  doc.Math
	unknown int // or one of those below
	d       r3.Vec
	factor  float64 // of the unit of the symbol
}

// What a term is of, where it is of no unknown.
const (
	isKnown = -1 - iota // it has no symbol
	isTied              // the act's tie
)

// forceOf is an act's force, and coupleOf the couple with it.
func (b *builder) forceOf(a *act) quantity {
	if a.tie != nil {
		return quantity{b, a, false, b.p.Units.Force, []term{{a.name, isTied, a.dir, b.p.Units.Force.Factor}}}
	}
	return quantity{b, a, false, b.p.Units.Force, b.terms(a.Force)}
}

func (b *builder) coupleOf(a *act) quantity {
	return quantity{b, a, true, b.p.Units.For(units.Moment), b.terms(a.Couple)}
}

func (b *builder) terms(v problem.Vector) (of []term) {
	for _, t := range v.Terms {
		of = append(of, term{b.unknown(t.Unknown), t.Unknown, cleaned(t.D), b.unitOf(t.Unknown).Factor})
	}
	if v.Const != (r3.Vec{}) {
		of = append(of, term{unknown: isKnown, d: cleaned(v.Const), factor: 1})
	}
	return of
}

// about is the moment of a force with an arm, without what has none.
func (q quantity) about(arm r3.Vec) quantity {
	out := quantity{q.builder, q.act, true, q.p.Units.For(units.Moment), nil}
	for _, t := range q.terms {
		t.d = cleaned(cleanedBy(r3.Cross(arm, t.d), r3.Norm(arm)*r3.Norm(t.d)))
		if t.d != (r3.Vec{}) {
			out.terms = append(out.terms, t)
		}
	}
	return out
}

// inRow are what an act adds to an equation of equilibrium of its body.
func (b *builder) inRow(a *act, r *statics.Row) []quantity {
	if !r.Moment {
		return []quantity{b.forceOf(a)}
	}
	return []quantity{b.forceOf(a).about(b.p.Arm(a.Act)), b.coupleOf(a)}
}

// size is a component of a term in the units shown.
func (q quantity) size(t term, axis int) float64 {
	return xyz(t.d)[axis] * t.factor / q.unit.Factor
}

// has tells that there is a component along an axis.
func (q quantity) has(axis int) bool {
	return slices.ContainsFunc(q.terms, func(t term) bool { return xyz(t.d)[axis] != 0 })
}

// from is the origin of a component of a term.
func (q quantity) from(t term, axis int) doc.Origin {
	name := ""
	switch {
	case t.unknown == isKnown:
		return q.act.source.Known(q.s, axis, q.moment)
	case q.act.isPart():
		name = "the " + q.act.what + " at " + q.act.at
	case t.unknown == isTied:
		name = q.act.tie.what
	default:
		return q.act.source.PerUnit(q.s, t.unknown, axis, q.moment)
	}
	if q.moment {
		return origin.Phrase("the moment of one unit of %[1]s", name)
	}
	return origin.Phrase("the %[2]s component of one unit of %[1]s", name, "xyz"[axis:axis+1])
}

// component is Σ coefficient·symbol + constant along one axis.
func (q quantity) component(axis int) doc.Math {
	var of []doc.Math
	for _, t := range q.terms {
		x := q.size(t, axis)
		m := traced(q.from(t, axis), q.number(x))
		switch {
		case x == 0:
		case t.unknown == isKnown:
			of = append(of, m)
		default:
			of = append(of, times(m, t.symbol))
		}
	}
	if len(of) == 0 {
		return traced(q.from(term{unknown: isKnown}, axis), exactly(0))
	}
	return sum(of...)
}

// vector is Σ symbol·d + constant: symbols before what they are multiplied by, or what is known alone.
func (q quantity) vector() doc.Math {
	var of []doc.Math
	for _, t := range q.terms {
		v := q.along(r3.Scale(t.factor/q.unit.Factor, t.d), func(axis int) doc.Origin { return q.from(t, axis) })
		switch {
		case t.unknown == isKnown && v.Op == doc.Sum && len(of) > 0:
			of = append(of, v.Of...)
		case t.unknown == isKnown:
			of = append(of, v)
		case v.Op == doc.Sum:
			of = append(of, product(t.symbol, paren(v)))
		case t.d != (r3.Vec{}):
			of = append(of, before(t.symbol, v))
		}
	}
	if len(of) == 0 {
		return traced(q.from(term{unknown: isKnown}, 0), exactly(0))
	}
	return sum(of...)
}

// value is the component in the plane or the vector in space, with a unit where all of it is known.
func (q quantity) value() doc.Math {
	var m doc.Math
	if q.p.Planar && q.moment {
		m = q.component(2)
	} else {
		m = q.vector()
	}
	if q.act.known() {
		return measured(bracketed(m), q.unit)
	}
	return m
}

// symbols are those that stand alone along an axis, such as Ax of a joint that has it for an
// unknown; where there are others a symbol for the whole component.
func (q quantity) symbols(axis int, whole doc.Math) (of []doc.Math) {
	a := q.act
	own := a.joint != nil || a.tie != nil || a.line != nil && a.line.Legs == nil
	for _, t := range q.terms {
		switch x := xyz(t.d)[axis]; {
		case t.unknown != isKnown && x == 0:
		case t.unknown == isKnown || !own || math.Abs(x) != 1 || r3.Norm(t.d) != 1:
			return []doc.Math{whole}
		default:
			of = append(of, signed(x, t.symbol))
		}
	}
	return of
}

// before puts an unknown before a single component: Ax i, -2 T1 k.
func before(x, v doc.Math) doc.Math {
	switch v.Op {
	case doc.Neg:
		return neg(before(x, v.Of[0]))
	case doc.Product: // 0.6 i
		return product(append([]doc.Math{v.Of[0], x}, v.Of[1:]...)...)
	}
	return product(x, v)
}

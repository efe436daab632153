package working

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/handsolve"
	"trivet/mechanics/origin"
	"trivet/mechanics/problem"
	english "trivet/mechanics/say"
)

// noun names the bodies of an equation, and whether with an article.
func (b *builder) noun(e *handsolve.Equation) (noun string, article bool) {
	// A joint that pins two bodies together, as the members of a frame are.
	pins := func(j problem.Joint) bool {
		return j.Second >= 0 && j.Normal == (r3.Vec{}) && j.Axis == (r3.Vec{})
	}
	switch {
	case e.Whole && b.truss():
		return "whole truss", true
	case e.Whole && slices.ContainsFunc(b.p.Joints, pins):
		return "whole frame", true
	case e.Whole:
		return "whole system", true
	case len(e.Bodies) == 1:
		return b.body(e.Bodies[0])
	}
	return b.bodiesWords(e.Bodies) + " together", false
}

// on is the body that an equation is written for: on the beam, on joint B.
func (b *builder) on(e *handsolve.Equation) string {
	if len(e.Cut) > 0 {
		return " on this part"
	}
	return " on " + the(b.noun(e))
}

// symbols lists the symbols of unknowns in a sentence.
func (b *builder) symbols(of []int) []any { return list(english.Each(of, b.unknown)) }

// are is a clause with the symbols of unknowns as its subject, behind what leads to it: T1 and T2
// are, T3 is. Without unknowns there is none.
func (b *builder) are(lead string, of []int, verb, rest string) []any {
	if len(of) == 0 {
		return nil
	}
	return []any{lead, b.symbols(of), " " + english.Plural(len(of), verb) + rest}
}

func foundIn(step *handsolve.Step) []int {
	return english.Each(step.Finds, func(x handsolve.Found) int { return x.Symbol })
}

func (b *builder) names(symbols []int) string {
	return english.And(english.Each(symbols, func(j int) string { return b.Hand.Name(b.p, j) })...)
}

func (b *builder) twoForceMember(step *handsolve.Step) doc.Block {
	m := &b.Hand.Members[step.Member]
	end := func(point int) string {
		if point < 0 {
			return "its end"
		}
		return b.p.Points[point].Name
	}
	shares := english.Each(m.Shares, func(s handsolve.Share) int { return s.Unknown })
	zero := foundIn(step)
	return say("Forces act on "+b.bodyWords(m.Body)+" at "+end(m.From)+" and "+end(m.To)+" only, so it is a two-force member and they lie along "+end(m.From)+end(m.To)+": ",
		b.unknown(b.memberForce(step)), ", positive in tension, replaces ", b.symbols(shares), ".", b.are(" ", zero, "is", " perpendicular to it and "+english.Plural(len(zero), "is")+" zero."))
}

// zeroForce says which rule gives which members of a joint.
func (b *builder) zeroForce(z handsolve.Inspection) doc.Block {
	joint := b.bodyWords(z.Body)
	zero := append(english.Each(z.Zero, b.unknown), traced(origin.Phrase("zero by inspection: no load acts at %[1]s", joint), exactly(0)))
	lead := "No load acts at " + joint + ". "
	var before []any
	third, two := "the third member", "It joins two members"
	if len(z.Before) > 0 { // they are at the joint, and count no longer
		before, lead = b.are(lead, z.Before, "is", " already known to be zero."), " "
		third, two = "the other member", "Two more members meet there"
	}
	why := b.are(lead, z.Collinear, "is", " collinear there, so "+third+" carries no force: ")
	if len(z.Collinear) == 0 {
		why = []any{lead + two + " that are not collinear, so neither carries a force: "}
	}
	return say(append(append(before, why...), equal(zero...), ".")...)
}

// reasons say why symbols are not in an equation, of one and of several.
var reasons = map[handsolve.Why]struct{ verb, one, several string }{
	handsolve.Through:       {"passes", " through it", " through it"},
	handsolve.Intersects:    {"intersects", " the axis", " the axis"},
	handsolve.Parallel:      {"is", " parallel to the axis", " parallel to the axis"},
	handsolve.Perpendicular: {"has", " no component in that direction", " no component in that direction"},
	handsolve.IsCouple:      {"is", " a couple", " couples"},
	handsolve.CouplePerp:    {"has", " no component about the axis", " no component about the axis"},
	handsolve.Balances:      {verb: "cancels"},
}

func (b *builder) one(step *handsolve.Step) doc.Block {
	e, alone := &step.Equations[0], b.unknown(step.Finds[0].Symbol)
	out := []any{b.sumOn(e), " contains only ", alone}
	if e.Unnamed() && e.Moment {
		out = []any{"Take moments about ", b.center(e), "; only ", alone, " remains"}
	} else if e.Unnamed() {
		out = []any{"Take components along ", b.direction(e), "; only ", alone, " remains"}
	}
	begin := ": "
	for _, d := range e.Drops {
		// The direction, the point or the axis was chosen for these.
		of := slices.DeleteFunc(slices.Clone(d.Symbols), func(j int) bool { return slices.Contains(e.Named.Perp, j) })
		if len(of) == 0 {
			continue
		}
		why := reasons[d.Why]
		rest := why.one
		if d.Why == handsolve.Through && e.Named.Point >= 0 {
			rest = " through " + b.p.Points[e.Named.Point].Name
		} else if len(of) > 1 {
			rest = why.several
		}
		out = append(out, b.are(begin, of, why.verb, rest))
		begin = "; "
	}
	return say(append(out, ".", b.are(" ", step.Needs, "is", " already known."), b.substituted(e))...)
}

// substituted says which relations stand in an equation: F1 = 0.35 N1 is substituted.
func (b *builder) substituted(e *handsolve.Equation) []any {
	var of []doc.Math
	for _, t := range b.ties {
		d := 0.0
		for _, a := range b.tiedActs(e, t) {
			d += r3.Dot(b.lever(e, a.At), a.dir)
		}
		if math.Abs(d) > sumTol {
			of = append(of, traced(t.from, equal(t.name, b.affine(t.is, b.p.Units.Force))))
		}
	}
	if len(of) == 0 {
		return nil
	}
	return []any{" ", list(of), " " + english.Plural(len(of), "is") + " substituted."}
}

// tiedActs are the acts of a tied force on the bodies of an equation.
func (b *builder) tiedActs(e *handsolve.Equation, t *tie) (of []*act) {
	for _, i := range e.Bodies {
		for _, a := range b.acts[i] {
			if a.tie == t {
				of = append(of, a)
			}
		}
	}
	return of
}

// forces names the forces of symbols in an equation, and last those with what is tied to them:
// T1 and the resultant of N and F.
func (b *builder) forces(e *handsolve.Equation, symbols []int) (out []any, combined bool) {
	var alone, resultants []any
	for _, j := range symbols {
		with := []doc.Math{b.unknown(j)}
		for _, t := range b.ties {
			if len(b.tiedActs(e, t)) > 0 && slices.ContainsFunc(t.is.Terms, func(t problem.Term) bool { return t.Unknown == j }) {
				with = append(with, t.name)
			}
		}
		if len(with) == 1 {
			alone = append(alone, with[0])
		} else {
			resultants = append(resultants, []any{"the resultant of ", list(with)})
		}
	}
	return and(append(alone, resultants...)), len(resultants) > 0
}

// sumOn is ΣFx on the beam, ΣM_A on the beam, ΣM about the axis that is described.
func (b *builder) sumOn(e *handsolve.Equation) []any {
	out := []any{b.heading(e), b.on(e)}
	switch n := &e.Named; {
	case e.Unnamed() && e.Moment:
		return append(out, " about ", b.center(e))
	case e.Unnamed():
		return append(out, " along ", b.direction(e))
	case e.Moment && n.To >= 0:
		return append(out, ", about the axis "+e.Subscript(b.p)+",")
	case e.Moment && n.Axis != 0:
		return append(out, ", about the "+string(n.Axis)+" axis through "+b.p.Points[n.Point].Name+",")
	}
	return out
}

// direction is n = u1 × u2 / |u1 × u2| = (x, y, z), perpendicular to T1 and T2; in the
// plane n = u of the unknown that it is along.
func (b *builder) direction(e *handsolve.Equation) []any {
	of := []doc.Math{unitVec("n")}
	n := &e.Named
	says, perp := "the %[1]s component of the unit vector n", []any(nil)
	forces, combined := b.forces(e, n.Perp) // the direction of a resultant has no symbol
	if len(n.Perp) > 0 {
		says, perp = says+", perpendicular to %[2]s", []any{", perpendicular to ", forces}
	}
	if n.Axis != 0 && len(n.Perp) > 0 && !b.p.Planar {
		perp = append(perp, " and the "+string(n.Axis)+" axis")
	}
	switch {
	case combined && b.p.Planar:
		_, u := b.actsOf(e, &handsolve.Term{Symbol: n.Perp[0]})
		of = append(of, traced(origin.Phrase("the unit vector n, perpendicular to %[1]s with what follows from it", b.names(n.Perp)), fraction(b.tuple(r3.Scale(r3.Norm(u), e.Along), unsaid), b.norm(u, unsaid))))
	case combined || len(n.Perp) == 0:
	case b.p.Planar:
		if m, u, ok := b.unitIn(e, n.Along); ok {
			of = append(of, signed(r3.Dot(u, e.Along), m))
		}
	default:
		first, u, known := b.unitIn(e, n.Perp[0])
		var second doc.Math
		var v r3.Vec
		also := true
		if n.Axis != 0 {
			v = problem.Axes()[n.Axis-'x']
			second = b.along(v, unsaid)
		} else {
			second, v, also = b.unitIn(e, n.Perp[1])
		}
		if r3.Dot(r3.Cross(u, v), e.Along) < 0 {
			first, second = second, first
		}
		if known && also {
			of = append(of, fraction(cross(first, second), size(cross(first, second))))
		}
	}
	return []any{b.equals(append(of, b.tuple(e.Along, byAxis(says, b.names(n.Perp))))...), perp}
}

// byAxis is a phrase of each component of a vector, by the name of its axis.
func byAxis(says string, names ...string) axes {
	return func(axis int) doc.Origin {
		return origin.Phrase(says, append([]string{"xyz"[axis : axis+1]}, names...)...)
	}
}

// center describes the point or the axis of a sum of moments that has no name.
func (b *builder) center(e *handsolve.Equation) []any {
	n := &e.Named
	place := measured(b.tuple(in(e.At, b.p.Units.Length), byAxis("the %[1]s coordinate of the point that moments are taken about")), b.p.Units.Length)
	if b.p.Planar {
		forces, _ := b.forces(e, n.Perp)
		return []any{"the point ", place, ", where the lines of action of ", forces, " intersect"}
	}
	out := []any{"the axis through ", place}
	if n.Point >= 0 {
		out[1] = b.p.Points[n.Point].Name
	}
	switch {
	case n.Along >= 0 && n.Point < 0:
		return []any{"the line of action of ", b.unknown(n.Along)}
	case n.Along >= 0:
		return append(out, " parallel to ", b.unknown(n.Along))
	case len(n.Perp) > 0:
		return append(out, " that intersects the lines of action of ", b.symbols(n.Perp))
	}
	return append(out, " along ", b.tuple(e.Along, byAxis("the %[1]s component of a unit vector along the axis of moments")))
}

func (b *builder) together(step *handsolve.Step) doc.Block {
	of := b.symbols(foundIn(step))
	out := []any{"No sum of forces or moments contains only one of ", of}
	if step.Screw {
		out = []any{"No direction and no axis leaves only one of ", of, b.on(&step.Equations[0])}
	}
	if len(step.Equations) > len(step.Finds) { // every equation of some bodies
		var bodies []int
		for _, e := range step.Equations {
			bodies = append(bodies, e.Bodies...)
		}
		slices.Sort(bodies)
		return say(append(out, ", so the equations of "+b.bodiesWords(slices.Compact(bodies))+" are solved simultaneously",
			b.are("; ", step.Loose, "appears", " in them too and "+english.Plural(len(step.Loose), "has")+" no single value"), ".")...)
	}
	sums := english.Each(step.Equations, func(e handsolve.Equation) any { return b.sumOn(&e) })
	return say(append(out, ", so "+english.Number(len(step.Equations))+" equations are solved simultaneously: ", and(sums), ".")...)
}

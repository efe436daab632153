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
	"trivet/units"
)

// refusals say why there is no hand solution.
var refusals = map[handsolve.Refusal]string{
	handsolve.NoFreeBody:     "There is no free body to write equations for.",
	handsolve.NoUnknown:      "There is nothing to solve by hand: no force is unknown.",
	handsolve.NoEquilibrium:  "There is no equilibrium, so the equations have no solution.",
	handsolve.NoneAsked:      "What is asked for follows from the loads and the geometry: no equation has to be solved.",
	handsolve.NoSingleValues: "No unknown that is asked for has a single value.",
}

// handSolution are the steps of the hand solution. Equations that follow each other on the same
// bodies are one step.
func (b *builder) handSolution() {
	for i := range b.Hand.Steps {
		step := &b.Hand.Steps[i]
		if i == 0 || !follows(&b.Hand.Steps[i-1], step) {
			b.Steps = append(b.Steps, Step{Kind: HandStep})
		}
		out := &b.Steps[len(b.Steps)-1]
		out.Body = append(out.Body, b.handStep(out, step)...)
	}
}

// follows tells that a step goes on with the bodies of the one before.
func follows(last, step *handsolve.Step) bool {
	oneByOne := func(s *handsolve.Step) bool { return s.Kind == handsolve.One || len(s.Relations) > 0 }
	return oneByOne(last) && oneByOne(step) && slices.Equal(last.Equations[0].Bodies, step.Equations[0].Bodies)
}

// handStep gives a step its title, which is the bodies that it considers or what it finds by
// inspection, and the sentences that say why one unknown is alone and what is known already, with
// the equation in symbols and with numbers, and the values found.
func (b *builder) handStep(out *Step, step *handsolve.Step) (body []doc.Block) {
	var symbols, numbers, values []doc.Math
	for i := range step.Equations {
		e := &step.Equations[i]
		b.speaksOf(&out.About, e)
		symbols, numbers = append(symbols, b.written(e, false, nil)), append(numbers, b.written(e, true, nil))
	}
	for k := range step.Finds {
		values = append(values, b.foundByHand(step, k))
	}
	switch step.Kind {
	case handsolve.ZeroForce:
		out.Title = "Zero-force members"
		for _, z := range step.Zero {
			out.About.Bodies, body = append(out.About.Bodies, z.Body), append(body, b.zeroForce(z))
		}
		return body // the sentences give the values
	case handsolve.Together:
		if len(step.Relations) > 0 {
			noun, _ := b.noun(&step.Equations[0])
			out.Title = english.Capital(noun)
			return b.elimination(step)
		}
		out.Kind, out.Title = Solve, "Simultaneous equations for "+b.names(foundIn(step))
		body = []doc.Block{b.together(step), aligned(symbols...), say("With numbers:"), &doc.Formula{Of: numbers, Found: true}}
	case handsolve.One:
		e := &step.Equations[0]
		if noun, article := b.noun(e); out.Title == "" && len(e.Cut) == 0 {
			if out.Title = english.Capital(noun); len(e.Bodies) > 1 && !b.cancelled {
				body, b.cancelled = []doc.Block{say("On " + the(noun, article) + " the internal forces cancel in pairs, so only the external forces remain.")}, true
			}
		} else if out.Title == "" {
			cut := english.And(english.Each(e.Cut, func(i int) string { return b.p.Lines[i].Name })...)
			out.Title, body = "Section through "+cut, []doc.Block{say("Cut " + cut + " and consider the part with " + b.bodiesWords(e.Bodies) + ".")}
		}
		if slices.ContainsFunc(e.Terms, func(t handsolve.Term) bool { return t.Known && t.Value != 0 }) {
			with, figures, exact := b.solving(numbers[0], values[0])
			symbols = []doc.Math{reprinted(symbols[0], figures), with}
			if !exact {
				values[0].Text = "≈"
			}
		}
		body = append(append(append(body, b.one(step)), formulas(b.projections(e))...), aligned(symbols...))
	default:
		m := &b.Hand.Members[step.Member]
		out.About.Bodies = []int{m.Body}
		noun, _ := b.body(m.Body)
		if out.Title = "Two-force member: " + noun; step.Kind == handsolve.TwoForce {
			body = []doc.Block{b.twoForceMember(step)}
		} else {
			out.Title, body = "Components of the force in "+b.bodyWords(m.Body), []doc.Block{say(b.unknown(b.memberForce(step)), " has these components at the ends of the member:")}
		}
	}
	return append(body, formulas(values)...)
}

// foundByHand is x = value, or x = coefficient·S = value for a component.
func (b *builder) foundByHand(step *handsolve.Step, k int) doc.Math {
	x := step.Finds[k]
	of := []doc.Math{b.unknown(x.Symbol)}
	if step.Kind == handsolve.Components {
		member := &b.Hand.Members[step.Member]
		along := origin.Phrase("%[1]s: the component of a unit vector along the two-force member %[2]s", b.Hand.Name(b.p, x.Symbol), b.p.Bodies[member.Body].Name)
		of = append(of, times(traced(along, b.number(b.share(b.memberForce(step), x.Symbol))), b.unknown(b.memberForce(step))))
	}
	return equal(append(of, traced(b.origins().Found(step, k), b.result(x.Value, b.unitOf(x.Symbol))))...)
}

func (b *builder) origins() origin.Hand { return origin.Hand{Solution: b.s, Order: &b.Hand} }

// memberForce is the symbol of the force in a two-force member.
func (b *builder) memberForce(step *handsolve.Step) int { return len(b.p.Unknowns) + step.Member }

// share is what one unit of a symbol is of an unknown: all of itself, or a component of the
// force in a two-force member.
func (b *builder) share(symbol, unknown int) float64 {
	if symbol == unknown {
		return 1
	}
	if member := symbol - len(b.p.Unknowns); member >= 0 {
		for _, s := range b.Hand.Members[member].Shares {
			if s.Unknown == unknown {
				return s.Coef
			}
		}
	}
	return 0
}

// written is ΣM = Σ coefficient·symbol = 0; with numbers for what is known, and what some symbols
// stand for.
func (b *builder) written(e *handsolve.Equation, numbers bool, with map[int]doc.Math) doc.Math {
	shown := b.p.Units.Force
	if e.Moment {
		shown = b.p.Units.For(units.Moment)
	}
	var of []doc.Math
	for i := range e.Terms {
		t := &e.Terms[i]
		if t.Known && t.Value == 0 {
			continue
		}
		value, factor := b.origins().Term(e, i, true), b.origins().Term(e, i, false)
		a, u := b.actOf(e, t)
		if a != nil && a.line != nil && a.line.Components != nil && t.Symbol < 0 {
			of = append(of, traced(value, row(b.byComponents(e, a, numbers)...)).Of...)
			continue
		}
		m, unit := b.loadSymbol(t)
		if is, put := with[t.Symbol]; put {
			m = grouped(is)
		}
		coef := b.number(t.Coef * unit.Factor / shown.Factor)
		switch {
		case t.Known && numbers:
			coef = b.number(math.Copysign(1, t.Value) * t.Coef * unit.Factor / shown.Factor) // one sign before the term
			m = traced(value, short(math.Abs(unit.In(t.Value)), b.p.Figures+1))
		case e.Moment && isAxis(e.Along) && !numbers && a != nil && a.tie == nil && !isAxis(u) && math.Abs(r3.Norm(u)-1) <= sumTol:
			if arm := b.skewArm(e, a, u); len(arm.Of) > 0 {
				coef = arm
			}
		}
		of = append(of, times(traced(factor, coef), m))
	}
	return equal(b.heading(e), sum(of...), traced(origin.Balance, exactly(0)))
}

// actOf is the act of a term on the bodies of an equation and its force for one unit of the
// term, where there is one alone.
func (b *builder) actOf(e *handsolve.Equation, t *handsolve.Term) (only *act, unit r3.Vec) {
	acts, unit := b.actsOf(e, t)
	if len(acts) != 1 {
		return nil, r3.Vec{}
	}
	return acts[0], unit
}

// actsOf are the acts of a term on the bodies of an equation and the sum of their forces for one unit of the
// term. What a joint exerts between two of the bodies cancels.
func (b *builder) actsOf(e *handsolve.Equation, t *handsolve.Term) (of []*act, unit r3.Vec) {
	for _, i := range e.Bodies {
		for _, a := range b.acts[i] {
			if a.joint != nil && slices.Contains(e.Bodies, a.joint.First) && slices.Contains(e.Bodies, a.joint.Second) {
				continue
			}
			u := r3.Vec{}
			if t.Symbol < 0 && a.from == t.Load {
				u = r3.Scale(1/t.Value, a.Force.Const)
			}
			for _, x := range a.Force.Terms {
				u = r3.Add(u, r3.Scale(b.share(t.Symbol, x.Unknown), x.D))
			}
			if u != (r3.Vec{}) {
				of, unit = append(of, a), r3.Add(unit, u)
			}
		}
	}
	return of, cleaned(unit)
}

// lever is what the components of a force at a place add to an equation: x Fy - y Fx is
// (-y, x)·F of a moment in the plane.
func (b *builder) lever(e *handsolve.Equation, at r3.Vec) r3.Vec {
	if !e.Moment {
		return cleanedBy(e.Along, 1)
	}
	arm := in(r3.Sub(at, e.At), b.p.Units.Length)
	return cleanedBy(r3.Cross(e.Along, arm), r3.Norm(arm))
}

// byComponents is a force that was typed by its components in an equation: component by
// component, and never its magnitude with an arm.
func (b *builder) byComponents(e *handsolve.Equation, a *act, numbers bool) (of []doc.Math) {
	lever := xyz(b.lever(e, a.At))
	for k, x := range components(in(a.Force.Const, b.p.Units.Force)) {
		switch c := lever[k]; {
		case c == 0:
		case numbers:
			of = append(of, times(b.number(math.Copysign(1, x)*c), b.number(math.Abs(x))))
		default:
			of = append(of, times(b.number(c), part(a.name, "xyz"[k:k+1])))
		}
	}
	return of
}

// skewArm is what a force along no axis is multiplied by in a sum of moments in the plane or about a coordinate
// axis, x uy - y ux of its point of application and its direction; it is empty at the point of moments.
func (b *builder) skewArm(e *handsolve.Equation, a *act, u r3.Vec) doc.Math {
	lever := b.lever(e, a.At)
	sign := -1.0 // of a sum whose terms are all negative
	if max(lever.X*u.X, lever.Y*u.Y, lever.Z*u.Z) > 0 {
		sign = 1
	}
	var of []doc.Math
	for _, x := range [][2]float64{{lever.Z, u.Z}, {lever.Y, u.Y}, {lever.X, u.X}} {
		if x[0]*x[1] != 0 {
			of = append(of, signed(sign*x[0]*x[1], times(b.number(math.Abs(x[0])), b.number(math.Abs(x[1])))))
		}
	}
	switch len(of) {
	case 0:
		return doc.Math{}
	case 1:
		return signed(sign, of[0])
	}
	return signed(sign, paren(sum(of...)))
}

// heading is ΣFx, ΣM about a point or an axis; the sentence gives those without a name.
func (b *builder) heading(e *handsolve.Equation) doc.Math {
	if e.Moment {
		return sumOf("M", e.Subscript(b.p), false)
	}
	return sumOf("F", e.Subscript(b.p), !e.Unnamed())
}

// sumOf is the sum of the forces or moments that a subscript names; the letters of a coordinate
// are a name of the sheet's.
func sumOf(letter, sub string, isName bool) doc.Math {
	m := symbol(letter)
	if sub != "" {
		m.Of = []doc.Math{words(sub)}
	}
	if isName {
		m.Name = letter + sub
	}
	return bigSum(m)
}

// loadSymbol is a term's symbol and the unit of its value.
func (b *builder) loadSymbol(t *handsolve.Term) (doc.Math, units.Unit) {
	if t.Symbol >= 0 {
		return b.unknown(t.Symbol), b.unitOf(t.Symbol)
	}
	name, _ := b.symbolOf(t.Load)
	if b.p.TurnsOnly(t.Load) {
		return name, b.p.Units.For(units.Moment)
	}
	return name, b.p.Units.Force
}

// speaksOf notes what a picture of the equation shows.
func (b *builder) speaksOf(about *Subject, e *handsolve.Equation) {
	put := func(thing problem.Thing, of ...int) {
		about.add(english.Each(of, func(i int) problem.Source { return problem.Source{Thing: thing, Index: i} })...)
	}
	put(problem.ABody, e.Bodies...)
	put(problem.ALine, e.Cut...)
	put(problem.APoint, e.Named.Point, e.Named.To)
	for _, t := range e.Terms {
		switch member := t.Symbol - len(b.p.Unknowns); {
		case t.Symbol < 0:
			about.add(t.Load)
		case member >= 0:
			put(problem.ABody, b.Hand.Members[member].Body)
		default:
			u := &b.p.Unknowns[t.Symbol]
			put(problem.AJoint, u.Joint)
			put(problem.ALine, u.Line)
			put(problem.ACouple, slices.IndexFunc(b.p.Couples, func(c problem.Couple) bool { return c.Name == u.Name }))
		}
	}
	if e.Moment && about.Axis == nil {
		about.Axis = &Axis{At: [3]float64(xyz(e.At)), Along: [3]float64(xyz(e.Along))}
	}
}

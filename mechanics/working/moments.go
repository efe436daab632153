package working

import (
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/units"
)

// moments are r × F about each rigid body's point.
func (b *builder) moments() {
	for i := range b.p.CutFree() {
		body := &b.p.Bodies[i]
		if body.Particle {
			continue
		}
		var through []doc.Math
		var blocks []doc.Block
		about := Subject{Bodies: []int{i}, Axis: &Axis{At: [3]float64(xyz(body.About))}} // a point: no direction
		for k := range b.acts[i] {
			a := &b.acts[i][k]
			about.Lines, about.Joints = append(about.Lines, a.subject.Lines...), append(about.Joints, a.subject.Joints...)
			about.Couples, about.Loads = append(about.Couples, a.subject.Couples...), append(about.Loads, a.subject.Loads...)
		}
		for k := range b.acts[i] {
			a := &b.acts[i][k]
			if a.isForce() {
				arm := b.p.Arm(a.Act)
				if norm(arm) == 0 {
					through = append(through, b.forceLabels(a)...)
				} else if m, ok := b.momentOf(a, body, arm); ok {
					blocks = append(blocks, m...)
				} else {
					through = append(through, b.forceLabels(a)...)
				}
			}
			if a.isCouple() {
				blocks = append(blocks, b.coupleOf(a))
			}

		}
		if len(through) > 0 {
			verb, have := " pass through ", " and have"
			if len(through) == 1 {
				verb, have = " passes through ", " and has"
			}
			blocks = append([]doc.Block{say(list(through), verb+body.AboutName+have+" no moment about it.")}, blocks...)
		}
		if len(blocks) > 0 {
			blocks = append([]doc.Block{b.momentRule(body.AboutName)}, blocks...)
		}
		b.step(Moment, "Moments on "+body.Name+" about "+body.AboutName, about, blocks...)
	}
}

// momentRule says how a moment is formed.
func (b *builder) momentRule(about string) doc.Block {
	r, f := doc.Math{Op: doc.Vec, Text: "r"}, doc.Math{Op: doc.Vec, Text: "F"}
	if b.p.Planar {
		x, y := letter("x"), letter("y")
		return say("A force at ", paren(x, y), " from "+about+" has the moment ",
			equal(letter("M"), sum(product(x, part(letter("F"), "y")), neg(product(y, part(letter("F"), "x"))))), ", counter-clockwise positive.")
	}
	return say("A force has the moment ", equal(doc.Math{Op: doc.Vec, Text: "M"}, cross(r, f)), ", with ", r, " from "+about+" to where it acts.")
}

// momentOf is M = r × F of one force; false where it has none about the point.
func (b *builder) momentOf(a *act, body *problem.Body, arm r3.Vec) ([]doc.Block, bool) {
	u, f, l := b.p.Units.For(units.Moment), b.p.Units.Force, b.p.Units.Length
	known := r3.Cross(arm, a.Const)
	known = cleanedBy(known, norm(arm)*norm(a.Const))
	terms := make([]problem.ActTerm, len(a.Terms))
	some := known != r3.Vec{}
	for k, t := range a.Terms {
		d := cleanedBy(r3.Cross(arm, t.D), norm(arm)*norm(t.D))
		terms[k] = problem.ActTerm{Unknown: t.Unknown, D: d}
		some = some || d != r3.Vec{}
	}
	if !some {
		return nil, false
	}
	name, r := b.momentName(a), b.between(body.AboutName, a.at)
	if a.Point < 0 && b.place(a.Act) == a.at && !b.isPoint(a.at) {
		r = vector("r", leafed(a.name))
	}
	if b.p.Planar {
		x, y := clean(arm.X, norm(arm)), clean(arm.Y, norm(arm))
		parts := []doc.Math{}
		if fy := b.component(a.Const, a.Terms, 1, f); x != 0 && !isZero(fy) {
			parts = append(parts, b.factor(x/l.Factor, fy))
		}
		if fx := b.component(a.Const, a.Terms, 0, f); y != 0 && !isZero(fx) {
			parts = append(parts, neg(b.factor(y/l.Factor, fx)))
		}
		value := b.component(known, terms, 2, u)
		m := []doc.Math{name, sum(parts...)}
		if len(a.Terms) == 0 {
			value = measured(value, u)
		}
		return []doc.Block{formula(equal(append(m, value)...))}, true
	}
	value := b.expression(known, terms, u)
	if len(a.Terms) == 0 {
		value = measured(bracketed(value), u)
	}
	force := a.vec
	if a.sign {
		force = neg(force)
	}
	top := row(unitVec("i"), unitVec("j"), unitVec("k"))
	arms, comps := row(), row()
	for k := range 3 {
		arms.Of = append(arms.Of, short(clean(xyz(arm)[k], norm(arm))/l.Factor, b.p.Figures+1))
		comps.Of = append(comps.Of, b.component(a.Const, a.Terms, k, f))
	}
	det := doc.Math{Op: doc.Det, Of: []doc.Math{top, arms, comps}}
	if len(b.acts[a.Body]) > many {
		return []doc.Block{aligned(equal(name, cross(r, grouped(force)), value))}, true
	}
	return []doc.Block{aligned(equal(name, cross(r, grouped(force)), det), equal(words(""), value))}, true
}

func (b *builder) momentName(a *act) doc.Math {
	sub := leafed(a.name)
	if a.line >= 0 && len(b.p.Lines[a.line].Path) > 2 {
		sub = a.name.Of[0]
	}
	if b.p.Planar {
		return doc.Math{Op: doc.Symbol, Text: "M", Of: []doc.Math{sub}}
	}
	return vector("M", sub)
}

// coupleOf is the moment of a couple, or of a joint that holds moments.
func (b *builder) coupleOf(a *act) doc.Block {
	u := b.p.Units.For(units.Moment)
	if !a.couple && b.p.Planar {
		return say("The "+kindWords(&b.p.Joints[a.joint])+" at "+a.at+" holds a moment too: ", b.component(a.Couple, a.CoupleTerms, 2, u), ".")
	}
	name := b.momentName(a)
	if !a.couple {
		name = b.heldName(a)
	}
	value := b.expression(a.Couple, a.CoupleTerms, u)
	if b.p.Planar {
		value = b.component(a.Couple, a.CoupleTerms, 2, u)
	}
	if len(a.CoupleTerms) == 0 {
		value = measured(bracketed(value), u)
	}
	if a.couple {
		return say("The couple ", a.name, " is the same about every point: ", equal(name, value), ".")
	}
	return say("The "+kindWords(&b.p.Joints[a.joint])+" at "+a.at+" holds a moment too: ", equal(name, value), ".")
}

// heldName is the symbol of the moment that a joint holds, beside that of its force.
func (b *builder) heldName(a *act) doc.Math { return vector("C", leafed(a.name)) }

func (b *builder) isPoint(name string) bool {
	for i := range b.p.Points {
		if b.p.Points[i].Name == name {
			return true
		}
	}
	return false
}

// factor is x · F with F in parentheses where it is a sum or negative.
func (b *builder) factor(x float64, f doc.Math) doc.Math {
	return product(paren(short(x, b.p.Figures+1)), paren(f))
}

func isZero(m doc.Math) bool { return m.Op == doc.Number && m.Num == 0 }

func cleanedBy(v r3.Vec, size float64) r3.Vec {
	return r3.Vec{X: clean(v.X, size), Y: clean(v.Y, size), Z: clean(v.Z, size)}
}

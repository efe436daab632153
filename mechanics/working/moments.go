package working

import (
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/origin"
	"trivet/mechanics/problem"
	"trivet/units"
)

// moments are r × F about each rigid body's point.
func (b *builder) moments() {
	ruled := false
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
			about.add(a.subject)
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
				blocks = append(blocks, b.coupleOf(a)...)
			}
		}
		if len(through) > 0 {
			passes, has := " pass through ", " and have"
			if len(through) == 1 {
				passes, has = " passes through ", " and has"
			}
			blocks = append([]doc.Block{say(list(through), passes+body.AboutName+has+" no moment about it.")}, blocks...)
		}
		if rule := b.momentRule(); len(blocks) > 0 && !ruled {
			blocks, ruled = append([]doc.Block{rule}, blocks...), true
		}
		b.step(Moment, "Moments on "+b.bodyWords(i)+" about "+body.AboutName, about, blocks...)
	}
}

// momentRule says how a moment is formed.
func (b *builder) momentRule() doc.Block {
	about := "the point of moments"
	if points := b.aboutPoints(); len(points) == 1 {
		about = points[0]
	}
	r, f := doc.Math{Op: doc.Vec, Text: "r"}, doc.Math{Op: doc.Vec, Text: "F"}
	if b.p.Planar {
		x, y := letter("x"), letter("y")
		return say("A force with its point of application at ", paren(x, y), " from "+about+" has the moment ",
			equal(letter("M"), sum(product(x, part(letter("F"), "y")), neg(product(y, part(letter("F"), "x"))))), ", counter-clockwise positive.")
	}
	return say("A force has the moment ", equal(doc.Math{Op: doc.Vec, Text: "M"}, cross(r, f)), ", with ", r, " from "+about+" to the point of application.")
}

// determinants is up to how many forces on a body each has r × F written as a determinant.
const determinants = 6

// momentOf is M = r × F of one force; false where it has none about the point.
func (b *builder) momentOf(a *act, body *problem.Body, arm r3.Vec) ([]doc.Block, bool) {
	u, f, l := b.p.Units.For(units.Moment), b.p.Units.Force, b.p.Units.Length
	force, forces := b.force(a)
	known, terms := momentParts(arm, force, forces)
	some := known != r3.Vec{}
	for _, t := range terms {
		some = some || t.d != r3.Vec{}
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
		if fy := b.component(force, forces, 1, f, b.parts(a, false)); x != 0 && !isZero(fy) {
			parts = append(parts, b.factor(a, 0, x/l.Factor, fy))
		}
		if fx := b.component(force, forces, 0, f, b.parts(a, false)); y != 0 && !isZero(fx) {
			parts = append(parts, neg(b.factor(a, 1, y/l.Factor, fx)))
		}
		value := b.component(known, terms, 2, u, b.parts(a, true))
		m := []doc.Math{name, sum(parts...)}
		if len(a.Terms) == 0 {
			value = measured(value, u)
		}
		return []doc.Block{formula(b.equals(append(m, value)...))}, true
	}
	value := b.expression(known, terms, u, b.parts(a, true))
	if len(a.Terms) == 0 {
		value = measured(bracketed(value), u)
	}
	symbol := a.vec
	if a.sign {
		symbol = neg(symbol)
	}
	top := row(unitVec("i"), unitVec("j"), unitVec("k"))
	arms, comps := row(), row()
	for k := range 3 {
		arms.Of = append(arms.Of, traced(a.source.Arm(b.s, k), b.number(clean(xyz(arm)[k], norm(arm))/l.Factor)))
		comps.Of = append(comps.Of, b.component(force, forces, k, f, b.parts(a, false)))
	}
	det := doc.Math{Op: doc.Det, Of: []doc.Math{top, arms, comps}}
	if len(b.acts[a.Body]) > determinants {
		return []doc.Block{aligned(equal(name, cross(r, grouped(symbol)), value))}, true
	}
	return []doc.Block{aligned(equal(name, cross(r, grouped(symbol)), det), equal(words(""), value))}, true
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

// coupleOf is the moment of a couple, or of a joint that exerts one.
func (b *builder) coupleOf(a *act) []doc.Block {
	u := b.p.Units.For(units.Moment)
	known, shares := b.coupleParts(a)
	name, value := b.momentName(a), b.expression(known, shares, u, b.parts(a, true))
	if b.p.Planar {
		value = b.component(known, shares, 2, u, b.parts(a, true))
	}
	if a.known() {
		value = measured(bracketed(value), u)
	}
	if a.couple && len(a.subject.Couples) > 0 && b.p.Planar {
		if c := &b.p.Couples[a.subject.Couples[0]]; c.Spring != nil && c.U.Z > 0 {
			k, theta := letter("k"), letter("θ")
			return []doc.Block{say("The couple ", a.name, " is that of a torsion spring, which opposes its turn ", theta, " in rad, counter-clockwise positive, with its stiffness ", k, " in "+u.Symbol+"/rad:"),
				formula(b.equals(name, neg(product(k, theta)), neg(traced(origin.Phrase("the torsion spring %[1]s: its stiffness and its turn, from its cells", b.p.Couples[a.subject.Couples[0]].Name), product(paren(b.number(u.In(c.Spring.Stiffness))), paren(b.number(c.Spring.Turn))))), value))}
		}
	}
	if a.couple {
		return []doc.Block{say("The couple ", a.name, " has the same moment about every point: ", equal(name, value), ".")}
	}
	if !b.p.Planar {
		value = equal(b.heldName(a), value)
	}
	return []doc.Block{say("The "+b.p.Joints[a.joint].Words()+" at "+a.at+" also exerts the moment ", value, ".")}
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
func (b *builder) factor(a *act, axis int, x float64, f doc.Math) doc.Math {
	return product(paren(traced(a.source.Arm(b.s, axis), b.number(x))), paren(f))
}

func isZero(m doc.Math) bool { return m.Op == doc.Number && m.Num == 0 }

func cleanedBy(v r3.Vec, size float64) r3.Vec {
	return r3.Vec{X: clean(v.X, size), Y: clean(v.Y, size), Z: clean(v.Z, size)}
}

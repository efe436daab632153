package working

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/origin"
	"trivet/mechanics/problem"
	english "trivet/mechanics/say"
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
		for _, a := range b.acts[i] {
			about.add(a.from)
			if m := b.momentOf(a, body); m != nil {
				blocks = append(blocks, m)
			} else if a.isForce() {
				through = append(through, b.labels(a, a.Force.Terms)...)
			}
			if a.isCouple() {
				blocks = append(blocks, b.coupleBlocks(a)...)
			}
		}
		if n := len(through); n > 0 {
			blocks = append([]doc.Block{say(list(through), " "+english.Plural(n, "passes")+" through "+body.AboutName+" and "+english.Plural(n, "has")+" no moment about it.")}, blocks...)
		}
		if len(blocks) > 0 && !ruled {
			blocks, ruled = append([]doc.Block{b.momentRule()}, blocks...), true
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
	r, f, x, y := vector("r"), symbol("F"), symbol("x"), symbol("y")
	if b.p.Planar {
		return say("A force with its point of application at ", paren(x, y), " from "+about+" has the moment ",
			equal(symbol("M"), sum(product(x, part(f, "y")), neg(product(y, part(f, "x"))))), ", counter-clockwise positive.")
	}
	return say("A force has the moment ", equal(vector("M"), cross(r, vector("F"))), ", with ", r, " from "+about+" to the point of application.")
}

// determinants is up to how many forces on a body each has r × F written as a determinant.
const determinants = 6

// momentOf is M = r × F of one force; nil where it has none about the point.
func (b *builder) momentOf(a *act, body *problem.Body) doc.Block {
	arm := b.p.Arm(a.Act)
	force := b.forceOf(a)
	moment := force.about(arm)
	if len(moment.terms) == 0 {
		return nil
	}
	name, value := b.momentName(a), moment.value()
	arms, comps := row(), row()
	for k, x := range xyz(cleanedBy(arm, r3.Norm(arm))) {
		arms.Of = append(arms.Of, traced(a.source.Arm(b.s, k), b.length(x)))
		comps.Of = append(comps.Of, force.component(k))
	}
	if b.p.Planar {
		var parts []doc.Math
		for k, sign := range []float64{1, -1} { // x Fy - y Fx
			if x, f := arms.Of[k], comps.Of[1-k]; !isZero(x) && !isZero(f) {
				parts = append(parts, signed(sign, product(paren(x), paren(f))))
			}
		}
		return aligned(b.equals(name, sum(parts...), value))
	}
	product := cross(b.arm(body.AboutName, a), grouped(signed(a.side(), a.vec)))
	if len(b.acts[a.Body]) > determinants {
		return aligned(equal(name, product, value))
	}
	det := doc.Math{Op: doc.Det, Of: []doc.Math{row(unitVec("i"), unitVec("j"), unitVec("k")), arms, comps}}
	return aligned(equal(name, product, det), equal(words(""), value))
}

// arm is the symbol of the vector from a point to where an act applies.
func (b *builder) arm(from string, a *act) doc.Math {
	if slices.ContainsFunc(b.p.Points, func(x problem.Point) bool { return x.Name == a.at }) {
		return b.between(from, a.at)
	}
	return vector("r", leafed(a.name))
}

func (b *builder) momentName(a *act) doc.Math {
	sub := leafed(a.name)
	if a.line != nil && len(a.line.Path) > 2 {
		sub = a.name.Of[0]
	}
	if b.p.Planar {
		return symbol("M", sub)
	}
	return vector("M", sub)
}

// coupleBlocks are the moment of a couple, or of a joint that exerts one.
func (b *builder) coupleBlocks(a *act) []doc.Block {
	moment := b.coupleOf(a)
	name, value := b.momentName(a), moment.value()
	switch c := a.couple; {
	case b.p.Planar && c != nil && c.Spring != nil && c.U.Z > 0:
		k, theta := symbol("k"), symbol("θ")
		numbers := product(paren(b.number(moment.unit.In(c.Spring.Stiffness))), paren(b.number(c.Spring.Turn)))
		from := origin.Phrase("the torsion spring %[1]s: its stiffness and its angle of twist, from its cells", c.Name)
		return []doc.Block{say("The couple ", a.name, " is that of a torsion spring, which opposes its angle of twist ", theta, " in rad, counter-clockwise positive, with its stiffness ", k, " in "+moment.unit.Symbol+"/rad:"),
			aligned(b.equals(name, neg(product(k, theta)), neg(traced(from, numbers)), value))}
	case a.joint == nil:
		return []doc.Block{say("The couple ", a.name, " has the same moment about every point: ", equal(name, value), ".")}
	case !b.p.Planar:
		value = equal(b.heldName(a), value)
	}
	return []doc.Block{say("The "+a.joint.Words()+" at "+a.at+" also exerts the moment ", value, ".")}
}

// heldName is the symbol of the moment that a joint holds, beside that of its force.
func (b *builder) heldName(a *act) doc.Math { return vector("C", leafed(a.name)) }

func isZero(m doc.Math) bool { return m.Op == doc.Number && m.Num == 0 }

package working

import (
	"math"
	"slices"

	"trivet/mechanics/doc"
	"trivet/mechanics/origin"
	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/units"
)

// impendingBelts derive the ratio of the tensions of belts about to slip, R2 = R1 e^(μβ).
func (b *builder) impendingBelts() {
	for belt := range b.p.Belts() {
		if belt.Tight < 0 {
			continue
		}
		tight, tied, other := b.tension(belt, belt.Tight), b.tension(belt, belt.Tied), b.tension(belt, 1-belt.Tied)
		body := append(b.wrap(belt), say("Slip is impending, and ", tight, " is the larger tension, against the motion of the belt:"))
		follows, leads := belt.Lines[belt.Tied], belt.Lines[1-belt.Tied]
		from := b.p.Lines[leads].Magnitude
		f := b.p.Units.Force
		value := grouped(traced(origin.Magnitude(b.s, leads), b.affine(from, f)))
		of := []doc.Math{tied}
		for _, grip := range [][2]doc.Math{{other, b.grip(symbol("μ"), symbol("β"))}, {value, b.gripNumbers(belt)}} {
			if belt.Tied == belt.Tight {
				of = append(of, product(grip[0], grip[1]))
			} else {
				of = append(of, fraction(grip[0], grip[1]))
			}
		}
		result := traced(origin.Magnitude(b.s, follows), b.affine(b.p.Lines[follows].Magnitude, f))
		if len(from.Terms) == 0 {
			result = measured(result, f)
		}
		b.step(BeltFriction, "Friction of belt "+belt.Name, b.beltSubject(belt), append(body, aligned(b.equals(append(of, result)...)))...)
	}
}

// heldBelts hold the tensions of the other belts against the largest ratio they can have.
func (b *builder) heldBelts() {
	for belt := range b.p.Belts() {
		if belt.Tight >= 0 {
			continue
		}
		body := append(b.wrap(belt), say("The belt does not slip as long as the larger tension is at most ", b.grip(symbol("μ"), symbol("β")), " times the smaller one:"),
			aligned(b.equals(b.grip(symbol("μ"), symbol("β")), b.gripNumbers(belt), traced(origin.Ratio(b.s, belt.Lines[0]), short(belt.Ratio(), b.ratioFigures(belt))))))
		b.step(BeltSlip, "Does belt "+belt.Name+" slip?", b.beltSubject(belt), append(body, b.gripNeeded(belt)...)...)
	}
}

// gripNeeded is the ratio that a belt's tensions need, and what becomes of the belt.
func (b *builder) gripNeeded(belt *problem.Belt) []doc.Block {
	one, two := b.tension(belt, 0), b.tension(belt, 1)
	first, known := b.s.Magnitude(belt.Lines[0])
	second, also := b.s.Magnitude(belt.Lines[1])
	if !known || !also {
		least := traced(origin.Phrase("the smallest ratio of the tensions of the belt %[1]s, 1 / e^(μβ)", belt.Name), b.number(1/belt.Ratio()))
		greatest := traced(origin.Ratio(b.s, belt.Lines[0]), b.number(belt.Ratio()))
		return []doc.Block{say("Equilibrium leaves the tensions open within"), aligned(doc.Math{Op: doc.Relate, Text: "≤", Of: []doc.Math{times(least, one), two, times(greatest, one)}})}
	}
	shown := func(part int, x float64) doc.Math {
		return traced(b.tensionFrom(belt.Lines[part]), b.number(b.p.Units.Force.In(x)))
	}
	below, above := shown(0, first), shown(1, second)
	if first > second {
		one, two, first, second, below, above = two, one, second, first, above, below
	}
	switch {
	case second <= 0:
		return []doc.Block{say("The belt is not in tension, so no friction acts.")}
	case first < -sumTol*second:
		return []doc.Block{say(one, " is not a tension, so no friction acts.")}
	case first <= sumTol*second:
		return []doc.Block{say(one, " is zero, so no friction acts: the belt slips.")}
	}
	needed := aligned(b.equals(fraction(two, one), fraction(above, below), traced(origin.Phrase("the ratio of the tensions of the belt %[1]s", belt.Name), short(second/first, b.ratioFigures(belt)))))
	limit := b.grip(symbol("μ"), symbol("β"))
	if b.slips(belt) {
		return []doc.Block{needed, say("The ratio needed exceeds ", limit, ": the belt slips.")}
	}
	return []doc.Block{needed, say("The ratio needed does not exceed ", limit, ": the belt does not slip.")}
}

// slips tells that the check of a belt fails.
func (b *builder) slips(belt *problem.Belt) bool {
	return slices.ContainsFunc(b.s.Checks, func(c statics.Check) bool {
		return c.Kind == statics.CheckBelt && c.Line == belt.Lines[0] && !c.OK
	})
}

// ratioFigures is how many figures the ratios of a belt's tensions have: as many as show
// that one exceeds the other where the belt slips.
func (b *builder) ratioFigures(belt *problem.Belt) int {
	figures := b.p.Figures + 1
	one, _ := b.s.Magnitude(belt.Lines[0])
	two, _ := b.s.Magnitude(belt.Lines[1])
	if smaller := min(one, two); smaller > 0 && b.slips(belt) {
		figures = units.Unit{}.FiguresApart(max(one, two)/smaller, belt.Ratio(), figures)
	}
	return figures
}

// wrap is the angle of contact in radians, with the path's change of direction that it is
// where it was not typed.
func (b *builder) wrap(belt *problem.Belt) []doc.Block {
	beta := symbol("β")
	angle := b.p.Units.For(units.Angle)
	show := func(x float64) doc.Math { return traced(wrapFrom(belt), b.number(x)) }
	var body []doc.Block
	if belt.ByPath {
		u, v := b.p.Lines[belt.Lines[0]].Legs[0].U, b.p.Lines[belt.Lines[1]].Legs[0].U
		var of []doc.Math
		for k, x := range xyz(cleaned(u))[:b.axes] {
			if y := xyz(cleaned(v))[k]; x != 0 && y != 0 {
				part := func(line int, x float64) doc.Math {
					return grouped(traced(origin.Segment(b.s, line, 0, origin.U, k), b.number(x)))
				}
				of = append(of, product(part(belt.Lines[0], x), part(belt.Lines[1], y)))
			}
		}
		cosine := origin.Phrase("the cosine of the angle of contact of the belt %[1]s", belt.Name)
		c := traced(cosine, b.number(clean(math.Cos(belt.Wrap), 1)))
		cos := []doc.Math{function("cos", beta)}
		if len(of) > 0 { // they are not perpendicular, axis by axis
			cos = append(cos, sum(of...))
		}
		relate := b.equals
		if angle.Symbol != "deg" && angle.Factor != 1 {
			relate = equal // whose arc cosine is not in the unit
		}
		body = append(body, say("The angle of contact is the angle between the directions of ", b.tension(belt, 0), " and ", b.tension(belt, 1), " along the path:"),
			aligned(b.equals(append(cos, c)...), relate(beta, function("acos", c), traced(wrapFrom(belt), b.degrees(belt.Wrap, b.p.Figures+1)))))
		if angle.Factor == 1 {
			return body
		}
	}
	if angle.Factor == 1 {
		return append(body, say("The angle of contact is ", equal(beta, measured(show(belt.Wrap), angle)), "."))
	}
	factor := map[string]doc.Math{"deg": fraction(symbol("π"), exactly(180)), "gon": fraction(symbol("π"), exactly(200)), "turn": product(exactly(2), symbol("π"))}[angle.Symbol]
	half := angle.Format(math.Pi, b.p.Figures)
	radians := measured(show(belt.Wrap), units.Unit{Symbol: "rad"})
	return append(body, say("The angle of contact in radians:"), aligned(b.equals(beta, product(show(angle.In(belt.Wrap)), traced(origin.Phrase("π rad is %[1]s", half), factor)), radians)))
}

// grip is e^(μβ), with symbols or with numbers.
func (b *builder) grip(mu, beta doc.Math) doc.Math {
	return doc.Math{Op: doc.Power, Of: []doc.Math{euler(), product(mu, beta)}}
}

func (b *builder) gripNumbers(belt *problem.Belt) doc.Math {
	mu := origin.Phrase("μ of the belt %[1]s, the coefficient of static friction, from its cell", belt.Name)
	return b.grip(traced(mu, short(belt.Friction, b.p.Figures+1)), traced(wrapFrom(belt), short(belt.Wrap, b.p.Figures+1)))
}

// wrapFrom is the origin of the angle of contact.
func wrapFrom(belt *problem.Belt) doc.Origin {
	if belt.ByPath {
		return origin.Phrase("β, the angle of contact of the belt %[1]s: by which its path changes its direction", belt.Name)
	}
	return origin.Phrase("β, the angle of contact of the belt %[1]s, from its cell", belt.Name)
}

// tensionFrom is the origin of a tension in the solution.
func (b *builder) tensionFrom(line int) doc.Origin {
	switch m := b.p.Lines[line].Magnitude; {
	case b.own(line):
		return origin.Value(b.s, m.Terms[0].Unknown)
	case len(m.Terms) > 0:
		return origin.Phrase("%[1]s, computed from the solution", b.p.Lines[line].Name)
	}
	return origin.Magnitude(b.s, line)
}

// tension is the symbol of the tension in a part of a belt.
func (b *builder) tension(belt *problem.Belt, part int) doc.Math {
	return named(b.p.Lines[belt.Lines[part]].Name)
}

func (b *builder) beltSubject(belt *problem.Belt) Subject {
	return Subject{Lines: belt.Lines[:], Points: b.p.Lines[belt.Lines[0]].Path[1:]}
}

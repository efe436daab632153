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

// belts derive the ratio of the tensions of belts about to slip, R2 = R1 e^(μβ), or hold the
// tensions of the other ones against the largest ratio that they can have.
func (b *builder) belts(impending bool) {
	for _, belt := range b.p.Belts() {
		kind, title, body := BeltSlip, "Does belt "+belt.Name+" slip?", b.wrap(belt)
		switch {
		case impending != (belt.Tight >= 0):
			continue
		case impending:
			kind, title, body = BeltFriction, "Friction of belt "+belt.Name, append(body, b.impends(belt)...)
		default:
			body = append(body, b.gripNeeded(belt)...)
		}
		b.step(kind, title, Subject{Lines: belt.Lines[:], Points: b.p.Lines[belt.Lines[0]].Path[1:]}, body...)
	}
}

// impends is the tension that follows from the other one.
func (b *builder) impends(belt *problem.Belt) []doc.Block {
	follows, leads := belt.Lines[belt.Tied], belt.Lines[1-belt.Tied]
	from, f := b.p.Lines[leads].Magnitude, b.p.Units.Force
	value := grouped(traced(origin.Magnitude(b.s, leads), b.affine(from, f)))
	of := []doc.Math{b.tension(belt, belt.Tied), product(b.tension(belt, 1-belt.Tied), grip()), product(value, b.gripNumbers(belt))}
	if belt.Tied != belt.Tight {
		of[1], of[2] = fraction(of[1].Of[0], of[1].Of[1]), fraction(of[2].Of[0], of[2].Of[1])
	}
	result := traced(origin.Magnitude(b.s, follows), b.affine(b.p.Lines[follows].Magnitude, f))
	if len(from.Terms) == 0 {
		result = measured(result, f)
	}
	return []doc.Block{say("Slip toward ", b.tension(belt, belt.Tight), " is impending, so ", b.tension(belt, belt.Tight), " is the larger tension, with ", symbol("μ"), " the coefficient of static friction:"),
		aligned(b.equals(append(of, result)...))}
}

// gripNeeded is the ratio that a belt's tensions can have and the one that they need, and what
// becomes of the belt.
func (b *builder) gripNeeded(belt *problem.Belt) []doc.Block {
	figures, slips := b.p.Figures+1, slices.ContainsFunc(b.s.Checks, func(c statics.Check) bool {
		return c.Kind == statics.CheckBelt && c.Line == belt.Lines[0] && !c.OK
	})
	small, large := 0, 1
	first, known := b.s.Magnitude(belt.Lines[0])
	second, also := b.s.Magnitude(belt.Lines[1])
	if known && also && first > second {
		small, large, first, second = 1, 0, second, first
	}
	if slips && first > 0 { // as many as show that one ratio exceeds the other
		figures = units.Unit{}.FiguresApart(second/first, belt.Ratio(), figures)
	}
	greatest := func(n int) doc.Math { return traced(origin.Ratio(b.s, belt.Lines[0]), short(belt.Ratio(), n)) }
	body := []doc.Block{say("The belt does not slip as long as the larger tension is at most ", grip(), " times the smaller one, with ", symbol("μ"), " the coefficient of static friction:"),
		aligned(b.equals(grip(), b.gripNumbers(belt), greatest(figures)))}
	one, two := b.tension(belt, small), b.tension(belt, large)
	shown := func(part int, x float64) doc.Math {
		line := belt.Lines[part]
		from, m := origin.Magnitude(b.s, line), b.p.Lines[line].Magnitude
		if b.own(line) {
			from = origin.Value(b.s, m.Terms[0].Unknown)
		} else if len(m.Terms) > 0 {
			from = origin.Phrase("%[1]s, computed from the solution", b.p.Lines[line].Name)
		}
		return traced(from, b.number(b.p.Units.Force.In(x)))
	}
	switch {
	case !known || !also:
		least := traced(origin.Phrase("the smallest ratio of the tensions of the belt %[1]s, 1 / e^(μβ)", belt.Name), b.number(1/belt.Ratio()))
		return append(body, say("Equilibrium leaves the tensions open within"), aligned(relation("≤", times(least, one), two, times(greatest(b.p.Figures+1), one))))
	case second <= 0:
		return append(body, say("The belt is not in tension, so no friction acts."))
	case first < -sumTol*second:
		return append(body, say(one, " is not a tension, so no friction acts."))
	case first <= sumTol*second:
		return append(body, say(one, " is zero, so no friction acts: the belt slips."))
	}
	ratio := traced(origin.Phrase("the ratio of the tensions of the belt %[1]s", belt.Name), short(second/first, figures))
	body = append(body, aligned(b.equals(fraction(two, one), fraction(shown(large, second), shown(small, first)), ratio)))
	if slips {
		return append(body, say("The ratio needed exceeds ", grip(), ": the belt slips."))
	}
	return append(body, say("The ratio needed does not exceed ", grip(), ": the belt does not slip."))
}

// wrap is the angle of contact in radians, with the path's change of direction that it is
// where it was not typed.
func (b *builder) wrap(belt *problem.Belt) (body []doc.Block) {
	beta, angle := symbol("β"), b.p.Units.For(units.Angle)
	show := func(x float64) doc.Math { return traced(wrapFrom(belt), b.number(x)) }
	if belt.ByPath {
		leg := func(line int) (u r3.Vec, from axes) {
			return b.p.Lines[line].Legs[0].U, func(axis int) doc.Origin { return origin.Segment(b.s, line, 0, origin.U, axis) }
		}
		u, from := leg(belt.Lines[0])
		v, also := leg(belt.Lines[1])
		c := traced(origin.Phrase("the cosine of the angle of contact of the belt %[1]s", belt.Name), b.number(clean(math.Cos(belt.Wrap), 1)))
		cos := []doc.Math{function("cos", beta), b.dot(u, v, from, also), c}
		if isZero(cos[1]) { // they are perpendicular, axis by axis
			cos = []doc.Math{cos[0], c}
		}
		relate := b.equals
		if angle.Symbol != "deg" && angle.Factor != 1 {
			relate = equal // whose arc cosine is not in the unit
		}
		body = append(body, say("The angle of contact is the angle between the directions of ", b.tension(belt, 0), " and ", b.tension(belt, 1), " along the path:"),
			aligned(b.equals(cos...), relate(beta, function("acos", c), traced(wrapFrom(belt), b.degrees(belt.Wrap, b.p.Figures+1)))))
	}
	switch {
	case angle.Factor == 1 && belt.ByPath:
		return body
	case angle.Factor == 1:
		return append(body, say("The angle of contact is ", equal(beta, measured(show(belt.Wrap), angle)), "."))
	}
	pi := symbol("π")
	factor := map[string]doc.Math{"deg": fraction(pi, exactly(180)), "gon": fraction(pi, exactly(200)), "turn": product(exactly(2), pi)}[angle.Symbol]
	factor = traced(origin.Phrase("π rad is %[1]s", angle.Format(math.Pi, b.p.Figures)), factor)
	return append(body, say("The angle of contact in radians:"), aligned(b.equals(beta, product(show(angle.In(belt.Wrap)), factor), row(show(belt.Wrap), words("rad")))))
}

// grip is e^(μβ).
func grip() doc.Math { return power(euler(), product(symbol("μ"), symbol("β"))) }

func (b *builder) gripNumbers(belt *problem.Belt) doc.Math {
	mu := origin.Phrase("μ of the belt %[1]s, the coefficient of static friction, from its cell", belt.Name)
	return power(euler(), product(traced(mu, b.number(belt.Friction)), traced(wrapFrom(belt), b.number(belt.Wrap))))
}

// wrapFrom is the origin of the angle of contact.
func wrapFrom(belt *problem.Belt) doc.Origin {
	from := ", from its cell"
	if belt.ByPath {
		from = ": by which its path changes its direction"
	}
	return origin.Phrase("β, the angle of contact of the belt %[1]s"+from, belt.Name)
}

// tension is the symbol of the tension in a part of a belt.
func (b *builder) tension(belt *problem.Belt, part int) doc.Math {
	return named(b.p.Lines[belt.Lines[part]].Name)
}

package working

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	english "trivet/mechanics/say"
	"trivet/mechanics/statics"
	"trivet/units"
)

// answers are what was asked, or all unknowns where nothing was: each derived, where it is
// not an unknown itself, then boxed. What friction shows comes last.
func (b *builder) answers(conclusions []doc.Block) {
	var body []doc.Block
	var none []string
	asked := b.p.Asked
	if len(asked) == 0 {
		for j := range b.s.X {
			asked = append(asked, problem.Query{Name: b.s.X[j].Name, Unknown: j, Line: -1, Dim: b.p.Unknowns[j].Dim})
		}
	}
	for _, q := range asked {
		if b.s.Verdict == statics.NoEquilibrium && b.dependsOnSolution(q) && len(b.s.X) > 0 {
			none = append(none, called(b.p, q))
			continue
		}
		v, err := b.s.Evaluate(q)
		if err != nil && q.Kind == problem.AskUnknown && q.Unknown >= 0 && b.s.X[q.Unknown].Ranged {
			body = append(body, sentence(b.s.RangeWords(q.Unknown)))
			continue
		}
		if err != nil {
			body = append(body, sentence(err.Error()))
			continue
		}
		name := b.asked(q)
		result := b.result(v, b.p.Units.For(q.Dim))
		if q.Dim == units.Angle {
			result = b.angle(v)
		}
		body = append(body, tracedBlocks(b.resultFrom(q), b.derive(q, name, v, result))...)
		m := []doc.Math{traced(b.resultFrom(q), equal(name, result))}
		if q.Kind == problem.AskUnknown {
			if word := b.senseWord(q); word != "" {
				m = append(m, words(" ("+word+")"))
			}
		}
		body = append(body, boxed(row(m...)))
	}
	if len(none) > 0 {
		body = append(body, say(english.And(none...)+" "+english.Plural(len(none), "has")+" no value, because there is no equilibrium."))
	}
	b.step(Answers, "Answers", Subject{}, append(body, conclusions...)...)
}

// called begins a sentence with a result: its symbol, or what it is.
func called(p *problem.Problem, q problem.Query) string {
	if name, ok := q.Symbol(); ok {
		return name
	}
	return english.Capital(p.Called(q))
}

// angle is the result of an angle to the sheet's figures.
func (b *builder) angle(v float64) doc.Math {
	u := b.p.Units.Angle
	if u.Symbol == "deg" {
		return doc.Math{Op: doc.Degrees, Of: []doc.Math{figures(u.In(v), b.p.Figures)}}
	}
	return b.result(v, u)
}

// dependsOnSolution tells results that are of the geometry or the loads alone.
func (b *builder) dependsOnSolution(q problem.Query) bool {
	switch q.Kind {
	case problem.AskLength, problem.AskLoads, problem.AskSpread:
		return false
	case problem.AskUnit, problem.AskAngle:
		geometric := func(line int) bool {
			if line < 0 {
				return false // the direction of a reaction is found
			}
			_, ok := b.p.Lines[line].Direction()
			return ok // that of a force by components is found
		}
		return !geometric(q.Line) || q.Kind == problem.AskAngle && !geometric(q.Other)
	case problem.AskMagnitude:
		return b.dependsOnSolution(*q.Of)
	case problem.AskCouple:
		return len(b.p.Couples[q.Couple].Magnitude.Terms) > 0
	case problem.AskUnknown:
		return q.Unknown >= 0 || q.Line >= 0 && len(b.p.Lines[q.Line].Magnitude.Terms) > 0
	}
	return true
}

// vectorOf is the force that a result is a part of, its moment, and the symbol of the force.
func (b *builder) vectorOf(q problem.Query) (force, moment r3.Vec, symbol doc.Math) {
	switch q.Kind {
	case problem.AskLoads:
		force, moment = b.loadsOn(q.Body)
		return force, moment, b.loadsSymbol(q.Body)
	case problem.AskSpread:
		d := &b.p.Loads[q.Load]
		return r3.Scale(d.Total, d.Direction), r3.Vec{}, resultant(d)
	}
	if q.Line >= 0 {
		a := &b.p.Lines[q.Line].Acts[0]
		return b.at(a.Const, a.Terms), r3.Vec{}, named(b.p.Lines[q.Line].Name)
	}
	j := &b.p.Joints[q.Joint]
	return b.at(r3.Vec{}, j.Forces), b.at(r3.Vec{}, j.Moments), named(j.Name)
}

// derive is how a result follows from the unknowns or the loads; nothing of an unknown itself.
func (b *builder) derive(q problem.Query, name doc.Math, v float64, result doc.Math) []doc.Block {
	f := b.p.Units.Force
	one := func(of ...doc.Math) []doc.Block { return []doc.Block{formula(b.equals(append(of, result)...))} }
	switch q.Kind {
	case problem.AskUnknown:
		if q.Unknown < 0 && q.Line >= 0 && len(b.p.Lines[q.Line].Magnitude.Terms) > 0 && b.tieOf(q.Line) < 0 {
			return one(name, b.affine(b.p.Lines[q.Line].Magnitude, f))
		}
	case problem.AskMagnitude:
		inner, err := b.s.Evaluate(*q.Of)
		if err == nil {
			u := b.p.Units.For(q.Dim)
			of := b.asked(*q.Of)
			return append(b.derive(*q.Of, of, inner, b.result(inner, u)), one(name, size(figures(u.In(inner), b.p.Figures)))...)
		}
	case problem.AskStretch:
		return b.stretchOf(q, one, name)
	case problem.AskLength:
		if legs := b.p.Lines[q.Line].Legs; len(legs) > 1 {
			var of []doc.Math
			for _, leg := range legs {
				of = append(of, b.length(leg.Length))
			}
			return one(name, sum(of...))
		}
	case problem.AskFriction:
		sign := subscripted("F", b.p.Joints[q.Joint].Name)
		if v < 0 {
			sign = neg(sign)
		}
		return one(name, sign)
	case problem.AskAngle, problem.AskComponent:
		return b.deriveAlong(q, name, v, result)
	case problem.AskForce, problem.AskJoint, problem.AskLoads, problem.AskSpread, problem.AskUnit:
		return b.derivePart(q, name, v, result)
	}
	return nil
}

func (b *builder) tieOf(line int) int {
	return slices.IndexFunc(b.ties, func(t *tie) bool { return t.line == line })
}

func (b *builder) stretchOf(q problem.Query, one func(...doc.Math) []doc.Block, name doc.Math) []doc.Block {
	l := &b.p.Lines[q.Line]
	if !l.Spring.Free {
		return one(name, sum(b.length(l.Length()), neg(b.length(l.Spring.Natural))))
	}
	tension, _ := b.s.Magnitude(q.Line)
	return one(name, fraction(grouped(b.affine(l.Magnitude, b.p.Units.Force)), symbol("k")), fraction(grouped(b.number(b.p.Units.Force.In(tension))), b.perLength(l.Spring.Stiffness)))
}

// directed is a direction in a scalar product: the unit vector of a line, or a force with its magnitude.
type directed struct {
	symbol    doc.Math
	v         r3.Vec
	magnitude float64 // 0 of a unit vector
}

func (b *builder) directedBy(line, joint int) directed {
	if line >= 0 && !b.p.Lines[line].ByComponents() {
		if u, ok := b.p.Lines[line].Direction(); ok {
			return directed{unitVec("u", words(b.p.Lines[line].Name)), u, 0}
		}
	}
	v, _, symbol := b.vectorOf(problem.Query{Kind: problem.AskForce, Line: line, Joint: joint})
	v = cleaned(in(v, b.p.Units.Force))
	letter := "F"
	if line < 0 {
		letter = "R"
	}
	return directed{vector(letter, leafed(symbol)), v, norm(v)}
}

// deriveAlong is the angle between two directions, by their scalar product, or the component of a
// force along another direction.
func (b *builder) deriveAlong(q problem.Query, name doc.Math, v float64, result doc.Math) []doc.Block {
	first, second := b.directedBy(q.Line, q.Joint), b.directedBy(q.Other, q.Second)
	if q.Kind == problem.AskComponent {
		force, _, symbol := b.vectorOf(problem.Query{Kind: problem.AskForce, Line: q.Line, Joint: q.Joint})
		first = directed{vector("F", leafed(symbol)), in(force, b.p.Units.Force), 0}
	}
	var of, sizes, symbols []doc.Math
	for k := range b.axes {
		if x, y := xyz(cleaned(first.v))[k], xyz(cleaned(second.v))[k]; x != 0 && y != 0 {
			of = append(of, product(paren(b.number(x)), paren(b.number(y))))
		}
	}
	for _, d := range []directed{first, second} {
		if d.magnitude > 0 {
			sizes, symbols = append(sizes, b.number(d.magnitude)), append(symbols, size(d.symbol))
		}
	}
	form, with := product(first.symbol, words("·"), second.symbol), sum(of...)
	if len(sizes) > 0 {
		form, with = fraction(form, product(symbols...)), fraction(with, product(sizes...))
	}
	if q.Kind == problem.AskComponent {
		return []doc.Block{formula(b.equals(name, form, with, result))}
	}
	c := b.number(clean(math.Cos(v), 1))
	return []doc.Block{aligned(b.equals(function("cos", name), form, with, c), b.equals(name, function("acos", c), result))}
}

// derivePart is a part of a force: |R| with its root, a direction angle by its cosine, the
// angle in the plane by its tangent and quadrant, the place of its line of action.
func (b *builder) derivePart(q problem.Query, name doc.Math, v float64, result doc.Math) []doc.Block {
	f := b.p.Units.Force
	force, moment, symbol := b.vectorOf(q)
	w := cleaned(in(force, f))
	of := func(axis int) doc.Math { return part(symbol, "xyz"[axis:axis+1]) }
	one := func(m ...doc.Math) []doc.Block { return []doc.Block{formula(b.equals(append(m, result)...))} }
	total := b.magnitudeSymbol(q)
	magnitude := func() (doc.Math, bool) {
		var squares []doc.Math
		for axis, x := range xyz(w)[:b.axes] {
			if x != 0 {
				squares = append(squares, square(of(axis)))
			}
		}
		return root(sum(squares...)), len(squares) > 1
	}
	if q.Kind == problem.AskUnit {
		if q.Line >= 0 && len(b.p.Lines[q.Line].Legs) > 0 {
			return nil // it stands with the unit vectors
		}
		return one(name, fraction(of(int(q.Part)), total), fraction(grouped(b.number(xyz(w)[q.Part])), b.number(norm(w))))
	}
	switch q.Part {
	case problem.Size:
		if form, several := magnitude(); several {
			b.derivedSize[keyOf(total.Of[0])] = true
			return one(total, form, b.norm(w, unsaid))
		}
	case problem.X, problem.Y, problem.Z:
		return b.deriveComponent(q, int(q.Part), one, name)
	case problem.Alpha, problem.Beta, problem.Gamma:
		axis := int(q.Part - problem.Alpha)
		angle := name
		c := b.number(clean(math.Cos(v), 1))
		lines := []doc.Math{}
		if form, several := magnitude(); several && !b.derivedSize[keyOf(total.Of[0])] {
			lines = append(lines, b.equals(total, form, b.norm(w, unsaid), measured(b.number(norm(w)), f)))
			b.derivedSize[keyOf(total.Of[0])] = true
		}
		return []doc.Block{aligned(append(lines,
			b.equals(function("cos", angle), fraction(of(axis), total), fraction(grouped(b.number(xyz(w)[axis])), b.number(norm(w))), c),
			b.equals(angle, function("acos", c), result))...)}
	case problem.PlaneAngle:
		return b.planeAngle(name, w, of, result)
	case problem.At:
		if q.Kind != problem.AskLoads {
			return nil // it stands with the load's resultant
		}
		m := b.loadsMoment(q.Body)
		return append([]doc.Block{say("The line of action of the resultant crosses the x axis through "+b.p.Bodies[q.Body].AboutName+" where the moment of ", of(1), " equals ", m, ":")},
			one(name, fraction(m, of(1)), fraction(grouped(b.number(moment.Z/f.Factor/b.p.Units.Length.Factor)), grouped(b.number(w.Y))))...)
	}
	return nil
}

// deriveComponent is a component of a known direction: T1 · 0.6. Of loads it is a sum of the table.
func (b *builder) deriveComponent(q problem.Query, axis int, one func(...doc.Math) []doc.Block, name doc.Math) []doc.Block {
	f := b.p.Units.Force
	var u r3.Vec
	var size float64
	var symbol doc.Math
	switch {
	case q.Kind == problem.AskLoads:
		return nil // it is the sum of a column of the table
	case q.Kind == problem.AskSpread:
		d := &b.p.Loads[q.Load]
		u, size, symbol = d.Direction, d.Total, resultant(d)
	case q.Kind == problem.AskForce && len(b.p.Lines[q.Line].Legs) == 1 && !b.p.Lines[q.Line].ByComponents():
		magnitude, _ := b.s.Magnitude(q.Line)
		if magnitude == 0 {
			return nil
		}
		force, _, _ := b.vectorOf(q)
		u, size, symbol = r3.Scale(1/magnitude, force), magnitude, named(b.p.Lines[q.Line].Name)
	case q.Kind == problem.AskJoint && b.p.Joints[q.Joint].Impending:
		return b.impendingComponent(&b.p.Joints[q.Joint], axis, one, name)
	case q.Kind == problem.AskJoint && len(b.p.Joints[q.Joint].Forces) == 1:
		t := b.p.Joints[q.Joint].Forces[0]
		u, size, symbol = t.D, b.s.X[t.Unknown].Value, b.unknown(t.Unknown)
	default:
		return nil
	}
	x := clean(xyz(u)[axis], 1)
	if x == 0 || size == 0 {
		return nil
	}
	return one(name, times(b.number(x), symbol), product(paren(b.number(x)), paren(b.number(f.In(size)))))
}

// impendingComponent is a component of the reaction of a rough surface, of its normal force and friction.
func (b *builder) impendingComponent(j *problem.Joint, axis int, one func(...doc.Math) []doc.Block, name doc.Math) []doc.Block {
	f := b.p.Units.Force
	n := j.Forces[0].Unknown
	push := b.s.X[n].Value
	var form, with []doc.Math
	for _, s := range []struct {
		d    r3.Vec
		name doc.Math
		v    float64
	}{{j.Normal, b.unknown(n), push}, {r3.Scale(-1, j.Slip), subscripted("F", j.Name), j.Friction * push}} {
		if x := clean(xyz(s.d)[axis], 1); x != 0 {
			form = append(form, times(b.number(x), s.name))
			with = append(with, times(b.number(x), grouped(b.number(f.In(s.v)))))
		}
	}
	return one(name, sum(form...), sum(with...))
}

// planeAngle is θ = atan |Fy/Fx|, measured in the quadrant where the force points.
func (b *builder) planeAngle(theta doc.Math, w r3.Vec, of func(int) doc.Math, result doc.Math) []doc.Block {
	acute := symbol("φ")
	x, y := of(0), of(1)
	if w.X == 0 || w.Y == 0 {
		axis, sign := "+x", w.X > 0
		if w.X == 0 {
			axis, sign = "+y", w.Y > 0
		}
		if !sign {
			axis = "-" + axis[1:]
		}
		return []doc.Block{say("The force points along "+axis+", so ", equal(theta, result), ".")}
	}
	phi := math.Atan(math.Abs(w.Y / w.X))
	from := b.equals(acute, function("atan", size(fraction(y, x))), function("atan", fraction(b.number(math.Abs(w.Y)), b.number(math.Abs(w.X)))), b.degrees(phi, b.p.Figures+1))
	half, full := b.degrees(math.Pi, wholeDigits), b.degrees(2*math.Pi, wholeDigits)
	quadrant, turns := "first", []doc.Math{theta, acute}
	shown := b.degrees(phi, b.p.Figures+1)
	switch {
	case w.X < 0 && w.Y > 0:
		quadrant, turns = "second", []doc.Math{theta, sum(half, neg(acute)), sum(half, neg(shown))}
	case w.X < 0:
		quadrant, turns = "third", []doc.Math{theta, sum(half, acute), sum(half, shown)}
	case w.Y < 0:
		quadrant, turns = "fourth", []doc.Math{theta, sum(full, neg(acute)), sum(full, neg(shown))}
	}
	sign := func(x float64) string {
		if x < 0 {
			return "<"
		}
		return ">"
	}
	relation := func(m doc.Math, v float64) doc.Math {
		return doc.Math{Op: doc.Relate, Text: sign(v), Of: []doc.Math{m, exactly(0)}}
	}
	return []doc.Block{formula(from), say(relation(x, w.X), " and ", relation(y, w.Y), ", so the force points into the "+quadrant+" quadrant:"),
		formula(b.equals(append(turns, result)...))}
}

// loadsSymbol is the symbol of the resultant of a body's loads, apart from a joint's reaction of the same name.
func (b *builder) loadsSymbol(body int) doc.Math {
	name := b.p.Bodies[body].Name
	if slices.ContainsFunc(b.p.Joints, func(j problem.Joint) bool { return j.Name == name }) {
		return subscripted("R", name+",loads")
	}
	return subscripted("R", name)
}

// holder is the name of the line, joint, load or body that a result is of.
func (b *builder) holder(q problem.Query) string {
	switch {
	case q.Line >= 0:
		return b.p.Lines[q.Line].Name
	case q.Joint >= 0:
		return b.p.Joints[q.Joint].Name
	case q.Load >= 0:
		return b.p.Loads[q.Load].Name
	}
	return b.p.Bodies[q.Body].Name
}

// magnitudeSymbol is |F_T1| of a line, |R_A| of a joint, a load or a body.
func (b *builder) magnitudeSymbol(q problem.Query) doc.Math {
	letter := "R"
	if q.Line >= 0 {
		letter = "F"
	}
	if q.Line < 0 && q.Body >= 0 {
		return size(vector(letter, b.loadsSymbol(q.Body).Of[0]))
	}
	return size(vector(letter, words(b.holder(q))))
}

// asked is the symbol of a result: T1, T1x, |F_T1|, α with the name of the force.
func (b *builder) asked(q problem.Query) doc.Math {
	axis := func(k problem.Part) string { return "xyz"[k : k+1] }
	switch q.Kind {
	case problem.AskUnknown:
		if q.Unknown >= 0 {
			return b.unknown(q.Unknown)
		}
		return named(q.Name)
	case problem.AskMagnitude:
		return size(b.asked(*q.Of))
	case problem.AskLength:
		return subscripted("L", b.holder(q))
	case problem.AskStretch:
		return subscripted("δ", b.holder(q))
	case problem.AskUnit:
		return part(subscripted("u", b.holder(q)), axis(q.Part))
	case problem.AskAngle, problem.AskComponent:
		letter := "θ"
		if q.Kind == problem.AskComponent {
			letter = "F"
		}
		other := b.holder(problem.Query{Line: q.Other, Joint: q.Second})
		return doc.Math{Op: doc.Symbol, Text: letter, Of: []doc.Math{words(b.holder(q) + "," + other)}}
	case problem.AskCouple, problem.AskFriction:
		return named(q.Name)
	}
	name := b.holder(q)
	switch q.Part {
	case problem.X, problem.Y, problem.Z:
		_, _, force := b.vectorOf(q)
		return part(force, axis(q.Part))
	case problem.Size:
		if q.Kind == problem.AskSpread {
			return resultant(&b.p.Loads[q.Load])
		}
		return b.magnitudeSymbol(q)
	case problem.At:
		if q.Kind == problem.AskSpread {
			return distance(&b.p.Loads[q.Load])
		}
		return subscripted("x", name)
	case problem.PlaneAngle:
		return subscripted("θ", name)
	case problem.Alpha, problem.Beta, problem.Gamma:
		return subscripted([]string{"α", "β", "γ"}[q.Part-problem.Alpha], name)
	}
	moment := subscripted("M", name)
	if q.Kind == problem.AskLoads {
		moment = b.loadsMoment(q.Body)
	}
	if b.p.Planar {
		return moment
	}
	return part(moment, axis(q.Part-problem.MX))
}

// senseWord is tension or compression of a line, also of one whose magnitude follows from others,
// push or pull of a contact, or empty.
func (b *builder) senseWord(q problem.Query) string {
	line := q.Line
	if q.Unknown >= 0 {
		u := &b.p.Unknowns[q.Unknown]
		if !u.Own {
			return ""
		}
		line = u.Line
	}
	if line < 0 {
		return ""
	}
	info := b.p.Lines[line].Kind.Info()
	value, single := b.s.Magnitude(line)
	if !single || value == 0 || info.Sense == problem.Along {
		return ""
	}
	return english.Sense(value, info.Positive, info.Negative)
}

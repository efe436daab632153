package working

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/handsolve"
	"trivet/mechanics/names"
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
			asked = append(asked, b.p.Ask(j))
		}
	}
	for _, q := range asked {
		v, err := b.s.Evaluate(q)
		switch {
		case b.s.Verdict == statics.NoEquilibrium && b.dependsOnSolution(q):
			none = append(none, called(b.p, q))
		case err != nil && q.Of.Thing == problem.AnUnknown && b.s.X[q.Of.Index].Ranged:
			body = append(body, sentence(b.s.RangeWords(q.Of.Index)))
		case err != nil:
			body = append(body, sentence(err.Error()))
		default:
			r := b.answer(q, v)
			box := []doc.Math{traced(b.resultFrom(q), equal(r.name, r.shown))}
			if word := b.senseWord(q); word != "" {
				box = append(box, words(" ("+word+")"))
			}
			body = append(body, tracedBlocks(b.resultFrom(q), r.derived())...)
			body = append(body, &doc.Boxed{Math: row(box...)})
		}
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
	return english.Capital(names.Called(p, q))
}

// dependsOnSolution tells results that are not of the geometry or the loads alone.
func (b *builder) dependsOnSolution(q problem.Query) bool {
	return len(handsolve.DependsOn(b.s, []problem.Query{q})) > 0
}

// senseWord is tension or compression of a line, also of one whose magnitude follows from others,
// push or pull of a contact, or empty.
func (b *builder) senseWord(q problem.Query) string {
	line := -1
	switch {
	case q.Kind != problem.AskValue:
	case q.Of.Thing == problem.ALine:
		line = q.Of.Index
	case q.Of.Thing == problem.AnUnknown && b.p.Unknowns[q.Of.Index].Own:
		line = b.p.Unknowns[q.Of.Index].Line
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

// answer is a result that was asked, with its symbol and its value as it is shown.
type answer struct {
	*builder
	q     problem.Query
	v     float64
	name  doc.Math
	shown doc.Math
	of    owner
}

// owner is what a result is of, with its force and its moment.
type owner struct {
	name          string   // of the line, joint, load or body
	symbol        doc.Math // of the force
	vec           doc.Math // and as a vector
	force, moment r3.Vec
}

func (b *builder) answer(q problem.Query, v float64) answer {
	shown := b.result(v, b.p.Units.For(q.Dim))
	if u := b.p.Units.Angle; q.Dim == units.Angle && u.Symbol == "deg" {
		shown = doc.Math{Op: doc.Degrees, Of: []doc.Math{figures(u.In(v), b.p.Figures)}}
	}
	return answer{b, q, v, b.asked(q), shown, b.ownerOf(q.Of)}
}

func (b *builder) ownerOf(from problem.Source) (of owner) {
	switch from.Thing {
	case problem.ALine, problem.AJoint, problem.ALoad:
		of.name = b.p.NameOf(from)
		of.symbol, of.vec = b.symbolOf(from)
	case problem.ABody:
		of.name = b.p.Bodies[from.Index].Name
		sub := of.name
		if slices.ContainsFunc(b.p.Joints, func(j problem.Joint) bool { return j.Name == sub }) {
			sub += ",loads" // apart from the joint's reaction
		}
		of.symbol, of.vec = subscripted("R", sub), vector("R", words(sub))
	default:
		return of
	}
	of.force, of.moment, _ = b.s.ForceOf(from) // 0 where it has no single value
	return of
}

// Letters of results, with the name of what they are of as a subscript.
var (
	letters     = map[problem.QueryKind]string{problem.AskLength: "L", problem.AskStretch: "δ", problem.AskUnit: "u", problem.AskAngle: "θ", problem.AskComponent: "F"}
	partLetters = map[problem.Part]string{problem.At: "x", problem.PlaneAngle: "θ", problem.Alpha: "α", problem.Beta: "β", problem.Gamma: "γ"}
)

// asked is the symbol of a result: T1, T1x, |F_T1|, α with the name of the force.
func (b *builder) asked(q problem.Query) doc.Math {
	of := b.ownerOf(q.Of)
	switch q.Kind {
	case problem.AskValue, problem.AskFriction:
		if q.Of.Thing == problem.AnUnknown {
			return b.unknown(q.Of.Index)
		}
		if q.Kind == problem.AskFriction {
			name, _, _ := b.frictionOf(&b.p.Joints[q.Of.Index])
			return name
		}
		return named(q.Name)
	case problem.AskMagnitude:
		return size(b.asked(*q.Inner))
	case problem.AskLength, problem.AskStretch:
		return subscripted(letters[q.Kind], of.name)
	case problem.AskUnit:
		return part(subscripted(letters[q.Kind], of.name), "xyz"[q.Part:q.Part+1])
	case problem.AskAngle, problem.AskComponent:
		return subscripted(letters[q.Kind], of.name+","+b.ownerOf(q.With).name)
	}
	spread := q.Of.Thing == problem.ALoad
	switch {
	case q.Part <= problem.Z:
		return part(of.symbol, "xyz"[q.Part:q.Part+1])
	case q.Part == problem.Size && spread:
		return of.symbol
	case q.Part == problem.Size:
		return size(of.vec)
	case q.Part == problem.At && spread:
		return distance(&b.p.Loads[q.Of.Index])
	case partLetters[q.Part] != "":
		return subscripted(partLetters[q.Part], of.name)
	}
	moment := subscripted("M", of.name)
	if q.Of.Thing == problem.ABody {
		moment = b.loadsMoment(q.Of.Index)
	}
	if b.p.Planar {
		return moment
	}
	return part(moment, "xyz"[q.Part-problem.MX:q.Part-problem.MX+1])
}

// is derives the result in one line.
func (r answer) is(of ...doc.Math) []doc.Block {
	return []doc.Block{aligned(r.equals(append(append([]doc.Math{r.name}, of...), r.shown)...))}
}

// derived is how a result follows from the unknowns or the loads; nothing of an unknown itself.
func (r answer) derived() []doc.Block {
	f, q := r.p.Units.Force, r.q
	l := r.lineOf(q)
	switch q.Kind {
	case problem.AskValue:
		tied := slices.ContainsFunc(r.ties, func(t *tie) bool { return t.by == q.Of })
		if l != nil && len(l.Magnitude.Terms) > 0 && !tied {
			return r.is(r.affine(l.Magnitude, f))
		}
	case problem.AskMagnitude:
		if v, err := r.s.Evaluate(*q.Inner); err == nil {
			inner := figures(r.p.Units.For(q.Dim).In(v), r.p.Figures)
			return append(r.answer(*q.Inner, v).derived(), r.is(size(inner))...)
		}
	case problem.AskStretch:
		if !l.Spring.Free {
			return r.is(sum(r.length(l.Length()), neg(r.length(l.Spring.Natural))))
		}
		tension, _ := r.s.Magnitude(q.Of.Index)
		return r.is(fraction(r.affine(l.Magnitude, f), symbol("k")), fraction(r.number(f.In(tension)), r.perLength(l.Spring.Stiffness)))
	case problem.AskLength:
		of := english.Each(l.Legs, func(leg problem.Leg) doc.Math { return r.length(leg.Length) })
		if len(of) > 1 {
			return r.is(sum(of...))
		}
	case problem.AskAngle, problem.AskComponent:
		return r.along()
	case problem.AskPart, problem.AskUnit:
		return r.partOf()
	}
	return nil
}

// lineOf is the line that a result is of; nil where it is of something else.
func (b *builder) lineOf(q problem.Query) *problem.Line {
	if q.Of.Thing != problem.ALine {
		return nil
	}
	return &b.p.Lines[q.Of.Index]
}

// directed is a vector with its symbol: the unit vector of a line, or a force with its magnitude.
type directed struct {
	symbol    doc.Math
	v         r3.Vec
	magnitude float64 // 0 of a unit vector
}

func (b *builder) directedBy(from problem.Source) directed {
	if from.Thing == problem.ALine && b.p.Lines[from.Index].Components == nil {
		if u, ok := b.p.Lines[from.Index].Direction(); ok {
			return directed{unitVec("u", words(b.p.Lines[from.Index].Name)), u, 0}
		}
	}
	of := b.ownerOf(from)
	v := cleaned(in(of.force, b.p.Units.Force))
	return directed{of.vec, v, r3.Norm(v)}
}

// along is the angle between two directions, by their scalar product, or the component of a
// force along another direction.
func (r answer) along() []doc.Block {
	first, other := r.directedBy(r.q.Of), r.directedBy(r.q.With)
	if r.q.Kind == problem.AskComponent {
		first = directed{vector("F", words(r.of.name)), in(r.of.force, r.p.Units.Force), 0}
	}
	var sizes, symbols []doc.Math
	for _, d := range []directed{first, other} {
		if d.magnitude > 0 {
			sizes, symbols = append(sizes, r.number(d.magnitude)), append(symbols, size(d.symbol))
		}
	}
	form, with := product(first.symbol, words("·"), other.symbol), r.dot(first.v, other.v, unsaid, unsaid)
	if len(sizes) > 0 {
		form, with = fraction(form, product(symbols...)), fraction(with, product(sizes...))
	}
	if r.q.Kind == problem.AskComponent {
		return r.is(form, with)
	}
	return []doc.Block{aligned(r.byCosine(form, with)...)}
}

// byCosine is cos α = .. = c and α = acos c.
func (r answer) byCosine(form, with doc.Math) []doc.Math {
	c := r.number(clean(math.Cos(r.v), 1))
	return []doc.Math{r.equals(function("cos", r.name), form, with, c), r.equals(r.name, function("acos", c), r.shown)}
}

// partOf is a part of a force: |R| with its root, a direction angle by its cosine, the
// angle in the plane by its tangent and quadrant, the place of its line of action.
func (r answer) partOf() []doc.Block {
	f, q := r.p.Units.Force, r.q
	w, total := cleaned(in(r.of.force, f)), size(r.of.vec)
	if q.Of.Thing == problem.ALoad {
		total = r.of.symbol
	}
	of := func(axis int) doc.Math { return part(r.of.symbol, "xyz"[axis:axis+1]) }
	var squares []doc.Math
	for axis := range components(w) {
		squares = append(squares, square(of(axis)))
	}
	magnitude := func(shown doc.Math) []doc.Math { // before angles once of each force
		key := keyOf(r.of.vec)
		if q.Of.Thing == problem.ALoad || len(squares) == 0 || q.Part != problem.Size && r.derivedSize[key] {
			return nil // that of a distributed load stands with its diagram
		}
		r.derivedSize[key] = true
		if l := r.lineOf(q); l != nil && l.Components == nil && len(l.Legs) == 1 {
			magnitude, _ := r.s.Magnitude(q.Of.Index)
			return []doc.Math{r.equals(total, size(r.of.symbol), size(r.number(f.In(magnitude))), shown)}
		}
		if len(squares) == 1 {
			return []doc.Math{r.equals(total, size(squares[0].Of[0]), r.norm(w, unsaid), shown)}
		}
		return []doc.Math{r.equals(total, root(sum(squares...)), r.norm(w, unsaid), shown)}
	}
	ratio := func(axis int) (form, with doc.Math) {
		return fraction(of(axis), total), fraction(r.number(xyz(w)[axis]), r.number(r3.Norm(w)))
	}
	switch {
	case q.Kind == problem.AskUnit && r.lineOf(q) != nil && len(r.lineOf(q).Legs) > 0: // it stands with the unit vectors
	case q.Kind == problem.AskUnit:
		return r.is(ratio(int(q.Part)))
	case q.Part == problem.Size:
		return formulas(magnitude(r.shown))
	case q.Part <= problem.Z:
		return r.component(int(q.Part))
	case q.Part >= problem.Alpha && q.Part <= problem.Gamma:
		return formulas(append(magnitude(measured(r.number(r3.Norm(w)), f)), r.byCosine(ratio(int(q.Part-problem.Alpha)))...))
	case q.Part == problem.PlaneAngle:
		return r.planeAngle(w, of(0), of(1))
	case q.Part == problem.At && q.Of.Thing == problem.ABody:
		m := r.loadsMoment(q.Of.Index)
		says := say("The line of action of the resultant crosses the x axis through "+r.p.Bodies[q.Of.Index].AboutName+" where the moment of ", of(1), " equals ", m, ":")
		return append([]doc.Block{says}, r.is(fraction(m, of(1)), fraction(r.number(r.of.moment.Z/f.Factor/r.p.Units.Length.Factor), r.number(w.Y)))...)
	}
	return nil
}

// component is a component of a force of known direction, T1 · 0.6, or of the normal force and the
// friction of a rough surface. Of loads it is the sum of a column of the table.
func (r answer) component(axis int) []doc.Block {
	var forces []directed
	switch q := r.q; {
	case q.Of.Thing == problem.ABody && len(r.s.X) > 0: // no table of the loads adds them up
		var terms []doc.Math
		for _, a := range r.acts[q.Of.Index] {
			switch x := xyz(in(a.Force.Const, r.p.Units.Force))[axis]; {
			case x > 0:
				terms = append(terms, r.number(x))
			case x < 0:
				terms = append(terms, neg(r.number(-x)))
			}
		}
		if len(terms) > 1 {
			return r.is(sum(terms...))
		}
		return nil
	case q.Of.Thing == problem.ALoad:
		d := &r.p.Loads[q.Of.Index]
		forces = []directed{{r.of.symbol, d.Direction, d.Total}}
	case r.lineOf(q) != nil && len(r.lineOf(q).Legs) == 1 && r.lineOf(q).Components == nil:
		if magnitude, _ := r.s.Magnitude(q.Of.Index); magnitude != 0 {
			forces = []directed{{r.of.symbol, r3.Scale(1/magnitude, r.of.force), magnitude}}
		}
	case q.Of.Thing == problem.AJoint:
		j := &r.p.Joints[q.Of.Index]
		for k, t := range j.Forces.Terms {
			push := r.s.X[t.Unknown].Value
			if j.Impending && k == 0 {
				friction, along, mu := r.frictionOf(j)
				forces = []directed{{r.unknown(t.Unknown), j.Normal, push}, {friction, along, mu * push}}
			} else if len(j.Forces.Terms) == 1 {
				forces = []directed{{r.unknown(t.Unknown), t.D, push}}
			}
		}
	}
	var form, with []doc.Math
	for _, f := range forces {
		x := clean(xyz(f.v)[axis], 1)
		if x == 0 || f.magnitude == 0 {
			continue
		}
		value, number := r.number(r.p.Units.Force.In(f.magnitude)), r.number(x)
		form = append(form, times(number, f.symbol))
		if len(forces) == 1 {
			with = append(with, product(paren(number), paren(value)))
		} else if x == 1 {
			with = append(with, value)
		} else {
			with = append(with, times(number, grouped(value)))
		}
	}
	if len(form) == 0 {
		return nil
	}
	return r.is(sum(form...), sum(with...))
}

// quadrants say how an angle θ follows from the acute one: θ = full ± φ.
var quadrants = []struct {
	name       string
	full, sign float64
}{{"first", 0, 1}, {"second", math.Pi, -1}, {"third", math.Pi, 1}, {"fourth", 2 * math.Pi, -1}}

// planeAngle is θ = atan |Fy/Fx|, measured in the quadrant where the force points.
func (r answer) planeAngle(w r3.Vec, x, y doc.Math) []doc.Block {
	if isAxis(w) {
		return []doc.Block{say("The force points along "+problem.Axis(w)+", so ", equal(r.name, r.shown), ".")}
	}
	acute, phi := symbol("φ"), math.Atan(math.Abs(w.Y/w.X))
	shown := r.degrees(phi, r.p.Figures+1)
	quadrant := quadrants[int(2*r.v/math.Pi)%len(quadrants)]
	turns := []doc.Math{acute}
	if quadrant.full > 0 {
		whole := r.degrees(quadrant.full, wholeDigits)
		turns = []doc.Math{sum(whole, signed(quadrant.sign, acute)), sum(whole, signed(quadrant.sign, shown))}
	}
	compared := func(m doc.Math, v float64) doc.Math {
		return relation(map[bool]string{true: "<", false: ">"}[v < 0], m, exactly(0))
	}
	tangent := fraction(r.number(math.Abs(w.Y)), r.number(math.Abs(w.X)))
	return append([]doc.Block{aligned(r.equals(acute, function("atan", size(fraction(y, x))), function("atan", tangent), shown)),
		say(compared(x, w.X), " and ", compared(y, w.Y), ", so the force points into the "+quadrant.name+" quadrant:")}, r.is(turns...)...)
}

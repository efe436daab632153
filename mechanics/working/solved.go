package working

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/handsolve"
	"trivet/mechanics/origin"
	"trivet/mechanics/problem"
	english "trivet/mechanics/say"
	"trivet/mechanics/statics"
	"trivet/units"
)

// unitOf is the sheet's unit of an unknown.
func (b *builder) unitOf(j int) units.Unit { return b.p.Units.For(b.p.Unknowns[j].Dim) }

func (b *builder) value(j int) doc.Math {
	return equal(b.unknown(j), traced(origin.Value(b.s, j), b.result(b.s.X[j].Value, b.unitOf(j))))
}

// solved is the solution of the system, where the solution by hand has not found all that
// is asked: the other unknowns that have one value.
func (b *builder) solved(hand handsolve.Order) {
	if b.s.Verdict == statics.NoEquilibrium || hand.Why == handsolve.NoneAsked {
		return
	}
	found := map[int]bool{}
	for i := range hand.Steps {
		for _, x := range hand.Steps[i].Finds {
			found[x.Symbol] = true
		}
	}
	var of []doc.Math
	some := false
	for j := range b.s.X {
		if b.s.X[j].Fixed && !found[j] && b.wanted(j) {
			of = append(of, b.value(j))
		}
		some = some || found[j]
	}
	if len(of) == 0 {
		return
	}
	says := "Solved together, the equations give"
	switch {
	case some:
		says = "The other equations give"
	case !b.fixed():
		says = "Only some of the unknowns have one value"
	case len(b.s.System.Rows) > len(b.s.X):
		says = "Of the " + english.Count(len(b.s.System.Rows), "equation") + ", " + english.Number(b.s.Rank) + " are independent; solved together, they give"
		if b.s.Rank == 1 {
			says = "Of the " + english.Count(len(b.s.System.Rows), "equation") + ", one is independent; it gives"
		}
	}
	b.matrix()
	b.step(Solve, "Solution", Subject{}, say(says+":"), aligned(of...))
}

// wanted tells that an unknown is asked for, or that nothing is asked by its name.
func (b *builder) wanted(j int) bool {
	asked := false
	for k := range b.p.Asked {
		q := &b.p.Asked[k]
		switch {
		case !b.dependsOnSolution(*q):
			continue
		case q.Kind != problem.AskUnknown || q.Unknown < 0:
			return true // it may need any
		}
		asked = asked || q.Unknown == j
	}
	return asked || len(b.p.Asked) == 0
}

// follow are the values of tied forces: F = μ N with the number of N.
func (b *builder) follow() {
	if b.s.Verdict == statics.NoEquilibrium || len(b.ties) == 0 {
		return
	}
	f := b.p.Units.Force
	var of []doc.Math
	var about Subject
	for k := range b.ties {
		t := &b.ties[k]
		value, fixed := b.tieValue(t)
		var terms []doc.Math
		for _, x := range t.is.Terms {
			u := b.unitOf(x.Unknown)
			terms = append(terms, times(traced(b.tieFrom(t), b.number(x.Coef*u.Factor/f.Factor)), grouped(traced(origin.Value(b.s, x.Unknown), b.number(u.In(b.s.X[x.Unknown].Value))))))
		}
		if !fixed {
			continue
		}
		if t.is.Const != 0 {
			terms = append(terms, b.number(f.In(t.is.Const)))
		}
		form := []doc.Math{t.name, b.affine(t.is, f)}
		switch {
		case b.ofBelt(t): // whose relation stands with the belt
			form = []doc.Math{t.name, sum(terms...)}
		case hasNumber(form[1]):
			form = append(form, sum(terms...))
		}
		of = append(of, traced(b.tieFrom(t), b.equals(append(form, traced(origin.Phrase("%[1]s, computed with the values found", b.tiedForce(t)), b.result(value, f)))...)))
		if t.joint >= 0 {
			about.Joints = append(about.Joints, t.joint)
		} else {
			about.Lines = append(about.Lines, t.line)
		}
	}
	if len(of) > 0 {
		title := "Friction"
		if len(about.Lines) > 0 {
			title = "Forces that follow from others"
		}
		b.step(Friction, title, about, aligned(of...))
	}
}

// tieValue is a tied force, N; fixed is false where an unknown of it has no single value.
func (b *builder) tieValue(t *tie) (value float64, fixed bool) {
	value, fixed = t.is.Const, true
	for _, x := range t.is.Terms {
		value += x.Coef * b.s.X[x.Unknown].Value
		fixed = fixed && b.s.X[x.Unknown].Fixed
	}
	return value, fixed
}

// senses says what the signs mean.
func (b *builder) senses() {
	if b.s.Verdict == statics.NoEquilibrium {
		return
	}
	groups := map[string][]doc.Math{}
	var order []string
	for j := range b.s.X {
		if !b.s.X[j].Fixed || !b.wanted(j) {
			continue
		}
		says := b.senseOf(j)
		if _, ok := groups[says]; !ok {
			order = append(order, says)
		}
		groups[says] = append(groups[says], b.unknown(j))
	}
	var body []doc.Block
	for _, says := range order {
		body = append(body, say(list(groups[says]), " "+english.Plural(len(groups[says]), "is")+" "+says+"."))
	}
	b.step(Senses, "What the signs mean", Subject{}, body...)
}

// senseOf is what the sign of an unknown means.
func (b *builder) senseOf(j int) string {
	v, u := b.s.X[j].Value, &b.p.Unknowns[j]
	positive, negative, only := "", "", ""
	switch {
	case u.Own:
		info := b.p.Lines[u.Line].Kind.Info()
		positive, negative = info.Positive, info.Negative
		switch info.Sense {
		case problem.PullOnly, problem.PushOnly, problem.PressOnly:
			only = info.Name
		}
	case u.Joint >= 0 && b.p.Joints[u.Joint].Kind.Info().PushOnly && b.p.Joints[u.Joint].Forces[0].Unknown == j:
		positive, negative, only = "push", "pull", b.p.Joints[u.Joint].Words()
	}
	switch {
	case v == 0:
		return "zero"
	case v > 0 && positive == "":
		return "positive, in the sense assumed"
	case v > 0:
		return "positive: " + positive
	case negative == "":
		return "negative, opposite to the sense assumed"
	case only != "":
		return "negative: " + negative + ", which a " + only + " cannot exert"
	}
	return "negative, opposite to the sense assumed: " + negative
}

// friction holds the friction that is needed against what is available, for each surface
// where slip does not impend, and gives the conclusions.
func (b *builder) friction() (conclusions []doc.Block) {
	f := b.p.Units.Force
	for i := range b.p.Joints {
		j := &b.p.Joints[i]
		if !j.HasFriction || j.Impending || len(j.Forces) < 2 || b.s.Verdict == statics.NoEquilibrium {
			continue
		}
		k := slices.IndexFunc(b.s.Checks, func(c statics.Check) bool { return c.Kind == statics.CheckFriction && c.Joint == i })
		if k < 0 || slices.ContainsFunc(j.Forces, func(t problem.ActTerm) bool { return !b.s.X[t.Unknown].Fixed }) {
			continue
		}
		c := &b.s.Checks[k]
		normal, at := j.Forces[0].Unknown, leafed(named(j.Name))
		needed := doc.Math{Op: doc.Symbol, Text: "F", Of: []doc.Math{at}}
		available := doc.Math{Op: doc.Symbol, Text: "F", Of: []doc.Math{row(at, words(",max"))}}
		form := []doc.Math{needed}
		if len(j.Forces) == 2 {
			form = append(form, size(b.unknown(j.Forces[1].Unknown)))
		} else {
			var of, with []doc.Math
			for _, t := range j.Forces[1:] {
				of, with = append(of, square(b.unknown(t.Unknown))), append(with, square(paren(traced(origin.Value(b.s, t.Unknown), b.number(f.In(b.s.X[t.Unknown].Value))))))
			}
			form = append(form, root(sum(of...)), root(sum(with...)))
		}
		value := func(x float64) doc.Math { return traced(origin.Check(b.s, k), b.result(x, f)) }
		push := b.s.X[normal].Value
		relation, holds, conclusion := "≤", "the friction is sufficient", "does not slip"
		if !c.OK {
			relation, holds, conclusion = ">", "the friction is not sufficient", "slips"
		}
		name := b.bodyWords(j.First) + " " + conclusion + " at " + b.p.Points[j.Point].Name
		b.step(Friction, "Friction at "+b.p.Points[j.Point].Name, Subject{Joints: []int{i}, Bodies: []int{j.First}},
			say("Friction needed for equilibrium, and the maximum available:"),
			aligned(b.equals(append(form, value(c.Value))...),
				b.equals(available, product(letter("μ"), b.unknown(normal)), product(traced(origin.Phrase("μ at %[1]s, the coefficient of static friction, from its cell", j.Name), b.number(j.Friction)), grouped(traced(origin.Value(b.s, normal), b.number(f.In(push))))), value(j.Friction*push))),
			say(doc.Math{Op: doc.Relate, Text: relation, Of: []doc.Math{needed, available}}, ", so "+holds+"."))
		conclusions = append(conclusions, boxed(row(doc.Math{Op: doc.Relate, Text: relation, Of: []doc.Math{value(c.Value), value(j.Friction * push)}}, words(", so "+name))))
	}
	return conclusions
}

// resultants are the sums of the known forces on each body, where nothing is unknown.
func (b *builder) resultants() {
	f, u := b.p.Units.Force, b.p.Units.For(units.Moment)
	for i := range b.p.CutFree() {
		force, moment := b.loadsOn(i)
		total := func(what string) axes {
			return func(axis int) doc.Origin { return origin.Phrase(what, b.p.Bodies[i].Name, "xyz"[axis:axis+1]) }
		}
		sumF, sumM := total("the sum of the %[2]s components of the known forces on %[1]s"), total("the sum of the %[2]s components of the known moments on %[1]s")
		name := vector("R", leafed(named(b.p.Bodies[i].Name)))
		body := []doc.Block{say("The known forces, component by component:")}
		if t := b.sums(i, true); t != nil {
			body = append(body, t)
		}
		body = append(body, formula(equal(name, bigSum(doc.Math{Op: doc.Vec, Text: "F"}), measured(bracketed(b.along(in(force, f), sumF)), f))))
		if !b.p.Bodies[i].Particle {
			if b.p.Planar {
				body = append(body, formula(equal(b.loadsMoment(i), bigSum(letter("M")), measured(traced(sumM(2), b.number(u.In(moment.Z))), u))))
			} else {
				body = append(body, formula(equal(vector("M", b.loadsMoment(i).Of[0]), bigSum(paren(cross(doc.Math{Op: doc.Vec, Text: "r"}, doc.Math{Op: doc.Vec, Text: "F"}))), measured(bracketed(b.along(in(moment, u), sumM)), u))))
			}
		}
		b.step(Equations, "Resultant of the known forces on "+b.bodyWords(i), Subject{Bodies: []int{i}}, body...)
	}
}

// loadsMoment is the symbol of the moment of a body's known forces about its point: where
// there are unknowns, apart from that of a fixed support there.
func (b *builder) loadsMoment(body int) doc.Math {
	about := b.p.Bodies[body].AboutName
	if len(b.s.X) > 0 {
		about += ",loads"
	}
	return doc.Math{Op: doc.Symbol, Text: "M", Of: []doc.Math{words(about)}}
}

// loadsOn is the resultant of the known forces on a body, and its moment, without rounding.
func (b *builder) loadsOn(body int) (force, moment r3.Vec) {
	largest, turn := 0.0, 0.0
	for k := range b.acts[body] {
		a := &b.acts[body][k]
		m := r3.Add(r3.Cross(b.p.Arm(a.Act), a.Const), a.Couple)
		force, moment = r3.Add(force, a.Const), r3.Add(moment, m)
		largest, turn = max(largest, norm(a.Const)), max(turn, norm(m))
	}
	return cleanedBy(force, largest), cleanedBy(moment, turn)
}

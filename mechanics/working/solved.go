package working

import (
	"slices"

	"trivet/mechanics/doc"
	"trivet/mechanics/handsolve"
	"trivet/mechanics/names"
	"trivet/mechanics/origin"
	"trivet/mechanics/problem"
	english "trivet/mechanics/say"
	"trivet/mechanics/statics"
	"trivet/units"
)

// unitOf is the sheet's unit of an unknown.
func (b *builder) unitOf(j int) units.Unit {
	if j >= len(b.p.Unknowns) { // the force in a two-force member
		return b.p.Units.Force
	}
	return b.p.Units.For(b.p.Unknowns[j].Dim)
}

// solved is the solution of the system, where the solution by hand has not found all that
// is asked: the other unknowns that have one value.
func (b *builder) solved() {
	if b.s.Verdict == statics.NoEquilibrium || b.Hand.Why == handsolve.NoneAsked {
		return
	}
	var byHand []int
	for i := range b.Hand.Steps {
		byHand = append(byHand, foundIn(&b.Hand.Steps[i])...)
	}
	var of []doc.Math
	for j := range b.s.X {
		if b.s.X[j].Fixed && !slices.Contains(byHand, j) && b.wanted(j) {
			of = append(of, equal(b.unknown(j), traced(origin.Value(b.s, j), b.result(b.s.X[j].Value, b.unitOf(j)))))
		}
	}
	if len(of) == 0 {
		return
	}
	says, rows := "Solved together, the equations give", len(b.s.System.Rows)
	switch {
	case len(byHand) > 0:
		says = "The other equations give"
	case !b.fixed():
		says = "Only some of the unknowns have one value"
	case rows > len(b.s.X) && b.s.Rank == 1:
		says = "Of the " + english.Count(rows, "equation") + ", one is independent; it gives"
	case rows > len(b.s.X):
		says = "Of the " + english.Count(rows, "equation") + ", " + english.Number(b.s.Rank) + " are independent; solved together, they give"
	}
	b.matrix()
	b.step(Solve, "Solution", Subject{}, say(says+":"), aligned(of...))
}

// findWanted notes which unknowns are asked for by name, all where nothing is asked, and whether what
// is no unknown may need any.
func (b *builder) findWanted() {
	b.named = slices.Repeat([]bool{len(b.p.Asked) == 0}, len(b.s.X))
	for _, q := range b.p.Asked {
		if q.Kind == problem.AskValue && q.Of.Thing == problem.AnUnknown {
			b.named[q.Of.Index] = true
		} else {
			b.wantsAny = b.wantsAny || b.dependsOnSolution(q)
		}
	}
}

// wanted tells that an unknown is asked for.
func (b *builder) wanted(j int) bool { return b.named[j] || b.wantsAny }

// follow are the values of tied forces: F = μ N with the number of N.
func (b *builder) follow() {
	f := b.p.Units.Force
	var of []doc.Math
	var about Subject
	for _, t := range b.ties {
		value, fixed := b.tieValue(t)
		if !fixed || b.s.Verdict == statics.NoEquilibrium {
			continue
		}
		numbers := b.linear(t.is, f, func(j int) doc.Math { return grouped(b.valueOf(j)) })
		form := []doc.Math{t.name, b.affine(t.is, f)}
		switch {
		case t.belt: // whose relation stands with the belt
			form[1] = numbers
		case hasNumber(form[1]):
			form = append(form, numbers)
		}
		about.add(t.by)
		result := traced(origin.Phrase("%[1]s, computed with the values found", t.what), b.result(value, f))
		of = append(of, traced(t.from, b.equals(append(form, result)...)))
	}
	title := "Friction"
	if len(about.Lines) > 0 {
		title = "Forces that follow from others"
	}
	b.step(Friction, title, about, formulas(of)...)
}

// valueOf is the number found for an unknown.
func (b *builder) valueOf(j int) doc.Math {
	return traced(origin.Value(b.s, j), b.number(b.unitOf(j).In(b.s.X[j].Value)))
}

// tieValue is a tied force, N; fixed is false where an unknown of it has no single value.
func (b *builder) tieValue(t *tie) (value float64, fixed bool) {
	return t.is.Sum(func(j int) (float64, bool) { return b.s.X[j].Value, b.s.X[j].Fixed })
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
	body := english.Each(order, func(says string) doc.Block {
		return say(list(groups[says]), " "+english.Plural(len(groups[says]), "is")+" "+says+".")
	})
	b.step(Senses, "What the signs mean", Subject{}, body...)
}

// senseOf is what the sign of an unknown means.
func (b *builder) senseOf(j int) string {
	v, u := b.s.X[j].Value, &b.p.Unknowns[j]
	positive, negative, _ := names.SignWords(b.p, j)
	only := "" // what can act one way alone
	if u.Own && b.p.Lines[u.Line].Kind.Info().Sense >= problem.PullOnly {
		only = b.p.Lines[u.Line].Kind.Info().Name
	} else if u.Joint >= 0 && positive != "" {
		only = b.p.Joints[u.Joint].Words()
	}
	kind := problem.Kind(-1)
	if u.Own {
		kind = b.p.Lines[u.Line].Kind
	}
	switch {
	case v == 0:
		return "zero"
	case kind == problem.Force && v > 0:
		return "positive, in the direction assumed"
	case kind == problem.Force:
		return "negative, opposite to the direction assumed"
	case kind == problem.Weight && v > 0:
		return "positive, downward"
	case kind == problem.Weight:
		return "negative, upward"
	case v > 0 && positive == "":
		return "positive, in the sense assumed"
	case v > 0 && positive == "push":
		return "positive, in the sense of a push"
	case v > 0:
		return "positive, in " + positive
	case only != "":
		return "negative: " + negative + ", which a " + only + " cannot exert"
	case negative != "":
		return "negative, opposite to the sense assumed: " + negative
	}
	return "negative, opposite to the sense assumed"
}

// friction holds the friction that is needed against what is available, for each surface
// where slip does not impend, and gives the conclusions.
func (b *builder) friction() (conclusions []doc.Block) {
	for k, c := range b.s.Checks {
		if c.Kind != statics.CheckFriction || b.s.Verdict == statics.NoEquilibrium {
			continue
		}
		j := &b.p.Joints[c.Joint]
		if j.Impending || slices.ContainsFunc(j.Forces.Terms, func(t problem.ActTerm) bool { return !b.s.X[t.Unknown].Fixed }) {
			continue
		}
		value := func(x float64) doc.Math { return traced(origin.Check(b.s, k), b.result(x, b.p.Units.Force)) }
		normal, mu := j.Forces.Terms[0].Unknown, traced(muFrom(j), b.number(j.Friction))
		needed, available := subscripted("F", j.Name), symbol("F", row(words(j.Name), words(",max")))
		var squares, numbers []doc.Math
		for _, t := range j.Forces.Terms[1:] {
			squares, numbers = append(squares, square(b.unknown(t.Unknown))), append(numbers, square(paren(b.valueOf(t.Unknown))))
		}
		form := []doc.Math{needed, size(b.unknown(j.Forces.Terms[1].Unknown)), value(c.Value)}
		if len(squares) > 1 {
			form = []doc.Math{needed, root(sum(squares...)), root(sum(numbers...)), value(c.Value)}
		}
		most := value(j.Friction * b.s.X[normal].Value)
		sign, holds, conclusion := "≤", "the friction is sufficient", "does not slip"
		if !c.OK {
			sign, holds, conclusion = ">", "the friction is not sufficient", "slips"
		}
		at := b.p.Points[j.Point].Name
		b.step(Friction, "Friction at "+at, Subject{Joints: []int{c.Joint}, Bodies: []int{j.First}},
			say("Friction needed for equilibrium, and the maximum available, with ", symbol("μ"), " the coefficient of static friction:"),
			aligned(b.equals(form...), b.equals(available, product(symbol("μ"), b.unknown(normal)), product(mu, grouped(b.valueOf(normal))), most)),
			say(relation(sign, needed, available), ", so "+holds+"."))
		conclusions = append(conclusions, &doc.Boxed{Math: row(relation(sign, value(c.Value), most), words(", so "+b.bodyWords(j.First)+" "+conclusion+" at "+at))})
	}
	return conclusions
}

// resultants are the sums of the known forces on each body, where nothing is unknown.
func (b *builder) resultants() {
	f, u := b.p.Units.Force, b.p.Units.For(units.Moment)
	for i := range b.p.CutFree() {
		if b.single(i) && len(b.p.Asked) > 0 && !slices.ContainsFunc(b.p.Asked, func(q problem.Query) bool { return q.Of == problem.Source{Thing: problem.ABody, Index: i} }) {
			continue // the force is its own resultant
		}
		force, moment, _ := b.s.ForceOf(problem.Source{Thing: problem.ABody, Index: i})
		name := b.p.Bodies[i].Name
		total := func(what string) axes {
			return byAxis("the sum of the %[1]s components of the known "+what+" on %[2]s", name)
		}
		body := []doc.Block{say("The known forces, component by component:")}
		if t := b.sums(i, true); t != nil {
			body = append(body, t)
		}
		body = append(body, aligned(equal(vector("R", words(name)), bigSum(vector("F")), measured(bracketed(b.along(in(force, f), total("forces"))), f))))
		turns := equal(vector("M", b.loadsMoment(i).Of[0]), bigSum(paren(cross(vector("r"), vector("F")))), measured(bracketed(b.along(in(moment, u), total("moments"))), u))
		if b.p.Planar {
			turns = equal(b.loadsMoment(i), bigSum(symbol("M")), measured(traced(total("moments")(2), b.number(u.In(moment.Z))), u))
		}
		if !b.p.Bodies[i].Particle {
			body = append(body, aligned(turns))
		}
		b.step(Equations, "Resultant of the known forces on "+b.bodyWords(i), Subject{Bodies: []int{i}}, body...)
	}
}

// single tells that one force or couple alone acts on a body.
func (b *builder) single(body int) bool { return len(b.acts[body]) == 1 }

// loadsMoment is the symbol of the moment of a body's known forces about its point: where
// there are unknowns, apart from that of a fixed support there.
func (b *builder) loadsMoment(body int) doc.Math {
	about := b.p.Bodies[body].AboutName
	if len(b.s.X) > 0 {
		about += ",loads"
	}
	return subscripted("M", about)
}

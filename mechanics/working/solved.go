package working

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/units"
)

// unitOf is the sheet's unit of an unknown.
func (b *builder) unitOf(j int) units.Unit { return b.p.Units.For(b.p.Unknowns[j].Dim) }

func (b *builder) value(j int) doc.Math {
	return equal(b.unknown(j), b.result(b.s.X[j].Value, b.unitOf(j)))
}

// solved is the solution of the system: the unknowns that have one value.
func (b *builder) solved() {
	if b.s.Verdict == statics.NoEquilibrium {
		return
	}
	var of []doc.Math
	for j := range b.s.X {
		if b.s.X[j].Fixed {
			of = append(of, b.value(j))
		}
	}
	if len(of) == 0 {
		return
	}
	says := "Solved together, the equations give"
	switch {
	case len(of) < len(b.s.X):
		says = "Of these unknowns some have one value all the same"
	case len(b.s.System.Rows) > len(b.s.X):
		says = fmt.Sprintf("Of the %s %d are independent, and solved together they give", count(len(b.s.System.Rows), "equation"), b.s.Rank)
	}
	b.step(Solve, "Solution", Subject{}, say(says+":"), aligned(of...))
}

// senses says what the signs mean.
func (b *builder) senses() {
	if b.s.Verdict == statics.NoEquilibrium {
		return
	}
	groups := map[string][]doc.Math{}
	var order []string
	put := func(says string, m doc.Math) {
		if _, ok := groups[says]; !ok {
			order = append(order, says)
		}
		groups[says] = append(groups[says], m)
	}
	for j := range b.s.X {
		if b.s.X[j].Fixed {
			put(b.senseOf(j), b.unknown(j))
		}
	}
	var body []doc.Block
	for _, says := range order {
		of := groups[says]
		verb := " is "
		if len(of) > 1 {
			verb = " are "
		}
		body = append(body, say(list(of), verb+says+"."))
	}
	b.step(Senses, "What the signs mean", Subject{}, body...)
}

func (b *builder) senseOf(j int) string {
	v, u := b.s.X[j].Value, &b.p.Unknowns[j]
	if v == 0 {
		return "zero"
	}
	sign := "positive"
	if v < 0 {
		sign = "negative"
	}
	switch {
	case u.Own:
		info := b.p.Lines[u.Line].Kind.Info()
		word := info.Positive
		if v < 0 {
			word = info.Negative
		}
		switch info.Sense {
		case problem.PullOnly, problem.PushOnly, problem.PressOnly:
			if v < 0 {
				return "negative: " + word + ", which a " + info.Name + " cannot take"
			}
			return "positive: " + word
		case problem.Tension:
			if v < 0 {
				return "negative, the assumed sense is reversed: " + word
			}
			return "positive, as assumed: " + word
		}
		if v < 0 {
			return "negative, the assumed sense is reversed: " + word
		}
		return "positive, as assumed: " + word
	case u.Joint >= 0 && b.p.Joints[u.Joint].Kind.Info().PushOnly && b.p.Joints[u.Joint].Forces[0].Unknown == j:
		if v < 0 {
			return "negative: pull, which a " + kindWords(&b.p.Joints[u.Joint]) + " cannot take"
		}
		return "positive: push"
	}
	if v < 0 {
		return sign + ": the assumed sense is reversed"
	}
	return sign + ": as assumed"
}

// resultants are the sums of the known forces on each body, where nothing is unknown.
func (b *builder) resultants() {
	f, u := b.p.Units.Force, b.p.Units.For(units.Moment)
	for i := range b.p.CutFree() {
		var force, moment r3.Vec
		most, turn := 0.0, 0.0
		for k := range b.acts[i] {
			a := &b.acts[i][k]
			m := r3.Add(r3.Cross(b.p.Arm(a.Act), a.Const), a.Couple)
			force, moment = r3.Add(force, a.Const), r3.Add(moment, m)
			most, turn = max(most, norm(a.Const)), max(turn, norm(m))
		}
		force, moment = cleanedBy(force, most), cleanedBy(moment, turn)
		name := vector("R", leafed(named(b.p.Bodies[i].Name)))
		show := func(x float64) doc.Math { return short(x, b.p.Figures+1) }
		body := []doc.Block{say("The known forces on " + b.p.Bodies[i].Name + ", added component by component:")}
		if t := b.sums(i); t != nil {
			body = append(body, t)
		}
		in := func(v r3.Vec, u units.Unit) r3.Vec { return r3.Vec{X: u.In(v.X), Y: u.In(v.Y), Z: u.In(v.Z)} }
		body = append(body, formula(equal(name, bigSum(doc.Math{Op: doc.Vec, Text: "F"}), measured(bracketed(b.along(in(force, f), show)), f))))
		if force != (r3.Vec{}) {
			body = append(body, formula(equal(size(name), b.norm(in(force, f), show), b.result(norm(force), f))))
		}
		if !b.p.Bodies[i].Particle {
			about := vector("M", leafed(named(b.p.Bodies[i].AboutName)))
			body = append(body, formula(equal(about, bigSum(cross(doc.Math{Op: doc.Vec, Text: "r"}, doc.Math{Op: doc.Vec, Text: "F"})), measured(bracketed(b.along(in(moment, u), show)), u))))
		}
		b.step(Equations, "Resultant on "+b.p.Bodies[i].Name, Subject{Bodies: []int{i}}, body...)
	}
}

package working

import (
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/units"
)

// spreads are the resultants of the distributed loads, and where they act.
func (b *builder) spreads() {
	for i := range b.p.Loads {
		d := &b.p.Loads[i]
		if !d.OK || len(d.Acts) == 0 {
			continue
		}
		f, l := b.p.Units.Force, b.p.Units.Length
		about := Subject{Loads: []int{i}, Bodies: []int{d.Body}, Points: []int{d.From, d.To}}
		name := Math{Op: Symbol, Text: "R", Of: []Math{leafed(named(d.Name))}}
		from, to := b.p.Points[d.From].Name, b.p.Points[d.To].Name
		body := []Block{say("The load "+d.Name+", spread over ", measured(b.length(d.Length), l), " from "+from+" to "+to+
			", has the same effect on the body as one force, its resultant: the area under it, at the area's centroid."),
			formula(equal(name, measured(b.force(d.Total), f)))}
		if d.Total != 0 {
			body = append(body, say("It acts ", measured(b.length(d.Distance), l), " from "+from+", at ", measured(b.tuple(d.At, b.length), l), "."))
		}
		b.step(Vector, "Resultant of "+d.Name, about, body...)
	}
}

// springs are the forces of springs whose stretch is known: k (length - natural).
func (b *builder) springs() {
	f := b.p.Units.Force
	k := b.p.Units.For(units.LineLoad)
	for i := range b.p.Lines {
		s := b.p.Lines[i].Spring
		if s == nil || s.Free || b.p.Lines[i].Length() == 0 || len(b.p.Lines[i].Magnitude.Terms) > 0 {
			continue
		}
		name := b.p.Lines[i].Name
		stiffness := short(k.In(s.Stiffness), b.p.Figures+1)
		b.step(Vector, "Force of the spring "+name, Subject{Lines: []int{i}},
			say("A spring pulls with its stiffness times its stretch, ", measured(stiffness, k), " times what its length exceeds the natural length by:"),
			formula(equal(named(name), product(stiffness, paren(sum(b.length(b.p.Lines[i].Length()), neg(b.length(s.Natural))))),
				measured(b.force(b.p.Lines[i].Magnitude.Const), f))))
	}
}

// vectors are the forces as vectors.
func (b *builder) vectors() {
	b.springs()
	type one struct {
		title string
		m     Math
		about Subject
	}
	var all []one
	for i := range b.acts {
		for k := range b.acts[i] {
			a := &b.acts[i][k]
			if !a.isForce() || a.sign {
				continue // the far end of a line or joint takes the opposite
			}
			title := "Force vector of "
			switch {
			case a.line >= 0 && len(b.p.Lines[a.line].Path) > 2:
				title = "Force of " + b.p.Lines[a.line].Name + " at " + a.at
			case a.line >= 0:
				title += b.p.Lines[a.line].Name
			case a.joint >= 0:
				title = "Reaction at " + b.p.Joints[a.joint].Name
			case len(a.subject.Loads) > 0:
				title += b.p.Loads[a.subject.Loads[0]].Name
			default:
				title = "Weight of " + b.p.Bodies[i].Name
			}
			all = append(all, one{title, b.forceVector(a), a.subject})
		}
	}
	note := b.opposites()
	if len(all) <= many {
		for k, x := range all {
			body := []Block{formula(x.m)}
			if k == len(all)-1 {
				body = append(body, note...)
			}
			b.step(Vector, x.title, x.about, body...)
		}
		return
	}
	var of []Math
	var about Subject
	for _, x := range all {
		of = append(of, x.m)
		about.Lines, about.Joints = append(about.Lines, x.about.Lines...), append(about.Joints, x.about.Joints...)
	}
	b.step(Vector, "Force vectors", about, append([]Block{aligned(of...)}, note...)...)
}

// opposites says once that the far ends take the opposite forces.
func (b *builder) opposites() []Block {
	for i := range b.acts {
		for k := range b.acts[i] {
			if b.acts[i][k].sign {
				return []Block{say("The body at the other end of a line or a joint takes the opposite force: action and reaction.")}
			}
		}
	}
	return nil
}

// forceVector is F = F u = F (..), known or unknown.
func (b *builder) forceVector(a *act) Math {
	f := b.p.Units.Force
	of := []Math{a.vec}
	if a.line >= 0 {
		if m, ok := b.magnitudeTimesUnit(a); ok {
			of = append(of, m)
		}
	}
	value := b.expression(a.Const, a.Terms, f)
	if a.known() {
		value = measured(bracketed(value), f)
	}
	return equal(append(of, value)...)
}

// magnitudeTimesUnit is T1 u, or -S u of a strut, or T (u1 - u2) over a pulley.
func (b *builder) magnitudeTimesUnit(a *act) (Math, bool) {
	l := &b.p.Lines[a.line]
	if len(l.Legs) == 0 || l.Magnitude.Const == 0 && len(l.Magnitude.Terms) == 0 {
		return Math{}, false
	}
	magnitude := b.affine(l.Magnitude, b.p.Units.Force)
	if len(l.Magnitude.Terms) == 0 {
		magnitude = named(l.Name)
	}
	var u []Math
	if len(l.Legs) == 1 {
		// the act's own direction says whether it is along u or against it
		d := a.Const
		if len(a.Terms) > 0 {
			d = r3.Scale(1/l.Magnitude.Terms[0].Coef, a.Terms[0].D)
		} else {
			d = r3.Scale(1/l.Magnitude.Const, d)
		}
		along := vectorUnit(named(l.Name))
		if r3.Dot(d, l.Legs[0].U) < 0 {
			return neg(product(grouped(magnitude), along)), true
		}
		return product(grouped(magnitude), along), true
	}
	names := b.stretchNames(a.line)
	for k, at := range l.Path {
		if at != a.Point {
			continue
		}
		if k < len(l.Legs) {
			u = append(u, vectorUnit(names[k]))
		}
		if k > 0 {
			u = append(u, neg(vectorUnit(names[k-1])))
		}
	}
	m := product(grouped(magnitude), grouped(sum(u...)))
	if l.Kind == problem.Strut {
		m = neg(m)
	}
	return m, len(u) > 0 && len(u) < 3 // a path that comes twice through a point acts there twice
}

func (b *builder) stretchNames(line int) []Math {
	var names []Math
	for _, s := range b.stretches() {
		if s.line == line {
			names = append(names, s.name)
		}
	}
	return names
}

// moments are r × F about each rigid body's point.
func (b *builder) moments() {
	for i := range b.p.Bodies {
		body := &b.p.Bodies[i]
		if body.Particle {
			continue
		}
		var through []Math
		var blocks []Block
		about := Subject{Bodies: []int{i}, Axis: &Axis{At: [3]float64(xyz(body.About))}} // a point: no direction
		for k := range b.acts[i] {
			a := &b.acts[i][k]
			about.Lines, about.Joints = append(about.Lines, a.subject.Lines...), append(about.Joints, a.subject.Joints...)
			about.Couples, about.Loads = append(about.Couples, a.subject.Couples...), append(about.Loads, a.subject.Loads...)
		}
		for k := range b.acts[i] {
			a := &b.acts[i][k]
			if a.isForce() {
				arm := r3.Sub(a.At, body.About)
				if norm(arm) == 0 {
					through = append(through, b.labels(a)...)
				} else if m, ok := b.momentOf(a, body, arm); ok {
					blocks = append(blocks, m...)
				} else {
					through = append(through, a.name)
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
			blocks = append([]Block{say(list(through), verb+body.AboutName+have+" no moment about it.")}, blocks...)
		}
		if len(blocks) > 0 {
			blocks = append([]Block{b.momentRule(body.AboutName)}, blocks...)
		}
		b.step(Moment, "Moments on "+body.Name+" about "+body.AboutName, about, blocks...)
	}
}

// momentRule says how a moment is formed.
func (b *builder) momentRule(about string) Block {
	r, f := Math{Op: Vec, Text: "r"}, Math{Op: Vec, Text: "F"}
	if b.p.Planar {
		x, y := letter("x"), letter("y")
		return say("A force at ", paren(x, y), " from "+about+" has the moment ",
			equal(letter("M"), sum(product(x, part(letter("F"), "y")), neg(product(y, part(letter("F"), "x"))))), ", counter-clockwise positive.")
	}
	return say("A force has the moment ", equal(Math{Op: Vec, Text: "M"}, cross(r, f)), ", with ", r, " from "+about+" to where it acts.")
}

// momentOf is M = r × F of one force; false where it has none about the point.
func (b *builder) momentOf(a *act, body *problem.Body, arm r3.Vec) ([]Block, bool) {
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
		parts := []Math{}
		if fy := b.component(a.Const, a.Terms, 1, f); x != 0 && !isZero(fy) {
			parts = append(parts, b.factor(x/l.Factor, fy))
		}
		if fx := b.component(a.Const, a.Terms, 0, f); y != 0 && !isZero(fx) {
			parts = append(parts, neg(b.factor(y/l.Factor, fx)))
		}
		value := b.component(known, terms, 2, u)
		m := []Math{name, sum(parts...)}
		if len(a.Terms) == 0 {
			value = measured(value, u)
		}
		return []Block{formula(equal(append(m, value)...))}, true
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
	det := Math{Op: Det, Of: []Math{top, arms, comps}}
	if len(b.acts[a.Body]) > many {
		return []Block{aligned(equal(name, cross(r, grouped(force)), value))}, true
	}
	return []Block{aligned(equal(name, cross(r, grouped(force)), det), equal(words(""), value))}, true
}

func (b *builder) momentName(a *act) Math {
	sub := leafed(a.name)
	if a.line >= 0 && len(b.p.Lines[a.line].Path) > 2 {
		sub = a.name.Of[0]
	}
	if b.p.Planar {
		return Math{Op: Symbol, Text: "M", Of: []Math{sub}}
	}
	return vector("M", sub)
}

// coupleOf is the moment of a couple, or of a joint that holds moments.
func (b *builder) coupleOf(a *act) Block {
	u := b.p.Units.For(units.Moment)
	if !a.couple && b.p.Planar {
		return say("The "+a.what+" at "+a.at+" holds a moment too: ", b.component(a.Couple, a.CoupleTerms, 2, u), ".")
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
	return say("The "+a.what+" at "+a.at+" holds a moment too: ", equal(name, value), ".")
}

// heldName is the symbol of the moment that a joint holds, beside that of its force.
func (b *builder) heldName(a *act) Math { return vector("C", leafed(a.name)) }

func (b *builder) isPoint(name string) bool {
	for i := range b.p.Points {
		if b.p.Points[i].Name == name {
			return true
		}
	}
	return false
}

// factor is x · F with F in parentheses where it is a sum or negative.
func (b *builder) factor(x float64, f Math) Math {
	return product(paren(short(x, b.p.Figures+1)), paren(f))
}

func isZero(m Math) bool { return m.Op == Number && m.Num == 0 }

func cleanedBy(v r3.Vec, size float64) r3.Vec {
	return r3.Vec{X: clean(v.X, size), Y: clean(v.Y, size), Z: clean(v.Z, size)}
}

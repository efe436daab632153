package working

import (
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/origin"
	"trivet/mechanics/problem"
	"trivet/units"
)

// act is a force or a couple on a body, with its symbols and where it is from.
type act struct {
	*problem.Act
	name    doc.Math // T1, A, W
	sign    bool     // the name's force acts the other way here: the far end of a cable
	vec     doc.Math // the vector's symbol
	what    string   // "cable", "pin"
	at      string   // the place in words
	subject Subject
	source  origin.Force // where its numbers come from
	split   bool         // it is one part of what the source exerts
	line    int          // index in Lines, or -1
	joint   int          // index in Joints, or -1
	couple  bool
	tie     int    // index in the builder's ties, or -1
	dir     r3.Vec // of a tied force: its direction here
}

// tie is a force that follows from unknowns, and has a symbol of its own beside them:
// friction where slip impends, a force that is typed as 0.3 N. Joint or line is -1.
type tie struct {
	name        doc.Math
	is          problem.Affine
	joint, line int
}

// share is what a symbol adds to a force or a couple: symbol·d.
type share struct {
	name doc.Math
	d    r3.Vec
	unit units.Unit

	unknown int // -1 of a tied force
}

func (b *builder) shares(terms []problem.ActTerm) []share {
	var of []share
	for _, t := range terms {
		of = append(of, share{b.unknown(t.Unknown), t.D, b.unitOf(t.Unknown), t.Unknown})
	}
	return of
}

// force is an act's force: its known part and the shares of symbols.
func (b *builder) force(a *act) (known r3.Vec, of []share) {
	if a.tie >= 0 {
		return r3.Vec{}, []share{{a.name, a.dir, b.p.Units.Force, -1}}
	}
	return a.Const, b.shares(a.Terms)
}

func (b *builder) coupleParts(a *act) (known r3.Vec, of []share) {
	return a.Couple, b.shares(a.CoupleTerms)
}

// momentParts are the moments of a force with an arm.
func momentParts(arm, known r3.Vec, of []share) (r3.Vec, []share) {
	known = cleanedBy(r3.Cross(arm, known), norm(arm)*norm(known))
	var out []share
	for _, s := range of {
		s.d = cleanedBy(r3.Cross(arm, s.d), norm(arm)*norm(s.d))
		out = append(out, s)
	}
	return known, out
}

func (a *act) isForce() bool { return a.Const != (r3.Vec{}) || len(a.Terms) > 0 }
func (a *act) isCouple() bool {
	return a.Couple != (r3.Vec{}) || len(a.CoupleTerms) > 0
}
func (a *act) known() bool { return len(a.Terms) == 0 && len(a.CoupleTerms) == 0 }

// collect gathers the acts on each body, in the order of the sheet.
func (b *builder) collect() {
	p := b.p
	b.acts = make([][]act, len(p.Bodies))
	sources := make([]int, len(p.Bodies))
	put := func(of *problem.Act, a act) {
		a.Act, a.at = of, b.place(of)
		a.subject.Bodies = []int{of.Body}
		a.source = origin.Force{Body: of.Body, Place: sources[of.Body]}
		if !a.split || a.tie < 0 { // the parts of a rough surface have one source
			sources[of.Body]++
		} else {
			a.source.Place--
		}
		b.acts[of.Body] = append(b.acts[of.Body], a)
	}
	for i := range p.Lines {
		l := &p.Lines[i]
		tied := -1
		if n := len(l.Magnitude.Terms); n > 0 && !b.own(i) && len(l.Path) < 3 && l.Magnitude.Terms[0].Coef != 0 {
			tied = len(b.ties)
			b.ties = append(b.ties, tie{named(l.Name), l.Magnitude, -1, i})
		}
		for k := range l.Acts {
			a := act{name: named(l.Name), vec: vector("F", named(l.Name)), what: l.Kind.String(), line: i, joint: -1, tie: tied, sign: k == 1, subject: Subject{Lines: []int{i}}}
			if len(l.Path) > 2 { // over pulleys each place has a force of its own
				sub := row(leafed(named(l.Name)), words(","), words(b.place(&l.Acts[k])))
				a.vec, a.name, a.sign = vector("F", sub), doc.Math{Op: doc.Symbol, Text: "F", Of: []doc.Math{sub}}, false
			}
			if tied >= 0 {
				a.dir = r3.Scale(1/l.Magnitude.Terms[0].Coef, l.Acts[k].Terms[0].D)
			}
			put(&l.Acts[k], a)
		}
	}
	for i := range p.Joints {
		j := &p.Joints[i]
		if j.Impending {
			b.ties = append(b.ties, tie{subscripted("F", j.Name),
				problem.Affine{Terms: []problem.Term{{Unknown: j.Forces[0].Unknown, Coef: j.Friction}}}, i, -1})
		}
		for k := range j.Acts {
			a := act{name: named(j.Name), vec: vector("R", named(j.Name)), what: j.Words(), line: -1, joint: i, tie: -1, sign: k == 1, subject: Subject{Joints: []int{i}}}
			if !j.Impending {
				put(&j.Acts[k], a)
				continue
			}
			normal, friction := j.Acts[k], j.Acts[k]
			push, drag := j.Normal, r3.Scale(-1, j.Slip)
			if k == 1 {
				push, drag = r3.Scale(-1, push), r3.Scale(-1, drag)
			}
			n := j.Forces[0].Unknown
			normal.Terms = []problem.ActTerm{{Unknown: n, D: push}}
			friction.Terms = []problem.ActTerm{{Unknown: n, D: r3.Scale(j.Friction, drag)}}
			friction.Couple, friction.CoupleTerms = r3.Vec{}, nil
			a.split = true
			a.what, a.name, a.vec = "normal force", b.unknown(n), vector("N", named(j.Name))
			put(&normal, a)
			a.what, a.tie, a.dir, a.name, a.vec = "friction", len(b.ties)-1, drag, b.ties[len(b.ties)-1].name, vector("F", named(j.Name))
			put(&friction, a)
		}
	}
	for i := range p.Couples {
		for k := range p.Couples[i].Acts {
			put(&p.Couples[i].Acts[k], act{name: named(p.Couples[i].Name), vec: vector("C", named(p.Couples[i].Name)), what: "couple",
				line: -1, joint: -1, tie: -1, couple: true, subject: Subject{Couples: []int{i}}})
		}
	}
	for i := range p.Loads {
		for k := range p.Loads[i].Acts {
			a := act{name: resultant(&p.Loads[i]), vec: vector("R", named(p.Loads[i].Name)), what: "distributed load", line: -1, joint: -1, tie: -1, subject: Subject{Loads: []int{i}}}
			if of := &p.Loads[i].Acts[k]; of.Couple != (r3.Vec{}) { // a load without a resultant
				a.name, a.vec, a.couple = loadCouple(&p.Loads[i]), vector("C", named(p.Loads[i].Name)), true
			}
			put(&p.Loads[i].Acts[k], a)
		}
	}
	for i := range p.Bodies {
		for k := range p.Bodies[i].Acts {
			put(&p.Bodies[i].Acts[k], act{name: subscripted("W", p.Bodies[i].Name), vec: vector("W", named(p.Bodies[i].Name)), what: "weight", line: -1, joint: -1, tie: -1})
		}
	}
}

// subscripted is a letter with a name of the sheet as its subscript.
func subscripted(letter, name string) doc.Math {
	return doc.Math{Op: doc.Symbol, Text: letter, Of: []doc.Math{leafed(named(name))}}
}

// resultant is the symbol of a distributed load's resultant.
func resultant(d *problem.Distributed) doc.Math { return subscripted("R", d.Name) }

// loadCouple is the symbol of the couple that a distributed load without a resultant exerts.
func loadCouple(d *problem.Distributed) doc.Math {
	return subscripted("C", d.Name)
}

// leafed is a symbol as a subscript of another: in one piece.
func leafed(m doc.Math) doc.Math {
	if m.Name != "" {
		return words(m.Name)
	}
	if len(m.Of) == 0 {
		return words(m.Text)
	}
	return words(m.Text + m.Of[0].Text)
}

// place names where an act is: of a couple anywhere, else its point, a point at the same place, or the coordinates.
func (b *builder) place(a *problem.Act) string {
	if a.Const == (r3.Vec{}) && len(a.Terms) == 0 && (a.Couple != (r3.Vec{}) || len(a.CoupleTerms) > 0) {
		return "anywhere"
	}
	if a.Point >= 0 {
		return b.p.Points[a.Point].Name
	}
	for i := range b.p.Points {
		if b.p.Points[i].OK && b.p.Points[i].At == a.At {
			return b.p.Points[i].Name
		}
	}
	text := ""
	for k, x := range xyz(cleaned(a.At))[:b.axes] {
		if k > 0 {
			text += ", "
		}
		m := b.length(x)
		if m.Op == doc.Neg {
			text += "-" + m.Of[0].Text
		} else {
			text += m.Text
		}
	}
	return "(" + text + ") " + b.p.Units.Length.Symbol
}

// unknown is the symbol of an unknown; that of a joint has its axis as a subscript.
func (b *builder) unknown(j int) doc.Math {
	u := &b.p.Unknowns[j]
	if u.Joint >= 0 {
		name := b.p.Joints[u.Joint].Name
		if rest := len(u.Name) - len(name); rest > 0 && u.Name[:len(name)] == name {
			m := part(named(name), u.Name[len(name):])
			m.Name = u.Name
			return m
		}
		if u.Dim == units.Moment && len(u.Name) > 1 && u.Name[0] == 'M' {
			return doc.Math{Op: doc.Symbol, Text: "M", Of: []doc.Math{words(u.Name[1:])}, Name: u.Name}
		}
	}
	return named(u.Name)
}

// affine is a magnitude: Σ coefficient·unknown + constant.
func (b *builder) affine(m problem.Affine, u units.Unit) doc.Math {
	var of []doc.Math
	for _, t := range m.Terms {
		if t.Coef != 0 {
			unit := b.p.Units.For(b.p.Unknowns[t.Unknown].Dim)
			of = append(of, times(b.number(t.Coef*unit.Factor/u.Factor), b.unknown(t.Unknown)))
		}
	}
	if m.Const != 0 || len(of) == 0 {
		of = append(of, b.number(u.In(m.Const)))
	}
	return sum(of...)
}

// expression is Σ symbol·d + constant as a vector: symbols before what they are
// multiplied by, or what is known alone.
func (b *builder) expression(known r3.Vec, shares []share, u units.Unit, from parts) doc.Math {
	var of []doc.Math
	for _, t := range shares {
		d := r3.Scale(t.unit.Factor/u.Factor, t.d)
		if cleaned(d) == (r3.Vec{}) {
			continue
		}
		if v := b.along(d, func(axis int) doc.Origin { return from(&t, axis) }); v.Op == doc.Sum {
			of = append(of, product(t.name, paren(v)))
		} else {
			of = append(of, before(t.name, v))
		}
	}
	if known != (r3.Vec{}) || len(of) == 0 {
		v := b.along(r3.Scale(1/u.Factor, known), func(axis int) doc.Origin { return from(nil, axis) })
		if v.Op == doc.Sum && len(of) > 0 {
			of = append(of, v.Of...)
		} else {
			of = append(of, v)
		}
	}
	return sum(of...)
}

// before puts an unknown before a single component: Ax i, -2 T1 k.
func before(x, v doc.Math) doc.Math {
	switch v.Op {
	case doc.Neg:
		return neg(before(x, v.Of[0]))
	case doc.Product: // 0.6 i
		return product(append([]doc.Math{v.Of[0], x}, v.Of[1:]...)...)
	}
	return product(x, v)
}

// component is one axis of a force or a couple: Σ coefficient·symbol + constant.
func (b *builder) component(known r3.Vec, shares []share, axis int, u units.Unit, from parts) doc.Math {
	var of []doc.Math
	for _, t := range shares {
		d := r3.Scale(t.unit.Factor/u.Factor, t.d)
		if x := xyz(cleaned(d))[axis]; x != 0 {
			of = append(of, times(traced(from(&t, axis), b.number(x)), t.name))
		}
	}
	if x := xyz(cleaned(known))[axis]; x != 0 || len(of) == 0 {
		of = append(of, traced(from(nil, axis), b.number(x/u.Factor)))
	}
	return sum(of...)
}

package working

import (
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
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
	line    int // index in Lines, or -1
	joint   int // index in Joints, or -1
	couple  bool
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
	put := func(a act) { b.acts[a.Body] = append(b.acts[a.Body], a) }
	for i := range p.Lines {
		l := &p.Lines[i]
		for k := range l.Acts {
			a := act{Act: &l.Acts[k], name: named(l.Name), vec: vector("F", named(l.Name)), what: l.Kind.String(), line: i, joint: -1,
				subject: Subject{Lines: []int{i}, Bodies: []int{l.Acts[k].Body}}}
			a.at = b.place(a.Act)
			switch {
			case len(l.Path) > 2: // over pulleys each place has a force of its own
				sub := row(leafed(named(l.Name)), words(","), words(a.at))
				a.vec = vector("F", sub)
				a.name = doc.Math{Op: doc.Symbol, Text: "F", Of: []doc.Math{sub}}
			case k == 1:
				a.sign = true
			}
			put(a)
		}
	}
	for i := range p.Joints {
		j := &p.Joints[i]
		for k := range j.Acts {
			a := act{Act: &j.Acts[k], name: named(j.Name), vec: vector("R", named(j.Name)), what: kindWords(j), line: -1, joint: i, sign: k == 1,
				subject: Subject{Joints: []int{i}, Bodies: []int{j.Acts[k].Body}}}
			a.at = b.place(a.Act)
			put(a)
		}
	}
	for i := range p.Couples {
		for k := range p.Couples[i].Acts {
			put(act{Act: &p.Couples[i].Acts[k], name: named(p.Couples[i].Name), vec: vector("C", named(p.Couples[i].Name)), what: "couple", at: "anywhere",
				line: -1, joint: -1, couple: true, subject: Subject{Couples: []int{i}, Bodies: []int{p.Couples[i].Body}}})
		}
	}
	for i := range p.Loads {
		for k := range p.Loads[i].Acts {
			a := act{Act: &p.Loads[i].Acts[k], name: doc.Math{Op: doc.Symbol, Text: "R", Of: []doc.Math{leafed(named(p.Loads[i].Name))}}, vec: vector("R", named(p.Loads[i].Name)),
				what: "distributed load", line: -1, joint: -1, subject: Subject{Loads: []int{i}, Bodies: []int{p.Loads[i].Body}}}
			a.at = b.place(a.Act)
			if a.isCouple() { // a load without a resultant
				a.name, a.vec, a.at, a.couple = loadCouple(&p.Loads[i]), vector("C", named(p.Loads[i].Name)), "anywhere", true
			}
			put(a)
		}
	}
	for i := range p.Bodies {
		for k := range p.Bodies[i].Acts {
			a := act{Act: &p.Bodies[i].Acts[k], name: doc.Math{Op: doc.Symbol, Text: "W", Of: []doc.Math{leafed(named(p.Bodies[i].Name))}}, vec: vector("W", named(p.Bodies[i].Name)),
				what: "weight", line: -1, joint: -1, subject: Subject{Bodies: []int{i}}}
			a.at = b.place(a.Act)
			put(a)
		}
	}
}

// loadCouple is the symbol of the couple that a distributed load without a resultant exerts.
func loadCouple(d *problem.Distributed) doc.Math {
	return doc.Math{Op: doc.Symbol, Text: "C", Of: []doc.Math{leafed(named(d.Name))}}
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

// place names where an act is: its point, a point at the same place, or the coordinates.
func (b *builder) place(a *problem.Act) string {
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
			return part(named(name), u.Name[len(name):])
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
			of = append(of, times(b.coefficient(t.Coef*unit.Factor/u.Factor), b.unknown(t.Unknown)))
		}
	}
	if m.Const != 0 || len(of) == 0 {
		of = append(of, short(u.In(m.Const), b.p.Figures+1))
	}
	return sum(of...)
}

// expression is Σ unknown·D + constant as a vector: unknowns before what they
// are multiplied by, or what is known alone.
func (b *builder) expression(known r3.Vec, terms []problem.ActTerm, u units.Unit) doc.Math {
	var of []doc.Math
	for _, t := range terms {
		d := r3.Scale(b.p.Units.For(b.p.Unknowns[t.Unknown].Dim).Factor/u.Factor, t.D)
		if cleaned(d) == (r3.Vec{}) {
			continue
		}
		f := cosine
		if r3.Norm(d) > 1+nothing || u.Dim == units.Moment {
			f = b.coefficient
		}
		if v := b.along(d, f); v.Op == doc.Sum {
			of = append(of, product(b.unknown(t.Unknown), paren(v)))
		} else {
			of = append(of, before(b.unknown(t.Unknown), v))
		}
	}
	if known != (r3.Vec{}) || len(of) == 0 {
		v := b.along(r3.Scale(1/u.Factor, known), func(x float64) doc.Math { return short(x, b.p.Figures+1) })
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

// component is one axis of an act's force: Σ coefficient·unknown + constant.
func (b *builder) component(known r3.Vec, terms []problem.ActTerm, axis int, u units.Unit) doc.Math {
	var of []doc.Math
	for _, t := range terms {
		d := r3.Scale(b.p.Units.For(b.p.Unknowns[t.Unknown].Dim).Factor/u.Factor, t.D)
		if x := xyz(cleaned(d))[axis]; x != 0 {
			of = append(of, times(b.coefficient(x), b.unknown(t.Unknown)))
		}
	}
	if x := xyz(cleaned(known))[axis]; x != 0 || len(of) == 0 {
		of = append(of, short(x/u.Factor, b.p.Figures+1))
	}
	return sum(of...)
}

package working

import (
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/origin"
	"trivet/mechanics/problem"
	"trivet/units"
)

// act is a force or a couple on a body, with its symbols and where it is from.
type act struct {
	*problem.Act
	name    doc.Math        // T1, A, W
	far     bool            // the name's force acts the other way here: the far end of a cable
	vec     doc.Math        // the vector's symbol
	what    string          // "cable", "pin"
	at      string          // the place in words
	line    *problem.Line   // what exerts it; each is nil where it is none
	joint   *problem.Joint  //
	couple  *problem.Couple //
	tie     *tie            // what its force follows from; nil where it stands for itself
	dir     r3.Vec          // of a tied force: its direction here
	subject Subject
	source  origin.Force // where its numbers come from
}

// tie is a force that follows from unknowns, and has a symbol of its own beside them: friction
// where slip impends, a force that is typed as 0.3 N.
type tie struct {
	name     doc.Math
	is       problem.Affine
	what     string     // "the friction at A", or the name of a line
	from     doc.Origin // of its factor
	friction bool
	belt     bool // it is the tension of a belt about to slip that follows from the other one
	about    Subject
}

func (a *act) isForce() bool  { return !a.Force.IsZero() }
func (a *act) isCouple() bool { return !a.Couple.IsZero() }
func (a *act) known() bool    { return len(a.Force.Terms) == 0 && len(a.Couple.Terms) == 0 }

// side is -1 at the far end.
func (a *act) side() float64 {
	if a.far {
		return -1
	}
	return 1
}

// isPart tells the normal force or the friction of a surface where slip impends: one part of
// what the surface exerts.
func (a *act) isPart() bool { return a.joint != nil && a.joint.Impending }

// collect gathers the acts on each body, in the order of the sheet.
func (b *builder) collect() {
	p := b.p
	b.acts = make([][]*act, len(p.Bodies))
	sources := make([]int, len(p.Bodies))
	put := func(of *problem.Act, a act) {
		a.Act, a.at = of, b.place(of)
		a.subject.Bodies = []int{of.Body}
		if !a.isPart() || a.tie == nil { // the parts of a rough surface have one source
			sources[of.Body]++
		}
		a.source = origin.Force{Body: of.Body, Place: sources[of.Body] - 1}
		b.acts[of.Body] = append(b.acts[of.Body], &a)
	}
	all := func(acts []problem.Act, a act) {
		for k := range acts {
			a.far = k == 1
			put(&acts[k], a)
		}
	}
	for i := range p.Lines {
		l := &p.Lines[i]
		a := act{name: named(l.Name), vec: vector("F", named(l.Name)), what: l.Kind.String(), line: l, subject: Subject{Lines: []int{i}}}
		if len(l.Magnitude.Terms) > 0 && !b.own(i) && len(l.Path) < 3 && l.Magnitude.Terms[0].Coef != 0 {
			belt := l.Belt != nil && l.Belt.Tight >= 0 && l.Belt.Lines[l.Belt.Tied] == i
			a.tie = &tie{name: a.name, is: l.Magnitude, what: l.Name, from: origin.Magnitude(b.s, i), belt: belt, about: a.subject}
			b.ties = append(b.ties, a.tie)
		}
		for k := range l.Acts {
			a.far = k == 1
			if len(l.Path) > 2 { // over pulleys each place has a force of its own
				sub := row(words(l.Name), words(","), words(b.place(&l.Acts[k])))
				a.vec, a.name, a.far = vector("F", sub), symbol("F", sub), false
			}
			if a.tie != nil {
				a.dir = r3.Scale(1/l.Magnitude.Terms[0].Coef, l.Acts[k].Force.Terms[0].D)
			}
			put(&l.Acts[k], a)
		}
	}
	for i := range p.Joints {
		j := &p.Joints[i]
		a := act{name: named(j.Name), vec: vector("R", named(j.Name)), what: j.Words(), joint: j, subject: Subject{Joints: []int{i}}}
		if !j.Impending {
			all(j.Acts, a)
			continue
		}
		n := j.Forces.Terms[0].Unknown
		slip := &tie{name: subscripted("F", j.Name), what: "the friction at " + j.Name, from: muFrom(j), friction: true, about: a.subject}
		slip.is.Terms = []problem.Term{{Unknown: n, Coef: j.Friction}}
		b.ties = append(b.ties, slip)
		for k := range j.Acts {
			side, normal, friction := float64(1-2*k), j.Acts[k], j.Acts[k]
			drag := r3.Scale(-side, j.Slip)
			normal.Force.Terms = []problem.ActTerm{{Unknown: n, D: r3.Scale(side, j.Normal)}}
			friction.Force.Terms = []problem.ActTerm{{Unknown: n, D: r3.Scale(j.Friction, drag)}}
			friction.Couple = problem.Vector{}
			a.what, a.tie, a.name, a.vec, a.far = "normal force", nil, b.unknown(n), vector("N", named(j.Name)), k == 1
			put(&normal, a)
			a.what, a.tie, a.name, a.vec, a.dir = "friction", slip, slip.name, vector("F", named(j.Name)), drag
			put(&friction, a)
		}
	}
	for i := range p.Couples {
		c := &p.Couples[i]
		all(c.Acts, act{name: named(c.Name), vec: vector("C", named(c.Name)), what: "couple", couple: c, subject: Subject{Couples: []int{i}}})
	}
	for i := range p.Loads {
		d, letter := &p.Loads[i], "R"
		if d.Total == 0 && !d.Nothing() { // a load without a resultant
			letter = "C"
		}
		all(d.Acts, act{name: subscripted(letter, d.Name), vec: vector(letter, named(d.Name)), what: "distributed load", subject: Subject{Loads: []int{i}}})
	}
	for i := range p.Bodies {
		name := p.Bodies[i].Name
		all(p.Bodies[i].Acts, act{name: subscripted("W", name), vec: vector("W", named(name)), what: "weight"})
	}
}

// place names where an act is: of a couple anywhere, else its point, a point at the same place, or the coordinates.
func (b *builder) place(a *problem.Act) string {
	if of := (&act{Act: a}); of.isCouple() && !of.isForce() {
		return "anywhere"
	}
	if a.Point >= 0 {
		return b.p.Points[a.Point].Name
	}
	at := func(x problem.Point) bool { return x.OK && x.At == a.At }
	if k := slices.IndexFunc(b.p.Points, at); k >= 0 {
		return b.p.Points[k].Name
	}
	write := func(x float64) string {
		m := b.length(x)
		if m.Op == doc.Neg {
			return "-" + m.Of[0].Text
		}
		return m.Text
	}
	return b.p.Tuple(cleaned(a.At), write) + " " + b.p.Units.Length.Symbol
}

// unknown is the symbol of an unknown; that of a joint has its axis as a subscript. The force in
// a two-force member of the hand solution is S with its body.
func (b *builder) unknown(j int) doc.Math {
	if member := j - len(b.p.Unknowns); member >= 0 {
		return subscripted("S", b.p.Bodies[b.hand.Members[member].Body].Name)
	}
	u := &b.p.Unknowns[j]
	m := named(u.Name)
	if u.Joint >= 0 {
		if axis, after := strings.CutPrefix(u.Name, b.p.Joints[u.Joint].Name); after && axis != "" {
			m = part(named(b.p.Joints[u.Joint].Name), axis)
		} else if u.Dim == units.Moment && len(u.Name) > 1 && u.Name[0] == 'M' {
			m = symbol("M", words(u.Name[1:]))
		}
	}
	m.Name = u.Name
	return m
}

// affine is a magnitude: Σ coefficient·unknown + constant.
func (b *builder) affine(m problem.Affine, u units.Unit) doc.Math {
	var of []doc.Math
	for _, t := range m.Terms {
		if t.Coef != 0 {
			of = append(of, times(b.number(t.Coef*b.unitOf(t.Unknown).Factor/u.Factor), b.unknown(t.Unknown)))
		}
	}
	if m.Const != 0 || len(of) == 0 {
		of = append(of, b.number(u.In(m.Const)))
	}
	return sum(of...)
}

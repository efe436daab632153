package working

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/origin"
	"trivet/mechanics/problem"
	"trivet/units"
)

// act is a force or a couple on a body, with its symbols and where it is from.
type act struct {
	*problem.Act
	name   doc.Math       // T1, A, W
	far    bool           // the name's force acts the other way here: the far end of a cable
	vec    doc.Math       // the vector's symbol
	what   string         // "cable", "pin"
	at     string         // the place in words
	from   problem.Source // what exerts it
	line   *problem.Line  // that as a line, joint or couple; each is nil where it is none
	joint  *problem.Joint
	couple *problem.Couple
	tie    *tie         // what its force follows from; nil where it stands for itself
	dir    r3.Vec       // of a tied force: its direction here
	source origin.Force // where its numbers come from
}

// tie is a force that follows from unknowns, and has a symbol of its own beside them: friction
// where slip impends, a force that is typed as 0.3 N.
type tie struct {
	name     doc.Math
	is       problem.Affine
	what     string         // "the friction at A", or the name of a line
	by       problem.Source // what exerts it
	from     doc.Origin     // of its factor
	friction bool
	belt     bool // it is the tension of a belt about to slip that follows from the other one
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

// exertions are the letters of forces as vectors, and what the forces are called, by what exerts them.
var exertions = map[problem.Thing]struct{ letter, what string }{
	problem.ALine: {letter: "F"}, problem.AJoint: {letter: "R"}, problem.ACouple: {"C", "couple"}, problem.ALoad: {"R", "distributed load"}, problem.ABody: {"W", "weight"},
}

// symbolOf is the symbol of what exerts a force, and that of the force as a vector.
func (b *builder) symbolOf(from problem.Source) (name, vec doc.Math) {
	letter, of := exertions[from.Thing].letter, b.p.NameOf(from)
	switch from.Thing {
	case problem.ABody:
		of = b.p.Bodies[from.Index].Name
	case problem.ALoad:
		if d := &b.p.Loads[from.Index]; d.Total == 0 && !d.Nothing() { // a load without a resultant
			letter = "C"
		}
	default:
		return named(of), vector(letter, named(of))
	}
	return subscripted(letter, of), vector(letter, named(of))
}

// collect gathers the acts on each body, in the order of the sheet.
func (b *builder) collect() {
	b.acts = make([][]*act, len(b.p.Bodies))
	sources := make([]int, len(b.p.Bodies))
	var last *act
	for from, of := range b.p.Exerted() {
		a := act{Act: of, from: from, what: exertions[from.Thing].what, at: b.place(of), source: origin.Force{Body: of.Body, Place: sources[of.Body]}}
		a.name, a.vec = b.symbolOf(from)
		if last != nil && last.from == from {
			a.far, a.tie = true, last.tie
		}
		acts := []*act{&a}
		switch from.Thing {
		case problem.ALine:
			b.ofLine(&a)
		case problem.AJoint:
			a.joint = &b.p.Joints[from.Index]
			a.what = a.joint.Words()
			if a.joint.Impending {
				acts = b.slipping(a)
			}
		case problem.ACouple:
			a.couple = &b.p.Couples[from.Index]
		}
		sources[of.Body]++
		b.acts[of.Body] = append(b.acts[of.Body], acts...)
		last = acts[len(acts)-1]
	}
}

// ofLine completes the act of a line: over pulleys each place has a force of its own, and one
// whose magnitude follows from unknowns is tied to them.
func (b *builder) ofLine(a *act) {
	l := &b.p.Lines[a.from.Index]
	a.line, a.what = l, l.Kind.String()
	if len(l.Path) > 2 {
		sub := row(words(l.Name), words(","), words(a.at))
		a.vec, a.name, a.far = vector("F", sub), symbol("F", sub), false
		return
	}
	if len(l.Magnitude.Terms) == 0 || b.own(a.from.Index) || l.Magnitude.Terms[0].Coef == 0 {
		return
	}
	if a.tie == nil {
		belt := l.Belt != nil && l.Belt.Tight >= 0 && l.Belt.Lines[l.Belt.Tied] == a.from.Index
		a.tie = b.tie(tie{name: a.name, is: l.Magnitude, what: l.Name, by: a.from, from: origin.Magnitude(b.s, a.from.Index), belt: belt})
	}
	a.dir = r3.Scale(1/l.Magnitude.Terms[0].Coef, a.Force.Terms[0].D)
}

func (b *builder) tie(of tie) *tie {
	b.ties = append(b.ties, &of)
	return &of
}

// slipping are the two parts of what a rough surface exerts where slip impends: the normal force
// and the friction, which opposes the motion.
func (b *builder) slipping(a act) []*act {
	j, n, side := a.joint, a.joint.Forces.Terms[0].Unknown, a.side()
	push, drag, friction := *a.Act, *a.Act, a
	push.Force.Terms = []problem.ActTerm{{Unknown: n, D: r3.Scale(side, j.Normal)}}
	a.Act, a.what, a.tie, a.name, a.vec = &push, "normal force", nil, b.unknown(n), vector("N", named(j.Name))
	name, along, mu := b.frictionOf(j)
	drag.Force.Terms, drag.Couple = []problem.ActTerm{{Unknown: n, D: r3.Scale(-side*j.Friction, j.Slip)}}, problem.Vector{}
	friction.Act, friction.what, friction.name, friction.vec, friction.dir = &drag, "friction", name, vector("F", named(j.Name)), r3.Scale(side, along)
	if friction.tie == nil {
		friction.tie = b.tie(tie{name: name, is: problem.Affine{Terms: []problem.Term{{Unknown: n, Coef: mu}}},
			what: "the friction at " + j.Name, by: a.from, from: muFrom(j), friction: true})
	}
	return []*act{&a, &friction}
}

// frictionOf is the friction of a rough surface where slip impends, on its first body: its symbol, the
// direction in which it is positive, and what of the normal force it is. In the plane it is positive
// as where slip does not impend, and negative where it acts the other way.
func (b *builder) frictionOf(j *problem.Joint) (name doc.Math, along r3.Vec, mu float64) {
	if !b.p.Planar {
		return subscripted("F", j.Name), r3.Scale(-1, j.Slip), j.Friction
	}
	name, along = part(named(j.Name), "F"), r3.Vec{X: j.Normal.Y, Y: -j.Normal.X}
	name.Name = j.Name + "F"
	return name, along, math.Copysign(j.Friction, -r3.Dot(j.Slip, along))
}

// place names where an act is: of a couple anywhere, else its point, a point at the same place, or the coordinates.
func (b *builder) place(a *problem.Act) string {
	at := a.Point
	if at < 0 {
		at = slices.IndexFunc(b.p.Points, func(x problem.Point) bool { return x.OK && x.At == a.At })
	}
	switch {
	case a.Force.IsZero() && !a.Couple.IsZero():
		return "anywhere"
	case at >= 0:
		return b.p.Points[at].Name
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
		return subscripted("S", b.p.Bodies[b.Hand.Members[member].Body].Name)
	}
	name, sub := b.p.SymbolOfUnknown(j)
	m := named(name)
	if sub != "" {
		m = part(m, sub)
	}
	m.Name = b.p.Unknowns[j].Name
	return m
}

// affine is a magnitude: Σ coefficient·unknown + constant.
func (b *builder) affine(m problem.Affine, u units.Unit) doc.Math { return b.linear(m, u, b.unknown) }

// linear is the same with anything in place of each unknown.
func (b *builder) linear(m problem.Affine, u units.Unit, unknown func(j int) doc.Math) doc.Math {
	var of []doc.Math
	for _, t := range m.Terms {
		if t.Coef != 0 {
			of = append(of, times(b.number(t.Coef*b.unitOf(t.Unknown).Factor/u.Factor), unknown(t.Unknown)))
		}
	}
	if m.Const != 0 || len(of) == 0 {
		of = append(of, b.number(u.In(m.Const)))
	}
	return sum(of...)
}

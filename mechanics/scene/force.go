package scene

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/ink"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/units"
)

// touch says where the arrow of a positive force touches its place.
type touch int

const (
	outside touch = iota // on the side where the body is not: no arrow lies on it
	pulls                // its tail: a cable, a weight, a force on a particle
	pushes               // its head: a strut, a surface
)

// force is a force at a place, on its way to an arrow.
type force struct {
	ref      sheet.Ref
	name     []ink.Run
	at       r3.Vec
	along    r3.Vec  // a unit vector: the sense that counts as positive
	value    float64 // along it, N
	known    bool
	given    bool
	touch    touch
	oneSided bool // a negative value cannot be
	beyond   bool // nor can this one
	body     int
	weight   bool
	falls    bool          // from its point, whatever lies there
	couple   bool          // along its axis, N·m
	belt     *problem.Belt // of which it is the tension of a part
	unnamed  bool          // its arrow is one of several with the same name
}

// arrow draws a force or couple: in the sense that it has where its value is known, else in the
// one that counts as positive.
func (b *builder) arrow(f force) {
	if f.known && f.value == 0 {
		b.zero(f)
		return
	}
	if !finite(f.along) {
		return
	}
	t := Thing{Kind: Force, Ref: f.ref, At: []r3.Vec{f.at}, Along: f.along, Share: 0.5, Tone: ink.Found, Open: !f.known,
		Label: Label{Runs: f.name, Short: f.name, Rank: OfUnknown}}
	dim, largest := units.Force, b.max
	if f.couple {
		t.Kind, dim, largest = Couple, units.Moment, b.max*b.out.Size
	}
	if f.given {
		t.Tone, t.Label.Rank = ink.Load, OfForce
	}
	if f.weight {
		t.Label.Rank = OfBody
	}
	if f.known {
		if !(math.Abs(f.value) > nothing*largest) {
			b.zero(f)
			return
		}
		t.Value = math.Abs(f.value)
		t.Label.Runs = With(f.name, " = "+b.magnitude(f.ref, f.given, t.Value, b.p.Units.For(dim)))
		t.Share = math.Min(1, t.Value/largest)
	}
	movable := f.touch != pushes
	if f.known && f.value < 0 {
		t.Along, t.Broken = r3.Scale(-1, f.along), f.oneSided
		switch f.touch {
		case pulls:
			f.touch = pushes
		case pushes:
			f.touch = pulls
		}
	}
	if t.Broken = t.Broken || f.known && f.beyond; t.Broken {
		t.Label.Mark = "!"
	}
	if f.unnamed {
		t.Label = Label{}
	}
	if !f.couple {
		t.Head = f.touch == pushes || f.touch == outside && b.into(f.body, f.at, t.Along)
		if side := t.side(); movable && b.alongMember(f.at, side) { // it would lie on that
			if f.falls || b.alongMember(f.at, r3.Scale(-1, side)) {
				t.Aside = besideMember
			} else {
				t.Head = !t.Head
			}
		}
		b.makeWay(&t, f.touch == outside, f.belt)
	} else {
		for _, o := range b.out.Things { // one round the other
			if o.Kind == Couple && r3.Norm(r3.Sub(o.At[0], t.At[0])) <= Flat*b.out.Size && math.Abs(r3.Dot(o.Along, t.Along)) > 1-Flat {
				t.Behind = append(t.Behind, o.Share)
			}
		}
	}
	b.add(t)
}

// makeWay keeps an arrow off another at its place on one line: on the other side of the
// place, where it may be; behind one of the same sense; beside one of the other. The two
// parts of a belt leave its drum on both sides.
func (b *builder) makeWay(t *Thing, free bool, belt *problem.Belt) {
	const drum = 3 // as far aside as the rim of a drum whose size is not known
	for i := range b.out.Things {
		o := &b.out.Things[i]
		if o.Kind != Force || !o.sameSide(t) || r3.Norm(r3.Sub(o.At[0], t.At[0])) > Flat*b.out.Size {
			continue
		}
		switch {
		case free:
			t.Head = !t.Head
			b.makeWay(t, false, belt)
			return
		case belt != nil && slices.ContainsFunc(belt.Lines[:], func(i int) bool { return b.p.Lines[i].Ref == o.Ref }):
			o.Aside, t.Aside = -drum, drum
		case o.Head == t.Head:
			t.Behind, o.Followed = append(t.Behind, o.Share), true
		default:
			o.Aside, t.Aside = -1, 1
		}
	}
}

// side is the direction from an arrow's place to the arrow.
func (t *Thing) side() r3.Vec {
	if t.Head {
		return r3.Scale(-1, t.Along)
	}
	return t.Along
}

// sameSide tells that two arrows at a place lie on the same side of it, on one line.
func (t *Thing) sameSide(o *Thing) bool { return r3.Dot(t.side(), o.side()) > 1-Flat }

// zero notes what is zero and therefore not drawn.
func (b *builder) zero(f force) {
	if !f.unnamed && !slices.ContainsFunc(b.out.Zero, func(z []ink.Run) bool { return slices.Equal(z, f.name) }) {
		b.out.Zero = append(b.out.Zero, f.name)
	}
}

// magnitude is a value as it is printed: of a load as typed, where its cell says it.
func (b *builder) magnitude(ref sheet.Ref, given bool, value float64, f units.Unit) string {
	text := f.Format(value, b.p.Figures)
	if given && b.opt.Typed != nil {
		return cmp.Or(b.opt.Typed(ref), text)
	}
	return text
}

// into tells that a direction at a place of a body points into it, or, where the body
// lies on neither side, that a force presses on it. An arrow lies along a bar of the body
// only where the bar goes on to both sides.
func (b *builder) into(body int, at, along r3.Vec) bool {
	if body < 0 || body >= len(b.p.Bodies) || b.p.Bodies[body].Particle {
		return false
	}
	ahead, behind := b.barAlong(body, at, along), b.barAlong(body, at, r3.Scale(-1, along))
	if ahead != behind {
		return ahead
	}
	pts := b.places(body)
	if len(pts) == 0 {
		return true
	}
	const side = 0.05 // of the size: what lies less to one side lies on neither
	return r3.Dot(r3.Sub(mean(pts), at), along) > -side*b.out.Size
}

// besideMember is how far aside an arrow gives way to a member, as Aside has it.
const besideMember = 1.6

// alongMember tells that a member leaves a place in a direction.
func (b *builder) alongMember(at, way r3.Vec) bool {
	const same = 0.995 // the cosine of 6°: less is told apart
	return slices.ContainsFunc(b.out.Things, func(t Thing) bool {
		for k := range 2 {
			if t.Kind.Member() && r3.Norm(r3.Sub(t.At[k], at)) <= Flat*b.out.Size && r3.Dot(unit(r3.Sub(t.At[1-k], t.At[k])), way) > same {
				return true
			}
		}
		return false
	})
}

// barAlong tells that a bar of a body leaves a place in a direction.
func (b *builder) barAlong(body int, at, way r3.Vec) bool {
	return slices.ContainsFunc(b.out.Things, func(t Thing) bool {
		if t.Kind != Bar || t.Ref != b.p.Bodies[body].Ref || offLine(at, t.At[0], t.At[1]) > Flat*b.out.Size {
			return false
		}
		one, two := r3.Dot(r3.Sub(t.At[0], at), way), r3.Dot(r3.Sub(t.At[1], at), way)
		parallel := r3.Norm(r3.Cross(unit(r3.Sub(t.At[1], t.At[0])), way)) < Flat
		return parallel && math.Min(one, two) < Flat*b.out.Size && math.Max(one, two) > Flat*b.out.Size
	})
}

// maximum finds the largest force that an arrow shows.
func (b *builder) maximum(acts func(func(*problem.Act) bool)) {
	for a := range acts {
		b.max = math.Max(b.max, r3.Norm(a.Force.Const))
		for _, t := range a.Force.Terms {
			if x, ok := b.unknown(t.Unknown); ok {
				b.max = math.Max(b.max, math.Abs(x)*r3.Norm(t.D))
			}
		}
	}
	if !(b.max > 0) || math.IsInf(b.max, 0) {
		b.max = 1
	}
}

// member draws the forces with which a member or rope acts on a body at a point: one for
// each stretch that ends there.
func (b *builder) member(l *problem.Line, a *problem.Act) {
	f := force{ref: l.Ref, name: Typeset(l.Name), at: b.at(a), body: a.Body, touch: pulls, given: len(l.Magnitude.Terms) == 0, belt: l.Belt}
	if l.Kind.Info().Positive == "compression" {
		f.touch = pushes
	}
	f.value, f.known = l.Magnitude.Sum(b.unknown)
	f.oneSided = l.Kind.Info().Sense == problem.PullOnly || l.Kind.Info().Sense == problem.PushOnly
	for _, leg := range l.Legs {
		u := leg.U
		switch a.Point {
		case leg.From:
		case leg.To:
			u = r3.Scale(-1, u)
		default:
			continue
		}
		if f.along = u; f.touch == pushes {
			f.along = r3.Scale(-1, u)
		}
		b.arrow(f)
	}
}

// directed draws a force that has a direction or components of its own, as it acts on one
// body.
func (b *builder) directed(l *problem.Line, a *problem.Act, unnamed bool) {
	f := force{ref: l.Ref, name: Typeset(l.Name), at: b.at(a), body: a.Body, given: len(a.Force.Terms) == 0, known: true, unnamed: unnamed}
	switch particle := a.Body >= 0 && b.p.Bodies[a.Body].Particle; {
	case l.Kind == problem.Contact:
		f.touch, f.oneSided = pushes, true
	case l.Kind == problem.Weight || particle:
		f.touch, f.falls = pulls, l.Kind == problem.Weight
	}
	if f.given || l.ByComponents() && r3.Norm(a.Force.Const) > 0 {
		f.along, f.value = unit(a.Force.Const), r3.Norm(a.Force.Const)
		b.arrow(f)
	}
	switch {
	case f.given:
	case l.ByComponents():
		for _, t := range a.Force.Terms {
			b.term(f, t)
		}
	default:
		f.value, f.known = l.Magnitude.Sum(b.unknown)
		f.along = unit(directionOf(a))
		if d, ok := l.Direction(); ok && len(a.Force.Terms) > 0 {
			// The positive sense is that of the line, on its second body the opposite.
			f.along = r3.Scale(math.Copysign(1, r3.Dot(d, a.Force.Terms[0].D)*l.Magnitude.Terms[0].Coef), d)
		}
		b.arrow(f)
	}
}

// directionOf is the direction of an act's force while its unknowns are one.
func directionOf(a *problem.Act) r3.Vec {
	f := a.Force.Const
	for _, t := range a.Force.Terms {
		f = r3.Add(f, t.D)
	}
	return f
}

// term draws the force or couple of one unknown.
func (b *builder) term(f force, t problem.ActTerm) {
	f.name, f.along, f.given = TypesetUnknown(b.p, t.Unknown), unit(t.D), false
	f.value, f.known = b.unknown(t.Unknown)
	f.value *= r3.Norm(t.D)
	b.arrow(f)
}

// joint draws what a joint exerts on a body: each unknown for itself, and of a rough
// surface on the point of slipping the friction F = μN beside the normal force.
func (b *builder) joint(j *problem.Joint, a *problem.Act) {
	f := force{ref: j.Ref, at: b.at(a), body: a.Body}
	normal := f
	if j.Kind.Info().PushOnly {
		normal.touch, normal.oneSided = pushes, true
	}
	switch {
	case j.Impending:
		sign := 1.0
		if a.Body != j.First {
			sign = -1
		}
		n := j.Forces.Terms[0].Unknown
		b.term(normal, problem.ActTerm{Unknown: n, D: r3.Scale(sign, j.Normal)})
		f.name, f.along = frictionName(j), r3.Scale(-sign, j.Slip)
		f.value, f.known = b.unknown(n)
		if f.value *= j.Friction; j.Friction > 0 {
			b.arrow(f)
		}
	case len(a.Force.Terms) > 0:
		b.term(normal, a.Force.Terms[0])
		friction := f
		friction.beyond = b.slips(j)
		for _, t := range a.Force.Terms[1:] {
			b.term(friction, t)
		}
	}
	f.couple = true
	for _, t := range a.Couple.Terms {
		b.term(f, t)
	}
}

// slips tells that the friction found at a joint is more than its surface has.
func (b *builder) slips(j *problem.Joint) bool {
	return b.sol != nil && slices.ContainsFunc(b.sol.Checks, func(c statics.Check) bool {
		return c.Kind == statics.CheckFriction && !c.OK && c.Joint >= 0 && &b.p.Joints[c.Joint] == j
	})
}

// typedCouple draws a couple of the sheet. It acts on the whole body, so that anywhere
// will do: where it is typed, or in the middle of the body.
func (b *builder) typedCouple(c *problem.Couple, a *problem.Act) {
	at := a.At
	if b.placed(a.Point) {
		at = b.p.Points[a.Point].At
	} else if pts := b.places(c.Body); len(pts) > 0 {
		at = mean(pts)
	}
	sign := 1.0
	if a.Body != c.Body {
		sign = -1
	}
	f := force{ref: c.Ref, name: Typeset(c.Name), at: at, couple: true}
	switch {
	case len(c.Magnitude.Terms) == 0:
		f.along, f.value, f.known, f.given = unit(a.Couple.Const), r3.Norm(a.Couple.Const), true, true
		b.arrow(f)
	case c.U != r3.Vec{}:
		f.along = r3.Scale(sign, c.U)
		f.value, f.known = c.Magnitude.Sum(b.unknown)
		b.arrow(f)
	default:
		for _, t := range a.Couple.Terms {
			b.term(f, t)
		}
	}
}

// weight draws the weight of a body at its centre of gravity.
func (b *builder) weight(i int) {
	body := &b.p.Bodies[i]
	if body.Weight == 0 {
		return
	}
	name := []ink.Run{{Text: "W", Style: ink.Italic}, {Text: body.Name, Style: ink.Italic, Level: -1}}
	b.add(Thing{Kind: Dot, Ref: body.Ref, At: []r3.Vec{body.Centre}, Tone: ink.Load})
	b.arrow(force{ref: body.Ref, name: name, at: body.Centre, along: r3.Scale(-1, b.p.Up), value: body.Weight, known: true, given: true, touch: pulls, body: i, weight: true})
}

package scene

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/drawing"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/units"
)

// touch says where the arrow of a positive force touches its place; that of a negative one
// touches it with its other end.
type touch int

const (
	pushes  touch = iota - 1 // its head: a strut, a surface
	outside                  // on the side where the body is not: no arrow lies on it
	pulls                    // its tail: a cable, a weight, a force on a particle
)

// touches has the kinds of lines that touch their place in one way.
var touches = map[problem.Kind]touch{
	problem.Cable: pulls, problem.BeltKind: pulls, problem.Link: pulls, problem.SpringKind: pulls, problem.Weight: pulls,
	problem.Strut: pushes, problem.Contact: pushes,
}

// force is an arrow of a positive amount, on its way to the one that is drawn.
type force struct {
	Thing
	amount   problem.Affine // N, or N·m of a couple
	touch    touch
	oneSided bool // a negative amount cannot be
	beyond   bool // nor can this one
	body     int
	falls    bool          // from its point, whatever lies there
	belt     *problem.Belt // of which it is the tension of a part
	unnamed  bool          // its arrow is one of several with the same name
}

// sought is the arrow of a force that is not given.
func sought(kind Kind, e *problem.Entry, at r3.Vec) Thing {
	return Thing{Kind: kind, Ref: e.Ref, At: []r3.Vec{at}, Share: 0.5, Tone: drawing.Found, Label: called(Typeset(e.Name), OfUnknown)}
}

// give tells that the force is given.
func (f *force) give() { f.Tone, f.Label.Rank = drawing.Load, OfForce }

// arrow draws a force or couple: in the sense that it has where its value is known, else in the
// one that counts as positive.
func (b *builder) arrow(f force) {
	value, known := f.amount.Sum(b.unknown)
	t := f.Thing
	t.Open = !known
	dim, largest := units.Force, b.max
	if t.Kind == Couple {
		dim, largest = units.Moment, b.max*b.out.Size
	}
	if known && !(math.Abs(value) > nothing*largest) {
		b.zero(f)
		return
	}
	if !finite(t.Along) {
		return
	}
	if known {
		t.Value = math.Abs(value)
		if t.Label.Runs = b.springData(t.Ref, t.Label.Short); t.Label.Runs == nil {
			t.Label.Runs = With(t.Label.Short, " = "+b.magnitude(t.Ref, t.Tone == drawing.Load, t.Value, b.p.Units.For(dim)))
		}
		t.Share = math.Min(1, t.Value/largest)
	}
	movable := t.Kind == Force && f.touch != pushes
	if value < 0 {
		t.Along, t.Broken, f.touch = r3.Scale(-1, t.Along), f.oneSided, -f.touch
	}
	if t.Broken = t.Broken || known && f.beyond; t.Broken {
		t.Label.Mark = "!"
	}
	if f.unnamed {
		t.Label = Label{}
	}
	t.Head = t.Kind == Force && (f.touch == pushes || f.touch == outside && b.into(f.body, t.At[0], t.Along))
	if movable && b.along(t.At[0], t.Side(), (*Thing).member) { // it would lie on that
		if f.falls || b.along(t.At[0], r3.Scale(-1, t.Side()), (*Thing).member) {
			t.Aside = besideMember
		} else {
			t.Head = !t.Head
		}
	}
	b.makeWay(&t, f.touch == outside, f.belt)
	b.add(t)
}

// makeWay keeps an arrow off another at its place on one line: on the other side of the
// place, where it may be; behind one of the same sense; beside one of the other. The two
// parts of a belt leave its drum on both sides. Couples about one axis are drawn one round
// the other.
func (b *builder) makeWay(t *Thing, free bool, belt *problem.Belt) {
	const drum = 3 // as far aside as the rim of a drum whose size is not known
	for i := range b.out.Things {
		o := &b.out.Things[i]
		if o.Kind != t.Kind || !b.near(o.At[0], t.At[0]) {
			continue
		}
		switch cos := r3.Dot(t.Side(), o.Side()); {
		case t.Kind == Couple && cos < Flat-1: // it has no side
			t.Behind = append(t.Behind, o.Share)
		case cos <= 1-Flat:
		case free && t.Kind == Force:
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

// Side is the direction from an arrow's place to the arrow.
func (t *Thing) Side() r3.Vec {
	if t.Head {
		return r3.Scale(-1, t.Along)
	}
	return t.Along
}

// zero notes what is zero and therefore not drawn.
func (b *builder) zero(f force) {
	if !f.unnamed && !slices.ContainsFunc(b.out.Zero, func(z []drawing.Run) bool { return slices.Equal(z, f.Label.Short) }) {
		b.out.Zero = append(b.out.Zero, f.Label.Short)
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

// springData is the name of a torsional spring with its stiffness and its turn as typed, where
// no more is to be printed of it; nil for every other thing.
func (b *builder) springData(ref sheet.Ref, name []drawing.Run) []drawing.Run {
	i := slices.IndexFunc(b.p.Couples, func(c problem.Couple) bool { return c.Ref == ref && c.Spring != nil })
	if i < 0 || b.opt.Typed == nil {
		return nil
	}
	out := name
	for _, data := range []struct{ key, symbol string }{{"stiffness", "k"}, {"turn", "θ"}} {
		if text := b.opt.Typed(sheet.Ref{Table: ref.Table, Row: ref.Row, Key: data.key}); text != "" {
			out = append(With(out, ", "), With(Italic(data.symbol), " = "+text)...)
		}
	}
	return out
}

// into tells that a direction at a place of a body points into it, or, where the body
// lies on neither side, that a force presses on it. An arrow lies along a bar of the body
// only where the bar goes on to both sides.
func (b *builder) into(body int, at, along r3.Vec) bool {
	if body < 0 || body >= len(b.p.Bodies) || b.p.Bodies[body].Particle {
		return false
	}
	bars := func(t *Thing) bool { return t.Kind == Bar && t.Ref == b.p.Bodies[body].Ref }
	if ahead := b.along(at, along, bars); ahead != b.along(at, r3.Scale(-1, along), bars) {
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

// along tells that a straight part of the things that count leaves a place in a direction.
func (b *builder) along(at, way r3.Vec, counts func(*Thing) bool) bool {
	const same = 0.995 // the cosine of 6°: less is told apart
	return slices.ContainsFunc(b.leaving(at, counts), func(u r3.Vec) bool { return r3.Dot(u, way) > same })
}

// maximum finds the largest force that an arrow shows, on one of the bodies or, where none
// is listed, on any.
func (b *builder) maximum(bodies []int) {
	for a := range b.p.Acts() {
		if len(bodies) > 0 && !slices.Contains(bodies, a.Body) {
			continue
		}
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

// act draws the forces or couples of a line, joint or couple on a body.
func (b *builder) act(from problem.Source, a *problem.Act) {
	switch at := b.at(a); from.Thing {
	case problem.ALine:
		if l := &b.p.Lines[from.Index]; l.OK {
			b.line(force{Thing: sought(Force, &l.Entry, at), body: a.Body, unnamed: b.whole && a != &l.Acts[0]}, l, a)
		}
	case problem.AJoint:
		if j := &b.p.Joints[from.Index]; j.OK {
			b.joint(force{Thing: sought(Force, &j.Entry, at), body: a.Body}, j, a)
		}
	case problem.ACouple:
		if c := &b.p.Couples[from.Index]; c.OK {
			b.vector(force{Thing: sought(Couple, &c.Entry, b.anywhere(c)), body: a.Body}, a.Couple, c.U, c.Magnitude)
		}
	}
}

// anywhere is the place of a couple, which acts on its whole body: the middle, of several
// about one axis each another.
func (b *builder) anywhere(c *problem.Couple) r3.Vec {
	pts := b.places(c.Body)
	if len(pts) == 0 {
		return c.Acts[0].At
	}
	one, n := 0.0, 0.0
	for i := range b.p.Couples {
		if o := &b.p.Couples[i]; o.OK && o.Body == c.Body && r3.Norm(r3.Cross(o.U, c.U)) <= Flat {
			if n++; o == c {
				one = n
			}
		}
	}
	return r3.Add(mean(pts), r3.Scale(one/(n+1)-0.5, r3.Sub(furthest(pts), pts[0])))
}

// line draws the forces with which a line acts on a body: a member or rope with one for
// each stretch that ends there.
func (b *builder) line(f force, l *problem.Line, a *problem.Act) {
	kind := l.Kind.Info()
	f.touch, f.oneSided, f.falls, f.belt = touches[l.Kind], kind.Sense >= problem.PullOnly, l.Kind == problem.Weight, l.Belt
	if f.touch == outside && a.Body >= 0 && b.p.Bodies[a.Body].Particle {
		f.touch = pulls
	}
	if d, ok := l.Direction(); !kind.Path {
		if l.Components != nil || !ok {
			d = r3.Vec{}
		}
		b.vector(f, a.Force, d, l.Magnitude)
		return
	}
	if f.amount = l.Magnitude; len(l.Magnitude.Terms) == 0 {
		f.give()
	}
	for _, leg := range l.Legs {
		if away := map[int]float64{leg.To: -1, leg.From: 1}[a.Point]; away != 0 {
			f.Along = r3.Scale(away*float64(f.touch), leg.U)
			b.arrow(f)
		}
	}
}

// vector draws a force or couple in one arrow: what is given of it, and a magnitude that is
// sought along d. Where d is zero each unknown has an arrow of its own.
func (b *builder) vector(f force, v problem.Vector, d r3.Vec, magnitude problem.Affine) {
	if len(v.Terms) == 0 {
		f.give()
		f.Along, f.amount = unit(v.Const), problem.Affine{Const: r3.Norm(v.Const)}
		b.arrow(f)
		return
	}
	for k, x := range []float64{v.Const.X, v.Const.Y, v.Const.Z} { // beside unknown ones each by itself
		if x != 0 && d == (r3.Vec{}) {
			known := f
			known.Label, known.Along = called(withPart(f.Label.Short, "xyz"[k:k+1]), OfUnknown), problem.Axes()[k]
			known.amount = problem.Affine{Const: x}
			b.arrow(known)
		}
	}
	for _, t := range v.Terms {
		if d != (r3.Vec{}) { // the positive sense is that of d, on the second body the opposite
			f.Along, f.amount = r3.Scale(math.Copysign(1, r3.Dot(d, t.D)*magnitude.Terms[0].Coef), d), magnitude
			b.arrow(f)
			return
		}
		b.term(f, t)
	}
}

// term draws the force or couple of one unknown.
func (b *builder) term(f force, t problem.ActTerm) {
	f.Label, f.Along = called(TypesetUnknown(b.p, t.Unknown), OfUnknown), unit(t.D)
	f.amount = problem.Affine{Terms: []problem.Term{{Unknown: t.Unknown, Coef: r3.Norm(t.D)}}}
	b.arrow(f)
}

// joint draws what a joint exerts on a body: each unknown for itself, and of a rough
// surface on the point of slipping the friction μN beside the normal force.
func (b *builder) joint(f force, j *problem.Joint, a *problem.Act) {
	for i, t := range a.Force.Terms {
		if !b.shows(t.Unknown) {
			continue
		}
		part := f
		part.beyond = i > 0 && b.slips(j)
		if i == 0 && j.Kind.Info().PushOnly {
			part.touch, part.oneSided = pushes, true
		}
		if !j.Impending {
			b.term(part, t)
			continue
		}
		normal := r3.Scale(math.Copysign(1, r3.Dot(t.D, j.Normal)), j.Normal)
		b.term(part, problem.ActTerm{Unknown: t.Unknown, D: normal})
		if j.Friction > 0 {
			f.Label, f.Along = called(append(Italic("μ"), TypesetUnknown(b.p, t.Unknown)...), OfUnknown), unit(r3.Sub(t.D, normal))
			f.amount = problem.Affine{Terms: []problem.Term{{Unknown: t.Unknown, Coef: j.Friction}}}
			b.arrow(f)
		}
	}
	f.Kind = Couple
	for _, t := range a.Couple.Terms {
		if b.shows(t.Unknown) {
			b.term(f, t)
		}
	}
}

// slips tells that the friction found at a joint is more than its surface has.
func (b *builder) slips(j *problem.Joint) bool {
	return b.sol != nil && slices.ContainsFunc(b.sol.Checks, func(c statics.Check) bool {
		return c.Kind == statics.CheckFriction && !c.OK && c.Joint >= 0 && &b.p.Joints[c.Joint] == j
	})
}

// weight draws the weight of a body at its centre of gravity.
func (b *builder) weight(i int) {
	body := &b.p.Bodies[i]
	if body.Weight == 0 {
		return
	}
	dot := Thing{Kind: Dot, Ref: body.Ref, At: []r3.Vec{body.Centre}, Tone: drawing.Load}
	b.add(dot)
	dot.Kind, dot.Along = Force, r3.Scale(-1, b.p.Up)
	dot.Label = called([]drawing.Run{{Text: "W", Style: drawing.Italic}, {Text: body.Name, Style: drawing.Italic, Level: -1}}, OfBody)
	b.arrow(force{Thing: dot, amount: problem.Affine{Const: body.Weight}, touch: pulls, body: i})
}

package scene

import (
	"iter"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/drawing"
	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/units"
)

// System is the figure of a whole problem. Without a solution nothing that follows from
// one shows.
func System(p *problem.Problem, sol *statics.Solution, opt Options) Scene {
	if p == nil {
		return Scene{Size: 1}
	}
	b := newBuilder(p, sol, opt)
	b.out.Title = "figure"
	if p.Title != "" {
		b.out.Title += ": " + p.Title
	}
	b.whole = true
	b.maximum(nil)
	for i := range p.Bodies {
		if !p.Bodies[i].Particle {
			b.body(i)
		}
	}
	for l := range b.paths() {
		b.path(l)
	}
	b.anchors()
	b.drums()
	for i := range p.Joints {
		b.support(&p.Joints[i])
	}
	b.surfaces()
	b.dots()
	b.loads(func(int) bool { return true })
	for i := range p.Lines {
		if l := &p.Lines[i]; !l.Kind.Info().Path && (l.Kind != problem.Contact || b.reacts(l)) {
			for k := range l.Acts {
				b.act(problem.Source{Thing: problem.ALine, Index: i}, &l.Acts[k])
			}
		}
	}
	for i, c := range p.Couples {
		if len(c.Acts) > 0 {
			b.act(problem.Source{Thing: problem.ACouple, Index: i}, &c.Acts[0])
		}
	}
	for i := range p.Bodies {
		b.weight(i)
	}
	for i, j := range p.Joints {
		if b.placed(j.Point) && len(j.Acts) > 0 && (!b.opt.Reactions || j.First == problem.Ground || j.Second == problem.Ground) {
			b.act(problem.Source{Thing: problem.AJoint, Index: i}, &j.Acts[0])
		}
	}
	b.names(nil)
	if opt.Dimensions {
		b.out.Dimensions = func(m float64) string { return shortLength(p.Units.Length, m, p.Figures) }
	}
	return b.out
}

// reacts tells that the force of a contact is drawn: it is asked for, or found.
func (b *builder) reacts(l *problem.Line) bool {
	_, known := l.Magnitude.Sum(b.unknown)
	return b.opt.Reactions && known
}

// paths gives the members that read.
func (b *builder) paths() iter.Seq[*problem.Line] {
	return func(yield func(*problem.Line) bool) {
		for i := range b.p.Lines {
			if l := &b.p.Lines[i]; l.OK && l.Kind.Info().Path && !yield(l) {
				return
			}
		}
	}
}

// path draws a member.
func (b *builder) path(l *problem.Line) {
	kind := map[problem.Kind]Kind{problem.Strut: Strut, problem.Link: Link, problem.SpringKind: Spring}[l.Kind]
	if kind == 0 {
		kind = Cable
	}
	value, known := l.Magnitude.Sum(b.unknown)
	for leg, t := range b.stretches(l, kind) {
		t.Open = !known && b.sol != nil
		if t.Label.Runs != nil && b.opt.Lengths && leg.Length > 0 {
			t.Label.Runs = With(t.Label.Short, ", "+b.p.Units.For(units.Length).Format(leg.Length, b.p.Figures))
			t.Label.Short = t.Label.Runs
		}
		if t.Label.Runs != nil && known && b.sol != nil {
			t.Label.Mark = sense(l.Kind, value, b.max)
		}
		b.add(t)
	}
}

// stretches are those of the path of a line, the first with its name.
func (b *builder) stretches(l *problem.Line, kind Kind) iter.Seq2[problem.Leg, Thing] {
	const free = 0.25 // of the size: as far as one is drawn whose other end is not given
	return func(yield func(problem.Leg, Thing) bool) {
		for k, leg := range l.Legs {
			if !b.placed(leg.From) || leg.To >= 0 && !b.placed(leg.To) {
				continue
			}
			from := b.p.Points[leg.From].At
			to := r3.Add(from, r3.Scale(free*b.out.Size, leg.U))
			if leg.To >= 0 {
				to = b.p.Points[leg.To].At
			}
			t := Thing{Kind: kind, Ref: l.Ref, At: []r3.Vec{from, to}}
			if k == 0 {
				name := Typeset(l.Name)
				t.Label = Label{Runs: name, Short: name, Rank: OfUnknown}
				if len(l.Magnitude.Terms) == 0 {
					t.Label.Rank = OfForce
				}
			}
			if !yield(leg, t) {
				return
			}
		}
	}
}

// sense is "(T)" of a member in tension, "(C)" of one in compression, "(0)" of one
// without force.
func sense(k problem.Kind, value, largest float64) string {
	switch {
	case value == 0 || value < nothing*largest && value > -nothing*largest:
		return "(0)"
	case (value > 0) != (k.Info().Positive == "compression"):
		return "(T)"
	}
	return "(C)"
}

// dots draws the points that are pinned together, and those of bodies and particles.
func (b *builder) dots() {
	pinned := make([]bool, len(b.p.Points))
	for _, l := range b.p.Lines {
		if l.OK && (l.Kind == problem.Link || l.Kind == problem.Strut) {
			for _, i := range l.Path {
				pinned[i] = true
			}
		}
	}
	for i, q := range b.p.Points {
		t := Thing{Kind: Dot, Ref: q.Ref, At: []r3.Vec{q.At}}
		if pinned[i] {
			t.Kind = Pin
		} else if q.Body >= 0 && b.p.Bodies[q.Body].Particle {
			t.Radius = 1
		}
		if q.OK {
			b.add(t)
		}
	}
}

// names writes the names of points, of some or, where these are nil, of all.
func (b *builder) names(some []bool) {
	for i, q := range b.p.Points {
		if q.OK && (some == nil || some[i]) {
			name := Typeset(q.Name)
			b.add(Thing{Kind: Name, Ref: q.Ref, At: []r3.Vec{q.At}, Label: Label{Runs: name, Short: name, Rank: OfPoint}})
		}
	}
}

// drums draws the drum of each belt, with the friction and the angle of contact.
func (b *builder) drums() {
	for belt := range b.p.Belts() {
		before, behind := &b.p.Lines[belt.Lines[0]], &b.p.Lines[belt.Lines[1]]
		first, last := before.Path[1], behind.Path[0]
		if !b.placed(first) || !b.placed(last) {
			continue
		}
		u, v := before.Legs[0].U, behind.Legs[0].U
		at, radius := drum(b.p.Points[first].At, b.p.Points[last].At, u, v, Flat*b.out.Size)
		data := append(frictionOf(belt.Friction), With([]drawing.Run{{Text: ", "}, {Text: "β", Style: drawing.Italic}}, " = "+units.Compact(b.p.Units.Angle.In(belt.Wrap))+" "+b.p.Units.Angle.Symbol)...)
		axis := unit(r3.Cross(u, v))
		if axis == (r3.Vec{}) {
			axis = r3.Vec{Z: 1}
		}
		b.add(Thing{Kind: Disc, Ref: before.Ref, At: []r3.Vec{at}, Along: axis, Radius: radius, Label: Label{Runs: data, Rank: OfSize}})
	}
}

// touching is how far a part of a belt may be off a right angle with the radius where it
// leaves the drum, or the two radii apart, before there is no circle to draw.
const touching = 0.02

// drum is the circle that a belt touches where its parts, along u before it and v behind
// it, leave it at p and q. Where they meet, and where there is no such circle, its radius
// is zero.
func drum(p, q, u, v r3.Vec, near float64) (centre r3.Vec, radius float64) {
	d := r3.Sub(q, p)
	if r3.Norm(d) <= near {
		return p, 0
	}
	// The radii: in the plane of the belt, perpendicular to its parts.
	normal := r3.Cross(u, v)
	if r3.Norm(normal) < touching {
		normal = r3.Cross(u, d)
	}
	m, n := unit(r3.Cross(normal, u)), unit(r3.Cross(normal, v))
	centre = r3.Add(p, r3.Scale(0.5, d))
	if cross := r3.Cross(m, n); r3.Norm(cross) > touching { // p + t m = q + w n
		centre = r3.Add(p, r3.Scale(r3.Dot(r3.Cross(d, n), cross)/r3.Norm2(cross), m))
	}
	one, two := r3.Sub(p, centre), r3.Sub(q, centre)
	square := func(a, b r3.Vec) bool { return math.Abs(r3.Dot(a, b)) <= touching*r3.Norm(a)*r3.Norm(b) }
	if math.Abs(r3.Norm(one)-r3.Norm(two)) > touching*r3.Norm(one) || !square(one, u) || !square(two, v) {
		return centre, 0
	}
	return centre, r3.Norm(one)
}

package scene

import (
	"cmp"
	"iter"
	"math"
	"slices"

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
	b.drums(nil)
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
	for _, cut := range opt.Sections {
		b.section(cut)
	}
	b.names(nil)
	if opt.Dimensions {
		b.out.Dimensions = func(m float64) string { return shortValue(p.Units.Length, m, p.Figures) }
	}
	return b.out
}

// section draws where a section goes through members: their middles, in order along it.
func (b *builder) section(cut []int) {
	var at []r3.Vec
	for _, i := range cut {
		if l := &b.p.Lines[i]; l.OK && len(l.Path) == 2 && b.placed(l.Path[0]) && b.placed(l.Path[1]) {
			at = append(at, r3.Scale(0.5, r3.Add(b.p.Points[l.Path[0]].At, b.p.Points[l.Path[1]].At)))
		}
	}
	if len(at) < 2 || !b.p.Planar {
		return
	}
	along := r3.Sub(furthest(at), at[0])
	slices.SortFunc(at, func(p, q r3.Vec) int { return cmp.Compare(r3.Dot(p, along), r3.Dot(q, along)) })
	b.add(Thing{Kind: Section, Ref: b.p.Lines[cut[0]].Ref, At: at})
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
		if t.Label.Runs != nil && b.opt.Dimensions {
			t.Label.Runs = b.given(l)
		}
		if t.Label.Runs != nil && known && b.sol != nil {
			t.Label.Mark = sense(l.Kind, value, b.max)
			if only := l.Kind.Info().Sense; value < -nothing*b.max && (only == problem.PullOnly || only == problem.PushOnly) {
				t.Label.Mark += " !"
			}
		}
		b.add(t)
	}
}

// given is the name of a member with what is typed of it: its force, or of a spring the
// stiffness and the natural length.
func (b *builder) given(l *problem.Line) []drawing.Run {
	name := Typeset(l.Name)
	if l.Spring != nil {
		data := append(With(name, ", "), With(Italic("k"), " = "+shortValue(b.p.Units.For(units.LineLoad), l.Spring.Stiffness, b.p.Figures))...)
		if l.Spring.Free {
			return data
		}
		return append(With(data, ", "), With(Typeset("l0"), " = "+shortValue(b.p.Units.Length, l.Spring.Natural, b.p.Figures))...)
	}
	if len(l.Magnitude.Terms) == 0 {
		return With(name, " = "+b.magnitude(l.Ref, true, l.Magnitude.Const, b.p.Units.For(units.Force)))
	}
	return name
}

// stretches are those of the path of a line, the first with its name.
func (b *builder) stretches(l *problem.Line, kind Kind) iter.Seq2[problem.Leg, Thing] {
	const (
		free = 0.25 // of the size: as far as one is drawn whose other end is not given
		near = 0.45 // of the way to the nearest point, so that it does not reach those of that
	)
	return func(yield func(problem.Leg, Thing) bool) {
		for k, leg := range l.Legs {
			if !b.placed(leg.From) || leg.To >= 0 && !b.placed(leg.To) {
				continue
			}
			from := b.p.Points[leg.From].At
			t := Thing{Kind: kind, Ref: l.Ref, At: []r3.Vec{from}}
			if leg.To >= 0 {
				t.At = append(t.At, b.p.Points[leg.To].At)
			} else {
				length := free * b.out.Size
				for _, q := range b.p.Points {
					if q.OK && !b.near(q.At, from) {
						length = math.Min(length, near*r3.Norm(r3.Sub(q.At, from)))
					}
				}
				t.At = append(t.At, r3.Add(from, r3.Scale(length, leg.U)))
			}
			if k == 0 {
				t.Label = called(Typeset(l.Name), OfUnknown)
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
			b.add(Thing{Kind: Name, Ref: q.Ref, At: []r3.Vec{q.At}, Label: called(Typeset(q.Name), OfPoint)})
		}
	}
}

// drums draws the drum of each belt that ends on one of the bodies or, where none is listed,
// on any, with the friction and the angle of contact in the figure of all.
func (b *builder) drums(bodies []int) {
	on := func(point int) bool { return len(bodies) == 0 || slices.Contains(bodies, b.p.Points[point].Body) }
	for _, belt := range b.p.Belts() {
		before, behind := &b.p.Lines[belt.Lines[0]], &b.p.Lines[belt.Lines[1]]
		first, last := before.Path[1], behind.Path[0]
		if !b.placed(first) || !b.placed(last) || !on(first) && !on(last) {
			continue
		}
		u, v := before.Legs[0].U, behind.Legs[0].U
		at, radius := drum(b.p.Points[first].At, b.p.Points[last].At, u, v, Flat*b.out.Size)
		data := append(frictionOf(belt.Friction), With([]drawing.Run{{Text: ", "}, {Text: "β", Style: drawing.Italic}}, " = "+units.Compact(b.p.Units.Angle.In(belt.Wrap))+" "+b.p.Units.Angle.Symbol)...)
		axis := unit(r3.Cross(u, v))
		if axis == (r3.Vec{}) {
			axis = r3.Vec{Z: 1}
		}
		t := Thing{Kind: Disc, Ref: before.Ref, At: []r3.Vec{at}, Along: axis, Radius: radius}
		if b.whole {
			t.Label = Label{Runs: data, Rank: OfSize}
		}
		b.add(t)
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

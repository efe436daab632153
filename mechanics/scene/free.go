package scene

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/ink"
	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/mechanics/working"
)

// Free is one body cut free, with every force on it. Without a solution unknown forces
// have no values, and the sense that counts as positive.
func Free(p *problem.Problem, sol *statics.Solution, body int) Scene {
	s := Part(p, sol, working.Subject{Bodies: []int{body}})
	s.Title = "free-body diagram of " + p.Bodies[body].Name
	return s
}

// Part shows what a step of a working speaks of and nothing else: bodies cut free with
// what acts on them from outside, all of it or what the subject lists; a line without a
// body is the vector from its first point to its next. An empty subject is the whole
// problem.
func Part(p *problem.Problem, sol *statics.Solution, about working.Subject) Scene {
	if p == nil || len(about.Bodies)+len(about.Points)+len(about.Lines)+len(about.Joints)+len(about.Couples)+len(about.Loads) == 0 && about.Axis == nil {
		return System(p, sol, Options{})
	}
	b := newBuilder(p, sol, Options{})
	b.maximum(func(yield func(*problem.Act) bool) {
		for a := range p.Acts() {
			if (len(about.Bodies) == 0 || slices.Contains(about.Bodies, a.Body)) && !yield(a) {
				return
			}
		}
	})
	named := make([]bool, len(p.Points))
	for _, i := range about.Points {
		named[i] = true
	}
	if len(about.Bodies) > 0 {
		b.cut(about, named)
	} else {
		b.alone(about, named)
	}
	if about.Axis != nil {
		b.centre(*about.Axis)
	}
	b.names(func(i int) bool { return named[i] })
	return b.out
}

// cut draws bodies cut free, with what acts on them from outside.
func (b *builder) cut(about working.Subject, named []bool) {
	listed := len(about.Lines) + len(about.Joints) + len(about.Couples) + len(about.Loads)
	shows := func(list []int, i int) bool { return listed == 0 || slices.Contains(list, i) }
	on := func(body int) bool { return slices.Contains(about.Bodies, body) }
	b.out.Reach = nil
	for _, i := range about.Bodies {
		if i < 0 || i >= len(b.p.Bodies) {
			continue
		}
		b.body(i)
		b.out.Reach = append(b.out.Reach, b.places(i)...)
		for _, k := range b.p.Bodies[i].Points {
			if b.placed(k) {
				named[k] = true
				if !b.p.Bodies[i].Particle {
					b.add(Thing{Kind: Dot, Ref: b.p.Points[k].Ref, At: []r3.Vec{b.p.Points[k].At}})
				}
			}
		}
		if listed != 1 {
			b.weight(i)
		}
	}
	b.loads(func(l *problem.Distributed) bool {
		return on(l.Body) && shows(about.Loads, slices.IndexFunc(b.p.Loads, func(o problem.Distributed) bool { return o.Name == l.Name }))
	})
	for i := range b.p.Lines {
		l := &b.p.Lines[i]
		if !l.OK || !shows(about.Lines, i) {
			continue
		}
		outside := 0
		for _, a := range l.Acts {
			if on(a.Body) {
				outside++
			}
		}
		for k := range l.Acts {
			a := &l.Acts[k]
			switch {
			case !on(a.Body):
			case outside == 2 && len(l.Path) <= 2 && len(about.Bodies) > 1: // inside: its two forces cancel
			case l.Kind.Info().Path && a.Point >= 0:
				b.member(l, a)
			default:
				b.directed(l, a, false)
			}
		}
	}
	for i := range b.p.Joints {
		j := &b.p.Joints[i]
		if !j.OK || on(j.First) && on(j.Second) || !shows(about.Joints, i) {
			continue
		}
		for k := range j.Acts {
			if on(j.Acts[k].Body) {
				b.joint(j, &j.Acts[k])
			}
		}
	}
	for i := range b.p.Couples {
		c := &b.p.Couples[i]
		if !c.OK || !shows(about.Couples, i) {
			continue
		}
		for k := range c.Acts {
			if on(c.Acts[k].Body) {
				b.typedCouple(c, &c.Acts[k])
			}
		}
	}
}

// alone draws what a step speaks of without a body.
func (b *builder) alone(about working.Subject, named []bool) {
	for _, i := range about.Lines {
		if i < 0 || i >= len(b.p.Lines) || !b.p.Lines[i].OK {
			continue
		}
		l := &b.p.Lines[i]
		for k, leg := range l.Legs {
			if !b.placed(leg.From) {
				continue
			}
			named[leg.From] = true
			const free = 0.25 // of the size: how long a direction is drawn
			to := r3.Add(b.p.Points[leg.From].At, r3.Scale(free*b.out.Size, leg.U))
			if leg.To >= 0 {
				named[leg.To], to = true, b.p.Points[leg.To].At
			}
			t := Thing{Kind: Vector, Ref: l.Ref, At: []r3.Vec{b.p.Points[leg.From].At, to}, Tone: ink.Found}
			if k == 0 {
				t.Label = Label{Runs: Typeset(l.Name), Short: Typeset(l.Name), Rank: rank(len(l.Magnitude.Terms))}
			}
			b.add(t)
		}
	}
	for _, i := range about.Joints {
		if i >= 0 && i < len(b.p.Joints) && b.p.Joints[i].OK && len(b.p.Joints[i].Acts) > 0 {
			named[b.p.Joints[i].Point] = true
			b.joint(&b.p.Joints[i], &b.p.Joints[i].Acts[0])
		}
	}
	b.loads(func(l *problem.Distributed) bool {
		return slices.ContainsFunc(about.Loads, func(i int) bool { return i >= 0 && i < len(b.p.Loads) && b.p.Loads[i].Name == l.Name })
	})
	for _, i := range about.Couples {
		if i >= 0 && i < len(b.p.Couples) && b.p.Couples[i].OK && len(b.p.Couples[i].Acts) > 0 {
			b.typedCouple(&b.p.Couples[i], &b.p.Couples[i].Acts[0])
		}
	}
}

// centre draws the point or the axis that moments are taken about.
func (b *builder) centre(a working.Axis) {
	at := r3.Vec{X: a.At[0], Y: a.At[1], Z: a.At[2]}
	along := unit(r3.Vec{X: a.Along[0], Y: a.Along[1], Z: a.Along[2]})
	if b.p.Planar {
		along = r3.Vec{}
	}
	b.add(Thing{Kind: Centre, At: []r3.Vec{at}, Along: along})
}

// gap is the share of the largest force that a polygon which closes may leave open by
// rounding.
const gap = 1e-6

// Polygon is the force polygon of a body: the forces on it in its solution, head to tail,
// in newtons instead of metres, and what is missing where it does not close. ok is false
// where a force is not known, or there is none.
func Polygon(p *problem.Problem, sol *statics.Solution, body int) (s Scene, ok bool) {
	if p == nil || sol == nil || body < 0 || body >= len(p.Bodies) {
		return Scene{}, false
	}
	b := newBuilder(p, sol, Options{})
	var at r3.Vec
	known := b.sol != nil
	add := func(acts []problem.Act, t Thing) {
		for _, a := range acts {
			if a.Body != body {
				continue
			}
			f := a.Force.Sum(func(j int) float64 {
				x, found := b.unknown(j)
				known = known && found
				return x
			})
			if !finite(f) {
				continue
			}
			b.max = math.Max(b.max, r3.Norm(f))
			next := r3.Add(at, f)
			t.Kind, t.Tone, t.At, t.Label.Short, t.Label.Rank = Vector, ink.Found, []r3.Vec{at, next}, t.Label.Runs, OfForce
			b.add(t)
			at = next
		}
	}
	for _, l := range p.Lines {
		if l.OK {
			add(l.Acts, Thing{Ref: l.Ref, Label: Label{Runs: Typeset(l.Name)}})
		}
	}
	for _, j := range p.Joints {
		if j.OK {
			add(j.Acts, Thing{Ref: j.Ref, Label: Label{Runs: Typeset(j.Name)}})
		}
	}
	add(p.Bodies[body].Acts, Thing{Ref: p.Bodies[body].Ref, Label: Label{Runs: Typeset("W")}})
	if !known || len(b.out.Things) == 0 {
		return Scene{}, false
	}
	if r3.Norm(at) > gap*b.max {
		b.add(Thing{Kind: Vector, Ref: p.Bodies[body].Ref, At: []r3.Vec{at, {}}, Open: true, Label: Label{Runs: Plain("gap"), Short: Plain("gap"), Rank: OfForce}})
	}
	b.out.Size, b.out.Reach, b.out.Title = b.max, nil, "force polygon of "+p.Bodies[body].Name
	return b.out, true
}

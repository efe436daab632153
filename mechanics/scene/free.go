package scene

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/drawing"
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
	b.maximum(about.Bodies)
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
	b.names(named)
	return b.out
}

// cut draws bodies cut free, with what acts on them from outside.
func (b *builder) cut(about working.Subject, named []bool) {
	listed := len(about.Lines) + len(about.Joints) + len(about.Couples) + len(about.Loads)
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
	for i := range b.p.Lines { // members within a part that is cut free
		if l := &b.p.Lines[i]; l.OK && l.Kind.Info().Path && len(about.Bodies) > 1 && len(l.Path) == 2 && on(b.p.Points[l.Path[0]].Body) && on(b.p.Points[l.Path[1]].Body) {
			b.path(l)
		}
	}
	b.drums(about.Bodies)
	b.loads(func(i int) bool { return on(b.p.Loads[i].Body) && (listed == 0 || slices.Contains(about.Loads, i)) })
	acting := map[problem.Source]int{} // on how many of the bodies
	for from, a := range b.p.Exerted() {
		if on(a.Body) {
			acting[from]++
		}
	}
	for from, a := range b.p.Exerted() {
		bent := from.Thing == problem.ALine && len(b.p.Lines[from.Index].Path) > 2
		inside := acting[from] == 2 && len(about.Bodies) > 1 && !bent // its two forces cancel
		if on(a.Body) && !inside && (listed == 0 || speaksOf(about, from)) {
			b.act(from, a)
		}
	}
}

// speaksOf tells that a subject lists what exerts an act.
func speaksOf(about working.Subject, from problem.Source) bool {
	lists := map[problem.Thing][]int{problem.ALine: about.Lines, problem.AJoint: about.Joints, problem.ACouple: about.Couples}
	return slices.Contains(lists[from.Thing], from.Index)
}

// alone draws what a step speaks of without a body.
func (b *builder) alone(about working.Subject, named []bool) {
	for _, i := range about.Lines {
		if i >= 0 && i < len(b.p.Lines) && b.p.Lines[i].OK {
			for leg, t := range b.stretches(&b.p.Lines[i], Vector) {
				named[leg.From] = true
				if leg.To >= 0 {
					named[leg.To] = true
				}
				t.Tone = drawing.Found
				b.add(t)
			}
		}
	}
	b.loads(func(i int) bool { return slices.Contains(about.Loads, i) })
	var last problem.Source
	for from, a := range b.p.Exerted() {
		if from != last && from.Thing != problem.ALine && speaksOf(about, from) {
			if b.placed(a.Point) && from.Thing == problem.AJoint {
				named[a.Point] = true
			}
			b.act(from, a)
		}
		last = from
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
	for from, a := range p.Exerted() {
		if a.Body != body {
			continue
		}
		f := a.Force.Const
		for _, term := range a.Force.Terms {
			x, found := b.unknown(term.Unknown)
			f, known = r3.Add(f, r3.Scale(x, term.D)), known && found
		}
		if !finite(f) {
			continue
		}
		b.max = math.Max(b.max, r3.Norm(f))
		next := r3.Add(at, f)
		t := Thing{Kind: Vector, Ref: p.Bodies[body].Ref, Tone: drawing.Found, At: []r3.Vec{at, next}, Label: called(Typeset("W"), OfForce)}
		switch from.Thing {
		case problem.ALine:
			t.Ref, t.Label = p.Lines[from.Index].Ref, called(Typeset(p.Lines[from.Index].Name), OfForce)
		case problem.AJoint:
			t.Ref, t.Label = p.Joints[from.Index].Ref, called(Typeset(p.Joints[from.Index].Name), OfForce)
		}
		b.add(t)
		at = next
	}
	if !known || len(b.out.Things) == 0 {
		return Scene{}, false
	}
	if r3.Norm(at) > gap*b.max {
		b.add(Thing{Kind: Vector, Ref: p.Bodies[body].Ref, At: []r3.Vec{at, {}}, Open: true, Label: called(Plain("gap"), OfForce)})
	}
	b.out.Size, b.out.Reach, b.out.Title = b.max, nil, "force polygon of "+p.Bodies[body].Name
	return b.out, true
}

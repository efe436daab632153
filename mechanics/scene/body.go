package scene

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
)

// places are the points of a body that read.
func (b *builder) places(i int) (pts []r3.Vec) {
	if i < 0 || i >= len(b.p.Bodies) {
		return nil
	}
	for _, k := range b.p.Bodies[i].Points {
		if b.placed(k) {
			pts = append(pts, b.p.Points[k].At)
		}
	}
	return pts
}

// body draws a rigid body: a shaft with its wheels, a block or plate by its outline, else
// bars through its points.
func (b *builder) body(i int) {
	body := &b.p.Bodies[i]
	pts := b.places(i)
	if body.Particle {
		for _, at := range pts {
			b.add(Thing{Kind: Dot, Ref: body.Ref, At: []r3.Vec{at}, Radius: 1})
		}
		return
	}
	if corners := b.corners(body); corners != nil {
		b.add(Thing{Kind: Outline, Ref: body.Ref, At: corners})
		return
	}
	if b.shaft(i, pts) {
		return
	}
	for _, outline := range []func(int, []r3.Vec) []r3.Vec{b.slab, b.standing, b.plate} {
		if corners := outline(i, pts); corners != nil {
			b.add(Thing{Kind: Outline, Ref: body.Ref, At: corners})
			return
		}
	}
	if bars := tree(pts); bars != nil {
		b.add(Thing{Kind: Bar, Ref: body.Ref, At: bars})
	}
}

// corners are those of the outline that a body is given.
func (b *builder) corners(body *problem.Body) (at []r3.Vec) {
	for _, k := range body.Outline {
		if b.placed(k) {
			at = append(at, b.p.Points[k].At)
		}
	}
	return at
}

// shaft draws a body that rotates in two bearings or more on one axis: a straight bar
// along it, and a wheel or an arm where a point lies off it.
func (b *builder) shaft(i int, pts []r3.Vec) bool {
	var axis, on r3.Vec
	bearings := 0
	for k := range b.p.Joints {
		j := &b.p.Joints[k]
		if !j.OK || !b.placed(j.Point) || j.First != i && j.Second != i || !finite(j.Axis) {
			continue
		}
		at := b.p.Points[j.Point].At
		switch off := r3.Sub(at, on); {
		case bearings == 0:
			axis, on, bearings = j.Axis, at, 1
		case r3.Norm(r3.Cross(axis, j.Axis)) < Flat && r3.Norm(r3.Cross(off, axis)) < Flat*b.out.Size && !b.near(at, on):
			bearings++
		}
	}
	if bearings < 2 {
		return false
	}
	low, high := 0.0, 0.0
	ref := b.p.Bodies[i].Ref
	var arms []r3.Vec
	var wheels []Thing
	for k, q := range pts {
		along := r3.Dot(r3.Sub(q, on), axis)
		foot := r3.Add(on, r3.Scale(along, axis))
		low, high = math.Min(low, along), math.Max(high, along)
		switch {
		case b.near(q, foot):
		case b.belted(b.p.Bodies[i].Points[k], foot, axis):
			wheels = append(wheels, Thing{Kind: Disc, Ref: ref, At: []r3.Vec{foot}, Along: axis, Radius: r3.Norm(r3.Sub(q, foot))})
		default:
			arms = append(arms, foot, q)
		}
	}
	ends := []r3.Vec{r3.Add(on, r3.Scale(low, axis)), r3.Add(on, r3.Scale(high, axis))}
	b.out.Things = append(append(b.out.Things, Thing{Kind: Bar, Ref: ref, At: append(ends, arms...)}), wheels...)
	return true
}

// belted tells that a rope or belt leaves a point perpendicular to its radius from the
// foot on the axis, as it does from the rim of a wheel, or that two forces act so on it.
func (b *builder) belted(point int, foot, axis r3.Vec) bool {
	const square = 0.02
	radius := r3.Norm(r3.Sub(b.p.Points[point].At, foot))
	forces := 0
	for i := range b.p.Lines {
		l := &b.p.Lines[i]
		for _, leg := range l.Legs {
			for _, end := range [2]int{leg.From, leg.To} {
				if !l.OK || !b.placed(end) || end != point && l.Kind != problem.Force {
					continue
				}
				r := r3.Sub(b.p.Points[end].At, foot)
				tangent := math.Abs(r3.Dot(leg.U, r)) <= square*radius && math.Abs(r3.Dot(leg.U, axis)) <= square
				if !tangent || math.Abs(r3.Norm(r)-radius) > Flat*b.out.Size || math.Abs(r3.Dot(r, axis)) > Flat*b.out.Size {
					continue
				}
				if l.Kind == problem.Cable || l.Kind == problem.BeltKind {
					return true
				}
				forces++
			}
		}
	}
	return forces > 1
}

// maxJoined bounds the work for a body of very many points.
const maxJoined = 300

// tree gives the ends of the bars of the shortest tree through places (Prim's algorithm): a
// beam comes out as a line, a bracket with its arms.
func tree(pts []r3.Vec) (ends []r3.Vec) {
	pts = pts[:min(len(pts), maxJoined)]
	if len(pts) < 2 {
		return nil
	}
	far, from, in := make([]float64, len(pts)), make([]int, len(pts)), make([]bool, len(pts))
	for i := range far {
		far[i] = math.Inf(1)
	}
	for last := 0; len(ends) < 2*len(pts)-2; {
		in[last] = true
		next := -1
		for i, q := range pts {
			if l := r3.Norm(r3.Sub(q, pts[last])); !in[i] && l < far[i] {
				far[i], from[i] = l, last
			}
			if !in[i] && (next < 0 || far[i] < far[next]) {
				next = i
			}
		}
		ends = append(ends, pts[from[next]], pts[next])
		last = next
	}
	return ends
}

// leaving gives the directions in which bars or members with these ends leave a place.
func (b *builder) leaving(at r3.Vec, ends []r3.Vec) (ways []r3.Vec) {
	for i, end := range ends {
		if b.near(end, at) {
			ways = append(ways, unit(r3.Sub(ends[i^1], end))) // the other end of the pair
		}
	}
	return ways
}

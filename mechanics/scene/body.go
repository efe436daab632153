package scene

import (
	"math"
	"slices"

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

// body draws a rigid body: a shaft with its wheels, a wheel, a block or plate by its outline, else
// bars through its points.
func (b *builder) body(i int) {
	for _, t := range b.look(i, b.places(i)) {
		t.Ref, t.Body = b.p.Bodies[i].Ref, b.p.Bodies[i].Name
		b.add(t)
	}
}

// look is what a body with these points looks like.
func (b *builder) look(i int, pts []r3.Vec) (things []Thing) {
	if b.p.Bodies[i].Particle {
		for _, at := range pts {
			things = append(things, Thing{Kind: Dot, At: []r3.Vec{at}, Radius: 1})
		}
		return things
	}
	if corners := b.corners(i); corners != nil {
		return []Thing{{Kind: Outline, At: corners}}
	}
	for _, round := range []func(int, []r3.Vec) []Thing{b.shaft, b.wheel} {
		if things := round(i, pts); things != nil {
			return things
		}
	}
	for _, outline := range []func(int, []r3.Vec) []r3.Vec{b.slab, b.standing, b.plate} {
		if corners := outline(i, pts); corners != nil {
			return []Thing{{Kind: Outline, At: corners}}
		}
	}
	if bars := tree(pts); bars != nil {
		return []Thing{{Kind: Bar, At: bars}}
	}
	return nil
}

// corners are those of the outline that a body is given.
func (b *builder) corners(i int) (at []r3.Vec) {
	for _, k := range b.p.Bodies[i].Outline {
		if b.placed(k) {
			at = append(at, b.p.Points[k].At)
		}
	}
	return at
}

// shaft draws a body that rotates in two bearings or more on one axis: a straight bar
// along it, and a wheel or an arm where a point lies off it.
func (b *builder) shaft(i int, pts []r3.Vec) []Thing {
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
		return nil
	}
	low, high := 0.0, 0.0
	var arms []r3.Vec
	var wheels []Thing
	for k, q := range pts {
		along := r3.Dot(r3.Sub(q, on), axis)
		foot := r3.Add(on, r3.Scale(along, axis))
		low, high = math.Min(low, along), math.Max(high, along)
		switch {
		case b.near(q, foot):
		case b.belted(b.p.Bodies[i].Points[k], foot, axis, true):
			wheels = append(wheels, Thing{Kind: Disc, At: []r3.Vec{foot}, Along: axis, Radius: r3.Norm(r3.Sub(q, foot))})
		default:
			arms = append(arms, foot, q)
		}
	}
	ends := []r3.Vec{r3.Add(on, r3.Scale(low, axis)), r3.Add(on, r3.Scale(high, axis))}
	return append([]Thing{{Kind: Bar, At: append(ends, arms...)}}, wheels...)
}

// wheel is a body in the plane that is a wheel, a pulley or a pipe about one of its points:
// all others lie on one circle, and a rope leaves them, or a surface touches them, as it
// does on a rim.
func (b *builder) wheel(i int, pts []r3.Vec) []Thing {
	points := b.p.Bodies[i].Points
	if !b.p.Planar || len(pts) < 3 || len(pts) < len(points) {
		return nil
	}
	axis := r3.Vec{Z: 1}
	for _, centre := range pts {
		radius := 0.0
		for _, q := range pts {
			radius = math.Max(radius, r3.Norm(r3.Sub(q, centre)))
		}
		within := func(point int) bool { // neither the centre nor on the rim
			q := b.p.Points[point].At
			rim := radius-r3.Norm(r3.Sub(q, centre)) <= Flat*b.out.Size && (b.belted(point, centre, axis, false) || b.rolls(point, centre))
			return !rim && !b.near(q, centre)
		}
		if !slices.ContainsFunc(points, within) {
			return []Thing{{Kind: Disc, At: []r3.Vec{centre}, Along: axis, Radius: radius}}
		}
	}
	return nil
}

// rolls tells that a surface touches a body at a point, perpendicular to the radius.
func (b *builder) rolls(point int, centre r3.Vec) bool {
	return slices.ContainsFunc(b.p.Joints, func(j problem.Joint) bool {
		return j.OK && j.Point == point && !j.HasFace && finite(j.Normal) && r3.Norm(r3.Cross(j.Normal, unit(r3.Sub(b.p.Points[point].At, centre)))) <= Flat
	})
}

// belted tells that a rope or belt leaves a point perpendicular to its radius from the
// foot on the axis, as it does from the rim of a wheel, or where forces count, that two of
// them act so on it.
func (b *builder) belted(point int, foot, axis r3.Vec, count bool) bool {
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
	return count && forces > 1
}

// maxJoined bounds the work for a body of very many points.
const maxJoined = 300

// tree gives the ends of the bars of the shortest tree through places (Prim's algorithm): a
// beam comes out as a line, a bracket with its arms. Of very many, each further one is joined
// to the one before it.
func tree(all []r3.Vec) (ends []r3.Vec) {
	pts := all[:min(len(all), maxJoined)]
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
	for i := len(pts); i < len(all); i++ {
		ends = append(ends, all[i-1], all[i])
	}
	return ends
}

// straight is a straight part of a thing.
type straight struct {
	from, to r3.Vec
	thing    int
}

// layer is the one of the problem, of those across a slanted axis, that a place lies in.
func (b *builder) layer(q r3.Vec) int {
	slanted := r3.Vec{X: 0.8, Y: 0.48, Z: 0.36}
	k := math.Floor(r3.Dot(q, slanted) / b.out.Size * b.layers)
	if !(math.Abs(k) < math.MaxInt32) { // beyond what is drawn
		return 0
	}
	return int(k)
}

// leaving gives the directions in which the straight parts of the things that count leave a
// place.
func (b *builder) leaving(at r3.Vec, counts func(*Thing) bool) (ways []r3.Vec) {
	for _, l := range b.lines[b.layer(at)] {
		if counts(&b.out.Things[l.thing]) {
			ways = append(ways, b.ways(at, l.from, l.to)...)
		}
	}
	return ways
}

// ways are the directions in which a line leaves a place: two where it passes through.
func (b *builder) ways(at, from, to r3.Vec) (ways []r3.Vec) {
	near := Flat * b.out.Size
	if OffLine(at, from, to) > near {
		return nil
	}
	u := unit(r3.Sub(to, from))
	start, end := r3.Dot(r3.Sub(from, at), u), r3.Dot(r3.Sub(to, at), u)
	if start <= near && end > near {
		ways = append(ways, u)
	}
	if start < -near && end >= -near {
		ways = append(ways, r3.Scale(-1, u))
	}
	return ways
}

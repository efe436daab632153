package scene

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// standing gives the corners of a body that rests on a face: a rectangle on that
// face, as high as its points reach and centred on its centre of gravity.
func (b *builder) standing(i int, pts []r3.Vec) []r3.Vec {
	if !b.p.Planar {
		return nil
	}
	body := &b.p.Bodies[i]
	for _, j := range b.p.Joints {
		if !j.OK || !j.HasFace || j.First != i && j.Second != i {
			continue
		}
		if j.First != i && !slices.Contains(body.Points, j.Face[0]) {
			continue
		}
		a, c, up := b.p.Points[j.Face[0]].At, b.p.Points[j.Face[1]].At, j.Normal
		if j.First != i {
			up = r3.Scale(-1, up)
		}
		top := 0.0
		for _, q := range pts {
			top = math.Max(top, r3.Dot(r3.Sub(q, a), up))
		}
		if body.Weight > 0 {
			top = math.Max(top, 2*r3.Dot(r3.Sub(body.Centre, a), up))
		}
		if top <= 0 {
			return nil
		}
		return block(a, unit(r3.Sub(c, a)), r3.Scale(top, up), append(slices.Clone(pts), c))
	}
	return nil
}

// block gives the corners of a rectangle on the line along u through a: as long as places
// reach, and as high as up is long.
func block(a, u, up r3.Vec, places []r3.Vec) []r3.Vec {
	low, high := 0.0, 0.0
	for _, q := range places {
		x := r3.Dot(r3.Sub(q, a), u)
		low, high = math.Min(low, x), math.Max(high, x)
	}
	from, to := r3.Add(a, r3.Scale(low, u)), r3.Add(a, r3.Scale(high, u))
	return []r3.Vec{from, to, r3.Add(to, up), r3.Add(from, up)}
}

// OffLine is the distance of q from the line through a and b.
func OffLine(q, a, b r3.Vec) float64 {
	return r3.Norm(r3.Cross(r3.Sub(q, a), unit(r3.Sub(b, a))))
}

// slab gives the corners of a body in the plane whose points lie on a line and
// whose centre of gravity lies well off it: a block that reaches as far on the
// other side of its centre.
func (b *builder) slab(i int, pts []r3.Vec) []r3.Vec {
	body := &b.p.Bodies[i]
	if !b.p.Planar || body.Weight == 0 {
		return nil
	}
	bars := tree(pts)
	if bars == nil {
		return nil
	}
	on, along := bars[0], unit(r3.Sub(bars[1], bars[0]))
	if slices.ContainsFunc(pts, func(q r3.Vec) bool { return OffLine(q, on, bars[1]) > Flat*b.out.Size }) {
		return nil
	}
	off := r3.Sub(body.Centre, on)
	off = r3.Sub(off, r3.Scale(r3.Dot(off, along), along))
	corners := block(on, along, r3.Scale(2, off), pts)
	const well = 0.15 // of its length: less is a bar whose weight is not drawn on it
	if r3.Norm(off) < well*r3.Norm(r3.Sub(corners[1], corners[0])) {
		return nil
	}
	return corners
}

// plate gives the outline of a body in space that is a plate: its points lie
// in one plane and its centre of gravity off the bars between them, or four of
// them are corners.
func (b *builder) plate(i int, pts []r3.Vec) []r3.Vec {
	body := &b.p.Bodies[i]
	corners := hull(pts)
	if len(corners) < 3 || body.Weight == 0 && (b.p.Planar || len(corners) < 4) {
		return nil // a bent bar, as far as anyone can tell
	}
	if body.Weight > 0 {
		pts = slices.DeleteFunc(slices.Clone(pts), func(q r3.Vec) bool { return b.near(q, body.Centre) })
		for l := range slices.Chunk(tree(pts), 2) {
			if OffLine(body.Centre, l[0], l[1]) <= Flat*b.out.Size {
				return nil
			}
		}
	}
	return corners
}

// furthest is the place that is furthest from the first.
func furthest(pts []r3.Vec) (far r3.Vec) {
	far = pts[0]
	for _, q := range pts {
		if r3.Norm(r3.Sub(q, pts[0])) > r3.Norm(r3.Sub(far, pts[0])) {
			far = q
		}
	}
	return far
}

// hull gives the corners of the convex hull of points of one plane, in order;
// nothing where they lie on a line or not in a plane.
func hull(pts []r3.Vec) (corners []r3.Vec) {
	if len(pts) < 3 {
		return nil
	}
	o, far, normal := pts[0], furthest(pts), r3.Vec{}
	size, along := r3.Norm(r3.Sub(far, o)), unit(r3.Sub(far, o))
	for _, q := range pts {
		if c := r3.Cross(along, r3.Sub(q, o)); r3.Norm(c) > r3.Norm(normal) {
			normal = c
		}
	}
	if r3.Norm(normal) <= Flat*size {
		return nil
	}
	normal = unit(normal)
	if slices.ContainsFunc(pts, func(q r3.Vec) bool { return math.Abs(r3.Dot(r3.Sub(q, o), normal)) > Flat*size }) {
		return nil
	}
	// Jarvis's march: from each corner to the place that has all others on its left.
	for at := far; len(corners) < len(pts); {
		corners = append(corners, at)
		next := at
		for _, q := range pts {
			turn := r3.Dot(r3.Cross(r3.Sub(next, at), r3.Sub(q, at)), normal)
			straight := math.Abs(turn) <= Flat*Flat*size*size
			if straight && r3.Norm(r3.Sub(q, at)) > r3.Norm(r3.Sub(next, at)) || !straight && turn < 0 {
				next = q
			}
		}
		if at = next; at == far {
			break
		}
	}
	return corners
}

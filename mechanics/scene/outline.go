package scene

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// standing gives the corners of a body that rests on a face: a rectangle on that
// face, as high as its points reach and centred on its centre of gravity.
func (b *builder) standing(i int, _ []r3.Vec) []r3.Vec {
	if !b.p.Planar {
		return nil
	}
	body := &b.p.Bodies[i]
	for _, j := range b.p.Joints {
		if !j.OK || !j.HasFace || j.First != i && j.Second != i {
			continue
		}
		a, c := b.p.Points[j.Face[0]].At, b.p.Points[j.Face[1]].At
		if j.First != i && !slices.Contains(body.Points, j.Face[0]) {
			continue
		}
		along, up := r3.Unit(r3.Sub(c, a)), j.Normal
		if j.First != i {
			up = r3.Scale(-1, up)
		}
		low, high, top := 0.0, r3.Dot(r3.Sub(c, a), along), 0.0
		for _, k := range body.Points {
			q := r3.Sub(b.p.Points[k].At, a)
			low, high, top = math.Min(low, r3.Dot(q, along)), math.Max(high, r3.Dot(q, along)), math.Max(top, r3.Dot(q, up))
		}
		if body.Weight > 0 {
			top = math.Max(top, 2*r3.Dot(r3.Sub(body.Centre, a), up))
		}
		if top <= 0 {
			return nil
		}
		at := func(x, y float64) r3.Vec { return r3.Add(a, r3.Add(r3.Scale(x, along), r3.Scale(y, up))) }
		return []r3.Vec{at(low, 0), at(high, 0), at(high, top), at(low, top)}
	}
	return nil
}

// offLine is the distance of q from the line through a and b.
func offLine(q, a, b r3.Vec) float64 {
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
	legs := Tree(pts)
	if len(legs) == 0 {
		return nil
	}
	along := unit(r3.Sub(legs[0][1], legs[0][0]))
	low, high := 0.0, 0.0
	for _, k := range body.Points {
		q := r3.Sub(b.p.Points[k].At, legs[0][0])
		if b.placed(k) && r3.Norm(r3.Cross(q, along)) > Flat*b.out.Size {
			return nil
		}
		low, high = math.Min(low, r3.Dot(q, along)), math.Max(high, r3.Dot(q, along))
	}
	off := r3.Sub(body.Centre, legs[0][0])
	off = r3.Sub(off, r3.Scale(r3.Dot(off, along), along))
	const well = 0.15 // of its length: less is a bar whose weight is not drawn on it
	if r3.Norm(off) < well*(high-low) {
		return nil
	}
	at := func(x, k float64) r3.Vec {
		return r3.Add(legs[0][0], r3.Add(r3.Scale(x, along), r3.Scale(k, off)))
	}
	return []r3.Vec{at(low, 0), at(high, 0), at(high, 2), at(low, 2)}
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
		pts = slices.DeleteFunc(slices.Clone(pts), func(q r3.Vec) bool { return r3.Norm(r3.Sub(q, body.Centre)) <= Flat*b.out.Size })
		for _, l := range Tree(pts) {
			if offLine(body.Centre, l[0], l[1]) <= Flat*b.out.Size {
				return nil
			}
		}
	}
	return corners
}

// hull gives the corners of the convex hull of points of one plane, in order;
// nothing where they lie on a line or not in a plane.
func hull(pts []r3.Vec) []r3.Vec {
	if len(pts) < 3 {
		return nil
	}
	o := pts[0]
	size := 0.0
	var along, normal r3.Vec
	for _, q := range pts {
		if n := r3.Norm(r3.Sub(q, o)); n > size {
			size, along = n, r3.Scale(1/n, r3.Sub(q, o))
		}
	}
	for _, q := range pts {
		if c := r3.Cross(along, r3.Sub(q, o)); r3.Norm(c) > r3.Norm(normal) {
			normal = c
		}
	}
	if r3.Norm(normal) <= Flat*size {
		return nil
	}
	normal = r3.Unit(normal)
	across := r3.Cross(normal, along)
	type flatPoint struct {
		x, y float64
		q    r3.Vec
	}
	var all []flatPoint
	for _, q := range pts {
		r := r3.Sub(q, o)
		if math.Abs(r3.Dot(r, normal)) > Flat*size {
			return nil
		}
		all = append(all, flatPoint{r3.Dot(r, along), r3.Dot(r, across), q})
	}
	// Andrew's monotone chain.
	slices.SortFunc(all, func(a, b flatPoint) int {
		if a.x < b.x || a.x == b.x && a.y < b.y {
			return -1
		}
		return 1
	})
	half := func(pts []flatPoint) (out []flatPoint) {
		for _, q := range pts {
			for len(out) > 1 {
				a, b := out[len(out)-2], out[len(out)-1]
				if (b.x-a.x)*(q.y-a.y)-(b.y-a.y)*(q.x-a.x) > Flat*Flat*size*size {
					break
				}
				out = out[:len(out)-1]
			}
			out = append(out, q)
		}
		return out[:len(out)-1]
	}
	lower := half(all)
	slices.Reverse(all)
	var corners []r3.Vec
	for _, c := range append(lower, half(all)...) {
		corners = append(corners, c.q)
	}
	return corners
}

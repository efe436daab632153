package plate

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/figure"
)

// standing gives the corners of a body that rests on a face: a rectangle on that
// face, as high as its points reach and centred on its centre of gravity.
func (s *sketch) standing(i int) []r3.Vec {
	if !s.p.Planar {
		return nil
	}
	b := &s.p.Bodies[i]
	for _, j := range s.p.Joints {
		if !j.OK || !j.HasFace || j.First != i && j.Second != i {
			continue
		}
		a, c := s.p.Points[j.Face[0]].At, s.p.Points[j.Face[1]].At
		if j.First != i && !slices.Contains(b.Points, j.Face[0]) {
			continue
		}
		along, up := r3.Unit(r3.Sub(c, a)), j.Normal
		if j.First != i {
			up = r3.Scale(-1, up)
		}
		low, high, top := 0.0, r3.Dot(r3.Sub(c, a), along), 0.0
		for _, k := range b.Points {
			q := r3.Sub(s.p.Points[k].At, a)
			low, high, top = math.Min(low, r3.Dot(q, along)), math.Max(high, r3.Dot(q, along)), math.Max(top, r3.Dot(q, up))
		}
		if b.Weight > 0 {
			top = math.Max(top, 2*r3.Dot(r3.Sub(b.Centre, a), up))
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
func (s *sketch) slab(i int) []r3.Vec {
	b := &s.p.Bodies[i]
	if !s.p.Planar || b.Weight == 0 {
		return nil
	}
	legs := figure.Legs(s.p, i)
	if len(legs) == 0 {
		return nil
	}
	along := unit(r3.Sub(legs[0][1], legs[0][0]))
	low, high := 0.0, 0.0
	for _, k := range b.Points {
		q := r3.Sub(s.p.Points[k].At, legs[0][0])
		if s.placed(k) && r3.Norm(r3.Cross(q, along)) > flat*s.size {
			return nil
		}
		low, high = math.Min(low, r3.Dot(q, along)), math.Max(high, r3.Dot(q, along))
	}
	off := r3.Sub(b.Centre, legs[0][0])
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

// plateOf gives the outline of a body in space that is a plate: its points lie
// in one plane and its centre of gravity off the bars between them, or four of
// them are corners.
func (s *sketch) plateOf(i int) []r3.Vec {
	b := &s.p.Bodies[i]
	var pts []r3.Vec
	for _, k := range b.Points {
		if s.placed(k) {
			pts = append(pts, s.p.Points[k].At)
		}
	}
	corners := hull(pts)
	if len(corners) < 3 || b.Weight == 0 && (s.p.Planar || len(corners) < 4) {
		return nil // a bent bar, as far as anyone can tell
	}
	if b.Weight > 0 {
		pts = slices.DeleteFunc(pts, func(q r3.Vec) bool { return r3.Norm(r3.Sub(q, b.Centre)) <= flat*s.size })
		for _, l := range figure.Tree(pts) {
			if offLine(b.Centre, l[0], l[1]) <= flat*s.size {
				return nil
			}
		}
	}
	return corners
}

// flat is how far from a plane or a line a point may lie and count as on it, as
// a share of the problem's size: less than a picture shows.
const flat = 1e-3

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
	if r3.Norm(normal) <= flat*size {
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
		if math.Abs(r3.Dot(r, normal)) > flat*size {
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
				if (b.x-a.x)*(q.y-a.y)-(b.y-a.y)*(q.x-a.x) > flat*flat*size*size {
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

package problem

import (
	"trivet/mechanics/diag"
	"trivet/units"
)

func (r *reading) readPoints() {
	for i := range r.p.Points {
		r.point(i)
	}
	reach := 0.0
	for _, p := range r.p.Points {
		reach = max(reach, largest(p.At))
	}
	for i := range r.p.Points {
		r.p.Points[i].At = snapped(r.p.Points[i].At, reach)
	}
}

// point reads where a point is when first asked for, and tells whether it has a place.
func (r *reading) point(i int) bool {
	p := &r.p.Points[i]
	p.OK = r.once(p.Ref, p.Name, func() bool { return r.readPoint(i) }, "points", "give one of them coordinates")
	return p.OK
}

func (r *reading) readPoint(i int) bool {
	p := &r.p.Points[i]
	c := r.rows[p.Ref].plain()
	if !c.has {
		origin := "0, 0, 0"
		if r.p.Planar {
			origin = "0, 0"
		}
		return r.fail(p.Ref, diag.Span{}, "the point "+p.Name+" has no coordinates", origin)
	}
	v, ok := c.vector(units.Length)
	if ok {
		p.At, p.Plus = vec(v.V), vec(v.Plus)
	}
	return ok
}

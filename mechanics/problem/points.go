package problem

import (
	"gonum.org/v1/gonum/spatial/r3"

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
	p.OK = r.once(&r.pointAt[i], p.Ref, p.Name, func() bool { return r.readPoint(i) }, loopOfPoints)
	return p.OK
}

func (r *reading) readPoint(i int) bool {
	p, row := &r.p.Points[i], r.pointRows[i]
	text, ref, ok := r.plain("points", row)
	if !ok {
		return r.fail(p.Ref, diag.Span{}, "the point "+p.Name+" has no coordinates", r.origin())
	}
	v, ok := r.vectorOf(ref, text, env{r: r, scope: inGeometry}, units.Length)
	if !ok {
		return false
	}
	p.At = r3.Vec{X: v.V[0], Y: v.V[1], Z: v.V[2]}
	p.Plus = r3.Vec{X: v.Plus[0], Y: v.Plus[1], Z: v.Plus[2]}
	return true
}

func (r *reading) origin() string {
	if r.p.Planar {
		return "0, 0"
	}
	return "0, 0, 0"
}

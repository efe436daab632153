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
	switch r.pointAt[i] {
	case done:
		return true
	case failed:
		return false
	case underway:
		r.pointAt[i] = failed
		return r.fail(r.p.Points[i].Ref, diag.Span{}, "the points refer to each other in a loop, "+circle(r.chain, r.p.Points[i].Name), "give one of them coordinates")
	}
	r.pointAt[i] = underway
	r.chain = append(r.chain, r.p.Points[i].Name)
	ok := r.readPoint(i)
	r.chain = r.chain[:len(r.chain)-1]
	if !ok || r.pointAt[i] == failed {
		r.pointAt[i] = failed
		return false
	}
	r.pointAt[i] = done
	r.p.Points[i].OK = true
	return true
}

func (r *reading) readPoint(i int) bool {
	p, row := &r.p.Points[i], r.pointRows[i]
	key := ""
	if _, bare := row.Cell(""); !bare {
		key = "at"
	}
	text, ref, ok := r.text("points", row, key)
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

package problem

import "gonum.org/v1/gonum/spatial/r3"

// faceLean is how far a face may lean off the surface it rests on: rounding of
// typed coordinates is 1e-15, and 1e-9 of a length is nothing to a block.
const faceLean = 1e-9

// jointFace reads face = "A B": in the plane, the two ends of a face that rests
// on the surface. Its pressure has a resultant along the normal somewhere
// between them, so the joint holds a moment as well, as far as the face reaches.
func (r *reading) jointFace(j *Joint, w row) bool {
	c := w.cell("face")
	if k, _ := CellKey("joints", j.Name, "face"); !c.has || !k.UsedBy(j.Kind.String()) {
		return true // where it is there, it is unread, and noted
	}
	words := Fields(c.text)
	switch {
	case !r.p.Planar:
		return c.fail("a face is used in the plane only", "a joint at each corner")
	case len(words) != 2:
		return c.fail("a face extends from one point to another", "the form A B")
	}
	ends, ok := c.pointsNamed(words)
	if !ok {
		return false
	}
	j.Face = [2]int(ends)
	a, b, pt := &r.p.Points[j.Face[0]], &r.p.Points[j.Face[1]], &r.p.Points[j.Point]
	along := r3.Sub(b.At, a.At)
	u, ok := unit(along)
	off := r3.Sub(pt.At, a.At)
	off = r3.Sub(off, r3.Scale(r3.Dot(off, u), u))
	switch {
	case !ok:
		return c.fail("the face has no length", "the points at its two ends")
	case abs(r3.Dot(u, j.Normal)) > faceLean:
		return c.fail("the face is not perpendicular to the normal", "another normal, or the points at the two ends of the face")
	case r.joinsParticle(j):
		return c.fail("a particle has no face", "put its points on a body")
	case r3.Norm(off) > faceLean*r3.Norm(along):
		return c.fail("the point "+pt.Name+" of the joint is not on the line of the face", "at "+a.Name+", or at a point between "+a.Name+" and "+b.Name)
	}
	j.HasFace = true
	return true
}

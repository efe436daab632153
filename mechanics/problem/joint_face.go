package problem

import (
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
)

// faceLean is how far a face may lean off the surface it rests on: rounding of
// typed coordinates is 1e-15, and 1e-9 of a length is nothing to a block.
const faceLean = 1e-9

// jointFace reads face = "A B": in the plane, the two ends of a face that rests
// on the surface. Its pressure has a resultant along the normal somewhere
// between them, so the joint holds a moment as well, as far as the face reaches.
func (r *reading) jointFace(j *Joint, row sheet.Row) bool {
	text, ref, ok := r.text("joints", row, "face")
	if k, _ := cellKey("joints", j.Name, "face"); !ok || !k.UsedBy(j.Kind.String()) {
		return true // where it is there, it is unread, and noted
	}
	words := fields(text)
	switch {
	case !r.p.Planar:
		return r.fail(ref, whole(text), "a face is used in the plane only", "a joint at each corner")
	case len(words) != 2:
		return r.fail(ref, whole(text), "a face extends from one point to another", "the form A B")
	}
	for k, w := range words {
		if j.Face[k], ok = r.pointNamed(ref, w); !ok {
			return false
		}
	}
	along := r3.Sub(r.p.Points[j.Face[1]].At, r.p.Points[j.Face[0]].At)
	u, ok := unit(along)
	if !ok {
		return r.fail(ref, whole(text), "the face has no length", "the points at its two ends")
	}
	if abs(r3.Dot(u, j.Normal)) > faceLean {
		return r.fail(ref, whole(text), "the face is not perpendicular to the normal", "another normal, or the points at the two ends of the face")
	}
	if r.p.Bodies[j.First].Particle || j.Second != Ground && r.p.Bodies[j.Second].Particle {
		return r.fail(ref, diag.Span{}, "a particle has no face", "put its points on a body")
	}
	off := r3.Sub(r.p.Points[j.Point].At, r.p.Points[j.Face[0]].At)
	if off = r3.Sub(off, r3.Scale(r3.Dot(off, u), u)); r3.Norm(off) > faceLean*r3.Norm(along) {
		a, b := r.p.Points[j.Face[0]].Name, r.p.Points[j.Face[1]].Name
		return r.fail(ref, whole(text), "the point "+r.p.Points[j.Point].Name+" of the joint is not on the line of the face", "at "+a+", or at a point between "+a+" and "+b)
	}
	j.HasFace = true
	return true
}

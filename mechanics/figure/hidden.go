package figure

import (
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/drawing"
	"trivet/mechanics/scene"
)

// hidden draws once more, over an outline in space, the parts of members drawn before that it
// covers: dashed where they lie behind it, as a drawing office does.
func (t *setter) hidden(outline *scene.Thing, corners []drawing.Vec) {
	normal := faceOf(outline.At)
	sight := r3.Dot(normal, t.view.Toward())
	if t.scene.Planar || sight == 0 {
		return
	}
	of := t.of
	for _, i := range t.members {
		s := &t.scene.Things[i]
		a, b := s.At[0], s.At[1]
		const pieces = 48
		from := -1
		for k := range pieces + 1 {
			mid := r3.Add(a, r3.Scale((float64(k)+0.5)/pieces, r3.Sub(b, a)))
			covered := k < pieces && within(t.at(mid), corners) && r3.Dot(r3.Sub(mid, outline.At[0]), normal)/sight < -scene.Flat*t.scene.Size
			switch {
			case covered && from < 0:
				from = k
			case !covered && from >= 0:
				p := func(k int) drawing.Vec { return t.at(r3.Add(a, r3.Scale(float64(k)/pieces, r3.Sub(b, a)))) }
				t.of = i + 1
				t.dashed(drawing.Dark, cableWidth, p(from), p(k))
				from = -1
			}
		}
	}
	t.of = of
}

// faceOf is a normal of the plane that corners lie in, by Newell's sum.
func faceOf(corners []r3.Vec) (normal r3.Vec) {
	for i, q := range corners {
		normal = r3.Add(normal, r3.Cross(r3.Sub(q, corners[0]), r3.Sub(corners[(i+1)%len(corners)], corners[0])))
	}
	return normal
}

// within tells that a place lies in a polygon: a ray from it crosses its sides an odd number of
// times.
func within(q drawing.Vec, corners []drawing.Vec) (in bool) {
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		if (a.Y > q.Y) != (b.Y > q.Y) && q.X < a.X+(q.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

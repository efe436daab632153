package figure

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/drawing"
	"trivet/mechanics/scene"
)

// View is a parallel projection. Right and Up are orthogonal unit vectors of space that
// lie in the figure; Right × Up points at whoever looks.
type View struct{ Right, Up r3.Vec }

// project gives the place of p in the figure, in metres, Y downwards.
func (v View) project(p r3.Vec) drawing.Vec {
	return drawing.Vec{X: r3.Dot(p, v.Right), Y: -r3.Dot(p, v.Up)}
}

// all projects places, at so many units a metre.
func (v View) all(at []r3.Vec, scale float64) []drawing.Vec {
	pts := make([]drawing.Vec, len(at))
	for i, q := range at {
		pts[i] = v.project(q).Scale(scale)
	}
	return pts
}

// Toward is the unit vector that points at whoever looks.
func (v View) Toward() r3.Vec { return r3.Cross(v.Right, v.Up) }

// axesOf gives the directions that the views are named after: right (x, unless that is
// vertical), away (horizontal, up × right) and up.
func axesOf(s *scene.Scene) (right, away, up r3.Vec) {
	up = r3.Vec{Z: 1}
	if n := r3.Norm(s.Up); n > 0 {
		up = r3.Scale(1/n, s.Up)
	}
	// Above this share an axis is too nearly vertical to be laid flat.
	const steep = 0.9
	right = r3.Vec{X: 1}
	if math.Abs(r3.Dot(right, up)) > steep {
		right = r3.Vec{Y: 1}
	}
	right = r3.Unit(r3.Sub(right, r3.Scale(r3.Dot(right, up), up)))
	return right, r3.Cross(up, right), up
}

// Front looks along the horizontal axis; of a problem in the plane each view is that of
// the plane, x to the right and y upwards.
func Front(s *scene.Scene) View { return seen(s, 0, 1, 0, 1) }

// Side looks from the right of the front view.
func Side(s *scene.Scene) View { return seen(s, 1, 0, 0, 1) }

// Top looks down.
func Top(s *scene.Scene) View { return seen(s, 0, 1, 1, 0) }

// Space is the view of somebody who has walked round the problem by turn and looks down
// by tilt, rad.
func Space(s *scene.Scene, turn, tilt float64) View {
	sinTurn, cosTurn := math.Sincos(turn)
	sinTilt, cosTilt := math.Sincos(tilt)
	return seen(s, sinTurn, cosTurn, sinTilt, cosTilt)
}

// seen is the view by the sines and cosines of turn and tilt.
func seen(s *scene.Scene, sinTurn, cosTurn, sinTilt, cosTilt float64) View {
	if s.Planar {
		return View{r3.Vec{X: 1}, r3.Vec{Y: 1}}
	}
	right, away, up := axesOf(s)
	r := r3.Add(r3.Scale(cosTurn, right), r3.Scale(sinTurn, away))
	a := r3.Sub(r3.Scale(cosTurn, away), r3.Scale(sinTurn, right))
	return View{r, r3.Add(r3.Scale(cosTilt, up), r3.Scale(sinTilt, a))}
}

// oblique is the view in space of a page: of some ways to walk round the problem and to
// look down on it the one in which its points and members lie furthest apart. The first
// is taken unless another is clearly better.
func oblique(s *scene.Scene) View {
	if s.Planar {
		return Front(s)
	}
	best, clearest := View{}, -1.0
	const better = 1.25
	for _, turn := range []float64{-0.58, 0.58, -0.9, 0.9, -0.35, 0.35, math.Pi - 0.58, math.Pi + 0.58, math.Pi - 0.9, math.Pi + 0.9} {
		for _, tilt := range []float64{0.42, 0.28, 0.6} {
			v := Space(s, turn, tilt)
			if n := clearness(s, v); n > clearest*better || clearest < 0 {
				best, clearest = v, n
			}
		}
	}
	return best
}

// clearness says how well a view tells things apart: the least distance of two points, or of
// a point from a line that does not pass through it, as a share of the size; or the least
// angle of two lines at a point or of an arrow to the line of sight, in radians, whichever
// is less.
func clearness(s *scene.Scene, v View) float64 {
	const (
		radian               = 0.35 // is worth this share of the size
		arrow                = 0.25 // of the size: about as long is one
		maxPlaces, maxThings = 60, 100
	)
	lowest := 1.0
	places := slices.Clone(s.Reach[:min(len(s.Reach), maxPlaces)])
	var lines [][2]r3.Vec
	for i := range s.Things[:min(len(s.Things), maxThings)] {
		t := &s.Things[i]
		if t.Kind == scene.Force || t.Kind == scene.Couple {
			places = append(places, t.At[0])
		}
		if t.Kind == scene.Force {
			lines = append(lines, [2]r3.Vec{t.At[0], r3.Add(t.At[0], r3.Scale(arrow*s.Size, t.Side()))})
			lowest = math.Min(lowest, radian*v.project(t.Side()).Len())
		}
		for from, to := range t.Lines() {
			lines = append(lines, [2]r3.Vec{from, to})
		}
	}
	for i, a := range places {
		for _, b := range places[:i] {
			if d := r3.Sub(a, b); r3.Norm(d) > scene.Flat*s.Size {
				lowest = math.Min(lowest, v.project(d).Len()/s.Size)
			}
		}
		for _, l := range lines {
			if scene.OffLine(a, l[0], l[1]) > scene.Flat*s.Size {
				lowest = math.Min(lowest, drawing.Distance(v.project(a), v.project(l[0]), v.project(l[1]))/s.Size)
			}
		}
	}
	for i, a := range lines {
		for _, b := range lines[:i] {
			for _, k := range [4][2]int{{0, 0}, {0, 1}, {1, 0}, {1, 1}} { // the ends that may be one place
				if r3.Norm(r3.Sub(a[k[0]], b[k[1]])) > scene.Flat*s.Size {
					continue
				}
				u, w := v.project(r3.Unit(r3.Sub(a[1-k[0]], a[k[0]]))), v.project(r3.Unit(r3.Sub(b[1-k[1]], b[k[1]])))
				if u.Len() >= endOn && w.Len() >= endOn {
					lowest = math.Min(lowest, radian*math.Atan2(math.Abs(u.X*w.Y-u.Y*w.X), u.Dot(w)))
				}
			}
		}
	}
	return lowest
}

// endOn is the share of a direction that must show for it to be drawn along the figure
// rather than as a ring: an arrow would be shorter than a fifth of its length.
const endOn = 0.2

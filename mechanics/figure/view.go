// Package figure projects the geometry of a problem onto a plane, as strokes
// and labels that any canvas can draw: a terminal, a page, a vector file.
package figure

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
)

// Vec is a place in the picture: X to the right, Y upwards, in metres.
type Vec struct{ X, Y float64 }

// View is a parallel projection. Right and Up are orthogonal unit vectors of
// space that lie in the picture; Right × Up points at whoever looks.
type View struct{ Right, Up r3.Vec }

// Project gives the place of p in the picture.
func (v View) Project(p r3.Vec) Vec { return Vec{r3.Dot(p, v.Right), r3.Dot(p, v.Up)} }

// Toward is the unit vector that points at whoever looks.
func (v View) Toward() r3.Vec { return r3.Cross(v.Right, v.Up) }

// frame gives the directions that the views are named after: right (x, unless
// that is vertical), away (horizontal, up × right) and up.
func frame(p *problem.Problem) (right, away, up r3.Vec) {
	up = r3.Vec{Z: 1}
	if n := r3.Norm(p.Up); n > 0 {
		up = r3.Scale(1/n, p.Up)
	}
	// Below this share an axis is too nearly vertical to be laid flat.
	const steep = 0.9
	right = r3.Vec{X: 1}
	if math.Abs(r3.Dot(right, up)) > steep {
		right = r3.Vec{Y: 1}
	}
	right = r3.Unit(r3.Sub(right, r3.Scale(r3.Dot(right, up), up)))
	return right, r3.Cross(up, right), up
}

// Front looks along the horizontal direction away from the reader: x to the
// right and up upwards. A planar problem has its own plane: x right, y up.
func Front(p *problem.Problem) View {
	if p.Planar {
		return View{r3.Vec{X: 1}, r3.Vec{Y: 1}}
	}
	right, _, up := frame(p)
	return View{right, up}
}

// Side looks from the right-hand side of the front view.
func Side(p *problem.Problem) View {
	if p.Planar {
		return Front(p)
	}
	_, away, up := frame(p)
	return View{away, up}
}

// Top looks down from above, with the front edge at the bottom.
func Top(p *problem.Problem) View {
	if p.Planar {
		return Front(p)
	}
	right, away, _ := frame(p)
	return View{right, away}
}

// Space is the front view seen from elsewhere: walked round by turn (radians,
// counter-clockwise from above) and raised by tilt.
func Space(p *problem.Problem, turn, tilt float64) View {
	if p.Planar {
		return Front(p)
	}
	right, away, up := frame(p)
	sin, cos := math.Sincos(turn)
	r := r3.Add(r3.Scale(cos, right), r3.Scale(sin, away))
	a := r3.Sub(r3.Scale(cos, away), r3.Scale(sin, right))
	sin, cos = math.Sincos(tilt)
	return View{r, r3.Add(r3.Scale(cos, up), r3.Scale(sin, a))}
}

// Axis is an axis of the problem as the picture shows it: its name, where its
// unit vector ends, and whether it points at the reader (+1), away (-1) or
// neither.
type Axis struct {
	Name   string
	At     Vec
	Toward int
}

// Axes gives the axes of the problem in a view: x, y and, in space, z.
func Axes(p *problem.Problem, v View) []Axis {
	all := []struct {
		name string
		dir  r3.Vec
	}{{"x", r3.Vec{X: 1}}, {"y", r3.Vec{Y: 1}}, {"z", r3.Vec{Z: 1}}}
	if p.Planar {
		all = all[:2]
	}
	axes := make([]Axis, 0, len(all))
	for _, a := range all {
		axis := Axis{Name: a.name, At: v.Project(a.dir)}
		if d := r3.Dot(a.dir, v.Toward()); math.Abs(d) > endOn {
			axis.Toward = int(math.Copysign(1, d))
		}
		axes = append(axes, axis)
	}
	return axes
}

// endOn is the cosine above which a direction is drawn as pointing at the
// reader: the arrow would be shorter than a fifth of its length.
const endOn = 0.98

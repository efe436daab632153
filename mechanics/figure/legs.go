package figure

import (
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
)

// Legs joins the points of a body by the shortest tree through them, as the
// picture draws it.
func Legs(p *problem.Problem, body int) [][2]r3.Vec {
	var pts []r3.Vec
	for _, i := range p.Bodies[body].Points {
		if i >= 0 && i < len(p.Points) && p.Points[i].OK {
			pts = append(pts, p.Points[i].At)
		}
	}
	return Tree(pts)
}

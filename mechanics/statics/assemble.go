package statics

import (
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
)

// Assemble writes ΣF = 0 for every particle:
//
//	Σ A[i][j]·x[j] = b[i]
//
// with two rows a particle in the plane and three in space, in newtons. A[i][j]
// is the component along row i's axis of the force that one newton of unknown j
// exerts on row i's body (so for a cable it is the component of its unit vector,
// tension positive); b[i] is minus the sum of the known forces.
func Assemble(p *problem.Problem) System {
	axes := []string{"Fx", "Fy", "Fz"}
	if p.Planar {
		axes = axes[:2]
	}
	s := System{
		Rows: make([]Row, 0, len(axes)*len(p.Bodies)),
		Cols: make([]Col, len(p.Unknowns)),
	}
	for b := range p.Bodies {
		for _, axis := range axes {
			s.Rows = append(s.Rows, Row{Body: b, Name: p.Bodies[b].Name, Axis: axis})
		}
	}
	for j := range p.Unknowns {
		s.Cols[j] = Col{Unknown: j, Name: p.Unknowns[j].Name}
	}
	n, width := len(axes), len(s.Cols)
	s.A = make([]float64, len(s.Rows)*width)
	s.B = make([]float64, len(s.Rows))
	for i := range p.Lines {
		for _, act := range p.Lines[i].Acts {
			for k := range n {
				row := act.Body*n + k
				s.B[row] -= component(act.Const, k)
				for _, t := range act.Terms {
					s.A[row*width+t.Unknown] += component(t.D, k)
				}
			}
		}
	}
	return s
}

func component(v r3.Vec, axis int) float64 {
	switch axis {
	case 0:
		return v.X
	case 1:
		return v.Y
	}
	return v.Z
}

// loads is the resultant of the known forces on a body, R = ΣF known.
func loads(p *problem.Problem, body int) r3.Vec {
	var sum r3.Vec
	for i := range p.Lines {
		for _, act := range p.Lines[i].Acts {
			if act.Body == body {
				sum = r3.Add(sum, act.Const)
			}
		}
	}
	return sum
}

// largestLoad is the largest known force, the scale of all that is judged small.
func largestLoad(p *problem.Problem) float64 {
	most := 0.0
	for i := range p.Lines {
		for _, act := range p.Lines[i].Acts {
			most = max(most, r3.Norm(act.Const))
		}
	}
	return most
}

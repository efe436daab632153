package statics

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/linear"
)

// motionsOf finds what nothing resists. The null vectors are the scaled velocities n
// with A_sᵀn = 0: no unknown does work on them. A row of moments was divided by a
// length L, so its angular velocity is n/L. Bodies whose motions have nothing to do
// with each other are told apart: in their reduced form those that have to do with
// each other share bodies, and the form of a group is its share of the form of all.
func (s *Solution) motionsOf(null [][]float64) {
	if len(null) == 0 {
		return
	}
	null = s.reduce(null)
	together := newSets(len(s.Problem.Bodies))
	first := make([]int, len(null)) // a body that takes part
	for k, v := range null {
		first[k] = -1
		for i, x := range v {
			if x == 0 {
				continue
			}
			if body := s.System.Rows[i].Body; first[k] < 0 {
				first[k] = body
			} else {
				together.join(first[k], body)
			}
		}
	}
	of := map[int][][]float64{}
	for k, v := range null {
		if first[k] >= 0 {
			root := together.find(first[k])
			of[root] = append(of[root], v)
		}
	}
	loads := make([]float64, len(s.System.Rows))
	for i, row := range s.System.Rows {
		loads[i] = -s.System.B[i] / row.Scale
	}
	var idle [][]float64
	for _, bodies := range together.groups() {
		basis := of[together.find(bodies[0])]
		least := s.parts[s.partOfBody[bodies[0]]].least()
		switch {
		case len(basis) == 0:
		case s.turns(basis):
			idle = append(idle, s.splitTurning(basis, loads, least)...)
		default:
			idle = append(idle, s.splitSliding(basis, loads, least)...)
		}
	}
	for _, v := range idle {
		s.Motions = append(s.Motions, s.motion(v, 0))
	}
}

func (s *Solution) turns(basis [][]float64) bool {
	for _, v := range basis {
		for i, row := range s.System.Rows {
			if row.Moment && v[i] != 0 {
				return true
			}
		}
	}
	return false
}

// splitSliding treats motions without turning. The one that the loads excite is
// along what they leave unbalanced,
//
//	v = N Nᵀ f
//
// and the others are those perpendicular to it.
func (s *Solution) splitSliding(basis [][]float64, loads []float64, least float64) (idle [][]float64) {
	rows := linear.Orthonormal(basis)
	v := make([]float64, len(loads))
	for _, r := range rows {
		floats.AddScaled(v, floats.Dot(r, loads), r)
	}
	size := floats.Norm(v, 2)
	if size <= least {
		return basis
	}
	s.Verdict = NoEquilibrium
	s.Motions = append(s.Motions, s.motion(v, size))
	for _, r := range rows {
		along := floats.Dot(r, v) / size
		for i := range r {
			r[i] -= along * v[i] / size
		}
	}
	return s.reduce(rows)
}

// splitTurning treats motions in which something turns: each of the simple ones
// is told with the work that the loads do on it.
func (s *Solution) splitTurning(basis [][]float64, loads []float64, least float64) (idle [][]float64) {
	for _, v := range basis {
		work := floats.Dot(linear.Unit(v), loads)
		if math.Abs(work) <= least {
			idle = append(idle, v)
			continue
		}
		if work < 0 {
			floats.Scale(-1, v)
		}
		s.Verdict = NoEquilibrium
		s.Motions = append(s.Motions, s.motion(v, math.Abs(work)))
	}
	return idle
}

// motion turns scaled velocities into those of bodies. A motion with turning is
// brought to one radian of the body that turns most, others to unit length; their
// work is told for one metre of the body that goes furthest.
func (s *Solution) motion(v []float64, work float64) Motion {
	mo := Motion{Excited: work > 0}
	v = linear.Unit(slices.Clone(v))
	for i, row := range s.System.Rows {
		if math.Abs(v[i]) <= max(fixedTol, s.parts[s.partOfBody[row.Body]].blur) {
			v[i] = 0
		}
	}
	fastest, furthest := 0.0, 0.0
	moves := make([]Move, 0, 1)
	for b := range s.Problem.Bodies {
		if mv := s.moveOf(b, v); mv.V != (r3.Vec{}) || mv.W != (r3.Vec{}) {
			moves = append(moves, mv)
			fastest = max(fastest, r3.Norm(mv.W))
			furthest = max(furthest, r3.Norm(mv.V))
		}
	}
	per := 1.0
	if fastest > 0 {
		mo.Turning, per = true, fastest
	}
	for i := range moves {
		moves[i].V = r3.Scale(1/per, moves[i].V)
		moves[i].W = r3.Scale(1/per, moves[i].W)
	}
	mo.Moves = moves
	if mo.Excited {
		mo.Unbalanced = work / per
		if !mo.Turning { // for bodies that all go one way this is the sum of their loads
			mo.Unbalanced = work / furthest
		}
	}
	return mo
}

// reduce brings rows to reduced echelon form, so that motions come out about and
// along axes where they can: rotations first, so that a body hung from a point
// turns about the axes through it. It works in place and gives the rows left.
func (s *Solution) reduce(rows [][]float64) [][]float64 {
	var order []int
	for _, moment := range []bool{true, false} {
		for i := range s.System.Rows {
			if s.System.Rows[i].Moment == moment {
				order = append(order, i)
			}
		}
	}
	// Rows have entries up to 1, and what is left of rounding is below 1e-14. An
	// entry that is weak is no pivot: rows divided by it would come out all alike.
	const nothing, weak = 1e-9, 1e-6
	rows = linear.Reduced(rows, order, weak)
	for _, row := range rows {
		for j := range row {
			if math.Abs(row[j]) < nothing {
				row[j] = 0
			}
		}
	}
	return rows
}

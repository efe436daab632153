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
// length L, so its angular velocity is n/L; b are the scaled loads. Bodies whose motions
// have nothing to do with each other are told apart: in their reduced form those that have
// to do with each other share bodies, and the form of a group is its share of the form of
// all. Each motion is told with the work that the loads do on it.
func (s *Solution) motionsOf(null [][]float64, b []float64) {
	if len(null) == 0 {
		return
	}
	null = s.reduce(null)
	moved := make([][]int, len(null)) // the bodies that take part
	for k, v := range null {
		for i, x := range v {
			if x != 0 {
				moved[k] = append(moved[k], s.System.Rows[i].Body)
			}
		}
	}
	var idle [][]float64
	for _, g := range groups(len(s.Problem.Bodies), moved) {
		if len(g.things) == 0 || len(g.items) == 0 {
			continue
		}
		basis, least := make([][]float64, len(g.items)), s.parts[s.partOfBody[g.things[0]]].least()
		for i, k := range g.items {
			basis[i] = null[k]
		}
		if !s.turns(basis) {
			basis = s.alongLoads(basis, b, least)
		}
		for _, v := range basis {
			work := -floats.Dot(linear.Unit(v), b)
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

// alongLoads is a basis of motions without turning of which the loads excite the first
// alone, along what they leave unbalanced,
//
//	v = N Nᵀ f
//
// and the others are those perpendicular to it; the same basis where they excite none.
func (s *Solution) alongLoads(basis [][]float64, b []float64, least float64) [][]float64 {
	rows := linear.Orthonormal(basis)
	v := make([]float64, len(b))
	for _, r := range rows {
		floats.AddScaled(v, -floats.Dot(r, b), r)
	}
	if floats.Norm(v, 2) <= least {
		return basis
	}
	excited := [][]float64{linear.Unit(v)}
	for k, r := range rows {
		rows[k] = linear.Perp(r, excited)
	}
	return append(excited, s.reduce(rows)...)
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

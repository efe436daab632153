package statics

import (
	"cmp"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/linear"
	"trivet/mechanics/problem"
)

// subsystem is a part of the system that shares no unknown with the others: its rows and
// columns, and the scale that its forces are judged by. What one part carries says
// nothing of what is small in another.
type subsystem struct {
	linear.Block
	linear.General
	off  float64 // what its scaled entries may be off by
	blur float64 // rounding of the directions that no equation, or no unknown, fixes
	load float64 // the largest known force, or known couple over the length of its body's rows
	size float64 // the largest force, moments over the longest arm; the largest load until the values are found
}

// takeApart finds the parts: the bodies that hang together by unknowns. An unknown
// that acts on nothing is a part without rows.
func (s *Solution) takeApart() {
	sys := &s.System
	actsOn := make([][]int, len(sys.Cols)) // the bodies that an unknown acts on
	for i, row := range sys.Terms {
		for _, t := range row {
			actsOn[t.Col] = append(actsOn[t.Col], sys.Rows[i].Body)
		}
	}
	s.partOf, s.partOfBody = make([]int, len(sys.Cols)), make([]int, len(s.Problem.Bodies))
	for k, g := range groups(len(s.Problem.Bodies), actsOn) {
		part := subsystem{Block: linear.Block{Cols: g.items}}
		for _, b := range g.things {
			s.partOfBody[b] = k
			for i := sys.Start[b]; i < sys.Start[b+1]; i++ {
				part.Rows = append(part.Rows, i)
			}
		}
		for _, j := range g.items {
			s.partOf[j] = k
		}
		s.parts = append(s.parts, part)
	}
	for act := range s.Problem.Acts() {
		load := r3.Norm(act.Force.Const)
		if last := sys.Start[act.Body+1] - 1; sys.Rows[last].Moment && act.Couple.Const != (r3.Vec{}) {
			load = max(load, r3.Norm(act.Couple.Const)/sys.Rows[last].Scale)
		}
		part := &s.parts[s.partOfBody[act.Body]]
		part.load, s.load = max(part.load, load), max(s.load, load)
		part.size = part.load
	}
}

// armOf is the longest length that the part's rows of moments are divided by, 1
// without such rows.
func (s *Solution) armOf(p *subsystem) float64 {
	longest := 0.0
	for _, i := range p.Rows {
		if row := &s.System.Rows[i]; row.Moment {
			longest = max(longest, row.Scale)
		}
	}
	return cmp.Or(longest, 1)
}

// least is the work of the loads on a motion of size one that counts as none.
func (p *subsystem) least() float64 { return max(loadTol, p.blur) * p.load }

// scaleOf is the largest force among those that hang together with an unknown, by
// which small is judged; moments count by the length that their rows are divided by.
func (s *Solution) scaleOf(unknown int) float64 { return s.parts[s.partOf[unknown]].size }

// scaleOn is the same for what acts on a body.
func (s *Solution) scaleOn(body int) float64 { return s.parts[s.partOfBody[body]].size }

// scaleOfMagnitude is the same for a magnitude: that of its unknowns, or its own
// size where it has none.
func (s *Solution) scaleOfMagnitude(m problem.Affine) float64 {
	if len(m.Terms) == 0 {
		return math.Abs(m.Const)
	}
	scale := 0.0
	for _, t := range m.Terms {
		scale = max(scale, s.scaleOf(t.Unknown))
	}
	return scale
}

package statics

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/units"
)

// sameAxis is how near a point must be to an axis of turning, relative to the
// longest arm, to be named as lying on it; and how small a pitch must be, to the
// same length, before a screw counts as a turning.
const sameAxis = 1e-7

// MotionWords says what a motion is, and what the loads do on it.
func (s *Solution) MotionWords(m Motion) string {
	if !m.Turning {
		return s.slidingWords(m)
	}
	moves := make([]string, len(m.Moves))
	for i, mv := range m.Moves {
		moves[i] = s.Problem.Bodies[mv.Body].Name + " from " + s.moveWords(mv, m.Excited || len(m.Moves) > 1)
	}
	what := "nothing keeps " + moves[0]
	if len(moves) > 1 {
		what += ", and with it " + listed(moves[1:])
	}
	if m.Excited {
		unit := s.Problem.Units.For(units.Moment)
		return fmt.Sprintf("%s: a moment of %s is unbalanced", what, unit.Format(m.Unbalanced, s.Problem.Figures))
	}
	return what + ", and no load acts that way"
}

func (s *Solution) slidingWords(m Motion) string {
	moves := make([]string, len(m.Moves))
	for i, mv := range m.Moves {
		moves[i] = s.Problem.Bodies[mv.Body].Name + " along " + s.direction(mv.V, m.Excited || len(m.Moves) > 1)
	}
	what := strings.Join(moves, " with ")
	if m.Excited {
		return fmt.Sprintf("nothing holds %s: %s is unbalanced", what, s.force1(m.Unbalanced))
	}
	return fmt.Sprintf("nothing holds %s, and no load acts that way", what)
}

// moveWords says how one body moves: along a direction, about an axis, or both
// at once. With W the angular velocity and V the velocity at q, the axis passes
// through
//
//	c = q + W × V / |W|²
//
// and the body moves along it by h = W·V / |W|² a radian, the pitch of a screw.
func (s *Solution) moveWords(mv Move, signed bool) string {
	w2 := r3.Dot(mv.W, mv.W)
	if w2 == 0 {
		return "moving along " + s.direction(mv.V, signed)
	}
	arm := s.armOf(&s.parts[s.partOfBody[mv.Body]])
	q := s.Problem.Bodies[mv.Body].About
	c := r3.Add(q, r3.Scale(1/w2, r3.Cross(mv.W, mv.V)))
	pitch := r3.Dot(mv.W, mv.V) / w2
	words := "turning about " + s.axisWords(c, mv.W, arm, signed)
	if math.Abs(pitch) > sameAxis*arm {
		unit := s.Problem.Units.Length
		hand := "right"
		if pitch < 0 {
			hand = "left"
		}
		words += fmt.Sprintf(" while it moves %s along it per radian, like a screw with a %s-hand thread", unit.Format(math.Abs(pitch), s.Problem.Figures), hand)
	}
	return words
}

// axisWords names an axis of turning by the named points on it. A turning that
// has a sense is right-handed from the first to the second. arm is the longest of the body's part.
func (s *Solution) axisWords(c, w r3.Vec, arm float64, signed bool) string {
	p := s.Problem
	u := r3.Scale(1/r3.Norm(w), w)
	if p.Planar {
		words := placeWords(p, c)
		switch {
		case !signed:
		case w.Z > 0:
			words += " counter-clockwise"
		default:
			words += " clockwise"
		}
		return words
	}
	tol := sameAxis * arm
	var on []string
	var first r3.Vec
	for i := range p.Points {
		pt := &p.Points[i]
		off := r3.Sub(pt.At, c)
		if !pt.OK || r3.Norm(r3.Cross(u, off)) > tol {
			continue
		}
		if len(on) == 1 && r3.Norm(r3.Sub(pt.At, first)) <= tol {
			continue
		}
		if len(on) == 0 {
			first = pt.At
		}
		if on = append(on, pt.Name); len(on) == 2 {
			switch along := r3.Dot(r3.Sub(pt.At, first), w); {
			case !signed:
				return "the axis through " + on[0] + " and " + on[1]
			case along < 0:
				return "the axis from " + on[1] + " to " + on[0]
			}
			return "the axis from " + on[0] + " to " + on[1]
		}
	}
	through := placeWords(p, c)
	if len(on) == 1 {
		through = on[0]
	}
	return "the axis through " + through + " along " + s.direction(w, signed)
}

// placeWords names a place: a named point there, or its coordinates.
func placeWords(p *problem.Problem, at r3.Vec) string {
	size := 0.0
	for i := range p.Points {
		size = max(size, r3.Norm(r3.Sub(p.Points[i].At, p.Points[0].At)))
	}
	for i := range p.Points {
		if p.Points[i].OK && r3.Norm(r3.Sub(p.Points[i].At, at)) <= sameAxis*size {
			return p.Points[i].Name
		}
	}
	unit := p.Units.Length
	parts := []string{units.Figures(rounded(at.X, size)/unit.Factor, p.Figures), units.Figures(rounded(at.Y, size)/unit.Factor, p.Figures)}
	if !p.Planar {
		parts = append(parts, units.Figures(rounded(at.Z, size)/unit.Factor, p.Figures))
	}
	return "(" + strings.Join(parts, ", ") + ") " + unit.Symbol
}

// rounded drops a value that is rounding beside the size of the problem.
func rounded(x, size float64) float64 {
	if math.Abs(x) <= sameAxis*size {
		return 0
	}
	return x
}

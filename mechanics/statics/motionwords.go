package statics

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/units"
)

// sameAxis is how near a point must be to an axis of rotation, relative to the
// longest arm, to be named as lying on it; and how small a pitch must be, to the
// same length, before a screw counts as a rotation.
const sameAxis = 1e-7

// MotionWords says what a motion is, and what the loads do on it.
func (s *Solution) MotionWords(m Motion) string {
	signed := m.Excited || len(m.Moves) > 1
	what, idle := "", ", but no load causes it"
	if first := m.Moves[0]; !m.Turning && len(m.Moves) == 1 {
		what, idle = s.bodyOf(first.Body)+" is unsupported "+s.way(first.V, signed), ", but no load acts in that direction"
	} else {
		moves := say.Each(m.Moves, func(mv Move) string { return s.bodyOf(mv.Body) + " from " + s.moveWords(mv, signed) })
		what = "nothing prevents " + moves[0]
		if len(moves) > 1 {
			what += ", and with it " + say.And(moves[1:]...)
		}
	}
	switch {
	case !m.Excited:
		return what + idle
	case m.Turning:
		return what + ": a moment of " + s.Problem.Format(m.Unbalanced, units.Moment) + " is unbalanced"
	}
	return what + ": " + s.Problem.Format(m.Unbalanced, units.Force) + " is unbalanced"
}

// direction names a direction. One of a motion that goes either way has no sign: "x".
func (s *Solution) direction(v r3.Vec, signed bool) string {
	if axis := problem.Axis(v); axis != "" && !signed {
		return axis[1:]
	}
	return s.Problem.Direction(v)
}

// way is "in the direction +x", or "in the x direction" of what goes either way.
func (s *Solution) way(v r3.Vec, signed bool) string {
	if !signed && problem.Axis(v) != "" {
		return "in the " + s.direction(v, false) + " direction"
	}
	return "in the direction " + s.direction(v, signed)
}

// onAxis is the distance within which a point is on a body's axis.
func (s *Solution) onAxis(mv Move) float64 {
	return sameAxis * s.armOf(&s.parts[s.partOfBody[mv.Body]])
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
		return "moving " + s.way(mv.V, signed)
	}
	words := "rotating "
	if s.Problem.Planar && signed {
		words += say.Turn(mv.W.Z) + " "
	}
	words += "about " + s.axisWords(mv, signed)
	if pitch := r3.Dot(mv.W, mv.V) / w2; math.Abs(pitch) > s.onAxis(mv) {
		hand := "right"
		if pitch < 0 {
			hand = "left"
		}
		words += fmt.Sprintf(" and advancing %s along it per radian, as a %s-handed screw", s.Problem.Format(math.Abs(pitch), units.Length), hand)
	}
	return words
}

// axisWords names an axis of rotation by the named points on it. A rotation that
// has a sense is right-handed from the first to the second.
func (s *Solution) axisWords(mv Move, signed bool) string {
	p, w := s.Problem, mv.W
	c := r3.Add(p.Bodies[mv.Body].About, r3.Scale(1/r3.Dot(w, w), r3.Cross(w, mv.V)))
	if p.Planar {
		return p.Place(c)
	}
	u := r3.Scale(1/r3.Norm(w), w)
	tol := s.onAxis(mv)
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
	through := p.Place(c)
	if len(on) == 1 {
		through = on[0]
	}
	return "the axis through " + through + " along " + s.direction(w, signed)
}

// motionLines says every motion. What one body is free to do besides and no load
// excites is gathered: along several directions, or about a point about any axis.
func (s *Solution) motionLines() []string {
	var out []string
	done := make([]bool, len(s.Motions))
	for i, m := range s.Motions {
		if done[i] {
			continue
		}
		alike := []int{i}
		for k := i + 1; k < len(s.Motions); k++ {
			if n := s.Motions[k]; idleAlone(m) && idleAlone(n) && m.Turning == n.Turning && m.Moves[0].Body == n.Moves[0].Body {
				alike = append(alike, k)
			}
		}
		words := ""
		switch {
		case len(alike) == 1:
		case m.Turning:
			words = s.pivotWords(alike)
		default:
			words = s.slidesWords(alike)
		}
		if words == "" {
			out = append(out, s.MotionWords(m))
			continue
		}
		out = append(out, words)
		for _, k := range alike {
			done[k] = true
		}
	}
	return out
}

// idleAlone tells that a motion is of one body, and that no load excites it.
func idleAlone(m Motion) bool { return !m.Excited && len(m.Moves) == 1 }

func (s *Solution) slidesWords(motions []int) string {
	ways := say.Each(motions, func(k int) string { return s.direction(s.Motions[k].Moves[0].V, false) })
	return s.bodyOf(s.Motions[motions[0]].Moves[0].Body) + " is unsupported in the directions " + say.And(ways...) + ", but no load acts along them"
}

// pivotWords says that a body rotates about one point about any axis, and is empty
// where it does not. With the point d away from the one that moments are taken
// about, each motion has
//
//	V = d × W
//
// and the axis nearest to it is off by d without its part along W, which adds up
// to 2d over three axes perpendicular to each other.
func (s *Solution) pivotWords(motions []int) string {
	if len(motions) != 3 {
		return ""
	}
	var d r3.Vec
	for _, k := range motions {
		mv := s.Motions[k].Moves[0]
		d = r3.Add(d, r3.Scale(0.5/r3.Norm2(mv.W), r3.Cross(mv.W, mv.V)))
	}
	first := s.Motions[motions[0]].Moves[0]
	tol := s.onAxis(first)
	for _, k := range motions {
		mv := s.Motions[k].Moves[0]
		if !(r3.Norm(r3.Sub(mv.V, r3.Cross(d, mv.W))) <= tol*r3.Norm(mv.W)) {
			return ""
		}
	}
	at := r3.Add(s.Problem.Bodies[first.Body].About, d)
	return "nothing prevents " + s.bodyOf(first.Body) + " from rotating about any axis through " + s.Problem.Place(at) + ", but no load causes it"
}

func (s *Solution) bodyOf(body int) string { return say.The(s.Problem.Bodies[body].Name) }

package statics

import (
	"strings"

	"gonum.org/v1/gonum/spatial/r3"
)

// motionLines says every motion. What one body is free to do besides and no load
// excites is gathered: along several directions, or about a point whichever way.
func (s *Solution) motionLines() []string {
	var out []string
	told := make([]bool, len(s.Motions))
	for i, m := range s.Motions {
		if told[i] {
			continue
		}
		alike := []int{i}
		for k := i + 1; k < len(s.Motions); k++ {
			if n := s.Motions[k]; alone(m) && alone(n) && m.Turning == n.Turning && m.Moves[0].Body == n.Moves[0].Body {
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
			told[k] = true
		}
	}
	return out
}

// alone tells that a motion is of one body, and that no load excites it.
func alone(m Motion) bool { return !m.Excited && len(m.Moves) == 1 }

func (s *Solution) slidesWords(motions []int) string {
	ways := make([]string, len(motions))
	for i, k := range motions {
		ways[i] = s.direction(s.Motions[k].Moves[0].V, false)
	}
	last := len(ways) - 1
	return "nothing holds " + s.bodyOf(motions[0]) + " along " + strings.Join(ways[:last], ", ") + " or " + ways[last] + ", and no load acts that way"
}

// pivotWords says that a body turns about one point whichever way, and nothing
// where it does not. With the point d away from the one that moments are taken
// about, each motion has
//
//	V = d × W
//
// and the axis nearest to it is off by d without its part along W, which adds up
// to 2d over three axes across each other.
func (s *Solution) pivotWords(motions []int) string {
	if len(motions) != 3 {
		return ""
	}
	var d r3.Vec
	for _, k := range motions {
		mv := s.Motions[k].Moves[0]
		d = r3.Add(d, r3.Scale(0.5/r3.Norm2(mv.W), r3.Cross(mv.W, mv.V)))
	}
	tol := sameAxis * s.armOf(&s.parts[s.partOfBody[s.Motions[motions[0]].Moves[0].Body]])
	for _, k := range motions {
		mv := s.Motions[k].Moves[0]
		if !(r3.Norm(r3.Sub(mv.V, r3.Cross(d, mv.W))) <= tol*r3.Norm(mv.W)) {
			return ""
		}
	}
	at := r3.Add(s.Problem.Bodies[s.Motions[motions[0]].Moves[0].Body].About, d)
	return "nothing keeps " + s.bodyOf(motions[0]) + " from turning about " + placeWords(s.Problem, at) + ", whichever way, and no load acts that way"
}

func (s *Solution) bodyOf(motion int) string {
	return s.Problem.Bodies[s.Motions[motion].Moves[0].Body].Name
}

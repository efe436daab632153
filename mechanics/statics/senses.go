package statics

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/units"
)

// senseTol is how far below nothing a cable's tension may come out, relative to
// the largest force, before it pushes: a cable at exactly zero is slack, not broken.
const senseTol = 1e-9

// Sensed is a magnitude that cannot be negative: a line's that pulls or pushes
// only, or a joint's normal force. Line or Joint is -1.
type Sensed struct {
	Name        string
	Line, Joint int
	Magnitude   problem.Affine
}

// sensed lists what cannot be negative.
func sensed(p *problem.Problem) []Sensed {
	var out []Sensed
	for i := range p.Lines {
		l := &p.Lines[i]
		switch l.Kind.Info().Sense {
		case problem.PullOnly, problem.PushOnly, problem.PressOnly:
			out = append(out, Sensed{Name: l.Name, Line: i, Joint: -1, Magnitude: l.Magnitude})
		}
	}
	for i := range p.Joints {
		j := &p.Joints[i]
		if j.Kind.Info().PushOnly && len(j.Forces) > 0 {
			u := j.Forces[0].Unknown
			out = append(out, Sensed{Name: p.Unknowns[u].Name, Line: -1, Joint: i,
				Magnitude: problem.Affine{Terms: []problem.Term{{Unknown: u, Coef: 1}}}})
		}
	}
	return out
}

// Magnitude is the magnitude of a line, with false where it has no single value.
func (s *Solution) Magnitude(line int) (float64, bool) {
	return s.single(s.Problem.Lines[line].Magnitude)
}

func (s *Solution) single(m problem.Affine) (float64, bool) {
	for _, t := range m.Terms {
		if !s.X[t.Unknown].Fixed {
			return 0, false
		}
	}
	return s.at(m), true
}

// at is a magnitude in the solution at hand, single or not.
func (s *Solution) at(m problem.Affine) float64 {
	sum := m.Const
	for _, t := range m.Terms {
		sum += t.Coef * s.X[t.Unknown].Value
	}
	return sum
}

// force is what an act exerts in the solution at hand, and couple its couple.
func (s *Solution) force(a *problem.Act) r3.Vec  { return s.sum(a.Const, a.Terms) }
func (s *Solution) couple(a *problem.Act) r3.Vec { return s.sum(a.Couple, a.CoupleTerms) }

func (s *Solution) sum(v r3.Vec, terms []problem.ActTerm) r3.Vec {
	for _, t := range terms {
		v = r3.Add(v, r3.Scale(s.X[t.Unknown].Value, t.D))
	}
	return v
}

// judgeSenses marks what pushes and can only pull, or the other way round.
func (s *Solution) judgeSenses() {
	if s.Verdict == NoEquilibrium {
		return
	}
	for _, q := range s.sensed {
		value, fixed := s.single(q.Magnitude)
		if !fixed || value >= -senseTol*s.scaleOfMagnitude(q.Magnitude) {
			continue
		}
		s.Broken = append(s.Broken, q)
		if s.Verdict == Determinate {
			s.Verdict = SenseBroken
		}
		if t := q.Magnitude.Terms; len(t) == 1 && t[0].Coef == 1 && q.Magnitude.Const == 0 && s.Problem.Unknowns[t[0].Unknown].Name == q.Name {
			s.X[t[0].Unknown].Broken = true
		}
	}
}

// forceLike is the size of an unknown as a force: a moment over a length.
func (s *Solution) forceLike(j int, arm float64) float64 {
	v := math.Abs(s.X[j].Value)
	if s.Problem.Unknowns[j].Dim == units.Moment {
		return v / arm
	}
	return v
}

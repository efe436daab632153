package statics

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/linear"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/units"
)

// When a body counts as nearly unsupported.
const (
	// nearlyCond is the condition number from which a part is looked at. Those of sound
	// structures, of textbooks and of the random rigs of the tests, stay below 1e3.
	nearlyCond = 1e3
	// nearlyFactor is how many times the largest load a force may be, or its relative
	// change the relative change of a length. At 1000 a millimetre in a metre changes
	// a force by all of itself: no drawing, and no tape, fixes such a force.
	nearlyFactor = 1e3
	// nearlyChange is the share of a force, of no great size itself, that a point's being
	// off must change at least: less than a hundredth is within what anyone allows for.
	nearlyChange = 0.01
	// lastStep is the share by which a slope may say that a force changes before the
	// body may as well be without support: ten times the force.
	lastStep = 0.9
	// takesPart is the part of the largest motion of a body above which others move with it.
	takesPart = 0.1
	// inverseSteps is how often the least singular vector is improved: the others fade by
	// the square of the ratio of the two least singular values a step.
	inverseSteps = 30
)

// checkSupport looks for bodies that are supported in principle, and so weakly in some
// direction that the forces follow the last digit of the geometry: three links whose
// lines nearly meet in one point. It is made only where it fails.
func (s *Solution) checkSupport() {
	for k := range s.parts {
		part := &s.parts[k]
		if part.Cond < nearlyCond || part.Rank < len(part.Cols) || part.load == 0 {
			continue
		}
		if c, nearly := s.nearlyUnsupported(part); nearly {
			s.add(c)
		}
	}
}

func (s *Solution) nearlyUnsupported(part *subsystem) (Check, bool) {
	arm, worst := s.armOf(part), 0 // the place in the part of the largest force
	for i, j := range part.Cols {
		if s.forceLike(j, arm) > s.forceLike(part.Cols[worst], arm) {
			worst = i
		}
	}
	j := part.Cols[worst]
	size := s.forceLike(j, arm)
	if size == 0 {
		return Check{}, false
	}
	alone := make([]float64, len(part.Cols))
	alone[worst] = 1
	w := spread(nil, [][]float64{part.SolveTrans(alone)}, part.Rows, len(s.System.Rows))[0]
	_, _, scale := s.System.scaled()
	floats.Scale(1/scale[j], w)
	slope := s.slopes(w)
	c := Check{Kind: CheckSupport, Unknown: j, Factor: size / part.load}
	point, change, steepest := -1, 0.0, 0.0
	for i := range slope {
		steepest = max(steepest, r3.Norm(slope[i]))
		nudge, _ := s.Problem.Nudge(i)
		if by := r3.Norm(slope[i]) * nudge; by > change {
			point, change = i, by
		}
	}
	if point < 0 {
		return Check{}, false
	}
	value := math.Abs(s.X[j].Value)
	// A force that grows without bound as a length ε vanishes is k/ε: it grows by
	// d/(1-d) where its slope alone says d, and at d = 1 there is nothing left of ε.
	c.Point, c.Value = point, math.Inf(1)
	if d := change / value; d < lastStep {
		c.Value = d / (1 - d)
	}
	delicate := steepest*s.extent(part)/value >= nearlyFactor && c.Value >= nearlyChange
	if c.Factor < nearlyFactor && !delicate {
		return Check{}, false
	}
	motion := s.weakest(part)
	c.Subject, c.Motion = s.Problem.Bodies[motion.Body].Name, s.weakWords(motion)
	return c, true
}

// slopes gives, for every point of the sheet, how fast an unknown changes as the point
// moves, N/m, all other forces at their values: with w the row of A⁺ that gives the
// unknown, seen as small motions of the bodies, q the velocity that they give the ends
// of a line, T its force, L and u its length and direction, moving its ends by δ does
//
//	dx = -T/L (q_A - q_B)·(I - u uᵀ)(δ_B - δ_A)
//
// and moving where a force F acts on a body does dx = -ω·(δ × F).
func (s *Solution) slopes(w []float64) []r3.Vec {
	p := s.Problem
	out := make([]r3.Vec, len(p.Points))
	moves := make([]Move, len(p.Bodies))
	for b := range moves {
		moves[b] = s.moveOf(b, w)
	}
	for act := range p.Acts() {
		if act.Point >= 0 && !p.Bodies[act.Body].Particle {
			out[act.Point] = r3.Add(out[act.Point], r3.Cross(moves[act.Body].W, s.Sum(act.Force)))
		}
	}
	for i := range p.Lines {
		l := &p.Lines[i]
		if !l.Kind.Info().Path && !l.Between() {
			continue
		}
		force := s.at(l.Magnitude)
		if l.Pushes() {
			force = -force
		}
		velocity := func(point int) (q r3.Vec) {
			for k := range l.Acts {
				if a := &l.Acts[k]; a.Point == point {
					return r3.Add(moves[a.Body].V, r3.Cross(moves[a.Body].W, p.Arm(a)))
				}
			}
			return q
		}
		for _, segment := range l.Legs {
			if segment.To < 0 {
				continue
			}
			q := r3.Sub(velocity(segment.From), velocity(segment.To))
			q = r3.Scale(force/segment.Length, r3.Sub(q, r3.Scale(r3.Dot(q, segment.U), segment.U)))
			out[segment.From], out[segment.To] = r3.Add(out[segment.From], q), r3.Sub(out[segment.To], q)
		}
	}
	if p.Planar {
		for i := range out {
			out[i].Z = 0
		}
	}
	return out
}

// moveOf is what scaled velocities say of one body.
func (s *Solution) moveOf(body int, v []float64) Move {
	mv := Move{Body: body}
	for i := s.System.Start[body]; i < s.System.Start[body+1]; i++ {
		of := &mv.V
		if s.System.Rows[i].Moment {
			of = &mv.W
		}
		*[]*float64{&of.X, &of.Y, &of.Z}[s.System.Rows[i].Coordinate()] = v[i] / s.System.Rows[i].Scale
	}
	return mv
}

// weakest is the motion that the supports of a part resist least, that of the body that
// takes the largest part in it: the left singular vector of the least singular value,
// by inverse iteration.
func (s *Solution) weakest(part *subsystem) Move {
	y, _ := linear.Weakest(part, len(part.Rows), inverseSteps)
	v := spread(nil, [][]float64{y}, part.Rows, len(s.System.Rows))[0]
	shares := make([]float64, len(s.Problem.Bodies))
	for _, i := range part.Rows {
		shares[s.System.Rows[i].Body] = math.Hypot(shares[s.System.Rows[i].Body], v[i])
	}
	largest := slices.Max(shares)
	body := slices.IndexFunc(shares, func(x float64) bool { return x >= largest })
	mv := s.moveOf(body, v)
	// Rotation about a point many arms away is a translation to whoever looks at it.
	if arm := s.armOf(part); r3.Norm(mv.W)*arm < takesPart*r3.Norm(mv.V) {
		mv.W = r3.Vec{}
	}
	return mv
}

// weakWords says a motion as what a body can almost do.
func (s *Solution) weakWords(mv Move) string {
	if mv.W == (r3.Vec{}) {
		return "move " + s.way(mv.V, false)
	}
	return "rotate about " + s.axisWords(mv, false)
}

// extent is the greatest distance between where forces act in a part and the first of
// these places, or of the ends of its lines.
func (s *Solution) extent(part *subsystem) float64 {
	p := s.Problem
	var places []r3.Vec
	mine := func(a problem.Act) bool { return &s.parts[s.partOfBody[a.Body]] == part }
	for act := range p.Acts() {
		if mine(*act) {
			places = append(places, act.At)
		}
	}
	for i := range p.Lines {
		if slices.ContainsFunc(p.Lines[i].Acts, mine) {
			for _, point := range p.Lines[i].Path {
				places = append(places, p.Points[point].At)
			}
		}
	}
	far := 0.0
	for _, at := range places {
		far = max(far, r3.Norm(r3.Sub(at, places[0])))
	}
	return far
}

// supportWords says what is nearly unsupported, and what a small change would do.
func (c Check) supportWords(p *problem.Problem) string {
	name := p.Unknowns[c.Unknown].Name
	body := say.The(c.Subject)
	words := body + " is nearly unsupported: it can almost " + c.Motion + "; "
	if c.Factor >= 10 { // else the loads of this sheet do not show it
		words += name + " is " + units.Figures(c.Factor, 2) + " times the largest load, and "
	}
	_, nudge := p.Nudge(c.Point)
	words += "moving " + p.Points[c.Point].Name + " by " + nudge + " "
	switch {
	case math.IsInf(c.Value, 1):
		return words + "could leave " + body + " unsupported"
	case c.Factor >= 10:
		name = "it"
	}
	return words + "could change " + name + " by about " + units.Figures(100*c.Value, 2) + " %"
}

package statics

import (
	"errors"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
)

// answerSlack widens the comparison with a printed answer by its rounding: a
// value that lies on the half counts as met.
const answerSlack = 1e-9

// Evaluate gives a result in SI (newtons, metres, radians). The error says why
// there is none: an unknown of it has no single value, or a direction is asked
// of nothing.
func (s *Solution) Evaluate(q problem.Query) (float64, error) {
	p := s.Problem
	switch q.Kind {
	case problem.AskValue:
		v, fixed := s.single(p.Magnitude(q.Of))
		if !fixed {
			return 0, s.noValue(q.Name)
		}
		return v, nil
	case problem.AskLength:
		return p.Lines[q.Of.Index].Length(), nil
	case problem.AskStretch:
		return s.stretch(q.Of.Index)
	case problem.AskUnit:
		u, err := s.directionOf(q.Of)
		return problem.Component(u, int(q.Part)), err
	case problem.AskPart:
		switch {
		case q.Part == problem.At && q.Of.Thing == problem.ALoad:
			return p.Loads[q.Of.Index].Distance, nil
		case q.Part == problem.At:
			return crossing(p, q.Of.Index)
		case q.Of.Thing == problem.AJoint && s.loose(p.Joints[q.Of.Index].Moments):
			return 0, s.noValue(p.NameOf(q.Of))
		}
		f, m, err := s.ForceOf(q.Of)
		if err != nil {
			return 0, err
		}
		return partOf(f, m, q.Part)
	case problem.AskMagnitude:
		v, err := s.Evaluate(*q.Inner)
		return math.Abs(v), err
	case problem.AskFriction:
		j := &p.Joints[q.Of.Index]
		if s.loose(j.Forces) {
			return 0, s.noValue(q.Name)
		}
		// Along the tangent, as the AF of a surface where nothing impends.
		tangent := r3.Vec{X: j.Normal.Y, Y: -j.Normal.X}
		return r3.Dot(s.Sum(j.Forces), tangent), nil
	}
	return s.evaluatePair(q)
}

// crossing is where the line of action of a body's loads crosses the x axis through the
// point that moments are taken about: M = x Fy.
func crossing(p *problem.Problem, body int) (float64, error) {
	force, moment := loads(p, body)
	of := "the resultant of the loads on " + p.Bodies[body].Name
	switch {
	case force == r3.Vec{}:
		return 0, &missing{of, "is zero or a couple, and has no line of action"}
	case force.Y == 0:
		return 0, &missing{of, "is parallel to x, and does not cross that axis in one point"}
	}
	return moment.Z / force.Y, nil
}

// missing says why a result has no value, and of what that is so.
type missing struct{ of, why string }

func (m *missing) Error() string { return m.of + " " + m.why }

func (s *Solution) noValue(name string) error {
	if s.Verdict == Inadmissible {
		return &missing{name, "has no admissible value"}
	}
	return &missing{name, "has no single value"}
}

func noDirection(name string) error { return &missing{name, "is zero and has no direction"} }

// evaluatePair gives the angle between two lines or reactions, atan2(|u×v|, u·v), or
// the component F·v of the force of one along the other.
func (s *Solution) evaluatePair(q problem.Query) (float64, error) {
	v, err := s.directionOf(q.With)
	if err != nil {
		return 0, err
	}
	if q.Kind == problem.AskComponent {
		f, _, err := s.ForceOf(q.Of)
		if err != nil {
			return 0, err
		}
		return r3.Dot(f, v), nil
	}
	u, err := s.directionOf(q.Of)
	if err != nil {
		return 0, err
	}
	return math.Atan2(r3.Norm(r3.Cross(u, v)), r3.Dot(u, v)), nil
}

// directionOf is the unit vector of a line; of a force by components that of the
// components found, and where there is no line that of a joint's reaction.
func (s *Solution) directionOf(of problem.Source) (r3.Vec, error) {
	if of.Thing == problem.ALine {
		if u, ok := s.Problem.Lines[of.Index].Direction(); ok {
			return u, nil
		}
	}
	f, _, err := s.ForceOf(of)
	if err != nil {
		return f, err
	}
	size := r3.Norm(f)
	if size == 0 {
		return f, noDirection(s.Problem.NameOf(of))
	}
	return r3.Scale(1/size, f), nil
}

// ForceOf is the force, and the moment with it, of a line on the first body of its path, of
// the reaction of a joint on its first body, the resultant of a load, or of the known forces
// on a body.
func (s *Solution) ForceOf(of problem.Source) (f, m r3.Vec, err error) {
	if of.Thing == problem.ABody {
		f, m = loads(s.Problem, of.Index)
		return f, m, nil
	}
	switch e := s.Problem.Entry(of); {
	case len(e.Acts) > 0 && s.loose(e.Acts[0].Force):
		return f, m, s.noValue(e.Name)
	case len(e.Acts) > 0:
		return s.Sum(e.Acts[0].Force), s.Sum(e.Acts[0].Couple), nil
	case of.Thing == problem.ALine:
		return f, m, &missing{e.Name, "acts on no body"}
	}
	return f, m, nil
}

// stretch is how far a spring is stretched: as its length says, or T/k where its
// natural length is not known.
func (s *Solution) stretch(line int) (float64, error) {
	spring := s.Problem.Lines[line].Spring
	if !spring.Free {
		return spring.Stretch, nil
	}
	tension, fixed := s.Magnitude(line)
	if !fixed {
		return 0, s.noValue(s.Problem.Lines[line].Name)
	}
	return tension / spring.Stiffness, nil
}

func partOf(f, m r3.Vec, part problem.Part) (float64, error) {
	size := r3.Norm(f)
	switch part {
	case problem.MX, problem.MY, problem.MZ:
		return problem.Component(m, int(part-problem.MX)), nil
	case problem.X, problem.Y, problem.Z:
		return problem.Component(f, int(part)), nil
	case problem.Size:
		return size, nil
	}
	switch {
	case size == 0:
		return 0, noDirection("this force")
	case part == problem.Alpha || part == problem.Beta || part == problem.Gamma:
		axis := int(part - problem.Alpha)
		perp := f
		*[]*float64{&perp.X, &perp.Y, &perp.Z}[axis] = 0
		return math.Atan2(r3.Norm(perp), problem.Component(f, axis)), nil
	}
	angle := math.Atan2(f.Y, f.X)
	if angle < 0 {
		angle += 2 * math.Pi
	}
	return angle, nil
}

// compareAnswers holds what a source prints against what was computed.
func (s *Solution) compareAnswers() {
	if len(s.Problem.Answers) == 0 {
		return
	}
	s.Answers = make([]AnswerCheck, len(s.Problem.Answers))
	for i, a := range s.Problem.Answers {
		c := AnswerCheck{Answer: a}
		v, err := s.Evaluate(a.Query)
		if err != nil {
			c.Err = err.Error()
			if m := (*missing)(nil); errors.As(err, &m) {
				c.errOf = m.of
			}
		} else {
			c.Computed = v
			c.OK = math.Abs(a.Query.Near(v, a.Value)-a.Value) <= a.Half*(1+answerSlack)+answerSlack*math.Abs(a.Value)
		}
		s.Answers[i] = c
	}
}

// Well tells whether all is as it should be: a single admissible solution, every
// check and every printed answer met. A sheet that expects another verdict is well
// when it gets it.
func (s *Solution) Well() bool { return len(s.Failures()) == 0 }

// Single tells whether the problem has the one answer it is after.
func (s *Solution) Single() bool { return s.Verdict == Determinate || s.Verdict == Resultant }

// Unique tells that every unknown has one value, admissible or not.
func (s *Solution) Unique() bool {
	return s.Verdict == Determinate || s.Verdict == Inadmissible && s.Degree == 0
}

// Failures says in words what is not as it should be. Of a sheet that expects a check to fail
// the verdict must be single, or inadmissible because something slips or tips, and a check
// must fail.
func (s *Solution) Failures() (out []string) {
	expected := s.Problem.Expect
	teaches := expected == problem.FailedCheck
	if teaches || expected == problem.AtRisk { // within the ±: as typed all is well
		expected = ""
	}
	found := expected == "" && !s.Single() && !(teaches && s.slipsOrTips()) || expected != "" && s.Verdict.String() != expected
	if found {
		out = append(out, s.words(s.Problem.Doubts)...)
		if expected != "" {
			out[0] = "expected " + expected + ", found " + out[0]
		}
	}
	failed := false
	for _, c := range s.Checks {
		switch {
		case c.OK:
		case teaches && c.Kind != CheckBare: // which is no failure to teach
			failed = true
		case !((found || expected != "") && checkKinds[c.Kind].follows):
			out = append(out, c.Says(s.Problem))
		}
	}
	if teaches && !failed {
		out = append(out, "expected a check to fail, but every check holds")
	}
	for _, a := range s.Answers {
		if !a.OK {
			out = append(out, a.Says(s.Problem))
		}
	}
	return out
}

// slipsOrTips tells that friction and faces are all that is violated.
func (s *Solution) slipsOrTips() bool {
	return s.Verdict == Inadmissible && !slices.ContainsFunc(s.Broken, func(c Condition) bool { return c.Kind == Sense }) &&
		!slices.ContainsFunc(s.conflicts, func(c conflict) bool { return !c.Slips })
}

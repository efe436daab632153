package statics

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
)

// memberTol is how far a force of a two-force member may lean off the line that
// joins its points, or three lines of action may miss each other, relative to
// the forces and lengths: as momentTol, since both follow from ΣM = 0.
const memberTol = 1e-8

// touch is a place where forces act on a body, and their sum there.
type touch struct {
	at, f r3.Vec
	free  bool // the sum takes part in what equilibrium leaves free: f is one of many
}

// touches gathers the forces on a rigid body by place; none where a couple acts on it too.
func (s *Solution) touches(body int) (places []touch) {
	for _, acts := range problem.ByPlace(s.acts[body], func(on actOn) *problem.Act { return on.Act }) {
		t := touch{at: acts[0].At}
		for _, on := range acts {
			t.f = r3.Add(t.f, s.Sum(on.Force))
			t.free = t.free || s.loose(on.Force)
		}
		places = append(places, t)
	}
	return places
}

// checkMembers holds two-force and three-force members against what is known of
// them: two forces lie along the line that joins their points; the lines of
// action of three forces meet in a point or are parallel (common practice). The
// line that joins two points is the same in every solution; the point where three
// lines of action meet is not, so that nothing is said of it where the forces are
// one choice of many.
func (s *Solution) checkMembers() {
	for b := range s.Problem.Bodies {
		if s.Problem.Bodies[b].Particle {
			continue
		}
		switch places := s.touches(b); len(places) {
		case 2:
			s.checkTwoForce(b, places[0], places[1])
		case 3:
			if !slices.ContainsFunc(places, func(t touch) bool { return t.free }) {
				s.checkThreeForce(b, places)
			}
		}
	}
}

func (s *Solution) checkTwoForce(body int, a, b touch) {
	d := r3.Sub(b.at, a.at)
	size := max(r3.Norm(a.f), faint*s.scaleOn(body))
	c := Check{Kind: CheckTwoForce, Subject: s.Problem.Bodies[body].Name, With: s.names(a, b), Bound: memberTol}
	if size > 0 {
		c.Value = r3.Norm(r3.Cross(d, a.f)) / (r3.Norm(d) * size)
	}
	c.OK = c.Value <= memberTol
	s.add(c)
}

// checkThreeForce takes the moment of the third force about the point where the
// lines of the first two come nearest; where those are parallel the third must be
// parallel to them.
func (s *Solution) checkThreeForce(body int, t []touch) {
	size, length := 0.0, 0.0
	for k := range t {
		size = max(size, r3.Norm(t[k].f))
		length = max(length, r3.Norm(r3.Sub(t[k].at, t[0].at)))
	}
	if size <= faint*s.scaleOn(body) || length == 0 {
		return
	}
	for k := range t {
		if r3.Norm(t[k].f) <= memberTol*size {
			return // one of them is nothing: the other two are a two-force member's
		}
	}
	c := Check{Kind: CheckThreeForce, Subject: s.Problem.Bodies[body].Name, With: s.names(t...), Bound: memberTol}
	u, v := r3.Scale(1/r3.Norm(t[0].f), t[0].f), r3.Scale(1/r3.Norm(t[1].f), t[1].f)
	cross := r3.Cross(u, v)
	sine := r3.Norm(cross)
	if sine < parallelSine {
		c.Value = r3.Norm(r3.Cross(u, t[2].f)) / size
		c.Value = max(0, c.Value-2*parallelSine)
	} else {
		// The line a + λu meets b + μv where λ = ((b-a) × v)·(u × v)/|u × v|².
		lambda := r3.Dot(r3.Cross(r3.Sub(t[1].at, t[0].at), v), cross) / (sine * sine)
		meet := r3.Add(t[0].at, r3.Scale(lambda, u))
		arm := r3.Sub(t[2].at, meet)
		c.Value = r3.Norm(r3.Cross(arm, t[2].f)) / (size * max(length, math.Abs(lambda), r3.Norm(arm)))
		c.Meet, c.Meets = meet, true // where the lines of action meet
	}
	c.OK = c.Value <= memberTol
	s.add(c)
}

// parallelSine is the sine below which two lines of action count as parallel: the
// point where they meet is then a million lengths away.
const parallelSine = 1e-6

// names says where forces act.
func (s *Solution) names(t ...touch) string {
	return say.And(say.Each(t, func(at touch) string { return s.Problem.Place(at.at) })...)
}

// checkJoints holds the friction that is needed against what is available, and
// the resultant force of a joint against its limit: where the reaction has no single value
// the largest magnitudes that its components can have, which it cannot exceed together.
func (s *Solution) checkJoints() {
	for i := range s.Problem.Joints {
		j := &s.Problem.Joints[i]
		if len(j.Forces.Terms) == 0 {
			continue // one that does not read whole holds nothing
		}
		known, loose := true, s.loose(j.Forces)
		size := r3.Norm(s.Sum(j.Forces))
		if loose {
			size = 0
			for _, t := range j.Forces.Terms {
				bound, ranged := s.largest(times(t.Unknown, 1))
				size, known = math.Hypot(size, bound), known && ranged
			}
		} else {
			s.checkFriction(j, i)
			if j.HasFace && s.X[j.Moments.Terms[0].Unknown].Fixed {
				s.checkTipping(i)
			}
		}
		if j.Limit > 0 {
			s.checkLimit(Check{Kind: CheckLimit, Subject: j.Name, Value: size, Bound: j.Limit, Ranged: loose}, known, -1, i)
		}
	}
}

func (s *Solution) checkFriction(j *problem.Joint, i int) {
	c := Check{Kind: CheckFriction, Subject: j.Name, Impends: j.Impending}
	switch {
	case j.Impending:
		f := s.Sum(j.Forces)
		c.Value = r3.Norm(r3.Sub(f, r3.Scale(r3.Dot(f, j.Normal), j.Normal)))
		c.Bound, c.OK = c.Value, true
	case j.HasFriction:
		c.Value, c.Bound = s.frictionOf(j)
		c.OK = c.Value <= c.Bound+senseTol*s.scaleOf(j.Forces.Terms[0].Unknown)
	default:
		return
	}
	s.addAt(c, -1, i)
}

// loose tells that some of a sum of unknowns has no single value.
func (s *Solution) loose(v problem.Vector) bool {
	return slices.ContainsFunc(v.Terms, func(t problem.ActTerm) bool { return !s.X[t.Unknown].Fixed })
}

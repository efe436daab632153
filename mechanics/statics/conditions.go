package statics

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/units"
)

// senseTol is how far below nothing a cable's tension may come out, relative to
// the largest force, before it pushes: a cable at exactly zero is slack, not
// broken. Friction and faces are judged by the same part of the largest force.
const senseTol = 1e-9

// sameTol is what may be left of the free parts of unknowns, relative to them, that
// cancel in a sum: rounding of the null space leaves 1e-14.
const sameTol = 1e-11

// ConditionKind says what a condition is about.
type ConditionKind int

// The kinds of conditions.
const (
	Sense    ConditionKind = iota // a cable pulls, a strut pushes, a contact or support presses
	Friction                      // |F| <= μN on a rough surface where slip does not impend
	Face                          // the normal force acts between the ends of a face
	Grip                          // a belt does not slip on its drum where slip does not impend
)

// Condition is what an admissible state keeps besides equilibrium. Line or Joint
// is -1; of a belt Line is its first part. It has one part or more, in newtons:
//
//	Sense     N >= 0
//	Friction  μN - F >= 0 and μN + F >= 0; in space |F| <= μN
//	Face      (e - e₀) N/l >= 0 and (e₁ - e) N/l >= 0
//	Grip      R1 - R2 e^(-μβ) >= 0 and R2 - R1 e^(-μβ) >= 0
//
// with e the place where the normal force acts along the face, e₀ and e₁ its two
// ends and l its length: eN is the moment about the joint's point, so that the
// parts are linear in the unknowns.
type Condition struct {
	Kind        ConditionKind
	Name        string
	Line, Joint int

	parts []requirement
	at    contact
}

// requirement is |(a, b)| <= u; without a and b, u >= 0. In space a and b are the friction force
// along two directions that are perpendicular to each other.
type requirement struct{ u, a, b problem.Affine }

func (r requirement) round() bool { return len(r.a.Terms) > 0 }

// contact is where conditions belong together: a joint, or a belt by its first part. Where
// its normal force or its tension has the wrong sense, the others say nothing. It is
// noContact of a line of its own.
type contact struct{ joint, belt int }

var noContact = contact{-1, -1}

// conditions lists what an admissible state of a problem keeps.
func conditions(p *problem.Problem) []Condition {
	var out []Condition
	for i := range p.Lines {
		l := &p.Lines[i]
		at := noContact
		if l.Belt != nil {
			at.belt = l.Belt.Lines[0]
		}
		switch l.Kind.Info().Sense {
		case problem.PullOnly, problem.PushOnly, problem.PressOnly:
			out = append(out, Condition{Kind: Sense, Name: l.Name, Line: i, Joint: -1, parts: []requirement{{u: l.Magnitude}}, at: at})
		}
	}
	for _, b := range p.Belts() {
		if b.Tight < 0 {
			out = append(out, gripCondition(p, b))
		}
	}
	for i := range p.Joints {
		j := &p.Joints[i]
		if !j.Kind.Info().PushOnly || len(j.Forces.Terms) == 0 {
			continue
		}
		normal := j.Forces.Terms[0].Unknown
		put := func(kind ConditionKind, name string, parts []requirement) {
			out = append(out, Condition{Kind: kind, Name: name, Line: -1, Joint: i, parts: parts, at: contact{i, -1}})
		}
		put(Sense, p.Unknowns[normal].Name, []requirement{{u: times(normal, 1)}})
		if j.HasFriction && !j.Impending {
			put(Friction, j.Name, frictionParts(j))
		}
		if j.HasFace {
			put(Face, j.Name, faceParts(p, j))
		}
	}
	return out
}

func frictionParts(j *problem.Joint) (out []requirement) {
	limit, tangents := times(j.Forces.Terms[0].Unknown, j.Friction), j.Forces.Terms[1:]
	if len(tangents) == 2 && j.Friction > 0 {
		return []requirement{{limit, times(tangents[0].Unknown, 1), times(tangents[1].Unknown, 1)}}
	}
	for _, t := range tangents {
		out = append(out, requirement{u: limit.Plus(times(t.Unknown, -1))}, requirement{u: limit.Plus(times(t.Unknown, 1))})
	}
	return out
}

func gripCondition(p *problem.Problem, b *problem.Belt) Condition {
	c := Condition{Kind: Grip, Name: b.Name, Line: b.Lines[0], Joint: -1, at: contact{-1, b.Lines[0]}}
	for k := range b.Lines {
		one, other := p.Lines[b.Lines[k]].Magnitude, p.Lines[b.Lines[1-k]].Magnitude
		c.parts = append(c.parts, requirement{u: one.Plus(other.Times(-1 / b.Ratio()))})
	}
	return c
}

func faceParts(p *problem.Problem, j *problem.Joint) []requirement {
	f := faceOf(p, j)
	place := times(j.Moments.Terms[0].Unknown, f.turn/f.length)
	beyond := func(end float64) problem.Affine { return place.Plus(times(j.Forces.Terms[0].Unknown, -end/f.length)) }
	return []requirement{{u: beyond(f.ends[0])}, {u: beyond(f.ends[1]).Times(-1)}}
}

// face is a joint's face by numbers: its ends along t, measured from the joint's
// point, its length, and turn, by which the joint's moment M gives the place e of
// its normal force N: e N = turn·M.
type face struct {
	t            r3.Vec
	ends         [2]float64
	length, turn float64
}

func faceOf(p *problem.Problem, j *problem.Joint) face {
	q := p.Points[j.Point].At
	a, b := p.Points[j.Face[0]].At, p.Points[j.Face[1]].At
	f := face{length: r3.Norm(r3.Sub(b, a))}
	f.t = r3.Scale(1/f.length, r3.Sub(b, a))
	f.ends = [2]float64{r3.Dot(r3.Sub(a, q), f.t), r3.Dot(r3.Sub(b, q), f.t)}
	f.turn = j.Moments.Terms[0].D.Z / r3.Cross(f.t, j.Normal).Z
	return f
}

func times(unknown int, coef float64) problem.Affine {
	return problem.Affine{Terms: []problem.Term{{Unknown: unknown, Coef: coef}}}
}

// terms lists the unknowns of a condition.
func (c *Condition) terms() []problem.Term {
	var out []problem.Term
	for _, r := range c.parts {
		out = slices.Concat(out, r.u.Terms, r.a.Terms, r.b.Terms)
	}
	return out
}

// spare is how far a condition is kept in the solution at hand, in newtons: less
// than nothing where it is not. It is false where that has no single value.
func (s *Solution) spare(c *Condition) (float64, bool) {
	least := math.Inf(1)
	for _, r := range c.parts {
		u, ok := s.single(r.u)
		a, also := s.single(r.a)
		b, too := s.single(r.b)
		if !ok || !also || !too {
			return 0, false
		}
		least = min(least, u-math.Hypot(a, b))
	}
	return least, true
}

// violated tells that every solution violates a condition.
func (s *Solution) violated(c *Condition) bool {
	spare, fixed := s.spare(c)
	return fixed && spare < -senseTol*s.scaleOfCondition(c)
}

// lifted are the contacts whose normal force would have to pull, or the belts one of
// whose tensions would have to push, in every solution.
func (s *Solution) lifted() map[contact]bool {
	out := map[contact]bool{}
	for i := range s.conditions {
		if c := &s.conditions[i]; c.Kind == Sense && s.violated(c) {
			out[c.at] = true
		}
	}
	return out
}

// scaleOfCondition is the largest force among those that hang together with it.
func (s *Solution) scaleOfCondition(c *Condition) float64 {
	if c.Kind == Grip {
		of := s.Problem.Lines[c.Line].Belt.Lines
		return max(s.scaleOfMagnitude(s.Problem.Lines[of[0]].Magnitude), s.scaleOfMagnitude(s.Problem.Lines[of[1]].Magnitude))
	}
	return s.scaleOfMagnitude(c.parts[0].u)
}

// Magnitude is the magnitude of a line, with false where it has no single value.
func (s *Solution) Magnitude(line int) (float64, bool) {
	return s.single(s.Problem.Lines[line].Magnitude)
}

// single is a magnitude that is the same in every solution, although its unknowns may
// be free: what one takes more the other takes less.
func (s *Solution) single(m problem.Affine) (float64, bool) {
	var sum []float64
	size := 0.0
	for _, t := range m.Terms {
		if s.X[t.Unknown].Fixed {
			continue
		}
		if s.freedom == nil {
			return 0, false
		}
		if sum == nil {
			sum = make([]float64, s.Degree)
		}
		z := s.freedom[t.Unknown]
		size += math.Abs(t.Coef) * floats.Norm(z, 2)
		floats.AddScaled(sum, t.Coef, z)
	}
	return s.at(m), floats.Norm(sum, 2) <= sameTol*size
}

// at is a magnitude in the solution at hand, single or not.
func (s *Solution) at(m problem.Affine) float64 {
	sum, _ := m.Sum(func(j int) (float64, bool) { return s.X[j].Value, true })
	return sum
}

// Sum is a force or a couple in the solution at hand.
func (s *Solution) Sum(v problem.Vector) r3.Vec {
	return v.Sum(func(j int) float64 { return s.X[j].Value })
}

// judgeConditions lists the conditions that every solution violates. A surface
// whose normal force would have to pull has neither friction nor a face to judge.
func (s *Solution) judgeConditions() {
	if s.Verdict != Determinate && s.Verdict != Indeterminate {
		return
	}
	lifted := s.lifted()
	for i := range s.conditions {
		c := &s.conditions[i]
		if !s.violated(c) || c.Kind != Sense && lifted[c.at] {
			continue
		}
		s.Broken = append(s.Broken, *c)
		s.unbindWith(c)
		// a sum, or a magnitude that is known, is no unknown's
		if u := c.parts[0].u.Alone(); c.Kind == Sense && u >= 0 && (c.Joint >= 0 || s.Problem.Unknowns[u].Line == c.Line) {
			s.X[u].Broken = true
		}
	}
	for i := range s.conflicts {
		for k := range s.conflicts[i].Conditions {
			s.unbindWith(&s.conflicts[i].Conditions[k])
		}
	}
	if len(s.Broken)+len(s.conflicts) > 0 || s.undecided {
		s.Verdict = Inadmissible
	}
}

// unbindWith claims nothing of what is free and hangs together with a condition that
// is violated.
func (s *Solution) unbindWith(c *Condition) {
	for _, t := range c.terms() {
		for _, j := range s.parts[s.partOf[t.Unknown]].Cols {
			s.X[j].unbind()
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

package statics

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/units"
)

// reasons counts what stands in the way of an admissible solution.
func (s *Solution) reasons() int { return len(s.Broken) + len(s.conflicts) }

// inadmissibleWords says why no solution is admissible.
func (s *Solution) inadmissibleWords() []string {
	only := "the only solution"
	if s.Degree > 0 {
		only = "every solution"
	}
	head := s.Headline()
	var why []string
	for i := range s.Broken {
		why = append(why, s.brokenWords(&s.Broken[i], only))
	}
	for i := range s.conflicts {
		why = append(why, s.conflictWords(&s.conflicts[i]))
	}
	if s.undecided {
		why = append(why, undecidedWords)
	}
	switch {
	case len(why) > 1:
		head += ": " + only + " is inadmissible"
	case len(s.Broken) > 0:
		does, _ := s.instead(&s.Broken[0])
		head, why = head+": "+why[0]+"; "+does, nil
	default:
		head, why = head+": "+why[0], nil
	}
	out := append([]string{head}, why...)
	for j, x := range s.X {
		if s.Degree > 0 && (x.Fixed || x.Ranged) {
			out = append(out, s.RangeWords(j))
		}
	}
	return out
}

const undecidedWords = "no state was found in which every friction force satisfies |F| ≤ μN; if there is one, friction is at its limit in it"

// brokenWords says what a condition that is violated would need.
func (s *Solution) brokenWords(c *Condition, only string) string {
	p := s.Problem
	switch c.Kind {
	case Grip:
		return s.gripNeeded(p.Lines[c.Line].Belt)
	case Friction:
		size, limit := s.frictionOf(&p.Joints[c.Joint])
		needed, available := p.Units.Force.Apart(size, limit, p.Figures)
		return fmt.Sprintf("equilibrium requires a friction force of %s at %s, but μN = %s", needed, c.Name, available)
	case Face:
		j := &p.Joints[c.Joint]
		if s.liftedOff(j) {
			return momentAlone(p, c.Name, s.X[j.Moments[0].Unknown].Value)
		}
		beyond, end := s.beyond(j)
		return fmt.Sprintf("the normal force at %s would have to act %s beyond %s, outside the contact", c.Name, p.Units.Length.Format(beyond, p.Figures), end)
	}
	size := s.force1(math.Abs(s.at(c.parts[0].u)))
	if c.Line >= 0 {
		info := p.Lines[c.Line].Kind.Info()
		if info.Sense != problem.PressOnly {
			return fmt.Sprintf("%s puts %s %s in %s (%s)", only, info.Name, c.Name, info.Negative, size)
		}
		return fmt.Sprintf("contact %s would have to pull (%s)", c.Name, size)
	}
	return fmt.Sprintf("the %s at %s would have to pull (%s)", p.Joints[c.Joint].Words(), p.Joints[c.Joint].Name, size)
}

// momentAlone is for a face with a moment and no normal force to exert it.
func momentAlone(p *problem.Problem, joint string, moment float64) string {
	return "the contact at " + joint + " would have to exert a moment of " + p.Units.For(units.Moment).Format(math.Abs(moment), p.Figures) + " without a normal force"
}

// Instead says what happens where a condition is the only one that is violated: a
// cable goes slack, bodies separate, a body slips or tips.
func (s *Solution) Instead(c *Condition) string {
	does, at := s.instead(c)
	return does + at
}

// instead is the same in two parts: what happens, and where.
func (s *Solution) instead(c *Condition) (does, at string) {
	p := s.Problem
	if c.Kind == Grip {
		return "belt " + c.Name + " slips", ""
	}
	if c.Line >= 0 {
		switch p.Lines[c.Line].Kind.Info().Sense {
		case problem.PullOnly:
			return c.Name + " goes slack", ""
		case problem.PushOnly:
			return c.Name + " loses contact", ""
		}
		return "the bodies separate", " at " + c.Name
	}
	j := &p.Joints[c.Joint]
	body := say.The(p.Bodies[j.First].Name)
	switch {
	case c.Kind == Friction:
		return body + " slips", ""
	case c.Kind == Face && s.liftedOff(j):
		return body + " tips", ""
	case c.Kind == Face:
		_, end := s.beyond(j)
		return body + " tips about " + end, ""
	case j.Second >= 0:
		return "the bodies separate", " at " + j.Name
	}
	return body + " lifts off", " at " + j.Name
}

// conflictWords names the conditions that no solution satisfies together, and what slips
// where friction alone stands in the way.
func (s *Solution) conflictWords(of *conflict) string {
	p := s.Problem
	var pull, push, press, support, face, friction, grip, slips []string
	for i := range of.Conditions {
		c := &of.Conditions[i]
		switch {
		case c.Kind == Grip:
			grip = append(grip, c.Name)
			slips = withNew(slips, "belt "+c.Name)
		case c.Kind == Friction:
			friction = append(friction, c.Name)
			slips = withNew(slips, say.The(p.Bodies[p.Joints[c.Joint].First].Name))
		case c.Kind == Face:
			face = append(face, c.Name)
		case c.Line < 0:
			support = append(support, p.Joints[c.Joint].Name)
		case p.Lines[c.Line].Kind.Info().Sense == problem.PullOnly:
			pull = append(pull, c.Name)
		case p.Lines[c.Line].Kind.Info().Sense == problem.PushOnly:
			push = append(push, c.Name)
		default:
			press = append(press, c.Name)
		}
	}
	var parts []string
	put := func(of []string, one, more, rest string) {
		if len(of) > 1 {
			one = more
		}
		if len(of) > 0 {
			parts = append(parts, one+say.AndMore(of, maxNames)+rest)
		}
	}
	put(pull, "cable ", "cables ", " in tension")
	put(push, "strut ", "struts ", " in compression")
	put(press, "contact ", "contacts ", " in compression")
	put(support, "the support at ", "the supports at ", " in compression")
	put(face, "the normal force at ", "the normal forces at ", " inside the contact")
	put(friction, "|F| ≤ μN at ", "|F| ≤ μN at ", "")
	put(grip, "the tensions of belt ", "the tensions of belts ", " within the ratio e^(μβ)")
	words := "no solution has " + say.And(parts...)
	if of.Slips {
		if more := len(slips) - maxNames; more > 0 {
			slips = append(slips[:maxNames:maxNames], say.Count(more, "more body"))
		}
		words += "; " + say.Or(slips...) + " slips"
	}
	return words
}

// maxNames is how many names a sentence has; more are counted.
const maxNames = 6

// possibleWords says of an indeterminate state what friction leaves open.
func (s *Solution) possibleWords() string {
	var at, belts []string
	for i := range s.conditions {
		c := &s.conditions[i]
		switch _, fixed := s.spare(c); {
		case fixed:
		case c.Kind == Friction:
			at = append(at, c.Name)
		case c.Kind == Grip:
			belts = append(belts, c.Name)
		}
	}
	var with []string
	if len(at) > 0 {
		with = append(with, "|F| ≤ μN at "+say.AndMore(at, maxNames))
	}
	if len(belts) > 0 {
		with = append(with, "the tensions of "+say.AndMore(belts, maxNames)+" within the ratio e^(μβ)")
	}
	if !s.possible || len(with) == 0 {
		return ""
	}
	return "equilibrium is possible with " + say.And(with...)
}

// Ends says what becomes of those that end a range: cables go slack, struts lose
// contact, contacts and supports lift off, surfaces slip, bodies tip.
func (s *Solution) Ends(by []Ended) string {
	p := s.Problem
	var slack, struts, lifts, slips, ends []string
	tips := map[string][]string{}
	for _, e := range by {
		c := &s.conditions[e.Condition]
		switch {
		case c.Kind == Friction:
			slips = withNew(slips, c.Name)
		case c.Kind == Grip:
			slips = withNew(slips, "belt "+c.Name)
		case c.Kind == Face:
			j := &p.Joints[c.Joint]
			end := p.Points[j.Face[e.Part]].Name
			ends = withNew(ends, end)
			tips[end] = append(tips[end], say.The(p.Bodies[j.First].Name))
		case c.Line >= 0 && p.Lines[c.Line].Kind.Info().Sense == problem.PullOnly:
			slack = append(slack, c.Name)
		case c.Line >= 0 && p.Lines[c.Line].Kind.Info().Sense == problem.PushOnly:
			struts = append(struts, c.Name)
		default:
			lifts = append(lifts, c.Name)
		}
	}
	var out []string
	put := func(of []string, one, more string) {
		if len(of) > 1 {
			one = more
		}
		if len(of) > 0 {
			out = append(out, say.AndMore(of, maxNames)+one)
		}
	}
	put(slack, " goes slack", " go slack")
	put(struts, " loses contact", " lose contact")
	put(lifts, " lifts off", " lift off")
	if len(slips) > 0 {
		out = append(out, "slip is impending at "+say.AndMore(slips, maxNames))
	}
	for _, end := range ends {
		put(tips[end], " is about to tip about "+end, " are about to tip about "+end)
	}
	return say.And(out...)
}

// frictionOf is the friction force that a rough surface exerts in the solution at
// hand, and the greatest that it can: |F| and μN.
func (s *Solution) frictionOf(j *problem.Joint) (needed, available float64) {
	for _, t := range j.Forces[1:] {
		needed = math.Hypot(needed, s.X[t.Unknown].Value)
	}
	return needed, j.Friction * max(0, s.X[j.Forces[0].Unknown].Value)
}

// liftedOff tells that a joint has no normal force in the solution at hand.
func (s *Solution) liftedOff(j *problem.Joint) bool {
	normal := j.Forces[0].Unknown
	return s.X[normal].Value <= senseTol*s.scaleOf(normal)
}

// actsAt is where the normal force on a face acts, measured along it from the
// joint's point: e = M·turn/N.
func (s *Solution) actsAt(j *problem.Joint) (e float64, f face) {
	f = faceOf(s.Problem, j)
	return s.X[j.Moments[0].Unknown].Value * f.turn / s.X[j.Forces[0].Unknown].Value, f
}

// beyond is how far beyond a face's nearer end its normal force acts, and that end;
// less than nothing where it acts inside.
func (s *Solution) beyond(j *problem.Joint) (float64, string) {
	e, f := s.actsAt(j)
	if f.ends[0]-e > e-f.ends[1] {
		return f.ends[0] - e, s.Problem.Points[j.Face[0]].Name
	}
	return e - f.ends[1], s.Problem.Points[j.Face[1]].Name
}

// placeOn is the point of a face at e.
func (s *Solution) placeOn(j *problem.Joint, e float64, f face) r3.Vec {
	return r3.Add(s.Problem.Points[j.Point].At, r3.Scale(e, f.t))
}

package statics

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/units"
)

// inadmissibleWords says why no solution is admissible.
func (s *Solution) inadmissibleWords() []string {
	head := s.Verdict.String()
	if len(s.Broken)+len(s.Conflicts) > 0 {
		head += ", not possible as drawn"
	}
	if len(s.Motions) > 0 {
		head += ", partly constrained"
	}
	only := "the only solution"
	if s.Degree > 0 {
		only = "every solution"
	}
	out := []string{head}
	if len(s.Broken) == 1 && len(s.Conflicts) == 0 {
		out[0] += ": " + s.brokenWords(&s.Broken[0], only) + "; " + s.Instead(&s.Broken[0])
	} else {
		for i := range s.Broken {
			out = append(out, s.brokenWords(&s.Broken[i], only))
		}
	}
	for i := range s.Conflicts {
		out = append(out, s.conflictWords(&s.Conflicts[i]))
	}
	if s.undecided {
		out = append(out, undecidedWords)
	}
	for j, x := range s.X {
		if s.Degree > 0 && (x.Fixed || x.Ranged) {
			out = append(out, s.RangeWords(j))
		}
	}
	return out
}

const undecidedWords = "no state was found in which every friction force lies within μN; if there is one, friction is at its limit in it"

// brokenWords says what a condition that is violated would need.
func (s *Solution) brokenWords(c *Condition, only string) string {
	p := s.Problem
	switch c.Kind {
	case Grip:
		return s.gripNeeded(p.Lines[c.Line].Belt)
	case Friction:
		needed, available := s.frictionOf(&p.Joints[c.Joint])
		return fmt.Sprintf("the surface at %s would have to exert %s of friction, and %s is available", c.Name, s.force1(needed), s.force1(available))
	case Face:
		j := &p.Joints[c.Joint]
		if s.liftedOff(j) {
			return fmt.Sprintf("the contact at %s would have to exert a moment of %s without a normal force", c.Name,
				p.Units.For(units.Moment).Format(math.Abs(s.X[j.Moments[0].Unknown].Value), p.Figures))
		}
		beyond, end := s.beyond(j)
		return fmt.Sprintf("the normal force at %s would have to act %s beyond %s, outside the contact", c.Name, p.Units.Length.Format(beyond, p.Figures), end)
	}
	size := s.force1(math.Abs(s.at(c.parts[0])))
	if c.Line >= 0 {
		info := p.Lines[c.Line].Kind.Info()
		if info.Sense != problem.PressOnly {
			return fmt.Sprintf("%s puts %s %s in %s (%s)", only, info.Name, c.Name, info.Negative, size)
		}
		return fmt.Sprintf("contact %s would have to pull (%s)", c.Name, size)
	}
	return fmt.Sprintf("the %s at %s would have to pull (%s)", jointWords(&p.Joints[c.Joint]), p.Joints[c.Joint].Name, size)
}

// Instead says what happens where a condition is the only one that is violated: a
// cable goes slack, a contact lifts off, a body slips or tips.
func (s *Solution) Instead(c *Condition) string {
	p := s.Problem
	switch {
	case c.Kind == Grip:
		return "belt " + c.Name + " slips"
	case c.Kind == Friction:
		return p.Bodies[p.Joints[c.Joint].First].Name + " slips"
	case c.Kind == Face && s.liftedOff(&p.Joints[c.Joint]):
		return p.Bodies[p.Joints[c.Joint].First].Name + " tips"
	case c.Kind == Face:
		_, end := s.beyond(&p.Joints[c.Joint])
		return p.Bodies[p.Joints[c.Joint].First].Name + " tips about " + end
	}
	return c.Name + " " + p.LetsGo(c.Line)
}

// conflictWords names the conditions that no solution keeps together, and what slips
// where friction alone stands in the way.
func (s *Solution) conflictWords(of *Conflict) string {
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
			slips = withNew(slips, p.Bodies[p.Joints[c.Joint].First].Name)
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
		switch len(of) {
		case 0:
		case 1:
			parts = append(parts, one+of[0]+rest)
		default:
			parts = append(parts, more+someNames(of)+rest)
		}
	}
	put(pull, "cable ", "cables ", " in tension")
	put(push, "strut ", "struts ", " in compression")
	put(press, "contact ", "contacts ", " pressing")
	put(support, "the support at ", "the supports at ", " pressing")
	put(face, "the normal force at ", "the normal forces at ", " inside the contact")
	put(friction, "|F| ≤ μN at ", "|F| ≤ μN at ", "")
	put(grip, "the tensions of belt ", "the tensions of belts ", " within the ratio e^(μβ)")
	words := "no solution has " + listed(parts)
	if of.Slips {
		words += "; " + either(slips) + " slips"
	}
	return words
}

// either joins names of which one at least is meant.
func either(names []string) string { return series(few(names), "or") }

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
		with = append(with, "|F| ≤ μN at "+someNames(at))
	}
	if len(belts) > 0 {
		with = append(with, "the tensions of "+someNames(belts)+" within the ratio e^(μβ)")
	}
	if !s.possible || len(with) == 0 {
		return ""
	}
	return "equilibrium is possible with " + listed(with)
}

// Ends says what becomes of those that end a range: cables go slack, struts no
// longer push, contacts and supports lift off, surfaces slip, bodies tip.
func (s *Solution) Ends(by []Ended) string {
	p := s.Problem
	var out []string
	say := func(one, more string, of []string) {
		switch len(of) {
		case 0:
		case 1:
			out = append(out, of[0]+" "+one)
		default:
			out = append(out, someNames(of)+" "+more)
		}
	}
	var slack, struts, lifts, slips []string
	tips := map[string][]string{}
	var ends []string
	for _, e := range by {
		c := &s.conditions[e.Condition]
		switch {
		case c.Kind == Friction, c.Kind == Grip:
			slips = withNew(slips, c.Name)
		case c.Kind == Face:
			j := &p.Joints[c.Joint]
			end := p.Points[j.Face[e.Part]].Name
			if len(tips[end]) == 0 {
				ends = append(ends, end)
			}
			tips[end] = append(tips[end], p.Bodies[j.First].Name)
		case c.Line >= 0 && p.Lines[c.Line].Kind.Info().Sense == problem.PullOnly:
			slack = append(slack, c.Name)
		case c.Line >= 0 && p.Lines[c.Line].Kind.Info().Sense == problem.PushOnly:
			struts = append(struts, c.Name)
		default:
			lifts = append(lifts, c.Name)
		}
	}
	say("goes slack", "go slack", slack)
	say("no longer pushes", "no longer push", struts)
	say("lifts off", "lift off", lifts)
	say("is about to slip", "are about to slip", slips)
	for _, end := range ends {
		say("is about to tip about "+end, "are about to tip about "+end, tips[end])
	}
	return strings.Join(out, " and ")
}

// someNames joins names; of more than a line takes it counts the rest.
func someNames(names []string) string { return listed(few(names)) }

func few(names []string) []string {
	const most = 6
	if more := len(names) - most; more > 0 {
		return append(names[:most:most], strconv.Itoa(more)+" more")
	}
	return names
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

// jointWords is a joint's kind as it is said: a rough surface.
func jointWords(j *problem.Joint) string { return strings.ReplaceAll(j.Kind.String(), "-", " ") }

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

package statics

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
)

// inadmissibleWords says why no solution is admissible.
func (s *Solution) inadmissibleWords() []string {
	head := s.Headline() + ", not possible as drawn"
	only := "the only solution"
	if s.Degree > 0 {
		only = "every solution"
	}
	var out []string
	switch {
	case len(s.Broken) == 1 && len(s.Conflict) == 0:
		out = append(out, head+": "+s.brokenWords(&s.Broken[0], only)+"; "+s.Instead(&s.Broken[0]))
	case len(s.Broken) > 0:
		out = append(out, head)
		for i := range s.Broken {
			out = append(out, s.brokenWords(&s.Broken[i], only))
		}
	default:
		out = append(out, head)
	}
	if len(s.Conflict) > 0 {
		out = append(out, s.conflictWords())
		if w := s.slipWords(); w != "" {
			out = append(out, w)
		}
	}
	if s.undecided && len(s.Broken)+len(s.Conflict) == 0 {
		out = append(out, undecidedWords)
	}
	for j, x := range s.X {
		if s.Degree > 0 && x.Fixed {
			out = append(out, s.rangeWords(j))
		}
	}
	return out
}

const undecidedWords = "no state was found in which every friction force lies within μN; if there is one, friction is at its limit in it"

// brokenWords says what a condition that is violated would need.
func (s *Solution) brokenWords(c *Condition, only string) string {
	p := s.Problem
	switch c.Kind {
	case Friction:
		needed, available := s.frictionOf(&p.Joints[c.Joint])
		return fmt.Sprintf("the surface at %s would have to exert %s of friction, and %s is available", c.Name, s.force1(needed), s.force1(available))
	case Face:
		beyond, end := s.beyond(&p.Joints[c.Joint])
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
	return fmt.Sprintf("the %s at %s would have to pull (%s)", p.Joints[c.Joint].Kind, p.Joints[c.Joint].Name, size)
}

// Instead says what happens where a condition is the only one that is violated: a
// cable goes slack, a contact lifts off, a body slips or tips.
func (s *Solution) Instead(c *Condition) string {
	p := s.Problem
	switch {
	case c.Kind == Friction:
		return p.Bodies[p.Joints[c.Joint].First].Name + " slips"
	case c.Kind == Face:
		_, end := s.beyond(&p.Joints[c.Joint])
		return p.Bodies[p.Joints[c.Joint].First].Name + " tips about " + end
	}
	return c.Name + " " + p.LetsGo(c.Line)
}

// conflictWords names the conditions that no solution keeps together.
func (s *Solution) conflictWords() string {
	p := s.Problem
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
	names := map[string][]string{}
	for i := range s.Conflict {
		c := &s.Conflict[i]
		of := ""
		switch {
		case c.Kind == Friction:
			of = "friction"
		case c.Kind == Face:
			of = "face"
		case c.Line >= 0:
			of = p.Lines[c.Line].Kind.Info().Name
		default:
			of = "support"
		}
		name := c.Name
		if of == "support" {
			name = p.Joints[c.Joint].Name
		}
		names[of] = append(names[of], name)
	}
	put(names["cable"], "cable ", "cables ", " in tension")
	put(names["strut"], "strut ", "struts ", " in compression")
	put(names["contact"], "contact ", "contacts ", " pressing")
	put(names["support"], "the support at ", "the supports at ", " pressing")
	put(names["face"], "the normal force at ", "the normal forces at ", " inside the contact")
	words := "no solution"
	if len(parts) > 0 {
		words += " has " + listed(parts)
	}
	if of := names["friction"]; len(of) > 0 {
		if len(parts) > 0 {
			words += ", and"
		}
		words += " satisfies |F| ≤ μN at " + someNames(of)
	}
	return words
}

// slipWords says what slips, where friction alone stands in the way of a state.
func (s *Solution) slipWords() string {
	if !s.Slips {
		return ""
	}
	var at []string
	for i := range s.Conflict {
		if s.Conflict[i].Kind == Friction {
			at = append(at, s.Conflict[i].Name)
		}
	}
	switch len(at) {
	case 0:
		return ""
	case 1:
		return at[0] + " slips: equilibrium would need a greater coefficient of friction"
	}
	return either(at) + " slips: equilibrium would need greater coefficients of friction"
}

// either joins names of which one at least is meant.
func either(names []string) string { return series(few(names), "or") }

// possibleWords says of an indeterminate state what friction leaves open.
func (s *Solution) possibleWords() string {
	var at []string
	for i := range s.conditions {
		c := &s.conditions[i]
		if _, fixed := s.spare(c); c.Kind == Friction && !fixed {
			at = append(at, c.Name)
		}
	}
	if !s.possible || len(at) == 0 {
		return ""
	}
	return "equilibrium is possible with |F| ≤ μN at " + someNames(at)
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
		case c.Kind == Friction:
			if !containsName(slips, c.Name) {
				slips = append(slips, c.Name)
			}
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

func containsName(list []string, name string) bool {
	for _, n := range list {
		if n == name {
			return true
		}
	}
	return false
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

// place is the point of a face at e.
func (s *Solution) placeOn(j *problem.Joint, e float64, f face) r3.Vec {
	return r3.Add(s.Problem.Points[j.Point].At, r3.Scale(e, f.t))
}

package statics

import (
	"fmt"
	"math"
	"slices"
	"strings"

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
	broken := func(c Condition) string { return s.brokenWords(&c, only) }
	why := slices.Concat(say.Each(s.Broken, broken), say.Each(s.conflicts, s.conflictWords))
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
			return momentAlone(p, c.Name, s.X[j.Moments.Terms[0].Unknown].Value)
		}
		beyond, end := s.beyond(j)
		return fmt.Sprintf("the normal force at %s would have to act %s beyond %s, outside the contact", c.Name, p.Format(beyond, units.Length), end)
	}
	size := s.Problem.Format(math.Abs(s.at(c.parts[0].u)), units.Force)
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
	return "the contact at " + joint + " would have to exert a moment of " + p.Format(math.Abs(moment), units.Moment) + " without a normal force"
}

// Instead says what happens where each condition that is violated is the only one: a
// cable goes slack, bodies separate, a body slips or tips.
func (s *Solution) Instead() []string {
	return say.Each(s.Broken, func(c Condition) string {
		does, at := s.instead(&c)
		return does + at
	})
}

// instead is the same of one, in two parts: what happens, and where.
func (s *Solution) instead(c *Condition) (does, at string) {
	p := s.Problem
	switch {
	case c.Kind == Grip || c.Kind == Friction:
		return s.slipping(c) + " slips", ""
	case c.Line >= 0:
		if ph, name := s.phrasesOf(c); ph != inContact {
			return strings.Replace(ph.ends[0], "%s", name, 1), ""
		}
		return "the bodies separate", " at " + c.Name
	}
	j := &p.Joints[c.Joint]
	switch {
	case c.Kind == Face && s.liftedOff(j):
		return s.bodyOf(j.First) + " tips", ""
	case c.Kind == Face:
		_, end := s.beyond(j)
		return s.bodyOf(j.First) + " tips about " + end, ""
	case j.Second >= 0:
		return "the bodies separate", " at " + j.Name
	}
	return s.bodyOf(j.First) + " lifts off", " at " + j.Name
}

// saying is what is said of a name, and of more.
type saying [2]string

// phrases are what is said of conditions that are kept, and of those that end a range.
type phrases struct{ kept, ends saying }

var (
	inTension     = phrases{saying{"cable %s in tension", "cables %s in tension"}, saying{"%s goes slack", "%s go slack"}}
	inCompression = phrases{saying{"strut %s in compression", "struts %s in compression"}, saying{"%s loses contact", "%s lose contact"}}
	inContact     = phrases{saying{"contact %s in compression", "contacts %s in compression"}, saying{"%s lifts off", "%s lift off"}}
	atSupport     = phrases{saying{"the support at %s in compression", "the supports at %s in compression"}, inContact.ends}
	onFace        = phrases{saying{"the normal force at %s inside the contact", "the normal forces at %s inside the contact"}, saying{}}
	byFriction    = phrases{saying{"|F| ≤ μN at %s", "|F| ≤ μN at %s"}, saying{"slip is impending at %s", "slip is impending at %s"}}
	byGrip        = phrases{saying{"the tensions of belt %s within the ratio e^(μβ)", "the tensions of belts %s within the ratio e^(μβ)"}, byFriction.ends}
)

// The phrases of the kinds of conditions, and of the senses of lines.
var (
	kindPhrases  = [...]phrases{Face: onFace, Friction: byFriction, Grip: byGrip}
	sensePhrases = [...]phrases{problem.PullOnly: inTension, problem.PushOnly: inCompression, problem.PressOnly: inContact}
)

// phrasesOf gives the words for a condition, and the name that stands in them.
func (s *Solution) phrasesOf(c *Condition) (phrases, string) {
	switch {
	case c.Kind != Sense:
		return kindPhrases[c.Kind], c.Name
	case c.Line < 0:
		return atSupport, s.Problem.Joints[c.Joint].Name
	}
	return sensePhrases[s.Problem.Lines[c.Line].Kind.Info().Sense], c.Name
}

// sayings are names by what is said of them.
type sayings map[saying][]string

func (names sayings) put(said saying, name string) { names[said] = withNew(names[said], name) }

func (names sayings) words(order ...saying) string {
	var out []string
	for _, said := range order {
		if n := len(names[said]); n > 0 {
			out = append(out, strings.Replace(said[min(n, 2)-1], "%s", say.AndMore(names[said], maxNames), 1))
		}
	}
	return say.And(out...)
}

// kept says what it means that conditions are kept.
func (s *Solution) kept(conditions []Condition) string {
	names := sayings{}
	for i := range conditions {
		of, name := s.phrasesOf(&conditions[i])
		names.put(of.kept, name)
	}
	return names.words(inTension.kept, inCompression.kept, inContact.kept, atSupport.kept, onFace.kept, byFriction.kept, byGrip.kept)
}

// Ends says what becomes of those that end a range: cables go slack, struts lose
// contact, contacts and supports lift off, surfaces slip, bodies tip.
func (s *Solution) Ends(by []Ended) string {
	names, order := sayings{}, []saying{inTension.ends, inCompression.ends, inContact.ends, byFriction.ends}
	for _, e := range by {
		c := &s.conditions[e.Condition]
		of, name := s.phrasesOf(c)
		switch c.Kind {
		case Grip:
			name = "belt " + name
		case Face:
			j := &s.Problem.Joints[c.Joint]
			end := s.Problem.Points[j.Face[e.Part]].Name
			of.ends, name = saying{"%s is about to tip about " + end, "%s are about to tip about " + end}, s.bodyOf(j.First)
			order = withNew(order, of.ends)
		}
		names.put(of.ends, name)
	}
	return names.words(order...)
}

// conflictWords names the conditions that no solution satisfies together, and what slips
// where friction alone stands in the way.
func (s *Solution) conflictWords(of conflict) string {
	words := "no solution has " + s.kept(of.Conditions)
	if !of.Slips {
		return words
	}
	var slips []string
	for i := range of.Conditions {
		if c := &of.Conditions[i]; c.Kind == Friction || c.Kind == Grip {
			slips = withNew(slips, s.slipping(c))
		}
	}
	if more := len(slips) - maxNames; more > 0 {
		slips = append(slips[:maxNames:maxNames], say.Count(more, "more body"))
	}
	return words + "; " + say.Or(slips...) + " slips"
}

// slipping names what slips where a condition of friction is violated.
func (s *Solution) slipping(c *Condition) string {
	if c.Kind == Grip {
		return "belt " + c.Name
	}
	return s.bodyOf(s.Problem.Joints[c.Joint].First)
}

// maxNames is how many names a sentence has; more are counted.
const maxNames = 6

// possibleWords says of an indeterminate state what friction leaves open.
func (s *Solution) possibleWords() string {
	open := slices.DeleteFunc(slices.Clone(s.conditions), func(c Condition) bool {
		_, fixed := s.spare(&c)
		return fixed || c.Kind != Friction && c.Kind != Grip
	})
	if !s.possible || len(open) == 0 {
		return ""
	}
	return "equilibrium is possible with " + s.kept(open)
}

// frictionOf is the friction force that a rough surface exerts in the solution at
// hand, and the greatest that it can: |F| and μN.
func (s *Solution) frictionOf(j *problem.Joint) (needed, available float64) {
	for _, t := range j.Forces.Terms[1:] {
		needed = math.Hypot(needed, s.X[t.Unknown].Value)
	}
	return needed, j.Friction * max(0, s.X[j.Forces.Terms[0].Unknown].Value)
}

// liftedOff tells that a joint has no normal force in the solution at hand.
func (s *Solution) liftedOff(j *problem.Joint) bool {
	normal := j.Forces.Terms[0].Unknown
	return s.X[normal].Value <= senseTol*s.scaleOf(normal)
}

// actsAt is where the normal force on a face acts, measured along it from the
// joint's point: e = M·turn/N.
func (s *Solution) actsAt(j *problem.Joint) (e float64, f face) {
	f = faceOf(s.Problem, j)
	return s.X[j.Moments.Terms[0].Unknown].Value * f.turn / s.X[j.Forces.Terms[0].Unknown].Value, f
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

package statics

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/units"
)

// verdicts are the names in the JSON contract, and the verdicts in a few words.
var verdicts = [...]struct{ name, headline string }{
	Determinate:   {"determinate", "statically determinate"},
	Inadmissible:  {"inadmissible", "not possible as drawn"},
	Indeterminate: {"indeterminate", "statically indeterminate"},
	NoEquilibrium: {"no-equilibrium", "no equilibrium"},
	Resultant:     {"resultant", "resultant"},
	Unreadable:    {"unreadable", "unreadable"},
}

// String is the verdict's name in the JSON contract.
func (v Verdict) String() string { return verdicts[v].name }

// Words says the verdict: the first line says which, the others what follows, and
// last what is read by nothing, or doubtful, in the sheet.
func (s *Solution) Words() []string { return s.words(s.Problem.Notes()) }

func (s *Solution) words(notes []problem.Error) []string {
	return append(s.VerdictWords(), say.Each(notes, func(e problem.Error) string { return e.Text() })...)
}

// VerdictWords are Words without what is said of the sheet.
func (s *Solution) VerdictWords() []string {
	var out []string
	switch s.Verdict {
	case Unreadable:
		return []string{s.Headline() + ": there is no free body to write equations for"}
	case Determinate:
		out = append(out, s.determinateWords())
	case Inadmissible:
		out = append(out, s.inadmissibleWords()...)
	case Indeterminate:
		out = append(out, s.indeterminateWords()...)
	case Resultant:
		return s.resultantWords()
	case NoEquilibrium:
		out = append(out, s.Headline()+": the loads move "+s.moved()+" and no support prevents it")
	}
	out = slices.Concat(out, s.motionLines(), s.slackWords())
	if s.Verdict == NoEquilibrium && len(s.X) == 0 {
		out = append(out, "the sheet has neither supports nor unknowns. Try: set expect to \"resultant\" if only the resultant of the known forces is wanted")
	}
	return out
}

// moved says what the loads move.
func (s *Solution) moved() string {
	noun, bodies := "particle", map[int]bool{}
	for _, m := range s.Motions {
		for _, mv := range m.Moves {
			if m.Excited {
				bodies[mv.Body] = true
				if !s.Problem.Bodies[mv.Body].Particle {
					noun = "body"
				}
			}
		}
	}
	return "the " + say.Plural(len(bodies), noun)
}

// resultantWords says what the resultant of the known forces on each body is.
func (s *Solution) resultantWords() []string {
	out := []string{s.Headline() + ": the known forces are added and need not balance"}
	p := s.Problem
	for b := range p.Bodies {
		force, moment := loads(p, b)
		var parts []string
		part := &s.parts[s.partOfBody[b]]
		if size := r3.Norm(force); size > part.least() {
			parts = append(parts, s.Problem.Format(size, units.Force)+" along "+p.Direction(force))
		}
		if size := r3.Norm(moment); !p.Bodies[b].Particle && size > part.least()*s.armOf(part) {
			value, about := p.Format(size, units.Moment), " about "+p.Bodies[b].AboutName
			if p.Planar {
				parts = append(parts, "a "+say.Turn(moment.Z)+" moment of "+value+about)
			} else {
				parts = append(parts, "a moment of "+value+about+" along "+p.Direction(moment))
			}
		}
		if len(parts) == 0 {
			parts = append(parts, "zero")
		}
		out = append(out, "the resultant of the known forces on "+say.The(p.Bodies[b].Name)+" is "+say.And(parts...))
	}
	return out
}

// Headline is the verdict in a few words: "statically indeterminate to the first
// degree, partially constrained".
func (s *Solution) Headline() string {
	word := verdicts[s.Verdict].headline
	switch {
	case s.Verdict == NoEquilibrium:
		return word
	case s.Verdict == Inadmissible && s.reasons() == 0:
		word = "not shown to be possible"
	case s.Verdict == Indeterminate:
		word += " to the " + say.Ordinal(s.Degree) + " degree"
	}
	if len(s.Motions) > 0 {
		word += ", partially constrained"
	}
	return word
}

func (s *Solution) determinateWords() string {
	says := "every unknown has a single value"
	switch {
	case len(s.X) == 0:
		says = "there are no unknowns, and the known forces balance"
	case s.load == 0:
		says = "no load acts, so every unknown is zero"
	}
	return s.Headline() + ": " + says
}

func (s *Solution) indeterminateWords() []string {
	out := []string{s.Headline() + ": " + say.Count(s.Rank, "independent equation") + " for " + say.Count(len(s.X), "unknown")}
	for j := range s.X {
		out = append(out, s.RangeWords(j))
	}
	if w := s.possibleWords(); w != "" {
		out = append(out, w)
	}
	return out
}

// RangeWords says the value of an unknown, or the range that it may have.
func (s *Solution) RangeWords(j int) string {
	x := s.X[j]
	f := func(v float64) string { return s.Problem.Format(v, s.Problem.Unknowns[j].Dim) }
	switch {
	case x.Fixed:
		return fmt.Sprintf("%s = %s is nevertheless determinate", x.Name, f(x.Value))
	case !x.Ranged && s.reasons() > 0:
		return x.Name + " is undetermined, and no value is admissible for every cable and contact"
	case !x.Ranged:
		return x.Name + " is undetermined, and its admissible range was not computed"
	case math.IsInf(x.Low, -1) && math.IsInf(x.High, 1):
		return x.Name + " is undetermined and unbounded"
	case math.IsInf(x.High, 1):
		return fmt.Sprintf("%s is at least %s, with no upper bound", x.Name, f(x.Low))
	case math.IsInf(x.Low, -1):
		return fmt.Sprintf("%s is at most %s, with no lower bound", x.Name, f(x.High))
	}
	if x.High-x.Low <= onBound*s.scaleOf(j) {
		return fmt.Sprintf("%s = %s is the only admissible value", x.Name, f(x.Low))
	}
	low, high := f(x.Low), f(x.High)
	if low == high {
		return fmt.Sprintf("%s = %s to the figures shown", x.Name, low)
	}
	return fmt.Sprintf("%s lies between %s and %s", x.Name, low, high)
}

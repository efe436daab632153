package statics

import (
	"math"
	"slices"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
)

// Slack is the problem solved again with what cannot push gone slack, or what
// cannot pull lifted off. Solution is that of the problem without them: where it
// has a verdict of no equilibrium, the body moves once they let go.
type Slack struct {
	Names    []string
	Solution *Solution
}

// maxSlack is how many lines are let go one after the other: a sheet that needs
// more has its senses turned round, and each takes a solution of its own.
const maxSlack = 50

// slacken solves a problem that violates senses again without what violates them,
// the worst first, until all that is left keeps its sense or nothing holds.
func (s *Solution) slacken() {
	if !s.onlySenses() {
		return
	}
	gone := map[int]bool{}
	var names []string
	at := s
	for at.onlySenses() && len(names) < maxSlack {
		worst, j := 0.0, -1
		for _, c := range at.Broken {
			m := c.parts[0].u
			if len(m.Terms) != 1 || m.Const != 0 {
				continue // tied to others: it does not go slack alone
			}
			if v := math.Abs(at.at(m)); v > worst {
				worst, j = v, m.Terms[0].Unknown
			}
		}
		if j < 0 {
			return
		}
		of, _ := s.Problem.Find(at.X[j].Name, problem.AnUnknown)
		gone[of.Index] = true
		names = append(names, at.X[j].Name)
		at = (&Solution{}).solve(s.Problem.Without(gone))
	}
	if at.Verdict == Inadmissible {
		return // too much of it lets go for the order to say anything
	}
	s.Slack = &Slack{Names: names, Solution: at}
}

// onlySenses tells that every unknown has one value, and that senses are all that
// the solution violates.
func (s *Solution) onlySenses() bool {
	return s.Verdict == Inadmissible && s.Degree == 0 && len(s.Broken) > 0 &&
		!slices.ContainsFunc(s.Broken, func(c Condition) bool { return c.Kind != Sense })
}

// slackWords says what follows once a cable is slack: what carries then, or what moves.
func (s *Solution) slackWords() []string {
	if s.Slack == nil {
		return nil
	}
	without := "without " + say.And(s.Slack.Names...)
	t := s.Slack.Solution
	if t.Verdict == NoEquilibrium {
		out := []string{without + ", there is no equilibrium"}
		for _, m := range t.Motions {
			if m.Excited {
				out = append(out, "then "+t.MotionWords(m))
			}
		}
		return out
	}
	var carry, idle []string
	for j, x := range t.X {
		switch {
		case x.Fixed && x.Value == 0:
			idle = append(idle, x.Name)
		case x.Fixed:
			carry = append(carry, x.Name+" = "+t.Problem.Format(x.Value, t.Problem.Unknowns[j].Dim))
		default:
			carry = append(carry, x.Name+" is undetermined")
		}
	}
	if len(idle) > 0 {
		carry = append(carry, say.And(idle...)+" "+say.Plural(len(idle), "is")+" zero")
	}
	words := without + ", equilibrium is possible"
	if len(carry) > 0 {
		words += ": " + say.And(carry...)
	}
	return []string{words}
}

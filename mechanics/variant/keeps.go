package variant

import (
	"fmt"
	"math"
	"slices"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// solve reads a sheet, of which the reader knows most, and solves it. The error says why it does not read.
func solve(reader *problem.Reader, s *sheet.Sheet) (*statics.Solution, error) {
	p, errs := reader.Read(s)
	if len(errs) > 0 {
		return nil, fmt.Errorf("cannot be read: %s", errs[0].Msg)
	}
	return statics.Solve(p), nil
}

// strays says in what a variant is of another kind than the sheet, each in a few
// words without numbers, so that the same reason reads the same; none where its
// verdict is of the same kind:
//
//   - the verdict, the degree, what goes slack, and what is free to move are the same;
//   - what pulls or pushes in the sheet does so in the variant, links and springs too;
//   - every check that holds in the sheet holds: limits, friction, conditioning;
//   - a sheet that expects a failed check has one.
func strays(was, s *statics.Solution) []string {
	if says := verdictStrays(was, s); len(says) > 0 {
		return says
	}
	out := senseStrays(was, s)
	for i, c := range s.Checks {
		if before, there := was.Again(s, i); !c.OK && (before.OK || !there) {
			out = append(out, fails(s.Problem, c))
		}
	}
	if was.Problem.Expect == problem.FailedCheck && !slices.ContainsFunc(s.Checks, func(c statics.Check) bool { return !c.OK }) {
		out = append(out, "every check passes")
	}
	return out
}

// verdictStrays compares the verdicts.
func verdictStrays(was, now *statics.Solution) []string {
	broken := slices.EqualFunc(was.Broken, now.Broken, func(a, b statics.Condition) bool { return a.Name == b.Name })
	if broken && was.Verdict == now.Verdict && was.Degree == now.Degree && len(was.Motions) == len(now.Motions) {
		return nil
	}
	if says := Otherwise(now); len(says) > 0 {
		return says
	}
	if len(now.Motions) > 0 {
		return []string{"partially constrained"}
	}
	return []string{"every unknown has a single, admissible value"}
}

// Otherwise says in a few words in what a verdict is none of one answer that keeps
// every sense: "TB goes slack", "no equilibrium"; none where it is.
func Otherwise(s *statics.Solution) []string {
	out := s.Instead()
	switch s.Verdict {
	case statics.Indeterminate:
		return append([]string{"statically indeterminate to the " + say.Ordinal(s.Degree) + " degree"}, out...)
	case statics.NoEquilibrium:
		return []string{s.Headline()}
	case statics.Unreadable:
		return []string{"no free body"}
	}
	if s.Verdict == statics.Inadmissible && len(out) == 0 {
		out = append(out, "no solution is admissible")
	}
	return out
}

// senseStrays compares which way lines and supports are stressed.
func senseStrays(was, now *statics.Solution) (out []string) {
	p := now.Problem
	size := 0.0
	for _, c := range now.Checks {
		if c.Kind == statics.CheckSense {
			size = max(size, math.Abs(c.Value))
		}
	}
	for i, c := range now.Checks {
		if before, _ := was.Again(now, i); c.Kind == statics.CheckSense && before.OK && before.Value > 0 && c.Value <= nothing*size {
			out = append(out, c.Subject+" carries no force")
		}
	}
	for i := range p.Lines {
		info := p.Lines[i].Kind.Info()
		if info.Sense != problem.Tension {
			continue
		}
		a, fixed := was.Magnitude(i)
		b, still := now.Magnitude(i)
		word := func(v float64) string { return say.Sense(v, info.Positive, info.Negative) }
		switch {
		case !fixed || !still || a == 0:
		case b == 0:
			out = append(out, p.Lines[i].Name+" carries no force")
		case a*b < 0:
			out = append(out, p.Lines[i].Name+" changes from "+word(a)+" to "+word(b))
		}
	}
	return out
}

// nothing is how small a force is, beside the largest one, that a student would
// take for none.
const nothing = 1e-9

// fails says in a few words which check fails.
func fails(p *problem.Problem, c statics.Check) string {
	if c.Open {
		return c.Says(p)
	}
	switch c.Kind {
	case statics.CheckLimit:
		word := " exceeds"
		if c.Ranged { // only the upper end of the range does
			word = " could exceed"
		}
		return c.Subject + word + " its limit of " + p.Units.Force.Format(c.Bound, p.Figures)
	case statics.CheckFriction:
		return say.The(p.Bodies[p.Joints[c.Joint].First].Name) + " slips at " + c.Subject
	case statics.CheckBelt:
		if !c.Impends {
			return "belt " + c.Subject + " slips"
		}
	case statics.CheckTipping:
		return say.The(p.Bodies[p.Joints[c.Joint].First].Name) + " tips at " + c.Subject
	case statics.CheckCondition:
		return "the equations are ill conditioned"
	}
	return c.Says(p)
}

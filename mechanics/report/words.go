// Package report builds the documents that are said of a solved problem, of a class and of
// a sweep, and writes JSON and CSV for other programs. It computes nothing that the solution
// does not hold.
package report

import (
	"math"
	"slices"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/statics"
)

// Caution stands on the screen, in every report and in the README.
const Caution = "for teaching and quick checks: a static, rigid-body model without dynamic, wind or shock allowance; " +
	"capacities and factors come from the manufacturer and the code that applies; a qualified person decides"

// SenseWord says in words what the sign of an unknown means: tension, compression;
// empty where the unknown is no line's own magnitude or has no single value.
func SenseWord(s *statics.Solution, j int) string {
	x, u := s.X[j], s.Problem.Unknowns[j]
	positive, negative := "push", "pull"
	switch {
	case !x.Fixed:
		return ""
	case u.Own:
		info := s.Problem.Lines[u.Line].Kind.Info()
		positive, negative = info.Positive, info.Negative
	case u.Joint < 0 || !s.Problem.Joints[u.Joint].Kind.Info().PushOnly || s.Problem.Joints[u.Joint].Forces.Terms[0].Unknown != j:
		return ""
	}
	if x.Value == 0 {
		return "none"
	}
	return say.Sense(x.Value, positive, negative)
}

// ResultText is an unknown's value to the sheet's figures, or the range it may have.
func ResultText(s *statics.Solution, j int) string { return resultText(s, j, " .. ") }

func resultText(s *statics.Solution, j int, between string) string {
	x, f := s.X[j], s.Problem.Units.For(s.Problem.Unknowns[j].Dim)
	n := s.Problem.Figures
	switch {
	case x.Fixed:
		return f.Format(x.Value, n)
	case !x.Ranged && s.Verdict == statics.Inadmissible:
		return "no admissible value"
	case !x.Ranged:
		return "not computed"
	}
	return say.Range(x.Low, x.High, between, func(v float64) string { return f.Format(v, n) })
}

// UsePercent is a part of a limit in per cent, with the words that an unbounded
// magnitude has instead.
func UsePercent(p *problem.Problem, use float64) string {
	if math.IsInf(use, 1) {
		return "unbounded, more than 100 %"
	}
	return p.Percent(use)
}

// LimitCheck finds the check of the limit of an unknown's own line; nil where it has none,
// or where what is used of it is not known. Its index is k.
func LimitCheck(s *statics.Solution, j int) (k int, c *statics.Check) {
	u := s.Problem.Unknowns[j]
	k = slices.IndexFunc(s.Checks, func(c statics.Check) bool {
		return u.Own && c.Kind == statics.CheckLimit && c.Line == u.Line && !c.Open
	})
	if k < 0 {
		return k, nil
	}
	return k, &s.Checks[k]
}

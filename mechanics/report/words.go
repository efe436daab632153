// Package report builds the documents that are said of a solved problem, of a class and of
// a sweep, and writes JSON and CSV for other programs. It computes nothing that the solution
// does not hold.
package report

import (
	"math"
	"slices"

	"trivet/mechanics/names"
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
	x := s.X[j]
	positive, negative, ok := names.SignWords(s.Problem, j)
	if !ok || !x.Fixed {
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
// or where what is used of it is not known. Its index is k, -1 for the slack side of a belt, whose
// limit is checked on the tight one.
func LimitCheck(s *statics.Solution, j int) (k int, c *statics.Check) {
	u, x := s.Problem.Unknowns[j], s.X[j]
	if !u.Own || s.Problem.Lines[u.Line].Limit <= 0 {
		return -1, nil
	}
	k = slices.IndexFunc(s.Checks, func(c statics.Check) bool { return c.Kind == statics.CheckLimit && c.Line == u.Line })
	switch {
	case k >= 0 && s.Checks[k].Open, k < 0 && !x.Fixed:
		return k, nil
	case k < 0:
		return k, &statics.Check{Value: math.Abs(x.Value), Bound: s.Problem.Lines[u.Line].Limit}
	}
	return k, &s.Checks[k]
}

// Package report builds the documents that are said of a solved problem, of a class and of
// a sweep, and writes JSON and CSV for other programs. It computes nothing that the solution
// does not hold.
package report

import (
	"math"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/units"
)

// Caution stands on the screen, in every report and in the README.
const Caution = "for teaching and quick checks: a static, rigid-body model without dynamic, wind or shock allowance; " +
	"capacities and factors come from the manufacturer and the code that applies; a qualified person decides"

// SenseWord says in words what the sign of an unknown means: tension, compression;
// empty where the unknown is no line's own magnitude or has no single value.
func SenseWord(s *statics.Solution, j int) string {
	x := s.X[j]
	positive, negative, ok := s.Problem.SignWords(j)
	if !ok || !x.Fixed {
		return ""
	}
	switch {
	case x.Value > 0:
		return positive
	case x.Value < 0:
		return negative
	}
	return "none"
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
	case math.IsInf(x.Low, -1) && math.IsInf(x.High, 1):
		return "unbounded"
	case math.IsInf(x.High, 1):
		return "at least " + f.Format(x.Low, n)
	case math.IsInf(x.Low, -1):
		return "at most " + f.Format(x.High, n)
	}
	return f.Format(x.Low, n) + between + f.Format(x.High, n)
}

// UsePercent is a part of a limit in per cent, with the words that an unbounded
// magnitude has instead.
func UsePercent(p *problem.Problem, use float64) string {
	if math.IsInf(use, 1) {
		return "unbounded, more than 100 %"
	}
	return units.Figures(100*use, p.Figures) + " %"
}

// LimitUse gives the limit of an unknown's own line in newtons and the part of it
// in use, +Inf where nothing bounds it; ok is false where the line has none, or
// where what is used of it is not known.
func LimitUse(s *statics.Solution, j int) (limit, use float64, ok bool) {
	x, u := s.X[j], s.Problem.Unknowns[j]
	if !u.Own || s.Problem.Lines[u.Line].Limit == 0 || !x.Fixed && !x.Ranged {
		return 0, 0, false
	}
	limit = s.Problem.Lines[u.Line].Limit
	if x.Fixed {
		return limit, math.Abs(x.Value) / limit, true
	}
	return limit, max(math.Abs(x.Low), math.Abs(x.High)) / limit, true
}

// Package trust says how far results can be trusted where inputs are measured:
// what the ± in the cells does to each unknown, each result asked for, each limit
// and the verdict. Of what is free it says nothing: ranges are not followed.
package trust

import (
	"math"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/units"
)

// Trust is what the uncertainty of the inputs leaves of a solution: plain data, all
// in SI. ± is taken as it is typed: the limits of a measurement, or its standard
// deviation; the one or the other way of adding up is then the one to look at.
type Trust struct {
	Solution *statics.Solution
	Measured []problem.Measured // the inputs with a ±, each an independent source
	Spreads  []Spread           // of the unknowns, then of what else is asked for
	Checks   []Reach            // how far senses, limits, friction and faces may get
	Moves    []Move             // inputs at an end of their ± that change the verdict
	Gaps     []Gap              // inputs within whose ± there is no single solution
	TooMany  bool               // there are more inputs than are followed, and nothing was worked out
}

// Spread is what the inputs do to a result y. Moving input i from its lower to its
// upper end, a - b to a + b, and solving anew each time,
//
//	By[i] = (y(a+b) - y(a-b)) / 2
//	Independent = √Σ By[i]²    the inputs err independently of each other
//	Worst = Σ |By[i]|          all are at their worse end at once
//
// Low and High are y less the largest fall, and plus the largest rise, that each
// input makes by itself, added up: y ∓ Worst where y is straight enough. By[i] is
// +Inf where y has no single value within the ± of input i.
//
// Source: JCGM 100:2008 (GUM), 5.1.2 equation (10) for the root of the sum of
// squares, 5.1.3 note 2 for half the difference; the clauses are given from memory.
type Spread struct {
	Name               string
	Unknown            int // index in the problem's unknowns, or -1
	Dim                units.Dim
	Value              float64
	By                 []float64
	Independent, Worst float64
	Low, High          float64
	Mostly             int // the input that does the most, or -1 where none does anything
}

// Known tells that the result keeps a single value all over the ± of the inputs.
func (s *Spread) Known() bool { return !math.IsInf(s.Independent, 0) }

// Reach is a check of the solution, and the value and bound that it may have at the
// worst, with what it lacks then.
type Reach struct {
	Check        int // in the solution's checks
	Value, Bound float64
	OK           bool // also then
	Mostly       int
}

// Move is an input at an end of its ±, where the verdict is another.
type Move struct {
	Measured int
	Greater  bool // at a + b, else at a - b
	Solution *statics.Solution
	Fault    string // why the sheet does not read there; Solution is nil then
}

// Gap is a place within the ± of an input where there is no single solution:
// a + Share·b.
type Gap struct {
	Measured int
	Share    float64
}

// The bounds of the work.
const (
	// mostMeasured is how many inputs are followed, with two solutions each.
	mostMeasured = 100
	// mostEquations bounds the same in large systems: the equations of all those
	// solutions together, which take about a second.
	mostEquations = 150_000
	// nothing is what counts as no change, relative to the largest value of the same
	// dimension: rounding leaves 1e-16 times a condition number, and nobody measures 1e-9.
	nothing = 1e-9
)

// Of works out what the ± in a sheet's cells leave of its solution. It is nil where
// no cell has one.
func Of(s *sheet.Sheet, of *statics.Solution) *Trust {
	return While(s, of, func() bool { return true })
}

// While is Of for as long as it is wanted: it gives nil once on says no.
func While(s *sheet.Sheet, of *statics.Solution, on func() bool) *Trust {
	n := len(of.Problem.Measured)
	if n == 0 || of.Verdict == statics.Unreadable {
		return nil
	}
	t := &Trust{Solution: of, Measured: of.Problem.Measured}
	if n > mostMeasured || 2*n*len(of.System.Rows) > mostEquations {
		t.TooMany = true
		return t
	}
	f := follower{Trust: t, sheet: s, reader: problem.NewReader()}
	f.begin()
	for i := range t.Measured {
		var ends [2]moved
		for k, share := range []float64{-1, 1} {
			if !on() {
				return nil
			}
			ends[k] = f.at(i, share)
			f.verdict(i, share, ends[k])
		}
		gaps := f.gaps(i, ends)
		f.spread(i, ends, gaps)
		f.reach(i, ends, gaps)
	}
	f.finish()
	return t
}

// moved is the sheet with one input elsewhere; solution is nil where it does not read.
type moved struct {
	solution *statics.Solution
	fault    string
}

// follower moves the inputs one after the other.
type follower struct {
	*Trust
	sheet   *sheet.Sheet
	reader  *problem.Reader
	queries []problem.Query // of the spreads
	scale   map[units.Dim]float64
	worst   []lack // of Checks
	sought  int    // gaps looked for
}

// at solves the sheet with input i at a + share·b.
func (f *follower) at(i int, share float64) moved {
	p, errs := f.reader.Moved(f.sheet, f.Measured[i].Place, share)
	for _, e := range errs {
		if e.Blocks() {
			return moved{fault: e.Msg}
		}
	}
	base := f.Solution.Problem
	if len(p.Unknowns) != len(base.Unknowns) || len(p.Bodies) != len(base.Bodies) {
		return moved{fault: "it reads as another problem"}
	}
	return moved{solution: statics.SolveAlone(p)}
}

// verdict notes an end at which the verdict is another. A sense that breaks is told
// with the checks.
func (f *follower) verdict(i int, share float64, m moved) {
	was := f.Solution.Verdict
	if m.solution != nil && (m.solution.Verdict == was || was == statics.Determinate && m.solution.Verdict == statics.Inadmissible) {
		return
	}
	f.Moves = append(f.Moves, Move{Measured: i, Greater: share > 0, Solution: m.solution, Fault: m.fault})
}

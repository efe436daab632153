// Package uncertainty says how far results can be trusted where inputs are measured:
// what the ± in the cells does to each unknown, each result asked for, each limit
// and the verdict. The inputs with a ± span a box, a - b to a + b in each; the
// sheet is read and solved anew at its corners and inside.
package uncertainty

import (
	"math"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// Effect is what the uncertainty of the inputs leaves of a solution: plain data, all
// in SI. ± is taken as it is typed: the limits of a measurement, or its standard
// deviation; the worst case or the independent figure is then the one to look at.
type Effect struct {
	Solution  *statics.Solution
	Measured  []problem.Measured // the inputs with a ±, each an independent source
	Spreads   []Spread           // of the unknowns, then of what else is asked for
	Checks    []Reach            // how far senses, limits, friction and faces may get
	Moves     []Move             // places in the box at which the verdict is another
	moreMoves bool               // and there are others
	gaps      []gap              // places in the box without a single solution
	Search    Search             // where the worst case was looked for
	TooMany   bool               // there are more inputs than are followed, and nothing was worked out
}

// Place is a point of the box: by what share of its ± each input is moved, from -1
// (a - b) over 0 (as typed) to 1 (a + b).
type Place []float64

// End says which number of a result is followed.
type End int

// The ends of a result.
const (
	Single   End = iota // its one value
	Least               // of a result with a range, the lower end
	Greatest            // and the upper end
)

func (e End) String() string { return [...]string{"", "least", "greatest"}[e] }

// Spread is what the inputs do to a number y: to the value of a result, or to an end
// of its range. With y(i±) solved anew with input i alone at a ± b,
//
//	By[i]       = (y(i+) - y(i-)) / 2
//	Bend[i]     = (y(i+) + y(i-)) / 2 - y
//	Independent = √Σ (By[i]² + 2 Bend[i]²)    the inputs err independently of each other
//	Low, High   = the least and the greatest y found in the box
//	Worst       = max(y - Low, High - y)
//
// By[i] is +Inf where y has no single value within the ± of input i alone; Low and
// High are infinite where it has none somewhere in the box.
//
// To first order independent errors add as the root of the sum of squares of By, half
// the difference between the ends. A quadratic term c·t² of an input t with a normal
// distribution of standard deviation 1 has the standard deviation √2·c: Bend is c.
// Worst-case limits by the combinations of the ends are common practice.
type Spread struct {
	problem.Query
	End                End
	Value              float64
	By, Bend           []float64
	Independent, Worst float64
	Low, High          float64
	LowAt, HighAt      Place // where they were found
	Changed            bool  // somewhere in the box
	Mostly             int   // the input that does the most by itself, or -1 where none does anything
}

// Known tells that the number keeps a value while one input at a time moves.
func (s *Spread) Known() bool { return !math.IsInf(s.Independent, 0) }

// Bounded tells that it keeps one all over the box.
func (s *Spread) Bounded() bool { return !math.IsInf(s.Low, 0) && !math.IsInf(s.High, 0) }

// Reach is a check of the solution, and the value and bound that it has where it
// lacks the most.
type Reach struct {
	Check        int // in the solution's checks
	Value, Bound float64
	About        string // of a face: what it would tip about there
	OK           bool   // also there
	Mostly       int    // the input that takes the most from it by itself, or -1
}

// Move is a place at which the verdict is another; no input could be put back as
// typed without losing that.
type Move struct {
	At       Place
	Solution *statics.Solution
	Fault    string // why the sheet does not read there; Solution is nil then
}

// gap is a place without a single solution: Share of the way from the values as
// typed to At.
type gap struct {
	At    Place
	Share float64
	last  *statics.Solution // right before it
}

// Search says where the worst case was looked for.
type Search struct {
	Corners int  // so many corners of the box were solved
	All     bool // all there are
	Inside  bool // and extremes inside the box were looked for, to the end
}

// The bounds of the work. A solution's work is counted in microseconds as estimated by
// work, so that the same sheet has the same result on every machine.
const (
	// maxWork is how long the box is looked through.
	maxWork = 500_000
	// cornerWork is what of that the corners may take; the rest is for the inside.
	cornerWork = 400_000
	// singlesWork is what moving each input by itself may take at most: where that
	// alone is more, nothing is followed.
	singlesWork = 1_200_000
	// coneWork is what a cone of friction adds, of which planes are cut until they agree.
	coneWork = 4_000
	// loadWork is what a distributed load adds, whose resultant may be a quadrature.
	loadWork = 1_000
	// allCorners is up to how many inputs all corners of the box are solved, and 2 to
	// its power how many are, where there are more.
	allCorners = 12
	// maxMeasured is how many inputs are followed.
	maxMeasured = 1000
	// nothing is what counts as no change, relative to the largest value of the same
	// dimension: rounding leaves 1e-16 times a condition number, and nobody measures 1e-9.
	nothing = 1e-9
	// condNoise is that of the logarithm of a condition number: only where it grows a lot
	// is of interest.
	condNoise = 0.1
)

// work estimates how long a sheet takes to read and solve, in microseconds: measured
// on the published sheets.
func work(s *sheet.Sheet, of *statics.Solution, ranges bool) float64 {
	cells := 0
	for range s.Cells() {
		cells++
	}
	rows := float64(len(of.System.Rows))
	dense := math.Pow(min(rows, 60), 3) / 200
	sum := 20 + float64(cells) + 3*rows + dense + loadWork*float64(len(of.Problem.Loads))
	if ranges {
		n := float64(len(of.X))
		sum += n * n * float64(of.Degree)
		for i := range of.Problem.Joints {
			if j := &of.Problem.Joints[i]; j.HasFriction && !j.Impending && !of.Problem.Planar {
				sum += coneWork
			}
		}
	}
	return sum
}

// Of works out what the ± in a sheet's cells leave of its solution. It is nil where
// no cell has one.
func Of(s *sheet.Sheet, of *statics.Solution) *Effect {
	return While(s, of, func() bool { return true })
}

// While is Of for as long as it is wanted: it gives nil once on says no.
func While(s *sheet.Sheet, of *statics.Solution, on func() bool) *Effect {
	n := len(of.Problem.Measured)
	if n == 0 || of.Verdict == statics.Unreadable {
		return nil
	}
	t := &Effect{Solution: of, Measured: of.Problem.Measured}
	f := newFollower(t, s, on)
	if n > maxMeasured || 2*float64(n)*f.cost > singlesWork {
		t.TooMany = true
		return t
	}
	f.begin()
	f.singles()
	f.corners()
	f.inside()
	if f.stopped {
		return nil
	}
	f.finish()
	return t
}

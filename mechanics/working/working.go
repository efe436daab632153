// Package working lays a solved problem out as a worked solution: the steps a
// good textbook takes, with every number, as plain data for any page or screen.
package working

import (
	"fmt"
	"slices"

	"trivet/mechanics/doc"
	"trivet/mechanics/handsolve"
	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
)

// Working is a worked solution.
type Working struct {
	Solution *statics.Solution
	Steps    []Step

	Hand             handsolve.Order // what the steps of the hand solution were written from
	handFrom, handTo int             // those steps; none where it was not looked for
}

// Sections are the lines that each section of the hand solution goes through.
func (w *Working) Sections() (cuts [][]int) {
	for i := range w.Hand.Steps {
		step := &w.Hand.Steps[i]
		if step.Kind != handsolve.One || len(step.Equations[0].Cut) == 0 {
			continue
		}
		cut := step.Equations[0].Cut
		if !slices.ContainsFunc(cuts, func(o []int) bool { return slices.Equal(o, cut) }) {
			cuts = append(cuts, cut)
		}
	}
	return cuts
}

// HandSteps are the steps of the hand solution; none where NoHandSolution says why.
func (w *Working) HandSteps() []Step { return w.Steps[w.handFrom:w.handTo] }

// NoHandSolution says why a working has no steps of a hand solution.
func (w *Working) NoHandSolution() string {
	if n := len(w.Solution.X); n > maxByHand {
		return fmt.Sprintf("A hand solution is sought for up to %d unknowns; this sheet has %d.", maxByHand, n)
	}
	if w.Hand.Why != 0 {
		return refusals[w.Hand.Why]
	}
	return refusals[handsolve.NoUnknown]
}

// Kind says what a step does.
type Kind int

// The kinds of steps, in the order in which a solution takes them.
const (
	CutFree      Kind = iota // what is cut free, and why
	Forces                   // the free-body list of forces
	Position                 // position vector, length and unit vector of a line: r = B - A, u = r/|r|
	Unit                     // unit vectors of the directions that are typed
	BeltFriction             // the ratio e^(μβ) of the tensions of a belt that is about to slip
	Vector                   // force vector F = F u, known or unknown
	Moment                   // r × F about the body's point
	Equations                // ΣF = 0, ΣM = 0 per axis, in symbols then with numbers
	Matrix                   // A x = b
	HandStep                 // one step of the hand solution
	Solve                    // the solution of what must be solved together
	Senses                   // what the signs mean
	BeltSlip                 // the ratio of a belt's tensions against e^(μβ)
	Friction                 // friction where slip impends and other forces that follow from unknowns; friction needed and available
	Checks                   // what shows that it is right
	Answers                  // what was asked, boxed
	Verdict                  // why there is no single solution
)

// Step is one step. Body is read from top to bottom; About says what a picture of
// the step shows and nothing else.
type Step struct {
	Kind  Kind
	Title string // "Position and unit vector along T1"
	Body  []doc.Block
	About Subject
}

// Subject names the things that a step speaks of, as indices of the problem.
type Subject struct {
	Bodies, Points, Lines, Joints, Couples, Loads []int
	Axis                                          *Axis // of a moment
}

// add adds what is not listed yet; an index of -1 is none.
func (s *Subject) add(of ...problem.Source) {
	lists := map[problem.Thing]*[]int{problem.ABody: &s.Bodies, problem.APoint: &s.Points, problem.ALine: &s.Lines,
		problem.AJoint: &s.Joints, problem.ACouple: &s.Couples, problem.ALoad: &s.Loads}
	for _, x := range of {
		if list := lists[x.Thing]; x.Index >= 0 && !slices.Contains(*list, x.Index) {
			*list = append(*list, x.Index)
		}
	}
}

// Axis is an axis or, where Along is nothing, a point that moments are taken about.
type Axis struct{ At, Along [3]float64 }

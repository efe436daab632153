// Package session is what a session works on: the sheet, and what it came to.
package session

import (
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
)

// Result is what the newest sheet came to, and the last solution that there is.
type Result struct {
	Sheet  *sheet.Sheet     // the newest snapshot, with what is being typed
	Latest *problem.Problem // its reading, whole or not
	Errs   []problem.Error  // of that reading

	Of       *sheet.Sheet     // the sheet whose solution is shown
	Problem  *problem.Problem // its reading; without a solution the newest, as far as it reads
	Solution *statics.Solution
	Blocks   []Block // in which the system can be solved
	Stale    bool    // the solution shown is of an earlier sheet
	Weighed  Effect  // what the ± of the inputs does to it
}

// Block is a part of the system that can be solved once those before it are.
type Block struct{ Rows, Cols []int }

// Effect is what the ± of the inputs does to a solution; nil and no fault where a newer
// sheet came before it was known.
type Effect = Reply[*statics.Solution, *uncertainty.Effect]

// ErrorOf gives the error of a cell.
func (r *Result) ErrorOf(ref sheet.Ref) (problem.Error, bool) {
	for _, e := range r.Errs {
		if e.Ref == ref {
			return e, true
		}
	}
	return problem.Error{}, false
}

// Uncertain tells that inputs have a ±.
func (r *Result) Uncertain() bool {
	return r.Solution != nil && r.Of != nil && len(r.Solution.Problem.Measured) > 0
}

// Effects is what the ± does to the solution shown, nil where it is not known.
func (r *Result) Effects() *uncertainty.Effect {
	if r.Weighed.Of != r.Solution {
		return nil
	}
	return r.Weighed.Value
}

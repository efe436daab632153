// Package session is what a session works on: the sheet, and what it came to.
package session

import (
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
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
	Mistakes Mistakes
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

// Faults are the errors of what is wrong as it stands: all but those of a sheet that is on its
// way, whose points are not connected yet.
func (r *Result) Faults() (out []problem.Error) {
	bare := map[sheet.Ref]bool{}
	if p := r.Latest; p != nil && len(p.Unread) == 0 { // else what is missing likely stands there
		for b := range p.Bodies {
			bare[p.Bodies[b].Ref] = p.Bodies[b].Bare
		}
		// Until the first force or support a sheet is only begun.
		bare[sheet.Ref{Table: "points"}] = len(p.Bodies) == 0 && len(p.Lines)+len(p.Joints)+len(p.Couples)+len(p.Loads) == 0
	}
	for _, e := range r.Errs {
		if !bare[e.Ref] {
			out = append(out, e)
		}
	}
	return out
}

// Unconnected says how many joints of the newest sheet, or bodies, no force acts on yet; "" where
// each has one.
func (r *Result) Unconnected() string {
	if r.Latest == nil {
		return ""
	}
	joints, bodies := 0, 0
	for b := range r.Latest.Bodies {
		switch body := &r.Latest.Bodies[b]; {
		case body.Bare && body.Particle:
			joints++
		case body.Bare:
			bodies++
		}
	}
	var what []string
	if joints > 0 {
		what = append(what, say.Count(joints, "joint"))
	}
	if bodies > 0 {
		what = append(what, say.Count(bodies, "body"))
	}
	if len(what) == 0 {
		return ""
	}
	return strings.Join(what, " and ") + " not connected yet"
}

// Cause is what is typed and read by nothing, in place of an error that something is
// missing: it most likely stands there, in a table or under a key that is unknown.
func (r *Result) Cause(missing problem.Error) (_ problem.Error, ok bool) {
	if r.Latest == nil {
		return missing, false
	}
	for _, e := range r.Latest.Unread {
		if e.Ref.Row == "" || e.Ref.Table == missing.Ref.Table && e.Ref.Row == missing.Ref.Row {
			return e, true
		}
	}
	return missing, false
}

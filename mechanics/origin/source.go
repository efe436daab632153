package origin

import (
	"iter"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/units"
)

// source is an act with what exerts it; an index that does not hold is -1.
type source struct {
	*problem.Act
	name        string
	line, joint int
}

// sources gives what acts on a body, in the order of the sheet.
func sources(p *problem.Problem, body int) iter.Seq[source] {
	return func(yield func(source) bool) {
		each := func(acts []problem.Act, name string, line, joint int) bool {
			for k := range acts {
				if acts[k].Body == body && !yield(source{&acts[k], name, line, joint}) {
					return false
				}
			}
			return true
		}
		for i := range p.Lines {
			if !each(p.Lines[i].Acts, p.Lines[i].Name, i, -1) {
				return
			}
		}
		for i := range p.Joints {
			if !each(p.Joints[i].Acts, p.Joints[i].Name, -1, i) {
				return
			}
		}
		for i := range p.Couples {
			if !each(p.Couples[i].Acts, p.Couples[i].Name, -1, -1) {
				return
			}
		}
		for i := range p.Loads {
			if !each(p.Loads[i].Acts, p.Loads[i].Name, -1, -1) {
				return
			}
		}
		for i := range p.Bodies {
			if !each(p.Bodies[i].Acts, "weight of "+p.Bodies[i].Name, -1, -1) {
				return
			}
		}
	}
}

// part is what a force, and a couple with it, add to a row.
func part(p *problem.Problem, r *statics.Row, a *problem.Act, f, couple r3.Vec) float64 {
	if !r.Moment {
		return component(f, axisOf(r))
	}
	return component(r3.Add(r3.Cross(p.Arm(a), f), couple), axisOf(r))
}

// value is a force, or a couple, in the solution at hand.
func value(s *statics.Solution, v r3.Vec, of []problem.ActTerm) r3.Vec {
	for _, t := range of {
		v = r3.Add(v, r3.Scale(s.X[t.Unknown].Value, t.D))
	}
	return v
}

// rowUnit is the sheet's unit of a row.
func rowUnit(p *problem.Problem, r *statics.Row) units.Unit { return p.Units.For(r.Dim()) }

package problem

import (
	"slices"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
)

// wholeProblem reports what no single cell shows: that nothing is cut free, or that
// no force acts on what is. A bare body beside others is a doubt, so that a problem
// can be put down point by point: what does not depend on it still stands.
func (r *reading) wholeProblem() {
	p := r.p
	acted := make([]bool, len(p.Bodies))
	for a := range p.Acts() {
		acted[a.Body] = true
		p.Bodies[a.Body].Reach = max(p.Bodies[a.Body].Reach, largest(a.At))
	}
	for b := range p.Bodies {
		p.Bodies[b].Bare = !acted[b]
	}
	if slices.ContainsFunc(r.errs, Error.Blocks) {
		return // a body may be bare only because its lines do not read
	}
	if len(p.Bodies) == 0 {
		r.fail(sheet.Ref{Table: "points"}, diag.Span{}, "the sheet has no free body: no point is a particle or on a body", "\"particle\" under on at the point whose forces balance")
		return
	}
	r.refuseResultant()
	some := slices.Contains(acted, true)
	for b := range p.Bodies {
		body := &p.Bodies[b]
		if !body.Bare {
			continue
		}
		meant := r.misspeltBody(b)
		hint := "add a line or a joint at one of its points"
		switch {
		case meant != "":
			hint = meant + ", if that is meant"
		case body.Particle:
			hint = "add a line at " + body.Name + ", or let it be a fixed point"
		}
		switch {
		case !some:
			r.fail(body.Ref, diag.Span{}, "no force acts on "+body.Name, hint)
		case meant == "": // else the doubt that is there already says what to try
			r.doubt(body.Ref, NoSort, diag.Span{}, "no force acts on "+body.Name+", so it is left out", hint)
		}
	}
}

// refuseResultant refuses expect = "resultant" where there is something to find:
// then the question is one of equilibrium.
func (r *reading) refuseResultant() {
	what := ""
	switch {
	case !r.p.ResultantOnly():
		return
	case len(r.p.Joints) > 0:
		what = "the support " + r.p.Joints[0].Name
	case len(r.p.Unknowns) > 0:
		what = "the unknown " + r.p.Unknowns[0].Name
	default:
		return
	}
	r.top("expect").fail("a resultant is that of known forces only, but the sheet has "+what, "remove "+what+", or do not expect a resultant")
	r.p.Expect = ""
}

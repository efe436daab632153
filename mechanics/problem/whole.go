package problem

import (
	"slices"
	"strconv"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
	"trivet/units"
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

// doubtBodies notes bodies that are most likely a misspelt word. A body of one point is no
// error, so nothing is refused.
func (r *reading) doubtBodies() {
	for i := range r.p.Bodies {
		if meant := r.misspeltBody(i); meant != "" {
			body := &r.p.Bodies[i]
			pt := &r.p.Points[body.Points[0]]
			ref := sheet.Ref{Table: "points", Row: pt.Name, Key: "on"}
			cell, _ := r.s.Cell(ref)
			r.doubt(ref, BodyOfOnePoint, wordIn(cell.Text, body.Name), strconv.Quote(body.Name)+" is a body with the one point "+pt.Name, meant+", if that is meant")
		}
	}
}

// misspeltBody is what the name of a body most likely means, "" where it is one: particle
// or another body, where it has one point, no entry of its own and nearly that name.
func (r *reading) misspeltBody(i int) string {
	body := &r.p.Bodies[i]
	if _, own := r.s.Table("bodies").Row(body.Name); own || body.Particle || len(body.Points) != 1 {
		return ""
	}
	meant := NearName(body.Name, ParticleWord)
	for k, other := range r.p.Bodies {
		if meant == "" && k != i && !other.Particle && len(other.Points) > 1 {
			meant = NearName(body.Name, other.Name)
		}
	}
	return meant
}

// NearName gives the name that another is most likely a slip of, or "": its first
// letters, other capitals, or a mistyped letter of a long one. Names told apart by
// their numbers, or short ones by a letter, are meant to differ.
func NearName(name, of string) string {
	const long = 4
	stem := func(s string) string { return strings.TrimRight(s, "0123456789") }
	switch {
	case name == of || stem(name) == stem(of):
		return ""
	case strings.EqualFold(name, of), len(name) > 1 && strings.HasPrefix(of, name):
		return of
	case len(name) >= long && units.Suggest(name, []string{of}) != "":
		return of
	}
	return ""
}

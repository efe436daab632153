package session

import (
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/mechanics/variant"
)

// Outdated are givens that were changed, each with the sheet as it was before: its words and its
// reference answers were of the old value, and may not follow yet. It is replaced, never changed.
type Outdated []outdated

type outdated struct {
	given string
	was   *sheet.Sheet
}

// retelling is what has to follow the givens that were changed.
type retelling struct {
	changes []variant.Change
	old     []string // what the words state still, as they state it
	answers bool     // there are reference answers, which are of old values
}

// retellings looks at what became of the givens that were changed; p is the sheet as it
// reads now.
func (of Outdated) retellings(p *problem.Problem) (out retelling) {
	for _, o := range of {
		before, errs := problem.Read(o.was)
		was, now := before.GivenNamed(o.given), p.GivenNamed(o.given)
		if len(errs) > 0 || was == nil || now == nil || was.Value.N != 1 || now.Value.N != 1 || was.Value.Dim != now.Value.Dim || was.Value.V == now.Value.V {
			continue
		}
		out.answers = out.answers || len(p.Answers) > 0
		if task := variant.Follow(o.was, before, o.given); task.Times > 0 {
			out.changes = append(out.changes, variant.Change{Dim: was.Value.Dim, Was: was.Value.V[0], Now: now.Value.V[0]})
			out.old = append(out.old, task.Value)
		}
	}
	return out
}

// Changed notes that a cell was changed, where it is the value of a given, and says where the words
// or the reference answers of the sheet are still of the old one.
func (of Outdated) Changed(s, before *sheet.Sheet, ref sheet.Ref) (_ Outdated, says string) {
	if ref.Table != "given" || ref.Key != "" && ref.Key != "value" || before == s {
		return of, ""
	}
	p, errs := problem.Read(s)
	if len(errs) > 0 {
		return of, ""
	}
	keep := Outdated{}
	known := false
	for _, o := range of {
		if o.given == ref.Row {
			if known = len(variant.Retell(s, Outdated{o}.retellings(p).changes)) > 0; !known {
				continue // the words have followed since
			}
		}
		keep = append(keep, o)
	}
	if !known {
		keep = append(keep, outdated{ref.Row, before})
	}
	r := keep.retellings(p)
	words := len(variant.Retell(s, r.changes)) > 0
	switch {
	case words && r.answers:
		says = "the words state " + say.And(r.old...) + "; alt+w updates them, removes old reference answers"
	case words:
		says = "the words state " + say.And(r.old...) + "; alt+w updates them"
	case r.answers:
		says = "the reference answers are for the old value of " + ref.Row + "; alt+w removes them"
	}
	return keep, says
}

// Retell gives the edits by which the words of a sheet follow the givens that were changed and the
// old reference answers go, and says so; none where nothing has to follow, or may (then it is bad).
func (of Outdated) Retell(s *sheet.Sheet) (edits []sheet.Edit, says string, bad bool) {
	p, errs := problem.Read(s)
	if len(errs) > 0 {
		return nil, "the words cannot follow while the sheet has errors: " + errs[0].Text(), true
	}
	r := of.retellings(p)
	edits = variant.Retell(s, r.changes)
	var done []string
	if len(edits) > 0 {
		done = append(done, "the words follow the givens")
	}
	if r.answers {
		edits = append(edits, sheet.DeleteTable{Table: "answers"})
		done = append(done, "the old reference answers were removed")
	}
	if len(edits) == 0 {
		return nil, "no given was changed that the words or reference answers still have to follow", false
	}
	return edits, say.And(done...) + "; ctrl+z undoes it", false
}

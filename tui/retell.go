package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/mechanics/variant"
)

// outdated is a given that was changed, with the sheet as it was before: its words and its
// reference answers were of the old value.
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
func retellings(of []outdated, p *problem.Problem) (out retelling) {
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

// offerRetelling notes that the value of a given was changed, and says where the words or
// the reference answers are still of the old one.
func (m *Model) offerRetelling(before *sheet.Sheet, ref sheet.Ref) {
	s := m.history.Current()
	if ref.Table != "given" || ref.Key != "" && ref.Key != "value" || before == s {
		return
	}
	p, errs := problem.Read(s)
	if len(errs) > 0 {
		return
	}
	keep := []outdated{}
	known := false
	for _, o := range m.outdated {
		if o.given == ref.Row {
			if known = len(variant.Retell(s, retellings([]outdated{o}, p).changes)) > 0; !known {
				continue // the words have followed since
			}
		}
		keep = append(keep, o)
	}
	if !known {
		keep = append(keep, outdated{ref.Row, before})
	}
	m.outdated = keep
	r := retellings(keep, p)
	words := len(variant.Retell(s, r.changes)) > 0
	switch {
	case words && r.answers:
		m.say("the words state "+say.And(r.old...)+"; alt+w updates them, removes old reference answers", false)
	case words:
		m.say("the words state "+say.And(r.old...)+"; alt+w updates them", false)
	case r.answers:
		m.say("the reference answers are for the old value of "+ref.Row+"; alt+w removes them", false)
	}
}

// retell makes the words follow the givens that were changed and removes the old reference
// answers, as one step that undo takes back.
func (m *Model) retell() tea.Cmd {
	s := m.history.Current()
	p, errs := problem.Read(s)
	if len(errs) > 0 {
		m.say("the words cannot follow while the sheet has errors: "+errs[0].Text(), true)
		return nil
	}
	r := retellings(m.outdated, p)
	edits := variant.Retell(s, r.changes)
	var done []string
	if len(edits) > 0 {
		done = append(done, "the words follow the givens")
	}
	if r.answers {
		edits = append(edits, sheet.DeleteTable{Table: "answers"})
		done = append(done, "the old reference answers were removed")
	}
	if len(edits) == 0 {
		m.say("no given was changed that the words or reference answers still have to follow", false)
		return nil
	}
	if err := m.history.Do(edits...); err != nil {
		m.say(err.Error(), true)
		return nil
	}
	m.say(say.And(done...)+"; ctrl+z undoes it", false)
	return m.changed()
}

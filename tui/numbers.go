package tui

import (
	"errors"
	"hash/fnv"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/mechanics/variant"
)

// variantWork bounds how long a key may look for a variant, as equations solved
// with so many unknowns each: some tenths of a second.
const variantWork = 4000

// newNumbers makes the sheet a random variant of itself, as one step that undo
// takes back: givens take values of their ranges, what title and statement say of
// them follows, the printed answers go, and the verdict stays the same kind.
func (m *Model) newNumbers() tea.Cmd {
	s := m.history.Current()
	p, errs := problem.Read(s)
	if len(errs) > 0 {
		m.say("no new numbers while the sheet has errors: "+errs[0].Text(), true)
		return nil
	}
	sol := statics.Solve(p)
	src, err := variant.NewSource(s, sol)
	if err != nil {
		m.say(err.Error(), false)
		return nil
	}
	src.Tries = min(max(variantWork/(len(sol.X)+1), 5), 200)
	drawn, err := src.Draw(variant.Seeded(m.seed()), 1)
	if err != nil {
		text := err.Error()
		var few *variant.TooFew
		if errors.As(err, &few) {
			text = few.Briefly()
		}
		m.say(text, false)
		return nil
	}
	v, err := src.Finish(drawn[0], "")
	if err != nil {
		m.say(err.Error(), true)
		return nil
	}
	says := "new numbers: " + src.Says(v)
	if len(p.Answers) > 0 {
		says += "; the old reference answers were removed"
	}
	m.history.Replace(v.Sheet)
	m.say(says+"; ctrl+z undoes it", false)
	return m.changed()
}

// seed is another one at each press, and the same for the same keys from the start:
// what a person does can be done once more.
func (m *Model) seed() uint64 {
	h := fnv.New64a()
	h.Write([]byte(m.history.Current().Text())) // which never fails
	return h.Sum64() + uint64(m.notes)
}

package tui

import (
	"slices"
	"strings"

	"trivet/mechanics/doc"
	"trivet/mechanics/report"
	"trivet/mechanics/statics"
	"trivet/mechanics/working"
)

// hiding takes the answers out of a step.
type hiding struct {
	solution *statics.Solution
	names    map[string]bool // of the unknowns
}

func newHiding(s *statics.Solution) hiding {
	h := hiding{s, map[string]bool{}}
	for _, u := range s.Problem.Unknowns {
		h.names[u.Name] = true
	}
	return h
}

// blocks gives a step's body with each unknown's value as "?"; what cannot be
// said without the values is left out, and hidden tells that something is.
func (h hiding) blocks(step working.Step) (body []doc.Block, hidden bool) {
	switch step.Kind {
	case working.Senses, working.Friction, working.Checks:
		return nil, true
	case working.Verdict:
		if h.solution.Verdict != statics.NoEquilibrium {
			return nil, true
		}
	}
	all := step.Kind == working.Answers
	found := step.Kind == working.Route || step.Kind == working.Solve
	for i, b := range step.Body {
		if found && (says(b, withNumbers) || i > 0 && says(step.Body[i-1], withNumbers)) {
			hidden = true
			continue // the numbers hold what was found before
		}
		if step.Kind == working.Route && len(b.Aligned) > 1 {
			b.Aligned, hidden = b.Aligned[:1], true // behind the symbols the numbers
		}
		b, did := h.block(b, all)
		body, hidden = append(body, b), hidden || did
	}
	return body, hidden
}

// withNumbers begins the sentence before an equation in numbers.
const withNumbers = "With numbers"

func says(b doc.Block, begin string) bool {
	return len(b.Text) > 0 && strings.HasPrefix(b.Text[0].Words, begin)
}

func (h hiding) block(b doc.Block, all bool) (_ doc.Block, hidden bool) {
	take := func(m *doc.Math) *doc.Math {
		if m == nil {
			return nil
		}
		out, did := h.math(*m, all)
		hidden = hidden || did
		return &out
	}
	inline := func(text []doc.Inline) []doc.Inline {
		out := slices.Clone(text)
		for i := range out {
			out[i].Math = take(out[i].Math)
		}
		return out
	}
	b.Formula, b.Boxed, b.Text = take(b.Formula), take(b.Boxed), inline(b.Text)
	b.Aligned = slices.Clone(b.Aligned)
	for i := range b.Aligned {
		b.Aligned[i] = *take(&b.Aligned[i])
	}
	if b.Table != nil {
		t := doc.Table{Head: b.Table.Head}
		for _, row := range b.Table.Rows {
			t.Rows = append(t.Rows, inline(row))
		}
		b.Table = &t
	}
	return b, hidden
}

// math puts a "?" for all that an unknown, or any result, is said to be.
func (h hiding) math(m doc.Math, all bool) (_ doc.Math, hidden bool) {
	if m.Op == doc.Relate && len(m.Of) > 1 && (all || m.Of[0].Op == doc.Symbol && h.names[report.TextMath(m.Of[0])]) {
		m.Of = []doc.Math{m.Of[0], {Op: doc.Words, Text: "?"}}
		return m, true
	}
	m.Of = slices.Clone(m.Of)
	for i := range m.Of {
		var did bool
		m.Of[i], did = h.math(m.Of[i], all)
		hidden = hidden || did
	}
	if hidden && m.Op == doc.Row && all {
		m.Of = m.Of[:1] // the sense behind a value tells it too
	}
	return m, hidden
}

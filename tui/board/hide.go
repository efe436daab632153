package board

import (
	"slices"

	"trivet/mechanics/doc"
	"trivet/mechanics/statics"
	"trivet/mechanics/working"
)

// Hiding is how much of a working is hidden; each hides what those before it hide.
type Hiding int

// What is hidden.
const (
	HidesNothing Hiding = iota
	HidesAnswers
	HidesEquations
	HidesVectors
	hidings
)

func (h Hiding) String() string {
	return [...]string{"nothing", "answers", "answers and equations", "answers, equations and vectors"}[h]
}

// from says from which hiding on a kind of step is hidden as a whole.
var from = map[working.Kind]Hiding{
	working.Equations: HidesEquations, working.Matrix: HidesEquations, working.HandStep: HidesEquations, working.Solve: HidesEquations, working.BeltFriction: HidesEquations,
	working.Position: HidesVectors, working.Unit: HidesVectors, working.Vector: HidesVectors, working.Moment: HidesVectors,
}

// hiding takes what is hidden out of a step.
type hiding struct {
	solution *statics.Solution
	names    map[string]bool // of the unknowns
	of       Hiding
}

func newHiding(s *statics.Solution, of Hiding) hiding {
	h := hiding{s, map[string]bool{}, of}
	for _, u := range s.Problem.Unknowns {
		h.names[u.Name] = true
	}
	return h
}

// blocks gives a step's body with each unknown's value as "?"; what cannot be
// said without the values is left out, and hidden tells that something is.
func (h hiding) blocks(step working.Step) (body []doc.Block, hidden bool) {
	if least, ok := from[step.Kind]; ok && h.of >= least {
		return nil, true
	}
	switch step.Kind {
	case working.Senses, working.BeltSlip, working.Friction, working.Checks:
		return nil, true
	case working.Verdict:
		if h.solution.Verdict != statics.NoEquilibrium {
			return nil, true
		}
	}
	all := step.Kind == working.Answers
	for i, b := range step.Body {
		set, formula := b.(*doc.Formula)
		if found(b) || i+1 < len(step.Body) && found(step.Body[i+1]) {
			hidden = true
			continue // the numbers hold what was found before
		}
		if boxed, is := b.(*doc.Boxed); is && all && !ofSymbol(&boxed.Math) {
			hidden = true
			continue // a conclusion, whose both sides are values
		}
		if step.Kind == working.HandStep && formula && len(set.Of) > 1 {
			b, hidden = &doc.Formula{Of: set.Of[:1]}, true // behind the symbols the numbers
		}
		body = append(body, doc.Map(b, func(m doc.Math) doc.Math {
			m, did := h.math(m, all)
			hidden = hidden || did
			return m
		}))
	}
	return body, hidden
}

// ofSymbol tells a formula that begins with a symbol, not with a value.
func ofSymbol(m *doc.Math) bool {
	for m.Op != doc.Symbol && m.Op != doc.Vec && len(m.Of) > 0 {
		m = &m.Of[0]
	}
	return m.Op != doc.Number
}

// found tells a formula with values that were found before.
func found(b doc.Block) bool {
	set, ok := b.(*doc.Formula)
	return ok && set.Found
}

// math puts a "?" for all that an unknown, or any result, is said to be.
func (h hiding) math(m doc.Math, all bool) (_ doc.Math, hidden bool) {
	if m.Op == doc.Relate && len(m.Of) > 1 && (all || m.Of[0].Op == doc.Symbol && h.names[m.Of[0].Name]) {
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

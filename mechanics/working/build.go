package working

import (
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/handsolve"
	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
)

// Rounding is said once of the numbers in a working.
const Rounding = "Values are printed rounded; full precision is carried."

// detailed is up to how many bodies each has its forces and equations in full: beyond it
// they stand in tables, so that a truss stays readable.
const detailed = 3

func (b *builder) many() bool { return len(b.p.Bodies) > detailed }

// mostByHand is up to how many unknowns the hand solution is looked for: nobody
// solves more by hand, and the search grows faster than the problem.
const mostByHand = 150

// Build lays a solved problem out as a worked solution. It takes every number
// from the problem and the solution and computes nothing of its own but sums
// and products of them. A problem without a single solution gets its verdict
// explained in place of values. The solution by hand stands behind the equations.
func Build(s *statics.Solution) *Working {
	w := &Working{Solution: s, Rounding: Rounding}
	b := newBuilder(s)
	if len(b.p.Bodies) == 0 || s.Verdict == statics.Unreadable {
		b.verdict()
		w.Steps = b.steps
		return w
	}
	if n := len(s.X); n > 0 && n <= mostByHand {
		w.Hand = handsolve.Find(s)
	}
	b.collect()
	b.find()
	b.hand = w.Hand
	b.cutFree()
	if len(s.X) > 0 {
		b.equations()
	}
	b.forceList()
	b.weights()
	b.lines()
	b.loadResultants()
	b.impendingBelts()
	b.vectors()
	b.moments()
	switch {
	case len(s.X) == 0:
		b.resultants()
	default:
		b.numbers(len(w.Hand.Steps) > 0)
		if len(w.Hand.Steps) > 0 {
			w.RouteFrom = len(b.steps)
			b.steps = append(b.steps, routeSteps(s, w.Hand)...)
			w.RouteTo = len(b.steps)
		}
		b.solved(w.Hand)
		if w.Hand.Why == handsolve.NoneAsked {
			b.resultants()
		}
		b.follow()
		b.senses()
	}
	b.heldBelts()
	conclusions := b.friction()
	b.verdict()
	b.checks()
	b.answers(conclusions)
	w.Steps = b.steps
	return w
}

// builder is one building of one working.
type builder struct {
	s           *statics.Solution
	p           *problem.Problem
	axes        int // 2 in the plane, 3 in space
	hand        handsolve.Order
	acts        [][]act
	ties        []tie
	found       map[string]float64 // by symbol: the numbers of the unknowns that have one value
	derivedSize map[string]bool    // magnitudes of asked forces that stand derived
	steps       []Step
}

func newBuilder(s *statics.Solution) *builder {
	b := &builder{s: s, p: s.Problem, axes: 3, derivedSize: map[string]bool{}}
	if b.p.Planar {
		b.axes = 2
	}
	return b
}

func (b *builder) step(kind Kind, title string, about Subject, body ...doc.Block) {
	if len(body) > 0 {
		b.steps = append(b.steps, Step{Kind: kind, Title: title, Body: body, About: about})
	}
}

// fixed tells whether every unknown has one value.
func (b *builder) fixed() bool {
	for j := range b.s.X {
		if !b.s.X[j].Fixed {
			return false
		}
	}
	return b.s.Unique() || b.s.Verdict == statics.Resultant
}

// at is a force, or a couple, in the solution at hand.
func (b *builder) at(v r3.Vec, terms []problem.ActTerm) r3.Vec {
	for _, t := range terms {
		v = r3.Add(v, r3.Scale(b.s.X[t.Unknown].Value, t.D))
	}
	return v
}

// say makes a sentence of words (string) and formulas (Math).
func say(of ...any) *doc.Paragraph {
	var text []doc.Inline
	for _, x := range of {
		switch x := x.(type) {
		case string:
			text = append(text, doc.Inline{Words: x})
		case doc.Math:
			text = append(text, doc.Inline{Math: &x})
		case []doc.Inline:
			text = append(text, x...)
		}
	}
	return &doc.Paragraph{Text: text}
}

func formula(m doc.Math) doc.Block     { return &doc.Formula{Of: []doc.Math{m}} }
func boxed(m doc.Math) doc.Block       { return &doc.Boxed{Math: m} }
func aligned(of ...doc.Math) doc.Block { return &doc.Formula{Of: of} }

// numbered are equations with the values that were found before.
func numbered(of ...doc.Math) doc.Block { return &doc.Formula{Of: of, Found: true} }
func table(head ...string) *doc.Table   { return doc.NewTable(head...) }

// cell is a cell of a table, and listed one of several formulas.
func cell(m doc.Math) doc.Inline      { return doc.Inline{Math: &m} }
func wordCell(text string) doc.Inline { return doc.Inline{Words: text} }
func listed(of []doc.Math) doc.Inline {
	m := row()
	for k, x := range of {
		if k > 0 {
			m.Of = append(m.Of, words(", "))
		}
		m.Of = append(m.Of, x)
	}
	return cell(m)
}

// list joins formulas in a sentence: T1, T2 and T3.
func list(of []doc.Math) []doc.Inline {
	phrases := make([][]any, len(of))
	for k := range of {
		phrases[k] = []any{of[k]}
	}
	return say(and(phrases)...).Text
}

// and joins phrases: ΣFx on the beam, ΣFy on the beam and ΣM_A on the beam.
func and(phrases [][]any) (out []any) {
	for k, phrase := range phrases {
		switch {
		case k == 0:
		case k == len(phrases)-1:
			out = append(out, " and ")
		default:
			out = append(out, ", ")
		}
		out = append(out, phrase...)
	}
	return out
}

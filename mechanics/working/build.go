package working

import (
	"slices"

	"trivet/mechanics/doc"
	"trivet/mechanics/handsolve"
	"trivet/mechanics/problem"
	english "trivet/mechanics/say"
	"trivet/mechanics/statics"
)

// Rounding is said once of the numbers in a working.
const Rounding = "Values are printed rounded; full precision is carried."

// detailed is up to how many bodies each has its forces and equations in full: beyond it
// they stand in tables, so that a truss stays readable.
const detailed = 3

func (b *builder) many() bool { return len(b.p.Bodies) > detailed }

// maxByHand is up to how many unknowns the hand solution is looked for: nobody
// solves more by hand, and the search grows faster than the problem.
const maxByHand = 150

// Build lays a solved problem out as a worked solution. It takes every number
// from the problem and the solution and computes nothing of its own but sums
// and products of them. A problem without a single solution gets its verdict
// explained in place of values. The solution by hand stands behind the equations.
func Build(s *statics.Solution) *Working {
	b := &builder{Working: &Working{Solution: s}, s: s, p: s.Problem, axes: 3, derivedSize: map[string]bool{}}
	if b.p.Planar {
		b.axes = 2
	}
	if len(b.p.Bodies) == 0 || s.Verdict == statics.Unreadable {
		b.verdict()
		return b.Working
	}
	if n := len(s.X); n > 0 && n <= maxByHand {
		b.Hand = handsolve.Find(s)
	}
	b.collect()
	b.findWanted()
	b.find()
	b.cutFree()
	if len(s.X) > 0 && !b.many() {
		b.equations()
	}
	b.forceList()
	b.weights()
	b.lines()
	b.loadResultants()
	b.belts(true)
	b.vectors()
	b.moments()
	if len(s.X) > 0 {
		b.numbers()
		b.handFrom = len(b.Steps)
		b.handSolution()
		b.handTo = len(b.Steps)
	}
	b.solved()
	if len(s.X) == 0 || b.Hand.Why == handsolve.NoneAsked {
		b.resultants()
	}
	b.follow()
	b.senses()
	b.belts(false)
	conclusions := b.friction()
	b.verdict()
	b.checks()
	b.answers(conclusions)
	return b.Working
}

// builder is one building of one working.
type builder struct {
	*Working
	s           *statics.Solution
	p           *problem.Problem
	axes        int // 2 in the plane, 3 in space
	acts        [][]*act
	ties        []*tie
	found       map[string]float64 // by symbol: the numbers of the unknowns that have one value
	named       []bool             // the unknowns that are asked for by name
	wantsAny    bool               // a result may need any of them
	derivedSize map[string]bool    // magnitudes of asked forces that stand derived
	cancelled   bool               // it was said that internal forces cancel
}

func (b *builder) step(kind Kind, title string, about Subject, body ...doc.Block) {
	if len(body) > 0 {
		b.Steps = append(b.Steps, Step{Kind: kind, Title: title, Body: body, About: about})
	}
}

// derivation is a step of formulas behind a sentence, where there are any.
func (b *builder) derivation(kind Kind, title string, about Subject, says doc.Block, of []doc.Math) {
	if len(of) > 0 {
		b.step(kind, title, about, says, aligned(of...))
	}
}

// fixed tells whether every unknown has one value.
func (b *builder) fixed() bool {
	open := func(x statics.Unknown) bool { return !x.Fixed }
	return !slices.ContainsFunc(b.s.X, open) && (b.s.Unique() || b.s.Verdict == statics.Resultant)
}

// say makes a sentence of words (string), formulas (Math) and phrases of both.
func say(of ...any) *doc.Paragraph {
	var text []doc.Inline
	for _, x := range of {
		switch x := x.(type) {
		case string:
			text = append(text, wordCell(x))
		case doc.Math:
			text = append(text, cell(x))
		case []any:
			text = append(text, say(x...).Text...)
		}
	}
	return &doc.Paragraph{Text: text}
}

func formulas(of []doc.Math) []doc.Block {
	if len(of) == 0 {
		return nil
	}
	return []doc.Block{aligned(of...)}
}
func aligned(of ...doc.Math) doc.Block { return &doc.Formula{Of: of} }

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
func list(of []doc.Math) []any { return and(english.Each(of, func(m doc.Math) any { return m })) }

// and joins phrases: ΣFx on the beam, ΣFy on the beam and ΣM_A on the beam.
func and(phrases []any) (out []any) {
	for k, phrase := range phrases {
		switch {
		case k == 0:
		case k == len(phrases)-1:
			out = append(out, " and ")
		default:
			out = append(out, ", ")
		}
		out = append(out, phrase)
	}
	return out
}

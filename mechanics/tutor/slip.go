package tutor

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/statics"
)

// Sum is the equation of one sum of forces or moments on one body, in SI:
//
//	Row·(x, 1) = 0
//
// the coefficients of the unknowns first and the sum of the known forces last. Along is the
// direction of a sum of forces, or of the axis of one of moments, which are about At. Words
// are what it is called, without its body.
type Sum struct {
	Words  string
	Body   int
	Moment bool
	Along  r3.Vec
	At     r3.Vec
	Row    []float64

	is string
	of sum
}

// Slip is one mistake in one sum, and by what it changes Row.
type Slip struct {
	Mistake
	Sum    *Sum
	Change []float64
}

// Says is what a tutor would say of it, as a part of a sentence.
func (s *Slip) Says() string { return s.Kind.Says(s.Term, s.Sum.is) }

// Sums are those that a student may write of each body of a solved problem, and that
// contain an unknown; in space those along the axes.
func Sums(s *statics.Solution) (all []Sum) {
	t := practiceOf(s)
	p, n := s.Problem, len(s.Problem.Unknowns)
	for body := range p.CutFree() {
		for _, of := range t.elementary(only(p, body)) {
			if !p.Planar && !slices.Contains(axes[:], of.along) {
				continue
			}
			row := of.exact(t.forces, n)
			if slices.ContainsFunc(row[:n], func(c float64) bool { return c != 0 }) {
				all = append(all, Sum{of.words, body, of.moment, of.along, of.at, row, of.is(p), of})
			}
		}
	}
	return all
}

// Slips are the mistakes that may be made in a sum.
func Slips(s *statics.Solution, sums []Sum) (all []Slip) {
	t := practiceOf(s)
	none := &written{c: make([]float64, len(s.Problem.Unknowns)+1)}
	for i := range sums {
		of := &sums[i]
		for _, h := range t.mistakes(&of.of, of.Row, none) {
			if h.gone && h.kind != "missing-force" || h.new && h.kind != "couple-as-force" && (h.kind != "extra-force" || h.of.on(of.of.bodies)) {
				continue // another mistake comes to the same
			}
			change := h.row
			for k := range change {
				change[k] -= of.Row[k]
			}
			all = append(all, Slip{Mistake{h.kind, h.term}, of, change})
		}
	}
	return all
}

func practiceOf(s *statics.Solution) *Practice {
	return &Practice{Problem: s.Problem, solution: s, forces: forcesOf(s.Problem)}
}

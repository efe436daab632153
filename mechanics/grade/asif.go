package grade

import (
	"math"
	"slices"
	"strings"
)

const (
	// maxChance is the greatest chance that made-up numbers would fit a claim by
	// accident: above it nothing is claimed.
	maxChance = 0.05
	// spreadOf is the natural logarithm of the range in which wrong numbers are taken
	// to lie, evenly by their logarithm: a decade.
	spreadOf = math.Ln10
)

// fit is a mutant and the answers that are as if by it.
type fit struct {
	of   int
	hits []int // indices of marks
	all  bool  // of all that are wrong, and those that are right say nothing against it
}

// mistakes finds the mutant that a student's wrong answers come from: one that all of
// them fit, else one that two different ones fit. It is said only where no other mutant fits
// as well, and where chance would not do as much.
func (k *Key) mistakes(marks []Mark) []string {
	if !slices.ContainsFunc(marks, func(m Mark) bool { return k.evidence(&m) }) {
		return nil
	}
	k.breed()
	for _, search := range []struct {
		all, plain bool
		strange    int
	}{{true, true, 0}, {true, false, 1}, {false, true, 2}, {false, false, 2}} {
		best, tied, tried := fit{of: -1}, 0, 0
		for i := range k.mutants {
			if search.plain && !k.mutants[i].plain {
				continue
			}
			tried++
			f := k.fits(i, marks)
			n, most := len(k.distinct(marks, f.hits)), len(k.distinct(marks, best.hits))
			switch {
			case n == 0 || n < most || f.all != search.all || n == 1 && marks[f.hits[0]].Verdict != Wrong || len(k.distinct(marks, f.strange(marks))) < search.strange:
			case n > most:
				best, tied = f, 1
			default:
				tied++
			}
		}
		if best.of >= 0 && tied == 1 && k.chance(marks, best.hits)*float64(tried) <= maxChance {
			return k.claim(marks, best)
		}
	}
	return nil
}

// evidence tells whether an answer can speak for a mutant. A wrong unit is no mistake
// of that kind, unless it is a mass; and a zero is no number to go by.
func (k *Key) evidence(m *Mark) bool {
	return m.Verdict.mistaken() && (m.Verdict != Unit || m.weighs) && m.value.dim == m.query.Dim && m.value.si != 0 && m.value.figures >= Figures-1
}

// naught tells that 0 was answered, and wrong.
func naught(m *Mark) bool {
	return m.Verdict == Wrong && m.value.si == 0 && m.value.dim == m.query.Dim
}

// fits holds the answers against a mutant.
func (k *Key) fits(mutant int, marks []Mark) fit {
	f := fit{of: mutant, all: true}
	for i := range marks {
		m := &marks[i]
		wrong := k.evidence(m)
		if !wrong && !m.Verdict.OK() && !naught(m) {
			continue
		}
		v, ok := k.mutants[mutant].of(m.query)
		fits := ok && k.same(m, v)
		switch {
		case wrong && fits:
			f.hits = append(f.hits, i)
		case wrong, !fits && (m.Verdict == Right || naught(m)):
			f.all = false
		}
	}
	return f
}

// strange are the hits that nothing else explains: another quantity's value is no
// chance number, and might fit anything.
func (f fit) strange(marks []Mark) (hits []int) {
	for _, i := range f.hits {
		if marks[i].Verdict == Wrong {
			hits = append(hits, i)
		}
	}
	return hits
}

// distinct are the hits of different numbers: two cables that are alike say nothing twice.
func (k *Key) distinct(marks []Mark, hits []int) (out []int) {
	for a, i := range hits {
		again := func(j int) bool {
			return marks[i].query.Dim == marks[j].query.Dim && k.same(&marks[i], math.Copysign(marks[j].value.si, marks[i].value.si))
		}
		if !slices.ContainsFunc(hits[:a], again) {
			out = append(out, i)
		}
	}
	return out
}

// chance is that of different made-up numbers to come as near to given values as
// these do: the product of their windows over the decade in which they lie.
func (k *Key) chance(marks []Mark, hits []int) float64 {
	p := 1.0
	for _, i := range k.distinct(marks, hits) {
		p *= k.window(&marks[i])
	}
	return p
}

// window is the chance of one number. Three figures are what counts, however many
// are written.
func (k *Key) window(m *Mark) float64 {
	size := math.Abs(m.value.si)
	half := max(halfOf(size, Figures, m.value.factor), k.rule.Within*size)
	return min(2*half/size/spreadOf, 1)
}

// claim writes the mistake to the answers that fit it. What an answer shows by itself
// stays.
func (k *Key) claim(marks []Mark, f fit) (notes []string) {
	says := k.mutants[f.of].says
	if len(says) > 2 {
		return nil // nobody knows which
	}
	words := "as if " + strings.Join(says, ", or ")
	var signs []string
	for i := range marks { // what is nothing by the mistake, and was answered so
		if v, ok := k.mutants[f.of].of(marks[i].query); naught(&marks[i]) && ok && k.same(&marks[i], v) {
			f.hits = append(f.hits, i)
		}
	}
	for _, i := range f.hits {
		switch m := &marks[i]; m.Verdict {
		case Wrong:
			m.Verdict, m.Says = AsIf, words
		case Another, Unit:
			m.Says += ", " + words
		case Sign:
			signs = append(signs, m.Name)
		}
	}
	if len(signs) > 0 {
		notes = append(notes, strings.Join(signs, ", ")+": "+words)
	}
	return notes
}

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

// fit is a mistake and the answers that are as if by it.
type fit struct {
	of       *mistake
	hits     []*Mark
	distinct []*Mark // hits of different numbers: two cables that are alike say nothing twice
	strange  int     // distinct hits that nothing else explains: another quantity's value might fit anything
	all      bool    // of all that are wrong, and those that are right say nothing against it
}

// searches are the ways in which a mistake is looked for: one that all wrong answers
// fit, else one that two different ones fit.
var searches = []struct {
	all, plain bool
	strange    int
}{{true, true, 0}, {true, false, 1}, {false, true, 2}, {false, false, 2}}

// likeliest finds the mistake that a student's wrong answers come from. It is said only
// where no other fits as well, and where chance would not do as much.
func (k *Key) likeliest(marks []Mark) []string {
	if !slices.ContainsFunc(marks, func(m Mark) bool { return m.evidence() }) {
		return nil
	}
	var fits []fit
	for _, of := range k.mistakes() {
		fits = append(fits, k.fits(&of, marks))
	}
	for _, search := range searches {
		var best fit
		tied, tried := 0, 0
		for _, f := range fits {
			if search.plain && !f.of.plain {
				continue
			}
			tried++
			switch n := len(f.distinct); {
			case n == 0 || f.all != search.all || f.strange < search.strange || n == 1 && f.hits[0].Verdict != Wrong:
			case n > len(best.distinct):
				best, tied = f, 1
			case n == len(best.distinct):
				tied++
			}
		}
		chance := float64(tried) // that of different made-up numbers to come as near
		for _, m := range best.distinct {
			chance *= k.window(m)
		}
		if tied == 1 && chance <= maxChance {
			return k.claim(marks, best)
		}
	}
	return nil
}

// evidence tells whether an answer can speak for a mistake. A wrong unit is no mistake
// of that kind, unless it is a mass; and a zero is no number to go by.
func (m *Mark) evidence() bool {
	return m.Verdict.mistaken() && (m.Verdict != Unit || m.weighs) && m.value.Dim == m.query.Dim && m.value.Value != 0 && m.value.figures >= Figures-1
}

// naught tells that 0 was answered, and wrong.
func (m *Mark) naught() bool {
	return m.Verdict == Wrong && m.value.Value == 0 && m.value.Dim == m.query.Dim
}

// fits holds the answers against a mistake.
func (k *Key) fits(of *mistake, marks []Mark) fit {
	f := fit{of: of, all: true}
	for i := range marks {
		m := &marks[i]
		switch {
		case !m.evidence() && m.Verdict != Right && !m.naught():
		case !k.same(m, of.value(m.query.Name)):
			f.all = false
		case m.evidence():
			f.hits = append(f.hits, m)
		}
	}
	f.distinct = k.distinct(f.hits)
	f.strange = len(k.distinct(slices.DeleteFunc(slices.Clone(f.hits), func(m *Mark) bool { return m.Verdict != Wrong })))
	return f
}

// distinct are the answers of different numbers.
func (k *Key) distinct(hits []*Mark) (out []*Mark) {
	for i, a := range hits {
		again := func(b *Mark) bool {
			return a.query.Dim == b.query.Dim && k.same(a, math.Copysign(b.value.Value, a.value.Value))
		}
		if !slices.ContainsFunc(hits[:i], again) {
			out = append(out, a)
		}
	}
	return out
}

// window is the chance of one made-up number to come as near to a given value as this
// does: its window over the decade in which it lies. Three figures are what counts,
// however many are written.
func (k *Key) window(m *Mark) float64 {
	size := math.Abs(m.value.Value)
	half := max(halfOf(size, Figures, m.value.Factor), k.rule.Within*size)
	return min(2*half/size/spreadOf, 1)
}

// claim writes the mistake to the answers that fit it, and to those that are nothing by
// it and were answered so. What an answer shows by itself stays.
func (k *Key) claim(marks []Mark, f fit) (notes []string) {
	if len(f.of.says) > 2 {
		return nil // nobody knows which
	}
	words := "as if " + strings.Join(f.of.says, ", or ")
	var signs []string
	for i := range marks {
		m := &marks[i]
		switch {
		case !slices.Contains(f.hits, m) && !(m.naught() && k.same(m, f.of.value(m.query.Name))):
		case m.Verdict == Wrong:
			m.Verdict, m.Says = AsIf, words
		case m.Verdict == Another || m.Verdict == Unit:
			m.Says += ", " + words
		case m.Verdict == Sign:
			signs = append(signs, m.Name)
		}
	}
	if len(signs) > 0 {
		notes = append(notes, strings.Join(signs, ", ")+": "+words)
	}
	return notes
}

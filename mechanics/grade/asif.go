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
	// maxLoneChance is that where one number alone speaks for it.
	maxLoneChance = 0.0065
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
	possible bool    // those that are right say nothing against it
}

// searches are the ways in which a mistake is looked for: one that all wrong answers
// fit, else one that two different ones fit. A slip in one equation, up to a rank, is looked
// for before what is rare.
var searches = []struct {
	all, plain    bool
	strange, slip int
}{{all: true, plain: true}, {slip: lastRank}, {all: true, strange: 1}, {slip: 2 * lastRank}, {plain: true, strange: 2}, {strange: 2}}

// likeliest finds the mistake that a student's wrong answers come from. It is said only
// where no other fits as well, and where chance would not do as much.
func (k *Key) likeliest(marks []Mark) []string {
	wrong := slices.ContainsFunc(marks, func(m Mark) bool { return m.Verdict == Wrong })
	for i := range marks { // a unit that another answer does not share may be a coincidence
		marks[i].speaks = wrong || marks[i].weighs
	}
	if !slices.ContainsFunc(marks, func(m Mark) bool { return m.evidence() }) {
		return nil
	}
	var fits []fit
	for _, all := range [][]mistake{k.mistakes(), k.others} {
		for i := range all {
			if of := &all[i]; of.solution != k.solution {
				fits = append(fits, k.fits(of, marks))
			}
		}
	}
	for _, search := range searches {
		if search.slip > 0 {
			if hits, words := k.likeliestSlip(marks, search.slip); words != "" {
				return k.claim(marks, hits, words, func(*Mark) bool { return true })
			}
			continue
		}
		var best fit
		tied, tried := 0, 0
		for _, f := range fits {
			if search.plain && !f.of.plain {
				continue
			}
			if f.possible {
				tried++
			}
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
			chance *= k.window(m, best.of.value(m.query.Name))
		}
		if tied == 1 && chance <= maxChance && (len(best.distinct) > 1 || chance <= maxLoneChance) {
			if len(best.of.says) > 2 {
				return nil // nobody knows which
			}
			return k.claim(marks, best.hits, "as if "+strings.Join(best.of.says, ", or "), func(m *Mark) bool { return k.same(m, best.of.value(m.query.Name)) })
		}
	}
	return nil
}

// evidence tells whether an answer can speak for a mistake. A wrong unit is no mistake
// of that kind, unless it is a mass or others are wrong; and a zero is no number to go by.
func (m *Mark) evidence() bool {
	return m.Verdict.mistaken() && (m.Verdict != Unit || m.speaks) && m.value.Dim == m.query.Dim && m.value.Value != 0
}

// naught tells that 0 was answered, and wrong.
func (m *Mark) naught() bool {
	return m.Verdict == Wrong && m.value.Value == 0 && m.value.Dim == m.query.Dim
}

// fits holds the answers against a mistake.
func (k *Key) fits(of *mistake, marks []Mark) fit {
	f := fit{of: of, all: true, possible: true}
	for i := range marks {
		m := &marks[i]
		switch {
		case !m.evidence() && m.Verdict != Right && !m.naught():
		case !k.same(m, of.value(m.query.Name)) || m.evidence() && m.value.figures >= Figures && k.zero(m.query, of.value(m.query.Name)):
			f.all, f.possible = false, f.possible && m.Verdict != Right
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
// does: its window over the decade in which it lies. Three figures are what counts, where
// more are written and not all of them are right.
func (k *Key) window(m *Mark, v float64) float64 {
	size := math.Abs(m.value.Value)
	half := halfOf(size, max(min(m.value.figures, Figures), 1), m.value.Factor)
	if m.value.figures > Figures && math.Abs(v-m.value.Value) <= m.value.Half*(1+fine) {
		half = max(m.value.Half, slack*size)
	}
	return min(2*max(half, k.rule.Within*size)/size/spreadOf, 1)
}

// claim writes the mistake to the answers that fit it, and to those that are nothing by
// it and were answered so. It wins over whose value an answer happens to be. What all of
// them show alike, a sign or a unit, stays beside it.
func (k *Key) claim(marks []Mark, hits []*Mark, words string, fits func(m *Mark) bool) (notes []string) {
	alike := !slices.ContainsFunc(hits, func(m *Mark) bool { return m.Verdict != hits[0].Verdict || m.Verdict != Sign && m.Verdict != Unit })
	var signs []string
	for i := range marks {
		m := &marks[i]
		switch {
		case !slices.Contains(hits, m) && !(m.naught() && fits(m)):
		case alike && m.Verdict == Sign:
			signs = append(signs, m.Name)
		case alike && m.Verdict == Unit:
			m.Says += ", " + words
		default:
			m.Verdict, m.Says = AsIf, words
		}
	}
	if len(signs) > 0 {
		notes = append(notes, strings.Join(signs, ", ")+": "+words)
	}
	return notes
}

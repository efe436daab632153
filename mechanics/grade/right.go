package grade

import (
	"math"

	"trivet/mechanics/problem"
)

// Rule says when an answer is right. Within is the share of the right value by which
// it may be off; where that is 0 it has to be right to the figures.
//
// By default an answer is right where it agrees with the value to the precision that
// it is written to, or to three significant figures: those are what an exercise asks
// for, and a fourth that went wrong is no mistake of mechanics. A spreadsheet drops
// zeros at the end, so that 2.5 for 2.500 is right too.
type Rule struct{ Within float64 }

const (
	// Figures is the number of significant figures that an answer has to have right.
	Figures = 3
	// fewest is the number of figures below which an answer is no answer: 1 kN would
	// be right for all from 0.5 to 1.5 kN.
	fewest = 2
	// nearShare is how far from the value an answer counts as rounded on the way:
	// two factors of sine or cosine to two figures are off by some per cent each at most.
	nearShare = 0.02
	// slack widens a comparison by the rounding of a solve, so that what lies on the
	// half counts as right.
	slack = 1e-9
	// nothing is the share of the largest value of its dimension below which a value
	// is nothing: then an answer is held against that largest.
	nothing = 1e-9
)

// judge holds a value, as it is written, against what the result of q ought to be: it
// is Right, TooFew or Wrong.
func (k *Key) judge(q problem.Query, v value, want float64) Verdict {
	size := math.Abs(want)
	off := math.Abs(q.Near(v.Value, want)-want) - slack*max(size, nothing*k.largest[q.Dim])
	if k.zero(q, want) {
		size = k.largest[q.Dim]
	}
	limit := k.rule.Within * size
	if k.rule.Within == 0 {
		limit = v.limit(size)
	}
	switch {
	case off <= limit:
		return Right
	case k.rule.Within == 0 && v.least == fewest && off <= halfOf(math.Abs(v.Value), fewest, v.Factor):
		return TooFew
	}
	return Wrong
}

// same tells whether an answer is a value, to its figures.
func (k *Key) same(m *Mark, want float64) bool { return k.judge(m.query, m.value, want) == Right }

// zero tells that a value of a result is nothing, beside the largest of its dimension.
func (k *Key) zero(q problem.Query, v float64) bool { return math.Abs(v) <= nothing*k.largest[q.Dim] }

// limit is by how much a value may differ from what it is written for, which is so large.
func (v value) limit(size float64) float64 {
	third := halfOf(size, Figures, v.Factor)
	if v.figures >= Figures {
		return max(third, v.Half)
	}
	return third
}

// halfOf is half a unit of the n-th significant figure of a size in a unit.
func halfOf(size float64, n int, factor float64) float64 {
	return 0.5 * math.Pow(10, float64(decade(size/factor)-n+1)) * factor
}

// decade is the power of ten of a number's first digit.
func decade(x float64) int {
	if x == 0 || math.IsInf(x, 0) || math.IsNaN(x) {
		return 0
	}
	d := int(math.Floor(math.Log10(x)))
	if math.Pow(10, float64(d+1)) <= x*(1+slack) { // 1000 may come out as 999.999…
		d++
	}
	return d
}

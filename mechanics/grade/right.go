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

// right tells whether a value is that of the mark's result.
func (k *Key) right(m *Mark, v float64) (Verdict, bool) {
	return k.rule.judge(m.value, v, m.want, k.largest[m.query.Dim], periodic(m.query))
}

// periodic tells that a whole turn makes no difference.
func periodic(q problem.Query) bool {
	return q.Part == problem.PlaneAngle && q.Kind != problem.AskAngle && q.Kind != problem.AskUnknown
}

// judge holds v, written as w is, against want; largest is the largest value of the
// dimension.
func (r Rule) judge(w value, v, want, largest float64, turns bool) (Verdict, bool) {
	off := apart(v, want, turns) - slack*max(math.Abs(want), nothing*largest)
	size := math.Abs(want)
	if size <= nothing*largest {
		size = largest // nothing, beside it
	}
	if r.Within > 0 {
		return Right, off <= r.Within*size
	}
	third := halfOf(size, Figures, w.factor)
	if off <= third || w.figures >= Figures && off <= w.half {
		return Right, true
	}
	return TooFew, w.least == fewest && off <= halfOf(math.Abs(v), fewest, w.factor)
}

// apart is how far two values lie apart; a whole turn may make no difference.
func apart(a, b float64, turns bool) float64 {
	if turns {
		return math.Abs(math.Remainder(a-b, 2*math.Pi))
	}
	return math.Abs(a - b)
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

// close tells whether an answer is near.
func (k *Key) close(m *Mark) bool {
	return apart(m.value.si, m.want, periodic(m.query)) <= nearShare*math.Abs(m.want) && math.Abs(m.want) > nothing*k.largest[m.query.Dim]
}

// same tells whether an answer is a value, to its figures.
func (k *Key) same(m *Mark, value float64) bool {
	v, ok := k.rule.judge(m.value, m.value.si, value, k.largest[m.query.Dim], periodic(m.query))
	return ok && v == Right
}

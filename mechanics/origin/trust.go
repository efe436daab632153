package origin

import (
	"cmp"
	"math"
	"slices"

	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
	"trivet/units"
)

// OfTrust says which number of a result is asked for.
type OfTrust int

// The numbers that the ± of the inputs makes.
const (
	Plus     OfTrust = iota // the ± where inputs err independently
	Least                   // the end of the worst case below
	Greatest                // and above
)

// Trust says where a number of result k comes from: which inputs bring it about, the
// one that does the most first.
func Trust(t *uncertainty.Effect, k int, of OfTrust) string {
	y := &t.Spreads[k]
	if of == Plus && !y.Known() || of != Plus && !y.Bounded() {
		return y.Label() + " has no bound within " + t.Mostly(y)
	}
	low, high := t.Ends(y)
	switch of {
	case Least:
		return y.Label() + ", worst case " + low + end(t, y.LowAt)
	case Greatest:
		return y.Label() + ", worst case " + high + end(t, y.HighAt)
	}
	by := shares(t, y)
	if moving(y) < 2 {
		return y.Label() + " " + t.PlusText(y) + ": from " + t.Mostly(y) + " alone"
	}
	return y.Label() + " " + t.PlusText(y) + ": mostly from " + t.Mostly(y) + "; root of the sum of squares of " + by
}

// end says where an end of the worst case is.
func end(t *uncertainty.Effect, at uncertainty.Place) string {
	if where := t.PlaceWords(at); where != "" {
		return ": with " + where
	}
	return ": with every input as typed"
}

// moving counts the inputs that change a result.
func moving(y *uncertainty.Spread) (n int) {
	for _, by := range y.By {
		if by != 0 {
			n++
		}
	}
	return n
}

// shares lists what each input does to a result.
func shares(t *uncertainty.Effect, y *uncertainty.Spread) string {
	var order []int
	for i, by := range y.By {
		if by != 0 {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(math.Abs(y.By[b]), math.Abs(y.By[a])) })
	u := t.Solution.Problem.Units.For(y.Dim)
	var out []string
	for _, i := range order {
		out = append(out, t.Measured[i].Name+" "+u.Format(math.Abs(y.By[i]), 2))
	}
	return list(out)
}

// Reach says where the use of a limit at the worst comes from: check r of those that
// inputs move.
func Reach(t *uncertainty.Effect, r int) string {
	at := &t.Checks[r]
	p, c := t.Solution.Problem, &t.Solution.Checks[at.Check]
	if math.IsInf(at.Value, 0) {
		return "no greatest value of " + c.Subject + " to hold against " + shown(p, at.Bound, units.Force)
	}
	says := shown(p, at.Value, units.Force) + " at the worst of " + shown(p, at.Bound, units.Force) + " (limit of " + c.Subject + ") = " +
		units.Figures(100*at.Value/at.Bound, p.Figures) + " %"
	if at.Mostly >= 0 {
		says += ", mostly from " + t.From(at.Mostly)
	}
	return says
}

// IsLimit tells a check of a limit.
func IsLimit(c statics.Check) bool {
	return c.Kind == statics.CheckLimit || c.Kind == statics.CheckJointLimit
}

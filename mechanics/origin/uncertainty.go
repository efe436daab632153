package origin

import (
	"cmp"
	"math"
	"slices"

	"trivet/mechanics/doc"
	"trivet/mechanics/say"
	"trivet/mechanics/uncertainty"
	"trivet/units"
)

// Spread is a number of result k, by the inputs that bring it about, the one that does the
// most first: an end of the worst case, or else the ± where inputs err independently.
func Spread(t *uncertainty.Effect, k int, which uncertainty.End) doc.Origin {
	return of(func() string {
		y := &t.Spreads[k]
		worst := which != uncertainty.Single
		if !worst && !y.Known() || worst && !y.Bounded() {
			return y.Label() + " has no bound within " + t.Mostly(y)
		}
		low, high := t.Ends(y)
		switch which {
		case uncertainty.Least:
			return y.Label() + ", worst case " + low + ": with " + cmp.Or(t.PlaceWords(y.LowAt), asTyped)
		case uncertainty.Greatest:
			return y.Label() + ", worst case " + high + ": with " + cmp.Or(t.PlaceWords(y.HighAt), asTyped)
		}
		shares := shares(t, y)
		if len(shares) < 2 {
			return y.Label() + " " + t.PlusText(y) + ": from " + t.Mostly(y) + " alone"
		}
		return y.Label() + " " + t.PlusText(y) + ": mostly from " + t.Mostly(y) + "; root of the sum of squares of " + say.AndMore(shares, limit)
	}, "spread", k, which)
}

// asTyped is where an end of the worst case is that no input moves.
const asTyped = "every input as typed"

// shares are what each input does to a result.
func shares(t *uncertainty.Effect, y *uncertainty.Spread) []string {
	var order []int
	for i, by := range y.By {
		if by != 0 {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(math.Abs(y.By[b]), math.Abs(y.By[a])) })
	u := t.Solution.Problem.Units.For(y.Dim)
	return say.Each(order, func(i int) string { return t.Measured[i].Name + " " + u.Format(math.Abs(y.By[i]), 2) })
}

// Reach is the utilisation of a limit at the worst: check r of those that inputs move.
func Reach(t *uncertainty.Effect, r int) doc.Origin {
	return of(func() string {
		at := &t.Checks[r]
		p, c := t.Solution.Problem, &t.Solution.Checks[at.Check]
		bound := p.Format(at.Bound, units.Force)
		if math.IsInf(at.Value, 0) {
			return "unbounded: " + c.Subject + " has no largest value to check against " + bound
		}
		says := p.Format(at.Value, units.Force) + " at the worst of " + bound + " (limit of " + c.Subject + ") = " + p.Percent(at.Value/at.Bound)
		if at.Mostly >= 0 {
			says += ", mostly from " + t.Measured[at.Mostly].Words()
		}
		return says
	}, "reach", r)
}

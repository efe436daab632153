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

// OfSpread says which number of a result is meant.
type OfSpread int

// The numbers that the ± of the inputs makes.
const (
	Plus     OfSpread = iota // the ± where inputs err independently
	Least                    // the end of the worst case below
	Greatest                 // and above
)

type spread struct {
	k  int
	of OfSpread
}

// Spread is a number of result k: which inputs bring it about, the one that does
// the most first.
func Spread(t *uncertainty.Effect, k int, which OfSpread) doc.Origin { return of(t, spread{k, which}) }

func (n spread) says(t *uncertainty.Effect) string {
	y := &t.Spreads[n.k]
	if n.of == Plus && !y.Known() || n.of != Plus && !y.Bounded() {
		return y.Label() + " has no bound within " + t.Mostly(y)
	}
	low, high := t.Ends(y)
	switch n.of {
	case Least:
		return y.Label() + ", worst case " + low + inputs(t, y.LowAt)
	case Greatest:
		return y.Label() + ", worst case " + high + inputs(t, y.HighAt)
	}
	shares := shares(t, y)
	if len(shares) < 2 {
		return y.Label() + " " + t.PlusText(y) + ": from " + t.Mostly(y) + " alone"
	}
	return y.Label() + " " + t.PlusText(y) + ": mostly from " + t.Mostly(y) + "; root of the sum of squares of " + say.AndMore(shares, limit)
}

// inputs says where an end of the worst case is.
func inputs(t *uncertainty.Effect, at uncertainty.Place) string {
	if where := t.PlaceWords(at); where != "" {
		return ": with " + where
	}
	return ": with every input as typed"
}

// shares are what each input does to a result.
func shares(t *uncertainty.Effect, y *uncertainty.Spread) (out []string) {
	var order []int
	for i, by := range y.By {
		if by != 0 {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(math.Abs(y.By[b]), math.Abs(y.By[a])) })
	u := t.Solution.Problem.Units.For(y.Dim)
	for _, i := range order {
		out = append(out, t.Measured[i].Name+" "+u.Format(math.Abs(y.By[i]), 2))
	}
	return out
}

type reach struct{ r int }

// Reach is the utilisation of a limit at the worst: check r of those that inputs move.
func Reach(t *uncertainty.Effect, r int) doc.Origin { return of(t, reach{r}) }

func (n reach) says(t *uncertainty.Effect) string {
	at := &t.Checks[n.r]
	p, c := t.Solution.Problem, &t.Solution.Checks[at.Check]
	if math.IsInf(at.Value, 0) {
		return "unbounded: " + c.Subject + " has no greatest value to check against " + shown(p, at.Bound, units.Force)
	}
	says := shown(p, at.Value, units.Force) + " at the worst of " + shown(p, at.Bound, units.Force) + " (limit of " + c.Subject + ") = " +
		units.Figures(100*at.Value/at.Bound, p.Figures) + " %"
	if at.Mostly >= 0 {
		says += ", mostly from " + t.From(at.Mostly)
	}
	return says
}

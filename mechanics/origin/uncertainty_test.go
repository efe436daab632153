package origin

import (
	"testing"

	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
)

// A load of 2.4 kN on two ropes at 45 degrees carries 2.4/√2 = 1.70 kN each; a tenth
// of a kilonewton more, 0.071 kN more.
func TestUncertainty(t *testing.T) {
	of := func(h, x string) *uncertainty.Effect {
		s, err := sheet.Parse([]byte(`plane = "xy"
[units]
force = "kN"
[given]
W = "2.4 kN ± 0.1 kN"
[points]
O = { at = "0, 0", on = "particle" }
A = "-1, ` + h + `"
B = "` + x + `, 1"
[lines]
T1 = { kind = "link", path = "O A", limit = "1.75 kN" }
T2 = { kind = "link", path = "O B" }
W = { kind = "weight", at = "O", magnitude = "W" }
`))
		if err != nil {
			t.Fatal(err)
		}
		p, errs := problem.Read(s)
		if len(errs) > 0 {
			t.Fatal(errs)
		}
		return uncertainty.Of(s, statics.Solve(p))
	}
	one, two, none := of("1", "1"), of("1 ± 0.01", "1"), of("1", "-1.01 ± 0.02")
	for _, c := range []struct {
		from doc.Origin
		want string
	}{
		{Spread(one, 0, uncertainty.Single), "T1 ± 0.071 kN: from W (± 0.1 kN) alone"},
		{Spread(one, 0, uncertainty.Least), "T1, worst case 1.626 kN: with W 0.1 kN smaller"},
		{Spread(one, 0, uncertainty.Greatest), "T1, worst case 1.768 kN: with W 0.1 kN larger"},
		{Spread(two, 1, uncertainty.Single), "T2 ± 0.071 kN: mostly from W (± 0.1 kN); root of the sum of squares of W 0.071 kN and y of A 0.0085 kN"},
		{Spread(none, 0, uncertainty.Single), "T1 has no bound within x of B (± 0.02 m)"},
		{Reach(one, 0), "1.77 kN at the worst of 1.75 kN (limit of T1) = 101 %, mostly from W (± 0.1 kN)"},
		{Reach(none, 0), "unbounded: T1 has no largest value to check against 1.75 kN"},
	} {
		says(t, c.from, c.want)
	}
}

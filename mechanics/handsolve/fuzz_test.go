package handsolve

import (
	"math"
	"testing"

	"trivet/fixtures"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// Whatever a sheet says, also one with errors, a hand solution is found or refused, and its
// values are numbers.
func FuzzFind(f *testing.F) {
	for _, fx := range append(fixtures.Starts(), fixtures.Published()...) {
		f.Add(fx.Answered())
	}
	f.Fuzz(func(t *testing.T, text string) {
		sh, err := sheet.Parse([]byte(text))
		if err != nil {
			return
		}
		p, _ := problem.Read(sh)
		if len(p.Unknowns) > 40 {
			return
		}
		r := Find(statics.Solve(p))
		if len(r.Steps) == 0 && r.Why == None {
			t.Error("no steps, and no reason")
		}
		for i := range r.Steps {
			for _, x := range r.Steps[i].Finds {
				if math.IsNaN(x.Value) || math.IsInf(x.Value, 0) {
					t.Errorf("%s is %v", r.Name(p, x.Symbol), x.Value)
				}
			}
		}
	})
}

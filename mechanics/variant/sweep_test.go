package variant

import (
	"testing"

	"trivet/fixtures/solved"
	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
)

// Every row of a sweep of every sheet that has a range is what solving the sheet
// with that value says.
func TestSweepIsSolving(t *testing.T) {
	for _, f := range ranged() {
		s, sol := solved.Sheet(t, f.Answered())
		for _, g := range Grids(s, sol.Problem) {
			swept, err := Sweep(s, sol, g.Name, Span{})
			if err != nil {
				t.Errorf("%s %s: %v", f.Name, g.Name, err)
				continue
			}
			for i, row := range swept.Rows {
				p, errs := problem.Read(s.With(g.Ref, row.Number+" "+g.Unit))
				if len(errs) > 0 {
					t.Errorf("%s: %v", f.Name, errs[0])
					continue
				}
				one := statics.Solve(p)
				if one.Verdict.String() != row.Verdict {
					t.Errorf("%s: %s = %s is %v, and the sweep says %s", f.Name, g.Name, row.Number, one.Verdict, row.Verdict)
				}
				if (one.Verdict == statics.Inadmissible || one.Verdict == statics.Indeterminate) && len(row.Says) == 0 {
					t.Errorf("%s: %s = %s says nothing", f.Name, g.Name, row.Number)
				}
				for k, q := range p.Results() {
					v, err := one.Evaluate(q)
					if c := row.Cells[k]; c.OK && (err != nil || !same(v, c.SI)) {
						t.Errorf("%s: %s is %v, and the sweep has %v", f.Name, q.Name, v, c.SI)
					} else if c.OK {
						if m := swept.Largest[k]; m >= 0 && swept.Rows[m].Cells[k].SI < c.SI {
							t.Errorf("%s: row %d is larger than the largest", f.Name, i)
						}
						if m := swept.Smallest[k]; m >= 0 && swept.Rows[m].Cells[k].SI > c.SI {
							t.Errorf("%s: row %d is smaller than the smallest", f.Name, i)
						}
					}
				}
			}
		}
	}
}

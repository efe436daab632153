package statics

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"trivet/fixtures"
)

// TestRangesOfSciPy holds the ranges of indeterminate bodies against those that
// SciPy's linear programming finds (fixtures/oracle/ranges.py), whose equations
// are written apart from ours.
func TestRangesOfSciPy(t *testing.T) {
	data, err := os.ReadFile("../../fixtures/oracle/ranges.json")
	if err != nil {
		t.Fatal(err)
	}
	var oracle struct {
		Cases []struct {
			Name, Sheet, Fixture string
			Degree               int
			Empty                bool
			Tol                  float64 // of the polygons that stand for cones
			Ranges               map[string][2]*float64
		}
	}
	if err := json.Unmarshal(data, &oracle); err != nil {
		t.Fatal(err)
	}
	if len(oracle.Cases) < 30 {
		t.Errorf("%d cases", len(oracle.Cases))
	}
	ranges := 0
	for _, c := range oracle.Cases {
		t.Run(c.Name, func(t *testing.T) {
			text := c.Sheet
			if c.Fixture != "" {
				f, ok := fixtures.Get(c.Fixture)
				if !ok {
					t.Fatalf("no sheet %s", c.Fixture)
				}
				text = f.Answered()
			}
			s := solveText(t, text)
			verdict := Indeterminate
			if c.Empty {
				verdict = Inadmissible
			}
			if s.Verdict != verdict || s.Degree != c.Degree {
				t.Fatalf("%v of degree %d, want degree %d\n%v\n%s", s.Verdict, s.Degree, c.Degree, s.Words(), text)
			}
			if c.Empty {
				return
			}
			if len(s.X) != len(c.Ranges) {
				t.Fatalf("%d unknowns, want %d", len(s.X), len(c.Ranges))
			}
			end := func(v *float64, none int) float64 {
				if v == nil {
					return math.Inf(none)
				}
				return *v
			}
			for _, x := range s.X {
				want, ok := c.Ranges[x.Name]
				if !ok {
					t.Fatalf("SciPy has no range of %s", x.Name)
				}
				ranges++
				low, high := end(want[0], -1), end(want[1], 1)
				tol := max(1e-7, c.Tol) * s.scale() // 1e-7 is of HiGHS
				for _, v := range []float64{low, high} {
					if !math.IsInf(v, 0) {
						tol = max(tol, c.Tol*math.Abs(v))
					}
				}
				if x.Low != low && !(math.Abs(x.Low-low) <= tol) || x.High != high && !(math.Abs(x.High-high) <= tol) {
					t.Errorf("%s from %v to %v, SciPy %v to %v\n%s", x.Name, x.Low, x.High, low, high, text)
				}
			}
		})
	}
	t.Logf("%d ranges of %d cases", ranges, len(oracle.Cases))
}

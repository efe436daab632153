package tutor

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/fixtures"
	"trivet/fixtures/long"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/variant"
	"trivet/units"
)

// rig is a sheet that equations can be written for.
type rig struct {
	name     string
	solution *statics.Solution
}

// rigs are the sheets that come with the program, and variants of those whose givens have
// ranges.
func rigs(t testing.TB, total int) (all []rig) {
	t.Helper()
	for _, f := range append(fixtures.Starts(), fixtures.Published()...) {
		s, err := sheet.Parse([]byte(f.Text))
		if err != nil {
			t.Fatal(err)
		}
		p, errs := problem.Read(s)
		if len(errs) > 0 {
			continue
		}
		sol := statics.Solve(p)
		if !sol.Unique() || len(sol.X) == 0 || sol.Verdict == statics.Resultant {
			continue
		}
		all = append(all, rig{f.Name, sol})
		src, err := variant.NewSource(s, sol)
		if err != nil {
			continue
		}
		drawn, _ := src.Draw(variant.Seeded(7), 12)
		for k, v := range drawn {
			if v.Solution != nil && v.Solution.Unique() {
				all = append(all, rig{fmt.Sprintf("%s variant %d", f.Name, k+1), v.Solution})
			}
		}
	}
	rand.New(rand.NewPCG(1, 2)).Shuffle(len(all), func(i, k int) { all[i], all[k] = all[k], all[i] })
	return all[:min(total, len(all))]
}

// pick is a random sum on a random body or group, about a point of the sheet or any other.
func pick(t *Practice, rng *rand.Rand) (sum, bool) {
	p := t.Problem
	set := only(p, rng.IntN(len(p.Bodies)))
	if rng.IntN(3) == 0 {
		sets := t.groups(func(int) bool { return rng.IntN(2) == 0 })
		set = sets[rng.IntN(len(sets))]
	}
	all := t.elementary(set)
	s := all[rng.IntN(len(all))]
	if s.moment && rng.IntN(2) == 0 {
		s.at = r3.Vec{X: 4*rng.Float64() - 2, Y: 4*rng.Float64() - 2}
		if !p.Planar {
			s.at.Z = 4*rng.Float64() - 2
		}
	} else if !s.moment && rng.IntN(4) == 0 {
		a := 2 * math.Pi * rng.Float64()
		s.along = r3.Vec{X: math.Cos(a), Y: math.Sin(a)}
	}
	return s, largest(s.exact(t.forces, len(p.Unknowns))[:len(p.Unknowns)]) > 1e-6
}

// print writes an equation to so many figures, on both sides of =, in the sheet's units.
func print(t *Practice, row []float64, moment bool, figures int, rng *rand.Rand) string {
	p := t.Problem
	n := len(p.Unknowns)
	d := units.Force
	if moment {
		d = units.Moment
	}
	var left, right []string
	put := func(v float64, what string) {
		if v == 0 {
			return
		}
		side := &left
		if rng.IntN(2) == 0 {
			side, v = &right, -v
		}
		*side = append(*side, fmt.Sprintf("%+s%s", signed(v, figures), what))
	}
	top := largest(row[:n])
	for _, k := range rng.Perm(n + 1) {
		v := row[k]
		if k == n {
			put(v/p.Units.For(d).Factor, " "+p.Units.For(d).Symbol)
			continue
		}
		if math.Abs(v) < 1e-12*top {
			continue
		}
		if moment && p.Unknowns[k].Dim == units.Force {
			put(v/p.Units.Length.Factor, []string{" ", "*"}[rng.IntN(2)]+p.Unknowns[k].Name)
		} else {
			put(v, "*"+p.Unknowns[k].Name)
		}
	}
	side := func(all []string) string {
		if len(all) == 0 {
			return "0"
		}
		return strings.TrimPrefix(strings.Join(all, " "), "+")
	}
	return side(left) + " = " + side(right)
}

func signed(v float64, figures int) string {
	s := units.Figures(math.Abs(v), figures)
	if v < 0 {
		return "- " + s
	}
	return "+ " + s
}

// Any equation that follows from equilibrium is right: of any body or group, about any
// point, multiplied, combined, rearranged, rounded to three to six figures.
func TestRightEquationsAreNotRefused(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 5))
	all := rigs(t, 500)
	total, refused := long.Of(2000, 20000), 0
	for k := range total {
		r := all[k%len(all)]
		p := New(r.solution)
		s, ok := pick(p, rng)
		if !ok {
			continue
		}
		row := s.exact(p.forces, len(p.Problem.Unknowns))
		if rng.IntN(3) == 0 {
			other, ok := pick(p, rng)
			if ok && other.moment == s.moment {
				b := other.exact(p.forces, len(p.Problem.Unknowns))
				f := 4*rng.Float64() - 2
				row = slices.Clone(row)
				for i := range row {
					row[i] += f * b[i]
				}
			}
		}
		if rng.IntN(2) == 0 {
			f := math.Exp(4*rng.Float64() - 2)
			row = slices.Clone(row)
			for i := range row {
				row[i] *= f
			}
		}
		text := print(p, row, s.moment, 3+rng.IntN(4), rng)
		if j := p.Enter(text); j.Verdict != Right && j.Verdict != Dependent {
			refused++
			if refused <= 10 {
				t.Errorf("%s: %s\n  is %s\n  %s: %s", r.name, text, s.is(p.Problem), j.Verdict, j.Says)
			}
		}
	}
	if refused > 0 {
		t.Errorf("%d of %d are refused", refused, total)
	}
}

package statics

import (
	"fmt"
	"math"
	"math/big"
	"strings"
	"testing"
)

// halves makes random bounds of small whole numbers, with what makes a linear
// programme stumble: many through one corner, the same bound twice or as a
// multiple, opposite ones, empty regions, single points.
func (m *maker) halves(degree int) []half {
	n := 1 + m.rng.IntN(7)
	cone := m.rng.IntN(3) == 0
	var out []half
	for len(out) < n {
		h := half{c: new(big.Rat), g: make([]*big.Rat, degree)}
		some := false
		for k := range h.g {
			h.g[k] = big.NewRat(int64(m.rng.IntN(7)-3), 1)
			some = some || h.g[k].Sign() != 0
		}
		if !some {
			continue
		}
		if !cone {
			h.c.SetInt64(int64(m.rng.IntN(9) - 3))
		}
		if len(out) > 0 && m.rng.IntN(4) == 0 { // a multiple of another, or its opposite
			k := big.NewRat(int64(m.rng.IntN(5)-2), 1)
			if k.Sign() == 0 {
				k.SetInt64(1)
			}
			other := pick(m.rng, out...)
			h = half{c: new(big.Rat).Mul(k, other.c), g: make([]*big.Rat, degree)}
			for i := range h.g {
				h.g[i] = new(big.Rat).Mul(k, other.g[i])
			}
		}
		out = append(out, h)
	}
	return out
}

func floats(v []*big.Rat) []float64 {
	out := make([]float64, len(v))
	for i := range v {
		out[i], _ = v[i].Float64()
	}
	return out
}

// TestRegionsOfExactArithmetic holds corners and rays, and the linear programme
// that takes their place where there are many, against exact elimination.
func TestRegionsOfExactArithmetic(t *testing.T) {
	m := newMaker(5)
	counts := map[string]int{}
	for range 6000 {
		degree := 1 + m.rng.IntN(3)
		halves := m.halves(degree)
		cost := make([]*big.Rat, degree)
		for some := false; !some; {
			for k := range cost {
				cost[k] = big.NewRat(int64(m.rng.IntN(7)-3), 1)
				some = some || cost[k].Sign() != 0
			}
		}
		if m.rng.IntN(3) == 0 { // along a bound: many points are least at once
			cost = pick(m.rng, halves...).g
		}
		want := exactReach(cost, halves)
		var bounds []bound
		for i, h := range halves {
			c, _ := h.c.Float64()
			bounds = append(bounds, bound{c, floats(h.g), fmt.Sprint(i)})
		}
		r := newRegion(bounds, degree)
		value, y, what := r.least(floats(cost))
		text := fmt.Sprint("least of ", floats(cost), " over ", bounds)
		checkReach(t, r, want, value, what, text)
		if what == found && len(r.basis) > 0 && math.Abs(inner(y, floats(cost))-value) > 1e-8 {
			t.Fatalf("%s: %v has not the value %v", text, y, value)
		}
		if what == found {
			checkHolders(t, floats(cost), value, bounds, r.holders(floats(cost), value, bounds), text)
		}
		counts[fmt.Sprint("corners: ", what)]++
		r.large = true
		value, _, what = r.least(floats(cost))
		if what != unknowable {
			checkReach(t, r, want, value, what, "by programme, "+text)
		}
		counts[fmt.Sprint("programme: ", what)]++
	}
	t.Log("0 found, 1 endless, 2 empty, 3 unknowable: ", counts)
	for _, what := range []extent{found, endless, empty} {
		if counts[fmt.Sprint("corners: ", what)] < 300 {
			t.Errorf("hardly any of kind %d", what)
		}
	}
}

func checkReach(t *testing.T, r *region, want reach, value float64, what extent, text string) {
	t.Helper()
	switch {
	case want.empty:
		if what != empty {
			t.Fatalf("%s: %d at %v, want none", text, what, value)
		}
	case want.low == nil:
		if what != endless || !math.IsInf(value, -1) {
			t.Fatalf("%s: %d at %v, want no end\ncorners %v rays %v", text, what, value, r.corners, r.rays)
		}
	default:
		low, _ := want.low.Float64()
		if what != found || math.Abs(value-low) > 1e-8*(1+math.Abs(low)) {
			t.Fatalf("%s: %d at %v, want %v\ncorners %v rays %v", text, what, value, low, r.corners, r.rays)
		}
	}
}

// TestRangesOfExactArithmetic solves random hangings by too many cables and
// holds the range of every tension against exact elimination.
func TestRangesOfExactArithmetic(t *testing.T) {
	m := newMaker(7)
	counts := map[string]int{}
	for done := 0; done < 1500; {
		r := m.degenerate()
		for i := range r.lines {
			if r.lines[i].kind == "link" {
				r.lines[i].kind = "cable"
			}
		}
		system := r.exact()
		n := len(system.cols)
		rows, scale, right := system.integers()
		pivots, d := eliminate(rows, n)
		degree := n - len(pivots)
		want := system.solve()
		if degree < 1 || degree > 3 || !want.consistent {
			continue
		}
		done++
		// Density j is values[j] = c + Σ g·y over the y that are free columns, times
		// scale over right; it must not be negative.
		values := make([]half, n)
		var free []int
		for j := range n {
			isPivot := false
			for k, p := range pivots {
				if p == j {
					isPivot = true
					values[j].c = new(big.Rat).SetFrac(rows[k][n], d)
					for f := range n {
						if !contains(pivots, f) {
							values[j].g = append(values[j].g, new(big.Rat).Neg(new(big.Rat).SetFrac(rows[k][f], d)))
						}
					}
				}
			}
			if !isPivot {
				free = append(free, j)
			}
		}
		for k, j := range free {
			values[j] = half{c: new(big.Rat), g: zeros(degree)}
			values[j].g[k].SetInt64(1)
		}
		text := r.text()
		s := solveText(t, text)
		if s.Verdict != Indeterminate || s.Degree != degree {
			t.Fatalf("%v of degree %d, want degree %d\n%s", s.Verdict, s.Degree, degree, text)
		}
		for j := range n {
			x := s.X[j]
			if x.Name != system.names[j] {
				t.Fatalf("unknown %s, want %s", x.Name, system.names[j])
			}
			if x.Fixed {
				continue
			}
			// A fixed cable that pushes breaks its own sense and is no bound on the others.
			var bounds []half
			for i := range values {
				if !s.X[i].Fixed {
					bounds = append(bounds, values[i])
				}
			}
			want := exactReach(values[j].g, bounds)
			if want.empty {
				counts["empty"]++
				if s.sensesMet || !math.IsInf(x.Low, -1) || !math.IsInf(x.High, 1) {
					t.Fatalf("%s from %v to %v, want no values that keep senses\n%s", x.Name, x.Low, x.High, text)
				}
				continue
			}
			length := s.Problem.Lines[s.Problem.Unknowns[j].Line].Length()
			by := new(big.Rat).SetFrac(scale[j], right)
			end := func(y *big.Rat, none float64) float64 {
				if y == nil {
					return none
				}
				e := new(big.Rat).Add(values[j].c, y)
				f, _ := e.Mul(e, by).Float64()
				return f * length
			}
			low, high := end(want.low, math.Inf(-1)), end(want.high, math.Inf(1))
			tol := 1e-7 * (s.load + 1)
			if !near(x.Low, low, tol) || !near(x.High, high, tol) || !s.sensesMet {
				t.Fatalf("%s from %v to %v, want %v to %v\n%v\n%s", x.Name, x.Low, x.High, low, high, strings.Join(s.Words(), "\n"), text)
			}
			switch {
			case math.IsInf(high, 1):
				counts["no end"]++
			case high-low < tol:
				counts["single value"]++
			default:
				counts["range"]++
			}
			if x.Value < low-tol || x.Value > high+tol {
				t.Fatalf("%s = %v is shown, outside %v to %v\n%s", x.Name, x.Value, low, high, text)
			}
		}
		counts[fmt.Sprint("degree ", degree)]++
	}
	t.Log(counts)
	for _, k := range []string{"empty", "no end", "single value", "range", "degree 1", "degree 2", "degree 3"} {
		if counts[k] < 10 {
			t.Errorf("hardly any of %s: %d", k, counts[k])
		}
	}
}

func contains(list []int, x int) bool {
	for _, y := range list {
		if y == x {
			return true
		}
	}
	return false
}

func near(a, b, tol float64) bool {
	return a == b || math.Abs(a-b) <= tol*(1+math.Abs(b))
}

// TestManyCables: what is not worked out is not claimed.
func TestManyCables(t *testing.T) {
	var b strings.Builder
	b.WriteString("[points]\nP = { at = \"0, 0, 0\", on = \"particle\" }\n[lines]\n")
	for i := range 30 {
		fmt.Fprintf(&b, "T%d = { kind = \"cable\", at = \"P\", along = \"(%d, %d, 10)\" }\n", i, i%6-3, i%5-2)
	}
	b.WriteString("W = { kind = \"weight\", at = \"P\", magnitude = \"100 N\" }\n")
	s := solveText(t, b.String())
	if s.Verdict != Indeterminate || s.Degree != 27 {
		t.Fatalf("%v of degree %d", s.Verdict, s.Degree)
	}
	if got, want := s.Words()[1], "T0 is free, and what the senses leave it was not worked out"; got != want {
		t.Errorf("says %q, want %q", got, want)
	}
	for _, x := range s.X {
		if !math.IsInf(x.Low, -1) || !math.IsInf(x.High, 1) {
			t.Errorf("%s from %v to %v is claimed", x.Name, x.Low, x.High)
		}
	}
	for _, c := range s.Checks {
		if c.Kind == CheckSenseRange {
			t.Errorf("claims that %s", c.Says(s.Problem))
		}
	}
}

package statics

import (
	"fmt"
	"math"
	"math/big"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/floats"

	"trivet/mechanics/linear"
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

func someFloats(v []*big.Rat) []float64 {
	out := make([]float64, len(v))
	for i := range v {
		out[i], _ = v[i].Float64()
	}
	return out
}

// TestProgrammesOfExactArithmetic holds linear programmes against exact elimination.
func TestProgrammesOfExactArithmetic(t *testing.T) {
	m := newMaker(5)
	counts := map[linear.Extent]int{}
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
		var g [][]float64
		var c []float64
		for _, h := range halves {
			constant, _ := h.c.Float64()
			g, c = append(g, someFloats(h.g)), append(c, constant)
		}
		p := programme(g, c, degree)
		l := p.Least(someFloats(cost))
		text := fmt.Sprint("least of ", someFloats(cost), " over ", g, " ", c)
		checkReach(t, want, l, text)
		switch l.Extent {
		case linear.Found:
			if math.Abs(floats.Dot(l.Y, someFloats(cost))-l.Value) > 1e-8 {
				t.Fatalf("%s: %v has not the value %v", text, l.Y, l.Value)
			}
			checkEnds(t, someFloats(cost), l.Value, g, c, p.Ends(l), text)
		case linear.Empty:
			checkConflict(t, halves, p.Conflict(), text)
		}
		counts[l.Extent]++
	}
	t.Log("0 found, 1 endless, 2 empty, 3 unknown: ", counts)
	for _, what := range []linear.Extent{linear.Found, linear.Endless, linear.Empty} {
		if counts[what] < 300 {
			t.Errorf("hardly any of kind %d", what)
		}
	}
	if counts[linear.Unknown] > 0 {
		t.Errorf("%d are not known", counts[linear.Unknown])
	}
}

func programme(g [][]float64, c []float64, n int) *linear.Programme {
	work := int(1e8)
	return linear.NewProgramme(g, c, n, &work)
}

func checkReach(t *testing.T, want reach, l linear.Least, text string) {
	t.Helper()
	switch {
	case want.empty:
		if l.Extent != linear.Empty {
			t.Fatalf("%s: %d at %v, want none", text, l.Extent, l.Value)
		}
	case want.low == nil:
		if l.Extent != linear.Endless {
			t.Fatalf("%s: %d at %v, want no end", text, l.Extent, l.Value)
		}
	default:
		low, _ := want.low.Float64()
		if l.Extent != linear.Found || math.Abs(l.Value-low) > 1e-8*(1+math.Abs(low)) {
			t.Fatalf("%s: %d at %v, want %v", text, l.Extent, l.Value, low)
		}
	}
}

// checkEnds holds what ends a region to its meaning: with those bounds alone the
// least value is the same, and without them it is less.
func checkEnds(t *testing.T, cost []float64, value float64, g [][]float64, c []float64, ends []int, text string) {
	t.Helper()
	var with, without [][]float64
	var cWith, cWithout []float64
	for i := range g {
		if contains(ends, i) {
			with, cWith = append(with, g[i]), append(cWith, c[i])
		} else {
			without, cWithout = append(without, g[i]), append(cWithout, c[i])
		}
	}
	if len(with) == 0 {
		t.Fatalf("%s: nothing ends it", text)
	}
	if l := programme(with, cWith, len(cost)).Least(cost); l.Extent != linear.Found || math.Abs(l.Value-value) > 1e-8*(1+math.Abs(value)) {
		t.Fatalf("%s: %v alone leave %v (%d), not %v", text, ends, l.Value, l.Extent, value)
	}
	if l := programme(without, cWithout, len(cost)).Least(cost); l.Extent == linear.Found && l.Value >= value-1e-9 {
		t.Fatalf("%s: without %v it is %v all the same", text, ends, l.Value)
	}
}

// checkConflict: the bounds that prove a region empty are empty by themselves, and
// none of them can be left out.
func checkConflict(t *testing.T, halves []half, of []int, text string) {
	t.Helper()
	empty := func(some []int) bool {
		var sub []half
		for _, i := range some {
			sub = append(sub, halves[i])
		}
		if len(sub) == 0 {
			return false
		}
		return exactReach(sub[0].g, sub).empty
	}
	if !empty(of) {
		t.Fatalf("%s: %v are not empty", text, of)
	}
	for k := range of {
		if rest := append(append([]int{}, of[:k]...), of[k+1:]...); empty(rest) {
			t.Fatalf("%s: %v are empty without bound %d too", text, of, of[k])
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
		if s.Verdict != Indeterminate && s.Verdict != Inadmissible || s.Degree != degree {
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
			if slices.ContainsFunc(s.Broken, func(c Condition) bool { return s.partOf[c.parts[0].u.Alone()] == s.partOf[j] }) {
				counts["broken"]++ // no state is admissible, and what hangs together with it has no range
				if s.Verdict != Inadmissible || x.Ranged {
					t.Fatalf("%v, %s from %v to %v, and a fixed cable pushes\n%s", s.Verdict, x.Name, x.Low, x.High, text)
				}
				continue
			}
			want := exactReach(values[j].g, bounds)
			if want.empty {
				counts["empty"]++
				in := slices.ContainsFunc(s.conflicts, func(c conflict) bool { return s.partOf[c.Conditions[0].parts[0].u.Alone()] == s.partOf[j] })
				if s.Verdict != Inadmissible || in && (x.Ranged || !math.IsInf(x.Low, -1) || !math.IsInf(x.High, 1)) {
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
			if !near(x.Low, low, tol) || !near(x.High, high, tol) || !x.Ranged {
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

// TestManyCables: ranges have no end at a number of cables. The largest tension of
// a vertical cable is the weight, by hand.
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
	if got, want := s.Words()[1], "T0 lies between 0 N and 42.5 N"; got != want {
		t.Errorf("says %q, want %q", got, want)
	}
	for _, x := range s.X {
		if !x.Ranged || x.Low != 0 || x.Name == "T27" && !near(x.High, 100, 1e-9) {
			t.Errorf("%s from %v to %v", x.Name, x.Low, x.High)
		}
	}
}

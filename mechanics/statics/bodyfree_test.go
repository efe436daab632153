package statics

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/fixtures/long"
	"trivet/mechanics/problem"
)

// The share of an unknown in what is free, relative to the largest, up to which
// the rig fixes it and beyond which it leaves it free: what lies between is
// nobody's to tell, and such rigs are left out.
const (
	surelyFixed = 1e-11
	surelyFree  = 1e-6
)

// inverse gives the inverse of the matrix of a determinate rig.
func (r *bodyRig) inverse() *mat.Dense {
	var inv mat.Dense
	if err := inv.Inverse(r.matrix(r.parts)); err != nil {
		return nil
	}
	return &inv
}

// surplus adds parts of k unknowns in all.
func (m *bodyMaker) surplus(r *bodyRig, k int) []part {
	var more []part
	for k > 0 {
		b, other := m.rng.IntN(len(r.bodies)), m.rng.IntN(2*len(r.bodies))
		if other >= len(r.bodies) || other == b {
			other = -1
		}
		p := m.part(r, b, other, k)
		more = append(more, p)
		k -= len(p.cols)
	}
	return more
}

// freeShares gives the null space of [A E], where A is a determinate rig's matrix
// and E what was added:
//
//	[-A⁻¹E; 1]
//
// its rows the shares of the unknowns.
func (r *bodyRig) freeShares(inv *mat.Dense, more []part) *mat.Dense {
	n := r.size()
	var e mat.Dense
	e.Mul(inv, r.matrix(more))
	_, k := e.Dims()
	out := mat.NewDense(n+k, k, nil)
	for i := range n {
		for j := range k {
			out.Set(i, j, -e.At(i, j))
		}
	}
	for j := range k {
		out.Set(n+j, j, 1)
	}
	return out
}

// shareOf is how much an unknown takes part in the columns of shares: a joint's
// unknown lies along a direction of its own, which our basis is turned to.
func shareOf(parts []part, shares *mat.Dense, p *problem.Problem, unknown int) float64 {
	_, k := shares.Dims()
	row := 0
	for i := range parts {
		pt := &parts[i]
		u := &p.Unknowns[unknown]
		size := 0.0
		switch {
		case u.Joint >= 0 && p.Joints[u.Joint].Name == pt.name:
			j := &p.Joints[u.Joint]
			for c := range k {
				x := make([]float64, len(pt.cols))
				for q := range x {
					x[q] = shares.At(row+q, c)
				}
				f, moment := pt.total(x)
				sum := 0.0
				for _, t := range j.Forces.Terms {
					if t.Unknown == unknown { // an impending surface's direction is longer than one
						sum += r3.Dot(f, t.D) / r3.Norm2(t.D)
					}
				}
				for _, t := range j.Moments.Terms {
					if t.Unknown == unknown {
						sum += r3.Dot(moment, t.D)
					}
				}
				size = math.Hypot(size, sum)
			}
			return size
		case u.Joint < 0 && u.Name == pt.name:
			for c := range k {
				size = math.Hypot(size, shares.At(row, c))
			}
			return size
		}
		row += len(pt.cols)
	}
	return math.NaN()
}

// TestBodiesOfKnownDegree solves rigs that hold by more unknowns than it takes:
// the degree is what was added, and fixed are the unknowns that no self-stress
// reaches.
func TestBodiesOfKnownDegree(t *testing.T) {
	total := long.Of(100, 2000)
	m := newBodyMaker(2)
	counts := map[string]int{}
	for done := 0; done < total; {
		r := m.determinate()
		inv := r.inverse()
		degree := 1 + m.rng.IntN(3)
		parts := append(slices.Clone(r.parts), m.surplus(r, degree)...)
		shares := r.freeShares(inv, parts[len(r.parts):])
		x, broken := m.answer(parts)
		r.balance(parts, x)
		text := r.text(parts)
		p := read(t, text)
		fixed := make([]bool, len(p.Unknowns))
		most, sure := mat.Max(shares), true
		most = max(most, -mat.Min(shares))
		for j := range fixed {
			share := shareOf(parts, shares, p, j) / most
			fixed[j] = share <= surelyFixed
			sure = sure && (fixed[j] || share > surelyFree)
		}
		if !sure {
			counts["left out"]++
			continue
		}
		done++
		s := Solve(p)
		if s.Verdict != Indeterminate && s.Verdict != Inadmissible || s.Degree != degree || s.Rank != r.size() || len(s.Motions) > 0 {
			t.Fatalf("%v of degree %d with %d motions, want degree %d (condition %.3g)\n%v\n%s", s.Verdict, s.Degree, len(s.Motions), degree, s.Cond, s.Words(), text)
		}
		if len(fixed) != len(x) {
			t.Fatalf("%d unknowns, want %d\n%s", len(fixed), len(x), text)
		}
		for j := range fixed {
			if s.X[j].Fixed != fixed[j] {
				t.Fatalf("%s is fixed: %v, want %v (condition %.3g)\n%v\n%s", s.X[j].Name, s.X[j].Fixed, fixed[j], s.Cond, s.Words(), text)
			}
			if fixed[j] {
				counts["fixed"]++
			} else {
				counts["free"]++
			}
		}
		checkFixedParts(t, r, s, parts, x, text)
		if !broken {
			if !s.possible {
				t.Fatalf("no ranges found\n%s", text)
			}
			counts["ranges"]++
			checkWithin(t, s, parts, x, text)
		}
		checkChecks(t, s, text)
		counts[fmt.Sprint("degree ", degree)]++
	}
	t.Log(counts)
	if counts["fixed"] < total || counts["free"] < total {
		t.Errorf("hardly any unknowns fixed, or free: %v", counts)
	}
}

// checkWithin: the answer that the loads were built from keeps every sense, so it
// lies within the range of every line and couple.
func checkWithin(t *testing.T, s *Solution, parts []part, x []float64, text string) {
	t.Helper()
	tol := 1e-6 * s.scale()
	for i := range parts {
		for _, u := range s.X {
			if u.Name == parts[i].name && !(u.Low <= x[0]+tol && u.High >= x[0]-tol) && parts[i].table != "joints" || !s.possible {
				t.Fatalf("%s from %v to %v, and %v keeps every sense\n%v\n%s", u.Name, u.Low, u.High, x[0], s.Words(), text)
			}
		}
		x = x[len(parts[i].cols):]
	}
}

// checkFixedParts holds the parts whose unknowns are all fixed against the answer.
func checkFixedParts(t *testing.T, r *bodyRig, s *Solution, parts []part, x []float64, text string) {
	t.Helper()
	var kept []part
	var values []float64
	for i := range parts {
		whole := true
		for j := range s.X {
			u := &s.Problem.Unknowns[j]
			if u.Joint >= 0 && s.Problem.Joints[u.Joint].Name == parts[i].name || u.Name == parts[i].name {
				whole = whole && s.X[j].Fixed
			}
		}
		n := len(parts[i].cols)
		if whole {
			kept, values = append(kept, parts[i]), append(values, x[:n]...)
		}
		x = x[n:]
	}
	r.checkAnswer(t, s, kept, values, text)
}

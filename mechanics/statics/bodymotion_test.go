package statics

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/fixtures/long"
	"trivet/mechanics/linear"
)

// velocities writes a motion into the equations of a rig: its work on a wrench
// is the product with the wrench's column.
func (r *bodyRig) velocities(s *Solution, mo Motion) []float64 {
	start, out := 0, make([]float64, r.size())
	for b := range r.bodies {
		for _, mv := range mo.Moves {
			if s.Problem.Bodies[mv.Body].Name != r.bodies[b].name {
				continue
			}
			q := s.Problem.Bodies[mv.Body].About
			v := r3.Add(mv.V, r3.Cross(mv.W, r3.Sub(r.bodies[b].centre, q)))
			six := []float64{v.X, v.Y, v.Z, mv.W.X * rigArm, mv.W.Y * rigArm, mv.W.Z * rigArm}
			if r.planar {
				six = []float64{v.X, v.Y, mv.W.Z * rigArm}
			}
			copy(out[start:start+r.dim(b)], six)
		}
		start += r.dim(b)
	}
	return out
}

// TestBodiesOfKnownMotion takes some parts of determinate rigs away. What then
// moves is known from the inverse: with y = A⁻ᵀ e of the columns taken away, no
// unknown that is left works on y. Loads that need what is gone excite it.
func TestBodiesOfKnownMotion(t *testing.T) {
	total := long.Of(100, 2000)
	m := newBodyMaker(3)
	counts := map[string]int{}
	for done := 0; done < total; {
		r := m.determinate()
		inv := r.inverse()
		gone := map[int]bool{m.rng.IntN(len(r.parts)): true}
		if m.rng.IntN(3) == 0 {
			gone[m.rng.IntN(len(r.parts))] = true
		}
		x, _ := m.answer(r.parts)
		broken := false // as far as what is left goes
		excited := m.rng.IntN(2) == 0
		var left []part
		var want [][]float64
		var values []float64
		col := 0
		for i, p := range r.parts {
			n := len(p.cols)
			if gone[i] {
				for k := range n {
					want = append(want, mat.Row(nil, col+k, inv))
					if !excited {
						x[col+k] = 0
					}
				}
			} else {
				left = append(left, p)
				values = append(values, x[col:col+n]...)
				broken = broken || p.push && x[col] < 0
			}
			col += n
		}
		if len(left) == 0 || usesGone(r, gone) { // nothing is held at all; a magnitude has lost its name
			continue
		}
		done++
		r.balance(r.parts, x)
		text := r.text(left)
		s := solveText(t, text)
		verdict := Determinate
		switch {
		case excited:
			verdict = NoEquilibrium
		case broken:
			verdict = Inadmissible
		}
		counts[fmt.Sprint(verdict, " with ", len(want), " motions")]++
		if s.Verdict != verdict || s.Rank != len(values) {
			t.Fatalf("%v of rank %d, want %v of rank %d (condition %.3g)\n%v\n%s", s.Verdict, s.Rank, verdict, len(values), s.Cond, s.Words(), text)
		}
		r.checkMotions(t, s, want, excited, text)
		if !excited {
			r.checkAnswer(t, s, left, values, text)
		}
	}
	t.Log(counts)
}

// usesGone tells that a part that is gone is the line whose magnitude others follow.
func usesGone(r *bodyRig, gone map[int]bool) bool {
	for i := range r.parts {
		if p := &r.parts[i]; gone[i] && p.tied {
			return true
		}
	}
	return false
}

// checkMotions: the motions told are as many as there are, independent, and span
// what nothing resists; the work told is that of the loads.
func (r *bodyRig) checkMotions(t *testing.T, s *Solution, want [][]float64, excited bool, text string) {
	t.Helper()
	basis := linear.Orthonormal(want)
	loads := r.column(r.known)
	var got [][]float64
	some := false
	for _, mo := range s.Motions {
		v := r.velocities(s, mo)
		rest := slices.Clone(v)
		for _, b := range basis {
			along := floats.Dot(b, v)
			for i := range rest {
				rest[i] -= along * b[i]
			}
		}
		if !(floats.Norm(rest, 2) <= 1e-7*floats.Norm(v, 2)) {
			t.Fatalf("%s: it is resisted\n%s", s.MotionWords(mo), text)
		}
		work := floats.Dot(v, loads)
		some = some || mo.Excited
		switch furthest := furthest(mo); {
		case !mo.Excited && math.Abs(work) > 1e-6*floats.Norm(loads, 2)*floats.Norm(v, 2):
			t.Fatalf("%s: the loads do work of %g on it\n%s", s.MotionWords(mo), work, text)
		case mo.Excited && !mo.Turning && math.Abs(mo.Unbalanced-work/furthest) > 1e-6*floats.Norm(loads, 2),
			mo.Excited && mo.Turning && math.Abs(mo.Unbalanced-work) > 1e-6*floats.Norm(loads, 2)*floats.Norm(v, 2):
			t.Fatalf("%s: the loads do work of %g on it, and %g is told\n%s", s.MotionWords(mo), work, mo.Unbalanced, text)
		}
		size := floats.Norm(v, 2)
		for i := range v {
			v[i] /= size
		}
		got = append(got, v)
	}
	if n := independent(got); n != len(want) || len(got) != n || some != excited {
		t.Fatalf("%d motions of which %d independent, some excited %v, want %d, excited %v (condition %.3g)\n%v\n%s",
			len(got), n, some, len(want), excited, s.Cond, s.Words(), text)
	}
}

func furthest(mo Motion) (most float64) {
	for _, mv := range mo.Moves {
		most = max(most, r3.Norm(mv.V))
	}
	return most
}

package statics

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/fixtures/long"
)

// TestVerdictsOnLattices gives bodies whose supports depend on each other and asks
// for the verdict, the degree, the fixed unknowns and the motions that exact
// elimination has.
func TestVerdictsOnLattices(t *testing.T) {
	total := long.Of(300, 3000)
	rng := rand.New(rand.NewPCG(4, 1))
	counts := map[string]int{}
	for done := 0; done < total; {
		l := newLattice(rng)
		want := l.bodies*l.each() + rng.IntN(4) - 2
		for i := 0; len(l.system.names) < want; i++ {
			l.support(i % l.bodies)
		}
		loads := rng.IntN(4)
		for range loads {
			if rng.IntN(4) == 0 {
				l.load(latticeAct{body: rng.IntN(l.bodies), at: l.spot(2), f: l.spot(3)}, 10)
				continue
			}
			times := int64(1 + rng.IntN(20))
			for _, a := range pick(rng, l.spans...) {
				l.load(a, times)
			}
		}
		for b := range l.bodies { // every body has a force on it
			l.row("lines", `Z%d = { kind = "force", at = "P%d", components = "(%s) N" }`, b, 1+2*b, l.typed(spot{}))
		}
		exact := l.system.solve()
		if !exact.consistent && exact.unbalanced < measurable {
			continue
		}
		done++
		text := l.text()
		s := solveText(t, text)
		n := len(l.system.names)
		degree := n - exact.rank
		ok := exact.rank == s.Rank
		switch {
		case !exact.consistent:
			ok = ok && s.Verdict == NoEquilibrium
			counts["no equilibrium"]++
		case degree > 0:
			ok = ok && (s.Verdict == Indeterminate || s.Verdict == Inadmissible) && s.Degree == degree
			counts["indeterminate"]++
		default:
			ok = ok && (s.Verdict == Determinate || s.Verdict == Inadmissible)
			counts["determinate"]++
		}
		if !ok || len(s.X) != n {
			t.Fatalf("%v of rank %d, degree %d; want rank %d, degree %d, consistent %v (condition %.3g)\n%v\n%s",
				s.Verdict, s.Rank, s.Degree, exact.rank, degree, exact.consistent, s.Cond, s.Words(), text)
		}
		for _, x := range s.X {
			if exact.consistent && x.Fixed != exact.fixed[x.Name] {
				t.Fatalf("%s is fixed: %v, want %v (condition %.3g)\n%v\n%s", x.Name, x.Fixed, exact.fixed[x.Name], s.Cond, s.Words(), text)
			}
		}
		l.checkMotions(t, s, exact, text)
		counts[fmt.Sprint(len(exact.left), " motions")]++
	}
	t.Log(counts)
	for _, k := range []string{"determinate", "indeterminate", "no equilibrium", "0 motions", "1 motions", "2 motions"} {
		if counts[k] < total/20 {
			t.Errorf("hardly any of %s", k)
		}
	}
}

func (l *lattice) checkMotions(t *testing.T, s *Solution, want exactAnswer, text string) {
	t.Helper()
	var got [][]float64
	excited := false
	for _, mo := range s.Motions {
		excited = excited || mo.Excited
		v := make([]float64, l.system.rows)
		for _, mv := range mo.Moves {
			home := r3.Sub(mv.V, r3.Cross(mv.W, s.Problem.Bodies[mv.Body].About)) // the velocity at the origin
			six := []float64{home.X, home.Y, home.Z, mv.W.X, mv.W.Y, mv.W.Z}
			if l.planar {
				six = []float64{home.X, home.Y, mv.W.Z}
			}
			copy(v[mv.Body*len(six):], six)
		}
		size := floats.Norm(v, 2)
		for i := range v {
			v[i] /= size
		}
		rest := append([]float64{}, v...)
		for _, b := range want.left {
			along := dot(b, v)
			for i := range rest {
				rest[i] -= along * b[i]
			}
		}
		if !(floats.Norm(rest, 2) < 1e-7) {
			t.Fatalf("%s: it is resisted\n%s", s.MotionWords(mo), text)
		}
		got = append(got, v)
	}
	if n := independent(got); n != len(want.left) || len(got) != n || excited == want.consistent {
		t.Fatalf("%d motions of which %d independent, excited %v; want %d\n%v\n%s", len(got), n, excited, len(want.left), s.Words(), text)
	}
}

package statics

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mat"

	"trivet/fixtures/long"
	"trivet/mechanics/problem"
)

// frames is a planar structure of rigid bodies, each on pins, rollers and links to
// earlier ones or to the ground: 3·bodies equations, and about as many unknowns.
func frames(rng *rand.Rand, bodies, fewer int) string {
	var points, lines, joints strings.Builder
	points.WriteString("plane = \"xy\"\n[points]\n")
	for k := range 4 {
		fmt.Fprintf(&points, "G%d = \"%d, %d\"\n", k, 10*k, -3-k%2)
	}
	line := 0
	for b := range bodies {
		x, y := float64(rng.IntN(400))/10, float64(rng.IntN(400))/10
		for k, off := range [3][2]float64{{0, 0}, {3, 1}, {1, 4}} {
			on := fmt.Sprintf("B%d", b)
			if b > 0 && k == 0 && rng.IntN(2) == 0 { // a pin on an earlier body, or on the ground
				on += fmt.Sprintf(" B%d", rng.IntN(b))
			}
			fmt.Fprintf(&points, "P%d_%d = { at = \"%g, %g\", on = %q }\n", b, k, x+off[0], y+off[1], on)
		}
		fmt.Fprintf(&joints, "P%d_0 = { kind = \"pin\" }\n", b)
		if fewer > 0 && rng.IntN(bodies) < fewer {
			continue
		}
		to := fmt.Sprintf("G%d", rng.IntN(4))
		if b > 0 && rng.IntN(3) > 0 {
			to = fmt.Sprintf("P%d_%d", rng.IntN(b), 1+rng.IntN(2))
		}
		fmt.Fprintf(&lines, "S%d = { kind = \"link\", path = \"P%d_%d %s\" }\n", line, b, 1+rng.IntN(2), to)
		line++
		if fewer > 0 && rng.IntN(bodies) < fewer {
			fmt.Fprintf(&lines, "S%d = { kind = \"link\", path = \"P%d_1 G%d\" }\n", line, b, rng.IntN(4))
			line++
		}
	}
	for k := range 1 + bodies/6 {
		fmt.Fprintf(&lines, "L%d = { kind = \"force\", at = \"P%d_2\", components = \"50 N, -120 N\" }\n", k, rng.IntN(bodies))
	}
	return points.String() + "[lines]\n" + lines.String() + "[joints]\n" + joints.String()
}

// A large structure has the verdict, the rank, and the values that the singular values
// of its whole matrix give.
func TestLargeStructuresAgainstSingularValues(t *testing.T) {
	verdicts := map[string]int{}
	for seed := range uint64(long.Of(100, 400)) {
		rng := rand.New(rand.NewPCG(seed, 5))
		var text string
		switch seed % 4 {
		case 0:
			text = knit(rng, true, 20+rng.IntN(40), rng.IntN(8)).text()
		case 1:
			text = knit(rng, false, 15+rng.IntN(20), rng.IntN(5)).text()
		case 2:
			text = frames(rng, 10+rng.IntN(15), rng.IntN(3))
		default:
			tr := knit(rng, true, 20+rng.IntN(30), rng.IntN(3))
			for range rng.IntN(4) {
				tr.bar(3+rng.IntN(len(tr.at)-3), 3+rng.IntN(len(tr.at)-3))
			}
			text = tr.distinct().text()
		}
		s := Solve(readText(t, text))
		if s.Cond > 1e9 || nearTolerance(s) {
			continue // a geometry that even singular values only just tell
		}
		verdicts[s.Verdict.String()]++
		againstSingularValues(t, fmt.Sprintf("seed %d", seed), s)
	}
	t.Log(verdicts)
	for _, v := range []Verdict{Determinate, Indeterminate, NoEquilibrium} {
		if verdicts[v.String()] < long.Of(5, 20) {
			t.Errorf("only %d problems are %v", verdicts[v.String()], v)
		}
	}
}

// nearTolerance tells that rounding decides what is free.
func nearTolerance(s *Solution) bool { return blurOf(s) > 1e-9 }

func againstSingularValues(t *testing.T, name string, s *Solution) {
	t.Helper()
	scaled, loads, scale := s.System.scaled()
	a, b := scaled.Dense(), mat.NewVecDense(len(loads), loads)
	var svd mat.SVD
	if !svd.Factorize(a, mat.SVDFull) {
		t.Fatal("no singular values")
	}
	sigma, rank := svd.Values(nil), 0
	for rank < len(sigma) && sigma[rank] > rankTol*sigma[0] {
		rank++
	}
	var u, v mat.Dense
	svd.UTo(&u)
	svd.VTo(&v)
	unbalanced := 0.0 // of the loads, along what nothing resists
	for k := rank; k < len(s.System.Rows); k++ {
		unbalanced = max(unbalanced, math.Abs(mat.Dot(u.ColView(k), b)))
	}
	verdict := Determinate
	switch {
	case unbalanced > loadTol*s.load:
		verdict = NoEquilibrium
	case rank < len(s.X):
		verdict = Indeterminate
	}
	if s.Rank != rank || s.Verdict != verdict {
		t.Errorf("%s: %v of rank %d, want %v of rank %d", name, s.Words(), s.Rank, verdict, rank)
	}
	if s.Verdict == NoEquilibrium {
		return
	}
	tol := 1e-10 * max(1, s.Cond*1e-4) * (s.scale() + 1)
	for j, x := range s.X {
		free, want := 0.0, 0.0
		for k := rank; k < len(s.X); k++ {
			free = math.Hypot(free, v.At(j, k))
		}
		for k := range rank {
			want += v.At(j, k) * mat.Dot(u.ColView(k), b) / sigma[k]
		}
		if fixed := free <= max(fixedTol, blurOf(s)); x.Fixed != fixed || fixed && math.Abs(x.Value-want/scale[j]) > tol {
			t.Errorf("%s: %+v, want %v, fixed %v, condition %.1g", name, x, want/scale[j], fixed, s.Cond)
		}
	}
}

// distinct drops bars between a node and itself.
func (t *truss) distinct() *truss {
	kept := t.bars[:0]
	for _, e := range t.bars {
		if e[0] != e[1] {
			kept = append(kept, e)
		}
	}
	t.bars = kept
	return t
}

// Trusses of known form, whole, with a bar taken out and with one put in.
func TestTrussesOfKnownForm(t *testing.T) {
	for name, make := range map[string]func() *truss{
		"warren": func() *truss { return warren(20) },
		"pratt":  func() *truss { return pratt(20) },
		"tower":  func() *truss { return tower(8) },
	} {
		whole, less, more := make(), make(), make()
		less.bars = append(less.bars[:30], less.bars[31:]...)
		more.bar(4, 25)
		for what, tr := range map[string]*truss{"whole": whole, "with a bar less": less, "with a bar more": more} {
			s := Solve(readText(t, tr.text()))
			againstSingularValues(t, name+" "+what, s)
			want := map[string]Verdict{"whole": Determinate, "with a bar less": NoEquilibrium, "with a bar more": Indeterminate}[what]
			if s.Verdict != want {
				t.Errorf("%s %s: %v", name, what, s.Words())
			}
			if what == "whole" && !s.Well() {
				t.Errorf("%s: %v", name, s.Failures())
			}
		}
	}
}

// The blocks of a solution can be solved one after the other, by hand: each has as
// many rows as columns and needs no later one.
func TestBlocksAreAnOrderOfSolution(t *testing.T) {
	for name, text := range map[string]string{
		"tower": tower(8).text(), "small tower": tower(2).text(), "pratt": pratt(30).text(),
		"knit": knit(rand.New(rand.NewPCG(7, 7)), true, 40, 0).text(),
		"boom": `[points]
O = { at = "0, 0, 0", on = "boom" }
T = { at = "0, 6, 0", on = "boom" }
A = "3, 0, 4"
B = "-3, 0, 4"
[lines]
T1 = { kind = "cable", path = "T A" }
T2 = { kind = "cable", path = "T B" }
W = { kind = "force", at = "T", along = "-z", magnitude = "900 N" }
[joints]
O = { kind = "ball-and-socket" }
`,
	} {
		s := Solve(readText(t, text))
		blocks := s.Blocks()
		solved, count := map[int]bool{}, 0
		for _, b := range blocks {
			if len(b.Rows) != len(b.Cols) {
				t.Errorf("%s: %d rows for %d columns", name, len(b.Rows), len(b.Cols))
			}
			for _, j := range b.Cols {
				solved[j] = true
				count++
			}
			for _, i := range b.Rows {
				for j := range s.X {
					if math.Abs(s.System.At(i, j)) > 1e-9 && !solved[j] {
						t.Errorf("%s: row %d needs %s, which is not solved yet", name, i, s.X[j].Name)
					}
				}
			}
		}
		if len(solved) != len(s.X) || count != len(s.X) {
			t.Errorf("%s: %d unknowns of %d", name, len(solved), len(s.X))
		}
		if name == "tower" && len(blocks) < 8 {
			t.Errorf("%s: %d blocks only", name, len(blocks))
		}
	}
	if b := Solve(&problem.Problem{}).Blocks(); b != nil {
		t.Errorf("nothing has blocks %v", b)
	}
}

// blurOf is the largest blur of the parts.
func blurOf(s *Solution) float64 {
	blur := 0.0
	for k := range s.parts {
		blur = max(blur, s.parts[k].blur)
	}
	return blur
}

// scale is the largest force of all.
func (s *Solution) scale() float64 {
	size := 0.0
	for k := range s.parts {
		size = max(size, s.parts[k].size)
	}
	return size
}

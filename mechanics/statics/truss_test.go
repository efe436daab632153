package statics

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
)

// truss is a pin-jointed truss as the rows of a sheet: particles joined by links.
type truss struct {
	planar bool
	at     [][3]float64
	ground []bool
	bars   [][2]int
	joints []string // rows of [joints]
	loads  []string // rows of [lines] beside the bars
}

func (t *truss) node(ground bool, x, y, z float64) int {
	t.at, t.ground = append(t.at, [3]float64{x, y, z}), append(t.ground, ground)
	return len(t.at) - 1
}

func (t *truss) bar(a, b int) { t.bars = append(t.bars, [2]int{a, b}) }

func (t *truss) pin(n int) {
	t.joints = append(t.joints, fmt.Sprintf("N%d = { kind = \"pin\" }", n))
}

func (t *truss) roller(n int, normal string) {
	t.joints = append(t.joints, fmt.Sprintf("N%d = { kind = \"rocker\", normal = %q }", n, normal))
}

// load hangs a known force on a node; components are typed as they are given.
func (t *truss) load(n int, components string) {
	t.loads = append(t.loads, fmt.Sprintf("L%d = { kind = \"force\", at = \"N%d\", components = \"%s\" }", len(t.loads), n, components))
}

func (t *truss) text() string {
	var b strings.Builder
	if t.planar {
		b.WriteString("plane = \"xy\"\n")
	}
	b.WriteString("[points]\n")
	for i, p := range t.at {
		place := fmt.Sprintf("%g, %g", p[0], p[1])
		if !t.planar {
			place += fmt.Sprintf(", %g", p[2])
		}
		if t.ground[i] {
			fmt.Fprintf(&b, "N%d = %q\n", i, place)
		} else {
			fmt.Fprintf(&b, "N%d = { at = %q, on = \"particle\" }\n", i, place)
		}
	}
	b.WriteString("[lines]\n")
	for i, e := range t.bars {
		fmt.Fprintf(&b, "S%d = { kind = \"link\", path = \"N%d N%d\" }\n", i, e[0], e[1])
	}
	for _, l := range t.loads {
		b.WriteString(l + "\n")
	}
	if len(t.joints) > 0 {
		b.WriteString("[joints]\n" + strings.Join(t.joints, "\n") + "\n")
	}
	return b.String()
}

// warren is a planar Warren truss on a pin and a roller: 4·panels + 2 unknowns.
func warren(panels int) *truss {
	t := &truss{planar: true}
	for k := range panels + 1 {
		t.node(false, 4*float64(k), 0, 0)
	}
	for k := range panels {
		t.node(false, 4*float64(k)+2, 3, 0)
	}
	top := func(k int) int { return panels + 1 + k }
	for k := range panels {
		t.bar(k, k+1)
		t.bar(k, top(k))
		t.bar(top(k), k+1)
		if k > 0 {
			t.bar(top(k-1), top(k))
		}
	}
	t.pin(0)
	t.roller(panels, "+y")
	for k := 5; k < panels; k += 10 {
		t.load(k, "0, -1037 N")
	}
	t.load(panels/2, "200 N, -1 kN")
	return t
}

// pratt is a planar Pratt truss, uprights and diagonals falling towards the
// middle, on a pin and a roller: 4·panels + 4 unknowns.
func pratt(panels int) *truss {
	t := &truss{planar: true}
	for k := range panels + 1 {
		t.node(false, 3*float64(k), 0, 0)
	}
	for k := range panels + 1 {
		t.node(false, 3*float64(k), 4, 0)
	}
	top := func(k int) int { return panels + 1 + k }
	for k := range panels + 1 {
		t.bar(k, top(k))
		if k == panels {
			break
		}
		t.bar(k, k+1)
		t.bar(top(k), top(k+1))
		if 2*k < panels {
			t.bar(top(k), k+1)
		} else {
			t.bar(k, top(k+1))
		}
	}
	t.pin(0)
	t.roller(panels, "+y")
	for k := 5; k < panels; k += 10 {
		t.load(k, "0, -1037 N")
	}
	t.load(panels/2, "200 N, -1 kN")
	return t
}

// tower is a space truss of three legs on the ground: 9·levels unknowns.
func tower(levels int) *truss {
	t := &truss{}
	corner := [3][2]float64{{2, 0}, {-1, 1.75}, {-1, -1.75}}
	for l := range levels + 1 {
		for _, c := range corner {
			t.node(l == 0, c[0], c[1], 2*float64(l))
		}
	}
	for l := 1; l <= levels; l++ {
		for k := range 3 {
			t.bar(3*l+k, 3*l-3+k)
			t.bar(3*l+k, 3*l-3+(k+1)%3)
			t.bar(3*l+k, 3*l+(k+1)%3)
		}
	}
	for l := 10; l < levels; l += 10 {
		t.load(3*l, "10 N, 20 N, -100 N")
	}
	t.load(3*levels, "100 N, 50 N, -1 kN")
	return t
}

// knit is a truss with no pattern: each node is held to two (three in space)
// earlier ones or to the ground; a share of the bars is then moved elsewhere,
// which knots the nodes together and may leave some of them loose.
func knit(rng *rand.Rand, planar bool, nodes, moved int) *truss {
	t := &truss{planar: planar}
	dim := 3
	if planar {
		dim = 2
	}
	z := func() float64 {
		if planar {
			return 0
		}
		return float64(rng.IntN(40))
	}
	for range dim + 1 {
		t.node(true, float64(rng.IntN(40)), float64(rng.IntN(40)), z())
	}
	used := map[[3]float64]bool{}
	for range nodes {
		at := [3]float64{rng.Float64() * 40, rng.Float64() * 40, z()}
		for used[at] {
			at[0]++
		}
		used[at] = true
		n := t.node(false, at[0], at[1], at[2])
		picked := map[int]bool{}
		for len(picked) < dim {
			k := rng.IntN(n)
			if rng.IntN(4) > 0 {
				k = max(0, n-1-rng.IntN(6))
			}
			if !picked[k] && t.at[k] != at {
				picked[k] = true
				t.bar(n, k)
			}
		}
	}
	for range moved {
		e := rng.IntN(len(t.bars))
		if b := dim + 1 + rng.IntN(nodes); b != t.bars[e][0] {
			t.bars[e][1] = b // its own node keeps it, so that none is left without a force
		}
	}
	for range 1 + nodes/10 {
		c := "30 N, -70 N"
		if !planar {
			c = "30 N, -70 N, 20 N"
		}
		t.load(dim+1+rng.IntN(nodes), c)
	}
	return t
}

func readText(t testing.TB, text string) *problem.Problem {
	t.Helper()
	sh, err := sheet.Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	p, errs := problem.Read(sh)
	if len(errs) > 0 {
		t.Fatalf("%v at %v", errs[0], errs[0].Ref)
	}
	return p
}

// A large truss has the verdict that its form gives: without a bar that the loads need it is a
// mechanism, with one more it is indeterminate, and with both a bar more does not help elsewhere.
func TestLargeTrussesOfKnownForm(t *testing.T) {
	whole := len(warren(500).bars) + 3
	less, more, both := warren(500), warren(500), warren(500)
	for _, tr := range []*truss{less, both} {
		k := len(tr.bars) / 2
		tr.bars = append(tr.bars[:k], tr.bars[k+1:]...)
	}
	more.bar(4, 25)
	both.bar(4, 9)
	for _, of := range []struct {
		tr      *truss
		rank    int
		verdict Verdict
	}{{less, whole - 1, NoEquilibrium}, {more, whole, Indeterminate}, {both, whole - 1, NoEquilibrium}} {
		s := Solve(readText(t, of.tr.text()))
		if s.Verdict != of.verdict || s.Rank != of.rank {
			t.Errorf("%v of rank %d, want %v of rank %d", s.Verdict, s.Rank, of.verdict, of.rank)
		}
	}
}

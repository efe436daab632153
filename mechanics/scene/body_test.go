package scene

import (
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
)

// What leaves a place is found among all lines, wherever they lie: those at it and those that
// pass through it.
func TestLeavingFindsEveryLine(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 11))
	for _, n := range []int{1, 5, 400} {
		at := func() r3.Vec { // of a lattice, so that lines meet
			return r3.Vec{X: float64(rng.IntN(9)), Y: float64(rng.IntN(9)), Z: float64(rng.IntN(3))}
		}
		p := &problem.Problem{Lines: make([]problem.Line, n)}
		for _, corner := range []r3.Vec{{}, {X: 9, Y: 9, Z: 3}} {
			q := problem.Point{At: corner}
			q.OK = true
			p.Points = append(p.Points, q)
		}
		b := newBuilder(p, nil, Options{})
		var bars [][2]r3.Vec
		for range n {
			bar := [2]r3.Vec{at(), at()}
			bars = append(bars, bar)
			b.add(Thing{Kind: Bar, At: bar[:]})
		}
		for range 200 {
			q := at()
			var want []r3.Vec
			for _, bar := range bars {
				if bar[0] != bar[1] {
					want = append(want, b.ways(q, bar[0], bar[1])...)
				}
			}
			if got := b.leaving(q, (*Thing).straight); !slices.Equal(got, want) {
				t.Fatalf("of %d lines these leave %v: %v, want %v", n, q, got, want)
			}
		}
	}
}

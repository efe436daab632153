package plate

import (
	"math"

	"trivet/mechanics/ink"
)

// grid finds what lies near a place without looking at everything: the paper in
// squares, and for each what its bounds touch. A large truss has thousands of
// lines, and each label tries hundreds of places.
type grid map[[2]int][]int

const squareSide = 12.0 // a square's side in points: about a short label

func cells(b ink.Box) (lowX, lowY, highX, highY int) {
	at := func(x float64) int { return int(math.Floor(math.Max(-1e6, math.Min(1e6, x)) / squareSide)) }
	return at(b.Low.X), at(b.Low.Y), at(b.High.X), at(b.High.Y)
}

func (g grid) put(i int, b ink.Box) {
	lx, ly, hx, hy := cells(b)
	for x := lx; x <= hx; x++ {
		for y := ly; y <= hy; y++ {
			g[[2]int{x, y}] = append(g[[2]int{x, y}], i)
		}
	}
}

// putLine notes a segment in the squares that it passes, one step after the
// other rather than by its bounds: a long diagonal touches few of those.
func (g grid) putLine(i int, a, b ink.Vec) {
	n := int(math.Ceil(b.Sub(a).Len()/squareSide)) + 1
	if n > 10000 || n < 1 {
		return // nothing on paper is this long
	}
	for k := range n {
		p, q := a.Add(b.Sub(a).Scale(float64(k)/float64(n))), a.Add(b.Sub(a).Scale(float64(k+1)/float64(n)))
		g.put(i, ink.Box{Low: p, High: p}.With(q))
	}
}

// near calls f with each thing whose squares a box touches, some more than once,
// until f says that it is enough.
func (g grid) near(b ink.Box, f func(i int) bool) {
	lx, ly, hx, hy := cells(b)
	for x := lx; x <= hx; x++ {
		for y := ly; y <= hy; y++ {
			for _, i := range g[[2]int{x, y}] {
				if !f(i) {
					return
				}
			}
		}
	}
}

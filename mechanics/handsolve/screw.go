package handsolve

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/linear"
)

// A twist is a small motion of a body, (v, ω·length), whose work with a wrench
// (F, M/length) is F·v + M·ω. An equation that contains a single unknown is the
// work of a twist that the other unknowns do no work on: a row of the inverse
// of the body's matrix. Where its pitch v·ω/ω² is zero it is a moment about an
// axis, where ω is zero a sum of forces.

// The bounds by which twists are judged.
const (
	// rankTol is the part of a wrench, of length one, that others must leave of it
	// for it to count as independent of them.
	rankTol = 1e-9
	// pitchTol is the pitch, relative to the length of the problem, below which a
	// twist turns about an axis: a force along the axis that is still in the
	// equation would be as small.
	pitchTol = 1e-11
	// freedoms is how many a body has in space.
	freedoms = 6
)

// screw tells that on a single body each of these symbols would be alone only
// on a screw of some pitch: there is neither a direction nor an axis for it.
func (f *finder) screw(g *group, symbols []int) bool {
	left := f.left(g)
	if f.p.Planar || len(g.bodies) != 1 || !g.solid || len(left) != freedoms {
		return false
	}
	wrenches := mat.NewDense(freedoms, freedoms, nil)
	for k, n := range left {
		m := r3.Scale(1/f.length, n.m)
		wrenches.SetRow(k, linear.Unit([]float64{n.f.X, n.f.Y, n.f.Z, m.X, m.Y, m.Z}))
	}
	var twists mat.Dense
	if twists.Inverse(wrenches) != nil {
		return false
	}
	return !slices.ContainsFunc(symbols, func(symbol int) bool {
		k := slices.IndexFunc(left, func(n *net) bool { return n.Symbol == symbol })
		return k >= 0 && plain(mat.Col(nil, k, &twists))
	})
}

// plain tells that a twist turns about an axis or moves without turning, as far as can be seen.
func plain(t []float64) bool {
	v, w := r3.Vec{X: t[0], Y: t[1], Z: t[2]}, r3.Vec{X: t[3], Y: t[4], Z: t[5]}
	if floats.Norm(t, 2) >= 1/rankTol || r3.Norm(w) <= pitchTol*r3.Norm(v) {
		return true
	}
	return math.Abs(r3.Dot(v, w)) <= pitchTol*r3.Dot(w, w)
}

package handsolve

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
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

// halves are the velocity and the angular velocity of a twist.
func halves(t []float64) (v, w r3.Vec) {
	return r3.Vec{X: t[0], Y: t[1], Z: t[2]}, r3.Vec{X: t[3], Y: t[4], Z: t[5]}
}

// wrench is a net of length one.
func (f *finder) wrench(n *net) []float64 {
	m := r3.Scale(1/f.length, n.m)
	return linear.Unit([]float64{n.f.X, n.f.Y, n.f.Z, m.X, m.Y, m.Z})
}

// twists span those that only the wrench k of these does work on.
func (f *finder) twists(left []*net, k int) [][]float64 {
	others := &linear.Matrix{Cols: freedoms}
	for i, n := range left {
		if i == k {
			continue
		}
		var row []linear.Term
		for j, x := range f.wrench(n) {
			row = append(row, linear.Term{Col: j, Value: x})
		}
		others.Rows = append(others.Rows, row)
	}
	return linear.NewGeneral(others, rankTol).Right
}

// exactAxis looks for an axis, or a direction, that no name helps to find.
func (f *finder) exactAxis() *found {
	if f.p.Planar {
		return nil
	}
	var best *found
	for _, g := range f.groups {
		left := f.left(g)
		if !g.rigid || len(left) < 2 || len(left) > freedoms {
			continue
		}
		for k, n := range left {
			for _, c := range f.axesAlone(left, k) {
				if f.alone(&c, left) != n {
					continue
				}
				if cost := f.cost(g, &c); best == nil || cost < best.cost {
					best = &found{g, c, n, cost}
				}
			}
		}
	}
	return best
}

// axesAlone are the axes and directions among the twists that contain the symbol k alone.
func (f *finder) axesAlone(left []*net, k int) (out []candidate) {
	span := f.twists(left, k)
	all := slices.Clone(span)
	for i, a := range span {
		for _, b := range span[i+1:] {
			all = append(all, pitchless(a, b)...)
		}
	}
	for _, t := range all {
		if c, ok := f.plain(t); ok {
			out = append(out, c)
		}
	}
	return out
}

// pitchless are the twists a cos θ + b sin θ that have no pitch: the roots of
//
//	(va c + vb s)·(ωa c + ωb s) = 0
func pitchless(a, b []float64) (out [][]float64) {
	va, wa := halves(a)
	vb, wb := halves(b)
	aa, bb := r3.Dot(va, wa), r3.Dot(vb, wb)
	ab := r3.Dot(va, wb) + r3.Dot(vb, wa)
	// aa c² + ab c s + bb s² = (aa+bb)/2 + (aa-bb)/2 cos 2θ + ab/2 sin 2θ
	mean, x, y := (aa+bb)/2, (aa-bb)/2, ab/2
	size := math.Hypot(x, y)
	if size < math.Abs(mean) || size == 0 {
		return nil
	}
	phase, half := math.Atan2(y, x), math.Acos(-mean/size)
	for _, double := range []float64{phase + half, phase - half} {
		s, c := math.Sincos(double / 2)
		t := make([]float64, freedoms)
		floats.AddScaled(t, c, a)
		floats.AddScaled(t, s, b)
		out = append(out, t)
	}
	return out
}

// plain is a twist as a moment about an axis or a sum of forces; false where it
// is a screw of some pitch.
func (f *finder) plain(t []float64) (candidate, bool) {
	v, w := halves(t)
	if r3.Norm(w) <= pitchTol*r3.Norm(v) {
		u, ok := unit(v, 1)
		return candidate{along: u, named: perp(), cost: exactCost}, ok
	}
	// F·v + M·ω is the moment about the axis through q where v = q × ω, so q = ω × v / ω².
	ww := r3.Dot(w, w)
	at, along := r3.Scale(f.length/ww, r3.Cross(w, v)), r3.Scale(1/math.Sqrt(ww), w)
	c := candidate{moment: true, at: at, along: along, named: perp(), cost: exactCost}
	if math.Abs(r3.Dot(v, w)) > pitchTol*ww || !finite(r3.Norm(c.at)) {
		return candidate{}, false
	}
	if i := f.pointOn(c.at, c.along); i >= 0 {
		c.at, c.named.Point = f.at[i], i
	}
	return c, true
}

// screw tells that on a single body each of these symbols would be alone only
// on a screw of some pitch: there is neither a direction nor an axis for it.
func (f *finder) screw(g *group, symbols []int) bool {
	left := f.left(g)
	if f.p.Planar || len(g.bodies) != 1 || !g.solid || len(left) < 2 || len(left) > freedoms {
		return false
	}
	some := false
	for k, n := range left {
		if !slices.Contains(symbols, n.Symbol) {
			continue
		}
		span := f.twists(left, k)
		if len(span) != 1 || math.Abs(floats.Dot(f.wrench(n), span[0])) <= rankTol {
			return false
		}
		if _, plain := f.plain(span[0]); plain {
			return false
		}
		some = true
	}
	return some
}

package handsolve

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// twist is a small motion of a body, (v, ω·length), whose work with a wrench
// (F, M/length) is F·v + M·ω. An equation that contains a single unknown is the
// work of a twist that the other unknowns do no work on: a row of the inverse
// of the body's matrix. Where its pitch v·ω/ω² is zero it is a moment about an
// axis, where ω is zero a sum of forces.
type twist [6]float64

// The bounds by which twists are judged.
const (
	// rankTol is the part of a wrench, of length one, that others must leave of it
	// for it to count as independent of them.
	rankTol = 1e-9
	// pitchTol is the pitch, relative to the length of the problem, below which a
	// twist turns about an axis: a force along the axis that is still in the
	// equation would be as small.
	pitchTol = 1e-11
)

func (t *twist) v() r3.Vec { return r3.Vec{X: t[0], Y: t[1], Z: t[2]} }
func (t *twist) w() r3.Vec { return r3.Vec{X: t[3], Y: t[4], Z: t[5]} }

func (t *twist) dot(u *twist) float64 {
	sum := 0.0
	for i := range t {
		sum += t[i] * u[i]
	}
	return sum
}

func (t *twist) sub(u *twist, times float64) {
	for i := range t {
		t[i] -= times * u[i]
	}
}

func (t *twist) scale(by float64) {
	for i := range t {
		t[i] *= by
	}
}

// wrench is a net of length one.
func (f *finder) wrench(n *net) twist {
	m := r3.Scale(1/f.length, n.m)
	t := twist{n.f.X, n.f.Y, n.f.Z, m.X, m.Y, m.Z}
	t.scale(1 / math.Sqrt(t.dot(&t)))
	return t
}

// orthogonalize takes out of t what lies along a basis, twice so that rounding goes as well.
func (t *twist) orthogonalize(basis []twist) float64 {
	for range 2 {
		for i := range basis {
			t.sub(&basis[i], t.dot(&basis[i]))
		}
	}
	return math.Sqrt(t.dot(t))
}

// complement spans the twists that do no work with any of the wrenches.
func complement(wrenches []twist) []twist {
	var basis []twist
	for _, w := range wrenches {
		if size := w.orthogonalize(basis); size > rankTol {
			w.scale(1 / size)
			basis = append(basis, w)
		}
	}
	rank := len(basis)
	for len(basis) < 6 {
		var best twist
		largest := 0.0
		for k := range 6 {
			var e twist
			e[k] = 1
			if size := e.orthogonalize(basis); size > largest {
				largest, best = size, e
			}
		}
		best.scale(1 / largest)
		basis = append(basis, best)
	}
	return basis[rank:]
}

// exactAxis looks for an axis, or a direction, that no name helps to find.
func (f *finder) exactAxis() *found {
	if f.p.Planar {
		return nil
	}
	var best *found
	for _, g := range f.groups {
		left := f.left(g)
		if !g.rigid || len(left) < 2 || len(left) > 6 {
			continue
		}
		for k, n := range left {
			if !f.fixed(n.symbol) {
				continue
			}
			for _, c := range f.axesAlone(left, k) {
				if f.alone(&c, left) != n {
					continue
				}
				if cost := f.cost(g, &c, 1); best == nil || cost < best.cost {
					best = &found{g, c, n, cost}
				}
			}
		}
	}
	return best
}

// free spans the twists that only the wrench k of these does work on.
func (f *finder) free(left []*net, k int) []twist {
	var others []twist
	for i, n := range left {
		if i != k {
			others = append(others, f.wrench(n))
		}
	}
	return complement(others)
}

// axesAlone are the axes and directions among the twists that contain the symbol k alone.
func (f *finder) axesAlone(left []*net, k int) (out []candidate) {
	put := func(t twist) {
		if c, ok := f.plain(&t); ok {
			out = append(out, c)
		}
	}
	span := f.free(left, k)
	for i, a := range span {
		put(a)
		for _, b := range span[i+1:] {
			for _, t := range pitchless(&a, &b) {
				put(t)
			}
		}
	}
	return out
}

// pitchless are the twists a cos θ + b sin θ that have no pitch: the roots of
//
//	(va c + vb s)·(ωa c + ωb s) = 0
func pitchless(a, b *twist) (out []twist) {
	aa, bb := r3.Dot(a.v(), a.w()), r3.Dot(b.v(), b.w())
	ab := r3.Dot(a.v(), b.w()) + r3.Dot(b.v(), a.w())
	// aa c² + ab c s + bb s² = (aa+bb)/2 + (aa-bb)/2 cos 2θ + ab/2 sin 2θ
	mean, x, y := (aa+bb)/2, (aa-bb)/2, ab/2
	size := math.Hypot(x, y)
	if size < math.Abs(mean) || size == 0 {
		return nil
	}
	phase, half := math.Atan2(y, x), math.Acos(-mean/size)
	for _, double := range []float64{phase + half, phase - half} {
		s, c := math.Sincos(double / 2)
		t := *a
		t.scale(c)
		t.sub(b, -s)
		out = append(out, t)
	}
	return out
}

// plain is a twist as a moment about an axis or a sum of forces; false where it
// is a screw of some pitch.
func (f *finder) plain(t *twist) (candidate, bool) {
	v, w := t.v(), t.w()
	if r3.Norm(w) <= pitchTol*r3.Norm(v) {
		u, ok := unit(v, 1)
		return candidate{along: u, named: named(), cost: exactCost}, ok
	}
	ww := r3.Dot(w, w)
	if math.Abs(r3.Dot(v, w)) > pitchTol*ww {
		return candidate{}, false
	}
	// F·v + M·ω is the moment about the axis through q where v = q × ω, so q = ω × v / ω².
	at := r3.Scale(f.length/ww, r3.Cross(w, v))
	if !finite(r3.Norm(at)) {
		return candidate{}, false
	}
	c := candidate{moment: true, at: at, along: r3.Scale(1/math.Sqrt(ww), w), named: named(), cost: exactCost}
	if i := f.pointOn(at, c.along); i >= 0 {
		c.at, c.named.Point = f.at[i], i
	}
	return c, true
}

// pointOn is a named point on an axis, or -1.
func (f *finder) pointOn(at, along r3.Vec) int {
	for i := range f.at {
		if f.p.Points[i].OK && r3.Norm(r3.Cross(r3.Sub(f.at[i], at), along)) <= sameTol*f.length {
			return i
		}
	}
	return -1
}

// screw tells that on a single body each of these symbols would be alone only
// on a screw of some pitch: there is neither a direction nor an axis for it.
func (f *finder) screw(g *group, symbols []int) bool {
	left := f.left(g)
	if f.p.Planar || len(g.bodies) != 1 || !g.solid || len(left) > 6 {
		return false
	}
	some := false
	for k, n := range left {
		for _, symbol := range symbols {
			if n.symbol != symbol {
				continue
			}
			span := f.free(left, k)
			w := f.wrench(n)
			if len(span) != 1 || math.Abs(w.dot(&span[0])) <= rankTol {
				return false
			}
			if _, plain := f.plain(&span[0]); plain {
				return false
			}
			some = true
		}
	}
	return some
}

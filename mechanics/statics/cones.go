package statics

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"

	"trivet/mechanics/linear"
)

// The bounds of the work on friction in space. Forces are in units of the largest load.
const (
	// maxRounds is how many times planes are added at most. From a good guess
	// of where a force lies one round is enough; more are for cones that meet at an
	// edge.
	maxRounds = 40
	// coneTol is how far a friction force in space may lie beyond its cone: below
	// what nine figures show.
	coneTol = 1e-10
	// sameAngle is how near the angles of two planes may be before they count as
	// one: a plane that is off by so much is off the cone by half its square, 1e-13.
	sameAngle = 5e-7
	// coneGap is how far the least value over planes around the cones and that of a
	// point inside them may be apart, relative to their size: eight figures, or two
	// more than are shown where that is less.
	coneGap = 1e-8
	// barrierGap is what the barrier method leaves of the cost, and barrierGrowth
	// the factor by which the weight of the cost grows.
	barrierGap    = 1e-11
	barrierGrowth = 10
	// maxNewton bounds the steps of the barrier method: it takes some 70.
	maxNewton = 400
	// guessBall is how far from the middle a guess is looked for, in the size of the
	// point inside.
	guessBall = 1e4
	// firstRidge is what is added to the curvature, relative to it, where rounding
	// leaves it without one.
	firstRidge = 1e-16
	// maxHalvings is how often a step that leaves the region is halved.
	maxHalvings = 30
)

// around are the angles of the planes that stand for a cone at first.
var around = floats.Span(make([]float64, 9), 0, 2*math.Pi)[:8]

// narrow is the width, in units of the load, below which a range is a single value.
// What a friction force is off its cone by, δ, is √(2δ) along it.
func (r *region) narrow() float64 {
	if !r.round() {
		return 0
	}
	return 2 * math.Sqrt(2*coneTol)
}

// touch adds to a cone the plane that touches it where the friction force of y points,
// and tells whether it is another than those that stand for it already.
func (b *bound) touch(y []float64) bool {
	angle := math.Atan2(b.b.at(y), b.a.at(y))
	for _, c := range b.cuts {
		if math.Abs(math.Remainder(c-angle, 2*math.Pi)) < sameAngle {
			return false
		}
	}
	b.cuts = append(b.cuts, angle)
	return true
}

// cut adds a plane to each cone that y lies beyond, or to all, and tells whether there is a new one.
func (r *region) cut(y []float64, all bool) bool {
	added := false
	for i := range r.bounds {
		if b := &r.bounds[i]; b.round && (all || b.beyond(y) > coneTol*max(1, math.Abs(b.u.at(y)))) {
			added = b.touch(y) || added
		}
	}
	return added
}

// copy is a region with the same bounds, to whose cones planes may be added.
func (r *region) copy() *region {
	out := &region{bounds: slices.Clone(r.bounds), degree: r.degree, gap: r.gap, work: r.work, inside: r.inside}
	for i := range out.bounds {
		out.bounds[i].cuts = slices.Clone(out.bounds[i].cuts)
	}
	return out
}

// leastInCones is least where there are cones. It has no end where the cost falls along
// a direction that no bound and no cone ends. Where it has one, the barrier method guesses the
// point, planes touch the cones there, and the programme over the planes proves from
// outside what the point shows from inside: the two values must agree.
func (r *region) leastInCones(cost []float64) least {
	out, unknown := r.copy(), least{Least: linear.Least{Extent: linear.Unknown}}
	if l := r.programme.Least(cost); l.Extent != linear.Found {
		ways := r.directions(cost)
		switch ways.admissible() {
		case linear.Found:
			return least{Least: linear.Least{Extent: linear.Endless}}
		case linear.Unknown:
			return unknown
		}
		for i := range out.bounds { // the planes that show that there is an end
			if b := &out.bounds[i]; b.round {
				b.cuts = append(b.cuts, ways.bounds[i].cuts[len(around):]...)
			}
		}
	}
	gap := func(value float64) float64 { return r.gap * max(1, math.Abs(value)) }
	best := out.guess(cost)
	known := best != nil
	if known {
		out.cut(best, true)
	}
	for range maxRounds {
		out.build()
		l := out.programme.Least(cost)
		if l.Extent != linear.Found {
			return unknown
		}
		if known && floats.Dot(cost, best)-l.Value <= gap(l.Value) {
			found := out.ended(l)
			found.Y = best
			return found
		}
		added := out.cut(l.Y, false)
		if at := out.towards(l.Y); !known || floats.Dot(cost, at) < floats.Dot(cost, best) {
			best, known = at, true
			added = out.cut(best, true) || added
		}
		if !added && floats.Dot(cost, best)-l.Value > gap(l.Value) {
			break // no plane is left that would tell more
		}
	}
	return unknown
}

// directions is the region of all directions along which no bound and no cone
// ends this one, and along which the cost falls.
func (r *region) directions(cost []float64) *region {
	out := r.copy()
	for i := range out.bounds {
		b := &out.bounds[i]
		b.u.c, b.a.c, b.b.c = 0, 0, 0
	}
	fall := linearForm{-1, floats.ScaleTo(make([]float64, r.degree), -1, cost)}
	out.bounds = append(out.bounds, bound{u: fall, by: Ended{Condition: -1}})
	return out
}

// towards is the last point on the way from the one inside to y that the cones let
// through.
func (r *region) towards(y []float64) []float64 {
	near, far := 0.0, 1.0
	at := make([]float64, r.degree)
	to := func(t float64) []float64 {
		for k := range at {
			at[k] = r.inside[k] + t*(y[k]-r.inside[k])
		}
		return at
	}
	for range 60 {
		t := (near + far) / 2
		if r.outside(to(t), true) <= coneTol {
			near = t
		} else {
			far = t
		}
	}
	return to(near)
}

// outside is how far y lies beyond the bounds, or beyond the cones alone, at most; less than
// nothing inside.
func (r *region) outside(y []float64, cones bool) float64 {
	far := math.Inf(-1)
	for i := range r.bounds {
		if b := &r.bounds[i]; b.round || !cones {
			far = max(far, b.beyond(y))
		}
	}
	return far
}

// guess is a point inside the region at which the cost is least, to some ten figures:
// Newton's method on
//
//	t·cost·y - Σ log(u² - a² - b²) - log(R² - |y|²)
//
// as t grows; the last term is for regions without an end. It is only a guess: what is
// made of it is proved by the programme.
// It is nil where the region has no inside.
func (r *region) guess(cost []float64) []float64 {
	y := slices.Clone(r.inside)
	if !(r.outside(y, false) < 0) {
		return nil
	}
	n := r.degree
	weight := float64(2*len(r.bounds) + 2)
	ball := guessBall * (1 + floats.Norm(y, 2))
	t := 1.0
	for range maxNewton {
		hess, grad := r.curvature(cost, y, t, ball)
		*r.work -= (4*len(r.bounds) + n) * n * n
		var chol mat.Cholesky
		step := mat.NewVecDense(n, nil)
		solved := chol.Factorize(hess)
		for ridge := firstRidge * mat.Trace(hess); !solved && ridge < mat.Trace(hess); ridge *= barrierGrowth {
			for k := range n { // rounding near the tip of a cone
				hess.SetSym(k, k, hess.At(k, k)+ridge)
			}
			solved = chol.Factorize(hess)
		}
		// The error only repeats that the matrix is badly conditioned, as it is near an edge.
		if !solved || *r.work < 0 {
			break
		}
		_ = chol.SolveVecTo(step, grad)
		decrement := math.Sqrt(max(0, mat.Dot(grad, step)))
		damp := 1.0
		if decrement > 0.25 {
			damp = 1 / (1 + decrement)
		}
		next := floats.AddScaledTo(make([]float64, n), y, -damp, step.RawVector().Data)
		within := func() bool { return floats.Dot(next, next) < ball*ball && r.outside(next, false) < 0 }
		for halved := 0; halved < maxHalvings && !within(); halved++ {
			for k := range next { // rounding near an edge
				next[k] = (y[k] + next[k]) / 2
			}
		}
		if !within() {
			break
		}
		y = next
		if decrement < 0.1 {
			if weight/t < barrierGap*max(1, math.Abs(floats.Dot(cost, y))) {
				break
			}
			t *= barrierGrowth
		}
	}
	return y
}

// curvature is the second and the first derivative of what guess makes least.
func (r *region) curvature(cost, y []float64, t, ball float64) (*mat.SymDense, *mat.VecDense) {
	n := r.degree
	hess, grad := mat.NewSymDense(n, nil), mat.NewVecDense(n, nil)
	grad.ScaleVec(t, mat.NewVecDense(n, cost))
	vec := func(g []float64) *mat.VecDense { return mat.NewVecDense(n, g) }
	for _, bound := range r.bounds {
		forms, signs := []linearForm{bound.u, bound.a, bound.b}, []float64{1, -1, -1}
		if !bound.round {
			forms = forms[:1]
		}
		q, dq := 0.0, mat.NewVecDense(n, nil)
		for k, f := range forms {
			q += signs[k] * f.at(y) * f.at(y)
			dq.AddScaledVec(dq, 2*signs[k]*f.at(y), vec(f.g))
		}
		for k, f := range forms {
			hess.SymRankOne(hess, -2*signs[k]/q, vec(f.g))
		}
		grad.AddScaledVec(grad, -1/q, dq)
		hess.SymRankOne(hess, 1/(q*q), dq)
	}
	q := ball*ball - floats.Dot(y, y)
	grad.AddScaledVec(grad, 2/q, vec(y))
	hess.SymRankOne(hess, 4/(q*q), vec(y))
	for k := range n {
		hess.SetSym(k, k, hess.At(k, k)+2/q)
	}
	return hess, grad
}

// deepest is the y that lies deepest inside the bounds and cones, or the least far
// outside: with t added to each bound and to each u, t falls to -1 at most. It is nil
// where there is no cone, or where it was not found.
func (r *region) deepest() []float64 {
	if !r.round() {
		return nil
	}
	n := r.degree
	with := func(g []float64, x float64) []float64 { return append(slices.Clone(g), x) }
	up := &region{degree: n + 1, work: r.work, inside: make([]float64, n+1)}
	far, origin := 0.0, make([]float64, n)
	for _, b := range r.bounds {
		size := 1.0
		if !b.round {
			size = floats.Norm(b.u.g, 2)
		}
		if size <= fixedTol {
			continue // nothing changes it, and build looks at it
		}
		far = max(far, b.beyond(origin)/size)
		b.u.g, b.a.g, b.b.g = with(b.u.g, size), with(b.a.g, 0), with(b.b.g, 0)
		up.bounds = append(up.bounds, b)
	}
	cost := with(origin, 1)
	up.bounds = append(up.bounds, bound{u: linearForm{1, cost}})
	up.inside[n] = far + 1
	if y := up.guess(cost); y != nil {
		return y[:n]
	}
	return nil
}

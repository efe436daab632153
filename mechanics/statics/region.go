package statics

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// The bounds within which a region of free parameters is worked out. Its bounds
// are scaled to length one, and forces to the largest load.
const (
	// parallel is how much of a bound's direction must be new beside others for
	// them to meet in a point: rounding leaves 1e-15, and directions that differ by
	// 1e-8 are still told apart.
	parallel = 1e-9
	// onBound is how far beyond a bound a point still counts as on it.
	onBound = 1e-9
	// mostSteps is up to how many steps of the search all corners are worked out;
	// that takes a few milliseconds. Beyond it linear programmes are solved.
	mostSteps = 5000
	// mostBounds is up to how many bounds the programmes take no longer than a
	// keystroke may. Beyond it no range is claimed.
	mostBounds = 24
)

// region is all y with c[i] + g[i]·y >= 0. Along the directions that no bound
// sees it has no end; in the coordinates w of the others, y = Σ w[k]·basis[k],
// it is the hull of its corners and rays:
//
//	w = Σ λ·corner + Σ μ·ray,  λ >= 0, Σ λ = 1, μ >= 0
//
// (the theorem of Minkowski and Weyl). Working out all of them meets redundant
// and coinciding bounds, single points and empty regions without special cases.
type region struct {
	g       [][]float64 // in w, of length one
	c       []float64
	basis   [][]float64
	corners [][]float64
	rays    [][]float64
	large   bool // too many bounds to work out corners
}

func newRegion(bounds []bound, degree int) *region {
	r := &region{}
	if len(bounds) == 0 {
		r.corners = [][]float64{{}}
		return r
	}
	a := mat.NewDense(len(bounds), degree, nil)
	r.c = make([]float64, len(bounds))
	for i, b := range bounds {
		size := norm(b.g)
		for k, g := range b.g {
			a.Set(i, k, g/size)
		}
		r.c[i] = b.c / size
	}
	var svd mat.SVD
	svd.Factorize(a, mat.SVDFullV)
	var v mat.Dense
	svd.VTo(&v)
	for k, s := range svd.Values(nil) {
		if s > parallel {
			r.basis = append(r.basis, mat.Col(nil, k, &v))
		}
	}
	for i := range bounds {
		r.g = append(r.g, r.seen(a.RawRowView(i)))
	}
	n := len(r.basis)
	if r.large = max(choose(len(bounds), n), choose(len(bounds), n-1))*n > mostSteps; !r.large {
		r.search(0, nil, make([]float64, n))
	}
	return r
}

// seen gives the coordinates w of a vector y; what is left over no bound sees.
func (r *region) seen(y []float64) []float64 {
	w := make([]float64, len(r.basis))
	for k, b := range r.basis {
		w[k] = inner(b, y)
	}
	return w
}

// search adds to q, an orthonormal basis of the bounds chosen so far, each of
// the bounds from first on that is new to it; w is the point nearest to the
// origin that lies on all chosen ones.
func (r *region) search(first int, q [][]float64, w []float64) {
	n := len(r.basis)
	if len(q) == n {
		if r.keeps(w) {
			r.corners = append(r.corners, w)
		}
		return
	}
	if len(q) == n-1 {
		r.addRays(q)
	}
	for i := first; i <= len(r.g)-max(1, n-1-len(q)); i++ { // enough must be left for a ray
		rest := orthogonal(r.g[i], q)
		size := norm(rest)
		if size <= parallel {
			continue
		}
		next := make([]float64, n)
		step := (-r.c[i] - inner(r.g[i], w)) / size
		for k := range next {
			rest[k] /= size
			next[k] = w[k] + step*rest[k]
		}
		r.search(i+1, append(q[:len(q):len(q)], rest), next)
	}
}

func (r *region) keeps(w []float64) bool {
	reach := 1.0
	for _, x := range w {
		reach = max(reach, math.Abs(x))
	}
	for i, g := range r.g {
		if r.c[i]+inner(g, w) < -onBound*reach {
			return false
		}
	}
	return true
}

// addRays adds the direction that lies on all n-1 chosen bounds, either way,
// where it goes on for ever.
func (r *region) addRays(q [][]float64) {
	var ray []float64
	size := 0.0
	for k := range r.basis {
		axis := make([]float64, len(r.basis))
		axis[k] = 1
		if rest := orthogonal(axis, q); norm(rest) > size {
			ray, size = rest, norm(rest)
		}
	}
	for _, sign := range []float64{1, -1} {
		d := make([]float64, len(ray))
		for k := range d {
			d[k] = sign * ray[k] / size
		}
		inside := true
		for _, g := range r.g {
			inside = inside && inner(g, d) >= -onBound
		}
		if inside {
			r.rays = append(r.rays, d)
		}
	}
}

// extent says what became of the search for a least value.
type extent int

const (
	found extent = iota
	endless
	empty      // no y keeps the bounds
	unknowable // the search failed, and nothing is claimed
)

// least is the least of cost·y over the region, with a y that has it.
func (r *region) least(cost []float64) (value float64, y []float64, what extent) {
	if r.large {
		if len(r.g) > mostBounds {
			return 0, nil, unknowable
		}
		return r.leastByProgramme(cost)
	}
	if len(r.corners) == 0 {
		return 0, nil, empty
	}
	seen, size := r.seen(cost), norm(cost)
	if r.unseen(cost) {
		return math.Inf(-1), nil, endless
	}
	for _, d := range r.rays {
		if inner(seen, d) < -onBound*size {
			return math.Inf(-1), nil, endless
		}
	}
	best, value := -1, math.Inf(1)
	for i, w := range r.corners {
		if v := inner(seen, w); v < value {
			best, value = i, v
		}
	}
	return value, r.full(r.corners[best]), found
}

// unseen tells that cost has a part along which no bound ends the region.
func (r *region) unseen(cost []float64) bool {
	return norm(orthogonal(cost, r.basis)) > onBound*norm(cost)
}

// full gives the y of a w.
func (r *region) full(w []float64) []float64 {
	if len(r.basis) == 0 {
		return nil
	}
	y := make([]float64, len(r.basis[0]))
	for k, b := range r.basis {
		for i := range y {
			y[i] += w[k] * b[i]
		}
	}
	return y
}

// choose is the number of ways to choose k of n, no more than what counts as many.
func choose(n, k int) int {
	ways := 1
	for i := 1; i <= min(k, n-k); i++ {
		if ways = ways * (n - i + 1) / i; ways > 1<<30 {
			return ways
		}
	}
	return ways
}

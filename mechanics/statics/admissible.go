package statics

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat/combin"

	"trivet/mechanics/linear"
)

// The bounds of the work on what is free. Forces are in units of the largest load.
const (
	// programmeWork is how many entries the steps of the linear programmes of a
	// problem may rewrite, about half a second. What is not found by then
	// is not claimed.
	programmeWork = 3e8
	// maxSpread bounds the work of finding out what bounds see of the free
	// parameters, bounds × degree²: 1e8 take about half a second.
	maxSpread = 1e8
	// onBound is how far a value may lie off a bound and still count as on it.
	onBound = 1e-9
	// maxTries is how many programmes may be spent on finding a smaller set of
	// conditions that cannot hold together than the first one found.
	maxTries = 2000
)

// bound is a part of a condition over the free parameters y: |(a, b)| <= u where it is
// round, else u >= 0.
type bound struct {
	u, a, b linearForm
	round   bool
	by      Ended
	cuts    []float64 // where it is round, the angles of the planes a cos φ + b sin φ <= u that stand for it
}

// linearForm is c + Σ g[k]·y[k].
type linearForm struct {
	c float64
	g []float64
}

func (f linearForm) at(y []float64) float64 { return f.c + floats.Dot(f.g, y) }

// beyond is how far y lies beyond a bound.
func (b *bound) beyond(y []float64) float64 {
	if !b.round {
		return -b.u.at(y)
	}
	return math.Hypot(b.a.at(y), b.b.at(y)) - b.u.at(y)
}

// region is all y that keep a set of bounds. Planes around each cone, as the round ones are,
// stand for it, so that what is empty with them is empty; others are added
// where a point lies beyond the cone.
type region struct {
	bounds []bound
	degree int
	gap    float64 // what the values from outside and inside cones may be apart by
	work   *int

	programme *linear.Programme
	by        []Ended   // the part of a condition behind each bound of the programme
	never     []int     // conditions that are violated whatever is free
	inside    []float64 // a point that keeps the bounds
}

func (r *region) round() bool {
	return slices.ContainsFunc(r.bounds, func(b bound) bool { return b.round })
}

// least is the least of a cost over a region.
type least struct {
	linear.Least
	ends []Ended // what ends the region there
}

// build writes the programme of the bounds and of the planes of the cones.
func (r *region) build() {
	var g [][]float64
	var c []float64
	r.by, r.never = nil, nil
	add := func(f linearForm, by Ended) {
		if size := floats.Norm(f.g, 2); size > fixedTol {
			g, c, r.by = append(g, f.g), append(c, f.c), append(r.by, by)
		} else if f.c < -senseTol {
			r.never = withNew(r.never, by.Condition)
		}
	}
	for _, b := range r.bounds {
		if !b.round {
			add(b.u, b.by)
		}
		for _, angle := range b.cuts {
			sin, cos := math.Sincos(angle)
			plane := linearForm{b.u.c - cos*b.a.c - sin*b.b.c, slices.Clone(b.u.g)}
			floats.AddScaled(plane.g, -cos, b.a.g)
			floats.AddScaled(plane.g, -sin, b.b.g)
			add(plane, b.by)
		}
	}
	r.programme = linear.NewProgramme(g, c, r.degree, r.work)
}

// admissible says whether any y keeps the bounds: Found, Empty, or
// Unknown where the work ran out, or where the planes and the cones disagree to
// the end.
func (r *region) admissible() linear.Extent {
	rows := len(r.bounds)
	for i := range r.bounds {
		if b := &r.bounds[i]; b.round {
			b.cuts = slices.Clone(around)
			rows += len(around)
		}
	}
	if float64(rows)*float64(r.degree)*float64(r.degree) > maxSpread {
		return linear.Unknown
	}
	deepest := r.deepest()
	for range maxRounds {
		r.build()
		if len(r.never) > 0 {
			return linear.Empty
		}
		what := r.programme.Feasible()
		if what != linear.Found {
			return what
		}
		switch {
		case !r.round():
			r.inside = r.programme.Point()
			return linear.Found
		case deepest != nil && r.outside(deepest, false) < 0:
			r.inside = deepest
			return linear.Found
		}
		y := r.programme.Middle()
		if y == nil {
			break
		}
		if !r.cut(y, false) {
			r.inside = y
			return linear.Found
		}
	}
	if deepest != nil && r.outside(deepest, false) <= senseTol {
		r.inside = deepest
		return linear.Found
	}
	return linear.Unknown
}

// least is the least of cost·y over the region, with what ends it.
func (r *region) least(cost []float64) least {
	if r.round() {
		return r.leastInCones(cost)
	}
	return r.ended(r.programme.Least(cost))
}

// ended adds the conditions, by their parts, that end the region at a least value.
func (r *region) ended(l linear.Least) least {
	out := least{Least: l}
	for _, i := range r.programme.Ends(l) {
		out.ends = withNew(out.ends, r.by[i])
	}
	return out
}

// conflict names a smallest set of conditions that no state keeps together: first
// one of which none can be left out, from the multipliers that prove the region
// empty, then a smaller one if there is any among few enough.
func (r *region) conflict() []int {
	if len(r.never) > 0 {
		return r.never[:1]
	}
	var set []int
	for _, i := range r.programme.Conflict() {
		set = withNew(set, r.by[i].Condition)
	}
	for k := 0; k < len(set); { // a condition may stand in it by two of its parts
		rest := slices.Delete(slices.Clone(set), k, k+1)
		if r.with(rest) == linear.Empty {
			set = rest
		} else {
			k++
		}
	}
	var all []int
	for _, b := range r.bounds {
		all = withNew(all, b.by.Condition)
	}
	tries := 0
	for size := 1; size < len(set); size++ {
		for choice := combin.NewCombinationGenerator(len(all), size); choice.Next(); {
			if tries++; tries > maxTries {
				return set
			}
			some := make([]int, size)
			for k, of := range choice.Combination(nil) {
				some[k] = all[of]
			}
			if r.with(some) == linear.Empty {
				return some
			}
		}
	}
	return set
}

// with says whether any y keeps those conditions alone.
func (r *region) with(conditions []int) linear.Extent {
	part := &region{degree: r.degree, gap: r.gap, work: r.work}
	for _, b := range r.bounds {
		if slices.Contains(conditions, b.by.Condition) {
			b.cuts = nil
			part.bounds = append(part.bounds, b)
		}
	}
	if len(part.bounds) == 0 {
		return linear.Found
	}
	return part.admissible()
}

// withNew is a list with x, once.
func withNew[T comparable](list []T, x T) []T {
	if slices.Contains(list, x) {
		return list
	}
	return append(list, x)
}

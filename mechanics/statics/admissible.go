package statics

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"

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

// bound is a part of a condition over the free parameters y, which must not be negative.
type bound struct {
	linearForm
	of   int // the condition
	part int
}

// region is all y that keep a set of bounds and cones. Planes around each cone
// stand for it, so that what is empty with them is empty; others are added
// where a point lies beyond the cone.
type region struct {
	bounds []bound
	cones  []coneBound
	degree int
	gap    float64 // what the values from outside and inside cones may be apart by
	work   *int

	programme *linear.Programme
	of        []int // the condition and part of each bound of the programme
	parts     []int
	never     []int     // conditions that are violated whatever is free
	inside    []float64 // a point that keeps bounds and cones
}

// least is the least of a cost over a region.
type least struct {
	linear.Extent
	value float64
	y     []float64
	ends  []Ended // what ends the region there
}

// build writes the programme of the bounds and of the planes of the cones.
func (r *region) build() {
	var g [][]float64
	var c []float64
	r.of, r.parts, r.never = nil, nil, nil
	add := func(row []float64, constant float64, of, part int) {
		if size := floats.Norm(row, 2); size > fixedTol {
			g, c = append(g, row), append(c, constant)
			r.of, r.parts = append(r.of, of), append(r.parts, part)
		} else if constant < -senseTol {
			r.never = withNew(r.never, of)
		}
	}
	for _, b := range r.bounds {
		add(b.g, b.c, b.of, b.part)
	}
	for i := range r.cones {
		k := &r.cones[i]
		for _, angle := range k.cuts {
			sin, cos := math.Sincos(angle)
			row := slices.Clone(k.u.g)
			floats.AddScaled(row, -cos, k.a.g)
			floats.AddScaled(row, -sin, k.b.g)
			add(row, k.u.c-cos*k.a.c-sin*k.b.c, k.of, 0)
		}
	}
	r.programme = linear.NewProgramme(g, c, r.degree, r.work)
}

// admissible says whether any y keeps the bounds and the cones: Found, Empty, or
// Unknown where the work ran out, or where the planes and the cones disagree to
// the end.
func (r *region) admissible() linear.Extent {
	for i := range r.cones {
		r.cones[i].surround()
	}
	if rows := len(r.bounds) + firstCuts*len(r.cones); float64(rows)*float64(r.degree)*float64(r.degree) > maxSpread {
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
		case len(r.cones) == 0:
			r.inside = r.programme.Point()
			return linear.Found
		case deepest != nil && r.outside(deepest) < 0:
			r.inside = deepest
			return linear.Found
		}
		y := r.programme.Middle()
		if y == nil {
			break
		}
		if !r.cut(y) {
			r.inside = y
			return linear.Found
		}
	}
	if deepest != nil && r.outside(deepest) <= senseTol {
		r.inside = deepest
		return linear.Found
	}
	return linear.Unknown
}

// least is the least of cost·y over the region, with what ends it.
func (r *region) least(cost []float64) least {
	if len(r.cones) > 0 {
		return r.leastInCones(cost)
	}
	l := r.programme.Least(cost)
	out := least{Extent: l.Extent, value: l.Value, y: l.Y}
	if l.Extent == linear.Found {
		out.ends = r.ended(l)
	}
	return out
}

// ended lists the conditions, by their parts, that end the region at a least value.
func (r *region) ended(l linear.Least) []Ended {
	var out []Ended
	for _, i := range r.programme.Ends(l) {
		e := Ended{Condition: r.of[i], Part: r.parts[i]}
		if !slices.Contains(out, e) {
			out = append(out, e)
		}
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
		set = withNew(set, r.of[i])
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
		all = withNew(all, b.of)
	}
	for _, k := range r.cones {
		all = withNew(all, k.of)
	}
	tries := 0
	for size := 1; size < len(set); size++ {
		found := subsets(all, size, func(some []int) bool {
			tries++
			return tries > maxTries || r.with(some) == linear.Empty
		})
		switch {
		case tries > maxTries:
			return set
		case found != nil:
			return found
		}
	}
	return set
}

// with says whether any y keeps those conditions alone.
func (r *region) with(conditions []int) linear.Extent {
	part := &region{degree: r.degree, gap: r.gap, work: r.work}
	for _, b := range r.bounds {
		if slices.Contains(conditions, b.of) {
			part.bounds = append(part.bounds, b)
		}
	}
	for _, k := range r.cones {
		if slices.Contains(conditions, k.of) {
			k.cuts = nil
			part.cones = append(part.cones, k)
		}
	}
	if len(part.bounds)+len(part.cones) == 0 {
		return linear.Found
	}
	return part.admissible()
}

// subsets calls try with each choice of size items until it says yes, and gives
// that choice.
func subsets(of []int, size int, try func([]int) bool) []int {
	var choose func(from int, some []int) []int
	choose = func(from int, some []int) []int {
		if len(some) == size {
			if try(some) {
				return some
			}
			return nil
		}
		for i := from; i <= len(of)-(size-len(some)); i++ {
			if found := choose(i+1, append(some[:len(some):len(some)], of[i])); found != nil {
				return found
			}
		}
		return nil
	}
	return choose(0, nil)
}

// withNew is a list with x, once.
func withNew[T comparable](list []T, x T) []T {
	if slices.Contains(list, x) {
		return list
	}
	return append(list, x)
}

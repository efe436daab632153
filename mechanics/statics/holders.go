package statics

import "math"

// holders names the bounds that end the region where cost·y is least: those that
// stand at nothing wherever it is. By strict complementarity of linear
// programmes they are those that take part in the end: some λ > 0 of each gives
// Σ λ[i]·g[i] = cost. Where the corners were not worked out it names none.
func (r *region) holders(cost []float64, least float64, bounds []bound) (names []string) {
	if r.large {
		return nil
	}
	seen := r.seen(cost)
	size := norm(seen)
	for i, g := range r.g {
		at := func(w []float64) float64 { return r.c[i] + inner(g, w) }
		holds := true
		for _, w := range r.corners {
			reach := max(1, norm(w))
			if inner(seen, w)-least <= onBound*size*reach {
				holds = holds && math.Abs(at(w)) <= onBound*reach
			}
		}
		for _, d := range r.rays {
			if math.Abs(inner(seen, d)) <= onBound*size {
				holds = holds && math.Abs(inner(g, d)) <= onBound
			}
		}
		if holds {
			names = append(names, bounds[i].of)
		}
	}
	return names
}

package handsolve

import "slices"

// manyEdges is up to how many members sections are looked for: their number
// grows with the cube.
const manyEdges = 100

// addSections makes the groups on either side of every cut of three members, as many
// as a part of a plane structure has equations; once, and false where there are none to
// add. Few bodies are groups in each combination already.
func (f *finder) addSections() bool {
	if f.sections || !f.p.Planar || len(f.p.Bodies) <= fewBodies {
		return false
	}
	f.sections = true
	var edges []int
	for symbol := range f.n {
		if f.joins(symbol) {
			edges = append(edges, symbol)
		}
	}
	if len(edges) > manyEdges {
		return false
	}
	before := len(f.groups)
	for i, a := range edges {
		for j, b := range edges[i+1:] {
			for _, c := range edges[i+j+2:] {
				f.split(a, b, c)
			}
		}
	}
	return len(f.groups) > before
}

// split makes the two sides of a cut, where each of the members joins one to the other.
func (f *finder) split(cut ...int) {
	ends := f.on(cut[0])
	side := f.reach(ends[0], ends[1], func(symbol, _ int) bool { return !slices.Contains(cut, symbol) })
	for _, symbol := range cut[1:] {
		if on := f.on(symbol); slices.Contains(side, on[0]) == slices.Contains(side, on[1]) {
			return
		}
	}
	var other []int
	for b := range f.p.Bodies {
		if !slices.Contains(side, b) {
			other = append(other, b)
		}
	}
	for _, bodies := range [][]int{side, other} {
		if len(bodies) > 1 {
			g := f.group(bodies)
			f.through(g, cut...)
			f.groups = append(f.groups, g)
		}
	}
}

package handsolve

import (
	"slices"

	"trivet/mechanics/say"
)

// manyEdges is up to how many members sections are looked for.
const manyEdges = 100

// cutMembers notes the members that are cut where joints of a truss are cut free together.
func (f *finder) cutMembers(g *group) {
	var cut []int
	for i := range g.nets {
		if f.joins(g.nets[i].Symbol) {
			cut = append(cut, g.nets[i].Symbol)
		}
	}
	if len(cut) > 0 && !g.solid && !g.whole {
		f.through(g, cut...)
	}
}

// through notes that a section goes through the members of some symbols. Joints one by
// one come first, unless a shorter way to what is asked is looked for: then the section
// that cuts the fewest members that are not asked for.
func (f *finder) through(g *group, symbols ...int) {
	g.cost = bodyCost*float64(len(g.bodies)) + sectionCost
	if f.deep {
		g.cost += partCost - sectionCost
	}
	for _, symbol := range symbols {
		g.cut = append(g.cut, f.p.Unknowns[symbol].Line)
		if f.deep && !f.wanted[symbol] {
			g.cost += memberCost
		}
	}
}

// addSections makes the groups on either side of every cut of three members, as many
// as a part of a plane structure has equations; once, and false where there are none to
// add. Few bodies are groups in each combination already.
func (f *finder) addSections() bool {
	if f.sections || !f.p.Planar || len(f.p.Bodies) <= fewBodies {
		return false
	}
	f.sections = true
	edges := say.Places(f.n, func(symbol int) bool { return f.joins(symbol) })
	if len(edges) > manyEdges {
		return false
	}
	before := len(f.groups)
	seen := map[[3]int]bool{}
	for _, symbol := range edges {
		f.cut([]int{symbol}, seen)
	}
	return len(f.groups) > before
}

// cut completes a cut: each way from one end of its first member to the other has to
// go through a member that is cut.
func (f *finder) cut(of []int, seen map[[3]int]bool) {
	ends := f.on(of[0])
	side, way := f.reach(ends[0], ends[1], func(symbol, _ int) bool { return !slices.Contains(of, symbol) })
	if len(of) == 3 {
		if way == nil {
			f.split(side, of, seen)
		}
		return
	}
	for _, symbol := range way {
		if f.joins(symbol) {
			f.cut(append(slices.Clone(of), symbol), seen)
		}
	}
}

// split makes the two sides of a cut, where each of the members joins one to the other.
func (f *finder) split(side, cut []int, seen map[[3]int]bool) {
	slices.Sort(cut)
	other := say.Places(len(f.p.Bodies), func(b int) bool { return !slices.Contains(side, b) })
	within := func(symbol int) bool {
		return slices.Contains(side, f.on(symbol)[0]) == slices.Contains(side, f.on(symbol)[1])
	}
	if seen[[3]int(cut)] || slices.ContainsFunc(cut, within) {
		return
	}
	seen[[3]int(cut)] = true
	for _, bodies := range [][]int{side, other} {
		if len(bodies) > 1 {
			g := f.group(bodies)
			f.through(g, cut...)
			f.groups = append(f.groups, g)
		}
	}
}

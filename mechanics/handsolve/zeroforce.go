package handsolve

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// zeroForce sees which members of a truss carry no force, joint by joint, as those
// seen before leave further joints with two or three members.
func (f *finder) zeroForce() {
	step := Step{Kind: ZeroForce}
	for again := len(f.p.Bodies) > 2; again; {
		again = false
		for _, g := range f.groups {
			if seen, ok := f.inspect(g); ok {
				again = true
				step.Zero = append(step.Zero, seen)
				for _, symbol := range seen.Zero {
					step.Finds = append(step.Finds, Found{symbol, 0})
					f.mark(symbol, 0)
				}
			}
		}
	}
	if len(step.Zero) > 0 {
		f.put(step)
	}
}

// inspect applies the rules of zero-force members to an unloaded joint.
func (f *finder) inspect(g *group) (seen Inspection, ok bool) {
	members := f.left(g)
	if len(g.bodies) > 1 || g.rigid || len(g.all) > len(g.nets) || len(members) < 2 || len(members) > 3 ||
		slices.ContainsFunc(g.nets, func(n net) bool { return f.known[n.Symbol] && f.value[n.Symbol] != 0 }) ||
		slices.ContainsFunc(members, func(n *net) bool { return !f.isMember(n.Symbol) || !f.fixed(n.Symbol) }) {
		return seen, false
	}
	collinear := func(a, b *net) bool { return parallel(r3.Scale(1/r3.Norm(a.f), a.f), b) }
	seen.Body = g.bodies[0]
	for _, n := range g.nets {
		if f.known[n.Symbol] {
			seen.Before = append(seen.Before, n.Symbol)
		}
	}
	if len(members) == 2 {
		seen.Zero = []int{members[0].Symbol, members[1].Symbol}
		return seen, !collinear(members[0], members[1])
	}
	for k, third := range members {
		a, b := members[(k+1)%3], members[(k+2)%3]
		if collinear(a, b) && !collinear(a, third) {
			seen.Zero, seen.Collinear = []int{third.Symbol}, []int{min(a.Symbol, b.Symbol), max(a.Symbol, b.Symbol)}
			return seen, true
		}
	}
	return seen, false
}

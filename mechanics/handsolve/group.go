package handsolve

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// fewBodies is up to how many bodies every connected set of them is looked at:
// 2^6 sets. Beyond it a person cuts single bodies, pairs and the whole, and sections.
const fewBodies = 6

// group is a body, or bodies cut free together.
type group struct {
	bodies    []int
	whole     bool
	cut       []int // the lines that a section goes through
	rigid     bool  // moments say more than forces
	solid     bool  // a rigid body is among them
	supported bool  // joints alone hold it
	nets      []net // of symbols, in their order; not those that cancel
	loads     []net
	inner     []int // symbols that cancel within

	best  *found // cheapest equation with one unknown left
	fresh bool
	drawn bool // an equation of it was written

	cutCost float64
}

// net is what a unit of a symbol, or a load, exerts on a group: the force f and
// the moment m about the origin, and the sizes of what they are sums of.
type net struct {
	symbol         int
	load           Load
	f, m           r3.Vec
	fScale, mScale float64
	parts          int
	one            r3.Vec // a place of it
}

func (n *net) add(p *part) {
	m := r3.Cross(p.at, p.f)
	n.f, n.m = r3.Add(n.f, p.f), r3.Add(n.m, r3.Add(m, p.c))
	n.fScale += r3.Norm(p.f)
	n.mScale += r3.Norm(p.at)*r3.Norm(p.f) + r3.Norm(p.c)
	n.parts++
	n.one = p.at
}

// trim drops what is rounding.
func (n *net) trim(tol float64) (nothing bool) {
	if r3.Norm(n.f) <= tol*n.fScale {
		n.f = r3.Vec{}
	}
	if r3.Norm(n.m) <= tol*n.mScale {
		n.m = r3.Vec{}
	}
	return n.f == (r3.Vec{}) && n.m == (r3.Vec{})
}

func (n *net) pull() bool { return n.f != (r3.Vec{}) }

// about is the moment about a place.
func (n *net) about(at r3.Vec) r3.Vec { return r3.Sub(n.m, r3.Cross(at, n.f)) }

func (f *finder) group(bodies []int) *group {
	g := &group{bodies: bodies, whole: len(bodies) > 1 && len(bodies) == f.cutFree}
	at := map[int]int{}
	atLoad := map[Load]int{}
	for _, b := range bodies {
		g.solid = g.solid || !f.p.Bodies[b].Particle
		for k := range f.parts[b] {
			p := &f.parts[b][k]
			if p.symbol >= 0 {
				i, ok := at[p.symbol]
				if !ok {
					i = len(g.nets)
					at[p.symbol] = i
					g.nets = append(g.nets, net{symbol: p.symbol})
				}
				g.nets[i].add(p)
				continue
			}
			i, ok := atLoad[p.load]
			if !ok {
				i = len(g.loads)
				atLoad[p.load] = i
				g.loads = append(g.loads, net{symbol: -1, load: p.load})
			}
			g.loads[i].add(p)
		}
	}
	g.rigid = g.solid || len(bodies) > 1
	for _, two := range f.apart {
		if slices.Contains(bodies, two[0]) && slices.Contains(bodies, two[1]) {
			g.rigid = false
		}
	}
	slices.SortFunc(g.nets, func(a, b net) int { return a.symbol - b.symbol })
	kept := g.nets[:0]
	for _, n := range g.nets {
		if n.trim(f.tol) {
			g.inner = append(g.inner, n.symbol)
		} else {
			kept = append(kept, n)
		}
	}
	g.nets = kept
	g.supported = !slices.ContainsFunc(g.nets, func(n net) bool { return n.symbol < f.n && f.p.Unknowns[n.symbol].Joint < 0 })
	g.loads = slices.DeleteFunc(g.loads, func(n net) bool { return n.trim(f.tol) })
	return g
}

// left gives the nets of a group that are still to be found.
func (f *finder) left(g *group) []*net {
	var out []*net
	for i := range g.nets {
		if !f.known[g.nets[i].symbol] {
			out = append(out, &g.nets[i])
		}
	}
	return out
}

// makeGroups lists what is cut free: each body, connected sets of bodies where
// they are few, else pairs, and all that hangs together.
func (f *finder) makeGroups() {
	n := len(f.p.Bodies)
	linked := f.neighbours()
	for b := range n {
		f.groups = append(f.groups, f.group([]int{b}))
	}
	parts := components(n, linked)
	if n <= fewBodies {
		for set := 1; set < 1<<n; set++ {
			var bodies []int
			for b := range n {
				if set&(1<<b) != 0 {
					bodies = append(bodies, b)
				}
			}
			if len(bodies) > 1 && connected(bodies, linked) {
				g := f.group(bodies)
				f.cutMembers(g)
				f.groups = append(f.groups, g)
			}
		}
	} else {
		for a := range n {
			for _, b := range linked[a] {
				if a < b && !(f.p.Bodies[a].Particle && f.p.Bodies[b].Particle) {
					f.groups = append(f.groups, f.group([]int{a, b}))
				}
			}
		}
		for _, bodies := range parts {
			if len(bodies) > 2 {
				f.groups = append(f.groups, f.group(bodies))
			}
		}
	}
	f.groups = slices.DeleteFunc(f.groups, func(g *group) bool { return len(g.nets) == 0 })
}

// cutMembers notes the members that are cut where joints of a truss are cut free together.
func (f *finder) cutMembers(g *group) {
	if g.solid || g.whole {
		return
	}
	for i := range g.nets {
		if s := g.nets[i].symbol; s < f.n && f.p.Unknowns[s].Own {
			if l := f.p.Unknowns[s].Line; len(f.p.Lines[l].Acts) == 2 {
				f.through(g, s)
			}
		}
	}
}

// through notes that a section goes through the members of some symbols. Joints one by
// one come first, unless a shorter way to what is asked is looked for: then the section
// that cuts the fewest members that are not asked for.
func (f *finder) through(g *group, symbols ...int) {
	for _, symbol := range symbols {
		g.cut = append(g.cut, f.p.Unknowns[symbol].Line)
		if f.deep && !f.wanted[symbol] {
			g.cutCost += memberCost
		}
	}
	g.cutCost += partCost
	if !f.deep {
		g.cutCost = sectionCost
	}
}

// bodiesOf lists the bodies that each symbol acts on.
func (f *finder) bodiesOf() [][]int {
	on := make([][]int, f.n+len(f.route.Members))
	for b := range f.parts {
		for k := range f.parts[b] {
			if s := f.parts[b][k].symbol; s >= 0 && !slices.Contains(on[s], b) {
				on[s] = append(on[s], b)
			}
		}
	}
	return on
}

// neighbours tells which bodies share a symbol.
func (f *finder) neighbours() [][]int {
	linked := make([][]int, len(f.parts))
	for _, bodies := range f.bodiesOf() {
		for _, a := range bodies {
			for _, b := range bodies {
				if a != b && !slices.Contains(linked[a], b) {
					linked[a] = append(linked[a], b)
				}
			}
		}
	}
	for b := range linked {
		slices.Sort(linked[b])
	}
	return linked
}

func components(n int, linked [][]int) (out [][]int) {
	seen := make([]bool, n)
	for b := range n {
		if seen[b] {
			continue
		}
		seen[b] = true
		part := []int{b}
		for i := 0; i < len(part); i++ {
			for _, c := range linked[part[i]] {
				if !seen[c] {
					seen[c] = true
					part = append(part, c)
				}
			}
		}
		slices.Sort(part)
		out = append(out, part)
	}
	return out
}

func connected(bodies []int, linked [][]int) bool {
	reached := []int{bodies[0]}
	for i := 0; i < len(reached); i++ {
		for _, c := range linked[reached[i]] {
			if slices.Contains(bodies, c) && !slices.Contains(reached, c) {
				reached = append(reached, c)
			}
		}
	}
	return len(reached) == len(bodies)
}

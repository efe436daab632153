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
	supported bool  // by joints only
	nets      []net // of symbols, in their order; not those that cancel
	loads     []net

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
func (n *net) trim(tol float64) (zero bool) {
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
	g.nets = slices.DeleteFunc(g.nets, func(n net) bool { return n.trim(f.tol) })
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
	put := func(bodies []int) *group {
		g := f.group(bodies)
		if len(g.nets) > 0 {
			f.groups = append(f.groups, g)
		}
		return g
	}
	for b := range n {
		put([]int{b})
	}
	if n <= fewBodies {
		for set := 1; set < 1<<n; set++ {
			var bodies []int
			for b := range n {
				if set&(1<<b) != 0 {
					bodies = append(bodies, b)
				}
			}
			if len(bodies) < 2 {
				continue
			}
			if all, _ := f.reach(bodies[0], -1, func(_, to int) bool { return set&(1<<to) != 0 }); len(all) == len(bodies) {
				f.cutMembers(put(bodies))
			}
		}
		return
	}
	for a := range n {
		paired := map[int]bool{}
		for k := range f.parts[a] {
			for _, b := range f.on(f.parts[a][k].symbol) {
				if a < b && !paired[b] && !(f.p.Bodies[a].Particle && f.p.Bodies[b].Particle) {
					paired[b] = true
					put([]int{a, b})
				}
			}
		}
	}
	for b := range n {
		if all, _ := f.reach(b, -1, func(int, int) bool { return true }); len(all) > 2 && all[0] == b {
			put(all)
		}
	}
}

// on lists the bodies that a symbol acts on.
func (f *finder) on(symbol int) []int {
	if symbol < 0 {
		return nil
	}
	return f.bodies[symbol]
}

// reach lists the bodies that one hangs together with, by symbols that may join it to
// others. Where one of them is until it gives the symbols that lead there instead.
func (f *finder) reach(from, until int, by func(symbol, to int) bool) (reached, path []int) {
	type step struct{ symbol, from int }
	reached = []int{from}
	came := map[int]step{from: {-1, -1}}
	for i := 0; i < len(reached); i++ {
		b := reached[i]
		for k := range f.parts[b] {
			symbol := f.parts[b][k].symbol
			for _, to := range f.on(symbol) {
				if _, seen := came[to]; seen || !by(symbol, to) {
					continue
				}
				came[to] = step{symbol, b}
				reached = append(reached, to)
				if to != until {
					continue
				}
				for ; to != from; to = came[to].from {
					path = append(path, came[to].symbol)
				}
				return nil, path
			}
		}
	}
	slices.Sort(reached)
	return reached, nil
}

// cutMembers notes the members that are cut where joints of a truss are cut free together.
func (f *finder) cutMembers(g *group) {
	if g.solid || g.whole {
		return
	}
	var cut []int
	for i := range g.nets {
		if f.joins(g.nets[i].symbol) {
			cut = append(cut, g.nets[i].symbol)
		}
	}
	if len(cut) > 0 {
		f.through(g, cut...)
	}
}

// joins tells that a symbol is the force in a straight member between two bodies.
func (f *finder) joins(symbol int) bool {
	return symbol < f.n && f.p.Unknowns[symbol].Own && len(f.on(symbol)) == 2 && len(f.p.Lines[f.p.Unknowns[symbol].Line].Path) == 2
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

package handsolve

import (
	"trivet/mechanics/say"

	"cmp"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// fewBodies is up to how many bodies every connected set of them is looked at:
// 2^6 sets. Beyond it a person cuts single bodies, pairs and the whole, and sections.
const fewBodies = 6

// group is a body, or bodies cut free together.
type group struct {
	bodies []int
	whole  bool
	cut    []int   // the lines that a section goes through
	rigid  bool    // moments say more than forces
	solid  bool    // a rigid body is among them
	cost   float64 // what an equation of it costs beside what any equation costs
	all    []net   // those of symbols in their order, then of loads; not those that cancel
	nets   []net   // those of symbols

	best  *found // cheapest equation with one unknown left
	fresh bool
}

// net is what a unit of a symbol, or a load, exerts on a group: the force f and
// the moment m about the origin, and the sizes of what they are sums of.
type net struct {
	Term           // of a symbol or a load; Value is the load's magnitude, as far as the sheet has one
	f, m           r3.Vec
	fScale, mScale float64
	parts          int
	one            r3.Vec // a place of it
}

func (n *net) add(p *net) {
	n.f, n.m = r3.Add(n.f, p.f), r3.Add(n.m, p.m)
	n.fScale += p.fScale
	n.mScale += p.mScale
	n.parts += p.parts
	n.one = p.one
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
	place := map[Term]int{}
	for _, b := range bodies {
		g.solid = g.solid || !f.p.Bodies[b].Particle
		for k := range f.nets[b] {
			n := &f.nets[b][k]
			i, ok := place[n.Term]
			if !ok {
				i = len(g.all)
				place[n.Term] = i
				g.all = append(g.all, net{Term: n.Term})
			}
			g.all[i].add(n)
		}
	}
	g.rigid = (g.solid || len(bodies) > 1) && !slices.ContainsFunc(f.apart, func(two [2]int) bool {
		return slices.Contains(bodies, two[0]) && slices.Contains(bodies, two[1])
	})
	g.all = slices.DeleteFunc(g.all, func(n net) bool { return n.trim(f.tol) })
	slices.SortStableFunc(g.all, func(a, b net) int { return cmp.Compare(uint(a.Symbol), uint(b.Symbol)) }) // -1 is last
	symbols := slices.IndexFunc(g.all, func(n net) bool { return n.Symbol < 0 })
	if symbols < 0 {
		symbols = len(g.all)
	}
	g.nets = g.all[:symbols]
	loose := func(n net) bool { return n.Symbol < f.n && f.p.Unknowns[n.Symbol].Joint < 0 }
	switch {
	case len(bodies) == 1:
	case g.whole && !slices.ContainsFunc(g.nets, loose):
		g.cost = supportsCost
	case g.whole:
		g.cost = wholeCost
	case g.solid:
		g.cost = setCost
	default:
		g.cost = sectionCost
	}
	return g
}

// left gives the nets of a group that are still to be found.
func (f *finder) left(g *group) []*net {
	var out []*net
	for i := range g.nets {
		if !f.known[g.nets[i].Symbol] {
			out = append(out, &g.nets[i])
		}
	}
	return out
}

// makeGroups lists what is cut free: each body, connected sets of bodies where
// they are few, else pairs, and all that hangs together.
func (f *finder) makeGroups() {
	n := len(f.p.Bodies)
	put := func(bodies ...int) *group {
		g := f.group(bodies)
		if len(g.nets) > 0 {
			f.groups = append(f.groups, g)
		}
		return g
	}
	for b := range n {
		put(b)
	}
	if n <= fewBodies {
		for set := range 1 << n {
			bodies := say.Places(n, func(b int) bool { return set&(1<<b) != 0 })
			if len(bodies) < 2 {
				continue
			}
			if all, _ := f.reach(bodies[0], -1, func(_, to int) bool { return set&(1<<to) != 0 }); len(all) == len(bodies) {
				f.cutMembers(put(bodies...))
			}
		}
		return
	}
	for a := range n {
		for b := a + 1; b < n; b++ {
			joined := func(n net) bool { return slices.Contains(f.on(n.Symbol), b) }
			if !(f.p.Bodies[a].Particle && f.p.Bodies[b].Particle) && slices.ContainsFunc(f.nets[a], joined) {
				put(a, b)
			}
		}
	}
	for b := range n {
		if all, _ := f.reach(b, -1, func(int, int) bool { return true }); len(all) > 2 && all[0] == b {
			put(all...)
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
		for k := range f.nets[b] {
			symbol := f.nets[b][k].Symbol
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

// isMember tells that a symbol is the force in a straight member between two places.
func (f *finder) isMember(symbol int) bool {
	return symbol < f.n && f.p.Unknowns[symbol].Own && len(f.p.Lines[f.p.Unknowns[symbol].Line].Path) == 2
}

// joins tells that it is one between two bodies.
func (f *finder) joins(symbol int) bool { return f.isMember(symbol) && len(f.on(symbol)) == 2 }

package handsolve

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
)

// found is an equation that contains a single unknown symbol, or an elimination, and what it costs.
type found struct {
	g    *group
	c    candidate
	n    *net
	by   *elimination
	cost float64
}

// search writes the cheapest equation with one unknown left, again and again; where
// there is none, one for a section, then the smallest set of equations that must be solved
// together. It stops when what is wanted is derived, and drops what did not lead there.
func (f *finder) search() {
	for k := range f.order.Members {
		step := Step{Kind: TwoForce, Member: k}
		for _, s := range f.order.Members[k].Shares {
			if f.perp(s) {
				step.Finds = append(step.Finds, Found{s.Unknown, 0})
			}
		}
		f.put(step)
	}
	f.zeroForce()
	if f.deep {
		f.addSections()
	}
	for f.more() {
		if best := f.cheapest(); best != nil {
			f.accept(best)
		} else if !f.addSections() && !f.together() {
			break
		}
	}
	f.prune()
}

// more tells whether a wanted symbol that has a value is still to be found.
func (f *finder) more() bool {
	for symbol := range f.known {
		if f.wanted[symbol] && !f.known[symbol] && f.fixed(symbol) {
			return true
		}
	}
	return false
}

// prune keeps the steps that lead to what is wanted.
func (f *finder) prune() {
	needed := slices.Clone(f.wanted)
	for i, step := range slices.Backward(f.order.Steps) {
		if step.Kind != TwoForce && !slices.ContainsFunc(step.Finds, func(x Found) bool { return needed[x.Symbol] }) {
			f.order.Steps = slices.Delete(f.order.Steps, i, i+1)
			continue
		}
		for _, symbol := range step.Needs {
			needed[symbol] = true
		}
	}
}

// effort is what a person judges a hand solution by: the equations, then the free
// bodies to draw, then what the equations cost.
func (f *finder) effort() []float64 {
	equations, drawn, cost := 0, map[*group]bool{}, 0.0
	for i := range f.order.Steps {
		s := &f.order.Steps[i]
		equations += len(s.Equations)
		cost += s.cost
		for k := range s.Equations {
			drawn[s.Equations[k].g] = true
		}
	}
	return []float64{float64(equations), float64(len(drawn)), cost}
}

// fixed tells that a symbol has one value; an unknown that is a share of a
// member's force is found with it.
func (f *finder) fixed(symbol int) bool {
	if symbol < f.n {
		_, tied := f.tied[symbol]
		return !tied && f.s.X[symbol].Fixed
	}
	shares := f.order.Members[symbol-f.n].Shares
	i := slices.IndexFunc(shares, func(s Share) bool { return !f.perp(s) })
	return i >= 0 && f.s.X[shares[i].Unknown].Fixed
}

// perp tells that an unknown of a joint is perpendicular to the member: it is zero.
func (f *finder) perp(s Share) bool { return math.Abs(s.Coef) <= f.tol }

func (f *finder) cheapest() *found {
	var best *found
	for _, g := range f.groups {
		if !g.fresh {
			g.best, g.fresh = f.single(g), true
		} else if f.cheaper && g.best != nil && g.best.by == nil {
			g.best.cost = f.cost(g, &g.best.c)
		} else if f.cheaper && g.best != nil {
			g.best.cost = g.cost + f.eliminate(g).each()
		}
		if g.best != nil && (best == nil || g.best.cost < best.cost) {
			best = g.best
		}
	}
	f.cheaper = false
	return best
}

// single is the cheapest equation of a group with one symbol left.
func (f *finder) single(g *group) *found {
	left := f.left(g)
	if len(left) == 0 {
		return nil
	}
	var best *found
	try := func(c *candidate) {
		if best != nil && g.cost+c.cost+1 >= best.cost {
			return
		}
		if n := f.alone(c, left); n != nil {
			cost := f.cost(g, c)
			if !g.rigid && opens(left, n) {
				cost -= openGain
			}
			if best == nil || cost < best.cost {
				best = &found{g: g, c: *c, n: n, cost: cost}
			}
		}
	}
	if g.rigid || f.p.Planar {
		f.candidates(g, left, try)
		return best
	}
	// On a particle in space a direction that is a cross product comes last.
	if f.coordinates(try); best != nil {
		return best
	}
	if by := f.eliminate(g); by != nil {
		return &found{g: g, by: by, cost: g.cost + by.each()}
	}
	f.forces(g, left, crossCost, try)
	return best
}

// opens tells that once a symbol is known another is alone along a coordinate.
func opens(left []*net, known *net) bool {
	for k := range 3 {
		others := 0
		for _, n := range left {
			if n != known && r3.Dot(n.f, problem.Axes()[k]) != 0 {
				others++
			}
		}
		if others == 1 {
			return true
		}
	}
	return false
}

// alone gives the one symbol that an equation contains, or nil.
func (f *finder) alone(c *candidate, left []*net) *net {
	var only *net
	for _, n := range left {
		if f.coef(c, n) == 0 {
			continue
		}
		if only != nil {
			return nil
		}
		only = n
	}
	if only == nil || !f.usable(c, only) || !f.fixed(only.Symbol) {
		return nil
	}
	return only
}

// plainCost adds up an equation's terms, and notes which of them were found before.
func (f *finder) plainCost(g *group, c *candidate) float64 {
	f.needs = f.needs[:0]
	terms, carried := 0, 0
	for i := range g.all {
		switch n := &g.all[i]; {
		case f.coef(c, n) == 0:
		case !f.isKnown(n) || n.Symbol < 0:
			terms++
		default:
			f.needs = append(f.needs, n.Symbol)
			if f.value[n.Symbol] != 0 {
				carried++
			}
		}
	}
	return g.cost + c.cost + float64(terms) + knownCost*float64(carried)
}

// cost is what an equation costs. deep counts what the known terms were derived by as
// well, where it is not needed anyway.
func (f *finder) cost(g *group, c *candidate) float64 {
	cost := f.plainCost(g, c)
	if f.deep {
		for _, i := range f.behind(f.needs) {
			cost += slipCost
			if !f.order.Steps[i].wanted {
				cost += f.order.Steps[i].cost
			}
		}
	}
	return cost
}

// behind lists the steps that symbols were derived by, each once.
func (f *finder) behind(symbols []int) (steps []int) {
	for _, symbol := range symbols {
		for _, i := range f.derived[symbol] {
			if !slices.Contains(steps, i) {
				steps = append(steps, i)
			}
		}
	}
	return steps
}

// accept puts an equation or an elimination down and marks what it gives. The next one of the same section
// costs no new drawing.
func (f *finder) accept(best *found) {
	if len(best.g.cut) > 0 {
		best.g.cost = 0
	}
	if best.by != nil {
		step := Step{Kind: Together, Finds: best.by.solved(), Relations: best.by.relations}
		for _, c := range best.by.of {
			step.Equations = append(step.Equations, f.equation(best.g, c))
		}
		f.put(step)
		return
	}
	e := f.equation(best.g, best.c, best.n)
	f.put(Step{Kind: One, Equations: []Equation{e}, Finds: []Found{{best.n.Symbol, e.solve()}}})
}

func (f *finder) put(step Step) {
	for i := range step.Equations {
		step.cost += step.Equations[i].cost
	}
	step.Needs = append(step.Needs, symbolsIn(step.Equations, true)...)
	by := append(f.behind(step.Needs), len(f.order.Steps))
	f.order.Steps = append(f.order.Steps, step)
	for _, x := range step.Finds {
		f.derived[x.Symbol] = by
		f.mark(x.Symbol, x.Value)
		if f.wanted[x.Symbol] {
			for _, i := range by {
				f.order.Steps[i].wanted, f.cheaper = true, true
			}
		}
	}
	for _, x := range step.Finds {
		if x.Symbol >= f.n {
			f.components(x)
		}
	}
}

// components takes the force in a member apart.
func (f *finder) components(of Found) {
	step := Step{Kind: Components, Member: of.Symbol - f.n, Needs: []int{of.Symbol}}
	for _, s := range f.order.Members[step.Member].Shares {
		if !f.perp(s) {
			step.Finds = append(step.Finds, Found{s.Unknown, s.Coef * of.Value})
		}
	}
	f.put(step)
}

func (f *finder) mark(symbol int, value float64) {
	f.known[symbol], f.value[symbol] = true, value
	for _, g := range f.groups {
		if g.fresh && slices.ContainsFunc(g.nets, func(n net) bool { return n.Symbol == symbol }) {
			g.fresh = false
		}
	}
}

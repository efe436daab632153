package handsolve

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// found is an equation that contains a single unknown symbol, and what it costs.
type found struct {
	g    *group
	c    candidate
	n    *net
	cost float64
}

// search writes the cheapest equation with one unknown left, again and again; where
// there is none, one about an axis that must be worked out, then one for a section,
// then the smallest set of equations that must be solved together. It stops when what
// is wanted is derived, and drops what did not lead there.
func (f *finder) search() {
	for k := range f.route.Members {
		step := Step{Kind: TwoForce, Member: k}
		for _, s := range f.route.Members[k].Shares {
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
		best := f.cheapest()
		if best == nil {
			best = f.exactAxis()
		}
		if best != nil {
			f.accept(best)
		} else if !f.addSections() && !f.together() && !f.allTogether() {
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
	for i, step := range slices.Backward(f.route.Steps) {
		if step.Kind != TwoForce && !slices.ContainsFunc(step.Finds, func(x Found) bool { return needed[x.Symbol] }) {
			f.route.Steps = slices.Delete(f.route.Steps, i, i+1)
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
	for i := range f.route.Steps {
		s := &f.route.Steps[i]
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
		return f.tied[symbol] < 0 && f.s.X[symbol].Fixed
	}
	for _, s := range f.route.Members[symbol-f.n].Shares {
		if !f.perp(s) {
			return f.s.X[s.Unknown].Fixed
		}
	}
	return false
}

// perp tells that an unknown of a joint is perpendicular to the member: it is zero.
func (f *finder) perp(s Share) bool { return math.Abs(s.Coef) <= f.tol }

func (f *finder) cheapest() *found {
	var best *found
	for _, g := range f.groups {
		if !g.fresh {
			g.best, g.fresh = f.single(g), true
		} else if f.cheaper && g.best != nil {
			g.best.cost = f.cost(g, &g.best.c, 1)
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
	f.candidates(g, left, func(c *candidate) {
		if best != nil && f.base(g, c)+1 >= best.cost {
			return
		}
		if n := f.alone(c, left); n != nil {
			cost := f.cost(g, c, 1)
			if !g.rigid && opens(left, n) {
				cost -= openGain
			}
			if best == nil || cost < best.cost {
				best = &found{g, *c, n, cost}
			}
		}
	})
	return best
}

// opens tells that once a symbol is known another is alone along a coordinate.
func opens(left []*net, known *net) bool {
	for k := range 3 {
		others := 0
		for _, n := range left {
			if n != known && r3.Dot(n.f, axis(k)) != 0 {
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
	if only == nil || !f.usable(c, only) || !f.fixed(only.symbol) {
		return nil
	}
	return only
}

func (f *finder) base(g *group, c *candidate) float64 {
	switch {
	case len(g.cut) > 0 && g.drawn:
		return c.cost
	case len(g.cut) > 0:
		return c.cost + g.cutCost + bodyCost*float64(len(g.bodies))
	case len(g.bodies) == 1:
		return c.cost
	case g.whole && g.supported:
		return c.cost + supportsCost
	case g.whole:
		return c.cost + wholeCost
	case g.solid:
		return c.cost + setCost
	}
	return c.cost + sectionCost
}

// cost adds up an equation's terms, of which so many are left. deep counts what
// the known ones were derived by as well, where it is not needed anyway.
func (f *finder) cost(g *group, c *candidate, left int) float64 {
	cost := f.base(g, c) + float64(left)
	f.needs = f.needs[:0]
	for i := range g.nets {
		n := &g.nets[i]
		if !f.known[n.symbol] || f.coef(c, n) == 0 {
			continue
		}
		f.needs = append(f.needs, n.symbol)
		if f.value[n.symbol] != 0 {
			cost += knownCost
		}
	}
	for i := range g.loads {
		if f.coef(c, &g.loads[i]) != 0 {
			cost++
		}
	}
	if f.deep {
		for _, i := range f.behind(f.needs) {
			cost += slipCost
			if !f.route.Steps[i].wanted {
				cost += f.route.Steps[i].cost
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

// accept puts an equation down and marks what it gives.
func (f *finder) accept(best *found) {
	best.g.drawn = true
	e := f.equation(best.g, &best.c, best.n)
	f.put(Step{Kind: One, Equations: []Equation{e}, Finds: []Found{{best.n.symbol, e.solve()}}, Needs: e.needs()})
}

func (f *finder) put(step Step) {
	for i := range step.Equations {
		e := &step.Equations[i]
		step.cost += f.base(e.g, &e.c)
		for _, t := range e.Terms {
			switch {
			case t.Known && t.Symbol >= 0 && t.Value != 0:
				step.cost += knownCost
			case !t.Known || t.Symbol < 0:
				step.cost++
			}
		}
	}
	by := append(f.behind(step.Needs), len(f.route.Steps))
	f.route.Steps = append(f.route.Steps, step)
	for _, x := range step.Finds {
		f.derived[x.Symbol] = by
		f.mark(x.Symbol, x.Value)
		if f.wanted[x.Symbol] {
			for _, i := range by {
				f.route.Steps[i].wanted, f.cheaper = true, true
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
	for _, s := range f.route.Members[step.Member].Shares {
		if !f.perp(s) {
			step.Finds = append(step.Finds, Found{s.Unknown, s.Coef * of.Value})
		}
	}
	f.put(step)
}

func (f *finder) mark(symbol int, value float64) {
	f.known[symbol], f.value[symbol] = true, value
	for _, g := range f.groups {
		if g.fresh && slices.ContainsFunc(g.nets, func(n net) bool { return n.symbol == symbol }) {
			g.fresh = false
		}
	}
}

// solve gives the value of the symbol that is not known:
//
//	x = -Σ Coef·Value / Coef of x
func (e *Equation) solve() float64 {
	sum, largest, coef := 0.0, 0.0, 1.0
	for _, t := range e.Terms {
		if !t.Known {
			coef = t.Coef
			continue
		}
		sum += t.Coef * t.Value
		largest = max(largest, math.Abs(t.Coef*t.Value))
	}
	if math.Abs(sum) <= roundingTol*float64(len(e.Terms))*largest {
		return 0
	}
	return -sum / coef
}

// needs lists the symbols found before.
func (e *Equation) needs() (out []int) {
	for _, t := range e.Terms {
		if t.Known && t.Symbol >= 0 {
			out = append(out, t.Symbol)
		}
	}
	return out
}

package handsolve

import (
	"math"
)

// found is an equation that holds one symbol alone, and what it costs.
type found struct {
	g    *group
	c    candidate
	n    *net
	cost float64
}

// search takes the cheapest equation with one unknown left, again and again;
// where there is none, an axis that must be worked out, then sections, then the
// smallest set of equations that must be solved together.
func (f *finder) search() {
	for k := range f.route.Members {
		step := Step{Kind: TwoForce, Member: k}
		for _, s := range f.route.Members[k].Shares {
			if f.across(s) {
				step.Finds = append(step.Finds, Found{s.Unknown, 0})
				f.mark(s.Unknown, 0)
			}
		}
		f.route.Steps = append(f.route.Steps, step)
	}
	for f.more() {
		if best := f.cheapest(); best != nil {
			f.take(best)
			continue
		}
		if best := f.exactAxis(); best != nil {
			f.take(best)
			continue
		}
		if f.addSections() {
			continue
		}
		if !f.together() && !f.allTogether() {
			return
		}
	}
}

// more tells whether a symbol that has a value is still to be found.
func (f *finder) more() bool {
	for symbol := range f.known {
		if !f.known[symbol] && f.fixed(symbol) {
			return true
		}
	}
	return false
}

// fixed tells that a symbol has one value; an unknown that is a share of a
// member's force is found with it.
func (f *finder) fixed(symbol int) bool {
	if symbol < f.n {
		return f.tied[symbol] < 0 && f.s.X[symbol].Fixed
	}
	for _, s := range f.route.Members[symbol-f.n].Shares {
		if !f.across(s) {
			return f.s.X[s.Unknown].Fixed
		}
	}
	return false
}

// across tells that an unknown of a joint acts across the member: it is zero.
func (f *finder) across(s Share) bool { return math.Abs(s.Coef) <= f.tol }

func (f *finder) cheapest() *found {
	var best *found
	for _, g := range f.groups {
		if !g.fresh {
			g.best, g.fresh = f.single(g), true
		}
		if g.best != nil && (best == nil || g.best.cost < best.cost) {
			best = g.best
		}
	}
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
			if cost := f.cost(g, c, 1); best == nil || cost < best.cost {
				best = &found{g, *c, n, cost}
			}
		}
	})
	return best
}

// alone gives the one symbol that an equation holds, or nil.
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
	cost := c.cost
	switch {
	case len(g.cut) > 0:
		cost += sectionCost + bodyCost*float64(len(g.bodies))
	case len(g.bodies) == 1:
	case g.whole && g.supported:
		cost += supportsCost
	case g.whole:
		cost += wholeCost
	case g.solid:
		cost += setCost
	default:
		cost += sectionCost
	}
	return cost
}

// cost adds up an equation's terms, of which so many are left.
func (f *finder) cost(g *group, c *candidate, left int) float64 {
	cost := f.base(g, c) + float64(left)
	for i := range g.nets {
		if n := &g.nets[i]; f.known[n.symbol] && f.value[n.symbol] != 0 && f.coef(c, n) != 0 {
			cost += knownCost
		}
	}
	for i := range g.loads {
		if f.coef(c, &g.loads[i]) != 0 {
			cost++
		}
	}
	return cost
}

// take puts an equation down and marks what it gives.
func (f *finder) take(best *found) {
	e := f.equation(best.g, &best.c, best.n)
	f.put(Step{Kind: One, Equations: []Equation{e}, Finds: []Found{{best.n.symbol, e.solve()}}, Needs: e.needs()})
}

func (f *finder) put(step Step) {
	f.route.Steps = append(f.route.Steps, step)
	for _, x := range step.Finds {
		f.mark(x.Symbol, x.Value)
		if x.Symbol < f.n {
			continue
		}
		k := x.Symbol - f.n
		parts := Step{Kind: Components, Member: k, Needs: []int{x.Symbol}}
		for _, s := range f.route.Members[k].Shares {
			if f.across(s) {
				continue
			}
			v := s.Coef * x.Value
			parts.Finds = append(parts.Finds, Found{s.Unknown, v})
			f.mark(s.Unknown, v)
		}
		f.route.Steps = append(f.route.Steps, parts)
	}
}

func (f *finder) mark(symbol int, value float64) {
	f.known[symbol], f.value[symbol] = true, value
	for _, g := range f.groups {
		if !g.fresh {
			continue
		}
		for i := range g.nets {
			if g.nets[i].symbol == symbol {
				g.fresh = false
				break
			}
		}
	}
}

// solve gives the value of the symbol that is not known:
//
//	x = -Σ Coef·Value / Coef of x
func (e *Equation) solve() float64 {
	sum, most, coef := 0.0, 0.0, 1.0
	for _, t := range e.Terms {
		if !t.Known {
			coef = t.Coef
			continue
		}
		sum += t.Coef * t.Value
		most = max(most, math.Abs(t.Coef*t.Value))
	}
	if math.Abs(sum) <= nothingTol*float64(len(e.Terms))*most {
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

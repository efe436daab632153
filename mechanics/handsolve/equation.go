package handsolve

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// equation writes a candidate out for a group; of are the symbols it is solved for.
func (f *finder) equation(g *group, c *candidate, of ...*net) Equation {
	c = f.oriented(c, of)
	if !c.moment && len(of) == 1 && len(c.named.Perp) == 1 && parallel(c.along, of[0]) {
		c.named.Along = of[0].symbol
	}
	e := Equation{Bodies: g.bodies, Whole: g.whole, Cut: g.cut, Moment: c.moment, At: r3.Add(c.at, f.origin), Along: c.along, Named: c.named}
	if !c.moment {
		e.At = r3.Vec{}
	}
	left := f.left(g)
	for _, n := range left {
		if x := f.coef(c, n); x != 0 {
			e.Terms = append(e.Terms, Term{Symbol: n.symbol, Coef: x})
		}
	}
	for i := range g.nets {
		n := &g.nets[i]
		if !f.known[n.symbol] {
			continue
		}
		if x := f.coef(c, n); x != 0 {
			e.Terms = append(e.Terms, Term{Symbol: n.symbol, Coef: x, Value: f.value[n.symbol], Known: true})
		}
	}
	for i := range g.loads {
		n := &g.loads[i]
		if x := f.coef(c, n); x != 0 {
			size := f.loadSize(n)
			e.Terms = append(e.Terms, Term{Symbol: -1, Load: n.load, Coef: x / size, Value: size, Known: true})
		}
	}
	e.g, e.c = g, *c
	return e
}

// drops says why an unknown symbol that is not in an equation drops out.
func (f *finder) drops(e *Equation) {
	for _, n := range f.left(e.g) {
		if f.coef(&e.c, n) == 0 {
			e.drop(f.why(e.g, &e.c, n), n.symbol)
		}
	}
	e.g, e.c = nil, candidate{}
}

// oriented gives a direction that has no name of its own the sense in which the
// unknown counts positive.
func (f *finder) oriented(c *candidate, of []*net) *candidate {
	if c.named.Axis != 0 && len(c.named.Perp) == 0 || c.named.To >= 0 || f.p.Planar && c.moment || len(of) != 1 || f.coef(c, of[0]) > 0 {
		return c
	}
	t := *c
	t.along = r3.Scale(-1, c.along)
	return &t
}

// loadSize is a load's magnitude as the sheet has it.
func (f *finder) loadSize(n *net) float64 {
	size := 0.0
	switch n.load.Kind {
	case LineLoad:
		size = f.p.Lines[n.load.Index].Magnitude.Const
	case CoupleLoad:
		size = f.p.Couples[n.load.Index].Magnitude.Const
	case SpreadLoad:
		size = f.p.Loads[n.load.Index].Total
	case WeightLoad:
		size = f.p.Bodies[n.load.Index].Weight
	}
	switch {
	case size != 0:
		return size
	case n.pull():
		return n.fScale
	}
	return r3.Norm(n.m)
}

func (e *Equation) drop(why Why, symbol int) {
	for i := range e.Drops {
		if e.Drops[i].Why == why {
			e.Drops[i].Symbols = append(e.Drops[i].Symbols, symbol)
			return
		}
	}
	e.Drops = append(e.Drops, Drop{why, []int{symbol}})
}

// why says what keeps a symbol out of an equation. What acts at one place is one
// force, also where it is put together of several, as a push with its friction is.
func (f *finder) why(g *group, c *candidate, n *net) Why {
	var places []net
	for _, b := range g.bodies {
		for k := range f.parts[b] {
			p := &f.parts[b][k]
			if p.symbol != n.symbol {
				continue
			}
			i := 0
			for i < len(places) && places[i].one != p.at {
				i++
			}
			if i == len(places) {
				places = append(places, net{})
			}
			places[i].add(p)
		}
	}
	for i := range places {
		if f.coef(c, &places[i]) != 0 {
			return Balances
		}
	}
	switch {
	case !c.moment && !n.pull():
		return IsCouple
	case !c.moment:
		return Perpendicular
	case f.p.Planar:
		return Through
	case !n.pull():
		return CouplePerp
	case r3.Norm(r3.Cross(c.along, n.f)) <= sameTol*n.fScale:
		return Parallel
	}
	return Intersects
}

// order puts the steps as a person writes them: what follows from a body goes on
// with that body, moments before forces, as far as each has what it needs.
func (f *finder) order() {
	todo := f.route.Steps
	f.route.Steps = make([]Step, 0, len(todo))
	clear(f.known) // why a symbol drops out is said of those that are unknown when a step is written
	var last []int
	for len(todo) > 0 {
		next := f.first(todo, func(a, b *Step) bool { return a.rank(last) < b.rank(last) })
		if todo[next].Kind == One {
			last = todo[next].Equations[0].Bodies
			next = f.first(todo, func(a, b *Step) bool {
				if !a.on(last) || !b.on(last) {
					return a.on(last)
				}
				if am, bm := a.Equations[0].Moment, b.Equations[0].Moment; am || bm {
					return am && !bm
				}
				return a.Finds[0].Symbol < b.Finds[0].Symbol
			})
		}
		step := todo[next]
		todo = slices.Delete(todo, next, next+1)
		for i := range step.Equations {
			f.drops(&step.Equations[i])
		}
		for _, x := range step.Finds {
			f.known[x.Symbol] = true
		}
		f.route.Steps = append(f.route.Steps, step)
	}
}

// on tells that a step is a single equation for some bodies.
func (s *Step) on(bodies []int) bool {
	return s.Kind == One && slices.Equal(s.Equations[0].Bodies, bodies)
}

// rank is where a step stands when the last one was about some bodies: what is seen
// without an equation, what goes on with the bodies, components, other bodies.
func (s *Step) rank(last []int) int {
	switch {
	case s.on(last):
		return 1
	case s.Kind == Components:
		return 2
	case s.Kind == One:
		return 3
	}
	return 0
}

// first is the first of the steps that have what they need, by an order.
func (f *finder) first(todo []Step, before func(a, b *Step) bool) int {
	best := -1
	for i := range todo {
		if slices.ContainsFunc(todo[i].Needs, func(n int) bool { return !f.known[n] }) {
			continue
		}
		if best < 0 || before(&todo[i], &todo[best]) {
			best = i
		}
	}
	return best
}

// dropMembers drops the two-force members that no equation speaks of.
func (f *finder) dropMembers() {
	spoken := slices.Clone(f.wanted)
	for i := range f.route.Steps {
		for _, e := range f.route.Steps[i].Equations {
			for _, t := range e.Terms {
				if t.Symbol >= 0 {
					spoken[t.Symbol] = true
				}
			}
			for _, d := range e.Drops {
				for _, symbol := range d.Symbols {
					spoken[symbol] = true
				}
			}
		}
	}
	f.route.Steps = slices.DeleteFunc(f.route.Steps, func(s Step) bool {
		return s.Kind == TwoForce && !spoken[f.n+s.Member] && !slices.ContainsFunc(s.Finds, func(x Found) bool { return spoken[x.Symbol] })
	})
}

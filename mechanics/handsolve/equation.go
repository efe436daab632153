package handsolve

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
)

// equation writes a candidate out for a group; of are the symbols it is solved for.
func (f *finder) equation(g *group, c *candidate, of ...*net) Equation {
	c = f.turned(c, of)
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

// drops says why what is not known by now, and is not in an equation, drops out.
func (f *finder) drops(e *Equation) {
	for _, n := range f.left(e.g) {
		if f.coef(&e.c, n) == 0 {
			e.drop(f.why(e.g, &e.c, n), n.symbol)
		}
	}
	e.g, e.c = nil, candidate{}
}

// turned gives a direction that has no name of its own the sense in which the
// unknown counts positive.
func (f *finder) turned(c *candidate, of []*net) *candidate {
	if c.named.Axis != 0 && len(c.named.Across) == 0 || c.named.To >= 0 || f.p.Planar && c.moment || len(of) != 1 || f.coef(c, of[0]) > 0 {
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
		return n.fSize
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
		return Across
	case f.p.Planar:
		return Through
	case !n.pull():
		return CoupleAcross
	case r3.Norm(r3.Cross(c.along, n.f)) <= sameTol*n.fSize:
		return Parallel
	}
	return Meets
}

// order puts the steps as a person writes them: what follows from a body goes on
// with that body, moments before forces, as far as each has what it needs.
func (f *finder) order() {
	todo := f.route.Steps
	f.route.Steps = make([]Step, 0, len(todo))
	was := f.known
	done := make([]bool, len(f.known))
	f.known = done // what drops out depends on what is known when a step's turn comes
	defer func() { f.known = was }()
	var last []int
	for len(todo) > 0 {
		first, at := -1, -1
		for i := range todo {
			s := &todo[i]
			if slices.ContainsFunc(s.Needs, func(n int) bool { return !done[n] }) {
				continue
			}
			if s.Kind != One {
				first = i
				break
			}
			if first < 0 {
				first = i
			}
			if at < 0 && slices.Equal(s.Equations[0].Bodies, last) {
				at = i
			}
		}
		if todo[first].Kind == One && at >= 0 {
			first = at
		}
		if todo[first].Kind == One {
			first = sooner(todo, first, done)
			last = todo[first].Equations[0].Bodies
		}
		s := todo[first]
		todo = slices.Delete(todo, first, first+1)
		for i := range s.Equations {
			f.drops(&s.Equations[i])
		}
		for _, x := range s.Finds {
			done[x.Symbol] = true
		}
		f.route.Steps = append(f.route.Steps, s)
	}
}

// sooner is the step for the same bodies that is written first: moments, then
// forces in the order of the unknowns.
func sooner(todo []Step, first int, done []bool) int {
	best := first
	for i := range todo {
		s, b := &todo[i], &todo[best]
		if s.Kind != One || !slices.Equal(s.Equations[0].Bodies, b.Equations[0].Bodies) ||
			slices.ContainsFunc(s.Needs, func(n int) bool { return !done[n] }) {
			continue
		}
		sm, bm := s.Equations[0].Moment, b.Equations[0].Moment
		if sm && !bm || !sm && !bm && s.Finds[0].Symbol < b.Finds[0].Symbol {
			best = i
		}
	}
	return best
}

// bodyOf names the bodies of an equation that is about one alone, or nil.
func (e *Equation) bodyOf(p *problem.Problem) *problem.Body {
	if len(e.Bodies) != 1 {
		return nil
	}
	return &p.Bodies[e.Bodies[0]]
}

package handsolve

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// equation writes a candidate out for a group; of are the symbols it is solved for.
func (f *finder) equation(g *group, c candidate, of ...*net) Equation {
	if len(of) == 1 {
		f.orient(&c, of[0])
	}
	e := Equation{Sum: c.Sum, Bodies: g.bodies, Whole: g.whole, Cut: g.cut, g: g, c: c, cost: f.plainCost(g, &c)}
	if c.Moment {
		e.At = r3.Add(c.At, f.origin)
	}
	for _, known := range []bool{false, true} {
		for i := range g.all {
			n := &g.all[i]
			x := f.coef(&c, n)
			if x == 0 || f.isKnown(n) != known {
				continue
			}
			t := n.Term
			t.Coef, t.Known = x, known
			if t.Symbol < 0 {
				t.Value = n.magnitude()
				t.Coef /= t.Value
			} else if known {
				t.Value = f.value[t.Symbol]
			}
			e.Terms = append(e.Terms, t)
		}
	}
	return e
}

func (f *finder) isKnown(n *net) bool { return n.Symbol < 0 || f.known[n.Symbol] }

// magnitude is that of a load: as the sheet has it, or else of what it exerts.
func (n *net) magnitude() float64 {
	switch {
	case n.Value != 0:
		return n.Value
	case n.pull():
		return n.fScale
	}
	return r3.Norm(n.m)
}

// orient gives a direction that has no name of its own the sense in which the
// unknown counts positive, and names it by the unknown's line of action where it lies along it.
func (f *finder) orient(c *candidate, of *net) {
	named := c.Named.Axis != 0 && len(c.Named.Perp) == 0 || c.Named.To >= 0 || f.p.Planar && c.Moment
	if !named && f.coef(c, of) < 0 {
		c.Along = r3.Scale(-1, c.Along)
	}
	if !c.Moment && len(c.Named.Perp) == 1 && parallel(c.Along, of) {
		c.Named.Along = of.Symbol
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

// drops says why an unknown symbol that is not in an equation drops out; of a section why any
// member cut does, and of the whole why any two-force member does, known or not, as the reader
// sees all of them in its figure.
func (f *finder) drops(e *Equation) {
	for i := range e.g.nets {
		n := &e.g.nets[i]
		if f.known[n.Symbol] && !(len(e.Cut) > 0 && f.isMember(n.Symbol)) && !(e.Whole && n.Symbol >= f.n) || f.coef(&e.c, n) != 0 {
			continue
		}
		why := f.why(e.g, &e.c, n)
		i := slices.IndexFunc(e.Drops, func(d Drop) bool { return d.Why == why })
		if i < 0 {
			i = len(e.Drops)
			e.Drops = append(e.Drops, Drop{Why: why})
		}
		e.Drops[i].Symbols = append(e.Drops[i].Symbols, n.Symbol)
	}
	e.g, e.c = nil, candidate{}
}

// why says what keeps a symbol out of an equation.
func (f *finder) why(g *group, c *candidate, n *net) Why {
	counts := func(part net) bool { return part.Symbol == n.Symbol && f.coef(c, &part) != 0 }
	switch {
	case slices.ContainsFunc(g.bodies, func(b int) bool { return slices.ContainsFunc(f.nets[b], counts) }):
		return Balances
	case !c.Moment && !n.pull():
		return IsCouple
	case !c.Moment:
		return Perpendicular
	case f.p.Planar:
		return Through
	case !n.pull():
		return CouplePerp
	case r3.Norm(r3.Cross(c.Along, n.f)) <= sameTol*n.fScale:
		return Parallel
	}
	return Intersects
}

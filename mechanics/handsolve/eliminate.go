package handsolve

import (
	"math"
	"slices"

	"trivet/mechanics/problem"
)

// Relation is what one equation of an elimination gives: a symbol by another, or its value.
type Relation struct {
	Symbol int
	Is     problem.Affine // in symbols
}

// elimination is sums of forces along the coordinates that are solved one after another: each
// gives a relation by the same symbol, which is substituted in the next; the last gives its value.
type elimination struct {
	of        []candidate
	relations []Relation
	cost      float64
}

// each is what it costs for each symbol that it finds, as a single equation is judged.
func (e *elimination) each() float64 { return e.cost / float64(len(e.relations)) }

// eliminate looks for the cheapest elimination on a particle in space; nil where each sum that
// could be the next contains more than two symbols.
func (f *finder) eliminate(g *group) (best *elimination) {
	f.extend(g, elimination{}, &best)
	return best
}

// extend tries each sum that is left as the next of an elimination.
func (f *finder) extend(g *group, e elimination, best **elimination) {
	f.coordinates(func(c *candidate) {
		if slices.ContainsFunc(e.of, func(of candidate) bool { return of.Named.Axis == c.Named.Axis }) {
			return
		}
		left, put, ok := f.substituted(g, c, e.relations)
		next := elimination{of: append(slices.Clone(e.of), *c), cost: e.cost + f.cost(g, c) + put*substituteCost}
		if !ok || *best != nil && next.cost >= (*best).cost {
			return
		}
		with := func(r Relation) elimination {
			next.relations = append(slices.Clone(e.relations), r)
			return next
		}
		by := -1 // the symbol that is kept
		if len(e.relations) > 0 {
			by = e.relations[0].Is.Terms[0].Unknown
		}
		for k, t := range left.Terms {
			switch {
			case len(left.Terms) == 1 && t.Unknown == by:
				done := with(isolated(left, 0))
				*best = &done
			case len(left.Terms) == 2 && (by < 0 || left.Terms[1-k].Unknown == by):
				f.extend(g, with(isolated(left, k)), best)
			}
		}
	})
}

// isolated solves a sum that is zero for its k-th symbol:
//
//	x = -(Const + Σ Coef·others) / Coef of x
func isolated(sum problem.Affine, k int) Relation {
	x := sum.Terms[k]
	sum.Terms = slices.Delete(slices.Clone(sum.Terms), k, k+1)
	return Relation{x.Unknown, sum.Times(-1 / x.Coef)}
}

// substituted is a sum with relations put in, and how many terms these put in. It fails where a symbol in it has no single value, or
// a coefficient is neither zero nor large enough to be divided by.
func (f *finder) substituted(g *group, c *candidate, relations []Relation) (sum problem.Affine, put float64, ok bool) {
	var size problem.Affine // what the coefficients are sums of
	largest := 0.0
	terms := f.equation(g, *c).Terms
	for _, t := range terms {
		is := problem.Affine{Terms: []problem.Term{{Unknown: t.Symbol, Coef: 1}}}
		if k := slices.IndexFunc(relations, func(r Relation) bool { return r.Symbol == t.Symbol }); t.Known {
			is = problem.Affine{Const: t.Value}
		} else if k >= 0 {
			is = relations[k].Is
			put += float64(len(is.Terms))
			if is.Const != 0 {
				put++
			}
		}
		part := is.Times(t.Coef)
		sum, largest = sum.Plus(part), max(largest, math.Abs(part.Const))
		part.Terms = slices.Clone(part.Terms)
		for k := range part.Terms {
			part.Terms[k].Coef = math.Abs(part.Terms[k].Coef)
		}
		size = size.Plus(part)
	}
	if math.Abs(sum.Const) <= roundingTol*float64(len(terms))*largest {
		sum.Const = 0
	}
	kept := sum.Terms[:0:0]
	for k, t := range sum.Terms {
		switch x := math.Abs(t.Coef) / size.Terms[k].Coef; {
		case x <= f.tol:
		case x <= usableTol || !f.fixed(t.Unknown):
			return sum, put, false
		default:
			kept = append(kept, t)
		}
	}
	sum.Terms = kept
	return sum, put, true
}

// solved puts the values of an elimination down, that of the symbol that is kept first.
func (e *elimination) solved() []Found {
	last := len(e.relations) - 1
	kept := Found{e.relations[last].Symbol, e.relations[last].Is.Const}
	finds := []Found{kept}
	for _, r := range e.relations[:last] {
		x, _ := r.Is.Sum(func(int) (float64, bool) { return kept.Value, true })
		finds = append(finds, Found{r.Symbol, x})
	}
	return finds
}

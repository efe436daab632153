package handsolve

import (
	"gonum.org/v1/gonum/spatial/r3"
)

// spaceForces are the directions perpendicular to two others, or to one and a
// coordinate: those of symbols left and, so that fewer terms stay, of known ones.
func (f *finder) spaceForces(g *group, left []*net, cost float64, try func(*candidate)) {
	var all []*net
	all = append(all, left...)
	for i := range g.nets {
		if f.known[g.nets[i].symbol] {
			all = append(all, &g.nets[i])
		}
	}
	for i, a := range left {
		for k := range all {
			if k <= i {
				continue
			}
			b := all[k]
			u, ok := unit(r3.Cross(a.f, b.f), a.fScale*b.fScale)
			if !ok || onAxis(u) {
				continue
			}
			c := candidate{along: u, named: named(), cost: cost}
			c.named.Perp = []int{a.symbol, b.symbol}
			try(&c)
		}
		for k := range 3 {
			u, ok := unit(r3.Cross(a.f, axis(k)), a.fScale)
			if !ok || onAxis(u) {
				continue
			}
			c := candidate{along: u, named: named(), cost: cost}
			c.named.Perp, c.named.Axis = []int{a.symbol}, "xyz"[k]
			try(&c)
		}
	}
}

// spacePoints is up to how many points axes are laid through in space.
const spacePoints = 14

// spaceMoments are moments about axes through named points: along a coordinate,
// to another point, along a line of action, or intersecting two lines of action; and
// about lines of action themselves.
func (f *finder) spaceMoments(g *group, left []*net, try func(*candidate)) {
	points := f.points(g)
	for _, i := range points {
		for k := range 3 {
			c := candidate{moment: true, at: f.at[i], along: axis(k), named: named(), cost: f.pointCost(g, i)}
			c.named.Point, c.named.Axis = i, "xyz"[k]
			try(&c)
		}
	}
	points = points[:min(len(points), spacePoints)]
	for i, a := range points {
		for _, b := range points[i+1:] {
			u, ok := unit(r3.Sub(f.at[b], f.at[a]), f.length)
			if !ok || onAxis(u) {
				continue
			}
			c := candidate{moment: true, at: f.at[a], along: u, named: named(), cost: pairCost}
			c.named.Point, c.named.To = a, b
			try(&c)
		}
	}
	f.lineAxes(left, try)
	if len(left) > manyLines {
		return
	}
	for _, i := range points {
		f.axesThrough(i, left, try)
	}
}

// lineAxes are the lines of action themselves.
func (f *finder) lineAxes(left []*net, try func(*candidate)) {
	for _, n := range left {
		u, ok := unit(n.f, n.fScale)
		if !ok || n.parts > 1 {
			continue
		}
		c := candidate{moment: true, at: n.one, along: u, named: named(), cost: lineCost}
		c.named.Along = n.symbol
		try(&c)
	}
}

// axesThrough are the axes through a point along a line of action, and those
// that intersect two lines: the planes of the point with either line cut in them.
func (f *finder) axesThrough(i int, left []*net, try func(*candidate)) {
	at := f.at[i]
	for k, a := range left {
		if u, ok := unit(a.f, a.fScale); ok && !onAxis(u) {
			c := candidate{moment: true, at: at, along: u, named: named(), cost: parallelCost}
			c.named.Point, c.named.Along = i, a.symbol
			try(&c)
		}
		ma := a.about(at)
		sa := f.length*a.fScale + a.mScale
		if r3.Norm(ma) <= sameTol*sa {
			continue
		}
		for _, b := range left[k+1:] {
			mb := b.about(at)
			sb := f.length*b.fScale + b.mScale
			if r3.Norm(mb) <= sameTol*sb {
				continue
			}
			u, ok := unit(r3.Cross(ma, mb), sa*sb)
			if !ok || onAxis(u) {
				continue
			}
			c := candidate{moment: true, at: at, along: u, named: named(), cost: intersectCost}
			c.named.Point, c.named.Perp = i, []int{a.symbol, b.symbol}
			try(&c)
		}
	}
}

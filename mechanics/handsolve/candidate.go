package handsolve

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
)

// What an equation costs beside its terms: a person likes forces along the
// coordinates best, then moments about the point that a body's moments are taken
// about, then named points and axes, and last what has to be worked out first.
const (
	aboutCost      = 1.0  // moments about the point chosen for the body
	pointCost      = 1.75 // moments about a named point, or an axis along a coordinate through it
	offCost        = 2.5  // the same for all bodies together, where no reaction acts at the point
	pairCost       = 2.25 // an axis through two named points
	lineCost       = 2.5  // an axis along a line of action
	parallelCost   = 2.75 // an axis through a named point along a line of action
	perpCost       = 1.0  // forces along a direction perpendicular to others, at a joint
	crossCost      = 12.0 // the same in space, where it is a cross product: after an elimination by components
	substituteCost = 0.5  // each term of a relation put into an equation of an elimination
	skewCost       = 2.25 // the same for bodies
	intersectCost  = 3.0  // the point where two lines intersect; an axis through a named point that intersects two lines

	openGain     = 0.5  // at a joint: the next unknown is then alone along a coordinate
	slipCost     = 0.1  // an equation before, that was written anyway
	knownCost    = 1.1  // a term found before: its slips are carried on
	supportsCost = -2.0 // all bodies together, supported by joints only: reactions come first
	wholeCost    = 0.5  // all bodies together else
	setCost      = 1.0  // bodies together
	sectionCost  = 3.0  // joints together: joints one by one come first
	partCost     = 1.5  // a section where those count that are asked for
	memberCost   = 0.8  // a member that a section cuts and nobody asks for
	bodyCost     = 0.01 // each body of a section, so that the smaller part is kept
)

// How far candidates are looked for.
const (
	// manyLines is how many symbols may be left for the points where two of their
	// lines intersect to be of use: in the plane the third is then alone, and a few more
	// may pass through the point as well.
	manyLines = 8
	// manyPoints is up to how many points of a sheet a person looks at beyond those
	// of the bodies cut free.
	manyPoints = 16
	// spacePoints is up to how many points axes are laid through in space.
	spacePoints = 14
	// sameTol is how near two places are one, relative to the arms of the problem.
	sameTol = 1e-9
)

// candidate is an equation that may be written for a group. Its point is from the origin.
type candidate struct {
	Sum
	cost float64
}

// perp names what is perpendicular to the lines of action of symbols, or where they intersect.
func perp(of ...*net) Named {
	n := Named{Point: -1, To: -1, Along: -1}
	for _, a := range of {
		n.Perp = append(n.Perp, a.Symbol)
	}
	return n
}

// through names an axis through a point, perhaps along or perpendicular to something.
func through(point int, perpendicular ...*net) Named {
	n := perp(perpendicular...)
	n.Point = point
	return n
}

// coef is what a unit of a symbol has in the equation; rounding is 0.
func (f *finder) coef(c *candidate, n *net) float64 {
	x, size := f.coefScale(c, n)
	if x > size*f.tol || x < -size*f.tol {
		return x
	}
	return 0
}

func (f *finder) coefScale(c *candidate, n *net) (x, size float64) {
	if !c.Moment {
		return r3.Dot(c.Along, n.f), n.fScale
	}
	return r3.Dot(c.Along, n.about(c.At)), n.mScale + r3.Norm(c.At)*n.fScale
}

// usable tells that a coefficient is large enough to be divided by.
func (f *finder) usable(c *candidate, n *net) bool {
	x, _ := f.coefScale(c, n)
	size := n.fScale
	if c.Moment {
		size = n.mScale + f.length*n.fScale
	}
	return (x > usableTol*size || x < -usableTol*size) && finite(x)
}

// candidates lists the equations for a group with these symbols left.
func (f *finder) candidates(g *group, left []*net, try func(*candidate)) {
	f.coordinates(try)
	cost := perpCost
	switch {
	case g.rigid:
		cost = skewCost
	case !f.p.Planar:
		cost = crossCost
	}
	f.forces(g, left, cost, try)
	if !g.rigid {
		return
	}
	points := f.points(g)
	for _, i := range points {
		f.about(i, f.pointCost(g, i), try)
	}
	if f.p.Planar {
		f.intersections(left, try)
	} else {
		f.spaceAxes(points[:min(len(points), spacePoints)], left, try)
	}
}

// coordinates are the sums of forces along the coordinates.
func (f *finder) coordinates(try func(*candidate)) {
	for _, k := range f.axes {
		c := candidate{Sum: Sum{Along: problem.Axes()[k], Named: perp()}}
		c.Named.Axis = "xyz"[k]
		try(&c)
	}
}

// about are the sums of moments about a point; in space about each axis through it.
func (f *finder) about(point int, cost float64, try func(*candidate)) {
	for _, k := range f.turns {
		c := candidate{Sum{Moment: true, At: f.at[point], Along: problem.Axes()[k], Named: through(point)}, cost}
		if !f.p.Planar {
			c.Named.Axis = "xyz"[k]
		}
		try(&c)
	}
}

// unit gives the unit vector; false where there is none worth the name beside size.
func unit(v r3.Vec, size float64) (r3.Vec, bool) {
	n := r3.Norm(v)
	if n <= parallelSine*size || n == 0 {
		return r3.Vec{}, false
	}
	return r3.Scale(1/n, v), true
}

// skew is unit for what lies along no coordinate: those are tried already.
func skew(v r3.Vec, size float64) (r3.Vec, bool) {
	u, ok := unit(v, size)
	const along = 1 - parallelSine*parallelSine
	return u, ok && max(u.X, -u.X, u.Y, -u.Y, u.Z, -u.Z) < along
}

// parallel tells that a force acts along a unit vector.
func parallel(u r3.Vec, n *net) bool {
	_, apart := unit(r3.Cross(u, n.f), n.fScale)
	return n.pull() && !apart
}

// forces are the directions perpendicular to a line of action and a coordinate or, in space, another
// line of action: those of symbols left and, so that fewer terms stay, of known ones. One in the plane
// that is along the line of another, as along an incline that the normal force is perpendicular to, is
// as good as a coordinate.
func (f *finder) forces(g *group, left []*net, cost float64, try func(*candidate)) {
	all := slices.Clone(left)
	for i := range g.nets {
		if f.known[g.nets[i].Symbol] {
			all = append(all, &g.nets[i])
		}
	}
	for i, a := range all {
		for k := i + 1; k < len(all) && i < len(left) && !f.p.Planar; k++ {
			if u, ok := skew(r3.Cross(a.f, all[k].f), a.fScale*all[k].fScale); ok {
				try(&candidate{Sum{Along: u, Named: perp(a, all[k])}, cost})
			}
		}
		for _, k := range f.turns {
			u, ok := skew(r3.Cross(problem.Axes()[k], a.f), a.fScale)
			c := candidate{Sum{Along: u, Named: perp(a)}, cost}
			along := f.p.Planar && slices.ContainsFunc(left, func(m *net) bool { return parallel(u, m) })
			if !f.p.Planar {
				c.Named.Axis = "xyz"[k]
			} else if along {
				c.cost -= perpCost
			}
			if ok && (along || i < len(left)) {
				try(&c)
			}
		}
	}
}

// intersections are the points in the plane where two lines of action intersect.
func (f *finder) intersections(left []*net, try func(*candidate)) {
	if len(left) > manyLines {
		return
	}
	for i, a := range left {
		for _, b := range left[i+1:] {
			if at, ok := intersect(a, b); ok && f.pointOn(at, problem.Axes()[2]) < 0 {
				try(&candidate{Sum{Moment: true, At: at, Along: problem.Axes()[2], Named: perp(a, b)}, intersectCost})
			}
		}
	}
}

// intersect solves q × F = M for two lines of action in the plane:
//
//	qx Fy - qy Fx = M
func intersect(a, b *net) (r3.Vec, bool) {
	det := a.f.X*b.f.Y - a.f.Y*b.f.X
	if det <= parallelSine*a.fScale*b.fScale && det >= -parallelSine*a.fScale*b.fScale {
		return r3.Vec{}, false
	}
	q := r3.Vec{X: (a.f.X*b.m.Z - b.f.X*a.m.Z) / det, Y: (a.f.Y*b.m.Z - b.f.Y*a.m.Z) / det}
	// One step of refinement: the residual of far-off points is what counts.
	ra, rb := a.about(q).Z, b.about(q).Z
	q.X += (a.f.X*rb - b.f.X*ra) / det
	q.Y += (a.f.Y*rb - b.f.Y*ra) / det
	return q, finite(q.X) && finite(q.Y)
}

// spaceAxes are axes through named points: to another point, along a line of action, or
// intersecting two lines of action; and lines of action themselves.
func (f *finder) spaceAxes(points []int, left []*net, try func(*candidate)) {
	for i, a := range points {
		for _, b := range points[i+1:] {
			if u, ok := skew(r3.Sub(f.at[b], f.at[a]), f.length); ok {
				c := candidate{Sum{Moment: true, At: f.at[a], Along: u, Named: through(a)}, pairCost}
				c.Named.To = b
				try(&c)
			}
		}
	}
	for _, n := range left {
		if u, ok := unit(n.f, n.fScale); ok && n.parts == 1 {
			c := candidate{Sum{Moment: true, At: n.one, Along: u, Named: perp()}, lineCost}
			c.Named.Along = n.Symbol
			try(&c)
		}
	}
	if len(left) <= manyLines {
		for _, i := range points {
			f.axesThrough(i, left, try)
		}
	}
}

// axesThrough are the axes through a point along a line of action, and those
// that intersect two lines: the planes of the point with either line cut in them.
func (f *finder) axesThrough(i int, left []*net, try func(*candidate)) {
	at := f.at[i]
	arm := func(n *net) (moment r3.Vec, size float64, apart bool) {
		moment, size = n.about(at), f.length*n.fScale+n.mScale
		return moment, size, r3.Norm(moment) > sameTol*size
	}
	for k, a := range left {
		if u, ok := skew(a.f, a.fScale); ok {
			c := candidate{Sum{Moment: true, At: at, Along: u, Named: through(i)}, parallelCost}
			c.Named.Along = a.Symbol
			try(&c)
		}
		ma, sa, apart := arm(a)
		for _, b := range left[k+1:] {
			mb, sb, too := arm(b)
			if u, ok := skew(r3.Cross(ma, mb), sa*sb); ok && apart && too {
				try(&candidate{Sum{Moment: true, At: at, Along: u, Named: through(i, a, b)}, intersectCost})
			}
		}
	}
}

// pointOn is a named point on an axis, or -1.
func (f *finder) pointOn(at, along r3.Vec) int {
	for i := range f.at {
		if f.p.Points[i].OK && r3.Norm(r3.Cross(r3.Sub(f.at[i], at), along)) <= sameTol*f.length {
			return i
		}
	}
	return -1
}

// pointAt is the first point at a place, or -1.
func (f *finder) pointAt(at r3.Vec) int {
	return slices.IndexFunc(f.p.Points, func(p problem.Point) bool { return p.OK && p.At == at })
}

// points are the points that moments are taken about: those of the bodies first,
// then others of the sheet; one of those at the same place.
func (f *finder) points(g *group) []int {
	var out []int
	seen := map[r3.Vec]bool{}
	put := func(i int) {
		if f.p.Points[i].OK && !seen[f.at[i]] {
			seen[f.at[i]] = true
			out = append(out, i)
		}
	}
	for _, b := range g.bodies {
		for _, i := range f.p.Bodies[b].Points {
			put(i)
		}
	}
	if len(f.p.Points) <= manyPoints {
		for i := range f.p.Points {
			put(i)
		}
	}
	return out
}

func (f *finder) pointCost(g *group, i int) float64 {
	about := func(b int) bool { return !f.p.Bodies[b].Particle && f.p.Bodies[b].About == f.p.Points[i].At }
	switch {
	case slices.ContainsFunc(g.bodies, about):
		return aboutCost
	case g.whole && !slices.ContainsFunc(g.nets, func(n net) bool { return n.one == f.at[i] }):
		return offCost
	}
	return pointCost
}

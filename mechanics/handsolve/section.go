package handsolve

import ()

// A section cuts three members, as many as a part of a plane structure has
// equations. Edges are the lines of unknown magnitude between two bodies; what
// else joins bodies is not cut.

// manyEdges is up to how many members sections are looked for: their number
// grows with the square.
const manyEdges = 100

type edge struct {
	a, b   int // bodies
	symbol int
}

type cuts struct {
	f     *finder
	edges []edge
	at    [][]int // edges at each body
	fast  sets    // bodies joined by what is not cut

	order, low, end []int
	bodies          []int // in the order in which they are reached
}

// sets keeps which bodies belong together.
type sets []int

func (s sets) find(i int) int {
	for s[i] != i {
		s[i] = s[s[i]]
		i = s[i]
	}
	return i
}

// addSections makes the groups on either side of every cut of three members,
// once; false where there are none to add.
func (f *finder) addSections() bool {
	if f.sections || !f.p.Planar || len(f.p.Bodies) < 4 {
		return false
	}
	f.sections = true
	c := f.cuts()
	if len(c.edges) > manyEdges {
		return false
	}
	before := len(f.groups)
	seen := map[string]bool{}
	for a := range c.edges {
		for b := a + 1; b < len(c.edges); b++ {
			c.walk(a, b)
			for e := b + 1; e < len(c.edges); e++ {
				f.splitAt(c, a, b, e, seen)
			}
		}
	}
	return len(f.groups) > before
}

func (f *finder) cuts() *cuts {
	n := len(f.p.Bodies)
	c := &cuts{f: f, at: make([][]int, n), fast: make(sets, n), order: make([]int, n), low: make([]int, n), end: make([]int, n)}
	for b := range n {
		c.fast[b] = b
	}
	for symbol, bodies := range f.bodiesOf() {
		if symbol < f.n && len(bodies) == 2 && f.p.Unknowns[symbol].Own {
			if len(f.p.Lines[f.p.Unknowns[symbol].Line].Path) == 2 {
				c.edges = append(c.edges, edge{bodies[0], bodies[1], symbol})
				continue
			}
		}
		for _, b := range bodies[min(1, len(bodies)):] {
			c.fast[c.fast.find(b)] = c.fast.find(bodies[0])
		}
	}
	for i, e := range c.edges {
		c.edges[i].a, c.edges[i].b = c.fast.find(e.a), c.fast.find(e.b)
		c.at[c.edges[i].a] = append(c.at[c.edges[i].a], i)
		c.at[c.edges[i].b] = append(c.at[c.edges[i].b], i)
	}
	return c
}

// walk goes through the bodies without two edges and notes for each the order
// in which it is reached, the earliest one reached back from behind it, and where
// what is behind it ends: an edge that nothing behind it leads back over is a bridge.
func (c *cuts) walk(skipA, skipB int) {
	for b := range c.order {
		c.order[b] = -1
	}
	c.bodies = c.bodies[:0]
	var visit func(b, by int)
	visit = func(b, by int) {
		c.order[b] = len(c.bodies)
		c.low[b] = c.order[b]
		c.bodies = append(c.bodies, b)
		for _, i := range c.at[b] {
			if i == skipA || i == skipB || i == by {
				continue
			}
			to := c.edges[i].a
			if to == b {
				to = c.edges[i].b
			}
			if c.order[to] < 0 {
				visit(to, i)
				c.low[b] = min(c.low[b], c.low[to])
			} else {
				c.low[b] = min(c.low[b], c.order[to])
			}
		}
		c.end[b] = len(c.bodies)
	}
	for b := range c.order {
		if c.order[b] < 0 && c.fast.find(b) == b {
			visit(b, -1)
		}
	}
}

// splitAt makes the two sides of a cut where the third edge is a bridge.
func (f *finder) splitAt(c *cuts, a, b, third int, seen map[string]bool) {
	e := &c.edges[third]
	far := e.b
	if c.order[e.a] > c.order[e.b] {
		far = e.a
	}
	if c.low[far] < c.order[far] || c.low[far] > c.order[far] || e.a == e.b {
		return
	}
	// far's subtree hangs on this edge alone, if the edge is the one it was reached by.
	behind := make([]bool, len(c.order))
	for _, x := range c.bodies[c.order[far]:c.end[far]] {
		behind[x] = true
	}
	for i, other := range c.edges {
		if behind[other.a] != behind[other.b] && i != a && i != b && i != third {
			return
		}
	}
	for _, i := range []int{a, b, third} {
		if behind[c.edges[i].a] == behind[c.edges[i].b] {
			return // this edge is not cut at all: the cut has fewer members
		}
	}
	for _, side := range []bool{true, false} {
		var bodies []int
		key := make([]byte, len(c.order))
		for x := range c.order {
			if behind[c.fast.find(x)] == side {
				bodies = append(bodies, x)
				key[x] = 1
			}
		}
		if len(bodies) < 2 || seen[string(key)] {
			continue
		}
		seen[string(key)] = true
		g := f.group(bodies)
		f.through(g, c.edges[a].symbol, c.edges[b].symbol, c.edges[third].symbol)
		f.groups = append(f.groups, g)
	}
}

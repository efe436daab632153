package problem

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/integrate/quad"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
)

// curve is an intensity that is a function of s, on its way to an area: where it
// has corners, what is under it, and how it is drawn.
type curve struct {
	intensity
	length  float64
	corners []float64 // within the length, ascending
	area    area
	diagram []Ordinate

	err       *diag.Error // why there is no area, and where
	where     float64
	unbounded bool
}

// The quadrature. Each piece is integrated by two rules, whose difference is the
// error of the coarser one, and so far more than that of the finer, which is used.
const (
	finePoints, coarsePoints = 15, 8
	firstPieces              = 4
	// maxPieces bounds the work: some 20,000 intensities, 15 ms.
	maxPieces = 400
	// aimed is the relative error that is aimed at: sums of some hundred terms round
	// by 1e-15.
	aimed = 1e-13
	// narrowest is the width of a piece, of the length, below which places are not
	// told apart.
	narrowest = 1e-13
	// roundingOfSums is the relative error that is reported at least.
	roundingOfSums = 1e-15
	// besideEnd is how near to the ends of a piece corners are looked for, of the length:
	// what a jump nearer than that changes is below what is shown.
	besideEnd = 1e-12
	// lostByKink is the part of the distance of two places, times how far the intensity
	// goes up and down in the piece, that a corner between them is taken to cost: a jump
	// costs less than all of it, a kink in a piece of its own a twentieth.
	lostByKink = 0.25
)

// LoadTol is the relative error of a load's resultant and of its moment from
// which on the resultant is in doubt: a value of nine figures would show it.
const LoadTol = 1e-9

// samePlace is how near two places along a load are one and the same, of its length:
// some roundings of their difference.
const samePlace = 1e-14

// The search for corners: how many places are looked at first, how many corners
// are followed, and how often a place where a number is nearest to zero is closed
// in on (0.618^45 = 4e-10).
const (
	probes       = 257
	smoothProbes = 33 // where no number has corners
	maxCorners   = 200
	closings     = 45
)

// failed tells that there is no area; what is asked of the curve from then on is nothing.
func (c *curve) failed() bool { return c.err != nil || c.unbounded }

// value is the intensity at a place, with the numbers whose zeros are corners where those
// are wanted.
func (c *curve) value(s float64, corners *[]float64) float64 {
	if c.failed() {
		return 0
	}
	v, err := c.at(s, corners)
	if err != nil {
		c.err, c.where = err, s
	}
	return v
}

// probe is a place along the curve with the numbers whose zeros are corners.
type probe struct {
	s float64
	d []float64
}

// probe looks for corners at a place. An intensity that has no value in a corner itself, as
// abs(x)/x has, has one beside it.
func (c *curve) probe(s float64) probe {
	p := probe{s: s}
	if c.failed() {
		return p
	}
	if _, err := c.at(s, &p.d); err != nil && !slices.Contains(p.d, 0) {
		c.err, c.where = err, s
	}
	return p
}

// differs gives the first number that changes its sign between two places, or -1.
func differs(a, b probe) int {
	for k := range min(len(a.d), len(b.d)) {
		if a.d[k]*b.d[k] < 0 {
			return k
		}
	}
	return -1
}

// findCorners finds the places where a number that abs, min, max, a root or a length
// works on changes its sign, by chords and halving, and where one comes nearest to zero. Corners
// within corners come out as well: each place found is looked at on either side.
func (c *curve) findCorners() {
	first := c.probe(0)
	last := smoothProbes - 1
	if len(first.d) > 0 {
		last = probes - 1
	}
	grid := []probe{first}
	for i := 1; i <= last; i++ {
		grid = append(grid, c.probe(c.length*float64(i)/float64(last)))
	}
	var all []probe
	for i, p := range grid {
		all = append(all, p)
		if slices.Contains(p.d, 0) {
			c.corners = append(c.corners, p.s)
		}
		if i == 0 || i == last {
			continue
		}
		for k := range min(len(p.d), len(grid[i-1].d), len(grid[i+1].d)) {
			before, here, after := grid[i-1].d[k], p.d[k], grid[i+1].d[k]
			if before*here <= 0 || here*after <= 0 || abs(here) > abs(before) || abs(here) >= abs(after) {
				continue
			}
			near := c.nearest(k, grid[i-1], grid[i+1])
			c.corners = append(c.corners, near.s)
			all = append(all, near)
		}
	}
	slices.SortFunc(all, func(a, b probe) int { return cmp.Compare(a.s, b.s) })
	for i := 1; i < len(all); i++ {
		c.between(all[i-1], all[i])
	}
	slices.Sort(c.corners)
	c.corners = slices.CompactFunc(c.corners, func(a, b float64) bool { return abs(a-b) <= samePlace*c.length })
	c.corners = slices.DeleteFunc(c.corners, func(s float64) bool { return s <= samePlace*c.length || s >= c.length*(1-samePlace) })
}

// between finds the corners between two places.
func (c *curve) between(a, b probe) {
	k := differs(a, b)
	if k < 0 || b.s-a.s <= samePlace*c.length || len(c.corners) >= maxCorners {
		return
	}
	low, high, off := a, b, samePlace*c.length/2
	for step := 1; high.s-low.s > 2*off; step++ {
		s := low.s + (high.s-low.s)/2
		if step%3 != 0 { // where the chord is zero, and a little towards the farther side, which then closes in
			chord := low.s + (high.s-low.s)*(low.d[k]/(low.d[k]-high.d[k]))
			if chord += math.Copysign(0.9*off, s-chord); low.s < chord && chord < high.s {
				s = chord
			}
		}
		m := c.probe(s)
		if k >= len(m.d) || m.d[k] == 0 { // the corner itself, where q may have no value: on from its sides
			low, high = c.probe(max(a.s, m.s-off)), c.probe(min(b.s, m.s+off))
			break
		}
		if low.d[k]*m.d[k] > 0 {
			low = m
		} else {
			high = m
		}
	}
	c.corners = append(c.corners, low.s+(high.s-low.s)/2)
	c.between(a, low)
	c.between(high, b)
}

// nearest closes in on the place between two others where a number is nearest to
// zero, by the golden section, or finds one where it has passed it.
func (c *curve) nearest(k int, a, b probe) probe {
	const golden = 0.6180339887498949 // (√5 - 1)/2
	at := func(s float64) (p probe, size float64) {
		p = c.probe(s)
		if k < len(p.d) && p.d[k]*a.d[k] > 0 {
			size = abs(p.d[k])
		}
		return p, size
	}
	low, high := a.s, b.s
	x, fx := at(high - golden*(high-low))
	y, fy := at(low + golden*(high-low))
	for range closings {
		switch {
		case fx == 0:
			return x
		case fy == 0:
			return y
		case fx <= fy:
			high, y, fy = y.s, x, fx
			x, fx = at(high - golden*(high-low))
		default:
			low, x, fx = x.s, y, fy
			y, fy = at(low + golden*(high-low))
		}
	}
	return x
}

// piece is a stretch of the curve with what is under it; force and moment have errors.
type piece struct {
	from, to float64
	area
	forceErr, momentErr float64
	believed            bool // its halves, or those of the piece it is a half of, have the same under them
}

// node is a place of the two rules, from 0 to 1, with its weight in either.
type node struct{ at, fine, coarse float64 }

func nodes() []node {
	var at, weight [finePoints]float64
	var out []node
	quad.Legendre{}.FixedLocations(at[:], weight[:], 0, 1)
	for i := range finePoints {
		out = append(out, node{at: at[i], fine: weight[i]})
	}
	quad.Legendre{}.FixedLocations(at[:coarsePoints], weight[:coarsePoints], 0, 1)
	for i := range coarsePoints {
		out = append(out, node{at: at[i], coarse: weight[i]})
	}
	slices.SortFunc(out, func(a, b node) int { return cmp.Compare(a.at, b.at) })
	return out
}

// under integrates over a stretch. It gives the pairs of neighbouring places between
// which a corner lies.
func (c *curve) under(rule []node, from, to float64) (p piece, kinks [][2]probe) {
	p = piece{from: from, to: to}
	w, force, moment := to-from, 0.0, 0.0
	least, most := math.Inf(1), math.Inf(-1)
	var seen []probe
	for _, n := range rule {
		here := probe{s: from + w*n.at}
		v := c.value(here.s, &here.d)
		f, g := n.fine*w*v, n.coarse*w*v
		p.force, p.moment, p.size, p.lever = p.force+f, p.moment+f*here.s, p.size+abs(f), p.lever+abs(f)*here.s
		force, moment = force+g, moment+g*here.s
		least, most = min(least, v), max(most, v)
		if len(here.d) > 0 {
			seen = append(seen, here)
		}
	}
	p.forceErr, p.momentErr = abs(p.force-force), abs(p.moment-moment)
	if off := besideEnd * c.length; len(seen) > 0 && w > 4*off {
		seen = append(append([]probe{c.probe(from + off)}, seen...), c.probe(to-off))
	}
	for i := 1; i < len(seen); i++ {
		if differs(seen[i-1], seen[i]) < 0 {
			continue
		}
		kinks = append(kinks, [2]probe{seen[i-1], seen[i]})
		if len(c.corners) >= maxCorners { // it stays within the piece
			lost := lostByKink * (seen[i].s - seen[i-1].s) * (most - least)
			p.forceErr, p.momentErr = p.forceErr+lost, p.momentErr+lost*seen[i].s
		}
	}
	return p, kinks
}

// measure adds what is under a stretch to the pieces, cut at the corners that show
// only now.
func (c *curve) measure(rule []node, from, to float64, pieces *[]piece) {
	p, kinks := c.under(rule, from, to)
	known := len(c.corners)
	for _, k := range kinks {
		c.between(k[0], k[1])
	}
	cuts := slices.DeleteFunc(slices.Clone(c.corners[known:]), func(s float64) bool {
		return s-from <= samePlace*c.length || to-s <= samePlace*c.length
	})
	if len(cuts) == 0 {
		*pieces = append(*pieces, p)
		return
	}
	slices.Sort(cuts)
	for _, s := range append(cuts, to) {
		if s-from <= samePlace*c.length && s < to {
			continue
		}
		c.measure(rule, from, s, pieces)
		from = s
	}
}

// halve puts the halves of a piece in its place. Where they have another area than the
// piece by more than its error, the error was wrong: they take the difference for theirs,
// and are not believed.
func (c *curve) halve(rule []node, pieces *[]piece, k int) {
	p := (*pieces)[k]
	var halves []piece
	middle := p.from + (p.to-p.from)/2
	c.measure(rule, p.from, middle, &halves)
	c.measure(rule, middle, p.to, &halves)
	now := sumOf(halves)
	force, moment := abs(p.force-now.force), abs(p.moment-now.moment)
	const rounding = 10 * roundingOfSums
	believed := force <= p.forceErr+rounding*p.size && moment <= p.momentErr+rounding*p.lever
	for i := range halves {
		h := &halves[i]
		h.believed = believed
		if !believed {
			h.forceErr = max(h.forceErr, force/float64(len(halves)))
			h.momentErr = max(h.momentErr, moment/float64(len(halves)))
		}
	}
	(*pieces)[k] = halves[0]
	*pieces = append(*pieces, halves[1:]...)
}

// integrate works out the area by adaptive quadrature: the length is cut at all corners,
// and the piece with the largest error is halved until the whole is as exact as
// aimed at. No error is believed of a piece that was never held against its halves.
func (c *curve) integrate() {
	rule := nodes()
	cuts := []float64{0, c.length}
	for k := 1; k < firstPieces; k++ {
		cuts = append(cuts, c.length*float64(k)/firstPieces)
	}
	cuts = append(cuts, c.corners...)
	slices.Sort(cuts)
	cuts = slices.CompactFunc(cuts, func(a, b float64) bool { return abs(a-b) <= samePlace*c.length })
	cuts[len(cuts)-1] = c.length
	pieces := make([]piece, 0, maxPieces)
	for k := 1; k < len(cuts); k++ {
		c.measure(rule, cuts[k-1], cuts[k], &pieces)
	}
	for !c.failed() {
		c.area = sumOf(pieces)
		if len(pieces) >= maxPieces {
			break
		}
		worst := -1
		for k := range pieces {
			if c.area.err <= aimed && (pieces[k].believed || pieces[k].to-pieces[k].from <= narrowest*c.length) {
				continue
			}
			if worst < 0 || pieces[k].share(c.area) > pieces[worst].share(c.area) {
				worst = k
			}
		}
		if worst < 0 {
			break
		}
		p := pieces[worst]
		if p.to-p.from <= narrowest*c.length {
			if c.area.err > LoadTol {
				c.where, c.unbounded = p.from, true
				if 2*p.from > c.length { // the end of the piece that lies nearer to an end
					c.where = p.to
				}
			}
			break
		}
		c.halve(rule, &pieces, worst)
	}
	slices.Sort(c.corners)
	c.area.err = max(c.area.err, roundingOfSums)
}

// share is a piece's part in the relative error of the whole.
func (p piece) share(of area) float64 {
	return max(over(p.forceErr, of.size), over(p.momentErr, of.lever))
}

func sumOf(pieces []piece) (sum area) {
	force, moment := 0.0, 0.0
	for _, p := range pieces {
		sum.force, sum.moment = sum.force+p.force, sum.moment+p.moment
		sum.size, sum.lever = sum.size+p.size, sum.lever+p.lever
		force, moment = force+p.forceErr, moment+p.momentErr
	}
	sum.err = max(over(force, sum.size), over(moment, sum.lever))
	return sum
}

func over(a, b float64) float64 {
	if a == 0 {
		return 0
	}
	return a / b
}

// draw takes the ordinates of the diagram: at equal steps, and on both sides of
// each corner.
func (c *curve) draw() {
	const beside = 1e-9 // of the length: far below what a picture shows
	off := beside * c.length
	var places []float64
	for k := range loadSamples {
		s := c.length * float64(k) / (loadSamples - 1)
		if !slices.ContainsFunc(c.corners, func(x float64) bool { return abs(x-s) <= off }) {
			places = append(places, s)
		}
	}
	for _, s := range c.corners {
		places = append(places, max(0, s-off), min(c.length, s+off))
	}
	slices.Sort(places)
	c.diagram = make([]Ordinate, len(places))
	for k, s := range places {
		c.diagram[k] = Ordinate{s, c.value(s, nil)}
	}
}

// failCurve reports why a curve has no area, and where along the load.
func (r *reading) failCurve(ref sheet.Ref, c *curve) bool {
	at := r.p.Units.Length.Format(c.where, max(r.p.Figures, placeFigures))
	if c.unbounded {
		cell, _ := r.s.Cell(ref)
		return r.fail(ref, whole(cell.Text), "the intensity is unbounded near s = "+at, "an intensity that is finite all along the load")
	}
	err := *c.err
	everywhere := true
	for _, share := range []float64{1 / math.Pi, 1 / math.E} { // places that nobody types
		_, other := c.at(share*c.length, nil)
		everywhere = everywhere && other != nil && other.Msg == err.Msg
	}
	if !everywhere {
		err.Msg += " at s = " + at
	}
	c.at(c.where, nil) // tells failCell whether it is only the echo of another cell's error
	return r.failCell(ref, &err)
}

// placeFigures is how many figures of a place along a load are given at least.
const placeFigures = 4

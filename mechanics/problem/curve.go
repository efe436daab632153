package problem

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/integrate/quad"

	"trivet/mechanics/diag"
)

// curve is an intensity that is a function of s, on its way to an area: it is cut into
// pieces without corners, each integrated by a rule that is exact for smooth ones.
type curve struct {
	at      intensity
	length  float64
	corners []float64 // within the length
	pieces  []piece

	err       *diag.Error // why there is no area, and where
	where     float64
	unbounded bool
}

// piece is a stretch of the curve with what is under it.
type piece struct {
	from, to float64
	area
}

func (p piece) middle() float64 { return p.from + (p.to-p.from)/2 }

const (
	firstPieces = 8 // of the whole length
	plainPlaces = 33
	// maxPieces bounds the work: some 20,000 intensities, 15 ms.
	maxPieces = 400
	// maxCorners is how many corners are cut at.
	maxCorners = 200
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
	// touches is how near to zero a number is, of what it is beside, that touches it.
	touches = 1e-6
)

// LoadTol is the relative error of a load's resultant and of its moment from
// which on the resultant is in doubt: a value of nine figures would show it.
const LoadTol = 1e-9

// samePlace is how near two places along a load are one and the same, of its length:
// some roundings of their difference.
const samePlace = 1e-14

// gaussAt and gaussWeight are the rule of 15 points, from 0 to 1, which is given from 1 to 0.
var gaussAt, gaussWeight = func() (at, weight [15]float64) {
	quad.Legendre{}.FixedLocations(at[:], weight[:], 0, 1)
	slices.Reverse(at[:])
	slices.Reverse(weight[:])
	return at, weight
}()

// failed tells that there is no area; what is asked of the curve from then on is nothing.
func (c *curve) failed() bool { return c.err != nil || c.unbounded }

// probe is a place along the curve with the intensity and the numbers whose zeros are corners.
type probe struct {
	s, q float64
	d    []float64
}

// probe looks at a place. An intensity that has no value in a corner itself, as
// abs(x)/x has, has one beside it.
func (c *curve) probe(s float64) probe {
	p := probe{s: s}
	if c.failed() {
		return p
	}
	q, err := c.at(s, &p.d)
	if err == nil {
		p.q = q
	} else if !slices.Contains(p.d, 0) {
		c.err, c.where = err, s
	}
	return p
}

// under integrates over a stretch, and gives the places looked at.
func (c *curve) under(from, to float64) (a area, seen []probe) {
	w := to - from
	for i, at := range gaussAt {
		p := c.probe(from + w*at)
		f := gaussWeight[i] * w * p.q
		a = a.plus(area{force: f, moment: f * p.s, size: abs(f), lever: abs(f) * p.s})
		seen = append(seen, p)
	}
	return a, seen
}

// turns gives the places among others where a number that abs, min, max, a root or a length
// works on changes its sign, or touches zero or passes it between two of them.
func (c *curve) turns(seen []probe) (at []float64) {
	for i := 1; i < len(seen); i++ {
		a, p := seen[i-1], seen[i]
		b := seen[min(i+1, len(seen)-1)]
		for k := range min(len(a.d), len(p.d), len(b.d)) {
			before, here, after := a.d[k], p.d[k], b.d[k]
			number := func(s float64) float64 {
				if p := c.probe(s); k < len(p.d) {
					return p.d[k]
				}
				return 0
			}
			switch {
			case before*here < 0:
				at = append(at, c.bisect(a.s, p.s, func(s float64) bool { return number(s)*before > 0 }))
			case here*after < 0 || abs(here) > abs(before) || abs(here) >= abs(after):
			case here == 0:
				at = append(at, p.s)
			default: // nearest to zero, of which a step to either side has passed it where it does
				step := beside * c.length
				low := c.bisect(a.s, b.s, func(s float64) bool { return abs(number(s)) > abs(number(s+step)) })
				if next := number(low + step); next*number(low) <= 0 || abs(next) <= touches*abs(before) {
					at = append(at, low, low+step)
				}
			}
		}
	}
	return at
}

// bisect halves its way to the place between two others where something ceases to hold.
func (c *curve) bisect(low, high float64, holds func(s float64) bool) float64 {
	for high-low > samePlace*c.length {
		middle := low + (high-low)/2
		if holds(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return low + (high-low)/2
}

// measure adds what is under a stretch to the pieces, cut at the corners that show. What
// is under the halves of a piece is taken, and its difference from what is under the whole
// is the error of the latter, and so far more than its own.
func (c *curve) measure(from, to float64) {
	off := min(besideEnd*c.length, (to-from)/4)
	seen := []probe{c.probe(from + off)}
	pieces := make([]piece, int(math.Ceil(firstPieces*(to-from)/c.length)))
	for k := range pieces {
		w := (to - from) / float64(len(pieces))
		p := piece{from: from + w*float64(k), to: to - w*float64(len(pieces)-1-k)}
		left, before := c.under(p.from, p.middle())
		right, behind := c.under(p.middle(), p.to)
		p.area = left.plus(right)
		pieces[k], seen = p, slices.Concat(seen, before, behind)
	}
	if cuts := c.cuts(from, to, append(seen, c.probe(to-off))); len(cuts) > 0 {
		for _, s := range append(cuts, to) {
			c.measure(from, s)
			from = s
		}
		return
	}
	for _, p := range pieces {
		all, _ := c.under(p.from, p.to)
		p.forceErr, p.momentErr = abs(all.force-p.force), abs(all.moment-p.moment)
		c.pieces = append(c.pieces, p)
	}
}

// cuts gives the places within a stretch at which it is to be cut, in order.
func (c *curve) cuts(from, to float64, seen []probe) []float64 {
	if len(c.corners) >= maxCorners {
		return nil // further ones stay within their pieces
	}
	same := samePlace * c.length
	cuts := slices.DeleteFunc(c.turns(seen), func(s float64) bool { return s-from <= same || to-s <= same })
	slices.Sort(cuts)
	cuts = slices.CompactFunc(cuts, func(a, b float64) bool { return abs(a-b) <= same })
	cuts = cuts[:min(len(cuts), maxCorners-len(c.corners))]
	c.corners = append(c.corners, cuts...)
	return cuts
}

// integrate works out the area by adaptive quadrature: the piece with the largest error
// is halved until the whole is as exact as aimed at.
func (c *curve) integrate() (sum area) {
	for k := range plainPlaces { // where a division by zero is most likely
		c.probe(c.length * float64(k) / (plainPlaces - 1))
	}
	c.measure(0, c.length)
	for {
		sum = area{}
		for _, p := range c.pieces {
			sum = sum.plus(p.area)
		}
		if c.failed() || sum.errorOf(sum) <= aimed || len(c.pieces) >= maxPieces {
			return sum
		}
		worst := 0
		for k, p := range c.pieces {
			if p.errorOf(sum) > c.pieces[worst].errorOf(sum) {
				worst = k
			}
		}
		p := c.pieces[worst]
		if p.to-p.from <= narrowest*c.length {
			if sum.errorOf(sum) > LoadTol {
				c.where, c.unbounded = p.from, true
				if 2*p.from > c.length { // the end of the piece that lies nearer to an end
					c.where = p.to
				}
			}
			return sum
		}
		c.pieces = slices.Delete(c.pieces, worst, worst+1)
		c.measure(p.from, p.middle())
		c.measure(p.middle(), p.to)
	}
}

// diagram takes the ordinates of the diagram: at equal steps, and on both sides of
// each corner.
func (c *curve) diagram() []Ordinate {
	at := func(s float64) float64 { return c.probe(s).q }
	var fixed []Ordinate
	for _, corner := range c.corners {
		for _, s := range []float64{max(0, corner-beside*c.length), min(c.length, corner+beside*c.length)} {
			fixed = append(fixed, Ordinate{s, at(s)})
		}
	}
	return diagram(fixed, c.length, at)
}

// failCurve reports why a curve has no area, and where along the load.
func (m cell) failCurve(c *curve) bool {
	at := m.r.p.Units.Length.Format(c.where, max(m.r.p.Figures, placeFigures))
	if c.unbounded {
		return m.fail("the intensity is unbounded near s = "+at, "an intensity that is finite all along the load")
	}
	err := *c.err
	elsewhere := func(share float64) bool { // a place that nobody types has a value
		_, other := c.at(share*c.length, nil)
		return other == nil || other.Msg != err.Msg
	}
	if elsewhere(1/math.Pi) || elsewhere(1/math.E) {
		err.Msg += " at s = " + at
	}
	return m.r.failCell(m.ref, &err)
}

// placeFigures is how many figures of a place along a load are given at least.
const placeFigures = 4

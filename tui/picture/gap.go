package picture

import (
	"cmp"
	"math"
	"slices"

	"trivet/mechanics/figure"
)

// gap is where a piece of a polyline passes behind another line, as shares of it.
type gap struct {
	part     int
	from, to float64
}

// behind tells whether a share of the piece in hand lies in a gap.
func (b brush) behind(share float64) bool {
	for _, g := range b.gaps {
		if g.part == b.part && share >= g.from && share <= g.to {
			return true
		}
	}
	return false
}

// piece is a straight piece of a stroke, in dots.
type piece struct {
	stroke, part   int
	x0, y0, x1, y1 float64
	low, high      float64 // along the side on which the figure is longer
	near           [2]float64
	wide           bool
}

// gaps finds where lines cross and one passes clearly in front: there the one
// behind is broken. Lines that run beside each other break neither.
func (p *pen) gaps(f figure.Figure) [][]gap {
	gaps := make([][]gap, len(f.Strokes))
	if p.deep.span <= 0 {
		return gaps
	}
	pieces := p.pieces(f)
	for i := range pieces {
		a := &pieces[i]
		for k := i + 1; k < len(pieces) && pieces[k].low <= a.high; k++ {
			b := &pieces[k]
			s, t, ok := cross(a, b)
			if !ok {
				continue
			}
			na, nb := a.near[0]+s*(a.near[1]-a.near[0]), b.near[0]+t*(b.near[1]-b.near[0])
			switch {
			case na < nb-p.deep.apart:
				gaps[a.stroke] = append(gaps[a.stroke], p.gap(a, b, s))
			case nb < na-p.deep.apart:
				gaps[b.stroke] = append(gaps[b.stroke], p.gap(b, a, t))
			}
		}
	}
	return gaps
}

// pieces are those of the long strokes, from one end of the figure to the other.
func (p *pen) pieces(f figure.Figure) (all []piece) {
	upright := f.High.Y-f.Low.Y > f.High.X-f.Low.X
	for k, s := range f.Strokes {
		if !long(s.Kind) {
			continue
		}
		from, to, n := p.deep.share(s.Near[0]), p.deep.share(s.Near[1]), float64(len(s.Pts)-1)
		for i := 1; i < len(s.Pts); i++ {
			c := piece{stroke: k, part: i - 1, wide: heavy(s.Kind)}
			c.x0, c.y0 = p.dot(s.Pts[i-1])
			c.x1, c.y1 = p.dot(s.Pts[i])
			c.near = [2]float64{from + (to-from)*float64(i-1)/n, from + (to-from)*float64(i)/n}
			c.low, c.high = min(c.x0, c.x1), max(c.x0, c.x1)
			if upright {
				c.low, c.high = min(c.y0, c.y1), max(c.y0, c.y1)
			}
			all = append(all, c)
		}
	}
	slices.SortStableFunc(all, func(a, b piece) int { return cmp.Compare(a.low, b.low) })
	return all
}

// cross gives the shares of two pieces at which they cross.
func cross(a, b *piece) (s, t float64, ok bool) {
	ax, ay, bx, by := a.x1-a.x0, a.y1-a.y0, b.x1-b.x0, b.y1-b.y0
	d := ax*by - ay*bx
	if d == 0 {
		return 0, 0, false
	}
	dx, dy := b.x0-a.x0, b.y0-a.y0
	s, t = (dx*by-dy*bx)/d, (dx*ay-dy*ax)/d
	return s, t, s >= 0 && s <= 1 && t >= 0 && t <= 1
}

// gap is how a piece is broken where it passes behind another: by so many dots to
// either side of that, but not for long where they run nearly alike.
func (p *pen) gap(far, front *piece, at float64) gap {
	const halo, most = 2.5, 6.0
	fx, fy, nx, ny := far.x1-far.x0, far.y1-far.y0, front.x1-front.x0, front.y1-front.y0
	length := math.Hypot(fx, fy)
	half := halo
	if front.wide {
		half++
	}
	if p.o.ASCII {
		half += 2 * math.Abs(fy) / length // a character is higher than wide
	}
	half = math.Min(half*length*math.Hypot(nx, ny)/math.Abs(fx*ny-fy*nx), most)
	return gap{far.part, at - half/length, at + half/length}
}

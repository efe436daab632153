package plate

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/figure"
	"trivet/mechanics/ink"
	"trivet/mechanics/problem"
)

// Oblique is the view in space that the figures show: of some ways to walk
// round the problem and to look down on it, the one in which its points and
// members lie furthest apart on the paper. The first is taken unless another is
// clearly better.
func Oblique(p *problem.Problem) figure.View {
	best, most := figure.View{}, -1.0
	const better = 1.25
	for _, turn := range []float64{-0.58, 0.58, -0.9, 0.9, -0.35, 0.35, math.Pi - 0.58, math.Pi + 0.58, math.Pi - 0.9, math.Pi + 0.9} {
		for _, tilt := range []float64{0.42, 0.28, 0.6} {
			v := figure.Space(p, turn, tilt)
			if n := apart(p, v); n > most*better || most < 0 {
				best, most = v, n
			}
		}
	}
	return best
}

// apart says how well a view tells things apart: the least distance of two
// points, as a share of the problem's size, and the least angle of two members
// at a common point, in radians, whichever is less.
func apart(p *problem.Problem, v figure.View) float64 {
	low, high := p.Extent()
	size := r3.Norm(r3.Sub(high, low))
	if size == 0 {
		return 1
	}
	const angleWorth = 0.35 // a radian between members is worth this share of the size
	least := 1.0
	pts := p.Points[:min(len(p.Points), 60)]
	for i, a := range pts {
		for _, b := range pts[:i] {
			if !a.OK || !b.OK || r3.Norm(r3.Sub(a.At, b.At)) <= flat*size {
				continue
			}
			q := v.Project(r3.Sub(a.At, b.At))
			least = math.Min(least, math.Hypot(q.X, q.Y)/size)
		}
	}
	type ray struct {
		from int
		way  ink.Vec
	}
	var rays []ray
	for _, l := range p.Lines {
		for _, leg := range l.Legs {
			q := v.Project(leg.U)
			way := ink.Vec{X: q.X, Y: q.Y}
			rays = append(rays, ray{leg.From, way})
			if leg.To >= 0 {
				rays = append(rays, ray{leg.To, way.Scale(-1)})
			}
		}
	}
	for i := range p.Bodies {
		if p.Bodies[i].Particle {
			continue
		}
		for _, l := range figure.Legs(p, i) {
			for k, at := range p.Points {
				for end := range 2 {
					if at.OK && r3.Norm(r3.Sub(at.At, l[end])) <= flat*size {
						q := v.Project(r3.Unit(r3.Sub(l[1-end], l[end])))
						rays = append(rays, ray{k, ink.Vec{X: q.X, Y: q.Y}})
					}
				}
			}
		}
	}
	rays = rays[:min(len(rays), 200)]
	for i, a := range rays {
		for _, b := range rays[:i] {
			if a.from != b.from || a.way.Len() < endOn || b.way.Len() < endOn {
				continue
			}
			u, w := a.way.Unit(), b.way.Unit()
			angle := math.Atan2(math.Abs(u.X*w.Y-u.Y*w.X), u.Dot(w))
			least = math.Min(least, angleWorth*angle)
		}
	}
	return least
}

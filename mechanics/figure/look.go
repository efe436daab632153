package figure

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/units"
)

// Arrows says how long a force is drawn.
type Arrows int

// The lengths of arrows.
const (
	Legible Arrows = iota // longer where the force is larger, none too short to see
	ToScale               // in proportion to the force
	Equal                 // all alike
)

// Look is what a picture shows of a problem besides its geometry.
type Look struct {
	Arrows     Arrows
	Dimensions bool // the length of each leg of a path, in the sheet's unit
}

// DrawAs is Draw with a look.
func DrawAs(p *problem.Problem, sol *statics.Solution, v View, look Look) Figure {
	return draw(p, sol, v, look)
}

// arrow is the length of a force of n newtons, as a share of the diagonal.
func (d *drawing) arrow(n float64) float64 {
	share := 0.0
	if d.max > 0 {
		share = n / d.max
	}
	switch d.look.Arrows {
	case ToScale:
		return (arrowLow + arrowMore) * share
	case Equal:
		return arrowLow + arrowMore/2
	}
	return arrowLow + arrowMore*share
}

// dimensions labels each leg of a path with its length, off the middle, where the
// line's name stands.
func (d *drawing) dimensions() {
	const along = 0.3
	for i := range d.p.Lines {
		l := &d.p.Lines[i]
		for _, leg := range l.Legs {
			if !l.OK || leg.To < 0 || leg.Length <= 0 {
				continue
			}
			from := d.p.Points[leg.From].At
			d.fig.Labels = append(d.fig.Labels, Label{
				Rank: OfSize, Along: [2]Vec{d.view.Project(from), d.view.Project(r3.Add(from, r3.Scale(leg.Length, leg.U)))},
				At:   d.view.Project(r3.Add(from, r3.Scale(along*leg.Length, leg.U))),
				Text: d.p.Units.For(units.Length).Format(leg.Length, d.p.Figures), Ref: l.Ref,
			})
		}
	}
}

// gapShare is the share of the largest force below which a polygon counts as
// closed: what rounding leaves, and far less than a dot of any picture.
const gapShare = 1e-6

// Polygon is the force polygon of a particle: the forces on it, ΣF = 0, drawn head to
// tail in newtons as seen in the view. It closes in equilibrium; a gap is an open
// stroke. A force that is not known leaves none: ok is false.
func Polygon(p *problem.Problem, sol *statics.Solution, v View, body int) (fig Figure, ok bool) {
	if p == nil || sol == nil || body < 0 || body >= len(p.Bodies) {
		return Figure{}, false
	}
	type force struct {
		f    r3.Vec
		name Label
	}
	d := &drawing{p: p, sol: sol, view: v}
	var forces []force
	known := true
	add := func(acts []problem.Act, name Label) {
		for _, a := range acts {
			if a.Body != body {
				continue
			}
			f, found := d.force(a)
			known = known && found
			if n := r3.Norm(f); n > 0 && !math.IsInf(n, 0) && !math.IsNaN(n) {
				forces = append(forces, force{f, name})
				d.max = math.Max(d.max, n)
			}
		}
	}
	for _, l := range p.Lines {
		if l.OK {
			add(l.Acts, Label{Text: l.Name, Ref: l.Ref})
		}
	}
	for _, j := range p.Joints {
		if j.OK {
			add(j.Acts, Label{Text: j.Name, Ref: j.Ref})
		}
	}
	add(p.Bodies[body].Acts, Label{Text: "W", Ref: p.Bodies[body].Ref})
	if !known || len(forces) == 0 {
		return Figure{}, false
	}
	d.size = d.max
	var at r3.Vec
	for _, f := range forces {
		next := r3.Add(at, f.f)
		a, b := v.Project(at), v.Project(next)
		d.from(at, next)
		d.stroke(Arrow, f.name.Ref, false, a, b)
		d.from(next, next)
		d.head(Arrow, f.name.Ref, a, b)
		f.name.At, f.name.Along, f.name.Rank = Vec{(a.X + b.X) / 2, (a.Y + b.Y) / 2}, [2]Vec{a, b}, OfForce
		d.fig.Labels = append(d.fig.Labels, f.name)
		at = next
	}
	if r3.Norm(at) > gapShare*d.max {
		d.from(at, r3.Vec{})
		d.stroke(Center, p.Bodies[body].Ref, true, v.Project(at), v.Project(r3.Vec{}))
		end := v.Project(r3.Scale(0.5, at))
		d.fig.Labels = append(d.fig.Labels, Label{At: end, Text: "gap"})
	}
	d.bound()
	return d.fig, true
}

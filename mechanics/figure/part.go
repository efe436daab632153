package figure

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/working"
)

// Part projects what a step of a working speaks of and nothing else, within the
// bounds of the whole. Bodies are cut free: what acts on them stands as arrows in
// the sense that the equations assume, all of it or what the subject lists; a line
// without a body is the vector from its first point to its next. An empty subject
// is the whole problem.
func Part(p *problem.Problem, sol *statics.Solution, v View, about working.Subject) Figure {
	whole := Draw(p, sol, v)
	if p == nil || len(about.Bodies)+len(about.Points)+len(about.Lines)+len(about.Joints)+len(about.Couples)+len(about.Loads) == 0 && about.Axis == nil {
		return whole
	}
	d := &drawing{p: p, sol: sol, view: v, size: size(p)}
	d.maxForce()
	named := map[int]bool{}
	for _, i := range about.Points {
		named[i] = true
	}
	if len(about.Bodies) > 0 {
		d.free(about, named)
	} else {
		d.alone(about, named)
	}
	if about.Axis != nil {
		d.axis(*about.Axis)
	}
	for i, q := range p.Points {
		if named[i] && q.OK {
			d.fig.Labels = append(d.fig.Labels, Label{At: v.Project(q.At), Text: q.Name, Ref: q.Ref, Rank: OfPoint})
		}
	}
	d.bound()
	if len(d.fig.Strokes) == 0 {
		d.fig.Low, d.fig.High = whole.Low, whole.High
	}
	d.fig.Low = Vec{math.Min(d.fig.Low.X, whole.Low.X), math.Min(d.fig.Low.Y, whole.Low.Y)}
	d.fig.High = Vec{math.Max(d.fig.High.X, whole.High.X), math.Max(d.fig.High.Y, whole.High.Y)}
	return d.fig
}

// free draws bodies cut free, with what acts on them from outside.
func (d *drawing) free(about working.Subject, named map[int]bool) {
	listed := len(about.Lines) + len(about.Joints) + len(about.Couples) + len(about.Loads)
	shows := func(list []int, i int) bool { return listed == 0 || slices.Contains(list, i) }
	on := func(body int) bool { return slices.Contains(about.Bodies, body) }
	for _, i := range about.Bodies {
		if i < 0 || i >= len(d.p.Bodies) {
			continue
		}
		b := &d.p.Bodies[i]
		d.outline(b)
		for _, k := range b.Points {
			named[k] = true
			if b.Particle && k >= 0 && k < len(d.p.Points) {
				d.from(d.p.Points[k].At, d.p.Points[k].At)
				d.stroke(Particle, b.Ref, false, ring(d.view.Project(d.p.Points[k].At), 0.6*markShare*d.size)...)
			}
		}
		for _, a := range b.Acts {
			if listed != 1 {
				d.assumed(a, b.Ref, "W "+b.Name)
			}
		}
	}
	for i := range d.p.Lines {
		l := &d.p.Lines[i]
		outside := 0
		for _, a := range l.Acts {
			if l.OK && on(a.Body) && shows(about.Lines, i) {
				outside++
			}
		}
		for _, a := range l.Acts {
			// What both ends of a line pull at inside adds up to nothing, unless it runs
			// over a pulley.
			if l.OK && on(a.Body) && shows(about.Lines, i) && (outside != 2 || len(l.Path) > 2 || len(about.Bodies) == 1) {
				d.assumed(a, l.Ref, l.Name)
			}
		}
	}
	for i := range d.p.Joints {
		j := &d.p.Joints[i]
		if !j.OK || on(j.First) && on(j.Second) {
			continue
		}
		for _, a := range j.Acts {
			if on(a.Body) && shows(about.Joints, i) {
				d.components(a, j.Ref)
			}
		}
	}
	for i := range d.p.Couples {
		c := &d.p.Couples[i]
		for _, a := range c.Acts {
			if c.OK && on(a.Body) && shows(about.Couples, i) {
				a.Point, a.At = -1, d.middle(c.Body, a.At)
				d.turns(a, c.Ref, c.Name)
			}
		}
	}
	for i := range d.p.Loads {
		if l := &d.p.Loads[i]; l.OK && on(l.Body) && shows(about.Loads, i) {
			d.load(l)
		}
	}
}

// alone draws what a step speaks of without a body.
func (d *drawing) alone(about working.Subject, named map[int]bool) {
	for _, i := range about.Lines {
		if i < 0 || i >= len(d.p.Lines) || !d.p.Lines[i].OK {
			continue
		}
		l := &d.p.Lines[i]
		for k, leg := range l.Legs {
			a, b, ok := d.ends(leg)
			if !ok {
				continue
			}
			named[leg.From] = true
			if leg.To >= 0 {
				named[leg.To] = true
			}
			d.stroke(Arrow, l.Ref, false, a, b)
			d.head(Arrow, l.Ref, a, b)
			if k == 0 {
				d.fig.Labels = append(d.fig.Labels, Label{At: Vec{(a.X + b.X) / 2, (a.Y + b.Y) / 2}, Text: l.Name, Ref: l.Ref, Rank: rank(len(l.Magnitude.Terms)), Along: [2]Vec{a, b}})
			}
		}
	}
	for _, i := range about.Joints {
		if i >= 0 && i < len(d.p.Joints) && d.p.Joints[i].OK && len(d.p.Joints[i].Acts) > 0 {
			named[d.p.Joints[i].Point] = true
			d.components(d.p.Joints[i].Acts[0], d.p.Joints[i].Ref)
		}
	}
	for _, i := range about.Loads {
		if i >= 0 && i < len(d.p.Loads) && d.p.Loads[i].OK {
			d.load(&d.p.Loads[i])
		}
	}
	for _, i := range about.Couples {
		if i >= 0 && i < len(d.p.Couples) && d.p.Couples[i].OK {
			for _, a := range d.p.Couples[i].Acts {
				d.turns(a, d.p.Couples[i].Ref, d.p.Couples[i].Name)
			}
		}
	}
}

// assumed draws a force as the equations have it: known, or along the direction
// in which its unknown is positive.
func (d *drawing) assumed(a problem.Act, ref sheet.Ref, name string) {
	f := a.Const
	for _, t := range a.Terms {
		f = r3.Add(f, t.D)
	}
	n := r3.Norm(f)
	if n == 0 || math.IsInf(n, 0) || math.IsNaN(n) {
		return
	}
	length := arrowLow + arrowMore/2
	if len(a.Terms) == 0 && d.max > 0 {
		length = arrowLow + arrowMore*math.Min(n/d.max, 1)
	}
	label := d.arrowFrom(d.at(a), r3.Scale(1/n, f), length*d.size, ref, len(a.Terms) > 0)
	label.Text, label.Rank = name, rank(len(a.Terms))
	d.fig.Labels = append(d.fig.Labels, label)
}

// components draws each unknown of a joint the way in which it is positive.
func (d *drawing) components(a problem.Act, ref sheet.Ref) {
	for _, t := range a.Terms {
		one := a
		one.Const, one.Terms = r3.Vec{}, []problem.ActTerm{t}
		d.assumed(one, ref, d.p.Unknowns[t.Unknown].Name)
	}
	for _, t := range a.CoupleTerms {
		one := a
		one.Couple, one.CoupleTerms = r3.Vec{}, []problem.ActTerm{t}
		d.turns(one, ref, d.p.Unknowns[t.Unknown].Name)
	}
}

// turns draws a couple as the equations have it.
func (d *drawing) turns(a problem.Act, ref sheet.Ref, name string) {
	m := a.Couple
	for _, t := range a.CoupleTerms {
		m = r3.Add(m, t.D)
	}
	if at, ok := d.turn(d.at(a), m, ref); ok {
		d.fig.Labels = append(d.fig.Labels, Label{At: at, Text: name, Ref: ref, Rank: rank(len(a.CoupleTerms))})
	}
}

// axis draws the point or the axis that moments are taken about: a ring with a
// cross where it is seen end on, else a dashed line through the picture.
func (d *drawing) axis(a working.Axis) {
	at := r3.Vec{X: a.At[0], Y: a.At[1], Z: a.At[2]}
	along := r3.Vec{X: a.Along[0], Y: a.Along[1], Z: a.Along[2]}
	c := d.view.Project(at)
	d.from(at, at)
	n := r3.Norm(along)
	if d.p.Planar || n == 0 || math.Abs(r3.Dot(along, d.view.Toward())) > endOn*n {
		r := 1.6 * markShare * d.size
		d.stroke(Center, sheet.Ref{}, false, ring(c, r)...)
		d.stroke(Center, sheet.Ref{}, false, Vec{c.X - 1.6*r, c.Y}, Vec{c.X + 1.6*r, c.Y})
		d.stroke(Center, sheet.Ref{}, false, Vec{c.X, c.Y - 1.6*r}, Vec{c.X, c.Y + 1.6*r})
		return
	}
	const reach = 0.7 // of the diagonal, to either side
	half := r3.Scale(reach*d.size/n, along)
	low, high := r3.Sub(at, half), r3.Add(at, half)
	d.from(low, high)
	d.stroke(Center, sheet.Ref{}, true, d.view.Project(low), d.view.Project(high))
}

package figure

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
)

// bodies draws each rigid body.
func (d *drawing) bodies() {
	for i := range d.p.Bodies {
		d.outline(&d.p.Bodies[i])
	}
}

// outline joins the points of a rigid body by the shortest tree through them: a
// beam comes out as a line, a bracket with its arms.
func (d *drawing) outline(b *problem.Body) {
	if b.Particle {
		return
	}
	var pts []r3.Vec
	for _, i := range b.Points {
		if i >= 0 && i < len(d.p.Points) && d.p.Points[i].OK {
			pts = append(pts, d.p.Points[i].At)
		}
	}
	for _, leg := range Tree(pts) {
		d.from(leg[0], leg[1])
		d.stroke(Body, b.Ref, false, d.view.Project(leg[0]), d.view.Project(leg[1]))
	}
}

// mostJoined bounds the work for a body of very many points.
const mostJoined = 300

// Tree is the shortest tree through the points (Prim's algorithm).
func Tree(pts []r3.Vec) (legs [][2]r3.Vec) {
	pts = pts[:min(len(pts), mostJoined)]
	if len(pts) < 2 {
		return nil
	}
	far, from := make([]float64, len(pts)), make([]int, len(pts))
	for i := range pts {
		far[i] = r3.Norm(r3.Sub(pts[i], pts[0]))
	}
	in := map[int]bool{0: true}
	for len(in) < len(pts) {
		best := -1
		for i := range pts {
			if !in[i] && (best < 0 || far[i] < far[best]) {
				best = i
			}
		}
		in[best] = true
		legs = append(legs, [2]r3.Vec{pts[from[best]], pts[best]})
		for i := range pts {
			if l := r3.Norm(r3.Sub(pts[i], pts[best])); !in[i] && l < far[i] {
				far[i], from[i] = l, best
			}
		}
	}
	return legs
}

func grounded(j problem.Joint) bool { return j.First == problem.Ground || j.Second == problem.Ground }

// reactions draws what each joint to the ground exerts on its body, once found.
func (d *drawing) reactions() {
	for _, j := range d.p.Joints {
		if !j.OK || !grounded(j) {
			continue
		}
		for _, a := range j.Acts {
			f, known := d.force(a)
			if n := r3.Norm(f); known && n > none*d.max && n > 0 && !math.IsInf(n, 0) {
				d.arrowFrom(d.at(a), r3.Scale(1/n, f), d.arrow(n)*d.size, j.Ref, false)
			}
			d.couple(a, j.Ref)
		}
	}
}

// weights draws the weight of each body at its centre.
func (d *drawing) weights() {
	for i := range d.p.Bodies {
		b := &d.p.Bodies[i]
		for _, a := range b.Acts {
			f, known := d.force(a)
			n := r3.Norm(f)
			if !known || n == 0 || math.IsInf(n, 0) || math.IsNaN(n) || d.max == 0 {
				continue
			}
			label := d.arrowFrom(d.at(a), r3.Scale(1/n, f), d.arrow(n)*d.size, b.Ref, false)
			label.Text, label.Rank = "W "+b.Name, OfBody
			d.fig.Labels = append(d.fig.Labels, label)
		}
	}
}

// at is where an act acts.
func (d *drawing) at(a problem.Act) r3.Vec {
	if a.Point >= 0 && a.Point < len(d.p.Points) && d.p.Points[a.Point].OK {
		return d.p.Points[a.Point].At
	}
	return a.At
}

// couples draws the known and the found couples.
func (d *drawing) couples() {
	for _, c := range d.p.Couples {
		if !c.OK {
			continue
		}
		for i, a := range c.Acts {
			// A couple acts anywhere on its body: away from the supports it is clearest.
			a.Point, a.At = -1, d.middle(c.Body, a.At)
			if at, ok := d.couple(a, c.Ref); ok && i == 0 {
				d.fig.Labels = append(d.fig.Labels, Label{At: at, Text: c.Name, Ref: c.Ref, Rank: rank(len(a.CoupleTerms))})
			}
		}
	}
}

// middle is the mean of a body's points, or another place where it has none.
func (d *drawing) middle(body int, other r3.Vec) r3.Vec {
	if body < 0 || body >= len(d.p.Bodies) {
		return other
	}
	var sum r3.Vec
	n := 0
	for _, i := range d.p.Bodies[body].Points {
		if i >= 0 && i < len(d.p.Points) && d.p.Points[i].OK {
			sum, n = r3.Add(sum, d.p.Points[i].At), n+1
		}
	}
	if n == 0 {
		return other
	}
	return r3.Scale(1/float64(n), sum)
}

// couple draws the couple of an act: seen along its axis an arrow that turns,
// else an arrow along the axis (right-hand rule) with two heads.
func (d *drawing) couple(a problem.Act, ref sheet.Ref) (at Vec, ok bool) {
	m, known := d.sum(a.Couple, a.CoupleTerms)
	if !known {
		return at, false
	}
	return d.turn(d.at(a), m, ref)
}

// turn draws a moment at a place.
func (d *drawing) turn(from, m r3.Vec, ref sheet.Ref) (at Vec, ok bool) {
	n := r3.Norm(m)
	if n == 0 || math.IsInf(n, 0) || math.IsNaN(n) {
		return at, false
	}
	u := r3.Scale(1/n, m)
	c := d.view.Project(from)
	d.from(from, from)
	const turning = 0.7 // cosine to the line of sight from which the arc is clearer
	if end := r3.Dot(u, d.view.Toward()); math.Abs(end) > turning {
		r := 2.2 * markShare * d.size
		var arc []Vec
		const steps = 14
		for i := range steps {
			t := math.Copysign(1.5*math.Pi*float64(i)/(steps-1), end)
			s, k := math.Sincos(t - math.Pi/4)
			arc = append(arc, Vec{c.X + r*k, c.Y + r*s})
		}
		d.stroke(Couple, ref, false, arc...)
		d.head(Couple, ref, arc[steps-2], arc[steps-1])
		return arc[steps/2], true
	}
	end := r3.Add(from, r3.Scale(1.4*arrowLow*d.size, u))
	tip := d.view.Project(end)
	d.from(from, end)
	d.stroke(Couple, ref, false, c, tip)
	d.from(end, end)
	d.head(Couple, ref, c, tip)
	d.head(Couple, ref, c, Vec{c.X + 0.8*(tip.X-c.X), c.Y + 0.8*(tip.Y-c.Y)})
	return tip, true
}

// distributed draws the loads that are spread.
func (d *drawing) distributed() {
	for i := range d.p.Loads {
		if d.p.Loads[i].OK {
			d.load(&d.p.Loads[i])
		}
	}
}

// load draws a distributed load as arrows where it acts with its diagram over their tails.
func (d *drawing) load(l *problem.Distributed) {
	pts := d.p.Points
	if l.From < 0 || l.To < 0 || l.From >= len(pts) || l.To >= len(pts) || !pts[l.From].OK || !pts[l.To].OK {
		return
	}
	most := 0.0
	for _, o := range l.Diagram {
		most = math.Max(most, math.Abs(o.Q))
	}
	if most == 0 || math.IsInf(most, 0) || math.IsNaN(most) {
		return
	}
	var over []Vec
	var first, last r3.Vec // of the line over the tails
	r := r3.Sub(pts[l.To].At, pts[l.From].At)
	at := func(s, q float64) (back, on r3.Vec) {
		on = r3.Add(pts[l.From].At, r3.Scale(s/l.Length, r))
		return r3.Sub(on, r3.Scale(arrowLow*d.size*q/most, l.Direction)), on
	}
	from, to := l.Loaded()
	for k := range loadArrows {
		s := from + (to-from)*float64(k)/(loadArrows-1)
		q := l.IntensityAt(s)
		if q == 0 {
			continue
		}
		back, on := at(s, q)
		tail, tip := d.view.Project(back), d.view.Project(on)
		d.from(back, on)
		d.stroke(Load, l.Ref, false, tail, tip)
		d.from(on, on)
		d.head(Load, l.Ref, tail, tip)
	}
	for k, o := range l.Diagram {
		back, _ := at(o.S, o.Q)
		if k == 0 {
			first = back
		}
		last = back
		over = append(over, d.view.Project(back))
	}
	d.from(first, last)
	d.stroke(Load, l.Ref, false, over...)
	middle, _ := at((from+to)/2, l.IntensityAt((from+to)/2))
	d.fig.Labels = append(d.fig.Labels, Label{At: d.view.Project(middle), Text: l.Name, Ref: l.Ref, Rank: OfForce, Along: [2]Vec{over[0], over[len(over)-1]}})
}

// loadArrows is how many arrows stand on the stretch of a distributed load.
const loadArrows = 5

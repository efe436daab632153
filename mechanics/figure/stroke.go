package figure

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
)

// line draws a line of action: a member along its path, or an arrow.
func (d *drawing) line(l *problem.Line) {
	if arrowed(*l) {
		d.arrows(l)
		return
	}
	mag, known := d.value(l.Magnitude)
	kind := map[problem.Kind]StrokeKind{problem.Strut: Strut, problem.Link: Link, problem.SpringKind: Spring}[l.Kind]
	for i, leg := range l.Legs {
		a, b, ok := d.ends(leg)
		if !ok {
			continue
		}
		if kind == Spring {
			d.stroke(kind, l.Ref, !known, zigzag(a, b, d.size*markShare)...)
		} else {
			d.stroke(kind, l.Ref, !known, a, b)
		}
		if i == 0 {
			label := Label{At: Vec{(a.X + b.X) / 2, (a.Y + b.Y) / 2}, Text: l.Name, Ref: l.Ref, Rank: rank(len(l.Magnitude.Terms)), Along: [2]Vec{a, b}}
			if known {
				label.Mark = sense(l.Kind, mag, d.max)
			}
			d.fig.Labels = append(d.fig.Labels, label)
		}
	}
}

// ends gives a leg in the picture; one without a far end runs for a while
// along its direction. Its strokes come next.
func (d *drawing) ends(leg problem.Leg) (a, b Vec, ok bool) {
	pts := d.p.Points
	if leg.From < 0 || leg.From >= len(pts) || !pts[leg.From].OK {
		return a, b, false
	}
	from := pts[leg.From].At
	if leg.To >= 0 && leg.To < len(pts) {
		d.from(from, pts[leg.To].At)
		return d.view.Project(from), d.view.Project(pts[leg.To].At), pts[leg.To].OK
	}
	far := r3.Add(from, r3.Scale(2*arrowLow*d.size, leg.U))
	d.from(from, far)
	return d.view.Project(from), d.view.Project(far), true
}

// none is the share of the largest force below which a member counts as
// carrying nothing: what rounding leaves of a zero.
const none = 1e-9

// sense gives a member's mark. Positive is compression for a strut and tension
// for the others.
func sense(k problem.Kind, mag, most float64) string {
	if math.Abs(mag) <= none*most || mag == 0 {
		return "(0)"
	}
	if (mag > 0) != (k.Info().Positive == "compression") {
		return "(T)"
	}
	return "(C)"
}

// arrows draws a force at each point it acts at.
func (d *drawing) arrows(l *problem.Line) {
	for i, act := range l.Acts {
		f, known := d.force(act)
		n := r3.Norm(f)
		if act.Point < 0 || act.Point >= len(d.p.Points) || !d.p.Points[act.Point].OK || n == 0 || math.IsInf(n, 0) || math.IsNaN(n) {
			continue
		}
		length := arrowLow
		if known && d.max > 0 {
			length = d.arrow(n)
		}
		label := d.arrowFrom(d.p.Points[act.Point].At, r3.Scale(1/n, f), length*d.size, l.Ref, !known)
		label.Text, label.Rank = l.Name, rank(len(act.Terms))
		if i == 0 {
			d.fig.Labels = append(d.fig.Labels, label)
		}
	}
}

// arrowFrom draws a force along u from its point, and gives the place of its
// label: the tip, or the point itself under an arrow that is seen end on.
func (d *drawing) arrowFrom(from, u r3.Vec, length float64, ref sheet.Ref, open bool) Label {
	tip := r3.Add(from, r3.Scale(length, u))
	label := Label{At: d.view.Project(tip), Ref: ref}
	d.from(from, tip)
	if end := r3.Dot(u, d.view.Toward()); math.Abs(end) > endOn {
		d.stroke(Arrow, ref, open, ring(d.view.Project(from), 1.6*markShare*d.size)...)
		label.At = d.view.Project(from)
		label.Mark = map[bool]string{true: "⊙", false: "⊗"}[end > 0]
		return label
	}
	a, b := d.view.Project(from), label.At
	d.stroke(Arrow, ref, open, a, b)
	d.from(tip, tip)
	d.head(Arrow, ref, a, b)
	return label
}

// head draws the barbs of an arrow that comes from a and ends at b.
func (d *drawing) head(kind StrokeKind, ref sheet.Ref, a, b Vec) {
	back := math.Atan2(a.Y-b.Y, a.X-b.X)
	const spread = 0.45 // rad between shaft and barb
	barb := func(turn float64) Vec {
		s, c := math.Sincos(back + turn)
		h := 1.5 * markShare * d.size
		return Vec{b.X + h*c, b.Y + h*s}
	}
	d.stroke(kind, ref, false, barb(spread), b, barb(-spread))
}

// points labels the points and rings particles and joints.
func (d *drawing) points() {
	ringed := map[int]bool{}
	for _, j := range d.p.Joints {
		ringed[j.Point] = ringed[j.Point] || j.OK
	}
	drum := map[int]bool{}
	for b := range d.p.Belts() {
		drum[d.p.Drum(b)] = true
	}
	for i, q := range d.p.Points {
		if !q.OK {
			continue
		}
		at := d.view.Project(q.At)
		d.from(q.At, q.At)
		if drum[i] {
			d.stroke(Particle, q.Ref, false, ring(at, markShare*d.size)...)
		}
		particle := q.Body != problem.Ground && q.Body < len(d.p.Bodies) && d.p.Bodies[q.Body].Particle
		if particle || ringed[i] {
			d.stroke(Particle, q.Ref, false, ring(at, 0.6*markShare*d.size)...)
		}
		d.fig.Labels = append(d.fig.Labels, Label{At: at, Text: q.Name, Ref: q.Ref, Rank: OfPoint})
	}
}

// ground hatches under each fixed point that a line ends at.
func (d *drawing) ground() {
	used := map[int]bool{}
	for _, l := range d.p.Lines {
		for _, i := range l.Path {
			used[i] = used[i] || l.Kind.Info().Path
		}
	}
	for i, q := range d.p.Points {
		if !q.OK || q.Body != problem.Ground || !used[i] {
			continue
		}
		at, h := d.view.Project(q.At), markShare*d.size
		d.from(q.At, q.At)
		d.stroke(Ground, q.Ref, false, Vec{at.X - h, at.Y}, Vec{at.X + h, at.Y})
		for _, s := range []float64{-0.6, 0.1, 0.8} {
			d.stroke(Ground, q.Ref, false, Vec{at.X + s*h, at.Y}, Vec{at.X + (s-0.5)*h, at.Y - 0.7*h})
		}
	}
}

// ring is a closed polygon round c.
func ring(c Vec, r float64) []Vec {
	const sides = 12
	pts := make([]Vec, 0, sides+1)
	for i := range sides + 1 {
		s, k := math.Sincos(2 * math.Pi * float64(i) / sides)
		pts = append(pts, Vec{c.X + r*k, c.Y + r*s})
	}
	return pts
}

// zigzag runs from a to b with six teeth of height h between straight ends.
func zigzag(a, b Vec, h float64) []Vec {
	dx, dy := b.X-a.X, b.Y-a.Y
	length := math.Hypot(dx, dy)
	if length == 0 {
		return []Vec{a, b}
	}
	const lead, teeth = 0.25, 6
	at := func(t, off float64) Vec {
		return Vec{a.X + t*dx - off*dy/length, a.Y + t*dy + off*dx/length}
	}
	pts := []Vec{a, at(lead, 0)}
	for i := range teeth {
		off := h
		if i%2 == 1 {
			off = -h
		}
		pts = append(pts, at(lead+(1-2*lead)*(float64(i)+0.5)/teeth, off))
	}
	return append(pts, at(1-lead, 0), b)
}

package figure

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/drawing"
	"trivet/mechanics/scene"
)

// Sizes of arrows, in points.
const (
	headLength  = 6.5
	headWidth   = 4.6
	fineHead    = 3 // the least of both in the smallest gaps that show: a hollow one has an inside
	arrowWidth  = 1.1
	hollowWidth = 0.8 // the outline of a head
	arrowGap    = 2.6 // from the place that a force acts at
	arrowAside  = 5   // from one that it would lie on
	turnRadius  = 12
)

// shaft draws a line with a filled head at its end.
func (t *setter) shaft(tone drawing.Tone, from, to drawing.Vec, dashed bool) {
	u := to.Sub(from).Unit()
	neck := to.Sub(u.Scale(0.85 * math.Max(t.pt(headLength), fineHead*t.m.Fine)))
	t.shape(drawing.Shape{Pts: []drawing.Vec{from, neck}, Line: tone, Width: t.pt(arrowWidth), Dashed: dashed})
	t.head(tone, to, u)
}

// head draws the head of an arrow.
func (t *setter) head(tone drawing.Tone, tip, u drawing.Vec) {
	t.tip(tone, tip, u, math.Max(t.pt(headLength), fineHead*t.m.Fine), math.Max(t.pt(headWidth), fineHead*t.m.Fine))
}

// tip draws the head of a line, so long and so wide.
func (t *setter) tip(tone drawing.Tone, tip, u drawing.Vec, length, width float64) {
	neck, n := tip.Sub(u.Scale(length)), u.Perp().Scale(width/2)
	head := drawing.Shape{Pts: []drawing.Vec{tip, neck.Add(n), neck.Sub(n)}, Closed: true, Fill: tone, Head: true}
	if tone == drawing.Found { // what is sought has a hollow head, so that it is told from a load without colours
		head.Fill, head.Line, head.Width = drawing.Paper, tone, t.pt(hollowWidth)
	}
	t.shape(head)
}

// force draws an arrow at a place. Along the line of sight it is a ring with a dot
// (toward the reader) or a cross.
func (t *setter) force(s *scene.Thing, o drawing.Vec) {
	v := t.dir(s.Side())
	if v.Len() < endOn {
		t.endOn(s, o, s.Along)
		return
	}
	length := t.m.arrow(s.Share) * math.Max(v.Len(), 0.6) // what is foreshortened is shorter, but can be seen
	v = v.Unit()
	gap := t.pt(arrowGap)
	for _, share := range s.Behind {
		gap += t.m.arrow(share) + t.pt(arrowGap)
	}
	o = o.Add(v.Perp().Scale(t.pt(3) * s.Aside)) // two of opposite sense give way to different sides
	near, far := o.Add(v.Scale(gap)), o.Add(v.Scale(gap+length))
	aside := t.asideOf(segment{near, far})
	near, far = near.Add(aside), far.Add(aside)
	t.arrows = append(t.arrows, arrow{segment{near, far}, t.of})
	if s.Head {
		t.shaft(s.Tone, far, near, s.Broken)
	} else {
		t.shaft(s.Tone, near, far, s.Broken)
	}
	middle, across := near.Add(far).Scale(0.5), v.Perp()
	spots := []spot{{far, v}, {middle, across}, {middle, across.Scale(-1)}, {near, v.Scale(-1)}}
	switch {
	case s.Followed: // its end is the beginning of the next
		spots = spots[1:3]
	case t.m.Bounded:
		spots = spots[:1]
	}
	t.want(s, spots...)
}

// asideOf is how far an arrow gives way to those drawn before it that it would lie on.
func (t *setter) asideOf(s segment) (aside drawing.Vec) {
	u, length := s.b.Sub(s.a).Unit(), s.b.Sub(s.a).Len()
	gap := math.Max(t.pt(arrowAside), t.m.Fine)
	under := func(o arrow) bool {
		a, b := o.a.Sub(s.a.Add(aside)), o.b.Sub(s.a.Add(aside))
		overlap := math.Min(math.Max(a.Dot(u), b.Dot(u)), length) - math.Max(math.Min(a.Dot(u), b.Dot(u)), 0)
		return math.Max(math.Abs(a.Dot(u.Perp())), math.Abs(b.Dot(u.Perp()))) < gap/2 && overlap > gap/2
	}
	for range t.arrows {
		if !slices.ContainsFunc(t.arrows, under) {
			break
		}
		aside = aside.Add(u.Perp().Scale(gap))
	}
	return aside
}

func (t *setter) endOn(s *scene.Thing, o drawing.Vec, along r3.Vec) {
	tone := max(s.Tone, drawing.Dark)
	t.alongSight(tone, arrowWidth, o, math.Max(t.pt(markRadius), 2*t.m.Fine), r3.Dot(along, t.view.Toward()) > 0)
	t.want(s, spot{o, drawing.Vec{X: 1, Y: -1}})
}

// alongSight draws an arrow along the line of sight: a ring with the dot of its point, or
// with the cross of its tail.
func (t *setter) alongSight(tone drawing.Tone, width float64, o drawing.Vec, r float64, toward bool) {
	t.circle(drawing.Paper, tone, width, o, r)
	if toward {
		t.circle(tone, drawing.None, 0, o, 0.3*r)
		return
	}
	for _, a := range [2]drawing.Vec{{X: 1, Y: 1}, {X: 1, Y: -1}} {
		d := a.Unit().Scale(r)
		t.line(tone, 0.8*width, o.Sub(d), o.Add(d))
	}
}

// couple draws an arc that turns about an axis, in space the circle seen from the side;
// where it is seen edge-on, an arrow with two heads along the axis (right-hand rule).
func (t *setter) couple(s *scene.Thing, o drawing.Vec) {
	if !asArc(s, t.view) {
		v := t.dir(s.Along).Unit()
		from, to := o.Add(v.Scale(t.pt(arrowGap))), o.Add(v.Scale(t.pt(arrowGap+32)))
		t.shaft(s.Tone, from, to, false)
		t.head(s.Tone, to.Sub(v.Scale(t.pt(headLength*0.8))), v)
		t.want(s, spot{to, v})
		return
	}
	if !t.scene.Planar { // round its axis, off what else is at the place
		o = o.Add(t.dir(s.Along).Scale(t.pt(1.5 * turnRadius)))
	}
	e1, e2 := perpendicular(s.Along)
	const from, to, steps = -0.75, 3.7, 40
	r := t.pt(turnRadius) * (1 + 0.5*float64(len(s.Behind)))
	arc := drawing.Arc(o, t.dir(e1).Scale(r), t.dir(e2).Scale(r), from, to, math.Floor(steps*2*math.Pi/(to-from)))
	t.line(s.Tone, arrowWidth, arc[:steps-3]...)
	t.head(s.Tone, arc[steps], arc[steps].Sub(arc[steps-5]).Unit())
	t.want(s, spot{arc[steps/2], arc[steps/2].Sub(o)})
}

// asArc tells that a couple is drawn as an arc: its axis is not seen from the side.
func asArc(s *scene.Thing, v View) bool {
	const edgeOn = 0.35 // the cosine to the line of sight
	return math.Abs(r3.Dot(s.Along, v.Toward())) >= edgeOn
}

// Sizes of distributed loads, in points.
const (
	loadHeight  = 26 // of the largest intensity of the sheet
	loadSpacing = 13 // of its arrows
	lowestArrow = 4  // a lower ordinate has none
)

// load draws a row of arrows with a line over their tails.
func (t *setter) load(s *scene.Thing) {
	v := t.dir(s.Along)
	if v.Len() < endOn || len(s.At) < 2 {
		return
	}
	v = v.Unit()
	off := t.pt(barWidth/2+0.8) + t.pt(loadHeight*s.Base)
	ordinate := func(foot r3.Vec, height float64) (top, toe drawing.Vec) {
		toe = t.at(foot).Sub(v.Scale(math.Copysign(off, height))) // the arrows below zero are on the other side
		return toe.Sub(v.Scale(t.pt(loadHeight * height))), toe
	}
	var over []drawing.Vec
	highest := 0
	for k, foot := range s.At {
		top, _ := ordinate(foot, s.Heights[k])
		over = append(over, top)
		if math.Abs(s.Heights[k]) > math.Abs(s.Heights[highest]) {
			highest = k
		}
	}
	first, last := s.At[0], s.At[len(s.At)-1]
	n := t.count(t.at(last).Sub(t.at(first)).Len() / math.Max(t.pt(loadSpacing), 4*t.m.Fine))
	for k := range n + 1 {
		share := float64(k) / float64(n)
		foot := r3.Add(first, r3.Scale(share, r3.Sub(last, first)))
		top, toe := ordinate(foot, heightAt(s, foot))
		if d := toe.Sub(top); d.Len() > t.pt(lowestArrow) {
			head := math.Min(math.Max(t.pt(4.2), t.m.Fine), d.Len())
			t.line(s.Tone, 0.7, top, toe.Sub(d.Unit().Scale(0.8*head)))
			t.tip(s.Tone, toe, d.Unit(), head, math.Max(t.pt(3), t.m.Fine))
		}
	}
	t.line(s.Tone, 0.9, over...)
	at := over[highest]
	if s.Heights[0] == s.Heights[len(s.Heights)-1] { // an even one
		at = over[0].Add(over[len(over)-1]).Scale(0.5)
	}
	t.want(s, spot{at, v.Scale(-1)})
	for k, text := range s.Values {
		if text != "" {
			t.wants = append(t.wants, want{spots: []spot{{over[k], v.Scale(-1)}}, forms: worded(scene.Plain(text)), tone: s.Tone, rank: scene.OfSize, of: t.of})
		}
	}
}

// heightAt is that of a load's diagram at a foot, straight between its ordinates.
func heightAt(s *scene.Thing, foot r3.Vec) float64 {
	d := r3.Norm(r3.Sub(foot, s.At[0]))
	for k := 1; k < len(s.At); k++ {
		a, b := r3.Norm(r3.Sub(s.At[k-1], s.At[0])), r3.Norm(r3.Sub(s.At[k], s.At[0]))
		if d <= b && b > a {
			return s.Heights[k-1] + (s.Heights[k]-s.Heights[k-1])*(d-a)/(b-a)
		}
	}
	return s.Heights[len(s.Heights)-1]
}

// water draws the sign of its surface: a level line, a triangle on it, two shorter lines
// below.
func (t *setter) water(s *scene.Thing, o drawing.Vec) {
	up := t.dir(s.Along)
	if up.Len() < endOn {
		return
	}
	up = up.Unit()
	side := t.at(s.At[1]).Sub(o)
	if side.Len() < t.pt(34) {
		side = side.Unit().Scale(t.pt(34))
	}
	end := o.Add(side)
	u := side.Unit()
	t.line(drawing.Load, 0.7, o, end)
	t.hair(o, t.at(s.At[2])) // the wall above what it presses on
	mid := o.Add(side.Scale(0.6))
	t.area(drawing.Paper, drawing.Load, 0.7, mid, mid.Add(u.Scale(t.pt(3.5))).Add(up.Scale(t.pt(6))), mid.Sub(u.Scale(t.pt(3.5))).Add(up.Scale(t.pt(6))))
	for k, half := range []float64{5, 2.5} {
		c := mid.Sub(up.Scale(t.pt(2.5 * float64(k+1))))
		t.line(drawing.Load, 0.6, c.Sub(u.Scale(t.pt(half))), c.Add(u.Scale(t.pt(half))))
	}
}

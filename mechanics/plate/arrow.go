package plate

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/ink"
)

// Sizes of arrows on paper, in points.
const (
	headLength = 6.5
	headWidth  = 4.6
	arrowWidth = 1.1
	arrowGap   = 2.6 // from the point that a force acts at
	turnRadius = 12
)

// shaft draws a line with a filled head at its end.
func (s *sketch) shaft(tone ink.Tone, width float64, from, to ink.Vec) {
	u := to.Sub(from).Unit()
	n := u.Across().Scale(headWidth / 2)
	neck := to.Sub(u.Scale(headLength))
	s.line(tone, width, from, neck.Add(u))
	s.area(tone, ink.None, 0, to, neck.Add(n), neck.Sub(n))
}

// hold is where a force's arrow touches its point.
type hold int

const (
	tail   hold = iota // the arrow begins at the point: a pull
	tip                // it ends there: a push
	either             // whichever lies on less, tail where both are free
)

// arrow draws a force at a place along the unit vector u, and gives where its
// label belongs and which way it lies. Along the line of sight it is a ring
// with a dot (toward the reader) or a cross.
func (s *sketch) arrow(tone ink.Tone, place r3.Vec, u r3.Vec, length float64, h hold) spot {
	o := s.at(place)
	v := s.dir(u)
	if v.Len() < endOn {
		s.area(ink.Paper, tone, arrowWidth, circle(o, 4.2)...)
		if r3.Dot(u, s.view.Toward()) > 0 {
			s.d.Area(tone, ink.None, 0, circle(o, 1.3)...)
		} else {
			for _, a := range []float64{math.Pi / 4, -math.Pi / 4} {
				sin, cos := math.Sincos(a)
				d := ink.Vec{X: cos, Y: sin}.Scale(4.2)
				s.d.Line(tone, 0.9, o.Sub(d), o.Add(d))
			}
		}
		return spot{o, ink.Vec{X: 1, Y: -1}}
	}
	length *= math.Max(v.Len(), 0.6) // what is foreshortened is shorter, but can be seen
	v = v.Unit()
	away := s.occupied(o, v, length)
	back := s.occupied(o, v.Scale(-1), length)
	const much = 1.5 // what the other side must be freer by
	switch {
	case h == tip && back > away+much:
		h = tail
	case h == tail && away > back+much:
		h = tip
	case h == either && back < away:
		h = tip
	case h == either:
		h = tail
	}
	from, to, end := o.Add(v.Scale(arrowGap)), o.Add(v.Scale(arrowGap+length)), v
	if h == tip {
		from, to, end = o.Sub(v.Scale(arrowGap+length)), o.Sub(v.Scale(arrowGap)), v.Scale(-1)
	}
	s.shaft(tone, arrowWidth, from, to)
	s.block(true, from, to)
	if h == tip {
		return spot{from, end}
	}
	return spot{to, end}
}

// occupied tells how much lies where an arrow would.
func (s *sketch) occupied(o, v ink.Vec, length float64) float64 {
	n := 0.0
	const steps = 8
	for i := range steps {
		t := arrowGap + 5 + (length-5)*float64(i)/(steps-1)
		n += s.crowd(o.Add(v.Scale(t)), 3.5) * 8 / steps
	}
	return n
}

// turn draws a couple about the unit vector u at a place, turning as a
// positive one does: an arc round it, which in space is the circle seen from
// the side; seen edge-on, an arrow with two heads along u (right-hand rule).
func (s *sketch) turn(tone ink.Tone, place, u r3.Vec) spot {
	o := s.at(place)
	end := r3.Dot(u, s.view.Toward())
	if math.Abs(end) < 0.35 {
		v := s.dir(u).Unit()
		from, to := o.Add(v.Scale(arrowGap)), o.Add(v.Scale(arrowGap+32))
		s.shaft(tone, arrowWidth, from, to)
		s.shaft(tone, arrowWidth, from, to.Sub(v.Scale(headLength*0.8)))
		s.block(true, from, to)
		return spot{to, v}
	}
	// Two directions across u, as they show on the paper.
	e1 := r3.Cross(u, r3.Vec{X: 0.36, Y: 0.48, Z: 0.8})
	if s.p.Planar {
		e1 = r3.Vec{X: 1}
	}
	e1 = r3.Unit(e1)
	e2 := r3.Cross(u, e1)
	const from, to, steps = -0.75, 3.7, 40
	var arc []ink.Vec
	for i := range steps + 1 {
		sin, cos := math.Sincos(from + (to-from)*float64(i)/steps)
		arc = append(arc, o.Add(s.dir(e1).Scale(turnRadius*cos)).Add(s.dir(e2).Scale(turnRadius*sin)))
	}
	s.line(tone, arrowWidth, arc[:steps-3]...)
	tipAt, neck := arc[steps], arc[steps-5]
	v := tipAt.Sub(neck).Unit()
	n := v.Across().Scale(headWidth / 2)
	base := tipAt.Sub(v.Scale(headLength))
	s.area(tone, ink.None, 0, tipAt, base.Add(n), base.Sub(n))
	return spot{arc[steps/2], arc[steps/2].Sub(o).Unit()}
}

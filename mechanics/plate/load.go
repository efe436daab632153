package plate

import (
	"cmp"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/ink"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// arrowLow and arrowMore are the length of the arrow of no force, and what the
// largest has beyond it, in points.
const (
	arrowLow  = 24
	arrowMore = 20
)

// applied draws a force of the problem as given: its arrow, its name and, where
// it was given, its value.
func (s *sketch) applied(i int) {
	l := &s.p.Lines[i]
	if !l.OK || l.Kind.Info().Path || l.Kind == problem.Contact {
		return
	}
	for k, a := range l.Acts {
		u, known := s.known(a)
		if u == (r3.Vec{}) {
			continue
		}
		tone, label := ink.Found, Symbol(l.Name)
		if known {
			tone = ink.Load
			label = with(label, " = "+s.given(l.Ref, s.p.Units.Force.Format(r3.Norm(a.Const), s.p.Figures)))
		}
		s.label(s.arrow(tone, a.At, unit(u), arrowLow+arrowMore/2, s.touch(l, a, u)), label, tone, k == 0)
	}
}

// given is the magnitude of a load as typed, or its value where that is computed.
func (s *sketch) given(load sheet.Ref, value string) string {
	if s.typed != nil {
		return cmp.Or(s.typed(load), value)
	}
	return value
}

func (s *sketch) label(at spot, runs []ink.Run, tone ink.Tone, wanted bool) {
	if wanted {
		s.wants = append(s.wants, near(at.at, at.way, runs, tone, forceFirst))
	}
}

// known gives the direction of an act's force and whether it was given.
func (s *sketch) known(a problem.Act) (u r3.Vec, known bool) {
	u = a.Const
	for _, t := range a.Terms {
		u = r3.Add(u, t.D)
	}
	if n := r3.Norm(u); n == 0 || math.IsInf(n, 0) || math.IsNaN(n) {
		return r3.Vec{}, false
	}
	return u, len(a.Terms) == 0
}

// touch says where the arrow of a line's force touches its point: weights hang,
// contacts push; a force on a body presses on it, one on a particle pulls.
func (s *sketch) touch(l *problem.Line, a problem.Act, u r3.Vec) hold {
	switch {
	case l.Kind == problem.Contact:
		return tip
	case l.Kind == problem.Weight || s.p.Bodies[a.Body].Particle:
		return tail
	case r3.Dot(u, s.p.Up) < 0:
		return tip
	}
	return either
}

func (s *sketch) appliedCouple(i int) {
	c := &s.p.Couples[i]
	if !c.OK || len(c.Acts) == 0 {
		return
	}
	label, tone := Symbol(c.Name), ink.Found
	u := c.U
	if len(c.Magnitude.Terms) == 0 {
		tone = ink.Load
		m := c.Acts[0].Couple
		if r3.Norm(m) == 0 {
			return
		}
		u = unit(m)
		label = with(label, " = "+s.given(c.Ref, s.p.Units.For(units.Moment).Format(r3.Norm(m), s.p.Figures)))
	}
	if u == (r3.Vec{}) {
		return
	}
	s.label(s.turn(tone, s.coupleAt(c), u), label, tone, true)
}

// coupleAt is where a couple is drawn; it acts on the whole body, so anywhere
// will do: in the middle of its longest leg, where least else is.
func (s *sketch) coupleAt(c *problem.Couple) r3.Vec {
	a := c.Acts[0]
	if a.Point >= 0 && s.placed(a.Point) {
		return s.p.Points[a.Point].At
	}
	b := &s.p.Bodies[c.Body]
	var sum r3.Vec
	n := 0.0
	for _, k := range b.Points {
		if s.placed(k) {
			sum = r3.Add(sum, s.p.Points[k].At)
			n++
		}
	}
	if n == 0 {
		return a.At
	}
	return r3.Scale(1/n, sum)
}

func (s *sketch) bodyWeight(i int) {
	b := &s.p.Bodies[i]
	if b.Weight == 0 {
		return
	}
	label := []ink.Run{{Text: "W", Style: ink.Italic}, {Text: b.Name, Style: ink.Italic, Level: -1}}
	label = with(label, " = "+s.given(b.Ref, s.p.Units.Force.Format(b.Weight, s.p.Figures)))
	s.d.Area(ink.Load, ink.None, 0, circle(s.at(b.Centre), 1.6)...)
	s.label(s.arrow(ink.Load, b.Centre, r3.Scale(-1, s.p.Up), arrowLow+arrowMore/2, tail), label, ink.Load, true)
}

// spreadHeight is how high the largest intensity of a distributed load stands.
const spreadHeight = 26

// spreadLoads draws the distributed loads on a body, or on all (-1): rows of
// arrows with a line over their tails.
func (s *sketch) spreadLoads(body int) {
	for i := range s.p.Loads {
		l := &s.p.Loads[i]
		if !l.OK || body >= 0 && l.Body != body || !s.placed(l.From) || !s.placed(l.To) {
			continue
		}
		s.spread(l)
	}
}

func (s *sketch) spread(l *problem.Distributed) {
	most := 0.0
	for _, o := range l.Diagram {
		most = math.Max(most, math.Abs(o.Q))
	}
	v := s.dir(l.Direction)
	if most == 0 || math.IsInf(most, 0) || math.IsNaN(most) || v.Len() < endOn {
		return
	}
	a, r := s.point(l.From), s.point(l.To).Sub(s.point(l.From))
	gap := v.Unit().Scale(-(barWidth/2 + 0.8))
	at := func(o problem.Ordinate) (top, toe ink.Vec) {
		toe = a.Add(r.Scale(o.S / l.Length)).Add(gap)
		return toe.Sub(v.Unit().Scale(spreadHeight * o.Q / most)), toe
	}
	from, to := l.Loaded()
	n := min(max(2, int(r.Len()*(to-from)/l.Length/13)), 40)
	for k := range n + 1 {
		o := problem.Ordinate{S: from + (to-from)*float64(k)/float64(n)}
		o.Q = l.IntensityAt(o.S)
		if math.Abs(o.Q)/most*spreadHeight > 3 {
			s.smallArrow(at(o))
		}
	}
	var over []ink.Vec
	highest, even := 0, true
	for k, o := range l.Diagram {
		if o.S >= from && o.S <= to {
			top, _ := at(o)
			over = append(over, top)
		}
		if math.Abs(o.Q) > math.Abs(l.Diagram[highest].Q) {
			highest = k
		}
		even = even && math.Abs(o.Q-l.Diagram[0].Q) <= 1e-9*most
	}
	s.line(ink.Load, 0.9, over...)
	f := s.p.Units.For(units.LineLoad)
	write := func(at ink.Vec, runs []ink.Run) {
		s.label(spot{at, v.Scale(-1)}, runs, ink.Load, true)
	}
	last := len(l.Diagram) - 1
	if even {
		write(over[len(over)/2], with(Symbol(l.Name), " = "+s.given(l.Ref, f.Format(l.Diagram[0].Q, s.p.Figures))))
		return
	}
	top, _ := at(l.Diagram[highest])
	write(top, with(Symbol(l.Name), " = "+f.Format(l.Diagram[highest].Q, s.p.Figures)))
	for _, k := range []int{0, last} {
		if o := l.Diagram[k]; k != highest && math.Abs(o.Q) > 1e-9*most {
			top, _ := at(o)
			write(top, plain(f.Format(o.Q, s.p.Figures)))
		}
	}
}

func (s *sketch) smallArrow(from, to ink.Vec) {
	d := to.Sub(from)
	u := d.Unit()
	h := math.Min(4.2, d.Len())
	n := u.Across().Scale(1.5)
	s.line(ink.Load, 0.7, from, to.Sub(u.Scale(h*0.8)))
	s.block(true, from, to)
	s.area(ink.Load, ink.None, 0, to, to.Sub(u.Scale(h)).Add(n), to.Sub(u.Scale(h)).Sub(n))
}

func unit(v r3.Vec) r3.Vec {
	if n := r3.Norm(v); n > 0 {
		return r3.Scale(1/n, v)
	}
	return v
}

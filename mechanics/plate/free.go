package plate

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/ink"
	"trivet/mechanics/problem"
	"trivet/units"
)

// freeBody draws one body cut free.
func (s *sketch) freeBody(body int) {
	b := &s.p.Bodies[body]
	s.body(body)
	on := map[int]bool{}
	for _, i := range b.Points {
		on[i] = true
	}
	for i := range on {
		if !s.placed(i) {
			delete(on, i)
		}
	}
	for _, i := range b.Points {
		if !on[i] {
			continue
		}
		r := 1.3
		if b.Particle {
			r = 2.6
		}
		s.area(ink.Dark, ink.None, 0, circle(s.point(i), r)...)
	}
	s.spreadLoads(body)
	most := s.largest(body)
	for i := range s.p.Lines {
		s.cutLine(&s.p.Lines[i], body, most)
	}
	for i := range s.p.Joints {
		s.cutJoint(&s.p.Joints[i], body, most)
	}
	for i := range s.p.Couples {
		s.cutCouple(&s.p.Couples[i], body)
	}
	s.bodyWeight(body)
	s.pointNames(func(i int) bool { return on[i] })
	if !s.p.Planar {
		s.triad(s.d.Bounds())
	}
}

// largest is the largest force on a body, for the lengths of its arrows.
func (s *sketch) largest(body int) float64 {
	most := 0.0
	for a := range s.p.Acts() {
		if a.Body != body {
			continue
		}
		f := a.Const
		for _, t := range a.Terms {
			if x, ok := s.unknown(t.Unknown); ok {
				f = r3.Add(f, r3.Scale(x, t.D))
			}
		}
		most = math.Max(most, r3.Norm(f))
	}
	return most
}

func (s *sketch) long(value, most float64, known bool) float64 {
	k := 1.0
	if len(s.p.Bodies) > 1 {
		k = arrowSmall
	}
	if !known || most == 0 || math.IsInf(most, 0) {
		return k * (arrowLow + arrowMore/2)
	}
	return k * (arrowLow + arrowMore*math.Min(1, math.Abs(value)/most))
}

// named is a force's label: its name and, where it has one, its value.
func (s *sketch) named(runs []ink.Run, value float64, known bool, f units.Unit) []ink.Run {
	if !known {
		return runs
	}
	return with(runs, " = "+minus(f.Format(value, s.p.Figures)))
}

// minus sets a true minus sign.
func minus(s string) string {
	if len(s) > 1 && s[0] == '-' {
		return "−" + s[1:]
	}
	return s
}

// cutLine draws the forces of a line on the body.
func (s *sketch) cutLine(l *problem.Line, body int, most float64) {
	if !l.OK {
		return
	}
	tone := ink.Found
	if len(l.Magnitude.Terms) == 0 {
		tone = ink.Load
	}
	value, known := s.value(l.Magnitude)
	length := s.long(value, most, known)
	label := s.named(Symbol(l.Name), value, known, s.p.Units.Force)
	for k, a := range l.Acts {
		if a.Body != body {
			continue
		}
		if l.Kind.Info().Path && a.Point >= 0 {
			push := l.Kind.Info().Positive == "compression"
			for _, leg := range l.Legs {
				u := leg.U
				switch a.Point {
				case leg.From:
				case leg.To:
					u = r3.Scale(-1, u)
				default:
					continue
				}
				h := tail
				if push {
					u, h = r3.Scale(-1, u), tip
				}
				s.label(s.arrow(tone, a.At, u, length, h), label, tone, true)
			}
			continue
		}
		s.cutForce(l, k, most)
	}
}

// cutForce draws a force that has a direction, or components of its own, on the first
// body that it acts on (k = 0) or the opposite on the second.
func (s *sketch) cutForce(l *problem.Line, k int, most float64) {
	a := l.Acts[k]
	if len(l.Magnitude.Terms) == 0 && len(a.Terms) > 0 { // by components: each unknown for itself
		for _, t := range a.Terms {
			s.component(t, a.At, most, either)
		}
		if n := r3.Norm(a.Const); n > 0 {
			label := s.named(Symbol(l.Name), n, true, s.p.Units.Force)
			s.label(s.arrow(ink.Load, a.At, unit(a.Const), s.long(n, most, true), either), label, ink.Load, true)
		}
		return
	}
	u, given := s.known(a)
	if u == (r3.Vec{}) {
		return
	}
	tone := ink.Found
	value, known := s.value(l.Magnitude)
	switch {
	case given:
		tone, value, known = ink.Load, r3.Norm(a.Const), true
	case known && value != 0 && len(l.Legs) > 0:
		if u = l.Legs[0].U; (k == 1) != l.Pushes() {
			u = r3.Scale(-1, u)
		}
	}
	h := s.touch(l, a, u)
	s.label(s.arrow(tone, a.At, unit(u), s.long(value, most, known), h), s.named(Symbol(l.Name), value, known, s.p.Units.Force), tone, true)
}

func (s *sketch) component(t problem.ActTerm, at r3.Vec, most float64, h hold) {
	n := r3.Norm(t.D)
	if n == 0 {
		return
	}
	x, known := s.unknown(t.Unknown)
	label := s.named(UnknownName(s.p, t.Unknown), x, known, s.p.Units.Force)
	s.label(s.arrow(ink.Found, at, unit(t.D), s.long(x*n, most, known), h), label, ink.Found, true)
}

// cutJoint draws what a joint exerts on the body: on its second body the
// opposite of what it exerts on the first.
func (s *sketch) cutJoint(j *problem.Joint, body int, most float64) {
	if !j.OK {
		return
	}
	for _, a := range j.Acts {
		if a.Body != body {
			continue
		}
		if j.Impending {
			s.impending(j, &a, most)
			continue
		}
		for _, t := range a.Terms {
			s.reaction(j, t, a.At, most)
		}
		for _, t := range a.CoupleTerms {
			s.momentTerm(t, a.At)
		}
	}
}

func (s *sketch) reaction(j *problem.Joint, t problem.ActTerm, at r3.Vec, most float64) {
	h := either
	if j.Kind.Info().PushOnly && t.Unknown == j.Forces[0].Unknown {
		h = tip
	}
	s.component(t, at, most, h)
}

func (s *sketch) momentTerm(t problem.ActTerm, at r3.Vec) {
	if r3.Norm(t.D) == 0 {
		return
	}
	x, known := s.unknown(t.Unknown)
	label := s.named(UnknownName(s.p, t.Unknown), x, known, s.p.Units.For(units.Moment))
	s.label(s.turn(ink.Found, at, unit(t.D)), label, ink.Found, true)
}

// sought draws the reactions of a joint that are asked for, as they act on its first body,
// in the sense that counts as positive.
func (s *sketch) sought(j *problem.Joint, asked []problem.Query) {
	if !j.OK || !s.placed(j.Point) {
		return
	}
	of := func(t problem.ActTerm) bool {
		return slices.ContainsFunc(asked, func(q problem.Query) bool { return q.Kind == problem.AskUnknown && q.Unknown == t.Unknown })
	}
	for _, t := range j.Forces {
		if of(t) {
			s.reaction(j, t, s.p.Points[j.Point].At, 0)
		}
	}
	for _, t := range j.Moments {
		if of(t) {
			s.momentTerm(t, s.p.Points[j.Point].At)
		}
	}
}

// impending draws the normal force of a rough surface, and its friction μN against the slip.
func (s *sketch) impending(j *problem.Joint, a *problem.Act, most float64) {
	sign := 1.0
	if a.Body != j.First {
		sign = -1
	}
	n := j.Forces[0].Unknown
	s.component(problem.ActTerm{Unknown: n, D: r3.Scale(sign, j.Normal)}, a.At, most, tip)
	if j.Friction == 0 {
		return
	}
	x, known := s.unknown(n)
	label := s.named([]ink.Run{{Text: "F", Style: ink.Italic}, {Text: j.Name, Style: ink.Italic, Level: -1}}, j.Friction*x, known, s.p.Units.Force)
	s.label(s.arrow(ink.Found, a.At, r3.Scale(-sign, j.Slip), s.long(j.Friction*x, most, known), either), label, ink.Found, true)
}

func (s *sketch) cutCouple(c *problem.Couple, body int) {
	if !c.OK || c.Body != body || len(c.Acts) == 0 || c.U == (r3.Vec{}) && len(c.Magnitude.Terms) > 0 {
		return
	}
	if len(c.Magnitude.Terms) == 0 {
		for i := range s.p.Couples {
			if &s.p.Couples[i] == c {
				s.appliedCouple(i)
			}
		}
		return
	}
	x, known := s.value(c.Magnitude)
	label := s.named(Symbol(c.Name), x, known, s.p.Units.For(units.Moment))
	s.label(s.turn(ink.Found, s.coupleAt(c), c.U), label, ink.Found, true)
}

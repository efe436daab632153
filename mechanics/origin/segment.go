package origin

import (
	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
)

// Part is a number of a segment of a line.
type Part int

// The numbers of a segment.
const (
	R      Part = iota // a component of r, from its first point to its second
	Length             // |r|
	U                  // a component of u = r / |r|
	Unit               // |u|
)

// Segment is a number of a segment of a line.
func Segment(s *statics.Solution, line, leg int, part Part, axis int) doc.Origin {
	return of(func() string {
		p, l := s.Problem, &s.Problem.Lines[line]
		u, leg := p.Units.Length, l.Legs[leg]
		number := in(p, u)
		course := l.Name
		if leg.To >= 0 {
			course += ", from " + p.Points[leg.From].Name + " to " + p.Points[leg.To].Name
		}
		name := axisName(axis)
		switch {
		case part == R && leg.To >= 0:
			a, b := &p.Points[leg.From], &p.Points[leg.To]
			return name + " of r of " + course + ": " + name + " of " + b.Name + " less " + name + " of " + a.Name + " = " +
				number.less(b.At, a.At, axis) + " " + u.Symbol
		case part == Length:
			return "|r| of " + course + ": " + norm(leg.R, p.Planar, number) + " " + u.Symbol
		case part == Unit:
			return "|u| of " + course + ": " + norm(leg.U, p.Planar, cosine) + ", 1 for a unit vector"
		case leg.To < 0:
			return name + " of u of " + course + ": its direction as the sheet gives it, as a unit vector"
		}
		return name + " of u of " + course + ": " + name + " of r over |r| = " + number(problem.Component(leg.R, axis)) + " " + u.Symbol + " / " + u.Format(leg.Length, p.Figures)
	}, "segment", line, leg, part, axis)
}

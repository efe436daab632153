package origin

import (
	"trivet/mechanics/doc"
	"trivet/mechanics/statics"
)

// Coordinate is a coordinate of a point.
func Coordinate(axis int, point string) doc.Origin {
	return Phrase(axisName(axis)+" of %[1]s, from its place in the sheet", point)
}

// Part is a number of a segment of a line.
type Part int

// The numbers of a segment.
const (
	R      Part = iota // a component of r, from its first point to its second
	Length             // |r|
	U                  // a component of u = r / |r|
	Unit               // |u|
)

type segment struct {
	line, leg int
	part      Part
	axis      int
}

// Segment is a number of a segment of a line.
func Segment(s *statics.Solution, line, leg int, part Part, axis int) doc.Origin {
	return of(s, segment{line, leg, part, axis})
}

func (g segment) says(s *statics.Solution) string {
	p := s.Problem
	l := &p.Lines[g.line]
	leg := l.Legs[g.leg]
	u := p.Units.Length
	number := in(p, u)
	course := l.Name
	if leg.To >= 0 {
		course += ", from " + p.Points[leg.From].Name + " to " + p.Points[leg.To].Name
	}
	name := axisName(g.axis)
	switch {
	case g.part == R && leg.To >= 0:
		a, b := &p.Points[leg.From], &p.Points[leg.To]
		return name + " of r of " + course + ": " + name + " of " + b.Name + " less " + name + " of " + a.Name + " = " +
			number(component(b.At, g.axis)) + " - " + number.behind(component(a.At, g.axis)) + " " + u.Symbol
	case g.part == Length:
		return "|r| of " + course + ": " + norm(leg.R, p.Planar, number) + " " + u.Symbol
	case g.part == Unit:
		return "|u| of " + course + ": " + norm(leg.U, p.Planar, cosine) + ", 1 for a unit vector"
	case leg.To < 0:
		return name + " of u of " + course + ": its direction as the sheet gives it, as a unit vector"
	}
	return name + " of u of " + course + ": " + name + " of r over |r| = " + number(component(leg.R, g.axis)) + " " + u.Symbol + " / " + u.Format(leg.Length, p.Figures)
}

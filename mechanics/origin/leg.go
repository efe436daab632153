package origin

import "trivet/mechanics/statics"

// Of is a number of a stretch of a line.
type Of int

// The numbers of a stretch.
const (
	R      Of = iota // a component of r, from its first point to its second
	Length           // |r|
	U                // a component of u = r / |r|
	Size             // |u|
)

// Leg says where a number of a line's stretch comes from.
func Leg(s *statics.Solution, line, leg int, of Of, axis int) string {
	p := s.Problem
	l := &p.Lines[line]
	g := l.Legs[leg]
	u := p.Units.Length
	number := func(v float64) string { return in(u, v, p.Figures) }
	course := l.Name
	if g.To >= 0 {
		course += ", from " + p.Points[g.From].Name + " to " + p.Points[g.To].Name
	}
	name := axes[axis : axis+1]
	switch {
	case of == R && g.To >= 0:
		a, b := &p.Points[g.From], &p.Points[g.To]
		return name + " of r of " + course + ": " + name + " of " + b.Name + " less " + name + " of " + a.Name + " = " +
			number(component(b.At, axis)) + " - " + behind(number(component(a.At, axis))) + " " + u.Symbol
	case of == Length:
		return "|r| of " + course + ": " + norm2(g.R, p.Planar, number) + " " + u.Symbol
	case of == Size:
		return "|u| of " + course + ": " + norm2(g.U, p.Planar, cosine) + ", 1 for a unit vector"
	case g.To < 0:
		return name + " of u of " + course + ": " + "its direction as the sheet gives it, made one long"
	}
	return name + " of u of " + course + ": " + name + " of r over |r| = " + number(component(g.R, axis)) + " " + u.Symbol + " / " + u.Format(g.Length, p.Figures)
}

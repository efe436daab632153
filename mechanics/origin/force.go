package origin

import (
	"fmt"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/statics"
	"trivet/units"
)

// source is an act with what exerts it.
type source struct {
	*problem.Act
	from problem.Source
	name string
}

// sources gives what acts on a body, in the order of the sheet.
func sources(p *problem.Problem, body int) (on []source) {
	for from, act := range p.Exerted() {
		if act.Body == body {
			on = append(on, source{act, from, p.NameOf(from)})
		}
	}
	return on
}

// line is the line that exerts an act, nil where none does.
func (a source) line(p *problem.Problem) *problem.Line {
	if a.from.Thing != problem.ALine {
		return nil
	}
	return &p.Lines[a.from.Index]
}

// part is what a force, and a couple with it, add to a row.
func part(p *problem.Problem, r *statics.Row, a *problem.Act, f, couple r3.Vec) float64 {
	if !r.Moment {
		return problem.Component(f, r.Coordinate())
	}
	return problem.Component(p.Moment(a, f, couple), r.Coordinate())
}

// rowOf is the equation of a body along an axis, or of moments about it.
func rowOf(p *problem.Problem, body, axis int, moment bool) statics.Row {
	b := &p.Bodies[body]
	if moment {
		return statics.Row{Body: body, Name: b.Name, Axis: "M" + axisName(axis), Moment: true, About: b.AboutName}
	}
	return statics.Row{Body: body, Name: b.Name, Axis: "F" + axisName(axis)}
}

// Force is a force or a couple on a body, by its place among all that act on it:
// lines, joints, couples, distributed loads, then weights, as the sheet has them.
type Force struct{ Body, Place int }

func (f Force) find(p *problem.Problem) source {
	if on := sources(p, f.Body); f.Place < len(on) {
		return on[f.Place]
	}
	return source{Act: &problem.Act{}}
}

// named finds a force, and names its component along an axis, or that of its moment, with
// the row that it stands in.
func (f Force) named(p *problem.Problem, axis int, moment bool) (a source, r statics.Row, name string) {
	a, r = f.find(p), rowOf(p, f.Body, axis, moment)
	of := a.name
	if moment {
		of = "the moment of " + a.name + " about " + r.About
	}
	if moment && p.Planar {
		return a, r, of
	}
	return a, r, "the " + axisName(axis) + " component of " + of
}

// PerUnit is what one unit of unknown j adds to a component of a force, or of its moment.
func (f Force) PerUnit(s *statics.Solution, j, axis int, moment bool) doc.Origin {
	return of(func() string {
		a, r, name := f.named(s.Problem, axis, moment)
		head := s.Problem.Unknowns[j].Name + " in " + name + ": "
		words, v := a.share(s, &r, j)
		if v == 0 {
			return head + "0, " + vanishes(s, &r)
		}
		return head + words + " = " + cosine(v)
	}, "per unit", f, j, axis, moment)
}

// Known is what is known of a component of a force, or of its moment.
func (f Force) Known(s *statics.Solution, axis int, moment bool) doc.Origin {
	return of(func() string {
		a, r, name := f.named(s.Problem, axis, moment)
		return name + ": " + a.known(s.Problem, &r)
	}, "known part", f, axis, moment)
}

// Solved is a component of a force, or of its moment, in the solution.
func (f Force) Solved(s *statics.Solution, axis int, moment bool) doc.Origin {
	return of(func() string {
		a, r, name := f.named(s.Problem, axis, moment)
		return name + " in the solution, " + s.Problem.Format(part(s.Problem, &r, a.Act, s.Sum(a.Force), s.Sum(a.Couple)), r.Dim())
	}, "solved", f, axis, moment)
}

// known says how the known part of a force, or of its moment, follows from the sheet.
func (a source) known(p *problem.Problem, r *statics.Row) string {
	f, l := p.Units.Force, a.line(p)
	switch v := problem.Component(a.Force.Const, r.Coordinate()); {
	case r.Moment && a.Couple.Const != (r3.Vec{}):
		return "the couple, the same about every point, " + p.Format(problem.Component(a.Couple.Const, r.Coordinate()), units.Moment)
	case r.Moment:
		return a.cross(p, r, a.Force.Const, "F", in(p, f), p.Units.For(units.Moment).Symbol)
	case l != nil && len(l.Legs) == 0:
		return p.Format(v, units.Force) + ", as the sheet gives it"
	case v == 0:
		return "0, it has no component along " + r.Axis[1:]
	default:
		size := r3.Norm(a.Force.Const)
		return "its magnitude times the direction's " + r.Axis[1:] + ", " + in(p, f)(size) + "·" + print(cosine).behind(v/size) + " " + f.Symbol
	}
}

// share is what one unit of an unknown exerts through an act along a row, in
// words and in the sheet's units; no words where the act has nothing of it.
func (a source) share(s *statics.Solution, r *statics.Row, j int) (string, float64) {
	p := s.Problem
	scale := p.Units.For(p.Unknowns[j].Dim).Factor / p.Units.For(r.Dim()).Factor
	for _, t := range a.Force.Terms {
		if t.Unknown != j {
			continue
		}
		v := part(p, r, a.Act, t.D, r3.Vec{}) * scale
		if r.Moment {
			return a.cross(p, r, t.D, "u", cosine, p.Units.Length.Symbol), v
		}
		return a.cosine(p, r, t), v
	}
	for _, t := range a.Couple.Terms {
		if t.Unknown == j {
			if !r.Moment {
				return "a couple has no component along " + r.Axis[1:], 0
			}
			return couple(p, t.D), problem.Component(t.D, r.Coordinate()) * scale
		}
	}
	return "", 0
}

// couple says which way a couple acts.
func couple(p *problem.Problem, d r3.Vec) string {
	if p.Planar {
		return "it acts " + say.Turn(d.Z)
	}
	return "it is a couple about " + p.Direction(d)
}

// cosine is the component of a force's direction.
func (a source) cosine(p *problem.Problem, r *statics.Row, t problem.ActTerm) string {
	if l := a.line(p); l != nil && len(l.Legs) > 0 && l.Legs[0].To >= 0 {
		return segments(p, l, a.Act, t, r.Coordinate())
	}
	if a.from.Thing == problem.AJoint && p.Joints[a.from.Index].Second == a.Body {
		return "it acts on " + r.Name + " along " + p.Direction(t.D) + ", opposite to " + p.Bodies[p.Joints[a.from.Index].First].Name
	}
	return "it acts along " + p.Direction(t.D)
}

// segments is the component of the unit vectors of the segments of a line that meet
// at a point, away from it in tension and towards it in compression.
func segments(p *problem.Problem, l *problem.Line, a *problem.Act, t problem.ActTerm, axis int) string {
	coef := ""
	for _, m := range l.Magnitude.Terms {
		if m.Unknown == t.Unknown && m.Coef != 1 {
			coef = units.Compact(m.Coef) + "·"
			if l.Belt != nil {
				coef = units.Figures(m.Coef, p.Figures) + "·"
			}
		}
	}
	var parts []string
	u := p.Units.Length
	number := in(p, u)
	add := func(from, to int, leg problem.Leg) {
		a, b := &p.Points[from], &p.Points[to]
		parts = append(parts, fmt.Sprintf("%s%s of u from %s to %s = %s(%s) %s / %s", coef, axisName(axis), a.Name, b.Name, coef,
			number.less(b.At, a.At, axis), u.Symbol, u.Format(leg.Length, p.Figures)))
	}
	if !l.Kind.Info().Path && !l.Between() {
		add(l.Legs[0].From, l.Legs[0].To, l.Legs[0])
		return parts[0]
	}
	at := slices.Index(l.Path, a.Point)
	for _, next := range []int{at + 1, at - 1} {
		if at < 0 || next < 0 || next == len(l.Path) {
			continue
		}
		from, to := a.Point, l.Path[next]
		if l.Pushes() {
			from, to = to, from // compression pushes the ends apart
		}
		add(from, to, l.Legs[min(at, next)])
	}
	return strings.Join(parts, " + ")
}

// cross is a component of r × F, r from the point that moments are taken about.
func (a source) cross(p *problem.Problem, r *statics.Row, d r3.Vec, letter string, number print, unit string) string {
	one, two := (r.Coordinate()+1)%3, (r.Coordinate()+2)%3 // (r × F)x = y·Fz - z·Fy, and so on round
	arm := p.Arm(a.Act)
	length := in(p, p.Units.Length)
	x, y := axisName(one), axisName(two)
	return fmt.Sprintf("%s·%s%s - %s·%s%s, from %s to the point of application, = (%s·%s - %s·%s) %s", x, letter, y, y, letter, x, r.About,
		length.behind(problem.Component(arm, one)), number.behind(problem.Component(d, two)), length.behind(problem.Component(arm, two)), number.behind(problem.Component(d, one)), unit)
}

// Arm is a component of r, from the point that moments are taken about to the force's
// point of application.
func (f Force) Arm(s *statics.Solution, axis int) doc.Origin {
	return of(func() string {
		p, a, b := s.Problem, f.find(s.Problem), &s.Problem.Bodies[f.Body]
		to := "the point of application of " + a.name
		if a.Point >= 0 {
			to = p.Points[a.Point].Name + ", " + to
		}
		return axisName(axis) + " of r from " + b.AboutName + " to " + to + ": " + in(p, p.Units.Length).less(a.At, b.About, axis) + " " + p.Units.Length.Symbol
	}, "arm", f, axis)
}

// Magnitude is a number of the magnitude of a force or a couple.
func (f Force) Magnitude(s *statics.Solution) doc.Origin {
	return of(func() string { return magnitude(s.Problem, f.find(s.Problem).from) }, "magnitude of force", f)
}

// Magnitude is a number of the magnitude of a line.
func Magnitude(s *statics.Solution, line int) doc.Origin {
	return of(func() string { return magnitude(s.Problem, problem.Source{Thing: problem.ALine, Index: line}) }, "magnitude", line)
}

func magnitude(p *problem.Problem, from problem.Source) string {
	name := p.NameOf(from)
	switch {
	case from.Thing == problem.ALine && impends(p, from.Index):
		return tension(p, from.Index)
	case from.Thing == problem.ALoad:
		return name + ": its resultant, the area of the load diagram"
	}
	return name + ": its magnitude, as the sheet gives it"
}

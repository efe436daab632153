package report

import (
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/units"
)

// Described says in words what a picture of the problem shows, a line a thing:
// points with their coordinates, bodies, lines from where to where with their
// forces, supports with theirs, couples and distributed loads. s may be nil, or
// of another problem: then forces that are not given are unknown.
func Described(p *problem.Problem, s *statics.Solution) (lines []string) {
	describe(p, s, func(_ sheet.Ref, line string) { lines = append(lines, line) })
	return lines
}

// DescribedRow is the line of one row of the sheet; empty where it has none.
func DescribedRow(p *problem.Problem, s *statics.Solution, ref sheet.Ref) (line string) {
	describe(p, s, func(of sheet.Ref, text string) {
		if line == "" && of.Row != "" && of.Table == ref.Table && of.Row == ref.Row {
			line = text
		}
	})
	return line
}

// describe says each line, and of which row it is; the first is of none.
func describe(p *problem.Problem, s *statics.Solution, say func(of sheet.Ref, line string)) {
	d := describer{p: p}
	if s != nil && s.Problem == p && s.Verdict != statics.NoEquilibrium {
		d.s = s
	}
	say(sheet.Ref{}, doc.Printed(d.problem()))
	for _, of := range []struct {
		what problem.Thing
		says func(i int) string
	}{{problem.APoint, d.point}, {problem.ABody, d.body}, {problem.ALine, d.line}, {problem.AJoint, d.joint}, {problem.ACouple, d.couple}, {problem.ALoad, d.load}} {
		for i, e := range p.Entries(of.what) {
			line, reads := of.what.String()+" "+e.Name, e.OK
			switch of.what {
			case problem.ABody:
				if reads = true; p.Bodies[i].Particle {
					continue
				}
			case problem.ALine:
				line, reads = e.Name+": "+p.Lines[i].Kind.String(), e.OK && len(p.Lines[i].Legs) > 0
			case problem.AJoint:
				line = e.Name + ": " + p.Joints[i].Kind.String()
			}
			if reads {
				line += of.says(i)
			} else {
				line += ", does not read yet"
			}
			say(e.Ref, doc.Printed(line))
		}
	}
}

type describer struct {
	p *problem.Problem
	s *statics.Solution // nil where there are no values
}

// at is a place in the sheet's unit of length: "(2.00, 1.00, 0) m".
func (d describer) at(v r3.Vec) string {
	f := d.p.Units.Length
	return strings.TrimSpace(d.p.Tuple(v, func(c float64) string { return f.Number(c, d.p.Figures) }) + " " + f.Symbol)
}

func (d describer) pointName(i int) string { return d.p.Points[i].Name }

func (d describer) bodyName(i int) string {
	if i < 0 || i >= len(d.p.Bodies) {
		return "the ground"
	}
	return d.p.Bodies[i].Name
}

func (d describer) problem() string {
	where := "in space, up is " + d.p.Direction(d.p.Up)
	if d.p.Planar {
		where = "in the plane, x to the right, y upwards"
	}
	return say.Count(len(d.p.Points), "point") + ", " + say.Count(len(d.p.Lines), "line") + ", " + say.Count(len(d.p.Joints), "joint") + "; " + where
}

func (d describer) point(i int) string {
	q, on := &d.p.Points[i], "fixed to the ground"
	switch {
	case len(q.Bodies) == 1 && d.p.Bodies[q.Bodies[0]].Particle:
		on = "a particle"
		if d.p.Bodies[q.Bodies[0]].Bare {
			on += " that no force acts on"
		}
	case len(q.Bodies) > 0:
		on = "on " + say.And(say.Each(q.Bodies, d.bodyName)...)
	}
	return " at " + d.at(q.At) + ", " + on
}

func (d describer) body(i int) string {
	b := &d.p.Bodies[i]
	s := " through " + strings.Join(say.Each(b.Points, d.pointName), ", ")
	if b.Weight != 0 {
		s += ": weight " + d.p.Format(b.Weight, units.Force) + " at " + d.at(b.Centre)
	}
	return s
}

func (d describer) line(i int) string {
	l, s := &d.p.Lines[i], ""
	if l.Legs[0].To >= 0 {
		names := say.Each(l.Path, d.pointName)
		last := len(names) - 1
		s += " from " + names[0] + " to " + names[last]
		if last > 1 {
			s += " over " + strings.Join(names[1:last], ", ")
		}
		s += ", " + d.p.Format(l.Length(), units.Length) + " long"
		if b := l.Belt; b != nil {
			s += ", part of the belt " + b.Name + " with friction " + units.Compact(b.Friction) + " over " + d.p.Format(b.Wrap, units.Angle)
		}
	} else {
		s += " at " + d.pointName(l.Legs[0].From) + " along " + d.p.Direction(l.Legs[0].U)
		if l.Between() {
			s += " on " + d.bodyName(l.Acts[0].Body) + ", the opposite on " + d.bodyName(l.Acts[1].Body)
		}
	}
	return s + "; " + d.size(i)
}

// size is what a line carries: how much, and in which sense.
func (d describer) size(i int) string {
	l := &d.p.Lines[i]
	info := l.Kind.Info()
	switch v, ok := d.value(l.Magnitude, problem.Query{Of: problem.Source{Thing: problem.ALine, Index: i}}); {
	case ok && v == 0:
		return "no force"
	case ok && v > 0 && l.Kind == problem.Force:
		return d.p.Format(v, units.Force)
	case ok:
		return d.p.Format(math.Abs(v), units.Force) + " " + say.Sense(v, info.Positive, info.Negative)
	case d.s != nil && l.Magnitude.Alone() >= 0:
		return d.result(l.Magnitude.Alone())
	}
	return "unknown"
}

func (d describer) joint(i int) string {
	j := &d.p.Joints[i]
	s := " at " + d.pointName(j.Point) + ", " + d.bodyName(j.First) + " to " + d.bodyName(j.Second)
	if j.Normal != (r3.Vec{}) {
		s += ", normal " + d.p.Direction(j.Normal)
	}
	if j.Axis != (r3.Vec{}) {
		s += ", axis " + d.p.Direction(j.Axis)
	}
	parts := say.Each(slices.Concat(j.Forces.Terms, j.Moments.Terms), func(t problem.ActTerm) string { return d.p.Unknowns[t.Unknown].Name + " " + d.result(t.Unknown) })
	if len(parts) > 0 {
		s += "; " + strings.Join(parts, ", ")
	}
	return s
}

// result is an unknown's value, or its range in words.
func (d describer) result(i int) string {
	if d.s == nil {
		return "unknown"
	}
	return resultText(d.s, i, " to ")
}

// value is a magnitude, asked of the solution where there is one.
func (d describer) value(m problem.Affine, q problem.Query) (float64, bool) {
	if d.s == nil {
		return m.Const, len(m.Terms) == 0
	}
	v, err := d.s.Evaluate(q)
	return v, err == nil
}

func (d describer) couple(i int) string {
	c := &d.p.Couples[i]
	s := " on " + d.bodyName(c.Body)
	if !d.p.Planar {
		s += " about " + d.p.Direction(c.U)
	}
	v, ok := d.value(c.Magnitude, problem.Query{Of: problem.Source{Thing: problem.ACouple, Index: i}})
	switch {
	case !ok:
		return s + "; unknown"
	case !d.p.Planar || v == 0:
		return s + "; " + d.p.Format(v, units.Moment)
	}
	return s + "; " + d.p.Format(math.Abs(v), units.Moment) + " " + say.Turn(v*c.U.Z)
}

func (d describer) load(i int) string {
	q := &d.p.Loads[i]
	from := d.pointName(q.From)
	s := " on " + d.bodyName(q.Body) + " from " + from + " to " + d.pointName(q.To) + " along " + d.p.Direction(q.Direction)
	switch {
	case q.Nothing():
		return s + "; its resultant is zero"
	case q.Total == 0:
		return s + "; its resultant is zero, and it exerts a couple of " + d.p.Format(q.Couple(), units.Moment)
	}
	return s + "; resultant " + d.p.Format(q.Total, units.Force) + ", " + d.p.Format(q.Distance, units.Length) + " from " + from
}

// LineCourses writes each line's vectors: "T1 from D to A: r = (-3.00, 4.00) m,
// |r| = 5.00 m, u = (-0.6000, 0.8000), |u| = 1.0000".
func LineCourses(p *problem.Problem) (out []string) {
	d := describer{p: p}
	for i := range p.Lines {
		if !p.Lines[i].OK {
			continue
		}
		for _, leg := range p.Lines[i].Legs {
			line := p.Lines[i].Name
			if leg.To >= 0 {
				line += " from " + p.Points[leg.From].Name + " to " + p.Points[leg.To].Name + ": r = " + d.at(leg.R) + ", |r| = " + d.p.Format(leg.Length, units.Length) + ","
			} else {
				line += " at " + p.Points[leg.From].Name + ":"
			}
			cosine := func(c float64) string { return units.Decimals(c, 4) }
			out = append(out, doc.Printed(line+" u = "+p.Tuple(leg.U, cosine)+", |u| = "+cosine(r3.Norm(leg.U))))
		}
	}
	return out
}

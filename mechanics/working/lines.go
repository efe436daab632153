package working

import (
	"math"
	"slices"
	"unicode/utf8"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/handsolve"
	"trivet/mechanics/origin"
	"trivet/mechanics/problem"
	english "trivet/mechanics/say"
)

// stretch is a leg of a line with the symbols of its vectors.
type stretch struct {
	problem.Leg
	line int
	leg  int
	name doc.Math // of the line, with the leg's number where there are several
}

// stretches are the legs of lines that have a direction of their own to derive: not of a
// force by components, which keeps them.
func (b *builder) stretches() []stretch {
	var out []stretch
	for i := range b.p.Lines {
		l := &b.p.Lines[i]
		if l.Components != nil || l.Belt != nil && len(l.Acts) == 0 && !l.Belt.ByPath { // a part of a belt that acts on fixed points alone
			continue
		}
		for k, leg := range l.Legs {
			out = append(out, stretch{leg, i, k, stretchName(l, k)})
		}
	}
	return out
}

func stretchName(l *problem.Line, leg int) doc.Math {
	if len(l.Legs) == 1 {
		return named(l.Name)
	}
	return row(words(l.Name), words(","), words(string(rune('1'+leg%9))))
}

// tabledLines is from how many lines on position and unit vectors stand in one table.
const tabledLines = 3

// lines are the position vectors with their lengths and unit vectors, then the directions
// that are typed. A direction along an axis is seen as it is.
func (b *builder) lines() {
	var paths, typed []stretch
	for _, s := range b.stretches() {
		switch {
		case !b.used(s.line):
		case s.To >= 0:
			paths = append(paths, s)
		case !isAxis(s.U):
			typed = append(typed, s)
		}
	}
	skew := slices.DeleteFunc(slices.Clone(paths), func(s stretch) bool { return isAxis(s.U) && len(b.p.Lines[s.line].Legs) == 1 })
	if len(skew) < tabledLines {
		for _, s := range skew {
			name := b.p.Lines[s.line].Name
			if len(b.p.Lines[s.line].Legs) > 1 {
				name += ", from " + b.p.Points[s.From].Name + " to " + b.p.Points[s.To].Name
			}
			b.step(Position, "Position and unit vector along "+name, Subject{Lines: []int{s.line}, Points: []int{s.From, s.To}}, aligned(b.segmentFormulas(s)...))
		}
	} else {
		b.positionTable(paths)
	}
	var of []doc.Math
	about := Subject{}
	for _, s := range typed {
		of = append(of, b.equals(append([]doc.Math{unitVec("u", s.name)}, b.derived(b.p.Lines[s.line].Name, s.Typed, s.U)...)...))
		about.Lines, about.Points = append(about.Lines, s.line), append(about.Points, s.From)
	}
	for i := range b.p.Joints {
		j := &b.p.Joints[i]
		if j.Normal == (r3.Vec{}) || isAxis(j.Normal) {
			continue
		}
		n := unitVec("n", words(j.Name))
		of = append(of, b.equals(append([]doc.Math{n}, b.derived(j.Name, j.Typed, j.Normal)...)...))
		about.Joints = append(about.Joints, i)
	}
	b.step(Unit, "Unit "+english.Plural(len(of), "vector")+" of the "+english.Plural(len(of), "direction")+" given", about, formulas(of)...)
}

// used tells that a line's direction is needed: of a truss whose joints are solved by hand, where no table of
// equations stands, that its force is in an equation, or is what an equation was chosen to
// leave out, or is asked for.
func (b *builder) used(line int) bool {
	if !b.byJoints() {
		return true
	}
	is := problem.Source{Thing: problem.ALine, Index: line}
	own := func(symbol int) bool {
		return symbol >= 0 && symbol < len(b.p.Unknowns) && b.p.Unknowns[symbol].Line == line
	}
	return slices.ContainsFunc(b.p.Asked, func(q problem.Query) bool { return q.Of == is || q.With == is }) ||
		slices.ContainsFunc(b.Hand.Steps, func(s handsolve.Step) bool {
			return slices.ContainsFunc(s.Equations, func(e handsolve.Equation) bool {
				return slices.ContainsFunc(e.Named.Perp, own) || slices.ContainsFunc(e.Terms, func(t handsolve.Term) bool {
					return own(t.Symbol) || t.Symbol < 0 && t.Load == is
				})
			})
		})
}

// derived is how a unit vector follows from the direction as it was typed, and the vector.
func (b *builder) derived(name string, t problem.TypedDirection, u r3.Vec) []doc.Math {
	typed := origin.Phrase("direction of %[1]s, as the sheet gives it", name)
	var of []doc.Math
	fn := func(fn string, k int) doc.Math { return function(fn, b.degrees(t.Of[k], wholeDigits)) }
	switch t.As {
	case problem.AsComponents, problem.AsSlope:
		v := r3.Scale(math.Hypot(t.Of[0], t.Of[1]), u)
		if t.As == problem.AsComponents {
			x := append(slices.Clone(t.Of), 0)
			v = r3.Vec{X: x[0], Y: x[1], Z: x[2]}
		}
		if math.Abs(r3.Norm(v)-1) > nothing {
			of = append(of, fraction(b.tuple(v, unsaid), b.norm(v, unsaid)), fraction(b.tuple(v, unsaid), b.number(r3.Norm(v))))
		}
	case problem.AsPolar:
		of = append(of, paren(fn("cos", 0), fn("sin", 0)))
	case problem.AsAngles:
		of = append(of, paren(fn("cos", 0), fn("cos", 1), fn("cos", 2)))
	case problem.AsBearing:
		if b.p.Up.Z == 1 {
			of = append(of, paren(product(fn("cos", 1), fn("sin", 0)), product(fn("cos", 1), fn("cos", 0)), fn("sin", 1)))
		}
	}
	return traced(typed, row(append(of, b.along(u, unsaid))...)).Of
}

// between is the symbol of the vector from one point to another.
func (b *builder) between(from, to string) doc.Math {
	comma := ""
	if utf8.RuneCountInString(from) > 1 || utf8.RuneCountInString(to) > 1 {
		comma = ","
	}
	return vector("r", words(from+comma+to))
}

func (b *builder) arrow(s stretch) doc.Math {
	return b.between(b.p.Points[s.From].Name, b.p.Points[s.To].Name)
}

// segmentFormulas are r = B - A = (..) - (..) = (..) m, |r| = √(x² + y² + z²) = L m and
// u = r/|r| = (..)/L = (..).
func (b *builder) segmentFormulas(s stretch) []doc.Math {
	l, from, to := b.p.Units.Length, &b.p.Points[s.From], &b.p.Points[s.To]
	place := func(p *problem.Point) doc.Math {
		return b.tuple(in(p.At, l), func(axis int) doc.Origin {
			return origin.Phrase("%[2]s of %[1]s, from its place in the sheet", p.Name, "xyz"[axis:axis+1])
		})
	}
	arrow, r, length := b.arrow(s), b.tuple(in(s.R, l), b.segment(s, origin.R)), b.lengthFrom(s)
	size := []doc.Math{size(arrow), b.norm(in(s.R, l), b.segment(s, origin.R)), measured(length, l)}
	if isAxis(s.R) {
		size = slices.Delete(size, 1, 2)
	}
	return []doc.Math{
		b.equals(arrow, sum(named(to.Name), neg(named(from.Name))), sum(place(to), neg(place(from))), measured(r, l)),
		b.equals(size...),
		b.unitFrom(unitVec("u", s.name), arrow, size[0], r, length, b.along(s.U, b.segment(s, origin.U))),
	}
}

// unitFrom is u = r/|r| = (..)/L = (..).
func (b *builder) unitFrom(u, arrow, size, r, length, is doc.Math) doc.Math {
	return b.equals(u, fraction(arrow, size), fraction(r, length), is)
}

func (b *builder) lengthFrom(s stretch) doc.Math {
	return traced(b.segment(s, origin.Length)(0), b.length(s.Length))
}

// positionTable has position vector, length and unit vector of each line in a row.
func (b *builder) positionTable(of []stretch) {
	unit := b.p.Units.Length
	t := doc.NewTable("Line", "", "r, "+unit.Symbol, "|r|, "+unit.Symbol, "u = r/|r|")
	var lines []int
	for _, s := range of {
		lines = append(lines, s.line)
		t.Add(cell(s.name), cell(b.arrow(s)), cell(b.tuple(in(s.R, unit), b.segment(s, origin.R))), cell(b.lengthFrom(s)), cell(b.tuple(s.U, b.segment(s, origin.U))))
	}
	r := vector("r")
	axes := []doc.Math{square(part(symbol("r"), "x")), square(part(symbol("r"), "y")), square(part(symbol("r"), "z"))}
	b.step(Position, "Position and unit vectors", Subject{Lines: lines},
		say("The position vector ", r, " runs from the start of each line to its end, with ", equal(size(r), root(sum(axes[:b.axes]...))), ":"), t)
}

package working

import (
	"unicode/utf8"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
)

func norm(v r3.Vec) float64 { return r3.Norm(v) }

// stretch is a leg of a line with the symbols of its vectors.
type stretch struct {
	problem.Leg
	line int
	name doc.Math // of the line, with the leg's number where there are several
}

func (b *builder) stretches() []stretch {
	var out []stretch
	for i := range b.p.Lines {
		l := &b.p.Lines[i]
		if l.Belt != nil && len(l.Acts) == 0 && !l.Belt.ByPath {
			continue // it acts on fixed points alone
		}
		for k, leg := range l.Legs {
			s := stretch{leg, i, named(l.Name)}
			if len(l.Legs) > 1 {
				s.name = row(leafed(named(l.Name)), words(","), words(string(rune('1'+k%9))))
			}
			out = append(out, s)
		}
	}
	return out
}

// lines are the position vectors with their lengths, then the unit vectors.
func (b *builder) lines() {
	var paths, all []stretch
	for _, s := range b.stretches() {
		if s.To >= 0 {
			paths = append(paths, s)
		}
		all = append(all, s)
	}
	if len(paths) <= many {
		for _, s := range paths {
			b.step(Position, "Position vector along "+b.legName(s), b.lineSubject(s),
				formula(b.position(s)), formula(b.lengthOf(s)))
		}
	} else {
		b.positionTable(paths)
	}
	if len(all) <= many {
		for _, s := range all {
			b.step(Unit, "Unit vector along "+b.legName(s), b.lineSubject(s), formula(b.unit(s)), formula(b.unitNorm(s)))
		}
		return
	}
	b.unitTable(all)
}

// legName names a line, and which stretch of it where it has several.
func (b *builder) legName(s stretch) string {
	l := &b.p.Lines[s.line]
	if len(l.Legs) < 2 {
		return l.Name
	}
	return l.Name + ", from " + b.p.Points[s.From].Name + " to " + b.p.Points[s.To].Name
}

func (b *builder) lineSubject(s stretch) Subject {
	about := Subject{Lines: []int{s.line}, Points: []int{s.From}}
	if s.To >= 0 {
		about.Points = append(about.Points, s.To)
	}
	return about
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

// difference is B - A = (..) - (..).
func (b *builder) difference(from, to int) []doc.Math {
	p := b.p.Points
	return []doc.Math{
		sum(named(p[to].Name), neg(named(p[from].Name))),
		sum(b.tuple(p[to].At, b.length), neg(b.tuple(p[from].At, b.length))),
	}
}

// position is r = B - A = (..) - (..) = (..) m.
func (b *builder) position(s stretch) doc.Math {
	of := append([]doc.Math{b.arrow(s)}, b.difference(s.From, s.To)...)
	return equal(append(of, measured(b.tuple(s.R, b.length), b.p.Units.Length))...)
}

// lengthOf is |r| = √(x² + y² + z²) = L m.
func (b *builder) lengthOf(s stretch) doc.Math {
	n := b.norm(s.R, b.length)
	if len(n.Of) == 1 && n.Of[0].Op == doc.Power { // along an axis
		return equal(size(b.arrow(s)), measured(b.length(s.Length), b.p.Units.Length))
	}
	return equal(size(b.arrow(s)), n, measured(b.length(s.Length), b.p.Units.Length))
}

// unit is u = r/|r| = (..)/L = (..).
func (b *builder) unit(s stretch) doc.Math {
	u := vectorUnit(s.name)
	if s.To < 0 {
		return equal(u, b.along(s.U, cosine))
	}
	return equal(u, fraction(b.arrow(s), size(b.arrow(s))), fraction(b.tuple(s.R, b.length), b.length(s.Length)), b.along(s.U, cosine))
}

func vectorUnit(name doc.Math) doc.Math {
	return doc.Math{Op: doc.UnitVec, Text: "u", Of: []doc.Math{name}}
}

// unitNorm is |u| = √(..) = 1.
func (b *builder) unitNorm(s stretch) doc.Math {
	n := b.norm(s.U, cosine)
	if len(n.Of) == 1 && n.Of[0].Op == doc.Power { // along an axis
		return equal(size(vectorUnit(s.name)), exactly(1))
	}
	return equal(size(vectorUnit(s.name)), n, exactly(1))
}

func (b *builder) positionTable(of []stretch) {
	unit := b.p.Units.Length.Symbol
	t := table("Line", "", "end - start, "+unit, "r, "+unit, "|r|, "+unit)
	var lines []int
	for _, s := range of {
		lines = append(lines, s.line)
		t.Add(cell(s.name), cell(b.arrow(s)), cell(b.difference(s.From, s.To)[1]), cell(b.tuple(s.R, b.length)), cell(b.length(s.Length)))
	}
	r := doc.Math{Op: doc.Vec, Text: "r"}
	axes := []doc.Math{square(part(letter("r"), "x")), square(part(letter("r"), "y")), square(part(letter("r"), "z"))}
	b.step(Position, "Position vectors", Subject{Lines: lines},
		say("From the start of each line to its end, with the length ", equal(size(r), root(sum(axes[:b.axes]...))), ":"), t)
}

func (b *builder) unitTable(of []stretch) {
	t := table("Line", "", "u", "|u|")
	var lines []int
	for _, s := range of {
		lines = append(lines, s.line)
		t.Add(cell(s.name), cell(vectorUnit(s.name)), cell(b.tuple(s.U, cosine)), cell(exactly(1)))
	}
	u, r := doc.Math{Op: doc.UnitVec, Text: "u"}, doc.Math{Op: doc.Vec, Text: "r"}
	axes := []doc.Math{square(part(letter("u"), "x")), square(part(letter("u"), "y")), square(part(letter("u"), "z"))}
	b.step(Unit, "Unit vectors", Subject{Lines: lines},
		say(equal(u, fraction(r, size(r))), ", or the direction given; each has ", equal(size(u), root(sum(axes[:b.axes]...)), exactly(1)), ":"), t)
}

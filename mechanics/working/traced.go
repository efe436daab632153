package working

import (
	"trivet/mechanics/doc"
	"trivet/mechanics/origin"
	"trivet/mechanics/problem"
)

// traced gives each number of a formula its origin, where it has none yet.
func traced(o doc.Origin, m doc.Math) doc.Math {
	alone := doc.Formula{Of: []doc.Math{m}}
	tracedBlocks(o, []doc.Block{&alone})
	return alone.Of[0]
}

// tracedBlocks does so with the formulas of some blocks.
func tracedBlocks(o doc.Origin, of []doc.Block) []doc.Block {
	for _, b := range of {
		for _, m := range doc.Numbers(b) {
			if m.From == nil {
				m.From = o
			}
		}
	}
	return of
}

// axes are the origins of a vector's components.
type axes func(axis int) doc.Origin

// unsaid leaves what a component is to the whole that it belongs to.
func unsaid(int) doc.Origin { return nil }

// parts are the origins of what a share, or without one what is known, has of a component.
type parts func(of *share, axis int) doc.Origin

func (b *builder) segment(s stretch, part origin.Part) axes {
	return func(axis int) doc.Origin { return origin.Segment(b.s, s.line, s.leg, part, axis) }
}

func (b *builder) coordinate(point int) axes {
	return func(axis int) doc.Origin { return origin.Coordinate(axis, b.p.Points[point].Name) }
}

func (b *builder) parts(a *act, moment bool) parts {
	return func(of *share, axis int) doc.Origin {
		switch {
		case of == nil:
			return a.source.Known(b.s, axis, moment)
		case a.split && moment:
			return origin.Phrase("the moment of one unit of the "+a.what+" at %[1]s", a.at)
		case a.split:
			return origin.Phrase("the %[2]s component of one unit of the "+a.what+" at %[1]s", a.at, "xyz"[axis:axis+1])
		case of.unknown < 0 && moment:
			return origin.Phrase("the moment of one unit of %[1]s", b.p.Lines[a.line].Name)
		case of.unknown < 0:
			return origin.Phrase("the %[2]s component of one unit of %[1]s", b.p.Lines[a.line].Name, "xyz"[axis:axis+1])
		}
		return a.source.PerUnit(b.s, of.unknown, axis, moment)
	}
}

// resultFrom is the origin of what the sheet asks for.
func (b *builder) resultFrom(q problem.Query) doc.Origin {
	if q.Kind == problem.AskUnknown && q.Unknown >= 0 {
		return origin.Value(b.s, q.Unknown)
	}
	return origin.Phrase("%[1]s, computed from the solution", q.Name)
}

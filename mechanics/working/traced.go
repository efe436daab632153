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

func (b *builder) segment(s stretch, part origin.Part) axes {
	return func(axis int) doc.Origin { return origin.Segment(b.s, s.line, s.leg, part, axis) }
}

// resultFrom is the origin of what the sheet asks for.
func (b *builder) resultFrom(q problem.Query) doc.Origin {
	if q.Of.Thing == problem.AnUnknown {
		return origin.Value(b.s, q.Of.Index)
	}
	return origin.Phrase("%[1]s, computed from the solution", q.Name)
}

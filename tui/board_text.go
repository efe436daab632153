package tui

import (
	"slices"

	"trivet/mechanics/doc"
	"trivet/tui/grid"
	"trivet/tui/theme"
)

// formulaIn is how far a formula stands in.
const formulaIn = 4

// spanLooks are how the spans of a document show.
var spanLooks = [...]grid.Style{
	doc.PlainLook: theme.Plain, doc.FormulaLook: theme.Name, doc.AnswerLook: theme.Emphasis, doc.HeadLook: theme.Dim, doc.NoteLook: theme.Dim,
	doc.GoodLook: theme.Good, doc.RiskLook: theme.Warn, doc.BadLook: theme.Bad,
}

// stepLayout is how a step stands in lines of a width, with so many blank lines between
// its blocks.
func stepLayout(w, air int, ascii bool) doc.Layout {
	return doc.Layout{Width: w, FormulaIn: formulaIn, Air: air, ASCII: ascii}
}

// laid adds blocks in lines. The numbers of a check are of the check as a whole.
func (d *paneText) laid(l doc.Layout, blocks []doc.Block) {
	n := int32(0)
	for _, line := range l.Lines(blocks) {
		var segs []seg
		for _, x := range line.Spans {
			look := spanLooks[x.Look]
			if c, check := blocks[line.Block].(*doc.Check); check && c.From != nil {
				of, _ := c.From.(ask)
				segs = appendNumbered(segs, look, x.Text, func(int) ask {
					n++
					of.n = n
					return of
				})
				continue
			}
			of, _ := x.From.(ask)
			segs = append(segs, seg{text: x.Text, look: look, of: of})
		}
		d.add(segs...)
	}
}

// askable is a block of a step whose numbers say which they are.
func askable(b doc.Block, step, block int) doc.Block {
	of := ask{what: inStep, i: int32(step), j: int32(block)}
	var number func(m doc.Math) doc.Math
	number = func(m doc.Math) doc.Math {
		if m.Op == doc.Number {
			m.From = of
			of.k++
		}
		m.Of = slices.Clone(m.Of)
		for k := range m.Of {
			if m.Op != doc.Power || k == 0 { // a power is none of them
				m.Of[k] = number(m.Of[k])
			}
		}
		return m
	}
	b = doc.Map(b, number)
	if c, ok := b.(*doc.Check); ok {
		c.From = of
	}
	return b
}

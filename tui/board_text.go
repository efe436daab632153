package tui

import (
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
	for _, line := range l.Lines(blocks) {
		var segs []seg
		for _, x := range line.Spans {
			look := spanLooks[x.Look]
			if c, check := blocks[line.Block].(*doc.Check); check && x.From == nil {
				segs = append(segs, numbered(look, x.Text, c.From)...)
				continue
			}
			segs = append(segs, seg{text: x.Text, look: look, of: x.From})
		}
		d.add(segs...)
	}
}

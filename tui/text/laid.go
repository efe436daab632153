package text

import (
	"trivet/mechanics/doc"
	"trivet/tui/grid"
	"trivet/tui/theme"
)

// formulaIn is how far a formula stands in.
const formulaIn = 4

// spanLooks are how the spans of a document show.
var spanLooks = [...]grid.Style{
	doc.PlainLook: theme.Plain, doc.FormulaLook: theme.Name, doc.AnswerLook: theme.Answer, doc.HeadLook: theme.Dim, doc.NoteLook: theme.Dim,
	doc.GoodLook: theme.Good, doc.RiskLook: theme.Warn, doc.BadLook: theme.Bad,
}

// Layout is how a step stands in lines of a width, with so many blank lines between
// its blocks.
func Layout(w, air int, ascii bool) doc.Layout {
	return doc.Layout{Width: w, FormulaIn: formulaIn, Air: air, ASCII: ascii}
}

// Laid adds blocks in lines. The numbers of a check are of the check as a whole.
func (d *Lines) Laid(l doc.Layout, blocks []doc.Block) {
	for _, line := range l.Lines(blocks) {
		var segs []Span
		for _, x := range line.Spans {
			look := spanLooks[x.Look]
			if c, check := blocks[line.Block].(*doc.Check); check && x.From == nil {
				segs = append(segs, Numbered(look, x.Text, c.From)...)
				continue
			}
			segs = append(segs, Span{Text: x.Text, Look: look, Of: x.From})
		}
		d.Add(segs...)
	}
}

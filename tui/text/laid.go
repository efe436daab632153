package text

import (
	"slices"
	"strings"

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

// Laid adds blocks in lines. The mark of a check has the check's origin.
func (d *Lines) Laid(l doc.Layout, blocks []doc.Block) {
	marked := -1
	for _, line := range l.Lines(blocks) {
		var segs []Span
		for _, x := range line.Spans {
			segs = append(segs, Span{Text: x.Text, Look: spanLooks[x.Look], Of: x.From})
		}
		if c, check := blocks[line.Block].(*doc.Check); check && line.Block != marked {
			marked = line.Block
			if k := slices.IndexFunc(segs, func(s Span) bool { return strings.TrimSpace(s.Text) != "" }); k >= 0 {
				segs[k].Of = c.From
			}
		}
		d.Add(segs...)
	}
}

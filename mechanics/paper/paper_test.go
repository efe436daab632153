package paper

import (
	"strings"
	"testing"

	"trivet/mechanics/doc"
	"trivet/mechanics/drawing"
)

func symbol(name string) doc.Math { return doc.Math{Op: doc.Symbol, Text: name} }

// long is a sum of many terms, or of many factors in parentheses.
func long(op doc.Op) doc.Math {
	m := doc.Math{Op: op}
	for range 40 {
		m.Of = append(m.Of, symbol("alpha"))
	}
	return m
}

// Whatever a document holds stands within the margins of its sheets of paper.
func TestPagesKeepTheirMargins(t *testing.T) {
	table := doc.NewTable("Name", "Says")
	table.Add(doc.Inline{Words: "T"}, doc.Inline{Words: strings.Repeat("many words ", 60)})
	words := strings.Repeat("Verankerung", 30)
	d := &doc.Doc{Title: words, Foot: "Source: own.", Sections: []doc.Section{{Level: 1, Title: words, Blocks: []doc.Block{
		doc.Say(strings.Repeat("A sentence. ", 90)), doc.Say(words), table,
		&doc.Formula{Of: []doc.Math{{Op: doc.Relate, Text: "=", Of: []doc.Math{symbol("x"), long(doc.Sum), {Op: doc.Paren, Of: []doc.Math{long(doc.Sum)}}}}}},
		&doc.Formula{Of: []doc.Math{long(doc.Product)}}, &doc.Boxed{Math: long(doc.Sum)},
		&doc.Check{State: doc.Fails, Text: doc.Plain(strings.Repeat("it fails ", 40))}, &doc.List{Items: [][]doc.Inline{doc.Plain("an item")}}, &doc.Code{Text: "a = 1\n"},
		&doc.Figure{Drawing: drawing.Drawing{Width: 900, Height: 2000}},
	}}}}
	for _, onePage := range []bool{false, true} {
		d.OnePage = onePage
		for i, page := range Pages(d) {
			if b := page.Bounds(); b.High.X > pageWidth-pageMargin+1 || b.Low.X < pageMargin-1 || b.High.Y > pageHeight {
				t.Errorf("one page %v, page %d reaches from %v to %v", onePage, i+1, b.Low, b.High)
			}
		}
	}
}

// A heading, and the sentence that announces a formula, stand on the page of what follows.
func TestWhatAnnouncesStaysWithIt(t *testing.T) {
	for lines := range 60 {
		d := &doc.Doc{Sections: []doc.Section{{Level: 1, Title: "First"}, {Level: 1, Title: "Heading", Blocks: []doc.Block{doc.Say("It follows:"), &doc.Boxed{Math: symbol("answer")}}}}}
		for range lines {
			d.Sections[0].Blocks = append(d.Sections[0].Blocks, doc.Say("A line."))
		}
		for _, page := range Pages(d) {
			all := ""
			for _, text := range page.Texts {
				all += drawing.Plain(text.Runs) + " "
			}
			heading, says, answer := strings.Contains(all, "Heading"), strings.Contains(all, "follows:"), strings.Contains(all, "answer")
			if heading != says || says != answer {
				t.Fatalf("behind %d lines a page has heading %v, sentence %v, formula %v", lines, heading, says, answer)
			}
		}
	}
}

package topic

import (
	"trivet/mechanics/doc"
)

// Narrowest is the width down to which lines keep to a width.
const Narrowest = 24

// Lines set a document in lines of a width at most; text as it is typed is not broken.
func Lines(d *doc.Doc, width int) (lines [][]doc.Span) {
	layout := doc.Layout{Width: max(width, Narrowest), FormulaIn: 2, Air: 1}
	add := func(blocks []doc.Block, look func(*doc.Span)) {
		for _, l := range layout.Lines(blocks) {
			for k := range l.Spans {
				look(&l.Spans[k])
			}
			lines = append(lines, l.Spans)
		}
	}
	heading := func(title string) {
		if title == "" {
			return
		}
		if len(lines) > 0 {
			lines = append(lines, nil)
		}
		add([]doc.Block{doc.Say(title)}, func(s *doc.Span) { s.Look = doc.HeadLook })
	}
	heading(d.Title)
	for _, s := range d.Sections {
		heading(s.Title)
		if s.Title == "" && len(lines) > 0 && len(s.Blocks) > 0 {
			lines = append(lines, nil)
		}
		var blocks []doc.Block
		for _, b := range s.Blocks {
			blocks = append(blocks, quoted(b))
		}
		add(blocks, func(*doc.Span) {})
	}
	return lines
}

// Spoken are the lines of a document for a screen reader.
func Spoken(d *doc.Doc) []string {
	lines := []string{d.Title}
	for _, s := range d.Sections {
		if s.Title != "" {
			lines = append(lines, s.Title)
		}
		lines = append(lines, doc.Lines(s.Blocks)...)
	}
	return lines
}

// quoted puts what is typed among other words in quotes, since blanks may be part of it
// and lines have no type for it.
func quoted(b doc.Block) doc.Block {
	quote := func(text []doc.Inline) []doc.Inline {
		out := append([]doc.Inline(nil), text...)
		for k, i := range out {
			if i.Typed && len(out) > 1 {
				out[k].Words = "`" + i.Words + "`"
			}
		}
		return out
	}
	switch b := b.(type) {
	case *doc.Paragraph:
		return &doc.Paragraph{Text: quote(b.Text), Note: b.Note}
	case *doc.List:
		out := &doc.List{}
		for _, item := range b.Items {
			out.Items = append(out.Items, quote(item))
		}
		return out
	}
	return b
}

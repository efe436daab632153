package doc

import (
	"fmt"
	"strings"
)

// TextWidth is how wide a line of text gets; tables that may not be broken take what they
// need.
const TextWidth = 80

// textLayouts are how blocks stand in sections without a title, in parts, and in steps.
var textLayouts = [...]Layout{
	{Width: TextWidth, Cut: true},
	{Width: TextWidth, Cut: true, In: 2, FormulaIn: 2},
	{Width: TextWidth, Cut: true, In: 4, FormulaIn: 6},
}

// Text writes a document for reading in a terminal or a file.
func Text(d *Doc) string {
	var t textWriter
	if d.Title != "" {
		t.sentence("", Plain(d.Title))
	}
	for _, under := range d.Under {
		t.sentence("", under)
	}
	for _, sec := range d.Sections {
		level := min(sec.Level, len(textLayouts)-1)
		if t.b.Len() > 0 {
			t.b.WriteString("\n")
		}
		switch {
		case sec.Title == "":
			level = 0
		case sec.Number > 0:
			t.sentence(fmt.Sprintf("%2d  ", sec.Number), Plain(sec.Title))
		default:
			t.sentence("", Plain(sec.Title))
		}
		layout := textLayouts[level]
		layout.Cut = !hasWhole(sec.Blocks)
		t.lines(layout.Lines(sec.Blocks))
	}
	if d.Foot != "" {
		t.b.WriteString("\n")
		t.sentence("", Plain(d.Foot))
	}
	return t.b.String()
}

type textWriter struct{ b strings.Builder }

func (t *textWriter) lines(of []LaidLine) {
	for _, l := range of {
		for _, x := range l.Spans {
			t.b.WriteString(x.Text)
		}
		t.b.WriteString("\n")
	}
}

// sentence writes prose behind a mark.
func (t *textWriter) sentence(mark string, text []Inline) {
	s := &sheetOfLines{Layout: textLayouts[0]}
	s.sentence(cellSetter{}.text(mark), text, PlainLook, 0)
	t.lines(s.lines)
}

// hasWhole tells that a table among blocks may be wider than a line.
func hasWhole(blocks []Block) bool {
	for _, b := range blocks {
		if t, ok := b.(*Table); ok && t.Whole {
			return true
		}
	}
	return false
}

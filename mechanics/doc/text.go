package doc

import (
	"fmt"
	"slices"
	"strings"
)

// TextWidth is how wide a line of text gets; tables that may not be broken take what they
// need.
const TextWidth = 80

// textLayouts are how blocks stand in sections without a title, in parts, and in steps.
var textLayouts = [...]Layout{
	{Width: TextWidth},
	{Width: TextWidth, In: 2, FormulaIn: 2},
	{Width: TextWidth, In: 4, FormulaIn: 6},
}

// Text writes a document for reading in a terminal or a file.
func Text(d *Doc) string {
	s := &sheetOfLines{Layout: textLayouts[0]}
	s.Cut = true
	heading := func(mark string, text []Inline) { s.sentence(cellSetter{}.text(mark), text, PlainLook, 0) }
	if d.Title != "" {
		heading("", Plain(d.Title))
	}
	for _, under := range d.Under {
		heading("", under)
	}
	for _, sec := range d.Sections {
		layout := textLayouts[min(sec.Level, len(textLayouts)-1)]
		if len(s.lines) > 0 {
			s.put(0, nil)
		}
		switch {
		case sec.Title == "":
			layout = textLayouts[0]
		case sec.Number > 0:
			heading(fmt.Sprintf("%2d  ", sec.Number), Plain(sec.Title))
		default:
			heading("", Plain(sec.Title))
		}
		layout.Cut = !slices.ContainsFunc(sec.Blocks, isWhole)
		s.lines = append(s.lines, layout.Lines(sec.Blocks)...)
	}
	if d.Foot != "" {
		s.put(0, nil)
		heading("", Plain(d.Foot))
	}
	var b strings.Builder
	for _, l := range s.lines {
		b.WriteString(joined(l.Spans) + "\n")
	}
	return b.String()
}

// isWhole tells a table that may be wider than a line.
func isWhole(b Block) bool {
	t, ok := b.(*Table)
	return ok && t.Whole
}

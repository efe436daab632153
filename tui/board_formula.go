package tui

import (
	"strings"

	"trivet/mechanics/doc"
	"trivet/tui/grid"
	"trivet/tui/theme"
)

// formulaIn is how far a formula stands in.
const formulaIn = 4

// aligned sets equations under each other with their first relations in one column.
func (b *boardWriter) aligned(of []doc.Math) {
	left := 0
	for _, m := range of {
		if m.Op == doc.Relate && len(m.Of) > 1 {
			if n := grid.Width(b.math(m.Of[0])[0]); n <= b.w/3 {
				left = max(left, n)
			}
		}
	}
	for i, m := range of {
		if i > 0 {
			b.gap()
		}
		in := formulaIn
		if m.Op == doc.Relate && len(m.Of) > 1 {
			in += max(left-grid.Width(b.math(m.Of[0])[0]), 0)
		}
		b.formula(m, in)
	}
}

// formula sets one, in more lines where it is too wide: broken at its relations,
// then at its signs.
func (b *boardWriter) formula(m doc.Math, in int) {
	lines := b.math(m)
	wide := 0
	for _, l := range lines {
		wide = max(wide, grid.Width(l))
	}
	room := b.w - in
	switch {
	case wide <= room:
		for _, l := range lines {
			b.text(theme.Name, strings.Repeat(" ", in)+l)
		}
	case m.Op == doc.Relate && len(m.Of) > 1:
		first := b.math(m.Of[0])
		if len(first) > 1 {
			b.formula(m.Of[0], in)
			first = []string{""}
		}
		lead := strings.Repeat(" ", in) + first[0]
		for _, x := range m.Of[1:] {
			b.operand(lead+" "+m.Text+" ", x)
			lead = strings.Repeat(" ", grid.Width(lead))
		}
	case len(lines) == 1:
		b.broken(strings.Repeat(" ", in), lines[0])
	default:
		for _, l := range lines {
			b.text(theme.Name, strings.Repeat(" ", min(in, formulaIn))+l)
		}
	}
}

// operand sets what stands behind a relation.
func (b *boardWriter) operand(lead string, m doc.Math) {
	lines := b.math(m)
	if len(lines) == 1 {
		b.broken(lead, lines[0])
		return
	}
	for i, l := range lines {
		if i == len(lines)/2 {
			b.text(theme.Name, lead+l)
		} else {
			b.text(theme.Name, strings.Repeat(" ", grid.Width(lead))+l)
		}
	}
}

// broken sets a formula of one line, gone on with before a sign where it is too wide.
func (b *boardWriter) broken(lead, text string) {
	line := lead
	on := strings.Repeat(" ", min(grid.Width(lead), b.w/2))
	for k, piece := range strings.SplitAfter(text, " ") {
		if k > 0 && grid.Width(strings.TrimRight(line+piece, " ")) > b.w && strings.TrimSpace(line) != "" {
			b.text(theme.Name, strings.TrimRight(line, " "))
			line = on
		}
		line += piece
	}
	b.text(theme.Name, strings.TrimRight(line, " "))
}

// boxed frames an answer.
func (b *boardWriter) boxed(m doc.Math) {
	text := b.math(m)[0]
	in := strings.Repeat(" ", formulaIn)
	if grid.Width(text)+formulaIn+4 > b.w {
		b.formula(m, formulaIn)
		return
	}
	corners := [...]string{"┌", "┐", "│", "└", "┘", "─"}
	if b.plain {
		corners = [...]string{"+", "+", "|", "+", "+", "-"}
	}
	rule := strings.Repeat(corners[5], grid.Width(text)+2)
	b.text(theme.Emphasis, in+corners[0]+rule+corners[1])
	b.text(theme.Emphasis, in+corners[2]+" "+text+" "+corners[2])
	b.text(theme.Emphasis, in+corners[3]+rule+corners[4])
}

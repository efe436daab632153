package tui

import (
	"strings"

	"trivet/mechanics/report"
	"trivet/mechanics/working"
	"trivet/tui/grid"
	"trivet/tui/theme"
)

// boardWriter sets a step in lines of a width, with air between its blocks.
type boardWriter struct {
	doc
	w     int
	plain bool // ASCII alone
	air   int  // blank lines between blocks
}

// asciiMath says in ASCII what is not in it; what stands in a matrix keeps its width.
var asciiMath = strings.NewReplacer("√", "sqrt", "²", "^2", "³", "^3", "·", "*", "×", "x")

func (b *boardWriter) math(m working.Math) []string {
	lines := strings.Split(report.TextMath(m), "\n")
	if b.plain && len(lines) == 1 {
		lines[0] = asciiMath.Replace(lines[0])
	}
	return lines
}

func (b *boardWriter) gap() {
	for range b.air {
		if len(b.doc) > 0 {
			b.add()
		}
	}
}

// set writes the blocks of a step.
func (b *boardWriter) set(body []working.Block) {
	for _, block := range body {
		b.gap()
		switch {
		case block.Formula != nil:
			b.aligned([]working.Math{*block.Formula})
		case block.Boxed != nil:
			b.boxed(*block.Boxed)
		case len(block.Aligned) > 0:
			b.aligned(block.Aligned)
		case block.Table != nil:
			b.table(block.Table)
		case block.OK != nil:
			b.marked(*block.OK, b.sentence(block.Text), b.w)
		default:
			b.wrapped(theme.Plain, "", b.sentence(block.Text), b.w)
		}
	}
}

func (b *boardWriter) sentence(text []working.Inline) string {
	var s strings.Builder
	for _, part := range text {
		if part.Math != nil {
			s.WriteString(b.math(*part.Math)[0])
		} else {
			s.WriteString(part.Words)
		}
	}
	return s.String()
}

// formulaIn is how far a formula stands in.
const formulaIn = 4

// aligned sets equations under each other with their first relations in one column.
func (b *boardWriter) aligned(of []working.Math) {
	left := 0
	for _, m := range of {
		if m.Op == working.Relate && len(m.Of) > 1 {
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
		if m.Op == working.Relate && len(m.Of) > 1 {
			in += max(left-grid.Width(b.math(m.Of[0])[0]), 0)
		}
		b.formula(m, in)
	}
}

// formula sets one, in more lines where it is too wide: broken at its relations,
// then at its signs.
func (b *boardWriter) formula(m working.Math, in int) {
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
	case m.Op == working.Relate && len(m.Of) > 1:
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
func (b *boardWriter) operand(lead string, m working.Math) {
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
func (b *boardWriter) boxed(m working.Math) {
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

// table sets columns; one that is too wide stands row by row, head and cell.
func (b *boardWriter) table(t *working.Table) {
	rows := [][]string{}
	widths := make([]int, len(t.Head))
	for k, h := range t.Head {
		widths[k] = grid.Width(h)
	}
	for _, r := range t.Rows {
		cells := make([]string, len(t.Head))
		for k := range min(len(r), len(cells)) {
			cells[k] = b.sentence(r[k : k+1])
			widths[k] = max(widths[k], grid.Width(cells[k]))
		}
		rows = append(rows, cells)
	}
	total := 2 * formulaIn / 2
	for _, n := range widths {
		total += n + 2
	}
	if total-2 > b.w {
		for _, r := range rows {
			var parts []string
			for k, cell := range r {
				if cell != "" {
					parts = append(parts, strings.TrimSpace(t.Head[k]+" "+cell))
				}
			}
			b.wrapped(theme.Plain, strings.Repeat(" ", formulaIn), strings.Join(parts, "; "), b.w)
		}
		return
	}
	line := func(cells []string, rights []bool) string {
		s := strings.Repeat(" ", formulaIn)
		for k, cell := range cells {
			s += fit(cell, widths[k], rights[k]) + "  "
		}
		return strings.TrimRight(s, " ")
	}
	rights := make([]bool, len(t.Head))
	for k := range rights {
		rights[k] = len(rows) > 0
		for _, r := range t.Rows {
			rights[k] = rights[k] && k < len(r) && r[k].Math != nil && number(*r[k].Math)
		}
	}
	b.text(theme.Dim, line(t.Head, rights))
	for _, r := range rows {
		b.text(theme.Plain, line(r, rights))
	}
}

func number(m working.Math) bool {
	return m.Op == working.Number || m.Op == working.Neg && len(m.Of) > 0 && number(m.Of[0])
}

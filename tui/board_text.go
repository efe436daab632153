package tui

import (
	"strings"

	"trivet/mechanics/doc"
	"trivet/tui/grid"
	"trivet/tui/theme"
)

// boardWriter sets a step in lines of a width, with air between its blocks.
type boardWriter struct {
	paneText
	w     int
	plain bool // ASCII alone
	air   int  // blank lines between blocks
}

// asciiMath says in ASCII what is not in it; what stands in a matrix keeps its width.
var asciiMath = strings.NewReplacer("√", "sqrt", "²", "^2", "³", "^3", "·", "*", "×", "x")

func (b *boardWriter) math(m doc.Math) []string {
	lines := strings.Split(doc.TextMath(m), "\n")
	if b.plain && len(lines) == 1 {
		lines[0] = asciiMath.Replace(lines[0])
	}
	return lines
}

func (b *boardWriter) gap() {
	for range b.air {
		if len(b.paneText) > 0 {
			b.add()
		}
	}
}

// set writes the blocks of a step.
func (b *boardWriter) set(body []doc.Block) {
	for _, block := range body {
		b.gap()
		switch block := block.(type) {
		case *doc.Formula:
			b.aligned(block.Of)
		case *doc.Boxed:
			b.boxed(block.Math)
		case *doc.Table:
			b.table(block)
		case *doc.Check:
			b.marked(block.State != doc.Fails, b.sentence(block.Text), b.w)
		case *doc.Paragraph:
			b.wrapped(theme.Plain, "", b.sentence(block.Text), b.w)
		}
	}
}

func (b *boardWriter) sentence(text []doc.Inline) string {
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

// table sets columns; one that is too wide stands row by row, head and cell.
func (b *boardWriter) table(t *doc.Table) {
	rows := [][]string{}
	widths := make([]int, len(t.Columns))
	for k, c := range t.Columns {
		widths[k] = grid.Width(c.Head)
	}
	for _, r := range t.Rows {
		cells := make([]string, len(t.Columns))
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
					parts = append(parts, strings.TrimSpace(t.Columns[k].Head+" "+cell))
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
	rights := t.Rights()
	heads := make([]string, len(t.Columns))
	for k, c := range t.Columns {
		heads[k] = c.Head
	}
	b.text(theme.Dim, line(heads, rights))
	for _, r := range rows {
		b.text(theme.Plain, line(r, rights))
	}
}

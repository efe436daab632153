package report

import (
	"slices"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"trivet/mechanics/printable"
)

// columns sets rows in columns, two spaces apart, or one where that is too wide;
// the first column, those that hold words and those named to the left, numbers to
// the right.
func columns(rows [][]string, left ...int) string {
	var widths []int
	var words []bool
	for _, row := range rows {
		for k, cell := range row {
			cell = printable.Line(cell)
			if k == len(widths) {
				widths, words = append(widths, 0), append(words, k == 0 || slices.Contains(left, k))
			}
			widths[k] = max(widths[k], ansi.StringWidth(cell))
			if cell != "" && !strings.ContainsAny(cell[:1], "-0123456789(|") {
				words[k] = words[k] || !isHead(rows, row)
			}
		}
	}
	gap, total := "  ", 0
	for _, w := range widths {
		total += w + len(gap)
	}
	if total > width {
		gap = " "
	}
	var b, line strings.Builder // of a large system a row has thousands of cells
	for _, row := range rows {
		line.Reset()
		line.WriteString("  ")
		for k, cell := range row {
			cell = printable.Line(cell)
			pad := strings.Repeat(" ", widths[k]-ansi.StringWidth(cell))
			if k > 0 {
				line.WriteString(gap)
			}
			if words[k] {
				line.WriteString(cell + pad)
			} else {
				line.WriteString(pad + cell)
			}
		}
		b.WriteString(strings.TrimRight(line.String(), " ") + "\n")
	}
	return b.String()
}

// isHead tells a table's head row: it sets no column to the left.
func isHead(rows [][]string, row []string) bool {
	return len(rows) > 1 && &rows[0][0] == &row[0] && row[0] == ""
}

package report

import (
	"strings"

	"trivet/mechanics/doc"

	"github.com/charmbracelet/x/ansi"
)

// textGrid sets a matrix in brackets, a determinate between bars; numbers to the right.
func textGrid(m doc.Math) box {
	var rows [][]string
	var widths []int
	for _, r := range m.Of {
		entries := r.Of
		if m.Op == doc.Column {
			entries = []doc.Math{r}
		}
		var cells []string
		for k, e := range entries {
			text := bare(textBox(e, false).lines[0])
			if k == len(widths) {
				widths = append(widths, 0)
			}
			widths[k] = max(widths[k], ansi.StringWidth(text))
			cells = append(cells, text)
		}
		rows = append(rows, cells)
	}
	out := box{base: (len(rows) - 1) / 2}
	for i, cells := range rows {
		open, shut := brackets(m.Op, i, len(rows))
		line := open
		for k, text := range cells {
			if k > 0 {
				line += "  "
			}
			line += strings.Repeat(" ", widths[k]-ansi.StringWidth(text)) + text
		}
		out.lines = append(out.lines, line+shut)
	}
	if len(out.lines) == 0 {
		return inline("[]")
	}
	return out
}

func brackets(op doc.Op, i, n int) (string, string) {
	switch {
	case op == doc.Det:
		return "│", "│"
	case n == 1:
		return "[", "]"
	case i == 0:
		return "⎡", "⎤"
	case i == n-1:
		return "⎣", "⎦"
	}
	return "⎢", "⎥"
}

package report

import (
	"strings"

	"trivet/mechanics/doc"

	"github.com/charmbracelet/x/ansi"
)

// pageCells is how wide a line of a formula on a page may be, counted in cells
// of its print as text.
const pageCells = 74

// lines breaks equations for aligned environments: the first relation of each is
// the column, and what is too wide goes on below it, at a relation or a sign.
func (t tex) lines(of []doc.Math) string {
	var out []string
	for _, m := range of {
		pieces, widths := strings.Split(t.math(m), softBreak), pieceWidths(m)
		relates := m.Op == doc.Relate && len(m.Of) > 1
		line, wide, aligned := "", 0, !relates
		if !relates {
			line = "& "
		}
		for k, piece := range pieces {
			w := ansi.StringWidth(piece)
			if len(widths) == len(pieces) {
				w = widths[k]
			}
			begins := relates && strings.HasPrefix(piece, t.relation(m.Text))
			switch {
			case begins && !aligned:
				line, aligned = line+"&", true
			case k > 0 && wide+w > pageCells:
				out = append(out, line)
				line, wide = "& ", 4 // the indent, about
				if !begins {
					line = `& \quad `
				}
			}
			line += piece
			wide += w
		}
		out = append(out, line)
	}
	return strings.Join(out, " \\\\\n")
}

// pieceWidths are the cells of a formula's pieces between soft breaks, as text.
func pieceWidths(m doc.Math) []int {
	b := textBox(m, false)
	var widths []int
	for _, piece := range strings.Split(b.lines[b.base], softBreak) {
		widths = append(widths, ansi.StringWidth(piece))
	}
	return widths
}

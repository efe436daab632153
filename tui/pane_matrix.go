package tui

import (
	"fmt"
	"strings"

	"trivet/mechanics/origin"
	"trivet/mechanics/statics"
	"trivet/tui/grid"
	"trivet/tui/theme"
	"trivet/units"
)

// matrix writes A, b and what is left of each row.
func (l live) matrix(d *paneText, g theme.Glyphs) {
	s, p := l.solution, l.problem
	if len(s.System.Rows) == 0 {
		return
	}
	unit := "b in " + p.Units.Force.Symbol
	if moments(s) {
		unit += ", of moments in " + p.Units.For(units.Moment).Symbol
	}
	d.heading("A x = b   (" + unit + ")")
	label := 4
	for i, r := range s.System.Rows {
		if i < maxRows {
			label = max(label, grid.Width(origin.Label(p, &r)))
		}
	}
	wall := " " + string(g.Wall)
	var store segs
	if len(s.System.Cols) <= maxCols {
		l.matrixHead(d, label, wall)
	}
	for i, r := range s.System.Rows {
		if i == maxRows {
			d.text(theme.Dim, fmt.Sprintf("... and %d more rows", len(s.System.Rows)-i))
			break
		}
		name := seg{text: grid.Fit(origin.Label(p, &r), label), look: theme.Name, head: true}
		if len(s.System.Cols) > maxCols {
			entries := min(len(s.System.Terms[i]), maxTerms)
			d.add(l.sparse(append(store.line(2*entries+6), name), i)...)
			continue
		}
		line := append(store.line(len(s.System.Cols)+5), name)
		for j := range s.System.Cols {
			line = append(line, numeral(grid.FitRight(coefficient(s.Coefficient(i, j)), wide), theme.Plain, origin.Entry(s, i, j)))
		}
		line = append(line, seg{text: wall, look: theme.Rule}, numeral(grid.FitRight(bare(p, s.System.B[i], r.Dim()), 10), theme.Plain, origin.Known(s, i)))
		if i < len(s.Residuals) {
			left := s.Residuals[i]
			line = append(line, numeral(fmt.Sprintf("%12s", origin.Tiny(left.Value/p.Units.For(r.Dim()).Factor)), theme.Dim, origin.Residual(s, i)),
				numeral(fmt.Sprintf("%12s", origin.Tiny(left.Relative)), theme.Dim, origin.Share(s, i)))
		}
		d.add(line...)
	}
}

// wide is a column of the matrix: -0.12345 and a blank.
const wide = 8

func (l live) matrixHead(d *paneText, label int, wall string) {
	head := []seg{{text: grid.Fit("", label), look: theme.Dim, head: true}}
	for _, c := range l.solution.System.Cols {
		head = append(head, seg{text: grid.FitRight(c, wide), look: theme.Name})
	}
	d.add(append(head, seg{text: wall, look: theme.Rule}, seg{text: grid.FitRight("b", 10), look: theme.Name},
		seg{text: grid.FitRight("residual", 12), look: theme.Dim}, seg{text: "  of largest", look: theme.Dim})...)
}

// sparse writes a row of a system that has more columns than a reader would scroll
// through: what is not zero, each with its unknown, then b and what is left.
func (l live) sparse(line []seg, i int) []seg {
	s, p := l.solution, l.problem
	r := &s.System.Rows[i]
	n := 0
	for _, t := range s.System.Terms[i] {
		if t.Value == 0 {
			continue
		}
		if n++; n > maxTerms {
			line = append(line, seg{text: " ...", look: theme.Dim})
			break
		}
		line = append(line, numeral(grid.FitRight(coefficient(s.Coefficient(i, t.Col)), wide+1), theme.Plain, origin.Entry(s, i, t.Col)),
			seg{text: " " + s.System.Cols[t.Col], look: theme.Name})
	}
	line = append(line, seg{text: " =", look: theme.Rule}, numeral(" "+bare(p, s.System.B[i], r.Dim()), theme.Plain, origin.Known(s, i)))
	if i < len(s.Residuals) {
		left := s.Residuals[i].Value / p.Units.For(r.Dim()).Factor
		line = append(line, seg{text: "  residual", look: theme.Dim}, numeral(" "+origin.Tiny(left), theme.Dim, origin.Residual(s, i)))
	}
	return line
}

// order writes the blocks into which the system falls: which equations give which
// unknowns, one after the other. A system of one block has no order.
func (l live) order(d *paneText, w int) {
	s, p := l.solution, l.problem
	if len(l.blocks) < 2 {
		return
	}
	d.heading("Order in which it can be solved")
	for i, b := range l.blocks {
		var names, rows []string
		for _, j := range b.cols {
			names = append(names, s.System.Cols[j])
		}
		for _, k := range b.rows {
			rows = append(rows, origin.Row(p, &s.System.Rows[k]))
		}
		how := " from "
		if len(names) > 1 {
			how = " together from "
		}
		d.behind(seg{text: fmt.Sprintf("%2d  ", i+1)}, ": ", theme.Plain, strings.Join(names, ", ")+how+strings.Join(rows, ", "), w)
	}
}

func moments(s *statics.Solution) bool {
	for _, r := range s.System.Rows {
		if r.Moment {
			return true
		}
	}
	return false
}

// coefficient prints an entry; an exact nothing as a dot, so that the pattern of the
// matrix shows.
func coefficient(v float64) string {
	if v == 0 {
		return "."
	}
	return origin.Coefficient(v)
}

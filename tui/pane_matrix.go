package tui

import (
	"fmt"
	"math"
	"strings"

	"trivet/mechanics/statics"
	"trivet/tui/grid"
	"trivet/tui/theme"
	"trivet/units"
)

// matrix writes A, b and what is left of each row.
func (l live) matrix(d *doc, g theme.Glyphs) {
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
		if i < mostRows {
			label = max(label, grid.Width(rowName(r, p.Planar)))
		}
	}
	cols := min(len(s.System.Cols), mostCols)
	const wide = 8 // -0.12345 and a blank
	head := []seg{{grid.Fit("", label), theme.Dim}}
	for j := range cols {
		head = append(head, seg{grid.FitRight(s.System.Cols[j].Name, wide), theme.Name})
	}
	wall := " " + string(g.Wall)
	head = append(head, seg{wall, theme.Rule}, seg{grid.FitRight("b", 10), theme.Name}, seg{grid.FitRight("left over", 12), theme.Dim}, seg{"  of largest", theme.Dim})
	d.add(head...)
	for i, r := range s.System.Rows {
		if i == mostRows {
			d.text(theme.Dim, fmt.Sprintf("... and %d more rows", len(s.System.Rows)-i))
			break
		}
		line := []seg{{grid.Fit(rowName(r, p.Planar), label), theme.Name}}
		for j := range cols {
			line = append(line, seg{grid.FitRight(coefficient(s.Coefficient(i, j)), wide), theme.Plain})
		}
		line = append(line, seg{wall, theme.Rule}, seg{grid.FitRight(bare(p, s.System.B[i], r.Dim()), 10), theme.Plain})
		if i < len(s.Residuals) {
			left := s.Residuals[i]
			line = append(line, seg{fmt.Sprintf("%12s", tiny(left.Value/p.Units.For(r.Dim()).Factor)), theme.Dim}, seg{fmt.Sprintf("%12s", tiny(left.Relative)), theme.Dim})
		}
		d.add(line...)
	}
	if n := len(s.System.Cols) - cols; n > 0 {
		d.text(theme.Dim, fmt.Sprintf("... and %d more columns", n))
	}
}

// order writes the blocks into which the system falls: which equations give which
// unknowns, one after the other. A system of one block has no order.
func (l live) order(d *doc, w int) {
	s, p := l.solution, l.problem
	if len(l.blocks) < 2 {
		return
	}
	d.heading("Order in which it can be solved")
	for i, b := range l.blocks {
		var names, rows []string
		for _, j := range b.cols {
			names = append(names, s.System.Cols[j].Name)
		}
		for _, k := range b.rows {
			rows = append(rows, rowName(s.System.Rows[k], p.Planar))
		}
		how := " from "
		if len(names) > 1 {
			how = " together from "
		}
		d.wrapped(theme.Plain, fmt.Sprintf("%2d  ", i+1), strings.Join(names, ", ")+how+strings.Join(rows, ", "), w)
	}
}

// rowName is the equation's body and axis, as it is written by hand, and the point
// that moments are taken about.
func rowName(r statics.Row, planar bool) string {
	axis := r.Axis
	if r.Moment && planar {
		axis = "M"
	}
	name := r.Name + " Σ" + axis
	if r.Moment && r.About != "" {
		name += " about " + r.About
	}
	return name
}

func moments(s *statics.Solution) bool {
	for _, r := range s.System.Rows {
		if r.Moment {
			return true
		}
	}
	return false
}

// coefficient prints a cosine or a share of one; an exact nothing as a dot, so
// that the pattern of the matrix shows.
func coefficient(v float64) string {
	if v == 0 {
		return "."
	}
	if math.Abs(v) >= 100 {
		return units.Figures(v, cosines)
	}
	return units.Decimals(v, cosines)
}

// tiny prints an amount that should be nothing.
func tiny(v float64) string {
	if v == 0 {
		return "0"
	}
	return fmt.Sprintf("%.1e", v)
}

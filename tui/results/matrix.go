package results

import (
	"fmt"
	"strings"

	"trivet/mechanics/origin"
	"trivet/mechanics/statics"
	"trivet/tui/grid"
	"trivet/tui/text"
	"trivet/tui/theme"
	"trivet/units"
)

// matrix writes A, b and what is left of each row.
func (l writer) matrix(d *text.Lines, g theme.Glyphs) {
	s, p := l.Solution, l.Problem
	if len(s.System.Rows) == 0 {
		return
	}
	unit := "b in " + p.Units.Force.Symbol
	if moments(s) {
		unit += ", of moments in " + p.Units.For(units.Moment).Symbol
	}
	d.Heading("A x = b   (" + unit + ")")
	label := 4
	for i, r := range s.System.Rows {
		if i < MaxRows {
			label = max(label, grid.Width(origin.Label(p, &r)))
		}
	}
	wall := " " + string(g.Wall)
	var store text.Store
	if len(s.System.Cols) <= maxCols {
		l.matrixHead(d, label, wall)
	}
	for i, r := range s.System.Rows {
		if i == MaxRows {
			d.Plain(theme.Dim, fmt.Sprintf("... and %d more rows", len(s.System.Rows)-i))
			break
		}
		name := text.Span{Text: grid.Fit(origin.Label(p, &r), label), Look: theme.Name, Head: true}
		if len(s.System.Cols) > maxCols {
			entries := min(len(s.System.Terms[i]), maxTerms)
			d.Add(l.sparse(append(store.Line(2*entries+6), name), i)...)
			continue
		}
		line := append(store.Line(len(s.System.Cols)+5), name)
		for j := range s.System.Cols {
			line = append(line, text.Numeral(grid.FitRight(coefficient(s.Coefficient(i, j)), text.Column), theme.Plain, origin.Entry(s, i, j)))
		}
		line = append(line, text.Span{Text: wall, Look: theme.Rule}, text.Numeral(grid.FitRight(Bare(p, s.System.B[i], r.Dim()), 10), theme.Plain, origin.Known(s, i)))
		if i < len(s.Residuals) {
			left := s.Residuals[i]
			line = append(line, text.Numeral(fmt.Sprintf("%12s", origin.Tiny(left.Value/p.Units.For(r.Dim()).Factor)), theme.Dim, origin.Residual(s, i)),
				text.Numeral(fmt.Sprintf("%12s", origin.Tiny(left.Relative)), theme.Dim, origin.Share(s, i)))
		}
		d.Add(line...)
	}
}

func (l writer) matrixHead(d *text.Lines, label int, wall string) {
	head := []text.Span{{Text: grid.Fit("", label), Look: theme.Dim, Head: true}}
	for _, c := range l.Solution.System.Cols {
		head = append(head, text.Span{Text: grid.FitRight(c.Name, text.Column), Look: theme.Name})
	}
	d.Add(append(head, text.Span{Text: wall, Look: theme.Rule}, text.Span{Text: grid.FitRight("b", 10), Look: theme.Name},
		text.Span{Text: grid.FitRight("residual", 12), Look: theme.Dim}, text.Span{Text: "  of largest", Look: theme.Dim})...)
}

// sparse writes a row of a system that has more columns than a reader would scroll
// through: what is not zero, each with its unknown, then b and what is left.
func (l writer) sparse(line []text.Span, i int) []text.Span {
	s, p := l.Solution, l.Problem
	r := &s.System.Rows[i]
	n := 0
	for _, t := range s.System.Terms[i] {
		if t.Value == 0 {
			continue
		}
		if n++; n > maxTerms {
			line = append(line, text.Span{Text: " ...", Look: theme.Dim})
			break
		}
		line = append(line, text.Numeral(grid.FitRight(coefficient(s.Coefficient(i, t.Col)), text.Column+1), theme.Plain, origin.Entry(s, i, t.Col)),
			text.Span{Text: " " + s.System.Cols[t.Col].Name, Look: theme.Name})
	}
	line = append(line, text.Span{Text: " =", Look: theme.Rule}, text.Numeral(" "+Bare(p, s.System.B[i], r.Dim()), theme.Plain, origin.Known(s, i)))
	if i < len(s.Residuals) {
		left := s.Residuals[i].Value / p.Units.For(r.Dim()).Factor
		line = append(line, text.Span{Text: "  residual", Look: theme.Dim}, text.Numeral(" "+origin.Tiny(left), theme.Dim, origin.Residual(s, i)))
	}
	return line
}

// order writes the blocks into which the system falls: which equations give which
// unknowns, one after the other. A system of one block has no order.
func (l writer) order(d *text.Lines, w int) {
	s, p := l.Solution, l.Problem
	if len(l.Blocks) < 2 {
		return
	}
	d.Heading("Order in which it can be solved")
	for i, b := range l.Blocks {
		var names, rows []string
		for _, j := range b.Cols {
			names = append(names, s.System.Cols[j].Name)
		}
		for _, k := range b.Rows {
			rows = append(rows, origin.Row(p, &s.System.Rows[k]))
		}
		how := " from "
		if len(names) > 1 {
			how = " together from "
		}
		d.Behind(text.Span{Text: fmt.Sprintf("%2d  ", i+1)}, ": ", theme.Plain, strings.Join(names, ", ")+how+strings.Join(rows, ", "), w)
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

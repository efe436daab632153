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

// Widths of the columns of a matrix beside its coefficients.
const columnB, columnResidual = 10, 12

// matrix writes A, b and what is left of each row, each of these as far as whole columns
// have room in a width; a matrix that has none as sums, so that nothing of it is cut.
func (l writer) matrix(d *text.Lines, g theme.Glyphs, w int) {
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
	left := w - label - len(s.System.Cols)*text.Column - grid.Width(wall) - columnB
	sums := len(s.System.Cols) > maxCols || left < 0
	lefts := min(max(left, 0)/columnResidual, 2) // how many columns of what is left
	var store text.Store
	if !sums {
		l.matrixHead(d, label, wall, lefts)
	}
	for i, r := range s.System.Rows {
		if i == MaxRows {
			d.Plain(theme.Dim, fmt.Sprintf("... and %d more rows", len(s.System.Rows)-i))
			break
		}
		name := text.Span{Text: grid.Fit(origin.Label(p, &r), label), Look: theme.Name, Head: true}
		if sums {
			l.sum(d, name, i, w)
			continue
		}
		line := append(store.Line(len(s.System.Cols)+5), name)
		for j := range s.System.Cols {
			line = append(line, text.Numeral(grid.FitRight(coefficient(s.Coefficient(i, j)), text.Column), theme.Plain, origin.Entry(s, i, j)))
		}
		line = append(line, text.Span{Text: wall, Look: theme.Rule}, text.Numeral(grid.FitRight(Bare(p, s.System.B[i], r.Dim()), columnB), theme.Plain, origin.Known(s, i)))
		if i < len(s.Residuals) {
			of := s.Residuals[i]
			line = append(line, []text.Span{
				text.Numeral(grid.FitRight(origin.Tiny(of.Value/p.Units.For(r.Dim()).Factor), columnResidual), theme.Dim, origin.Residual(s, i)),
				text.Numeral(grid.FitRight(origin.Tiny(of.Relative), columnResidual), theme.Dim, origin.Share(s, i)),
			}[:lefts]...)
		}
		d.Add(line...)
	}
}

func (l writer) matrixHead(d *text.Lines, label int, wall string, lefts int) {
	head := []text.Span{{Text: grid.Fit("", label), Look: theme.Dim, Head: true}}
	for _, c := range l.Solution.System.Cols {
		head = append(head, text.Span{Text: grid.FitRight(c, text.Column), Look: theme.Name})
	}
	head = append(head, text.Span{Text: wall, Look: theme.Rule}, text.Span{Text: grid.FitRight("b", columnB), Look: theme.Name})
	for _, of := range []string{"residual", "of largest"}[:lefts] {
		head = append(head, text.Span{Text: grid.FitRight(of, columnResidual), Look: theme.Dim})
	}
	d.Add(head...)
}

// sum writes a row of a system as a sum of what is not zero, each with its unknown, then b
// and what is left, broken between them to a width.
func (l writer) sum(d *text.Lines, name text.Span, i, w int) {
	s, p := l.Solution, l.Problem
	r := &s.System.Rows[i]
	line, first := []text.Span{name}, true
	put := func(of ...text.Span) {
		if length(line)+length(of) > w && len(line) > 1 {
			d.Add(line...)
			line = []text.Span{{Text: grid.Fit("", grid.Width(name.Text)), Head: true}}
		}
		line = append(line, of...)
	}
	n := 0
	for _, t := range s.System.Terms[i] {
		if t.Value == 0 {
			continue
		}
		if n++; n > maxTerms {
			put(text.Span{Text: " ...", Look: theme.Dim})
			break
		}
		of := coefficient(s.Coefficient(i, t.Col))
		if !first && s.Coefficient(i, t.Col) > 0 {
			of = "+" + of
		}
		first = false
		put(text.Numeral(" "+of, theme.Plain, origin.Entry(s, i, t.Col)), text.Span{Text: " " + s.System.Cols[t.Col], Look: theme.Name})
	}
	if n == 0 {
		put(text.Span{Text: " 0"})
	}
	put(text.Span{Text: " =", Look: theme.Rule}, text.Numeral(" "+Bare(p, s.System.B[i], r.Dim()), theme.Plain, origin.Known(s, i)))
	if i < len(s.Residuals) {
		of := s.Residuals[i].Value / p.Units.For(r.Dim()).Factor
		put(text.Span{Text: "  residual", Look: theme.Dim}, text.Numeral(" "+origin.Tiny(of), theme.Dim, origin.Residual(s, i)))
	}
	d.Add(line...)
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
			names = append(names, s.System.Cols[j])
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

package report

import (
	"fmt"
	"math"
	"strings"

	"trivet/mechanics/statics"
	"trivet/units"
)

func systemRows(s *statics.Solution) [][]string {
	if len(s.X) == 0 {
		return nil
	}
	if len(s.X) > mostColumns {
		return longRows(s)
	}
	head := []string{""}
	for _, c := range s.System.Cols {
		head = append(head, c.Name)
	}
	rows := [][]string{append(head, "", "right side", "residual")}
	for i, row := range s.System.Rows {
		f := s.Problem.Units.For(row.Dim())
		cells := []string{"Σ" + row.Axis + " " + row.Name}
		for j := range s.System.Cols {
			cells = append(cells, units.Decimals(s.Coefficient(i, j), 4))
		}
		cells = append(cells, "=", units.Figures(clean(s.System.B[i]/f.Factor), s.Problem.Figures+2),
			residual(s, i)+" "+f.Symbol)
		rows = append(rows, cells)
	}
	return rows
}

// mostColumns is up to how many unknowns the equations stand as a matrix: a wider
// one is mostly noughts and leaves the 80 columns of a page.
const mostColumns = 6

// longRows writes each equation as the sum of what is in it.
func longRows(s *statics.Solution) [][]string {
	var rows [][]string
	for i, row := range s.System.Rows {
		f := s.Problem.Units.For(row.Dim())
		var sum strings.Builder
		for _, t := range s.System.Terms[i] {
			c := s.Coefficient(i, t.Col)
			switch {
			case c < 0 && sum.Len() == 0:
				sum.WriteString("-")
			case c < 0:
				sum.WriteString(" - ")
			case sum.Len() > 0:
				sum.WriteString(" + ")
			}
			if math.Abs(c) != 1 {
				sum.WriteString(units.Decimals(math.Abs(c), 4) + " ")
			}
			sum.WriteString(s.System.Cols[t.Col].Name)
		}
		if sum.Len() == 0 {
			sum.WriteString("0")
		}
		rows = append(rows, []string{"Σ" + row.Axis + " " + row.Name, sum.String(), "=", units.Figures(clean(s.System.B[i]/f.Factor), s.Problem.Figures+2),
			"left over " + residual(s, i) + " " + f.Symbol})
	}
	return rows
}

// residual is what is left over of an equation, in its unit.
func residual(s *statics.Solution, i int) string {
	return fmt.Sprintf("%.1e", s.Residuals[i].Value/s.Problem.Units.For(s.System.Rows[i].Dim()).Factor)
}

// clean drops the sign of a zero.
func clean(x float64) float64 { return x + 0 }

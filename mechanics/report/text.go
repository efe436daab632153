package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/units"
)

// width is how wide a line of prose gets; tables take what they need.
const width = 80

// Text writes a solved sheet for reading in a terminal or a file.
func Text(s *statics.Solution) string {
	var b strings.Builder
	p := s.Problem
	if p.Title != "" {
		b.WriteString(hung("", p.Title) + "\n")
	}
	for _, line := range s.Words() {
		b.WriteString(hung("", line))
	}
	section(&b, "unknowns", unknownRows(s))
	section(&b, "asked", askedRows(s))
	section(&b, "lines of action: r from the first point to the second, u = r/|r|", lineRows(p))
	title, rows, words := "equations of equilibrium: coefficients of the unknowns = minus known forces", systemRows(s), []int(nil)
	if len(s.X) > mostColumns {
		words = []int{1} // the sums, which may begin with a number
	}
	section(&b, title, rows, words...)
	list(&b, "checks", checkItems(s))
	if c, ok := s.Governing(); ok {
		b.WriteString("\n" + hung("governing: ", c.Says(p)))
	}
	list(&b, "printed answers", answerItems(s))
	b.WriteString("\n" + hung("", "Caution: "+Caution+"."))
	return b.String()
}

// hung sets prose in lines of the width, all but the first indented by its mark.
func hung(mark, text string) string {
	indent := ansi.StringWidth(mark)
	lines := strings.Split(ansi.Wordwrap(text, width-indent, ""), "\n")
	return mark + strings.Join(lines, "\n"+strings.Repeat(" ", indent)) + "\n"
}

// item is a line of a list: whether it holds, and what it says.
type item struct {
	ok   bool
	says string
}

func list(b *strings.Builder, title string, items []item) {
	if len(items) == 0 {
		return
	}
	fmt.Fprintf(b, "\n%s\n", title)
	mark := "  ok  "
	if slices.ContainsFunc(items, func(it item) bool { return !it.ok }) {
		mark = "  ok     "
	}
	for _, it := range items {
		if it.ok {
			b.WriteString(hung(mark, it.says))
		} else {
			b.WriteString(hung("  FAILS  ", it.says))
		}
	}
}

func section(b *strings.Builder, title string, rows [][]string, left ...int) {
	if len(rows) == 0 {
		return
	}
	fmt.Fprintf(b, "\n%s\n%s", title, columns(rows, left...))
}

// columns sets rows in columns, two spaces apart, or one where that is too wide;
// the first column, those that hold words and those named to the left, numbers to
// the right.
func columns(rows [][]string, left ...int) string {
	var widths []int
	var words []bool
	for _, row := range rows {
		for k, cell := range row {
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

func unknownRows(s *statics.Solution) [][]string {
	var rows [][]string
	for j := range s.X {
		text := ResultText(s, j)
		if s.Verdict == statics.NoEquilibrium {
			text = "none"
		}
		row := []string{s.X[j].Name, "= " + text, SenseWord(s, j)}
		if limit, use, ok := LimitUse(s, j); ok && s.Verdict != statics.NoEquilibrium {
			f := s.Problem.Units.Force
			row = append(row, fmt.Sprintf("%s %% of %s", units.Figures(100*use, s.Problem.Figures), f.Format(limit, s.Problem.Figures)))
		}
		rows = append(rows, row)
	}
	return rows
}

// askedRows are the results asked for; none where all are unknowns, which stand above.
func askedRows(s *statics.Solution) [][]string {
	if !slices.ContainsFunc(s.Problem.Asked, func(q problem.Query) bool { return q.Kind != problem.AskUnknown || q.Unknown < 0 }) {
		return nil
	}
	var rows [][]string
	for _, q := range s.Problem.Asked {
		text := ""
		if v, err := s.Evaluate(q); err != nil {
			text = strings.TrimPrefix(err.Error(), q.Name+" ")
		} else {
			text = "= " + s.Problem.Units.For(q.Dim).Format(v, s.Problem.Figures)
		}
		rows = append(rows, []string{q.Name, text})
	}
	return rows
}

func lineRows(p *problem.Problem) [][]string {
	n := 3
	if p.Planar {
		n = 2
	}
	length := p.Units.Length
	head := []string{"", "", "path"}
	for _, axis := range "xyz"[:n] {
		head = append(head, "r"+string(axis))
	}
	head = append(head, "|r| "+length.Symbol)
	for _, axis := range "xyz"[:n] {
		head = append(head, "u"+string(axis))
	}
	rows := [][]string{head}
	for i := range p.Lines {
		l := &p.Lines[i]
		for k, leg := range l.Legs {
			name, kind := l.Name, l.Kind.String()
			if k > 0 {
				name, kind = "", ""
			}
			row := []string{name, kind, p.Points[leg.From].Name}
			r := [3]float64{leg.R.X, leg.R.Y, leg.R.Z}
			if leg.To >= 0 {
				row[2] += " " + p.Points[leg.To].Name
				for k := range n {
					row = append(row, units.Figures(r[k]/length.Factor, p.Figures+1))
				}
				row = append(row, units.Figures(leg.Length/length.Factor, p.Figures+1))
			} else {
				for range n + 1 {
					row = append(row, "")
				}
			}
			u := [3]float64{leg.U.X, leg.U.Y, leg.U.Z}
			for k := range n {
				row = append(row, units.Decimals(u[k], 4))
			}
			rows = append(rows, row)
		}
	}
	if len(rows) == 1 {
		return nil
	}
	return rows
}

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

// checkItems are the checks; those of unit vectors that hold take one line.
func checkItems(s *statics.Solution) []item {
	var items []item
	var lines []string
	off := 0.0
	for _, c := range s.Checks {
		if c.Kind == statics.CheckUnit && c.OK {
			lines, off = append(lines, c.Subject), max(off, c.Value)
		}
	}
	if len(lines) > 0 {
		all := statics.Check{Kind: statics.CheckUnit, Subject: strings.Join(lines, ", "), Value: off, OK: true}
		items = append(items, item{true, all.Says(s.Problem)})
	}
	for _, c := range s.Checks {
		if c.Kind != statics.CheckUnit || !c.OK {
			items = append(items, item{c.OK, c.Says(s.Problem)})
		}
	}
	return items
}

func answerItems(s *statics.Solution) []item {
	var items []item
	for _, a := range s.Answers {
		says := a.Says(s.Problem)
		if a.Why != "" {
			says += " (" + a.Why + ")"
		}
		items = append(items, item{a.OK, says})
	}
	return items
}

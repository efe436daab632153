package report

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/units"
)

// Text writes a solved sheet for reading in a terminal or a file.
func Text(s *statics.Solution) string {
	var b strings.Builder
	p := s.Problem
	if p.Title != "" {
		fmt.Fprintf(&b, "%s\n\n", p.Title)
	}
	for _, line := range s.Words() {
		fmt.Fprintf(&b, "%s\n", line)
	}
	section(&b, "unknowns", unknownRows(s))
	section(&b, "asked", askedRows(s))
	section(&b, "lines of action: r from the first point to the second, u = r/|r|", lineRows(p))
	section(&b, systemTitle(p), systemRows(s))
	section(&b, "checks", checkRows(s))
	if c, ok := s.Governing(); ok {
		fmt.Fprintf(&b, "\ngoverning: %s\n", c.Says(p))
	}
	section(&b, "printed answers", answerRows(s))
	fmt.Fprintf(&b, "\nCaution: %s.\n", Caution)
	return b.String()
}

func section(b *strings.Builder, title string, rows [][]string) {
	if len(rows) == 0 {
		return
	}
	fmt.Fprintf(b, "\n%s\n%s", title, columns(rows))
}

// columns sets rows in columns, two spaces apart; the first column and those
// that hold words to the left, numbers to the right.
func columns(rows [][]string) string {
	var widths []int
	var words []bool
	for _, row := range rows {
		for k, cell := range row {
			if k == len(widths) {
				widths, words = append(widths, 0), append(words, k == 0)
			}
			widths[k] = max(widths[k], ansi.StringWidth(cell))
			if cell != "" && !strings.ContainsAny(cell[:1], "-0123456789(|") {
				words[k] = words[k] || !isHead(rows, row)
			}
		}
	}
	var b strings.Builder
	for _, row := range rows {
		line := " "
		for k, cell := range row {
			pad := strings.Repeat(" ", widths[k]-ansi.StringWidth(cell))
			if words[k] {
				line += " " + cell + pad + " "
			} else {
				line += " " + pad + cell + " "
			}
		}
		b.WriteString(strings.TrimRight(line, " ") + "\n")
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

func askedRows(s *statics.Solution) [][]string {
	var rows [][]string
	for _, q := range s.Problem.Asked {
		text := ""
		if v, err := s.Evaluate(q); err != nil {
			text = err.Error()
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
	rows := [][]string{append(head, "|u|")}
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
			sum := 0.0
			for k := range n {
				row = append(row, units.Decimals(u[k], 4))
				sum += u[k] * u[k]
			}
			rows = append(rows, append(row, units.Decimals(sum, 4)))
		}
	}
	if len(rows) == 1 {
		return nil
	}
	return rows
}

func systemTitle(p *problem.Problem) string {
	return "equations of equilibrium: coefficient of each unknown = minus what the known forces exert"
}

func systemRows(s *statics.Solution) [][]string {
	if len(s.X) == 0 {
		return nil
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
			fmt.Sprintf("%.1e %s", s.Residuals[i].Value/f.Factor, f.Symbol))
		rows = append(rows, cells)
	}
	return rows
}

// clean drops the sign of a zero.
func clean(x float64) float64 { return x + 0 }

func checkRows(s *statics.Solution) [][]string {
	var rows [][]string
	for _, c := range s.Checks {
		rows = append(rows, []string{okWord(c.OK), c.Says(s.Problem)})
	}
	return rows
}

func answerRows(s *statics.Solution) [][]string {
	var rows [][]string
	for _, a := range s.Answers {
		says := a.Says(s.Problem)
		if a.Why != "" {
			says += " (" + a.Why + ")"
		}
		rows = append(rows, []string{okWord(a.OK), says})
	}
	return rows
}

func okWord(ok bool) string {
	if ok {
		return "ok"
	}
	return "FAILS"
}

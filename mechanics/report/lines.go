package report

import (
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/units"
)

// LineMath writes a formula in one line that can be read aloud: a column is a
// tuple (a, b, c), a matrix its rows one after the other, nothing is drawn.
func LineMath(m doc.Math) string { return TextMath(flat(m)) }

// flat turns what stands over several lines into tuples.
func flat(m doc.Math) doc.Math {
	of := make([]doc.Math, len(m.Of))
	for i := range m.Of {
		of[i] = flat(m.Of[i])
	}
	m.Of = of
	switch m.Op {
	case doc.Column:
		return doc.Math{Op: doc.Paren, Of: of}
	case doc.Grid, doc.Det:
		rows := make([]doc.Math, len(of))
		for i, r := range of {
			rows[i] = doc.Math{Op: doc.Paren, Of: r.Of}
		}
		word := "matrix"
		if m.Op == doc.Det {
			word = "determinant of"
		}
		return doc.Math{Op: doc.Row, Of: []doc.Math{{Op: doc.Words, Text: word}, {Op: doc.Paren, Of: rows}}}
	}
	return m
}

// Lines writes the body of a step in whole sentences, each on a line of its own
// however long: nothing in it is set in columns.
func Lines(body []doc.Block) (out []string) {
	for _, b := range olds(body) {
		switch {
		case b.Formula != nil:
			out = append(out, LineMath(*b.Formula))
		case b.Boxed != nil:
			out = append(out, "answer: "+LineMath(*b.Boxed))
		case len(b.Aligned) > 0:
			for _, m := range b.Aligned {
				out = append(out, LineMath(m))
			}
		case b.Table != nil:
			for _, row := range b.Table.Rows {
				out = append(out, lineRow(b.Table.Head, row))
			}
		case b.Risk:
			out = append(out, "at risk: "+lineSentence(b.Text))
		case b.OK != nil && *b.OK:
			out = append(out, "ok: "+lineSentence(b.Text))
		case b.OK != nil:
			out = append(out, "FAILS: "+lineSentence(b.Text))
		default:
			out = append(out, lineSentence(b.Text))
		}
	}
	return out
}

func lineSentence(text []doc.Inline) string {
	var b strings.Builder
	for _, part := range text {
		if part.Math != nil {
			b.WriteString(LineMath(*part.Math))
		} else {
			b.WriteString(printed(part.Words))
		}
	}
	return b.String()
}

// lineRow says a row of a table: each head with its cell.
func lineRow(head []string, row []doc.Inline) string {
	var parts []string
	for k := range min(len(row), len(head)) {
		if cell := lineSentence(row[k : k+1]); strings.TrimSpace(cell) != "" {
			parts = append(parts, strings.TrimSpace(printed(head[k])+" "+cell))
		}
	}
	return strings.Join(parts, "; ")
}

// LineEquations writes each equation of the system as a sum, with what is left
// over of it: "ΣFx D: -0.6000 T1 + 0.6000 T2 = 0 N, left over 0.0e+00 N".
func LineEquations(s *statics.Solution) (out []string) {
	for i, row := range longRows(s) {
		f := s.Problem.Units.For(s.System.Rows[i].Dim())
		left := strings.Replace(row[4], " 0.0e+00 ", " 0 ", 1)
		out = append(out, printed(row[0]+": "+strings.Join(row[1:4], " ")+" "+f.Symbol+", "+left))
	}
	return out
}

// LineCourses writes each line's vectors: "T1 from D to A: r = (-3.00, 4.00) m,
// |r| = 5.00 m, u = (-0.6000, 0.8000), |u| = 1.0000".
func LineCourses(p *problem.Problem) (out []string) {
	d := describer{p: p}
	for i := range p.Lines {
		if !p.Lines[i].OK {
			continue
		}
		for _, leg := range p.Lines[i].Legs {
			line := p.Lines[i].Name
			if leg.To >= 0 {
				line += " from " + p.Points[leg.From].Name + " to " + p.Points[leg.To].Name + ": r = " + d.at(leg.R) + ", |r| = " + d.format(leg.Length, units.Length) + ","
			} else {
				line += " at " + p.Points[leg.From].Name + ":"
			}
			u := []string{units.Decimals(leg.U.X, 4), units.Decimals(leg.U.Y, 4), units.Decimals(leg.U.Z, 4)}
			out = append(out, printed(line+" u = ("+strings.Join(u[:d.axes()], ", ")+"), |u| = "+units.Decimals(r3.Norm(leg.U), 4)))
		}
	}
	return out
}

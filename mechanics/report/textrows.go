package report

import (
	"slices"
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
	"trivet/units"
)

// unknownRows are names, values, senses, uses of limits, and that these are at risk;
// t may be nil.
func unknownRows(s *statics.Solution, t *uncertainty.Effect) [][]string {
	var rows [][]string
	for j := range s.X {
		text := ResultText(s, j)
		if s.Verdict == statics.NoEquilibrium {
			text = "none"
		}
		row := []string{s.X[j].Name, "= " + text, SenseWord(s, j)}
		if limit, use, ok := LimitUse(s, j); ok && s.Verdict != statics.NoEquilibrium {
			f := s.Problem.Units.Force
			row = append(row, UsePercent(s.Problem, use)+" of "+f.Format(limit, s.Problem.Figures))
			line := s.Problem.Unknowns[j].Line
			if t.CheckAtRisk(slices.IndexFunc(s.Checks, func(c statics.Check) bool { return c.Kind == statics.CheckLimit && c.Line == line })) {
				row = append(row, AtRisk)
			}
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
				if len(l.Path) == 2 && l.Between() {
					row[2] += " " + p.Points[l.Path[1]].Name
				}
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

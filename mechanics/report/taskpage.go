package report

import (
	"strings"

	"trivet/mechanics/plate"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/variant"
	"trivet/units"
)

// blanks is the room that a student writes a value in.
const blanks = "........................"

// taskParts is the page to hand out: the task without any result. It is made of
// the problem alone, so that no value found can stand in it.
func (pg *page) taskParts(p *problem.Problem, s *sheet.Sheet) {
	pg.add("Problem", paragraphBlocks(p)...)
	if len(p.Points) > 0 {
		fig := plate.System(p, nil, plate.Options{Dimensions: true})
		pg.add(partFigure, block{figure: &fig})
	}
	pg.add("Given", givenBlocks(p, s)...)
	asked := variant.Asked(p)
	if len(asked) == 0 {
		return
	}
	var names []string
	var rows [][]string
	for _, q := range asked {
		names = append(names, q.Name)
		rows = append(rows, []string{q.Name, blanks, p.Units.For(q.Dim).Symbol})
	}
	pg.add("Asked", words("Find "+listOf(names)+", to "+plural(p.Figures, "significant figure")+"."), tableOf([]string{"Result", "Value", "Unit"}, rows...))
}

// paragraphBlocks are the paragraphs of the statement.
func paragraphBlocks(p *problem.Problem) (out []block) {
	for _, para := range strings.Split(strings.TrimSpace(p.Statement), "\n\n") {
		if para = strings.Join(strings.Fields(para), " "); para != "" {
			out = append(out, words(para))
		}
	}
	return out
}

// givenBlocks are the givens with their units, and, in space, where a figure does
// not show it, the places of the points.
func givenBlocks(p *problem.Problem, s *sheet.Sheet) (out []block) {
	var rows [][]string
	for i := range p.Givens {
		g := &p.Givens[i]
		rows = append(rows, []string{g.Name, givenText(p, g, s)})
	}
	if len(rows) > 0 {
		out = append(out, tableOf([]string{"Name", "Value"}, rows...))
	}
	if p.Planar || len(p.Points) == 0 {
		return out
	}
	length := p.Units.Length
	rows = nil
	for _, pt := range p.Points {
		row := []string{pt.Name}
		for _, x := range [3]float64{pt.At.X, pt.At.Y, pt.At.Z} {
			row = append(row, length.Number(x, max(p.Figures, 4)))
		}
		rows = append(rows, row)
	}
	return append(out, tableOf([]string{"Point", "x (" + length.Symbol + ")", "y (" + length.Symbol + ")", "z (" + length.Symbol + ")"}, rows...))
}

// givenText is a given as typed, where that is a number; computed it is its value.
func givenText(p *problem.Problem, g *problem.Given, s *sheet.Sheet) string {
	if s != nil {
		for _, key := range []string{"value", ""} {
			if c, ok := s.Cell(sheet.Ref{Table: "given", Row: g.Name, Key: key}); ok && len(units.Mentions(c.Text)) == 0 {
				return strings.TrimSpace(c.Text)
			}
		}
	}
	if g.Value.N != 1 {
		return ""
	}
	return p.Units.For(g.Value.Dim).Format(g.Value.V[0], max(p.Figures, 4))
}

func listOf(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

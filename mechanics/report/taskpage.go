package report

import (
	"strings"

	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/mechanics/variant"
	"trivet/units"
)

// The room that a student writes a value and a name in, in characters.
const (
	valueWidth = 24
	nameWidth  = 40
)

// taskSections are the page to hand out: the task without any result. They are made of
// the problem alone, so that no value found can stand in them.
func taskSections(p *problem.Problem, s *sheet.Sheet) []doc.Section {
	d := &doc.Doc{}
	d.Add(problemSection(p))
	d.Add(figureSection(p, nil))
	d.Add(doc.Section{Role: doc.Inputs, Level: 1, Title: "Given", Blocks: givenBlocks(p, s)})
	asked := variant.Asked(p)
	if len(asked) == 0 {
		return d.Sections
	}
	var names []string
	table := doc.NewTable("Result", "Value", "Unit")
	for _, q := range asked {
		names = append(names, q.Name)
		table.Add(words(q.Name), doc.Inline{Blank: valueWidth}, words(p.Units.For(q.Dim).Symbol))
	}
	find := doc.Say("Find " + say.And(names...) + ", to " + say.Count(p.Figures, "significant figure") + ".")
	d.Add(doc.Section{Level: 1, Title: "Asked", Blocks: []doc.Block{find, table}})
	return d.Sections
}

// givenBlocks are the givens with their units, and, in space, where a figure does
// not show it, the places of the points.
func givenBlocks(p *problem.Problem, s *sheet.Sheet) (out []doc.Block) {
	givens := doc.NewTable("Name", "Value")
	for i := range p.Givens {
		g := &p.Givens[i]
		givens.Add(words(g.Name), words(givenText(p, g, s)))
	}
	if len(givens.Rows) > 0 {
		out = append(out, givens)
	}
	if p.Planar || len(p.Points) == 0 {
		return out
	}
	length := p.Units.Length
	points := doc.NewTable("Point", "x ("+length.Symbol+")", "y ("+length.Symbol+")", "z ("+length.Symbol+")")
	for _, pt := range p.Points {
		row := []doc.Inline{words(pt.Name)}
		for _, x := range [3]float64{pt.At.X, pt.At.Y, pt.At.Z} {
			row = append(row, formula(digits(length.Number(x, max(p.Figures, 4)), length.In(x))))
		}
		points.Add(row...)
	}
	return append(out, points)
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

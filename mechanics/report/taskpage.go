package report

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/floats/scalar"

	"trivet/mechanics/doc"
	"trivet/mechanics/figure"
	"trivet/mechanics/names"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/scene"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/variant"
	"trivet/units"
)

// The room that a student writes a value and a name in, in characters.
const (
	valueWidth = 24
	nameWidth  = 40
)

// addTask adds the page to hand out: the task without any result. It is made of the
// problem alone, so that no value found can stand in it.
func addTask(d *doc.Doc, p *problem.Problem, opt PageOptions) {
	s := opt.Sheet
	d.Add(problemSection(p))
	d.Add(figureSection(p, taskFigure(p, s)))
	d.Add(part(doc.Inputs, "Given", givenBlocks(p, s)...))
	d.Add(askedSection(p, opt.Own == nil))
}

// nameLines have a student's name, on work to hand in the date too; what is not known is
// to be filled in.
func nameLines(opt PageOptions) [][]doc.Inline {
	line := func(head, text string, width int) []doc.Inline {
		if text != "" {
			return doc.Plain(head + text)
		}
		return []doc.Inline{{Words: head}, {Blank: width}}
	}
	if opt.Own == nil {
		return [][]doc.Inline{line("Name: ", "", nameWidth)}
	}
	return [][]doc.Inline{line("Name: ", cmp.Or(opt.By, opt.Own.Name), nameWidth), line("Date: ", opt.Date, signatureWidth)}
}

// taskFigure has the loads as typed and what is asked as arrows.
func taskFigure(p *problem.Problem, s *sheet.Sheet) scene.Options {
	return scene.Options{Dimensions: true, Asked: p.Results(), Typed: TypedLoad(p, s)}
}

// askedSection asks for the results, each defined, with room for its value where that is
// wanted; where there is no single answer it asks what can be said of them.
func askedSection(p *problem.Problem, room bool) doc.Section {
	asked := p.Results()
	if len(asked) == 0 {
		return doc.Section{}
	}
	find := "Find, to " + say.Count(p.Figures, "significant figure") + ":"
	table := doc.NewTable("Symbol", "Result", "Value", "Unit")
	symbols := false
	for _, q := range asked {
		row := []doc.Inline{{}, words(say.Capital(names.Meaning(p, q))), {Blank: valueWidth}, words(p.Units.For(q.Dim).Symbol)}
		if name, ok := q.Symbol(); ok {
			row[0], symbols = formula(setSymbol(scene.Typeset(name), name)), true
			if q.Of.Thing == problem.AnUnknown {
				row[0] = formula(symbolOf(p, q.Of.Index))
			}
		}
		table.Add(row...)
	}
	if noSingleAnswer(p) {
		find = "What can be said of " + say.And(say.Each(asked, func(q problem.Query) string { return names.Called(p, q) })...) + "?"
		table.Columns = table.Columns[:3]
		table.Columns[2].Head = "Answer"
	}
	if !room {
		dropColumn(table, 2)
	}
	if !symbols {
		dropColumn(table, 0)
	}
	return part(doc.Other, "Asked", doc.Say(find), table)
}

func dropColumn(t *doc.Table, k int) {
	t.Columns = slices.Delete(t.Columns, k, k+1)
	for i := range t.Rows {
		t.Rows[i] = slices.Delete(t.Rows[i], k, k+1)
	}
}

// noSingleAnswer tells that the sheet is about a case in which statics alone gives none.
func noSingleAnswer(p *problem.Problem) bool {
	cases := []statics.Verdict{statics.Indeterminate, statics.NoEquilibrium, statics.Inadmissible}
	return slices.ContainsFunc(cases, func(v statics.Verdict) bool { return v.String() == p.Expect })
}

// givenBlocks are the givens that neither the statement nor the figure states, as typed, and, in
// space, where a figure does not show it, the places of the points. A given that is computed is
// left out: it may be a step to what is asked.
func givenBlocks(p *problem.Problem, s *sheet.Sheet) (out []doc.Block) {
	givens := doc.NewTable("Name", "Value")
	whole := scene.System(p, nil, scene.Options{})
	placed := !p.Planar || figure.Dimensioned(&whole) // the places of the points are stated, computed where they are
	for i := range p.Givens {
		g := &p.Givens[i]
		if g.Value.N == 1 && (stated(p, g) || inFigure(p, g, s) || placed && ofPoints(g, s)) {
			continue
		}
		if text := typedGiven(g.Name, s); text != "" && (g.Value.N != 1 || !strings.ContainsAny(text, "(*")) {
			givens.Add(words(g.Name), words(text))
		}
	}
	if len(givens.Rows) > 0 {
		out = append(out, givens)
	}
	if p.Planar || len(p.Points) == 0 {
		return out
	}
	length := p.Units.Length
	points := doc.NewTable("Point", "x ("+length.Symbol+")", "y ("+length.Symbol+")", "z ("+length.Symbol+")")
	cell := func(x float64) doc.Inline {
		return formula(doc.NumberOf(shortNumber(length, x, max(p.Figures, 4)), length.In(x)))
	}
	for _, pt := range p.Points {
		points.Add(append([]doc.Inline{words(pt.Name)}, say.Each(p.Components(pt.At), cell)...)...)
	}
	return append(out, points)
}

// shortNumber is a value as a person would type it, to so many figures where that is long.
func shortNumber(u units.Unit, si float64, figures int) string {
	short := strconv.FormatFloat(u.In(si), 'f', -1, 64)
	if len(strings.Trim(short, "-.0")) <= figures+1 {
		return short
	}
	return u.Number(si, figures)
}

// converted is how far two equal values may lie apart, of their size: the rounding of a
// conversion of units.
const converted = 1e-9

// stated tells whether the statement has the value of a given, and of this one alone.
func stated(p *problem.Problem, g *problem.Given) bool {
	for i := range p.Givens {
		if o := &p.Givens[i]; o != g && o.Value.N == 1 && o.Value.Dim == g.Value.Dim && scalar.EqualWithinRel(o.Value.V[0], g.Value.V[0], converted) {
			return false
		}
	}
	return variant.States(p.Title+"\n"+p.Statement, g.Value.V[0], g.Value.Dim)
}

// ofPoints tells whether a given is there for the places of points alone.
func ofPoints(g *problem.Given, s *sheet.Sheet) bool {
	uses := names.UsesOf(s, problem.AGiven, g.Name)
	return len(uses) > 0 && !slices.ContainsFunc(uses, func(u names.Use) bool { return u.Ref.Table != "points" })
}

// inFigure tells whether the figure shows a given as the magnitude of a load, as a
// coefficient of friction or as the wrap of a belt.
func inFigure(p *problem.Problem, g *problem.Given, s *sheet.Sheet) bool {
	return slices.ContainsFunc(names.UsesOf(s, problem.AGiven, g.Name), func(u names.Use) bool {
		c, _ := s.Cell(u.Ref)
		return strings.TrimSpace(c.Text) == g.Name && figured(p, u.Ref)
	})
}

// figured tells a cell whose value stands in the figure.
func figured(p *problem.Problem, cell sheet.Ref) bool {
	switch cell.Table + "." + cell.Key {
	case "lines.friction", "lines.wrap", "joints.friction", "couples.magnitude", "distributed.magnitude", "bodies.weight":
		return true
	case "lines.magnitude":
		line, ok := p.Find(cell.Row, problem.ALine)
		return ok && p.Lines[line.Index].Kind != problem.Contact
	case "lines.stiffness", "lines.natural":
		line, ok := p.Find(cell.Row, problem.ALine)
		return ok && p.Lines[line.Index].Spring != nil
	}
	return false
}

// TypedLoad is what a cell has as typed, the given's where it names one; without a key the
// magnitude of a load. Empty where it is computed.
func TypedLoad(p *problem.Problem, s *sheet.Sheet) func(sheet.Ref) string {
	return func(of sheet.Ref) string {
		switch {
		case of.Key != "":
		case of.Table == "bodies":
			of.Key = "weight"
		default:
			of.Key = "magnitude"
		}
		c, _ := s.Cell(of)
		text := strings.TrimSpace(c.Text)
		switch of.Key {
		case "normal", "along": // a surface is typed by its angle, or by components that it follows from
			if len(units.Mentions(text)) == 0 && !strings.Contains(text, "polar") {
				return ""
			}
			return text
		case "turn": // the arrow shows the sense
			text = strings.TrimSpace(strings.TrimPrefix(text, "-"))
		}
		if slices.ContainsFunc(p.Givens, func(g problem.Given) bool { return g.Name == text }) {
			text = typedGiven(text, s)
		}
		if e, err := units.ParseOne(text); err == nil {
			if x, d, ok := e.Literal(); ok && x > 0 && d != units.Number {
				return text
			}
		}
		return ""
	}
}

// typedGiven is the cell of a given's value, empty where it is computed from others.
func typedGiven(name string, s *sheet.Sheet) string {
	for _, key := range []string{"value", ""} {
		if c, ok := s.Cell(sheet.Ref{Table: "given", Row: name, Key: key}); ok && len(units.Mentions(c.Text)) == 0 {
			return strings.TrimSpace(c.Text)
		}
	}
	return ""
}

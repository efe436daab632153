package report

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"trivet/mechanics/doc"
	"trivet/mechanics/figure"
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

// taskSections are the page to hand out: the task without any result. They are made of
// the problem alone, so that no value found can stand in them.
func taskSections(p *problem.Problem, s *sheet.Sheet) []doc.Section {
	d := &doc.Doc{}
	d.Add(problemSection(p))
	d.Add(figureSection(p, taskFigure(p, s)))
	d.Add(doc.Section{Role: doc.Inputs, Level: 1, Title: "Given", Blocks: givenBlocks(p, s)})
	d.Add(askedSection(p))
	return d.Sections
}

// taskFigure has the loads as typed and what is asked as arrows.
func taskFigure(p *problem.Problem, s *sheet.Sheet) scene.Options {
	return scene.Options{Dimensions: true, Asked: variant.Asked(p), Typed: typedLoad(p, s)}
}

// askedSection asks for the results, each defined, with room for its value; where there is
// no single answer it asks what can be said of them.
func askedSection(p *problem.Problem) doc.Section {
	out := doc.Section{Level: 1, Title: "Asked"}
	asked := variant.Asked(p)
	if len(asked) == 0 {
		return out
	}
	find := "Find, to " + say.Count(p.Figures, "significant figure") + ":"
	heads := []string{"Symbol", "Result", "Value", "Unit"}
	if noSingleAnswer(p) {
		var names []string
		for _, q := range asked {
			names = append(names, p.Called(q))
		}
		find, heads = "What can be said of "+say.And(names...)+"?", []string{"Symbol", "Result", "Answer"}
	}
	table := doc.NewTable(heads...)
	symbols := false
	for _, q := range asked {
		row := []doc.Inline{{}, words(say.Capital(p.Definition(q))), {Blank: valueWidth}, words(p.Units.For(q.Dim).Symbol)}
		if name, ok := q.Symbol(); ok {
			row[0], symbols = formula(setSymbol(scene.Typeset(name), name)), true
			if q.Kind == problem.AskUnknown && q.Unknown >= 0 {
				row[0] = formula(symbolOf(p, q.Unknown))
			}
		}
		table.Add(row[:len(heads)]...)
	}
	if !symbols {
		table.Columns = table.Columns[1:]
		for i := range table.Rows {
			table.Rows[i] = table.Rows[i][1:]
		}
	}
	out.Blocks = []doc.Block{doc.Say(find), table}
	return out
}

// noSingleAnswer tells that the sheet is about a case in which statics alone gives none.
func noSingleAnswer(p *problem.Problem) bool {
	switch p.Expect {
	case statics.Indeterminate.String(), statics.NoEquilibrium.String(), statics.Inadmissible.String():
		return true
	}
	return false
}

// givenBlocks are the givens that neither the statement nor the figure states, and, in
// space, where a figure does not show it, the places of the points.
func givenBlocks(p *problem.Problem, s *sheet.Sheet) (out []doc.Block) {
	givens := doc.NewTable("Name", "Value")
	whole := scene.System(p, nil, scene.Options{})
	placed := !p.Planar || figure.Dimensioned(&whole) // the places of the points are stated, computed where they are
	for i := range p.Givens {
		g := &p.Givens[i]
		if g.Value.N == 1 && (stated(p, g) || inFigure(p, g, s) || placed && ofPoints(g, s)) {
			continue
		}
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
			row = append(row, formula(doc.NumberOf(shortNumber(length, x, max(p.Figures, 4)), length.In(x))))
		}
		points.Add(row...)
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

// nearly is equality but for the rounding of a conversion of units.
func nearly(a, b float64) bool { return math.Abs(a-b) <= 1e-9*max(math.Abs(a), math.Abs(b)) }

// stated tells whether the statement has the value of a given, and of this one alone.
func stated(p *problem.Problem, g *problem.Given) bool {
	for i := range p.Givens {
		if o := &p.Givens[i]; o != g && o.Value.N == 1 && o.Value.Dim == g.Value.Dim && nearly(o.Value.V[0], g.Value.V[0]) {
			return false
		}
	}
	return variant.States(p.Title+"\n"+p.Statement, g.Value.V[0], g.Value.Dim)
}

// ofPoints tells whether a given is there for the places of points alone.
func ofPoints(g *problem.Given, s *sheet.Sheet) bool {
	if s == nil {
		return false
	}
	used := false
	for _, t := range s.Tables {
		for _, r := range t.Rows {
			for _, c := range r.Cells {
				if t.Name == "" || !slices.ContainsFunc(units.Mentions(c.Text), func(m units.Mention) bool { return m.Name == g.Name }) {
					continue
				}
				if t.Name != "points" {
					return false
				}
				used = true
			}
		}
	}
	return used
}

// inFigure tells whether the figure shows a given as the magnitude of a load, as a
// coefficient of friction or as the wrap of a belt.
func inFigure(p *problem.Problem, g *problem.Given, s *sheet.Sheet) bool {
	if s == nil {
		return false
	}
	shows := func(row sheet.Ref, key string) bool {
		row.Key = key
		c, ok := s.Cell(row)
		return ok && strings.TrimSpace(c.Text) == g.Name
	}
	for _, l := range p.Lines {
		load := (l.Kind == problem.Force || l.Kind == problem.Weight) && shows(l.Ref, "magnitude")
		if load || l.Belt != nil && (shows(l.Ref, "friction") || shows(l.Ref, "wrap")) {
			return true
		}
	}
	for _, c := range p.Couples {
		if shows(c.Ref, "magnitude") {
			return true
		}
	}
	for _, d := range p.Loads {
		if shows(d.Ref, "magnitude") {
			return true
		}
	}
	for _, b := range p.Bodies {
		if shows(b.Ref, "weight") {
			return true
		}
	}
	for _, j := range p.Joints {
		if shows(j.Ref, "friction") {
			return true
		}
	}
	return false
}

// typedLoad is the magnitude of a load as typed: in its own cell, or in that of the given
// which the cell names. Empty where it is computed.
func typedLoad(p *problem.Problem, s *sheet.Sheet) func(sheet.Ref) string {
	if s == nil {
		return nil
	}
	return func(load sheet.Ref) string {
		load.Key = "magnitude"
		if load.Table == "bodies" {
			load.Key = "weight"
		}
		c, _ := s.Cell(load)
		text := strings.TrimSpace(c.Text)
		for i := range p.Givens {
			if p.Givens[i].Name == text {
				text = typedGiven(text, s)
				break
			}
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

// givenText is a given as typed, where that is a number; computed it is its value.
func givenText(p *problem.Problem, g *problem.Given, s *sheet.Sheet) string {
	if s != nil {
		if text := typedGiven(g.Name, s); text != "" {
			return text
		}
	}
	if g.Value.N != 1 {
		return ""
	}
	return p.Units.For(g.Value.Dim).Format(g.Value.V[0], max(p.Figures, 4))
}

package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"trivet/mechanics/doc"
	"trivet/mechanics/drawing"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/scene"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
	"trivet/units"
)

// The builders of what is said of a solution, each for every document that says it. The
// effect t of the ± of the inputs may be nil.

// summary is what solve prints as text: results and what they rest on, in few lines.
func summary(s *statics.Solution, t *uncertainty.Effect) *doc.Doc {
	p := s.Problem
	d := &doc.Doc{Title: oneLine(p.Title), Foot: sourceLine(p)}
	verdict := say.Each(s.VerdictWords(), func(says string) doc.Block { return doc.Say(says) }) // the warnings stand on standard error
	d.Add(doc.Section{Role: doc.Results, Blocks: append(verdict, riskChecks(t)...)})
	d.Add(section(doc.Other, "Unknowns", unknownLines(s, t)))
	d.Add(section(doc.Other, "Asked", askedLines(s)))
	d.Add(uncertaintySection(t))
	d.Add(section(doc.Other, "Lines of action: r from the first point to the second, u = r/|r|", lineTable(p)))
	d.Add(section(doc.Other, "Equations of equilibrium: coefficients of the unknowns = minus known forces", systemTable(s)))
	d.Add(part(doc.Checks, "Checks", summaryChecks(s, t)...))
	d.Add(doc.Section{Blocks: governing(s, t)})
	d.Add(part(doc.Checks, "Reference answers", answerChecks(s)...))
	d.Add(doc.Section{Role: doc.Caution, Blocks: []doc.Block{doc.Say("Caution: " + Caution + ".")}})
	return d
}

// sentence is what is said, as a paragraph.
func sentence(says string) doc.Block { return doc.Say(say.Capital(says) + ".") }

// section is a table under its title, nothing where it has no rows.
func section(role doc.Role, title string, t *doc.Table) doc.Section {
	if len(t.Rows) == 0 {
		return doc.Section{}
	}
	return part(role, title, t)
}

func words(text string) doc.Inline  { return doc.Inline{Words: text} }
func formula(m doc.Math) doc.Inline { return doc.Inline{Math: &m} }
func side(of ...doc.Math) doc.Math  { return doc.Math{Op: doc.Row, Of: of} }
func upright(text string) doc.Math  { return doc.Math{Op: doc.Words, Text: text} }

// quantity is a value to so many figures, with its unit.
func quantity(u units.Unit, si float64, figures int) doc.Math {
	m := doc.NumberOf(u.Number(si, figures), u.In(si))
	if u.Symbol == "" {
		return m
	}
	return side(m, upright(u.Symbol))
}

// symbolOf is an unknown's symbol, as the figure and the working have it.
func symbolOf(p *problem.Problem, j int) doc.Math {
	return setSymbol(scene.TypesetUnknown(p, j), p.Unknowns[j].Name)
}

// setSymbol is a name as a symbol, its subscript below the line.
func setSymbol(runs []drawing.Run, name string) doc.Math {
	m := doc.Math{Op: doc.Symbol, Text: runs[0].Text, Name: name}
	if len(runs) > 1 {
		m.Of = []doc.Math{upright(drawing.Plain(runs[1:]))}
	}
	return m
}

// valueOf is an unknown's value, or in words what it may be.
func valueOf(s *statics.Solution, j int) doc.Math {
	switch x := s.X[j]; {
	case s.Verdict == statics.NoEquilibrium:
		return upright("no value")
	case x.Fixed:
		return quantity(s.Problem.Units.For(s.Problem.Unknowns[j].Dim), x.Value, s.Problem.Figures)
	}
	return upright(ResultText(s, j))
}

// useOf is how much of its limit an unknown uses, and whether that is at risk.
func useOf(s *statics.Solution, t *uncertainty.Effect, j int) (says string, risk bool) {
	k, c := LimitCheck(s, j)
	if c == nil {
		return "", false
	}
	return UsePercent(s.Problem, c.Value/c.Bound) + " of " + s.Problem.Units.Force.Format(c.Bound, s.Problem.Figures), t.CheckAtRisk(k)
}

// unknownLines are the unknowns in lines: T1 = 2 kN, tension, the use of its limit.
func unknownLines(s *statics.Solution, t *uncertainty.Effect) *doc.Table {
	out := doc.NewTable("", "", "", "", "")
	for j := range s.X {
		use, risk := useOf(s, t, j)
		is := side(upright("="), valueOf(s, j))
		if s.Verdict == statics.NoEquilibrium {
			is = upright("has no value")
		}
		row := []doc.Inline{formula(symbolOf(s.Problem, j)), formula(is), words(SenseWord(s, j)), words(use)}
		if risk {
			row = append(row, words(AtRisk))
		}
		out.Add(row...)
	}
	return out
}

// resultSection is the verdict and a table of the unknowns, without the columns that say
// nothing.
func resultSection(s *statics.Solution, t *uncertainty.Effect) doc.Section {
	out := part(doc.Results, "Results", say.Each(s.Words(), sentence)...)
	table := doc.NewTable("Unknown", "Value", "Sense", "Utilisation")
	table.Columns[1].Align = doc.Right
	for j := range s.X {
		use, risk := useOf(s, t, j)
		if risk {
			use += ", " + AtRisk
		}
		table.Add(formula(symbolOf(s.Problem, j)), formula(valueOf(s, j)), words(SenseWord(s, j)), words(use))
	}
	for n := len(table.Columns) - 1; n > 1 && !slices.ContainsFunc(table.Rows, func(r []doc.Inline) bool { return r[n].Words != "" }); n-- {
		table.Columns = table.Columns[:n]
	}
	if len(table.Rows) > 0 {
		out.Blocks = append(out.Blocks, table)
	}
	return out
}

// askedLines are the results asked for, or why one has no value; nothing where all are
// unknowns, which stand above.
func askedLines(s *statics.Solution) *doc.Table {
	out := doc.NewTable("", "")
	if !slices.ContainsFunc(s.Problem.Asked, func(q problem.Query) bool { return q.Of.Thing != problem.AnUnknown }) {
		return out
	}
	for _, q := range s.Problem.Asked {
		v, err := s.Evaluate(q)
		if err != nil {
			out.Add(words(q.Name), words(err.Error()))
			continue
		}
		out.Add(words(q.Name), formula(side(upright("="), quantity(s.Problem.Units.For(q.Dim), v, s.Problem.Figures))))
	}
	return out
}

// summaryChecks are the checks; those of unit vectors that hold take one line.
func summaryChecks(s *statics.Solution, t *uncertainty.Effect) (out []doc.Block) {
	var lines []string
	off := 0.0
	for k, c := range s.Checks {
		if c.Kind == statics.CheckUnit && c.OK {
			lines, off = append(lines, c.Subject), max(off, c.Value)
		} else {
			out = append(out, checkBlock(s, t, k))
		}
	}
	if len(lines) > 0 {
		all := statics.Check{Kind: statics.CheckUnit, Subject: strings.Join(lines, ", "), Value: off, OK: true}
		out = slices.Insert(out, 0, doc.Block(&doc.Check{Text: doc.Plain(all.Says(s.Problem))}))
	}
	return out
}

func checkBlock(s *statics.Solution, t *uncertainty.Effect, k int) doc.Block {
	c := &s.Checks[k]
	return &doc.Check{State: doc.Held(c.OK, t.CheckAtRisk(k)), Text: doc.Plain(c.Says(s.Problem))}
}

// answerChecks are the reference answers.
func answerChecks(s *statics.Solution) (out []doc.Block) {
	for _, a := range s.Answers {
		says := a.Says(s.Problem)
		if a.Why != "" {
			says += " (" + a.Why + ")"
		}
		out = append(out, &doc.Check{State: doc.Held(a.OK, false), Text: doc.Plain(says)})
	}
	return out
}

// governing says what the governing limit has in use, and whether that is at risk.
func governing(s *statics.Solution, t *uncertainty.Effect) []doc.Block {
	c, ok := s.Governing()
	if !ok {
		return nil
	}
	says := "Governing: " + c.Says(s.Problem)
	if t.CheckAtRisk(slices.Index(s.Checks, c)) {
		says += "; " + AtRisk + " within the ±"
	}
	return []doc.Block{doc.Say(says + ".")}
}

// AtRisk heads what holds as typed and may not within the ±.
const AtRisk = "at risk"

// riskChecks are what is at risk, in sentences.
func riskChecks(t *uncertainty.Effect) []doc.Block {
	if t == nil {
		return nil
	}
	return say.Each(t.AtRisk(), func(says string) doc.Block { return &doc.Check{State: doc.AtRisk, Text: doc.Plain(says + ".")} })
}

// riskSection is the same on a page, where it stands before the results.
func riskSection(t *uncertainty.Effect) doc.Section {
	return part(doc.Risk, "At risk within the ± of the inputs", riskChecks(t)...)
}

// uncertaintySection is what the ± of the inputs does to the results.
func uncertaintySection(t *uncertainty.Effect) doc.Section {
	out := doc.Section{Level: 1, Title: "Effect of measurement tolerance"}
	if t == nil {
		return out
	}
	table := doc.NewTable("Result", "Value", "Independent", "Worst case", "Mostly from")
	table.Columns[1].Align = doc.Right
	var alone []string
	for i := range t.Spreads {
		s := &t.Spreads[i]
		if !s.Changed {
			alone = append(alone, s.Label())
			continue
		}
		ends, high := t.Ends(s)
		if s.Bounded() {
			ends += " to " + high
		}
		table.Add(say.Each([]string{s.Label(), t.ValueText(s), t.PlusText(s), ends, t.Mostly(s)}, words)...)
	}
	if len(table.Rows) > 0 {
		out.Blocks = append(out.Blocks, table)
	}
	out.Blocks = append(out.Blocks, say.Each(t.Notes(), sentence)...)
	if t.TooMany {
		return out
	}
	notes := []string{"inputs with ±: " + strings.Join(say.Each(t.Measured, problem.Measured.Words), ", ")}
	if len(alone) > 0 {
		says := "not changed by them: "
		if !t.Search.All {
			says = "not seen to change: "
		}
		notes = append(notes, says+strings.Join(alone, ", "))
	}
	note := func(says string) doc.Block { return doc.Note(say.Capital(says) + ".") }
	out.Blocks = append(out.Blocks, say.Each(append(notes, t.Meaning()...), note)...)
	return out
}

// lineTable is the vectors of the lines of action.
func lineTable(p *problem.Problem) *doc.Table {
	length, axes := p.Units.Length, strings.Split("xyz", "")
	if p.Planar {
		axes = axes[:2]
	}
	of := func(letter string) []string { return say.Each(axes, func(axis string) string { return letter + axis }) }
	out := doc.NewTable(slices.Concat([]string{"", "", "path"}, of("r"), []string{"|r| " + length.Symbol}, of("u"))...)
	out.Whole = true
	for k := range out.Columns[3:] {
		out.Columns[3+k].Align = doc.Right
	}
	for i := range p.Lines {
		l := &p.Lines[i]
		name, kind := l.Name, l.Kind.String()
		for _, leg := range l.Legs {
			points := p.Points[leg.From].Name
			r := func(si float64) doc.Inline { return figures(si/length.Factor, p.Figures+1) }
			if leg.To >= 0 {
				points += " " + p.Points[leg.To].Name
			} else {
				r = func(float64) doc.Inline { return doc.Inline{} }
				if len(l.Path) == 2 && l.Between() {
					points += " " + p.Points[l.Path[1]].Name
				}
			}
			row := []doc.Inline{words(name), words(kind), words(points)}
			out.Add(slices.Concat(row, say.Each(p.Components(leg.R), r), []doc.Inline{r(leg.Length)}, say.Each(p.Components(leg.U), decimals))...)
			name, kind = "", "" // of the first part alone
		}
	}
	return out
}

func figures(x float64, n int) doc.Inline { return formula(doc.NumberOf(units.Figures(x, n), x)) }
func decimals(x float64) doc.Inline       { return formula(doc.NumberOf(units.Decimals(x, 4), x)) }

// mostColumns is up to how many unknowns the equations stand as a matrix: a wider
// one is mostly noughts and leaves the 80 columns of a page.
const mostColumns = 6

// systemTable is the equations with what is left over of each: as a matrix, or as sums.
func systemTable(s *statics.Solution) *doc.Table {
	if len(s.X) == 0 {
		return doc.NewTable()
	}
	matrix := len(s.X) <= mostColumns
	heads := []string{"", "", "", "", ""}
	if matrix {
		heads = append(append([]string{""}, s.System.Cols...), "", "right side", "residual")
	}
	out := doc.NewTable(heads...)
	out.Whole = true
	for k := 1; k < len(heads); k++ {
		if matrix || k == 2 || k == 3 {
			out.Columns[k].Align = doc.Right
		}
	}
	for i := range s.System.Rows {
		e := equationOf(s, i)
		cells := []doc.Inline{words(e.name)}
		if matrix {
			for j := range s.System.Cols {
				cells = append(cells, decimals(s.Coefficient(i, j)))
			}
		} else {
			cells, e.left = append(cells, formula(e.sum)), "residual "+e.left
		}
		out.Add(append(cells, words("="), formula(e.right), words(e.left))...)
	}
	return out
}

// equation is an equation of the system as a sum.
type equation struct {
	name       string
	sum, right doc.Math
	unit, left string // what is left over of it, with its unit
}

func equationOf(s *statics.Solution, i int) equation {
	row := s.System.Rows[i]
	unit := s.Problem.Units.For(row.Dim())
	sum := doc.Math{Op: doc.Sum}
	for _, t := range s.System.Terms[i] {
		c := s.Coefficient(i, t.Col)
		m := doc.Math{Op: doc.Symbol, Text: s.System.Cols[t.Col], Name: s.System.Cols[t.Col]}
		if size := math.Abs(c); size != 1 {
			m = doc.Math{Op: doc.Product, Of: []doc.Math{doc.NumberOf(units.Decimals(size, 4), size), m}}
		}
		if c < 0 {
			m = doc.Math{Op: doc.Neg, Of: []doc.Math{m}}
		}
		sum.Of = append(sum.Of, m)
	}
	if len(sum.Of) == 0 {
		sum = doc.NumberOf("0", 0)
	}
	right := s.System.B[i]/unit.Factor + 0 // no negative zero
	return equation{
		name: "Σ" + row.Axis + " " + row.Name, sum: sum, right: doc.NumberOf(units.Figures(right, s.Problem.Figures+2), right),
		unit: unit.Symbol, left: fmt.Sprintf("%.1e %s", s.Residuals[i].Value/unit.Factor, unit.Symbol),
	}
}

// LineEquations writes each equation of the system as a sum, with what is left
// over of it: "ΣFx D: -0.6000 T1 + 0.6000 T2 = 0 N, residual 0 N".
func LineEquations(s *statics.Solution) (out []string) {
	if len(s.X) == 0 {
		return nil
	}
	for i := range s.System.Rows {
		e := equationOf(s, i)
		if s.Residuals[i].Value == 0 {
			e.left = "0 " + e.unit
		}
		sum := doc.Math{Op: doc.Relate, Text: "=", Of: []doc.Math{e.sum, side(e.right, upright(e.unit))}}
		out = append(out, e.name+": "+doc.LineMath(sum)+", residual "+e.left)
	}
	return out
}

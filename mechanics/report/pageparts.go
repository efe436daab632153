package report

import (
	"slices"
	"strings"

	"trivet/mechanics/doc"
	"trivet/mechanics/ink"
	"trivet/mechanics/plate"
	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
	"trivet/mechanics/working"
)

// workedParts is the page of a worked solution.
func (pg *page) workedParts(s *statics.Solution, opt PageOptions) {
	p := s.Problem
	pg.add("Problem", paragraphBlocks(p)...)
	if len(p.Points) > 0 {
		fig := plate.System(p, s, plate.Options{Dimensions: true})
		pg.add(partFigure, block{figure: &fig})
	}
	if free := freeBodies(s); len(free) > 0 {
		note := words("Arrows of unknown forces point the way that counts as positive; a negative value acts against its arrow.")
		note.quiet = true
		pg.add("Free-body diagrams", append([]block{note}, free...)...)
	}
	w := opt.working(s)
	for i, step := range w.Steps {
		var blocks []block
		for _, b := range step.Body {
			blocks = append(blocks, block{oldBlock: old(b)})
		}
		if i == 0 {
			note := words(w.Rounding)
			note.quiet = true
			pg.parts = append(pg.parts, part{title: "Working", blocks: []block{note}})
		}
		switch step.Kind {
		case working.Checks, working.Answers:
			pg.add(step.Title, blocks...)
		default:
			pg.parts = append(pg.parts, part{title: step.Title, minor: true, blocks: blocks})
		}
	}
	pg.add(partResults, resultBlocks(s, opt.Trust)...)
	pg.addTrust(opt.Trust)
}

func (pg *page) add(title string, blocks ...block) {
	if len(blocks) > 0 {
		pg.parts = append(pg.parts, part{title: title, blocks: blocks})
	}
}

// mostFree is up to how many free bodies are drawn: a page of pictures, beyond
// which a large truss would print hundreds.
const mostFree = 24

// freeBodies are the free-body diagrams, set in rows.
func freeBodies(s *statics.Solution) []block {
	const width, gap = columnWidth, 14
	var rows []block
	var row []ink.Drawing
	used := 0.0
	flush := func() {
		if len(row) > 0 {
			d := plate.Side(row, gap)
			d.Title = row[0].Title
			if len(row) > 1 {
				d.Title = "free-body diagrams"
			}
			rows = append(rows, block{figure: &d})
		}
		row, used = nil, 0
	}
	bodies := slices.Collect(s.Problem.CutFree())
	for _, i := range bodies[:min(len(bodies), mostFree)] {
		d := plate.FreeBody(s.Problem, s, i)
		if used+d.Width > width {
			flush()
		}
		row, used = append(row, d), used+d.Width+gap
	}
	flush()
	if more := len(bodies) - mostFree; more > 0 {
		rows = append(rows, words("The other "+plural(more, "free body")+" are not drawn."))
	}
	return rows
}

// resultBlocks are the verdict and the table of unknowns; t may be nil.
func resultBlocks(s *statics.Solution, t *uncertainty.Effect) []block {
	var blocks []block
	for _, w := range s.Words() {
		blocks = append(blocks, words(sentence(w)))
	}
	head := []string{"Unknown", "Value", "Sense", "Use of its limit"}
	var rows [][]string
	columns := 2
	for _, r := range unknownRows(s, t) {
		r[1] = strings.TrimPrefix(r[1], "= ")
		if digits, negative := strings.CutPrefix(r[1], "-"); negative {
			r[1] = "−" + digits
		}
		if len(r) > 2 && r[2] != "" {
			columns = max(columns, 3)
		}
		if len(r) > 3 {
			columns = 4
			r = append(r[:3], strings.Join(r[3:], ", "))
		}
		for len(r) < 4 {
			r = append(r, "")
		}
		rows = append(rows, r)
	}
	if len(rows) > 0 {
		for i := range rows {
			rows[i] = rows[i][:columns]
		}
		t := tableOf(head[:columns], rows...)
		for j := range t.Table.Rows {
			m := symbolOf(s.Problem, j)
			t.Table.Rows[j][0] = doc.Inline{Math: &m}
		}
		blocks = append(blocks, t)
	}
	return blocks
}

// symbolOf is an unknown's symbol, as the figure and the working have it.
func symbolOf(p *problem.Problem, j int) doc.Math {
	runs := plate.UnknownName(p, j)
	m := doc.Math{Op: doc.Symbol, Text: runs[0].Text}
	if len(runs) > 1 {
		m.Of = []doc.Math{{Op: doc.Words, Text: ink.Plain(runs[1:])}}
	}
	return m
}

// picture is a page as one drawing: the figure with its free bodies below it,
// or the first page of a field page.
func picture(s *statics.Solution, opt PageOptions) ink.Drawing {
	if opt.Task {
		return plate.System(s.Problem, nil, plate.Options{Dimensions: true})
	}
	if opt.Field {
		return typeset(pageOf(s, opt))[0]
	}
	const gap = 10
	var d ink.Drawing
	stack := []ink.Drawing{plate.System(s.Problem, s, plate.Options{Dimensions: true})}
	d.Title = stack[0].Title
	for _, b := range freeBodies(s) {
		if b.figure != nil {
			stack = append(stack, *b.figure)
		}
	}
	for _, one := range stack {
		d.Width = max(d.Width, one.Width)
	}
	for i, one := range stack {
		if i > 0 {
			d.Height += gap
		}
		d.Put(one, ink.Vec{X: (d.Width - one.Width) / 2, Y: d.Height}, 1)
		d.Height += one.Height
	}
	return d
}

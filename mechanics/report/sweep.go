package report

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"

	"trivet/mechanics/doc"
	"trivet/mechanics/figure"
	"trivet/mechanics/say"
	"trivet/mechanics/variant"
	"trivet/units"
)

// Sweep writes a table of results against a given. Beside a number stands max or
// min where it is the largest or smallest of its column, by sign, and ! where it
// passes its limit, or as a range could.
func Sweep(format, sheet string, s *variant.Swept) string {
	return write(format, func() *doc.Doc { return sweepDoc(format, s) }, func() [][]string { return sweepRows(s) }, func() object { return sweepObject(sheet, s) })
}

// sweepMark is what stands beside a number.
func sweepMark(s *variant.Swept, row, result int) string {
	out := ""
	if s.Rows[row].Cells[result].Passes {
		out += " !"
	}
	if s.Largest[result] == row {
		out += " max"
	}
	if s.Smallest[result] == row {
		out += " min"
	}
	return strings.TrimPrefix(out, " ")
}

// sweepDoc is a sweep as a document. A mark stands in a column of its own, where the
// column of numbers has any; the curves stand where they can.
func sweepDoc(format string, s *variant.Swept) *doc.Doc {
	table := &doc.Table{Whole: true, Columns: []doc.Col{{Head: s.Head[0], Align: doc.Point}}}
	marked := make([]bool, len(s.Results))
	for k := range s.Results {
		marked[k] = s.Largest[k] >= 0 || s.Smallest[k] >= 0 || slices.ContainsFunc(s.Rows, func(r variant.SweptRow) bool { return r.Cells[k].Passes })
		table.Columns = append(table.Columns, doc.Col{Head: s.Head[k+1], Align: doc.Point})
		if marked[k] {
			table.Columns = append(table.Columns, doc.Col{})
		}
	}
	table.Columns = append(table.Columns, doc.Col{})
	for i, r := range s.Rows {
		row := []doc.Inline{formula(doc.NumberOf(r.Number, 0))}
		for k := range s.Results {
			shown := words(s.Shown(i, k))
			if r.Cells[k].OK {
				shown = formula(doc.NumberOf(s.Shown(i, k), s.Units[k].In(r.Cells[k].SI)))
			}
			row = append(row, shown)
			if marked[k] {
				row = append(row, words(sweepMark(s, i, k)))
			}
		}
		table.Add(append(row, words(strings.Join(r.Says, ", ")))...)
	}
	d := &doc.Doc{Title: oneLine(s.Title)}
	d.Add(doc.Section{Blocks: []doc.Block{table}})
	if legend := sweepLegend(s); legend != "" {
		d.Add(doc.Section{Blocks: []doc.Block{doc.Say(legend + ".")}})
	}
	if format == "markdown" {
		for _, p := range SweepPlots(s) {
			drawing := figure.SetPlot(p, figure.Paper(plotWidth, plotHeight)).Drawing
			d.Add(doc.Section{Blocks: []doc.Block{&doc.Figure{Drawing: drawing}}})
		}
	}
	return d
}

// sweepLegend says what the marks mean that are there.
func sweepLegend(s *variant.Swept) string {
	var out []string
	if slices.ContainsFunc(s.Largest, func(i int) bool { return i >= 0 }) {
		out = append(out, "max, min: the largest and smallest of a column, by sign")
	}
	passes := map[bool]bool{} // by a range, or by a value
	for _, r := range s.Rows {
		for _, c := range r.Cells {
			passes[c.Ranged] = passes[c.Ranged] || c.Passes
		}
	}
	switch {
	case passes[false] && passes[true]:
		out = append(out, "!: a limit is passed, or could be within a range")
	case passes[false]:
		out = append(out, "!: a limit is passed")
	case passes[true]:
		out = append(out, "!: a limit could be passed")
	}
	return strings.Join(out, "; ")
}

// sweepRows have the numbers at full precision and the marks in the last columns:
// a spreadsheet draws them.
func sweepRows(s *variant.Swept) [][]string {
	rows := [][]string{append(slices.Clone(s.Head), "verdict", "says", "largest of", "smallest of")}
	for i, r := range s.Rows {
		row := []string{r.Number}
		for k, c := range r.Cells {
			row = append(row, c.Text(func(si float64) string {
				if c.OK {
					return fmt.Sprint(s.Units[k].In(si))
				}
				return fmt.Sprint(variant.End(s.Units[k], si))
			}))
		}
		extreme := func(of []int) string {
			var names []string
			for k, q := range s.Results {
				if of[k] == i {
					names = append(names, q.Name)
				}
			}
			return strings.Join(names, " ")
		}
		rows = append(rows, append(row, r.Verdict, strings.Join(r.Says, ", "), extreme(s.Largest), extreme(s.Smallest)))
	}
	return rows
}

// sweepObject is the object of `trivet sweep --format json`: numbers at full precision in
// the units named, null where a result has no value that holds. Largest and smallest are
// indices of rows; ranges those of results without a single value; passes the results that
// pass their limit, or as a range could.
func sweepObject(sheet string, s *variant.Swept) object {
	index := func(i int) *int {
		if i < 0 {
			return nil
		}
		return &i
	}
	row := func(r variant.SweptRow) object {
		var ranges []object
		values, passes := make([]*float64, len(r.Cells)), []string{}
		for k, c := range r.Cells {
			if c.OK {
				values[k] = number(s.Units[k].In(c.SI))
			}
			if c.Ranged {
				end := func(si float64) any { return rangeEnd(true, variant.End(s.Units[k], si)) }
				ranges = append(ranges, object{{"name", s.Results[k].Name}, {"low", end(c.Low)}, {"high", end(c.High)}})
			}
			if c.Passes {
				passes = append(passes, s.Results[k].Name)
			}
		}
		return object{{"value", json.Number(r.Number)}, {"verdict", r.Verdict}, {"says", append([]string{}, r.Says...)},
			{"results", values}, {"ranges,omitempty", ranges}, {"passes", passes}}
	}
	return object{{"sheet", sheet}, {"title", s.Title}, {"given", s.Given}, {"unit", s.Symbol},
		{"results", list(len(s.Results), func(k int) object {
			return object{{"name", s.Results[k].Name}, {"unit", s.Units[k].Symbol}, {"largest", index(s.Largest[k])}, {"smallest", index(s.Smallest[k])}}
		})},
		{"rows", say.Each(s.Rows, row)}}
}

// The size of a plot on paper, in points.
const plotWidth, plotHeight = 400, 220

// SweepPlots are the curves of a sweep's results, those in one unit together, with the
// largest and the smallest marked. A result has a gap where it has no value that holds.
func SweepPlots(s *variant.Swept) (plots []*figure.Plot) {
	across, _ := units.Find(s.Symbol)
	for k, q := range s.Results {
		unit := s.Units[k].Symbol
		i := slices.IndexFunc(plots, func(p *figure.Plot) bool { return p.YLabel == unit })
		if i < 0 {
			i, plots = len(plots), append(plots, &figure.Plot{Title: "results against " + s.Given, XLabel: s.Head[0], YLabel: unit})
		}
		c := figure.Curve{Name: q.Name}
		for _, r := range s.Rows {
			y := math.NaN()
			if r.Cells[k].OK {
				y = s.Units[k].In(r.Cells[k].SI)
			}
			c.X, c.Y = append(c.X, across.In(r.SI)), append(c.Y, y)
		}
		for text, at := range map[string]int{"max": s.Largest[k], "min": s.Smallest[k]} {
			if at >= 0 {
				c.Marks = append(c.Marks, figure.Mark{At: at, Text: text})
			}
		}
		slices.SortFunc(c.Marks, func(a, b figure.Mark) int { return a.At - b.At })
		plots[i].Curves = append(plots[i].Curves, c)
	}
	return plots
}

package variant

import (
	"cmp"
	"fmt"
	"math"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/units"
)

// Span is how a sweep goes, as typed; what is empty is taken from the sheet.
type Span struct {
	From, To string
	Steps    int // so many steps from one to the other; 0 for the sheet's
}

const (
	// usualSteps is how many steps a sweep has where neither it nor the sheet says so.
	usualSteps = 10
	// maxSteps bounds a sweep: nobody reads a longer table.
	maxSteps = 1000
)

// Swept is a table of results against a given.
type Swept struct {
	Title   string
	Given   string
	Symbol  string   // the unit of the given as written
	Head    []string // the given, then the results, each with its unit
	Results []problem.Query
	Units   []units.Unit // of the results
	Figures int
	Rows    []SweptRow
	// The rows of the largest and the smallest of each result, among those in which
	// it has a value; -1 where it has none or is the same in all.
	Largest, Smallest []int
}

// SweptRow is one value of the given.
type SweptRow struct {
	Number  string  // as written
	SI      float64 // of the given
	Verdict string  // as in the JSON contract
	Says    []string
	Cells   []SweptCell
}

// SweptCell is a result: OK is false where it has no value that holds, because
// something goes slack, or there is no equilibrium or no single answer. Of what then
// has a range that was computed, Ranged is true and Low..High the range.
type SweptCell struct {
	OK        bool
	SI        float64
	Ranged    bool
	Low, High float64 // infinite where unbounded
	Passes    bool    // the limit of the line or support; of a range, its greatest does
}

// Sweep solves a sheet with a given running through values, others as they are.
func Sweep(s *sheet.Sheet, sol *statics.Solution, name string, span Span) (*Swept, error) {
	p := sol.Problem
	of := p.GivenNamed(name)
	if of == nil {
		return nil, noGiven(p, name)
	}
	g, err := sweepGrid(s, p, of, span)
	if err != nil {
		return nil, err
	}
	out := &Swept{Title: p.Title, Given: name, Symbol: g.Symbol, Results: p.Results(), Figures: p.Figures}
	out.Head = append([]string{heading(name, g.Symbol)}, headings(p)...)
	out.Units = say.Each(out.Results, func(q problem.Query) units.Unit { return p.Units.For(q.Dim) })
	reader := problem.NewReader()
	for k := range g.Count {
		row := SweptRow{Number: g.Number(k), SI: g.SI(k), Verdict: statics.Unreadable.String(), Cells: make([]SweptCell, len(out.Results))}
		now, err := solve(reader, s.With(g.Ref, g.Text(k)))
		if err != nil {
			row.Says = []string{err.Error()}
		} else {
			row.fill(now)
		}
		out.Rows = append(out.Rows, row)
	}
	out.extremes()
	return out, nil
}

// fill takes what holds of a solution.
func (row *SweptRow) fill(s *statics.Solution) {
	row.Verdict = s.Verdict.String()
	row.Says = Otherwise(s)
	passed := map[string]bool{}
	for _, c := range s.Checks {
		if c.OK || s.Verdict == statics.Inadmissible {
			continue
		}
		switch c.Kind {
		case statics.CheckLimit:
			passed[c.Subject] = !c.Open
			fallthrough
		case statics.CheckFriction, statics.CheckBelt, statics.CheckTipping, statics.CheckCondition:
			row.Says = append(row.Says, fails(s.Problem, c))
		}
	}
	asked := s.Problem.Results()
	if s.Verdict == statics.Inadmissible || s.Verdict == statics.NoEquilibrium || len(asked) != len(row.Cells) {
		return
	}
	for k, q := range asked {
		row.Cells[k] = resultOf(s, q)
		row.Cells[k].Passes = passed[q.Name]
	}
}

// extremes finds the largest and smallest of each result, by sign.
func (s *Swept) extremes() {
	for k := range s.Results {
		most, least := -1, -1
		for i, r := range s.Rows {
			c := r.Cells[k]
			if c.OK && (most < 0 || c.SI > s.Rows[most].Cells[k].SI) {
				most = i
			}
			if c.OK && (least < 0 || c.SI < s.Rows[least].Cells[k].SI) {
				least = i
			}
		}
		if most < 0 || s.Shown(most, k) == s.Shown(least, k) {
			most, least = -1, -1
		}
		s.Largest, s.Smallest = append(s.Largest, most), append(s.Smallest, least)
	}
}

// resultOf is what a solution gives for a result.
func resultOf(s *statics.Solution, q problem.Query) SweptCell {
	if v, err := s.Evaluate(q); err == nil {
		return SweptCell{OK: true, SI: v}
	}
	if q.Of.Thing != problem.AnUnknown {
		return SweptCell{}
	}
	x := s.X[q.Of.Index]
	return SweptCell{Ranged: x.Ranged, Low: x.Low, High: x.High}
}

// Shown is a result to the sheet's figures, or its range; "" where it has neither.
func (s *Swept) Shown(row, result int) string {
	return s.Rows[row].Cells[result].Text(func(si float64) string { return s.Units[result].Number(si, s.Figures) })
}

// End is an end of a range in its unit, cleaned of the rounding of the programme whose
// optimum it is: some units of the 15th figure.
func End(u units.Unit, si float64) float64 { return to(digits, u.In(si)) }

// Text writes a result, or its range, with its numbers as write has them.
func (c SweptCell) Text(write func(si float64) string) string {
	switch {
	case c.OK:
		return write(c.SI)
	case !c.Ranged:
		return ""
	}
	return say.Range(c.Low, c.High, " .. ", write)
}

func noGiven(p *problem.Problem, name string) error {
	hint := `W = "400 N" below [given]; the sheet has no givens`
	if len(p.Givens) > 0 {
		names := p.Names(problem.AGiven)
		hint = cmp.Or(units.Suggest(name, names), say.AndMore(names, 8))
	}
	return diag.New(fmt.Sprintf("there is no given %q", name), hint)
}

// sweepGrid is the values that a sweep runs through.
func sweepGrid(s *sheet.Sheet, p *problem.Problem, g *problem.Given, span Span) (Grid, error) {
	low, wrongFrom := endOf(p, g, "--from", span.From, g.Low)
	high, wrongTo := endOf(p, g, "--to", span.To, g.High)
	if err := cmp.Or(wrongFrom, wrongTo); err != nil {
		return Grid{}, err
	}
	switch {
	case !g.HasRange && (span.From == "" || span.To == ""):
		return Grid{}, diag.New("the given "+g.Name+" has no range", "--from and --to, such as --from '"+cellOf(s, p, g).typed+"'")
	case span.Steps < 0 || span.Steps > maxSteps:
		return Grid{}, diag.New(fmt.Sprintf("a sweep has 1 to %d steps, not %d", maxSteps, span.Steps), "--steps 10")
	case low >= high:
		return Grid{}, diag.New("the sweep does not begin below its end", "the smaller value with --from")
	}
	step, steps := g.Step, span.Steps
	if steps == 0 && step > 0 && (high-low)/step <= maxSteps {
		steps = int(math.Floor((high-low)/step + nearly))
	} else {
		steps = cmp.Or(steps, usualSteps)
		step = (high - low) / float64(steps)
	}
	out := cellOf(s, p, g)
	out.in(p, low, step, written(p, g, out.typed).Symbol, written(p, g, span.From).Symbol, written(p, g, span.To).Symbol)
	out.Count = steps + 1
	return out, nil
}

// endOf reads an end of a sweep like a cell; empty is the range's.
func endOf(p *problem.Problem, g *problem.Given, flag, text string, otherwise float64) (float64, error) {
	if text == "" {
		return otherwise, nil
	}
	v, _, dim, err := units.ReadPrinted(text, p.Units, g.Value.Dim)
	if err == nil && dim != g.Value.Dim {
		err = diag.New(fmt.Sprintf("expected %s, but %s is %s", g.Value.Dim.Name(), text, dim.Name()), "a value in "+p.Units.For(g.Value.Dim).Symbol)
	}
	switch {
	case err != nil:
		return 0, diag.New(flag+" "+text+": "+err.Msg, err.Hint)
	case math.IsNaN(v) || math.Abs(v) > 1e50:
		return 0, diag.New(flag+" "+text+" is too large", "check the exponent")
	}
	return v, nil
}

package report

import (
	"fmt"
	"slices"
	"strings"

	"trivet/mechanics/plate"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
	"trivet/units"
)

// fieldParts is one page for the file of a job: inputs as typed, units, results,
// use of limits, checks, what was assumed.
func (pg *page) fieldParts(s *statics.Solution, opt PageOptions) {
	p := s.Problem
	if len(p.Points) > 0 {
		fig := plate.System(p, s, plate.Options{Dimensions: true})
		pg.add(partFigure, block{figure: &fig})
	}
	if opt.Sheet != nil {
		pg.add(partInputs, inputs(opt.Sheet, p)...)
	}
	results := resultBlocks(s, opt.Trust)
	if c, ok := s.Governing(); ok {
		results = append(results, words("Governing: "+governingWords(s, opt.Trust, c)+"."))
	}
	pg.add(partResults, results...)
	pg.addTrust(opt.Trust)
	var checks []block
	if sums, worst := sumsHeld(s); sums > mostSums {
		checks = append(checks, held(true, plural(sums, "sum")+" of forces and moments are zero, to "+fmt.Sprintf("%.1e", worst)+" of the largest force"))
	}
	for k, c := range s.Checks {
		if c.Kind == statics.CheckUnit && c.OK || isSum(c) && c.OK && len(s.Problem.Bodies) > mostSums/2 {
			continue // one of the many that hold; a page for a job needs the others
		}
		check := held(c.OK, c.Says(p))
		check.Risk = opt.Trust.CheckAtRisk(k)
		checks = append(checks, check)
	}
	for _, a := range s.Answers {
		checks = append(checks, held(a.OK, "reference answer: "+a.Says(p)))
	}
	pg.add(partChecks, checks...)
	pg.add("Assumed", words(strings.Join(assumed(p), " ")))
}

// governingWords says what the governing limit has in use, and that it is at risk.
func governingWords(s *statics.Solution, t *uncertainty.Effect, c statics.Check) string {
	if t.CheckAtRisk(slices.Index(s.Checks, c)) {
		return c.Says(s.Problem) + "; " + AtRisk + " within the ±"
	}
	return c.Says(s.Problem)
}

// mostSums is up to how many sums of forces and moments that hold are listed
// one by one.
const mostSums = 4

func isSum(c statics.Check) bool {
	return c.Kind == statics.CheckResidual || c.Kind == statics.CheckMoment
}

// sumsHeld counts the sums that hold, and gives the largest residual of them.
func sumsHeld(s *statics.Solution) (n int, worst float64) {
	if len(s.Problem.Bodies) <= mostSums/2 {
		return 0, 0
	}
	for _, c := range s.Checks {
		if isSum(c) && c.OK {
			n++
			worst = max(worst, c.Value)
		}
	}
	return n, worst
}

// inputs are the rows of a sheet as they were typed, a table for each of its
// tables.
func inputs(s *sheet.Sheet, p *problem.Problem) []block {
	var blocks []block
	set := p.Units
	units := words("Bare numbers and results in " + set.Length.Symbol + ", " + set.Force.Symbol + ", " + set.Angle.Symbol + ", " + set.Mass.Symbol + ".")
	units.quiet = true
	for _, name := range []string{"given", "points", "bodies", "lines", "joints", "couples", "distributed"} {
		rows := problem.Rows(s, name)
		if len(rows) == 0 {
			continue
		}
		var out [][]string
		for _, r := range rows {
			var cells []string
			for _, c := range r.Cells {
				text := strings.Join(strings.Fields(c.Text), " ")
				if c.Key != "" {
					text = c.Key + " " + text
				}
				cells = append(cells, text)
			}
			out = append(out, []string{r.Name, strings.Join(cells, "; ")})
		}
		blocks = append(blocks, tableOf([]string{name, ""}, out...))
	}
	if len(blocks) > 0 {
		blocks = append(blocks, units)
	}
	return blocks
}

// assumed is what the model takes for granted of this problem, in sentences.
func assumed(p *problem.Problem) []string {
	out := []string{"Everything is at rest and rigid; the geometry is as typed, with no sag, stretch or settlement."}
	var rigid, free bool
	for _, b := range p.Bodies {
		rigid, free = rigid || !b.Particle, free || b.Particle
	}
	if free {
		out = append(out, "Forces on a particle meet in its point.")
	}
	kinds := map[problem.Kind]bool{}
	pulleys := false
	for _, l := range p.Lines {
		kinds[l.Kind] = true
		pulleys = pulleys || l.Kind == problem.Cable && len(l.Path) > 2
	}
	if kinds[problem.Cable] {
		out = append(out, "Cables weigh nothing, run straight and can only pull.")
	}
	if pulleys {
		out = append(out, "Pulleys turn without friction and have no size.")
	}
	if kinds[problem.BeltKind] {
		out = append(out, "Belts weigh nothing, run straight between their drums and can only pull.")
	}
	if kinds[problem.Strut] || kinds[problem.Link] {
		out = append(out, "Struts and links weigh nothing, are pinned at their ends and do not buckle.")
	}
	if kinds[problem.SpringKind] {
		out = append(out, "Springs follow their stiffness.")
	}
	if kinds[problem.Contact] {
		out = append(out, "Contacts have no friction.")
	}
	if rigid {
		bare := true
		for _, b := range p.Bodies {
			bare = bare && (b.Particle || b.Weight == 0)
		}
		if bare {
			out = append(out, "Bodies weigh nothing but what is typed.")
		}
	}
	if len(p.Joints) > 0 {
		out = append(out, "Supports hold exactly what their kind says, without play or friction of their own.")
	}
	if kinds[problem.BeltKind] || slices.ContainsFunc(p.Joints, func(j problem.Joint) bool { return j.HasFriction }) {
		out = append(out, "Friction is dry, with the static coefficients typed.")
	}
	if p.G > 0 {
		out = append(out, "Weights are taken with g = "+units.Compact(p.G)+" m/s².")
	}
	if len(p.Measured) > 0 {
		out = append(out, "Values are taken at the middle of what was measured.")
	}
	return append(out, "No factor of safety is applied; a use of 100 % is the whole of the capacity typed.")
}

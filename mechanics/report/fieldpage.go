package report

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/scene"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
	"trivet/units"
)

// fieldSections are one page for the file of a job: whether it is accepted, inputs as
// typed, units, results, utilisation of limits, checks, what was assumed.
func fieldSections(s *statics.Solution, opt PageOptions) []doc.Section {
	p := s.Problem
	d := &doc.Doc{}
	d.Sections = append(d.Sections, doc.Section{Role: doc.Risk, Level: 1, Title: say.Capital(acceptance(s, opt.Trust))})
	d.Add(highUse(s, opt.Trust))
	d.Add(riskSection(opt.Trust))
	d.Add(figureSection(p, scene.Options{Dimensions: true}))
	if opt.Sheet != nil {
		d.Add(doc.Section{Role: doc.Inputs, Level: 1, Title: "Inputs as typed", Blocks: inputs(opt.Sheet, p)})
	}
	results := resultSection(s, opt.Trust)
	results.Blocks = append(results.Blocks, governing(s, opt.Trust)...)
	d.Add(results)
	d.Add(trustSection(opt.Trust))
	d.Add(doc.Section{Role: doc.Checks, Level: 1, Title: "Checks", Blocks: fieldChecks(s, opt)})
	d.Add(doc.Section{Level: 1, Title: "Assumed", Blocks: []doc.Block{doc.Say(strings.Join(assumed(p), " "))}})
	return d.Sections
}

// acceptance is the one line that a page for a job begins with. What a teaching sheet
// expects does not count here.
func acceptance(s *statics.Solution, t *uncertainty.Effect) string {
	because := func(head string, why []string) string {
		head += ": " + why[0]
		if more := len(why) - 1; more > 0 {
			head += "; and " + strconv.Itoa(more) + " more, below"
		}
		return head
	}
	if why := refusals(s); len(why) > 0 {
		return because("not accepted", why)
	}
	if t != nil {
		if why := t.AtRisk(); len(why) > 0 {
			return because(AtRisk, why)
		}
	}
	if notes := len(s.Problem.Notes()); notes > 0 {
		return "accepted, but see " + say.Count(notes, "note") + " on the inputs with the results"
	}
	return "accepted"
}

// refusals are the reasons not to accept a solution: no single admissible one, checks that
// fail, reference answers that are missed.
func refusals(s *statics.Solution) (out []string) {
	if !s.Single() {
		for _, c := range s.Broken {
			if c.Kind == statics.Sense && c.Line >= 0 {
				info := s.Problem.Lines[c.Line].Kind.Info()
				out = append(out, info.Name+" "+c.Name+" in "+info.Negative)
			}
		}
		if len(out) == 0 {
			out = append(out, s.VerdictWords()[0])
		}
	}
	governing, limited := s.Governing()
	if limited && !governing.OK {
		out = append(out, governing.Says(s.Problem))
	}
	for _, c := range s.Checks {
		if !c.OK && !(limited && c == governing) && (s.Single() || c.Kind == statics.CheckLimit || c.Kind == statics.CheckJointLimit) {
			out = append(out, c.Says(s.Problem))
		}
	}
	for _, a := range s.Answers {
		if !a.OK {
			out = append(out, a.SaysInWords(s.Problem))
		}
	}
	return out
}

// high is the part of a limit in use above which it is set apart, for a second look.
const high = 0.9

// highUse sets apart the limits of which more than that is in use.
func highUse(s *statics.Solution, t *uncertainty.Effect) doc.Section {
	p := s.Problem
	table := doc.NewTable("On", "Force", "Limit", "Utilisation", "")
	for k, c := range s.Checks {
		if c.Kind != statics.CheckLimit && c.Kind != statics.CheckJointLimit || c.Open || c.Value <= high*c.Bound {
			continue
		}
		force, mark := "unbounded", ""
		if !math.IsInf(c.Value, 1) {
			force = p.Units.Force.Format(c.Value, p.Figures)
		}
		switch {
		case !c.OK:
			mark = "exceeded"
		case t.CheckAtRisk(k):
			mark = AtRisk
		}
		table.Add(words(c.Subject), words(force), words(p.Units.Force.Format(c.Bound, p.Figures)), words(UsePercent(p, c.Value/c.Bound)), words(mark))
	}
	out := section("Utilisation above "+units.Compact(100*high)+" %", table)
	out.Role = doc.Risk
	return out
}

// fieldChecks are the checks, but of many that hold alike one line.
func fieldChecks(s *statics.Solution, opt PageOptions) (out []doc.Block) {
	p := s.Problem
	if sums, worst := sumsHeld(s); sums > mostSums {
		says := fmt.Sprintf("%s of forces and moments are zero, to %.1e of the largest force", say.Count(sums, "sum"), worst)
		out = append(out, &doc.Check{Text: doc.Plain(says)})
	}
	for k, c := range s.Checks {
		if c.Kind == statics.CheckUnit && c.OK || isSum(c) && c.OK && len(p.Bodies) > mostSums/2 {
			continue // one of the many that hold; a page for a job needs the others
		}
		out = append(out, checkBlock(s, opt.Trust, k))
	}
	for _, a := range s.Answers {
		out = append(out, &doc.Check{State: doc.Held(a.OK, false), Text: doc.Plain(a.SaysInWords(p))})
	}
	return out
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
func inputs(s *sheet.Sheet, p *problem.Problem) (out []doc.Block) {
	for _, name := range []string{"given", "points", "bodies", "lines", "joints", "couples", "distributed"} {
		table := doc.NewTable(name, "")
		for _, r := range problem.Rows(s, name) {
			var cells []string
			for _, c := range r.Cells {
				text := oneLine(c.Text)
				if c.Key != "" {
					text = c.Key + " " + text
				}
				if value := derivedValue(p, name, r.Name, c); value != "" {
					text += " = " + value
				}
				cells = append(cells, text)
			}
			table.Add(words(r.Name), words(strings.Join(cells, "; ")))
		}
		if len(table.Rows) > 0 {
			out = append(out, table)
		}
	}
	if len(out) == 0 {
		return nil
	}
	set := p.Units
	return append(out, doc.Note("Bare numbers and results in "+set.Length.Symbol+", "+set.Force.Symbol+", "+set.Angle.Symbol+", "+set.Mass.Symbol+"."))
}

// derivedValue is what a cell that names others comes to; empty of other cells.
func derivedValue(p *problem.Problem, table, row string, c sheet.Cell) string {
	names := units.Mentions(c.Text)
	if len(names) == 0 || names[0].Name == strings.TrimSpace(c.Text) { // the row of that name has the value
		return ""
	}
	force := func(a problem.Affine, dim units.Dim) string {
		if len(a.Terms) > 0 {
			return ""
		}
		return p.Units.For(dim).Format(a.Const, p.Figures)
	}
	switch {
	case table == "given" && (c.Key == "" || c.Key == "value"):
		for i := range p.Givens {
			if g := &p.Givens[i]; g.Name == row && g.Value.N == 1 {
				return p.Units.For(g.Value.Dim).Format(g.Value.V[0], p.Figures)
			}
		}
	case table == "points" && (c.Key == "" || c.Key == "at"):
		for i := range p.Points {
			if q := &p.Points[i]; q.Name == row && q.OK {
				return describer{p: p}.at(q.At)
			}
		}
	case table == "bodies" && c.Key == "weight":
		for i := range p.Bodies {
			if b := &p.Bodies[i]; b.Name == row {
				return p.Units.Force.Format(b.Weight, p.Figures)
			}
		}
	case table == "lines" && c.Key == "magnitude":
		if i := p.LineNamed(row); i >= 0 && p.Lines[i].OK {
			return force(p.Lines[i].Magnitude, units.Force)
		}
	case table == "couples" && c.Key == "magnitude":
		for i := range p.Couples {
			if q := &p.Couples[i]; q.Name == row && q.OK {
				return force(q.Magnitude, units.Moment)
			}
		}
	}
	return ""
}

// assumed is what the model takes for granted of this problem, in sentences.
func assumed(p *problem.Problem) []string {
	out := []string{"All bodies are at rest and rigid; the geometry is as entered, without sag, stretch or settlement."}
	var rigid, free bool
	for _, b := range p.Bodies {
		rigid, free = rigid || !b.Particle, free || b.Particle
	}
	if free {
		out = append(out, "The forces on a particle are concurrent.")
	}
	kinds := map[problem.Kind]bool{}
	pulleys := false
	for _, l := range p.Lines {
		kinds[l.Kind] = true
		pulleys = pulleys || l.Kind == problem.Cable && len(l.Path) > 2
	}
	if kinds[problem.Cable] {
		out = append(out, "Cables are weightless and straight, and can only pull.")
	}
	if pulleys {
		out = append(out, "Pulleys are frictionless and of negligible size.")
	}
	if kinds[problem.BeltKind] {
		out = append(out, "Belts weigh nothing, run straight between their drums and can only pull.")
	}
	if kinds[problem.Strut] || kinds[problem.Link] {
		out = append(out, "Struts and links are weightless and pinned at their ends; buckling is not checked.")
	}
	if kinds[problem.SpringKind] {
		out = append(out, "Springs are linear.")
	}
	if kinds[problem.Contact] {
		out = append(out, "Contacts are frictionless.")
	}
	if rigid {
		bare := true
		for _, b := range p.Bodies {
			bare = bare && (b.Particle || b.Weight == 0)
		}
		if bare {
			out = append(out, "No self-weight beyond that entered.")
		}
	}
	if len(p.Joints) > 0 {
		out = append(out, "Supports exert exactly the reactions of their kind, without clearance or friction.")
	}
	if kinds[problem.BeltKind] || slices.ContainsFunc(p.Joints, func(j problem.Joint) bool { return j.HasFriction }) {
		out = append(out, "Friction is dry, with the coefficients of static friction entered.")
	}
	if p.G > 0 {
		out = append(out, "Weights are computed with g = "+units.Compact(p.G)+" m/s².")
	}
	if len(p.Measured) > 0 {
		out = append(out, "Measured values are taken at the middle of their tolerance.")
	}
	return append(out, "No factor of safety is applied; a utilisation of 100 % is the whole capacity entered.")
}

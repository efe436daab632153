package report

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/scene"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
	"trivet/units"
)

// addField adds the one page for the file of a job: whether it is accepted, inputs as
// typed, units, results, utilisation of limits, checks, what was assumed.
func addField(d *doc.Doc, s *statics.Solution, opt PageOptions) {
	p := s.Problem
	d.Sections = append(d.Sections, part(doc.Risk, say.Capital(acceptance(s, opt.Uncertainty))))
	d.Add(highUse(s, opt.Uncertainty))
	d.Add(riskSection(opt.Uncertainty))
	d.Add(figureSection(p, scene.Options{Dimensions: true}))
	if opt.Sheet != nil {
		d.Add(part(doc.Inputs, "Inputs as typed", inputs(opt.Sheet, p)...))
	}
	results := resultSection(s, opt.Uncertainty)
	results.Blocks = append(results.Blocks, governing(s, opt.Uncertainty)...)
	d.Add(results)
	d.Add(uncertaintySection(opt.Uncertainty))
	d.Add(part(doc.Checks, "Checks", fieldChecks(s, opt)...))
	d.Add(part(doc.Other, "Assumed", doc.Say(strings.Join(assumed(p), " "))))
}

// acceptance is the one line that a page for a job begins with. What a teaching sheet
// expects does not count here.
func acceptance(s *statics.Solution, t *uncertainty.Effect) string {
	head, why := "not accepted", refusals(s)
	if len(why) == 0 && t != nil {
		head, why = AtRisk, t.AtRisk()
	}
	notes := len(s.Problem.Notes())
	switch {
	case len(why) > 1:
		return head + ": " + why[0] + "; and " + strconv.Itoa(len(why)-1) + " more, below"
	case len(why) > 0:
		return head + ": " + why[0]
	case notes > 0:
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
		if !c.OK && !(limited && c == governing) && (s.Single() || c.Kind == statics.CheckLimit) {
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
		if c.Kind != statics.CheckLimit || c.Open || c.Value <= high*c.Bound {
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
	return section(doc.Risk, "Utilisation above "+units.Compact(100*high)+" %", table)
}

// mostSums is up to how many sums of forces and moments that hold are listed
// one by one.
const mostSums = 4

// fieldChecks are the checks, but of many that hold alike one line.
func fieldChecks(s *statics.Solution, opt PageOptions) (out []doc.Block) {
	p := s.Problem
	sums, worst := 0, 0.0
	for k, c := range s.Checks {
		switch {
		case c.Kind == statics.CheckUnit && c.OK:
		case len(p.Bodies) > mostSums/2 && c.OK && (c.Kind == statics.CheckResidual || c.Kind == statics.CheckMoment):
			sums, worst = sums+1, max(worst, c.Value)
		default: // a page for a job needs those that are not one of many that hold
			out = append(out, checkBlock(s, opt.Uncertainty, k))
		}
	}
	if sums > mostSums {
		says := fmt.Sprintf("%s of forces and moments are zero, to %.1e of the largest force", say.Count(sums, "sum"), worst)
		out = append([]doc.Block{&doc.Check{Text: doc.Plain(says)}}, out...)
	}
	return append(out, say.Each(s.Answers, func(a statics.AnswerCheck) doc.Block {
		return &doc.Check{State: doc.Held(a.OK, false), Text: doc.Plain(a.SaysInWords(p))}
	})...)
}

// inputs are the rows of a sheet as they were typed, a table for each of its
// tables.
func inputs(s *sheet.Sheet, p *problem.Problem) (out []doc.Block) {
	values := derived(p)
	for t := problem.AGiven; t <= problem.ALoad; t++ {
		name := t.Table()
		info, _ := problem.TableNamed(name)
		table := doc.NewTable(name, "")
		for _, r := range problem.Rows(s, name) {
			var cells []string
			for _, c := range r.Cells {
				text := oneLine(c.Text)
				if c.Key != "" {
					text = c.Key + " " + text
				}
				names := units.Mentions(c.Text)
				value := values[sheet.Ref{Table: name, Row: r.Name, Key: cmp.Or(c.Key, info.Plain)}]
				if value != "" && len(names) > 0 && names[0].Name != strings.TrimSpace(c.Text) { // else the row of that name has it
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

// derived is what the cells of values come to.
func derived(p *problem.Problem) map[sheet.Ref]string {
	out := map[sheet.Ref]string{}
	put := func(of sheet.Ref, key string, is bool, text string) {
		if of.Key = key; is {
			out[of] = text
		}
	}
	for _, g := range p.Givens {
		put(g.Ref, "value", g.Value.N == 1, p.Format(g.Value.V[0], g.Value.Dim))
	}
	for _, q := range p.Points {
		put(q.Ref, "at", q.OK, describer{p: p}.at(q.At))
	}
	for _, b := range p.Bodies {
		put(b.Ref, "weight", true, p.Format(b.Weight, units.Force))
	}
	for _, l := range p.Lines {
		put(l.Ref, "magnitude", l.OK && len(l.Magnitude.Terms) == 0, p.Format(l.Magnitude.Const, units.Force))
	}
	for _, q := range p.Couples {
		put(q.Ref, "magnitude", q.OK && len(q.Magnitude.Terms) == 0, p.Format(q.Magnitude.Const, units.Moment))
	}
	return out
}

// alongContact tells a force along the surface of a contact, which may stand for its friction.
func alongContact(p *problem.Problem) bool {
	return slices.ContainsFunc(p.Lines, func(n problem.Line) bool {
		return n.Kind == problem.Contact && slices.ContainsFunc(p.Lines, func(f problem.Line) bool {
			return f.Kind == problem.Force && len(f.Legs) > 0 && len(n.Legs) > 0 && len(f.Path) > 0 && len(n.Path) > 0 && f.Path[0] == n.Path[0] && math.Abs(r3.Dot(f.Legs[0].U, n.Legs[0].U)) < perpendicular
		})
	})
}

// perpendicular is the cosine of an angle that is a right one but for rounding.
const perpendicular = 1e-9

// assumed is what the model takes for granted of this problem, in sentences.
func assumed(p *problem.Problem) (out []string) {
	particle := func(b problem.Body) bool { return b.Particle }
	rigid := func(b problem.Body) bool { return !b.Particle }
	heavy := func(b problem.Body) bool { return !b.Particle && b.Weight != 0 }
	kinds := map[problem.Kind]bool{}
	pulleys := false
	for _, l := range p.Lines {
		kinds[l.Kind] = true
		pulleys = pulleys || l.Kind == problem.Cable && len(l.Path) > 2
	}
	friction := slices.ContainsFunc(p.Joints, func(j problem.Joint) bool { return j.HasFriction })
	for _, x := range []struct {
		of   bool
		says string
	}{
		{true, "All bodies are at rest and rigid; the geometry is as entered, without sag, stretch or settlement."},
		{slices.ContainsFunc(p.Bodies, particle), "The forces on a particle are concurrent."},
		{kinds[problem.Cable], "Cables are weightless and straight, and can only pull."},
		{pulleys, "Pulleys are frictionless and of negligible size."},
		{kinds[problem.BeltKind], "Belts are weightless, run straight between their drums and can only pull."},
		{kinds[problem.Strut] || kinds[problem.Link], "Struts and links are weightless and pinned at their ends; buckling is not checked."},
		{kinds[problem.SpringKind], "Springs are linear."},
		{kinds[problem.Contact] && !friction && !alongContact(p), "Contacts are frictionless."},
		{slices.ContainsFunc(p.Bodies, rigid) && !slices.ContainsFunc(p.Bodies, heavy), "No self-weight beyond that entered."},
		{len(p.Joints) > 0, "Supports exert exactly the reactions of their kind, without clearance or friction."},
		{kinds[problem.BeltKind] || friction, "Friction is dry, with the coefficients of static friction entered."},
		{p.G > 0, "Weights are computed with g = " + units.Compact(p.G) + " m/s²."},
		{len(p.Measured) > 0, "Measured values are taken at the middle of their tolerance."},
		{true, "No factor of safety is applied; a utilisation of 100 % is the whole capacity entered."},
	} {
		if x.of {
			out = append(out, x.says)
		}
	}
	return out
}

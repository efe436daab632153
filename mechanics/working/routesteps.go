package working

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/handsolve"
	"trivet/mechanics/origin"
	"trivet/mechanics/problem"
	english "trivet/mechanics/say"
	"trivet/mechanics/statics"
	"trivet/units"
)

// RouteSteps are the steps of the hand route, for Insert: for each the sentence
// that says what is cut free and why one unknown is alone, the equation in
// symbols and with numbers, and the value. Sections of trusses come last, as
// another way to the same value. Where there is no route a single step says why.
func RouteSteps(s *statics.Solution, r handsolve.Route) []Step {
	if len(r.Steps) == 0 {
		return []Step{{Kind: Route, Title: "No route by hand", Body: []doc.Block{say("There is no route by hand: " + r.Why + ".")}}}
	}
	w := routeWriter{builder: builder{s: s, p: s.Problem, axes: 3}, r: &r}
	var out []Step
	for i := range r.Steps {
		out = append(out, w.routeStep(&r.Steps[i]))
	}
	for i := range r.Sections {
		step := w.routeStep(&r.Sections[i])
		step.Title = "Or by a section: " + step.Title
		out = append(out, step)
	}
	return out
}

// routeWriter writes the steps of a route.
type routeWriter struct {
	builder
	r *handsolve.Route
}

func (w *routeWriter) routeStep(step *handsolve.Step) Step {
	out := Step{Kind: Route, Title: w.title(step), Body: []doc.Block{{Text: w.sentence(step)}}, Hand: step}
	for i := range step.Equations {
		w.speaksOf(&out.About, &step.Equations[i])
	}
	switch step.Kind {
	case handsolve.Together:
		out.Kind = Solve
		var symbols, numbers []doc.Math
		for i := range step.Equations {
			symbols = append(symbols, w.written(&step.Equations[i], false))
			numbers = append(numbers, w.written(&step.Equations[i], true))
		}
		out.Body = append(out.Body, aligned(symbols...), say("With numbers:"), aligned(numbers...))
	case handsolve.One:
		e := &step.Equations[0]
		out.Body = append(out.Body, aligned(w.written(e, false), w.solving(w.written(e, true), w.found(step, 0))))
		if !slices.ContainsFunc(e.Terms, func(t handsolve.Term) bool { return t.Known && t.Value != 0 }) {
			out.Body[1].Aligned = out.Body[1].Aligned[:1] // there are no numbers to put in
		}
	default:
		out.About.Bodies = []int{w.r.Members[step.Member].Body}
	}
	var values []doc.Math
	for k := range step.Finds {
		values = append(values, w.found(step, k))
	}
	if len(values) > 0 {
		out.Body = append(out.Body, aligned(values...))
	}
	return out
}

func (w *routeWriter) title(step *handsolve.Step) string {
	names := make([]string, len(step.Finds))
	for k, x := range step.Finds {
		names[k] = w.r.Name(w.p, x.Symbol)
	}
	switch step.Kind {
	case handsolve.TwoForce:
		return "Two-force member " + w.p.Bodies[w.r.Members[step.Member].Body].Name
	case handsolve.Together:
		return english.And(names...) + " together"
	case handsolve.Components:
		return english.And(names...) + " from the force in " + w.p.Bodies[w.r.Members[step.Member].Body].Name
	}
	return names[0] + " from " + w.r.Short(w.p, &step.Equations[0])
}

// sentence is what the route says of a step, with its symbols as formulas.
func (w *routeWriter) sentence(step *handsolve.Step) []doc.Inline {
	var out []doc.Inline
	for _, piece := range w.r.Says(w.p, step) {
		if piece.Symbol < 0 {
			out = append(out, wordCell(piece.Words))
		} else {
			out = append(out, cell(w.symbol(piece.Symbol)))
		}
	}
	return out
}

// found is x = value, or x = coefficient·S = value for a component.
func (w *routeWriter) found(step *handsolve.Step, k int) doc.Math {
	x := step.Finds[k]
	of := []doc.Math{w.symbol(x.Symbol)}
	if step.Kind == handsolve.Components {
		for _, share := range w.r.Members[step.Member].Shares {
			if share.Unknown == x.Symbol {
				along := origin.Phrase("%[1]s: the component of a unit vector along the two-force member %[2]s", w.r.Name(w.p, x.Symbol), w.p.Bodies[w.r.Members[step.Member].Body].Name)
				of = append(of, times(traced(along, w.coefficient(share.Coef)), w.symbol(len(w.p.Unknowns)+step.Member)))
			}
		}
	}
	return equal(append(of, traced(w.hand().Found(step, k), w.result(x.Value, w.symbolUnit(x.Symbol))))...)
}

func (w *routeWriter) hand() origin.Hand { return origin.Hand{Solution: w.s, Route: w.r} }

// written is ΣM = Σ coefficient·symbol = 0; with numbers for what is known.
func (w *routeWriter) written(e *handsolve.Equation, numbers bool) doc.Math {
	row := w.p.Units.Force
	if e.Moment {
		row = w.p.Units.For(units.Moment)
	}
	var of []doc.Math
	for i := range e.Terms {
		t := &e.Terms[i]
		if t.Known && t.Value == 0 {
			continue
		}
		m, u := w.term(t)
		coef := t.Coef * u.Factor / row.Factor
		if t.Known && (numbers || w.nameless(t)) {
			if t.Value < 0 {
				coef = -coef // one sign before the term
			}
			m = traced(w.hand().Term(e, i, true), short(math.Abs(u.In(t.Value)), w.p.Figures+1))
		}
		of = append(of, times(traced(w.hand().Term(e, i, false), w.coefficient(coef)), m))
	}
	return equal(w.heading(e), sum(of...), traced(origin.Balance, exactly(0)))
}

// nameless tells that a known force has no symbol of its own: the known part of
// a line whose other components are unknown.
func (w *routeWriter) nameless(t *handsolve.Term) bool {
	return t.Symbol < 0 && t.Load.Kind == handsolve.LineLoad && w.p.Lines[t.Load.Index].Magnitude.Const == 0
}

// heading is ΣFx, ΣM about a point, or ΣF and ΣM where the sentence says along what.
func (w *routeWriter) heading(e *handsolve.Equation) doc.Math {
	letter, sub := "F", ""
	n := &e.Named
	switch {
	case e.Moment && w.p.Planar && n.Point >= 0:
		letter, sub = "M", w.p.Points[n.Point].Name
	case e.Moment && n.To >= 0:
		letter, sub = "M", w.p.Points[n.Point].Name+w.p.Points[n.To].Name
	case e.Moment && n.Axis != 0:
		letter, sub = "M", w.p.Points[n.Point].Name+string(n.Axis)
	case e.Moment:
		letter = "M"
	case n.Axis != 0 && len(n.Across) == 0:
		sub = string(n.Axis)
	}
	m := doc.Math{Op: doc.Symbol, Text: letter}
	if sub != "" {
		m.Of = []doc.Math{words(sub)}
	}
	return bigSum(m)
}

// term is a term's symbol and the unit of its value.
func (w *routeWriter) term(t *handsolve.Term) (doc.Math, units.Unit) {
	if t.Symbol >= 0 {
		return w.symbol(t.Symbol), w.symbolUnit(t.Symbol)
	}
	force := w.p.Units.Force
	switch t.Load.Kind {
	case handsolve.CoupleLoad:
		return named(w.p.Couples[t.Load.Index].Name), w.p.Units.For(units.Moment)
	case handsolve.SpreadLoad:
		if d := &w.p.Loads[t.Load.Index]; d.Total == 0 {
			return loadCouple(d), w.p.Units.For(units.Moment)
		}
		return doc.Math{Op: doc.Symbol, Text: "R", Of: []doc.Math{leafed(named(w.p.Loads[t.Load.Index].Name))}}, force
	case handsolve.WeightLoad:
		return doc.Math{Op: doc.Symbol, Text: "W", Of: []doc.Math{leafed(named(w.p.Bodies[t.Load.Index].Name))}}, force
	}
	return named(w.p.Lines[t.Load.Index].Name), force
}

func (w *routeWriter) symbolUnit(symbol int) units.Unit {
	if symbol >= len(w.p.Unknowns) {
		return w.p.Units.Force
	}
	return w.unitOf(symbol)
}

// symbol is an unknown's symbol, or S with the body of a two-force member.
func (w *routeWriter) symbol(k int) doc.Math {
	if k >= len(w.p.Unknowns) {
		body := w.p.Bodies[w.r.Members[k-len(w.p.Unknowns)].Body].Name
		return doc.Math{Op: doc.Symbol, Text: "S", Of: []doc.Math{leafed(named(body))}}
	}
	return w.unknown(k)
}

// speaksOf notes what a picture of the equation shows.
func (w *routeWriter) speaksOf(about *Subject, e *handsolve.Equation) {
	put := func(list *[]int, i int) {
		if i >= 0 && !slices.Contains(*list, i) {
			*list = append(*list, i)
		}
	}
	for _, b := range e.Bodies {
		put(&about.Bodies, b)
	}
	for _, l := range e.Cut {
		put(&about.Lines, l)
	}
	put(&about.Points, e.Named.Point)
	put(&about.Points, e.Named.To)
	for _, t := range e.Terms {
		switch {
		case t.Symbol >= len(w.p.Unknowns):
			put(&about.Bodies, w.r.Members[t.Symbol-len(w.p.Unknowns)].Body)
		case t.Symbol >= 0:
			u := &w.p.Unknowns[t.Symbol]
			put(&about.Joints, u.Joint)
			put(&about.Lines, u.Line)
			if u.Joint < 0 && u.Line < 0 {
				put(&about.Couples, slices.IndexFunc(w.p.Couples, func(c problem.Couple) bool { return c.Name == u.Name }))
			}
		case t.Load.Kind == handsolve.LineLoad:
			put(&about.Lines, t.Load.Index)
		case t.Load.Kind == handsolve.CoupleLoad:
			put(&about.Couples, t.Load.Index)
		case t.Load.Kind == handsolve.SpreadLoad:
			put(&about.Loads, t.Load.Index)
		}
	}
	if e.Moment && about.Axis == nil {
		about.Axis = &Axis{At: coordinates(e.At), Along: coordinates(e.Along)}
	}
}

func coordinates(v r3.Vec) [3]float64 { return [3]float64{v.X, v.Y, v.Z} }

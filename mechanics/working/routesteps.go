package working

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/handsolve"
	"trivet/mechanics/origin"
	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/units"
)

// RouteSteps are the steps of the hand solution, for Insert: for each the sentence
// that says which body is considered and why one unknown is alone, the equation in
// symbols and with numbers, and the value. Equations that follow each other on the
// same bodies are one step. Where there is no hand solution a single step says why.
func RouteSteps(s *statics.Solution, r handsolve.Route) []Step {
	if len(r.Steps) == 0 {
		return []Step{{Kind: Route, Title: "Solution by hand", Body: []doc.Block{say(refusals[r.Why])}}}
	}
	w := routeWriter{builder: builder{s: s, p: s.Problem, axes: 3}, r: &r}
	if w.p.Planar {
		w.axes = 2
	}
	var out []Step
	for i := range r.Steps {
		hand := &r.Steps[i]
		if i == 0 || !follows(&r.Steps[i-1], hand) {
			out = append(out, Step{Kind: Route, Title: w.title(hand)})
		}
		step := &out[len(out)-1]
		w.routeStep(step, hand)
		for len(step.Hand) < len(step.Body) {
			step.Hand = append(step.Hand, hand)
		}
	}
	return out
}

// refusals say why there is no hand solution.
var refusals = map[handsolve.Refusal]string{
	handsolve.NoFreeBody:     "There is no free body to write equations for.",
	handsolve.NoUnknown:      "There is nothing to solve by hand: no force is unknown.",
	handsolve.NoEquilibrium:  "There is no equilibrium, so the equations have no solution.",
	handsolve.NoneAsked:      "What is asked for follows from the loads and the geometry: no equation has to be solved.",
	handsolve.NoSingleValues: "No unknown that is asked for has a single value.",
}

// follows tells that a step is one more equation on the bodies of the one before.
func follows(last, step *handsolve.Step) bool {
	return last.Kind == handsolve.One && step.Kind == handsolve.One && slices.Equal(last.Equations[0].Bodies, step.Equations[0].Bodies)
}

// routeWriter writes the steps of a hand solution.
type routeWriter struct {
	builder
	r *handsolve.Route
}

// routeStep writes a step of the hand solution below what a step contains already.
func (w *routeWriter) routeStep(out *Step, step *handsolve.Step) {
	if len(out.Body) == 0 && len(step.Equations) == 1 && len(step.Equations[0].Cut) > 0 {
		out.Body = append(out.Body, say(w.section(&step.Equations[0])))
	}
	for _, sentence := range w.sentences(step) {
		out.Body = append(out.Body, say(sentence...))
	}
	for i := range step.Equations {
		w.speaksOf(&out.About, &step.Equations[i])
	}
	switch step.Kind {
	case handsolve.ZeroForce:
		for _, z := range step.Zero {
			out.About.Bodies = append(out.About.Bodies, z.Body)
		}
		return // the sentences give the values
	case handsolve.Together:
		out.Kind = Solve
		var symbols, numbers []doc.Math
		for i := range step.Equations {
			symbols = append(symbols, w.written(&step.Equations[i], false))
			numbers = append(numbers, w.written(&step.Equations[i], true))
		}
		out.Body = append(out.Body, aligned(symbols...), say("With numbers:"), numbered(numbers...))
	case handsolve.One:
		e := &step.Equations[0]
		of := []doc.Math{w.written(e, false)}
		if slices.ContainsFunc(e.Terms, func(t handsolve.Term) bool { return t.Known && t.Value != 0 }) {
			of = append(of, w.solving(w.written(e, true), w.found(step, 0)))
		}
		out.Body = append(out.Body, aligned(of...))
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

// heading is ΣFx, ΣM about a point or an axis; the sentence gives those without a name.
func (w *routeWriter) heading(e *handsolve.Equation) doc.Math {
	m := letter("F")
	if e.Moment {
		m = letter("M")
	}
	if sub := e.Subscript(w.p); sub != "" {
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

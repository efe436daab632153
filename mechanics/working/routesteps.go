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

// routeSteps are the steps of the hand solution: for each the sentence
// that says which body is considered and why one unknown is alone, the equation in
// symbols and with numbers, and the value. Equations that follow each other on the
// same bodies are one step.
func routeSteps(s *statics.Solution, r handsolve.Order) []Step {
	w := routeWriter{builder: *newBuilder(s), r: &r}
	w.collect()
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
	r *handsolve.Order
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
	exact := true
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
			with, figures, comesOut := w.solving(w.written(e, true), w.found(step, 0))
			exact = comesOut
			of = []doc.Math{reprinted(of[0], figures), with}
		}
		out.Body = append(out.Body, aligned(of...))
	default:
		out.About.Bodies = []int{w.r.Members[step.Member].Body}
	}
	var values []doc.Math
	for k := range step.Finds {
		value := w.found(step, k)
		if !exact {
			value.Text = "≈"
		}
		values = append(values, value)
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
				of = append(of, times(traced(along, w.number(share.Coef)), w.symbol(len(w.p.Unknowns)+step.Member)))
			}
		}
	}
	return equal(append(of, traced(w.hand().Found(step, k), w.result(x.Value, w.symbolUnit(x.Symbol))))...)
}

func (w *routeWriter) hand() origin.Hand { return origin.Hand{Solution: w.s, Order: w.r} }

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
		if parts := w.byComponents(e, t, numbers); parts != nil {
			for _, m := range parts {
				of = append(of, traced(w.hand().Term(e, i, true), m))
			}
			continue
		}
		m, u := w.term(t)
		coef := t.Coef * u.Factor / row.Factor
		switch {
		case t.Known && (numbers || w.nameless(t)):
			if t.Value < 0 {
				coef = -coef // one sign before the term
			}
			m = traced(w.hand().Term(e, i, true), short(math.Abs(u.In(t.Value)), w.p.Figures+1))
		case e.Moment && w.p.Planar && !numbers:
			if arm, skew := w.skewArm(e, t); skew {
				of = append(of, times(traced(w.hand().Term(e, i, false), arm), m))
				continue
			}
		}
		of = append(of, times(traced(w.hand().Term(e, i, false), w.number(coef)), m))
	}
	return equal(w.heading(e), sum(of...), traced(origin.Balance, exactly(0)))
}

// sharesOf are the unknowns that a term's symbol stands for: itself, or the components of
// the force in a two-force member.
func (w *routeWriter) sharesOf(t *handsolve.Term) []handsolve.Share {
	if t.Symbol < len(w.p.Unknowns) {
		return []handsolve.Share{{Unknown: t.Symbol, Coef: 1}}
	}
	return w.r.Members[t.Symbol-len(w.p.Unknowns)].Shares
}

// inside tells an act of a joint between two bodies of an equation, where it cancels.
func (w *routeWriter) inside(e *handsolve.Equation, a *act) bool {
	if a.joint < 0 {
		return false
	}
	j := &w.p.Joints[a.joint]
	return slices.Contains(e.Bodies, j.First) && slices.Contains(e.Bodies, j.Second)
}

// actOf is the act of a term on the bodies of an equation, where there is one alone.
func (w *routeWriter) actOf(e *handsolve.Equation, t *handsolve.Term) *act {
	var only *act
	shares := w.sharesOf(t)
	for _, i := range e.Bodies {
		for k := range w.acts[i] {
			a := &w.acts[i][k]
			has := func(x problem.ActTerm) bool {
				return slices.ContainsFunc(shares, func(s handsolve.Share) bool { return s.Unknown == x.Unknown })
			}
			if w.inside(e, a) || t.Symbol >= 0 && !slices.ContainsFunc(a.Terms, has) || t.Symbol < 0 && (a.Const == (r3.Vec{}) || !a.isLoad(t.Load)) {
				continue
			}
			if only != nil {
				return nil
			}
			only = a
		}
	}
	return only
}

// isLoad tells the act of a known force that is typed, or of a distributed load.
func (a *act) isLoad(load problem.Source) bool {
	switch load.Thing {
	case problem.ALine:
		return a.line == load.Index
	case problem.ALoad:
		return slices.Contains(a.subject.Loads, load.Index)
	}
	return false
}

// byComponents is a force that was typed by its components in an equation, as x Fy - y Fx
// in the plane: component by component, and never its magnitude with an arm. Nothing of
// another force.
func (w *routeWriter) byComponents(e *handsolve.Equation, t *handsolve.Term, numbers bool) (of []doc.Math) {
	if t.Symbol >= 0 || t.Load.Thing != problem.ALine || !w.p.Lines[t.Load.Index].ByComponents() {
		return nil
	}
	a := w.actOf(e, t)
	if a == nil || !a.known() {
		return nil
	}
	d, size := e.Along, 1.0
	if e.Moment {
		arm := in(r3.Sub(a.At, e.At), w.p.Units.Length)
		d, size = r3.Cross(e.Along, arm), norm(arm)
	}
	for k, x := range xyz(cleaned(in(a.Const, w.p.Units.Force))) {
		c := clean(xyz(d)[k], size)
		switch {
		case c == 0 || x == 0:
		case numbers && x < 0:
			of = append(of, times(w.number(-c), w.number(-x)))
		case numbers:
			of = append(of, times(w.number(c), w.number(x)))
		default:
			of = append(of, times(w.number(c), part(a.name, "xyz"[k:k+1])))
		}
	}
	return of
}

// skewArm is what a force along neither axis is multiplied by in a sum of moments,
// x uy - y ux of its point of application and its direction; false for other forces.
func (w *routeWriter) skewArm(e *handsolve.Equation, t *handsolve.Term) (doc.Math, bool) {
	a := w.actOf(e, t)
	if a == nil || a.tie >= 0 || t.Known && t.Value == 0 {
		return doc.Math{}, false
	}
	u := r3.Vec{}
	if t.Symbol < 0 {
		u = r3.Scale(1/t.Value, a.Const)
	}
	for _, s := range w.sharesOf(t) {
		for _, x := range a.Terms {
			if x.Unknown == s.Unknown {
				u = r3.Add(u, r3.Scale(s.Coef, x.D))
			}
		}
	}
	arm := in(r3.Sub(a.At, e.At), w.p.Units.Length)
	x, y := clean(arm.X, norm(arm)), clean(arm.Y, norm(arm))
	if u = cleaned(u); isAxis(u) || x == 0 && y == 0 || math.Abs(norm(u)-1) > sumTol {
		return doc.Math{}, false
	}
	signed := func(x, u float64) doc.Math {
		m := product(w.number(math.Abs(x)), w.number(math.Abs(u)))
		if math.Abs(x) == 1 {
			m = w.number(math.Abs(u))
		}
		if x*u < 0 {
			return neg(m)
		}
		return m
	}
	switch {
	case y == 0:
		return signed(x, u.Y), true
	case x == 0:
		return signed(-y, u.X), true
	}
	if x*u.Y < 0 && y*u.X > 0 {
		return neg(paren(sum(signed(-x, u.Y), signed(y, u.X)))), true
	}
	return paren(sum(signed(x, u.Y), signed(-y, u.X))), true
}

// nameless tells that a known force has no symbol of its own: the known part of
// a line whose other components are unknown.
func (w *routeWriter) nameless(t *handsolve.Term) bool {
	return t.Symbol < 0 && t.Load.Thing == problem.ALine && w.p.Lines[t.Load.Index].Magnitude.Const == 0
}

// heading is ΣFx, ΣM about a point or an axis; the sentence gives those without a name.
func (w *routeWriter) heading(e *handsolve.Equation) doc.Math {
	m := letter("F")
	if e.Moment {
		m = letter("M")
	}
	if sub := e.Subscript(w.p); sub != "" {
		m.Of = []doc.Math{words(sub)}
		if !e.Moment && !e.Unnamed() {
			m.Name = "F" + sub
		}
	}
	return bigSum(m)
}

// term is a term's symbol and the unit of its value.
func (w *routeWriter) term(t *handsolve.Term) (doc.Math, units.Unit) {
	if t.Symbol >= 0 {
		return w.symbol(t.Symbol), w.symbolUnit(t.Symbol)
	}
	force := w.p.Units.Force
	switch t.Load.Thing {
	case problem.ACouple:
		return named(w.p.Couples[t.Load.Index].Name), w.p.Units.For(units.Moment)
	case problem.ALoad:
		if d := &w.p.Loads[t.Load.Index]; d.Total == 0 {
			return loadCouple(d), w.p.Units.For(units.Moment)
		}
		return doc.Math{Op: doc.Symbol, Text: "R", Of: []doc.Math{leafed(named(w.p.Loads[t.Load.Index].Name))}}, force
	case problem.ABody:
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
		case t.Load.Thing == problem.ALine:
			put(&about.Lines, t.Load.Index)
		case t.Load.Thing == problem.ACouple:
			put(&about.Couples, t.Load.Index)
		case t.Load.Thing == problem.ALoad:
			put(&about.Loads, t.Load.Index)
		}
	}
	if e.Moment && about.Axis == nil {
		about.Axis = &Axis{At: coordinates(e.At), Along: coordinates(e.Along)}
	}
}

func coordinates(v r3.Vec) [3]float64 { return [3]float64{v.X, v.Y, v.Z} }

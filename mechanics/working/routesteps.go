package working

import (
	"math"
	"slices"
	"strings"
	"unicode"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/route"
	"trivet/mechanics/statics"
	"trivet/units"
)

// RouteSteps are the steps of the hand route: for each the sentence that says
// what is cut free and why one unknown is alone, the equation in symbols and
// with numbers, and the value. Sections of trusses come last, as another way to
// the same value. Where there is no route a single step says why.
func RouteSteps(s *statics.Solution, r route.Route) []Step {
	w := routeWriter{s: s, p: s.Problem, r: &r}
	if len(r.Steps) == 0 {
		return []Step{{Kind: Route, Title: "No route by hand", Body: []Block{{Text: []Inline{{Words: "There is no route by hand: " + r.Why + "."}}}}}}
	}
	var out []Step
	for i := range r.Steps {
		out = append(out, w.step(&r.Steps[i]))
	}
	for i := range r.Sections {
		step := w.step(&r.Sections[i])
		step.Title = "Or by a section: " + step.Title
		out = append(out, step)
	}
	return out
}

// routeWriter writes the steps of a route.
type routeWriter struct {
	s *statics.Solution
	p *problem.Problem
	r *route.Route
}

func (w *routeWriter) step(step *route.Step) Step {
	out := Step{Kind: Route, Title: w.title(step), Body: []Block{{Text: w.sentence(step)}}}
	for i := range step.Equations {
		w.speaksOf(&out.About, &step.Equations[i])
	}
	switch step.Kind {
	case route.Together:
		out.Kind = Solve
		var symbols, numbers []Math
		for i := range step.Equations {
			symbols = append(symbols, w.equation(&step.Equations[i], false))
			numbers = append(numbers, w.equation(&step.Equations[i], true))
		}
		out.Body = append(out.Body, Block{Aligned: symbols}, Block{Aligned: numbers})
	case route.One:
		e := &step.Equations[0]
		rows := []Math{w.equation(e, false)}
		if numbers := w.equation(e, true); !w.same(&numbers, &rows[0]) {
			rows = append(rows, numbers)
		}
		out.Body = append(out.Body, Block{Aligned: rows})
	default:
		out.About.Bodies = []int{w.r.Members[step.Member].Body}
	}
	if len(step.Finds) > 0 {
		var values []Math
		for k, x := range step.Finds {
			values = append(values, w.found(step, k, x))
		}
		out.Body = append(out.Body, Block{Aligned: values})
	}
	return out
}

func (w *routeWriter) title(step *route.Step) string {
	names := make([]string, len(step.Finds))
	for k, x := range step.Finds {
		names[k] = w.r.Name(w.p, x.Symbol)
	}
	title := strings.Join(names, ", ")
	switch step.Kind {
	case route.TwoForce:
		return "Two-force member " + w.p.Bodies[w.r.Members[step.Member].Body].Name
	case route.Together:
		return title + " together"
	case route.Components:
		return title + " from the force in " + w.p.Bodies[w.r.Members[step.Member].Body].Name
	}
	return title + " from " + w.r.Short(w.p, &step.Equations[0])
}

// sentence is what the route says of a step, with its symbols as formulas.
func (w *routeWriter) sentence(step *route.Step) []Inline {
	var out []Inline
	for _, piece := range w.r.Says(w.p, step) {
		if piece.Symbol < 0 {
			out = append(out, Inline{Words: piece.Words})
		} else {
			m := w.symbol(piece.Symbol)
			out = append(out, Inline{Math: &m})
		}
	}
	return out
}

// found is x = value, or x = coefficient·S = value for a component.
func (w *routeWriter) found(step *route.Step, k int, x route.Found) Math {
	u := w.unit(x.Symbol)
	value := Math{Op: Row, Of: []Math{w.shown(x.Value/u.Factor, units.Figures(u.In(x.Value), w.p.Figures)), {Op: Words, Text: u.Symbol}}}
	of := []Math{w.symbol(x.Symbol)}
	if step.Kind == route.Components && x.Value != 0 {
		m := &w.r.Members[step.Member]
		of = append(of, w.times(m.Shares[k].Coef, w.symbol(len(w.p.Unknowns)+step.Member)))
	}
	return Math{Op: Relate, Text: "=", Of: append(of, value)}
}

// equation is ΣM = Σ coefficient·symbol = 0; with numbers for what is known.
func (w *routeWriter) equation(e *route.Equation, numbers bool) Math {
	sum := Math{Op: Sum}
	row := units.Force
	if e.Moment {
		row = units.Moment
	}
	for i := range e.Terms {
		t := &e.Terms[i]
		if t.Known && t.Value == 0 {
			continue
		}
		m, u := w.term(t)
		coef := t.Coef * u.Factor / w.p.Units.For(row).Factor
		if t.Known && numbers {
			value := t.Value / u.Factor
			if value < 0 {
				coef, value = -coef, -value
			}
			m = w.number(value)
		}
		sum.Of = append(sum.Of, w.times(coef, m))
	}
	right := Math{Op: Number, Text: "0"}
	left := sum
	if len(sum.Of) == 1 {
		left = sum.Of[0]
	}
	return Math{Op: Relate, Text: "=", Of: []Math{w.head(e), left, right}}
}

// same tells that two formulas read alike: nothing known stands in the equation.
func (w *routeWriter) same(a, b *Math) bool {
	return a.Op == b.Op && a.Text == b.Text && slices.EqualFunc(a.Of, b.Of, func(x, y Math) bool { return w.same(&x, &y) })
}

// head is ΣFx, ΣM about a point, or ΣF and ΣM where words say along what.
func (w *routeWriter) head(e *route.Equation) Math {
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
	m := Math{Op: Symbol, Text: letter}
	if sub != "" {
		m.Of = []Math{{Op: Words, Text: sub}}
	}
	return Math{Op: BigSum, Of: []Math{m}}
}

// term is a term's symbol and the unit of its value.
func (w *routeWriter) term(t *route.Term) (Math, units.Unit) {
	if t.Symbol >= 0 {
		return w.symbol(t.Symbol), w.unit(t.Symbol)
	}
	force := w.p.Units.Force
	switch t.Load.Kind {
	case route.CoupleLoad:
		return w.name(w.p.Couples[t.Load.Index].Name), w.p.Units.For(units.Moment)
	case route.SpreadLoad:
		u := force
		if w.p.Loads[t.Load.Index].Total == 0 {
			u = w.p.Units.For(units.Moment) // it only turns
		}
		return Math{Op: Symbol, Text: "R", Of: []Math{{Op: Words, Text: w.p.Loads[t.Load.Index].Name}}}, u
	case route.WeightLoad:
		return Math{Op: Symbol, Text: "W", Of: []Math{{Op: Words, Text: w.p.Bodies[t.Load.Index].Name}}}, force
	}
	return w.name(w.p.Lines[t.Load.Index].Name), force
}

func (w *routeWriter) unit(symbol int) units.Unit {
	if symbol >= len(w.p.Unknowns) {
		return w.p.Units.Force
	}
	return w.p.Units.For(w.p.Unknowns[symbol].Dim)
}

// symbol is an unknown's symbol: a joint's has its axis as a subscript, a name's
// digits are one, and a member's force is S with its body.
func (w *routeWriter) symbol(k int) Math {
	if k >= len(w.p.Unknowns) {
		return Math{Op: Symbol, Text: "S", Of: []Math{{Op: Words, Text: w.p.Bodies[w.r.Members[k-len(w.p.Unknowns)].Body].Name}}}
	}
	u := &w.p.Unknowns[k]
	if u.Joint >= 0 {
		name := w.p.Joints[u.Joint].Name
		if suffix, ok := strings.CutPrefix(u.Name, name); ok && suffix != "" {
			m := w.name(name)
			if len(m.Of) > 0 {
				suffix = m.Of[0].Text + suffix
			}
			return Math{Op: Symbol, Text: m.Text, Of: []Math{{Op: Words, Text: suffix}}}
		}
		if u.Dim == units.Moment && strings.HasPrefix(u.Name, "M") && len(u.Name) > 1 {
			return Math{Op: Symbol, Text: "M", Of: []Math{{Op: Words, Text: u.Name[1:]}}}
		}
	}
	return w.name(u.Name)
}

func (w *routeWriter) name(text string) Math {
	base := strings.TrimRightFunc(text, unicode.IsDigit)
	if base == "" || base == text {
		return Math{Op: Symbol, Text: text}
	}
	return Math{Op: Symbol, Text: base, Of: []Math{{Op: Words, Text: text[len(base):]}}}
}

// times is a coefficient before a symbol or a number; 1 is left out.
func (w *routeWriter) times(coef float64, m Math) Math {
	out := m
	if c := w.number(math.Abs(coef)); c.Text != "1" {
		out = Math{Op: Product, Of: []Math{c, m}}
	}
	if coef < 0 {
		return Math{Op: Neg, Of: []Math{out}}
	}
	return out
}

// number shows one figure more than a result, without zeros at the end.
func (w *routeWriter) number(x float64) Math {
	return w.shown(x, route.Shown(x, w.p.Figures+1))
}

func (w *routeWriter) shown(x float64, text string) Math {
	if digits, minus := strings.CutPrefix(text, "-"); minus {
		return Math{Op: Neg, Of: []Math{{Op: Number, Text: digits, Num: -x}}}
	}
	return Math{Op: Number, Text: text, Num: x}
}

// speaksOf notes what a picture of the equation shows.
func (w *routeWriter) speaksOf(about *Subject, e *route.Equation) {
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
		case t.Load.Kind == route.LineLoad:
			put(&about.Lines, t.Load.Index)
		case t.Load.Kind == route.CoupleLoad:
			put(&about.Couples, t.Load.Index)
		case t.Load.Kind == route.SpreadLoad:
			put(&about.Loads, t.Load.Index)
		}
	}
	if e.Moment && about.Axis == nil {
		about.Axis = &Axis{At: w.array(e.At), Along: w.array(e.Along)}
	}
}

func (w *routeWriter) array(v r3.Vec) [3]float64 { return [3]float64{v.X, v.Y, v.Z} }

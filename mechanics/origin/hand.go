package origin

import (
	"trivet/mechanics/doc"
	"trivet/mechanics/handsolve"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/statics"
	"trivet/units"
)

// Hand is the hand solution of a solved problem.
type Hand struct {
	Solution *statics.Solution
	Route    *handsolve.Order
}

type inEquation struct {
	Hand
	e *handsolve.Equation
}

type term struct {
	k     int
	value bool
}

// Term is a number of term k of an equation, Σ coefficient·value = 0: its value, or
// its coefficient.
func (h Hand) Term(e *handsolve.Equation, k int, value bool) doc.Origin {
	return of(inEquation{h, e}, term{k, value})
}

func (n term) says(in inEquation) string {
	p, e := in.Solution.Problem, in.e
	t := &e.Terms[n.k]
	name := in.name(t)
	switch {
	case n.value && t.Symbol >= 0:
		return name + ", already known: " + in.foundBy(t.Symbol)
	case n.value && t.Load.Kind == handsolve.SpreadLoad:
		return name + ": the resultant of the distributed load, the area of the load diagram"
	case n.value:
		return name + ": known, from the sheet"
	case e.Moment:
		return name + " in " + in.sum(e) + ": the moment of one unit of it, its arm with its sign = " + coefficientOf(p, t)
	}
	return name + " in " + in.sum(e) + ": the component of one unit of it along " + direction(p, e.Along) + " = " + cosine(t.Coef)
}

// sum names an equation with the bodies that it is written for.
func (h Hand) sum(e *handsolve.Equation) string {
	p := h.Solution.Problem
	if e.Whole {
		return h.Route.Short(p, e) + " on all bodies together"
	}
	names := make([]string, len(e.Bodies))
	for k, i := range e.Bodies {
		names[k] = say.The(p.Bodies[i].Name)
	}
	return h.Route.Short(p, e) + " on " + say.AndMore(names, limit)
}

func (h Hand) name(t *handsolve.Term) string {
	p := h.Solution.Problem
	if t.Symbol >= 0 {
		return h.Route.Name(p, t.Symbol)
	}
	switch k := t.Load.Index; t.Load.Kind {
	case handsolve.CoupleLoad:
		return p.Couples[k].Name
	case handsolve.SpreadLoad:
		return p.Loads[k].Name
	case handsolve.WeightLoad:
		return "weight of " + p.Bodies[k].Name
	default:
		return p.Lines[k].Name
	}
}

// coefficientOf is a term's coefficient in a sum of moments; of a couple it is no length.
func coefficientOf(p *problem.Problem, t *handsolve.Term) string {
	couple := t.Symbol >= 0 && t.Symbol < len(p.Unknowns) && p.Unknowns[t.Symbol].Dim == units.Moment
	if t.Symbol < 0 {
		couple = t.Load.Kind == handsolve.CoupleLoad || t.Load.Kind == handsolve.SpreadLoad && p.Loads[t.Load.Index].Total == 0
	}
	if couple {
		return cosine(t.Coef)
	}
	return p.Units.Length.Format(t.Coef, p.Figures)
}

// foundBy says which equations gave a symbol.
func (h Hand) foundBy(symbol int) string {
	for i := range h.Route.Steps {
		for _, x := range h.Route.Steps[i].Finds {
			if x.Symbol == symbol {
				return h.from(&h.Route.Steps[i])
			}
		}
	}
	return ""
}

// from says what a step finds its values by.
func (h Hand) from(step *handsolve.Step) string {
	p := h.Solution.Problem
	switch step.Kind {
	case handsolve.TwoForce:
		return "zero, since it is perpendicular to the two-force member " + p.Bodies[h.Route.Members[step.Member].Body].Name
	case handsolve.ZeroForce:
		return "zero by inspection of an unloaded joint"
	case handsolve.Components:
		return "its component of the force in the member " + p.Bodies[h.Route.Members[step.Member].Body].Name
	}
	var sums []string
	for i := range step.Equations {
		sums = append(sums, h.sum(&step.Equations[i]))
	}
	return "from " + say.AndMore(sums, limit)
}

type inStep struct {
	Hand
	step *handsolve.Step
}

type found struct{ k int }

// Found is the value that a step finds k-th.
func (h Hand) Found(step *handsolve.Step, k int) doc.Origin { return of(inStep{h, step}, found{k}) }

func (n found) says(in inStep) string {
	p := in.Solution.Problem
	x := in.step.Finds[n.k]
	dim := units.Force
	if x.Symbol < len(p.Unknowns) {
		dim = p.Unknowns[x.Symbol].Dim
	}
	return in.Route.Name(p, x.Symbol) + " = " + shown(p, x.Value, dim) + ": " + in.from(in.step)
}

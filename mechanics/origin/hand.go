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
	Order    *handsolve.Order
}

// Term is a number of term k of an equation, Σ coefficient·value = 0: its value, or
// its coefficient.
func (h Hand) Term(e *handsolve.Equation, k int, value bool) doc.Origin {
	t := &e.Terms[k]
	return of(func() string {
		if value {
			return h.value(t)
		}
		return h.coefficient(e, t)
	}, "term", k, value)
}

func (h Hand) value(t *handsolve.Term) string {
	if t.Symbol >= 0 {
		return h.name(t) + ", already known: " + h.foundBy(t.Symbol)
	}
	return magnitude(h.Solution.Problem, t.Load)
}

func (h Hand) coefficient(e *handsolve.Equation, t *handsolve.Term) string {
	p, head := h.Solution.Problem, h.name(t)+" in "+h.sum(*e)
	if e.Moment {
		return head + ": the moment of one unit of it, its arm with its sign = " + coefficientOf(p, t)
	}
	return head + ": the component of one unit of it along " + p.Direction(e.Along) + " = " + cosine(t.Coef)
}

// sum names an equation with the bodies that it is written for.
func (h Hand) sum(e handsolve.Equation) string {
	p := h.Solution.Problem
	if e.Whole {
		return h.Order.Short(p, &e) + " on all bodies together"
	}
	names := say.Each(e.Bodies, func(i int) string { return say.The(p.Bodies[i].Name) })
	return h.Order.Short(p, &e) + " on " + say.AndMore(names, limit)
}

func (h Hand) name(t *handsolve.Term) string {
	if t.Symbol >= 0 {
		return h.Order.Name(h.Solution.Problem, t.Symbol)
	}
	return h.Solution.Problem.NameOf(t.Load)
}

// coefficientOf is a term's coefficient in a sum of moments; of a couple it is no length.
func coefficientOf(p *problem.Problem, t *handsolve.Term) string {
	couple := t.Symbol >= 0 && t.Symbol < len(p.Unknowns) && p.Unknowns[t.Symbol].Dim == units.Moment ||
		p.TurnsOnly(t.Load)
	if couple {
		return cosine(t.Coef)
	}
	return p.Units.Length.Format(t.Coef, p.Figures)
}

// foundBy says which equations gave a symbol.
func (h Hand) foundBy(symbol int) string {
	for i := range h.Order.Steps {
		for _, x := range h.Order.Steps[i].Finds {
			if x.Symbol == symbol {
				return h.from(&h.Order.Steps[i])
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
		return "zero, since it is perpendicular to the two-force member " + p.Bodies[h.Order.Members[step.Member].Body].Name
	case handsolve.ZeroForce:
		return "zero by inspection of an unloaded joint"
	case handsolve.Components:
		return "its component of the force in the member " + p.Bodies[h.Order.Members[step.Member].Body].Name
	}
	return "from " + say.AndMore(say.Each(step.Equations, h.sum), limit)
}

// Found is the value that a step finds k-th.
func (h Hand) Found(step *handsolve.Step, k int) doc.Origin {
	return of(func() string {
		p, x := h.Solution.Problem, step.Finds[k]
		dim := units.Force
		if x.Symbol < len(p.Unknowns) {
			dim = p.Unknowns[x.Symbol].Dim
		}
		return h.Order.Name(p, x.Symbol) + " = " + p.Format(x.Value, dim) + ": " + h.from(step)
	}, "found", k)
}

package origin

import (
	"strconv"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/handsolve"
	"trivet/mechanics/problem"
	"trivet/mechanics/working"
	"trivet/units"
)

// ofHand is a number of an equation of the hand solution, ΣM = coefficient·symbol ... = 0:
// what a unit of the symbol adds to the sum, or a value put in.
func ofHand(w *working.Working, hand *handsolve.Step, b doc.Block, f found) string {
	p := w.Solution.Problem
	e := equation(hand, b, f)
	if e == nil || len(f.way) == 0 || f.way[0] != 1 {
		return ""
	}
	t := term(e, f)
	if t == nil {
		return ""
	}
	name := termName(w, t)
	sum := w.Hand.Short(p, e)
	if factor, alone := isFactor(f); factor || alone && t.Known && t.Value == 0 {
		if e.Moment {
			return name + " in " + sum + ": the moment of a unit of it, its arm with its sign = " + arm(p, t)
		}
		return name + " in " + sum + ": the component of a unit of it along " + along3(p, e.Along) + " = " + cosine(t.Coef)
	}
	if t.Symbol >= 0 {
		return name + ", found before: " + stepOf(w, t.Symbol)
	}
	if t.Load.Kind == handsolve.SpreadLoad {
		return name + ": the resultant of the load, the area under it"
	}
	return name + ": known, from the sheet"
}

// equation is the equation that a formula of a block is.
func equation(step *handsolve.Step, b doc.Block, f found) *handsolve.Equation {
	set, ok := b.(*doc.Formula)
	if !ok || len(step.Equations) == 0 || f.formula.Op != doc.Relate || f.formula.Of[0].Op != doc.BigSum {
		return nil
	}
	if step.Kind == handsolve.One {
		return &step.Equations[0]
	}
	for k := range set.Of {
		if &set.Of[k] == f.formula && k < len(step.Equations) {
			return &step.Equations[k]
		}
	}
	return nil
}

// term is the term of an equation that a number stands in: what is known to be nothing
// is not written.
func term(e *handsolve.Equation, f found) *handsolve.Term {
	n, at := 0, 0
	if f.formula.Of[1].Op == doc.Sum && len(f.way) > 1 {
		at = f.way[1]
	}
	for k := range e.Terms {
		t := &e.Terms[k]
		if t.Known && t.Value == 0 {
			continue
		}
		if n == at {
			return t
		}
		n++
	}
	return nil
}

// isFactor tells the coefficient of a product from the value behind it; alone, a
// number may be either.
func isFactor(f found) (factor, alone bool) {
	on := f.on()
	for k, m := range on {
		if m.Op == doc.Product && k < len(f.way) {
			return f.way[k] == 0, false
		}
	}
	return false, true
}

func termName(w *working.Working, t *handsolve.Term) string {
	p := w.Solution.Problem
	if t.Symbol >= 0 {
		return w.Hand.Name(p, t.Symbol)
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

// arm is a term's coefficient in a sum of moments; of a couple it is no length.
func arm(p *problem.Problem, t *handsolve.Term) string {
	couple := t.Symbol >= 0 && t.Symbol < len(p.Unknowns) && p.Unknowns[t.Symbol].Dim == units.Moment
	if t.Symbol < 0 {
		couple = t.Load.Kind == handsolve.CoupleLoad || t.Load.Kind == handsolve.SpreadLoad && p.Loads[t.Load.Index].Total == 0
	}
	if couple {
		return cosine(t.Coef)
	}
	return p.Units.Length.Format(t.Coef, p.Figures)
}

// along3 names a direction: an axis, or its components.
func along3(p *problem.Problem, d r3.Vec) string {
	return direction(p, d)[len("along "):]
}

// stepOf names the step that found a symbol.
func stepOf(w *working.Working, symbol int) string {
	for i := w.RouteFrom; i < w.RouteTo; i++ {
		for _, hand := range w.Steps[i].Hand {
			for _, x := range hand.Finds {
				if x.Symbol == symbol {
					return strconv.Itoa(i-w.RouteFrom+1) + ", " + w.Steps[i].Title
				}
			}
		}
	}
	return "by a step before"
}

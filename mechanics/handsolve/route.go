// Package handsolve finds the order in which a person solves a problem by hand:
// one equation after another, each written so that it holds one unknown alone.
package handsolve

import (
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
)

// Route is the order of work: plain data. A symbol is what an equation is solved
// for: an unknown of the problem by its index, or the force in the two-force
// member k as len(Unknowns) + k.
type Route struct {
	Members  []Member
	Steps    []Step
	Sections []Step // offers: a cut that gives a member of a truss without the joints before it
	Left     []int  // unknowns that no equation fixes
	Why      string // why there are no steps
}

// Member is a rigid body on which forces act at two places only: they lie along
// the line that joins the places. Tension is positive.
type Member struct {
	Body     int
	From, To int    // points at the places, or -1
	Along    r3.Vec // unit vector from From to To
	Shares   []Share
}

// Share is what an unknown of a joint is of the member's force: x = Coef·S.
type Share struct {
	Unknown int
	Coef    float64
}

// Kind says what a step does.
type Kind int

// The kinds of steps.
const (
	TwoForce   Kind = iota // a body is seen to be a two-force member
	One                    // one equation, one unknown
	Together               // the smallest set of equations that must be solved together
	Components             // a member's force taken apart into the joints' components
)

// Step is one step of the route. Values are in SI.
type Step struct {
	Kind      Kind
	Member    int        // TwoForce, Components: index in Members
	Equations []Equation // One: a single one; Together: as many as Finds, more where what has no value stands in them
	Finds     []Found
	Needs     []int // symbols found before that the equations hold
	Screw     bool  // Together: on a single body what holds one unknown alone is a screw of some pitch
}

// Found is the value of a symbol.
type Found struct {
	Symbol int
	Value  float64
}

// Equation is ΣF = 0 along a direction or ΣM = 0 about an axis, for bodies cut
// free together. In the plane the axis stands on it and moments are
// counter-clockwise:
//
//	Σ Coef·Value = 0
//
// Coef is the component of a unit of the symbol along Along, or its moment
// e·((r - q) × u) about the axis e through q, in metres.
type Equation struct {
	Bodies []int
	Whole  bool  // all bodies of the problem, and more than one
	Cut    []int // the lines that a section goes through
	Moment bool
	At     r3.Vec // q
	Along  r3.Vec // unit vector
	Named  Named
	Terms  []Term
	Drops  []Drop

	g *group // what it was written from, until the order of the steps is settled
	c candidate
}

// Named says how a person would call a direction, a point or an axis.
type Named struct {
	Axis   byte  // 'x' 'y' 'z': along a coordinate; else 0
	Point  int   // the point that moments are taken about, or that the axis runs through; -1
	To     int   // the second point of the axis; -1
	Along  int   // the symbol whose line of action the direction is; -1
	Across []int // the symbols that the direction stands across, or whose lines meet at the point
}

// Term is a term of an equation. Value of the one that is not Known is what the
// equation is solved for.
type Term struct {
	Symbol int  // -1 for a load
	Load   Load // where Symbol is -1
	Coef   float64
	Value  float64
	Known  bool
}

// Load is a known force or couple by its row of the problem.
type Load struct {
	Kind  LoadKind
	Index int
}

// LoadKind says which table a load is a row of.
type LoadKind int

// The kinds of loads.
const (
	LineLoad LoadKind = iota // Lines: Value is |F|
	CoupleLoad
	SpreadLoad // Loads: Value is the resultant
	WeightLoad // Bodies
)

// Drop says why symbols that act on the bodies are not in an equation.
type Drop struct {
	Why     Why
	Symbols []int
}

// Why is a reason to drop out.
type Why int

// The reasons.
const (
	Through      Why = iota // the line of action passes through the point
	Meets                   // the line of action meets the axis
	Parallel                // it is parallel to the axis
	Across                  // it acts across the direction
	IsCouple                // a couple has no part in a sum of forces
	CoupleAcross            // a couple that turns across the axis
	Balances                // its forces balance each other in this sum
)

// Find gives the route of a solved problem. Values come from the equations as
// written, not from the solution, which only says what has a value at all.
func Find(s *statics.Solution) Route {
	if why := refused(s); why != "" {
		return Route{Why: why}
	}
	f := newFinder(s)
	f.search()
	f.order()
	f.offers()
	for j := range s.Problem.Unknowns {
		if !f.known[j] {
			f.route.Left = append(f.route.Left, j)
		}
	}
	if len(f.route.Steps) == 0 {
		f.route.Why = "no unknown has a single value"
	}
	return f.route
}

func refused(s *statics.Solution) string {
	switch {
	case s.Verdict == statics.Unreadable:
		return "nothing is cut free"
	case len(s.Problem.Unknowns) == 0:
		return "nothing is unknown"
	case s.Verdict == statics.NoEquilibrium:
		return "there is no equilibrium, so no value keeps it"
	}
	return ""
}

// Solved tells whether the step is a single equation for a single unknown, or
// follows from one.
func (s *Step) Solved() bool { return s.Kind == One || s.Kind == Components }

// Toward gives the steps that lead to some symbols, by a section where one is
// offered, in order.
func (r *Route) Toward(symbols []int) []Step {
	by := map[int]*Step{}
	for _, list := range [][]Step{r.Steps, r.Sections} {
		for i := range list {
			for _, f := range list[i].Finds {
				by[f.Symbol] = &list[i]
			}
		}
	}
	var out []Step
	done := map[*Step]bool{}
	var visit func(symbol int)
	visit = func(symbol int) {
		step := by[symbol]
		if step == nil || done[step] {
			return
		}
		done[step] = true
		for _, n := range step.Needs {
			visit(n)
		}
		out = append(out, *step)
	}
	for _, s := range symbols {
		visit(s)
	}
	return out
}

// Name is a symbol's name: the unknown's, or S_ with the member's body.
func (r *Route) Name(p *problem.Problem, symbol int) string {
	if symbol < len(p.Unknowns) {
		return p.Unknowns[symbol].Name
	}
	return "S_" + p.Bodies[r.Members[symbol-len(p.Unknowns)].Body].Name
}

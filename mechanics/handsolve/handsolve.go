// Package handsolve finds the order in which a person solves a problem by hand:
// one equation after another, each written so that it contains a single unknown, by itself or
// once the equations before it are substituted.
package handsolve

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
)

// Order is the order of work: plain data. A symbol is what an equation is solved
// for: an unknown of the problem by its index, or the force in the two-force
// member k as len(Unknowns) + k.
type Order struct {
	Members []Member
	Steps   []Step
	Why     Refusal // why there are no steps
}

// Refusal says why there is no hand solution.
type Refusal int

// The refusals.
const (
	None           Refusal = iota
	NoFreeBody             // no body is cut free
	NoUnknown              // everything is given
	NoEquilibrium          // no values satisfy the equations
	NoneAsked              // what is asked does not depend on the unknowns
	NoSingleValues         // what is asked is statically indeterminate
)

// Member is a rigid body on which forces act at two places only: they lie along
// the line that joins the places. Tension is positive.
type Member struct {
	Body     int
	From, To int // points at the places, or -1
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
	ZeroForce              // members of a truss are seen to carry no force
	One                    // one equation, one unknown
	Together               // the smallest set of equations that must be solved together
	Components             // a member's force taken apart into the joints' components
)

// Step is one step of the work. Values are in SI.
type Step struct {
	Kind      Kind
	Member    int          // TwoForce, Components: index in Members
	Zero      []Inspection // ZeroForce: joint by joint
	Equations []Equation   // One: a single one; Together: as many as Finds, more where an unknown without a value stands in them
	Finds     []Found
	Needs     []int      // symbols found before that the equations contain
	Loose     []int      // Together: symbols without a single value in the equations
	Relations []Relation // Together, where it is an elimination: equation by equation
	Screw     bool       // Together: on a single body what contains one unknown alone is a screw of some pitch

	cost   float64
	wanted bool // it leads to what is asked
}

// Inspection is an unloaded joint of a truss whose members Zero carry no force:
// both of its two members, which are not collinear, or the third beside two
// Collinear ones.
type Inspection struct {
	Body            int
	Zero, Collinear []int
	Before          []int // members at the joint that were seen to carry no force before
}

// Found is the value of a symbol.
type Found struct {
	Symbol int
	Value  float64
}

// Sum is ΣF along a direction or ΣM about an axis. In the plane the axis is perpendicular to it
// and moments are counter-clockwise.
type Sum struct {
	Moment bool
	At     r3.Vec // q, a place on the axis
	Along  r3.Vec // e, the unit vector of the direction or the axis
	Named  Named
}

// Equation is a sum for bodies cut free together:
//
//	Σ Coef·Value = 0
//
// Coef is the component of a unit of the symbol along e, or its moment
// e·((r - q) × u) about the axis e through q, in metres.
type Equation struct {
	Sum
	Bodies []int
	Whole  bool  // all bodies of the problem, and more than one
	Cut    []int // the lines that a section goes through
	Terms  []Term
	Drops  []Drop

	g    *group // what it was written from, until the order of the steps is settled
	c    candidate
	cost float64
}

// Named says how a person would call a direction, a point or an axis.
type Named struct {
	Axis  byte  // 'x' 'y' 'z': along a coordinate; else 0
	Point int   // the point that moments are taken about, or that the axis runs through; -1
	To    int   // the second point of the axis; -1
	Along int   // the symbol whose line of action the direction is; -1
	Perp  []int // the symbols that the direction is perpendicular to, or whose lines of action intersect in the point or the axis
}

// Term is a term of an equation. Value of the one that is not Known is what the
// equation is solved for.
type Term struct {
	Symbol int            // -1 for a load
	Load   problem.Source // where Symbol is -1; Value is |F| of a line, the resultant of a distributed load
	Coef   float64
	Value  float64
	Known  bool
}

// Drop says why symbols that act on the bodies are not in an equation.
type Drop struct {
	Why     Why
	Symbols []int
}

// Why is a reason to drop out.
type Why int

// The reasons.
const (
	Through       Why = iota // the line of action passes through the point
	Intersects               // the line of action intersects the axis
	Parallel                 // it is parallel to the axis
	Perpendicular            // it has no component in the direction
	IsCouple                 // a couple has no part in a sum of forces
	CouplePerp               // a couple about a direction perpendicular to the axis
	Balances                 // its forces balance each other in this sum
)

// Find gives the hand solution of what a solved problem asks. Values come from
// the equations as written, not from the solution, which only says what has a
// value at all.
func Find(s *statics.Solution) Order { return find(s, s.Problem.Asked) }

// find looks for a way that writes the simplest equation next and, where some results
// are asked for, for one that derives next what takes least from the givens. It gives
// the one that takes less effort to what is asked.
func find(s *statics.Solution, asked []problem.Query) Order {
	switch {
	case s.Verdict == statics.Unreadable:
		return Order{Why: NoFreeBody}
	case len(s.Problem.Unknowns) == 0:
		return Order{Why: NoUnknown}
	case s.Verdict == statics.NoEquilibrium:
		return Order{Why: NoEquilibrium}
	}
	of := DependsOn(s, asked)
	if len(of) == 0 {
		return Order{Why: NoneAsked}
	}
	f := newFinder(s, of, false)
	f.search()
	if len(asked) > 0 {
		deep := newFinder(s, of, true)
		deep.search()
		if slices.Compare(deep.effort(), f.effort()) < 0 {
			f = deep
		}
	}
	f.arrange()
	if len(f.order.Steps) == 0 {
		f.order.Why = NoSingleValues
	}
	return f.order
}

// Name is a symbol's name: the unknown's, or S_ with the member's body.
func (o *Order) Name(p *problem.Problem, symbol int) string {
	if symbol < len(p.Unknowns) {
		return p.Unknowns[symbol].Name
	}
	return "S_" + p.Bodies[o.Members[symbol-len(p.Unknowns)].Body].Name
}

// Unnamed tells that the direction of an equation, or its point or axis, has no name.
func (e *Equation) Unnamed() bool {
	if e.Moment {
		return e.Named.Point < 0 || e.Named.Along >= 0 || len(e.Named.Perp) > 0
	}
	return e.Named.Axis == 0 || len(e.Named.Perp) > 0
}

// Subscript is the subscript of the sum that an equation sets to zero: x of ΣFx, A of ΣM about
// A, AB or Ax of an axis, n of a direction that has no name.
func (e *Equation) Subscript(p *problem.Problem) string {
	n := &e.Named
	switch {
	case e.Unnamed() && e.Moment:
		return ""
	case e.Unnamed():
		return "n"
	case !e.Moment:
		return string(n.Axis)
	case n.To >= 0:
		return p.Points[n.Point].Name + p.Points[n.To].Name
	case n.Axis != 0:
		return p.Points[n.Point].Name + string(n.Axis)
	}
	return p.Points[n.Point].Name
}

// Short is the sum that an equation sets to zero, in plain text.
func (o *Order) Short(p *problem.Problem, e *Equation) string {
	sub := e.Subscript(p)
	switch {
	case !e.Moment:
		return "ΣF" + sub
	case sub == "":
		return "ΣM"
	}
	return "ΣM about " + sub
}

// Package statics writes the equations of equilibrium of a problem as A x = b
// with labelled rows and columns, solves them, and says what the answer is
// worth: verdict, residuals, checks.
package statics

import (
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
)

// System is A x = b. A row says that the forces on a body along an axis add up
// to nothing: Σ A[i][j]·x[j] = b[i], where b is minus the known forces.
type System struct {
	Rows []Row
	Cols []Col
	A    []float64 // row-major, len(Rows) × len(Cols)
	B    []float64 // N
}

// At gives the coefficient of row i, column j.
func (s *System) At(i, j int) float64 { return s.A[i*len(s.Cols)+j] }

// Row is the label of an equation.
type Row struct {
	Body int    // index in the problem's bodies
	Name string // the body's name
	Axis string // "Fx", "Fy", "Fz"
}

// Col is the label of an unknown.
type Col struct {
	Unknown int
	Name    string
}

// Verdict is the kind of answer that a system has.
type Verdict int

// The verdicts.
const (
	Determinate Verdict = iota
	SenseBroken
	Indeterminate
	NoEquilibrium
	Unreadable
)

// Solution is a solved problem: plain data, all in SI.
type Solution struct {
	Problem *problem.Problem
	System  System
	Verdict Verdict
	Degree  int // how many unknowns are free, where indeterminate

	X         []Unknown // as Problem.Unknowns
	Residuals []Residual
	Motions   []Motion // nothing resists them: excited (no equilibrium) or not (partly constrained)
	Cond      float64  // condition number of the scaled system, 1 where empty
	Rank      int
	Broken    []int // lines whose sense cannot be
	Checks    []Check
	Answers   []AnswerCheck

	sensesMet   bool    // where indeterminate: some values keep every sense
	rangesKnown bool    // and the ranges that they leave were worked out
	blur        float64 // rounding of the directions that no equation, or no unknown, fixes
}

// Unknown is what was found for an unknown. Where Fixed is false, Value is one
// of many and Low..High the range that equilibrium and senses allow
// (infinite where unbounded).
type Unknown struct {
	Name      string
	Value     float64
	Fixed     bool
	Low, High float64
	Broken    bool // the value has a sense that the line cannot have
}

// Residual is what is left of a row: Σ A x - b in newtons, and relative to the
// largest term of the row.
type Residual struct{ Value, Relative float64 }

// Motion is a motion that nothing resists. Moves has a direction for each body
// that takes part; Unbalanced is the force along it that nothing balances
// (zero where the loads do not excite it).
type Motion struct {
	Moves      []Move
	Excited    bool
	Unbalanced float64
}

// Move is a body's share in a motion, as a unit-scaled velocity.
type Move struct {
	Body int
	V    r3.Vec
}

// CheckKind says what a check is about.
type CheckKind int

// The checks that stand beside a solution.
const (
	CheckUnit       CheckKind = iota // |u| = 1
	CheckResidual                    // ΣF of a body
	CheckMoment                      // ΣM about an independent second point
	CheckCondition                   // figures the conditioning costs
	CheckSense                       // cables pull, contacts push
	CheckLimit                       // use of a limit
	CheckSenseRange                  // an indeterminate system has values that keep every sense
)

// Check is one check: its subject (a line or a body), the number found, the
// bound it is held against. Says puts it in words.
type Check struct {
	Kind    CheckKind
	Subject string
	Line    int    // CheckSense, CheckLimit
	About   string // CheckMoment: the second point's name, empty where it has none
	Value   float64
	Bound   float64
	OK      bool
}

// AnswerCheck is a printed answer beside the computed one. Err says why there is
// none to compare with.
type AnswerCheck struct {
	problem.Answer
	Computed float64
	OK       bool
	Err      string
}

// Package statics writes the equations of equilibrium of a problem as A x = b
// with labelled rows and columns, solves them, and says what the answer is
// worth: verdict, residuals, checks.
package statics

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/linear"
	"trivet/mechanics/problem"
	"trivet/units"
)

// System is A x = b. A row says that the forces on a body along an axis add up
// to nothing: Σ A[i][j]·x[j] = b[i], where b is minus the known forces.
type System struct {
	Rows  []Row
	Cols  []string        // the names of the unknowns
	Terms [][]linear.Term // the entries of each row that are not zero, columns ascending
	B     []float64       // N, or N·m in rows of moments
	Start []int           // the first row of each body, and at the end the number of rows
}

// At gives the coefficient of row i, column j.
func (s *System) At(i, j int) float64 {
	k, ok := slices.BinarySearchFunc(s.Terms[i], j, func(t linear.Term, col int) int { return t.Col - col })
	if !ok {
		return 0
	}
	return s.Terms[i][k].Value
}

// Row is the label of an equation.
type Row struct {
	Body int    // index in the problem's bodies
	Name string // the body's name
	Axis string // "Fx" "Fy" "Fz" "Mx" "My" "Mz"

	Moment bool
	About  string  // the point that moments are taken about
	Scale  float64 // what the row is divided by before rank is judged: 1, or a length
}

// Coordinate is the axis of a row: 0, 1 or 2.
func (r *Row) Coordinate() int { return int(r.Axis[1] - 'x') }

// Dim is the dimension of a row: force or moment.
func (r Row) Dim() units.Dim {
	if r.Moment {
		return units.Moment
	}
	return units.Force
}

// Coefficient is A[i][j] in the sheet's units: what one unit of the unknown
// exerts, in units of the row. It is an arm where a force stands in a row of
// moments.
func (s *Solution) Coefficient(i, j int) float64 {
	set := s.Problem.Units
	return s.System.At(i, j) * set.For(s.Problem.Unknowns[j].Dim).Factor / set.For(s.System.Rows[i].Dim()).Factor
}

// Verdict is the kind of answer that a system has.
type Verdict int

// The verdicts.
const (
	Determinate Verdict = iota
	Inadmissible
	Indeterminate
	NoEquilibrium
	Resultant
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
	Broken    []Condition // each is violated in every solution
	conflicts []conflict  // sets of which no solution keeps all together
	Slack     *Slack      // where a sense is violated: the problem without what would push or pull
	Checks    []Check
	Answers   []AnswerCheck

	conditions []Condition
	acts       [][]actOn          // of each body
	alone      bool               // no ranges are wanted
	freedom    [][]float64        // of each unknown, what it takes of the free parameters, where indeterminate
	possible   bool               // where indeterminate: an admissible state was found
	undecided  bool               // whether there is one depends on friction at its very limit
	spans      map[int][2]float64 // of lines whose magnitude is a sum of what is free, its range
	load       float64            // the largest known force
	parts      []subsystem        // what shares no unknown with the rest
	partOf     []int              // the part of each unknown
	partOfBody []int              // the part of each body
}

// Unknown is what was found for an unknown. Where Fixed is false, Value is one
// of many and, where Ranged, Low..High the range that equilibrium and the conditions
// of an admissible state allow (infinite where unbounded).
type Unknown struct {
	Name      string
	Value     float64
	Fixed     bool
	Ranged    bool // its range was computed
	Low, High float64
	LowBy     []Ended // the conditions that end the range below; none where that was not computed
	HighBy    []Ended // and above
	Broken    bool    // the value has a sense that the line cannot have
}

// Residual is what is left of a row: Σ A x - b in newtons, and relative to the
// largest force on the body, in a row of moments times the longest arm.
type Residual struct{ Value, Relative float64 }

// Motion is a motion that nothing resists. Moves has a share for each body that
// takes part; Unbalanced is the work of the loads on it: a force in newtons for
// one metre of the body that goes furthest, or, where something turns, a moment in newton metres per
// radian. It is zero where the loads do not excite it.
type Motion struct {
	Moves      []Move
	Excited    bool
	Turning    bool
	Unbalanced float64
}

// Move is a body's share in a motion: the velocity of the point that its moments
// are taken about, and its angular velocity. The velocity of its point at r is
// v = V + W × (r - q).
type Move struct {
	Body int
	V, W r3.Vec
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
	CheckLimit                       // use of a limit, of a line or a joint
	CheckFriction                    // needed friction against available
	CheckTipping                     // the push on a face acts within it
	CheckTwoForce                    // forces of a two-force member along the line that joins its points
	CheckThreeForce                  // lines of action of a three-force member meet, or are parallel
	CheckSenseRange                  // an indeterminate system has an admissible state
	CheckBare                        // some force acts on a body; made only where none does, and fails
	CheckSupport                     // no body is nearly unsupported; made only where one is, and fails
	CheckLoad                        // the resultant of a distributed load is exact; made where it is not in closed form
	CheckBelt                        // the larger tension of a belt against e^(μβ) times the smaller one
)

// Check is one check: its subject (a line or a body), the number found, the
// bound it is held against. Says puts it in words.
type Check struct {
	Kind    CheckKind
	Subject string
	Line    int    // CheckSense, CheckLimit: the line, or -1; CheckBelt: its first part
	Joint   int    // CheckSense, CheckLimit, CheckFriction: the joint, or -1
	With    string // CheckTwoForce, CheckThreeForce: the points; CheckBelt: the ratio of its tensions
	Impends bool   // CheckFriction, CheckBelt: slipping impends, and friction is all that is available
	Meets   bool   // CheckThreeForce: the lines meet, at Meet
	Meet    r3.Vec
	About   string  // CheckMoment: the second point's name, empty where it has none
	Motion  string  // CheckSupport: what the body can almost do
	Unknown int     // CheckSupport: the largest force of its part
	Factor  float64 // and how many times the largest load it is
	Point   int     // CheckSupport: moving this point changes it most, by the share Value
	Value   float64
	Bound   float64
	Ranged  bool // CheckLimit: Value is the greater end of a range
	Open    bool // CheckLimit: the range to be held against it was not computed; CheckSenseRange: whether there is an admissible state was not decided
	OK      bool

	slip   float64 // CheckTipping: the share of the available friction that is needed, -1 where there is none to compare
	moment float64 // CheckTipping, open: the moment held without a normal force
}

// AnswerCheck is a reference answer beside the computed one. Err says why there is
// none to compare with.
type AnswerCheck struct {
	problem.Answer
	Computed float64
	OK       bool
	Err      string

	errOf string // whom Err begins with
}

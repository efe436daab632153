// Package tutor judges what a student writes of a problem, one line after the other: free
// bodies, vectors, moments, equations and values. A line is an entry. It is held against
// the problem and never against one expected text.
//
// What an entry is judged by is the system of a solved problem,
//
//	A x = b
//
// all equations of equilibrium of all bodies. An equation c·x = d follows from it where
// (c, d) is a combination of its rows. Forces are in newtons, moments in newton metres,
// lengths in metres; the signs are those of the sheet.
package tutor

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/diag"
	"trivet/mechanics/handsolve"
	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
)

// Verdict is what an entry is worth.
type Verdict string

// The verdicts.
const (
	Right      Verdict = "right"
	Imprecise  Verdict = "right-imprecise" // within two per cent, beyond the digits typed
	Dependent  Verdict = "right-dependent" // follows from the equations entered before
	Wrong      Verdict = "wrong"
	Unreadable Verdict = "unreadable"
)

// Kind is what an entry is.
type Kind string

// The kinds of entries.
const (
	FreeBody   Kind = "free-body"
	VectorKind Kind = "vector"
	LengthKind Kind = "length"
	AngleKind  Kind = "angle"
	MomentKind Kind = "moment"
	Equation   Kind = "equation"
	ValueKind  Kind = "value"
	VerdictOf  Kind = "verdict"
	NoKind     Kind = ""
)

// Judgement is what is said of an entry. Is says which sum an equation is, "" where it is
// no single one; Mistake is nil where no cause is named. Error is that of an entry that
// does not read.
type Judgement struct {
	Entry       string
	Kind        Kind
	Verdict     Verdict
	Is          string
	Mistake     *Mistake
	Says        string
	Independent int // equations so far, none of which follows from the others
	Needed      int // sums from which everything that is asked follows
	Error       *diag.Error

	sum *sum   // of a right equation
	on  []bool // the bodies concerned, nil where it is all
}

// Practice is a student's work on one problem: plain data and what follows from it. The
// zero value is of no use; New makes one.
type Practice struct {
	Problem *problem.Problem
	Entries []Judgement

	solution *statics.Solution
	single   map[string][]candidate // of one body, by its set
	joined   map[string][]candidate // of more, for the entry at hand
	forces   []force
	order    handsolve.Order
	rows     [][]float64 // of the independent sums entered
	equation []written   // all equations entered, right or wrong
	values   map[int]float64
	found    map[int]float64   // the right ones of these, as the student has them
	cut      []bool            // bodies of free bodies that are right
	vectored map[int]bool      // lines with a right vector
	done     map[string]bool   // what is asked and answered rightly
	needed   int               // sums from which everything asked follows
	guesses  map[int]int       // wrong entries that concern a body
	vectors  map[string]r3.Vec // the directions that the student has named
	hints    int
	at       int // the step of the hand solution that was hinted at last
	stage    int // and how far
}

// New begins the practice of a solved problem.
func New(s *statics.Solution) *Practice {
	t := &Practice{
		Problem: s.Problem, solution: s, forces: forcesOf(s.Problem), order: handsolve.Find(s),
		values: map[int]float64{}, found: map[int]float64{}, cut: make([]bool, len(s.Problem.Bodies)), vectored: map[int]bool{}, done: map[string]bool{}, guesses: map[int]int{}, single: map[string][]candidate{}, joined: map[string][]candidate{},
	}
	t.needed = t.neededFor()
	return t
}

// Enter judges the next entry and keeps it.
func (t *Practice) Enter(text string) Judgement {
	clear(t.joined)
	j := t.judge(text)
	if j.Verdict == Wrong && t.guessing(j.on) && j.Kind.isGuess() {
		j.Says, j.Mistake = "Write an equation first: a sum of the forces on one body.", nil
	}
	j.Entry, j.Independent, j.Needed = text, len(t.rows), t.needed
	t.Entries = append(t.Entries, j)
	return j
}

// Asked are the results that practice is to find.
func (t *Practice) asked() []problem.Query { return t.Problem.Results() }

// Done tells whether everything asked is answered rightly.
func (t *Practice) Done() bool {
	if t.verdictIsAsked() {
		return t.done[verdictAnswer]
	}
	for _, q := range t.asked() {
		if !t.done[q.Name] {
			return false
		}
	}
	return true
}

// verdictIsAsked tells that the problem has no values to ask for.
func (t *Practice) verdictIsAsked() bool {
	return t.solution.Verdict == statics.NoEquilibrium ||
		!slices.ContainsFunc(t.asked(), func(q problem.Query) bool { _, err := t.solution.Evaluate(q); return err == nil })
}

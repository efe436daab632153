// Package problemset reads a set: a TOML file beside its sheets that says which
// problems belong together, when they are open, what counts, and for how many points.
// All but reading is a pure function of what was read.
package problemset

import (
	"path/filepath"
	"slices"
	"strings"
	"time"

	"trivet/mechanics/sheet"
)

// Set is what a set file says.
type Set struct {
	Path     string // of its file, as it was given
	Title    string
	Opens    time.Time // zero where the set is open from the start
	Closes   time.Time // the last moment that is in time; zero where it never closes
	Rules    Rules
	Problems []Problem // in the order of the file
}

// Rules are what holds for each problem of a set.
type Rules struct {
	Hints int // that may be asked for, of each problem
	Show  Show
	Late  Late
}

// Show says when worked solutions open.
type Show string

// The moments at which worked solutions open.
const (
	ShowAnswered Show = "answered" // that of a problem once it is answered
	ShowClosed   Show = "closed"   // all once the set is closed
	ShowNever    Show = "never"
)

// Late says what is worth what is answered after the set has closed.
type Late string

// The worth of a late answer.
const (
	LateNo   Late = "no"
	LateHalf Late = "half"
	LateFull Late = "full"
)

// Need is what must be entered, and be right, for a problem to be done.
type Need string

// The needs, in the order in which a problem is worked.
const (
	NeedCut       Need = "cut"
	NeedVectors   Need = "vectors"
	NeedEquations Need = "equations"
	NeedValues    Need = "values"
)

// Needs are all of them, in that order.
var Needs = []Need{NeedCut, NeedVectors, NeedEquations, NeedValues}

// Problem is one problem of a set.
type Problem struct {
	Name    string
	Sheet   string // its file, relative to the folder of the set, with slashes
	Points  float64
	Variant bool   // each person has numbers of their own
	Needs   []Need // in the order of Needs
}

// Is tells a set from a sheet: it has a table of problems, which no sheet has.
func Is(s *sheet.Sheet) bool {
	return slices.ContainsFunc(s.Tables, func(t sheet.Table) bool { return t.Name == problemTable })
}

// Name is what a set goes by in records and seeds: its file's name without the ending.
// Moving the folder or a new title leave it as it is.
func (s *Set) Name() string {
	base := filepath.Base(s.Path)
	return strings.TrimSuffix(base, filepath.Ext(base))
}

// File is the path of a problem's sheet.
func (s *Set) File(p Problem) string {
	return filepath.Join(filepath.Dir(s.Path), filepath.FromSlash(p.Sheet))
}

// Problem gives a problem by name.
func (s *Set) Problem(name string) (Problem, bool) {
	if i := slices.IndexFunc(s.Problems, func(p Problem) bool { return p.Name == name }); i >= 0 {
		return s.Problems[i], true
	}
	return Problem{}, false
}

// Opened tells that the set has opened at a moment; it stays so when it closes.
func (s *Set) Opened(now time.Time) bool { return !now.Before(s.Opens) }

// Closed tells that the set has closed at a moment.
func (s *Set) Closed(now time.Time) bool { return !s.Closes.IsZero() && now.After(s.Closes) }

// Shows tells whether a problem's worked solution is open at a moment, to a person who
// has answered it or has not.
func (s *Set) Shows(now time.Time, answered bool) bool {
	switch s.Rules.Show {
	case ShowAnswered:
		return answered
	case ShowClosed:
		return s.Closed(now)
	}
	return false
}

// Stamp is how a moment is told.
const Stamp = "2 January 2006 at 15:04"

// Hidden says when the worked solutions open to a person who may not see one yet.
func (s *Set) Hidden() string {
	switch s.Rules.Show {
	case ShowAnswered:
		return "the worked solution opens once you have answered the problem"
	case ShowClosed:
		if !s.Closes.IsZero() {
			return "the worked solution opens when the set closes, on " + s.Closes.Format(Stamp)
		}
	}
	return "this set does not show its worked solutions"
}

// Late says what is worth what is answered after the set has closed.
func (s *Set) Late() string {
	return map[Late]string{LateNo: "closed: no points", LateHalf: "closed: half the points", LateFull: "closed: full points"}[s.Rules.Late]
}

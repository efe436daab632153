package problemset

import "time"

// Result is what a person has reached on a problem.
type Result struct {
	Done  time.Time // when all that is needed was right; zero where it is not
	Hints int       // that were asked for until then
	Shown bool      // the solution was asked for before
}

// hintCost is the share of a problem's points that a hint costs, as one in so many.
const hintCost = 10

// Points are what a person has of a problem's points: none before it is done, and none
// where the solution was shown before; each hint costs a tenth of them, and what is left
// counts by the rule for late answers where the set had closed.
func (s *Set) Points(p Problem, r Result) float64 {
	if r.Done.IsZero() || r.Shown {
		return 0
	}
	left := p.Points * float64(max(hintCost-max(r.Hints, 0), 0)) / hintCost
	if !s.Closed(r.Done) {
		return left
	}
	switch s.Rules.Late {
	case LateFull:
		return left
	case LateHalf:
		return left / 2
	}
	return 0
}
